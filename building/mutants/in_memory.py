"""A change made to code that is already read: a function is given its new body, a constant its new value.

Reading the core and its tests anew takes most of a trial's time. It is needed only where something is computed on
import from what has changed.
"""

import ast
import gc
import inspect
import sys
from collections.abc import Iterator
from pathlib import Path
from types import CodeType, FunctionType, ModuleType

from building.mutants.changes import Change
from building.mutants.flow import Felt, defined_at, home_of

Functions = dict[tuple[str, str, int], list[FunctionType]]


class NotInMemory(Exception):
    """The change takes hold only where all is read anew."""


def functions_there() -> Functions:
    """Every function that is alive, by file, name and line: also those that a decorator has put away."""
    found: Functions = {}
    for each in gc.get_objects():
        if isinstance(each, FunctionType):
            found.setdefault(_place(each.__code__), []).append(each)
    return found


def make(change: Change, tree: Path, felt: Felt, there: Functions) -> None:
    """Raises NotInMemory."""
    path = tree / change.file
    source = path.read_text(encoding="utf-8")
    if felt.names:
        _give_value(change, source, felt)
    else:
        _give_body(source, change.applied(source), str(path), there)


def _give_body(source: str, changed: str, path: str, there: Functions) -> None:
    old, new = (list(_functions_in(compile(each, path, "exec", dont_inherit=True))) for each in (source, changed))
    pairs = [(before, after) for before, after in zip(old, new, strict=True) if before != after]
    if not pairs or any(_place(before) not in there for before, _ in pairs):
        raise NotInMemory
    for before, after in pairs:
        for function in there[_place(before)]:
            function.__code__ = after


def _give_value(change: Change, source: str, felt: Felt) -> None:
    """To a constant that nothing on import is computed from: it is only imported, under its own name."""
    statements: list[ast.stmt] = [
        each
        for each in ast.parse(change.applied(source)).body
        if each.lineno <= change.line <= (each.end_lineno or 0) and isinstance(each, ast.Assign | ast.AnnAssign)
    ]
    if not statements or not {name for _, name in felt.names} <= set(defined_at(source, change.line)):
        raise NotInMemory
    values = dict(vars(_module(home_of(change.file))))
    try:
        exec(compile(ast.Module(statements, []), change.file, "exec", dont_inherit=True), values)
    except Exception:
        raise NotInMemory from None  # what cannot even be read is noticed where all is read anew
    for home, name in felt.names:
        setattr(_module(home), name, values[name])


def _module(home: str) -> ModuleType:
    return sys.modules[home.removesuffix(".py").replace("/", ".")]


def _functions_in(code: CodeType) -> Iterator[CodeType]:
    """Those at the top and those in classes, not those within functions."""
    for each in code.co_consts:
        if isinstance(each, CodeType):
            if each.co_flags & inspect.CO_OPTIMIZED:
                yield each
            else:
                yield from _functions_in(each)


def _place(code: CodeType) -> tuple[str, str, int]:
    return code.co_filename, code.co_qualname, code.co_firstlineno
