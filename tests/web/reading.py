"""A page as a test reads it: its elements in order, its forms as they would be sent."""

from __future__ import annotations

from functools import cached_property

from attrs import field, frozen
from selectolax.lexbor import LexborHTMLParser, LexborNode


@frozen
class Element:
    node: LexborNode = field(eq=lambda node: node.mem_id)

    def __getitem__(self, name: str) -> str:
        return self.attributes.get(name, "")

    @property
    def tag(self) -> str:
        return self.node.tag or ""

    @property
    def attributes(self) -> dict[str, str]:
        return {name: value or "" for name, value in self.node.attributes.items()}

    @property
    def text(self) -> str:
        return " ".join(self.node.text().split())

    @property
    def classes(self) -> list[str]:
        return self["class"].split()

    @property
    def within(self) -> Element | None:
        return None if self.node.parent is None else Element(self.node.parent)

    def inside(self, other: Element) -> bool:
        return self == other or (self.within is not None and self.within.inside(other))

    def all(self, css: str) -> list[Element]:
        return [Element(each) for each in self.node.css(css)]


@frozen
class SentForm:
    """action, and what it would send if its first button were pressed now."""

    action: str
    method: str
    values: dict[str, str]


@frozen
class Page:
    status: int
    path: str
    headers: dict[str, str]
    html: str

    @cached_property
    def _read(self) -> LexborHTMLParser:
        return LexborHTMLParser(self.html)

    def _found(self, css: str) -> list[Element]:
        return [Element(each) for each in self._read.css(css)]

    @property
    def elements(self) -> list[Element]:
        return self._found("*")

    @property
    def text(self) -> str:
        return " ".join(self.texts("html"))

    @property
    def saved(self) -> str:
        """The id of the entry that the page says is saved."""
        return self.path.partition("saved=")[2]

    def all(self, tag: str = "", of: str = "") -> list[Element]:
        """Elements of a tag, a class, or both."""
        return self._found(f"{tag or '*'}{'.' if of else ''}{of}")

    def texts(self, tag: str = "", of: str = "") -> list[str]:
        return [each.text for each in self.all(tag, of)]

    def by_id(self, id_: str) -> Element:
        return self._found(f'[id="{id_}"]')[0]

    def draws(self, name: str) -> bool:
        """Whether there is a box, not only a text carried along."""
        return any(each["type"] != "hidden" for each in self._named(name))

    def _named(self, name: str) -> list[Element]:
        return self._found(f'[name="{name}"]')

    def named(self, name: str) -> Element:
        """The box of this name, or the group of its options."""
        found = self._named(name)[0]
        return next((each for each in self.all("fieldset") if found.inside(each)), found)

    def typed(self, name: str) -> str:
        """What stands in the box, or which option is chosen."""
        return self.form_with(name).values.get(name, "")

    def beside(self, name: str) -> str:
        """The refusal that the box itself points to."""
        ids = self.named(name)["aria-describedby"].split()
        return " ".join(self.by_id(each).text for each in ids if each.endswith("-refusal"))

    def beside_file(self) -> str:
        return self.by_id(self.named("file")["aria-describedby"]).text

    @property
    def forms(self) -> list[SentForm]:
        return [_sent(form) for form in self.all("form")]

    def form(self, end: str) -> SentForm:
        """The form whose action ends so."""
        return next(form for form in self.forms if form.action.endswith(end))

    def form_with(self, name: str) -> SentForm:
        inside = self._named(name)[0]
        return _sent(next(form for form in self.all("form") if inside.inside(form)))

    @property
    def verdicts(self) -> list[str]:
        return self.texts("strong", "verdict")

    @property
    def figures(self) -> dict[str, str]:
        """The figures shown, by their keys: value as the reader sees it, without its range."""
        shown: dict[str, str] = {}
        for section in self._found(".figure[data-figure]"):
            value = section.all("p.value")[0]
            ranges = [each.text for each in value.all(".range")]
            shown[section["data-figure"]] = value.text.removesuffix(ranges[0] if ranges else "").strip()
        return shown


def _sent(form: Element) -> SentForm:
    values: dict[str, str] = {}
    for each in form.all("select[name], input[name]"):
        if each.tag == "select":
            options = each.all("option[selected]") or each.all("option")
            values[each["name"]] = options[0].attributes.get("value", options[0].text)
        elif each["type"] not in ("radio", "checkbox", "file") or "checked" in each.attributes:
            values[each["name"]] = each["value"]
    return SentForm(form["action"], form["method"], values)
