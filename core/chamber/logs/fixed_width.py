"""Columns set out under each other with blanks: where each begins and ends, so that an empty cell is seen."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

_CELL = re.compile(r"\S+")
LEAST_ROWS = 3

Edges = tuple[tuple[int, int], ...]


def edges_of(lines: Sequence[str]) -> Edges:
    """First and last place of each column, where some rows have fewer cells than others and all stand in columns.

    () where the rows are alike, or the cells of one would stand in none or in two.
    """
    cut = [
        [found.span() for found in _CELL.finditer(line)]
        for line in lines
        if line[:1].strip() and any(map(str.isdigit, line))
    ]
    counts = Counter(len(spans) for spans in cut)
    often = [count for count, rows in counts.items() if rows >= LEAST_ROWS]
    if len(often) < 2:
        return ()
    full = [spans for spans in cut if len(spans) == max(often)]
    edges = tuple((min(s[0] for s in column), max(s[1] for s in column)) for column in zip(*full, strict=True))
    if any(a[1] > b[0] for a, b in pairwise(edges)):
        return ()
    fit = sum(1 for spans in cut if _placed(spans, edges) is not None)
    return edges if fit >= 0.9 * len(cut) else ()


def cells_at(line: str, edges: Edges) -> list[str] | None:
    """The cells of a line by their places, "" where there is none; None where one stands in no column or in two."""
    places = _placed([found.span() for found in _CELL.finditer(line)], edges)
    if places is None:
        return None
    cells = [""] * len(edges)
    for place, (start, end) in places.items():
        cells[place] = line[start:end]
    return cells


def heads_at(line: str, rows: Sequence[str], width: int) -> list[str] | None:
    """The words of a head under which the columns of these rows stand, each with the nearest; None where none do."""
    cut = [spans for row in rows if len(spans := [found.span() for found in _CELL.finditer(row)]) == width]
    if not cut:
        return None
    edges = tuple((min(s[0] for s in column), max(s[1] for s in column)) for column in zip(*cut, strict=True))
    if any(a[1] > b[0] for a, b in pairwise(edges)):
        return None
    words: list[list[str]] = [[] for _ in edges]
    for found in _CELL.finditer(line):
        start, end = found.span()
        far = [max(0, start - edge[1], edge[0] - end) for edge in edges]
        words[far.index(min(far))].append(found[0])
    return [" ".join(each) for each in words]


def _placed(spans: Sequence[tuple[int, int]], edges: Edges) -> dict[int, tuple[int, int]] | None:
    places: dict[int, tuple[int, int]] = {}
    for span in spans:
        under = [at for at, (start, end) in enumerate(edges) if span[0] < end and start < span[1]]
        if len(under) != 1 or under[0] in places:
            return None
        places[under[0]] = span
    return places
