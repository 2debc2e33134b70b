"""Every change that can be made to a file: where, and what its lines say before and after."""

from collections.abc import Iterator
from itertools import accumulate, takewhile
from pathlib import Path

from attrs import frozen
from parso.python import tree

from building.mutants.operators import OPERATORS, Node, Operator, parsed


@frozen
class Change:
    file: str
    line: int
    within: str
    """The functions and classes it stands in, dotted; "" at the top of the module."""
    before: str
    after: str
    begin: int
    end: int
    new: str
    """What stands in the file from begin to end, in characters, once it is changed."""

    @property
    def key(self) -> tuple[str, str, str, str]:
        """What still names it when lines above it have come or gone."""
        return self.file, self.within, self.before, self.after

    def applied(self, source: str) -> str:
        return source[: self.begin] + self.new + source[self.end :]

    def __str__(self) -> str:
        return f"{self.file}:{self.line}  {self.before}  →  {self.after}"


def changes_of(file: str, source: str) -> list[Change]:
    """file is named from the repository's root."""
    begins = [0, *accumulate(len(line) for line in source.splitlines(keepends=True))]
    found = {
        (change.begin, change.end, change.new): change
        for node in _nodes(parsed(source))
        for operator in OPERATORS
        for change in _changes_by(operator, node, file, source, begins)
    }
    return [found[place] for place in sorted(found)]


def files_of(root: Path, room: str) -> list[str]:
    """The Python files of a folder, or one file, named from root."""
    place = root / room
    paths = sorted(place.rglob("*.py")) if place.is_dir() else [place] * place.is_file()
    return [path.relative_to(root).as_posix() for path in paths]


def _nodes(node: Node) -> Iterator[Node]:
    yield node
    for child in getattr(node, "children", ()):
        yield from _nodes(child)


def _changes_by(operator: Operator, node: Node, file: str, source: str, begins: list[int]) -> Iterator[Change]:
    if isinstance(node, tree.Operator) and node.parent is not None and node.parent.type == "parameters":
        return  # a bare star parts the parameters; it multiplies nothing
    for index, _ in enumerate(operator.mutation_positions(node)):
        begin, end = (begins[line - 1] + column for line, column in (node.start_pos, node.end_pos))
        old, new = source[begin:end], _mutated(operator, node, index)
        same_before = _alike(old, new)
        same_after = _alike(old[same_before:][::-1], new[same_before:][::-1])
        begin, end, new = begin + same_before, end - same_after, new[same_before : len(new) - same_after]
        before, after = _lines(source, begin, end, new)
        yield Change(file, source.count("\n", 0, begin) + 1, _within(node), before, after, begin, end, new)


def _mutated(operator: Operator, node: Node, index: int) -> str:
    """The node's text, changed. The operators change a node in place; it is put back as it was."""
    children = list(getattr(node, "children", ()))
    values = [(leaf, leaf.value) for leaf in (node, *children[:1]) if hasattr(leaf, "value")]
    changed = operator.mutate(node, index).get_code(include_prefix=False).lstrip(" ")
    for leaf, value in values:
        leaf.value = value
    if children:
        node.children = children
    return changed


def _alike(one: str, other: str) -> int:
    return sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], zip(one, other, strict=False)))


def _lines(source: str, begin: int, end: int, new: str) -> tuple[str, str]:
    """The whole lines that the change stands in, before and after, on one line each."""
    first = source.rfind("\n", 0, begin) + 1
    last = source.find("\n", end)
    last = len(source) if last < 0 else last
    before, after = source[first:last], source[first:begin] + new + source[end:last]
    return " ".join(before.split()), " ".join(after.split())


def _within(node: Node) -> str:
    names: list[str] = []
    while node := node.search_ancestor("funcdef", "classdef"):
        names.append(node.name.value)
    return ".".join(reversed(names))
