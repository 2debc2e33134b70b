"""Every box of the program that takes a number: of the worksheets, the entry forms and the screens' other forms."""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import web
from core.daybook import facts
from core.daybook.book import Book
from core.worksheet import Number
from core.worksheets import WORKSHEETS
from web.app import create_app
from web.entry_forms import _FORMS, EntryForm, Subject
from web.routing import import_every_screen
from web.screens.mix import formula_rows

SCREENS = "web.screens."


def every_box() -> dict[str, Number]:
    """Its name, `sheet key` or `Kind key` or `module key`, and how it is declared."""
    import_every_screen()
    found = {f"{sheet.name} {each.key}": each for sheet in WORKSHEETS.values() for each in _numbers(sheet.inputs)}
    for kind, form in list(_FORMS.items()):
        found |= {f"{kind.__name__} {each.key}": each for each in _of_form(form)}
    for number in (*formula_rows._meat_row(1).inputs, *formula_rows._part_row(1, True).inputs):
        if isinstance(number, Number):
            found[f"mix.formula_rows {number.key.replace('-1-', '-n-')}"] = number
    known = set(found.values())
    for name, module in sorted(dict(sys.modules).items()):
        if name.startswith(SCREENS):
            for each in _numbers(tuple(dict(vars(module)).values())):
                if each not in known:
                    found[f"{name.removeprefix(SCREENS)} {each.key}"] = each
                    known.add(each)
    return found


def every_other_input() -> set[str]:
    """What kinds of input there are that take no number."""
    import_every_screen()
    inputs = [each for sheet in WORKSHEETS.values() for each in sheet.inputs]
    inputs += [each for form in list(_FORMS.values()) for each in (*form.inputs, *form.every)]
    return {type(each).__name__ for each in inputs if not isinstance(each, Number)}


def _of_form(form: EntryForm) -> Iterator[Number]:
    yield from _numbers((form.inputs, form.every))
    if form.shape is not None:
        with create_app(Book()).test_request_context():
            yield from _numbers(form.shape(Subject()))


def _numbers(held: Any) -> Iterator[Number]:
    if issubclass(type(held), Number):  # a proxy of the web framework is asked for its type only
        yield held
    elif type(held) in (tuple, list):
        for each in held:
            yield from _numbers(each)
    elif isinstance(held, dict) or type(held).__name__ == "mappingproxy":
        yield from _numbers(tuple(held.values()))
    elif type(held) is EntryForm:
        yield from _of_form(held)


def keys_written() -> set[str]:
    """The key of every `Number(…)` that the source of a screen or a fact declares, so that none is overlooked; of a
    row's, its end."""
    keys: set[str] = set()
    screens, kept = Path(web.__file__).parent / "screens", Path(facts.__file__).parent
    for path in (*screens.rglob("*.py"), *kept.glob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Number":
                (key,) = [part.value for part in ast.walk(node.args[0]) if isinstance(part, ast.Constant)]
                keys.add(str(key))
    return keys
