"""A made-up language: every message stands between marks, accented and a third longer.

Whatever a page shows without marks was never said through `core.sentence`; two marks in one run of text were glued.
`python tests/made_up.py` walks every page of a book that holds every kind of entry, and lists what is left.
"""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Iterable, Iterator
from gettext import NullTranslations
from io import StringIO
from pathlib import Path
from string import Formatter
from typing import Any

import cattrs
from attrs import frozen
from selectolax.lexbor import LexborHTMLParser, LexborNode

sys.path.insert(0, str(Path(__file__).parent.parent))

from building.messages import Found, every
from core import sources
from core.__main__ import main
from core.command_options import CALLS, OPTIONS, SYSTEMS
from core.daybook.book import Book
from core.language import learn
from core.mix.examples import EXAMPLES
from core.units import Unit
from core.worksheets import WORKSHEETS
from tests.web.reading import Page, SentForm
from web.app import create_app

LANGUAGE = "zxx"  # ISO 639-2: no linguistic content
OPEN, CLOSE = "⟦", "⟧"
ACCENTED = str.maketrans("aeiouAEIOUcnsyz", "áéíóúÁÉÍÓÚçñšýž")
GOLDEN = Path(__file__).parent / "fixtures/formats/1.json"
TAG = re.compile(r"J-[0-9]+")
"""Numbered on from the tags that were typed."""
NOW = "2027-01-09T09:00:00+01:00"
MOST_OF_ONE_VIEW = 60
REDIRECTS = (301, 302, 303)
SHOWN_ATTRIBUTES = ("aria-label", "title", "placeholder", "alt", "label")
NONSENSE = ("", "nonsense", "-7", "99999999")


def said(message: str) -> str:
    """As the made-up language says it: its values stay where they are."""
    parts = [(text.translate(ACCENTED), name) for text, name, _, _ in Formatter().parse(message)]
    told = "".join(text + (f"{{{name}}}" if name is not None else "") for text, name in parts)
    return f"{OPEN}{told}{'~' * (len(message) // 3)}{CLOSE}"


class MadeUp(NullTranslations):
    """Says what the source's messages hold, and leaves all else as it is."""

    def __init__(self, found: Iterable[Found]) -> None:
        super().__init__()
        self._told = {each.text: said(each.text) for each in found}
        self._many = {each.text: said(each.plural) for each in found if each.plural}

    def gettext(self, message: str) -> str:
        return self._told.get(message, message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return self._told.get(msgid1, msgid1) if n == 1 else self._many.get(msgid1, msgid2)


@frozen
class Left:
    """A run of text that is not one message: where it was met, and what is wrong with it."""

    where: str
    text: str


def left_over() -> list[Left]:
    """What a walk through every page meets that was not said, each text once."""
    speak()
    entries: list[dict[str, Any]] = json.loads(GOLDEN.read_text("utf-8"))["entries"]
    pages = (page for page in _Walk(entries) if page.status not in REDIRECTS and "html" in page.headers["Content-Type"])
    return left_on(pages, entries)


def speak() -> None:
    learn(LANGUAGE, MadeUp(every()))


def left_on(pages: Iterable[Page], typed: Any) -> list[Left]:
    """typed: what may stand as it is, for somebody typed it."""
    passes = _Passes(typed)
    found: dict[str, Left] = {}
    for page in pages:
        for run in runs(page.html):
            if run not in found and not passes.is_well(run):
                found[run] = Left(page.path, run)
    return list(found.values())


def left_at_the_command_line() -> list[Left]:
    """The same of what is printed there: help and list, each worksheet's description and example, and refusals."""
    speak()
    names = [each for sheet in WORKSHEETS.values() for each in (sheet.name, *(key.key for key in sheet.inputs))]
    passes = _Passes([*names, *CALLS, *(each for row in OPTIONS for each in (row, row.split()[0])), *SYSTEMS])
    return [
        Left(" ".join(call), line)
        for call in _calls()
        for told in main([*call, "--language", LANGUAGE], StringIO())[:2]
        for line in told.splitlines()
        if not passes.is_well(line)
    ]


def _calls() -> Iterator[list[str]]:
    yield from (
        [],
        ["--help"],
        ["shrnk"],
        ["--units", "none"],
        ["--none"],
        ["shrink"],
        ["shrink", "x"],
        ["shrink", "x=1"],
    )
    for sheet in WORKSHEETS.values():
        yield [sheet.name, *(f"{key}={text}" for key, text in sheet.example.items())]
        yield [sheet.name, *(f"{each.key}=nonsense" for each in sheet.inputs)]


class _Walk:
    """Every page that a link or a form leads to, the forms sent empty, with nonsense and with what is far off."""

    def __init__(self, entries: list[dict[str, Any]]) -> None:
        self.app = create_app(Book(entries))
        self.client = self.app.test_client()
        for name, value in (("language", LANGUAGE), ("decimal", "comma")):
            self.client.set_cookie(name, value)
        self.seen: dict[str, int] = {}

    def __iter__(self) -> Iterator[Page]:
        ahead = ["/"]
        known = set(ahead)
        while ahead:
            page = self._ask("GET", ahead.pop(0))
            yield page
            later = (each["hx-get"] for each in page.all('[hx-trigger="load"]'))
            for path in (*(each["href"] for each in page.all("a")), *later):
                path = path.partition("#")[0]
                if path.startswith("/") and path not in known and self._is_wanted("GET", path):
                    known.add(path)
                    ahead.append(path)
            for form in page.forms:
                if form.method == "post" and self._is_wanted("POST", form.action):
                    yield from self._sent(form)

    def _sent(self, form: SentForm) -> Iterator[Page]:
        for text in NONSENSE:
            typed = {name: value if name == "entry" else text for name, value in form.values.items()}
            yield self._ask("POST", form.action, typed)

    def _is_wanted(self, method: str, path: str) -> bool:
        view, _ = self.app.url_map.bind("").match(path.partition("?")[0], method)
        self.seen[view + method] = self.seen.get(view + method, 0) + 1
        return self.seen[view + method] <= (MOST_OF_ONE_VIEW if method == "GET" else 4)

    def _ask(self, method: str, path: str, data: dict[str, str] | None = None) -> Page:
        response = self.client.open(path, method=method, data=data, headers={"Daybook-Now": NOW})
        return Page(response.status_code, path, dict(response.headers), response.get_data(as_text=True))


def runs(html: str) -> Iterator[str]:
    """Each run of text that a reader sees or hears, as one piece."""
    body = LexborHTMLParser(html).root
    for node in body.traverse(include_text=True) if body is not None else ():
        if node.tag == "-text" and not _is_unseen(node):
            yield " ".join((node.text_content or "").split())
        elif node.tag not in ("-text", "script", "style"):
            yield from (value for name, value in node.attributes.items() if name in SHOWN_ATTRIBUTES and value)


def _is_unseen(node: LexborNode) -> bool:
    return node.parent is not None and node.parent.tag in ("script", "style", "pre", "textarea")


class _Passes:
    """What may stand without being said: numbers and units, what somebody typed, and titles of sources."""

    def __init__(self, typed: Any) -> None:
        units = {each.symbol for each in _everything() if isinstance(each, Unit)}
        quoted = {each.title for each in sources.every_source() if isinstance(each.title, str)}
        examples = _texts([cattrs.unstructure(each.formula) for each in EXAMPLES])
        names = {*_texts(typed), *examples, "Curing Daybook", *NONSENSE} | quoted
        long_first = sorted((each for each in names if re.search("[A-Za-z]", each)), key=len, reverse=True)
        self._names = re.compile("|".join(map(re.escape, long_first)))
        self._units = re.compile(
            rf"(?<![A-Za-z])(?:{'|'.join(sorted(map(re.escape, units - {''}), key=len, reverse=True))})(?![A-Za-z])"
        )

    def is_well(self, run: str) -> bool:
        """One message, or none and no plain words."""
        messages, rest = _parted(run)
        plain = self._units.sub("", self._names.sub("", TAG.sub("", rest)))
        return messages <= 1 and not re.search("[A-Za-z]", plain)


def _everything() -> list[object]:
    """What has a name in a module of the core."""
    return [each for name, module in sys.modules.items() if name.startswith("core.") for each in vars(module).values()]


def _parted(run: str) -> tuple[int, str]:
    """How many messages stand side by side in it, and what is left around them. What an earlier run began, before a
    word in bold, goes on here up to its own end."""
    depth = begun = _begun_before(run)
    messages, rest = int(begun > 0), ""
    for sign in run:
        if sign == OPEN:
            messages += depth == 0
            depth += 1
        elif sign == CLOSE:
            depth -= 1
        elif depth == 0:
            rest += sign
    return messages, rest


def _begun_before(run: str) -> int:
    """How many messages end in the run that did not begin in it."""
    depth, least = 0, 0
    for sign in run:
        depth += (sign == OPEN) - (sign == CLOSE)
        least = min(least, depth)
    return -least


def _texts(value: Any) -> Iterator[str]:
    """Every text that an entry holds, which its maker typed."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for each in value.values():
            yield from _texts(each)
    elif isinstance(value, list):
        for each in value:
            yield from _texts(each)


if __name__ == "__main__":
    told = left_over()
    for each in told:
        print(f"{each.where}\t{each.text[:160]}")
    print(len(told), "left")
