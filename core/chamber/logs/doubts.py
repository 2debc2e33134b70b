"""What a head seems to say but the file makes doubtful: set values, sensors not plugged in, what is no air.

A doubt is asked about and never settled by itself.
"""

from __future__ import annotations

from collections import Counter

from attrs import evolve

from core.chamber.logs import heads
from core.chamber.logs.column import Column
from core.chamber.logs.notes import ITS_HEAD_ENDS_IN_IT, Note
from core.chamber.logs.scales import trimmed
from core.chamber.logs.seen import Seen

UNPLUGGED = (-200.0, -127.0, -50.0, -40.0, 0.0, 85.0, 100.0, 125.0, 150.0, 850.0)
"""What sensors of common kinds are seen to say while they are not plugged in (common practice; no published source)."""
APART, FAR_APART = 8.0, 15.0
"""How far from all other values such a number stands, and another that returns, in the column's own unit."""
TWICE, OFTEN = 2, 3


def with_doubts(columns: list[Column], seen: list[Seen]) -> list[Column]:
    columns = [_constant(at, columns, seen) for at in range(len(columns))]
    columns = [_strange_name(at, columns, seen) for at in range(len(columns))]
    return [_with_strays(column, each) for column, each in zip(columns, seen, strict=True)]


def _constant(at: int, columns: list[Column], seen: list[Seen]) -> Column:
    """One number in every row: a set value, or a sensor that is not there."""
    column, own = columns[at], seen[at]
    if column.role not in ("temperature", "humidity") or not own.is_constant:
        return column
    moves = any(other.role == column.role and not each.is_constant for other, each in zip(columns, seen, strict=True))
    if not moves and own.values[0] not in UNPLUGGED:
        return column
    doubt = Note("constant", {"cell": own.cells[0]})
    return evolve(column, role="unknown", may_be=(column.role, "ignored"), doubt=doubt)


def _strange_name(at: int, columns: list[Column], seen: list[Seen]) -> Column:
    """A head that is known by its unit alone, or with a word that is no place, beside one that is plain."""
    column, label = columns[at], seen[at].label
    if column.role not in ("temperature", "humidity") or _is_plain(at, columns, seen):
        return column
    is_alone = not any(other.role == column.role for n, other in enumerate(columns) if n != at)
    if is_alone and (column.role == "temperature" or heads.role_in(label) == "humidity"):
        return column
    doubt = Note("temperature-of" if column.role == "temperature" else "humidity-of")
    return evolve(column, role="unknown", may_be=("temperature", "humidity", "ignored"), doubt=doubt)


def _is_plain(at: int, columns: list[Column], seen: list[Seen]) -> bool:
    """Whether a head only says where the probe is, or has the name of one that measures the other quantity too."""
    column, label = columns[at], seen[at].label
    name = heads.probe_in(label, bool(heads.end_letter(label)) and column.why_unit == Note(ITS_HEAD_ENDS_IN_IT))
    if column.role == "humidity" and heads.role_in(label) != "humidity" and label:
        return _has_partner(at, name, columns, seen)
    return not label or heads.tells_where(name) or _has_partner(at, name, columns, seen)


def _has_partner(at: int, name: str, columns: list[Column], seen: list[Seen]) -> bool:
    other = "humidity" if columns[at].role == "temperature" else "temperature"
    return bool(name) and any(
        column.role == other and heads.probe_in(each.label, False) == name
        for column, each in zip(columns, seen, strict=True)
    )


def _with_strays(column: Column, seen: Seen) -> Column:
    """Numbers that return and stand apart from all the others are asked about."""
    if column.role not in ("temperature", "humidity") or len(set(seen.values)) < OFTEN:
        return column
    counts = Counter(seen.values)
    low, high = trimmed([value for value in seen.values if value not in UNPLUGGED] or seen.values)
    strays: list[float] = []
    for value, count in counts.items():
        far = min(abs(value - other) for other in counts if other != value)
        is_known = value in UNPLUGGED and count >= TWICE and far >= APART
        if is_known or (count >= OFTEN and far >= max(FAR_APART, 3 * (high - low))):
            strays.append(value)
    return evolve(column, may_mean_nothing=tuple(sorted(strays)))
