"""A page as a test reads it: its elements in order, its forms as they would be sent."""

from __future__ import annotations

from html.parser import HTMLParser

from attrs import define, field, frozen

VOID = {"meta", "input", "br", "hr", "img", "link", "circle", "line", "polyline"}


@define
class Element:
    tag: str
    attributes: dict[str, str]
    within: Element | None
    words: list[str] = field(factory=list)

    def __getitem__(self, name: str) -> str:
        return self.attributes.get(name, "")

    @property
    def text(self) -> str:
        return " ".join("".join(self.words).split())

    @property
    def classes(self) -> list[str]:
        return self["class"].split()

    def inside(self, other: Element) -> bool:
        above: Element | None = self
        while above is not None and above is not other:
            above = above.within
        return above is other


class _Elements(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.all: list[Element] = []
        self._open: list[Element] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs}, self._open[-1] if self._open else None)
        self.all.append(element)
        if tag not in VOID:
            self._open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self._open.pop()

    def handle_endtag(self, tag: str) -> None:
        while self._open and self._open.pop().tag != tag:
            pass

    def handle_data(self, data: str) -> None:
        for element in self._open:
            element.words.append(data)


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
    elements: list[Element]

    @property
    def text(self) -> str:
        return self.elements[0].text if self.elements else ""

    @property
    def saved(self) -> str:
        """The id of the entry that the page says is saved."""
        return self.path.partition("saved=")[2]

    def all(self, tag: str = "", of: str = "") -> list[Element]:
        """Elements of a tag, a class, or both."""
        return [each for each in self.elements if tag in ("", each.tag) and (not of or of in each.classes)]

    def texts(self, tag: str = "", of: str = "") -> list[str]:
        return [each.text for each in self.all(tag, of)]

    def by_id(self, id_: str) -> Element:
        return next(each for each in self.elements if each["id"] == id_)

    def draws(self, name: str) -> bool:
        """Whether there is a box, not only a text carried along."""
        return any(each["name"] == name and each["type"] != "hidden" for each in self.elements)

    def named(self, name: str) -> Element:
        """The box of this name, or the group of its options."""
        found = next(each for each in self.elements if each["name"] == name)
        group = next((each for each in self.all("fieldset") if found.inside(each)), None)
        return group if group is not None else found

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
        return [self._sent(form) for form in self.all("form")]

    def form(self, end: str) -> SentForm:
        """The form whose action ends so."""
        return next(form for form in self.forms if form.action.endswith(end))

    def form_with(self, name: str) -> SentForm:
        inside = next(each for each in self.elements if each["name"] == name)
        return self._sent(next(form for form in self.all("form") if inside.inside(form)))

    def _sent(self, form: Element) -> SentForm:
        values: dict[str, str] = {}
        for each in (each for each in self.elements if each.inside(form) and each["name"]):
            if each.tag == "select":
                options = [one for one in self.all("option") if one.inside(each)]
                chosen = [one for one in options if "selected" in one.attributes] or options
                values[each["name"]] = chosen[0].attributes.get("value", chosen[0].text)
            elif each.tag == "input" and (
                each["type"] not in ("radio", "checkbox", "file") or "checked" in each.attributes
            ):
                values[each["name"]] = each["value"]
        return SentForm(form["action"], form["method"], values)

    @property
    def verdicts(self) -> list[str]:
        return self.texts("strong", "verdict")

    @property
    def figures(self) -> dict[str, str]:
        """The figures shown, by their keys: value as the reader sees it, without its range."""
        shown: dict[str, str] = {}
        for section in self.all(of="figure"):
            if "data-figure" in section.attributes:
                value = next(each for each in self.all("p", "value") if each.inside(section))
                ranges = [each.text for each in self.all(of="range") if each.inside(value)]
                shown[section["data-figure"]] = value.text.removesuffix(ranges[0] if ranges else "").strip()
        return shown


def page_of(status: int, path: str, headers: dict[str, str], html: str) -> Page:
    parser = _Elements()
    parser.feed(html)
    return Page(status, path, headers, html, parser.all)
