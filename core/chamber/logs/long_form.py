"""Files with one value a row, its quantity named in a column of its own: made into a row a moment, a column a quantity.

Each line keeps its place, so that a line's number is the file's: the first of a moment holds all its values, the others
are left empty. What is neither temperature nor humidity is left out.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Literal

from attrs import frozen

from core.chamber.logs import heads
from core.chamber.logs.column import Role
from core.chamber.logs.decoding import Separator, cells_of, cut_at_the_end
from core.chamber.logs.frame import Frame
from core.chamber.logs.framing import Above
from core.chamber.logs.table import Table
from core.chamber.logs.values import number, unit_of

Quantity = Literal["temperature", "humidity"]
QUANTITIES: tuple[Quantity, ...] = ("temperature", "humidity")
LONGEST_NAME, MOST_NAMES, RETURNS = 24, 12, 3


@frozen
class LongForm:
    """Columns from 0. unit_at: None where the values have none beside them. head_at, units_at, first: lines from 0.

    names_probes: whether the quantity's words name a probe too, as "Temperature 2" does.
    """

    separator: Separator
    width: int
    quantity_at: int
    value_at: int
    unit_at: int | None
    head_at: int | None
    units_at: int | None
    first: int
    names_probes: bool


def named_in(table: Table, at: int) -> bool:
    """Whether a column's words are quantities, temperature and humidity among them."""
    words = Counter(cell for cell in table.column(at) if len(cell) <= LONGEST_NAME)
    held = {heads.role_in(word) for word, count in words.items() if count >= RETURNS}
    return len(words) <= MOST_NAMES and set(QUANTITIES) <= held


def long_form_of(table: Table, times: dict[int, Role], frame: Frame, above: Above) -> LongForm | None:
    """None where no column names the quantity, or where its values stand in no single column."""
    free = [at for at in range(len(table.head)) if at not in times]
    quantity_at = next((at for at in free if named_in(table, at)), None)
    if quantity_at is None or frame.edges or frame.separator == " " or len(table.head) != frame.width:
        return None
    wanted = [row for row in table.rows if heads.role_in(row[quantity_at]) in QUANTITIES]
    values = [at for at in free if at != quantity_at and _are_readings([row[at] for row in wanted], table.decimal)]
    if len(values) != 1:
        return None
    units = [at for at in free if at not in (quantity_at, *values) and _are_units([row[at] for row in wanted])]
    probes = {heads.probe_in(row[quantity_at], False) for row in wanted}
    return LongForm(
        separator=frame.separator,
        width=frame.width,
        quantity_at=quantity_at,
        value_at=values[0],
        unit_at=units[0] if units else None,
        head_at=None if above.head_line is None else above.head_line - 1,
        units_at=None if above.units_line is None else above.units_line - 1,
        first=above.first,
        names_probes=len(probes) > 1,
    )


def _are_readings(cells: Sequence[str], decimal: str) -> bool:
    """Numbers, and more of them than would number the probes."""
    written = [cell for cell in cells if cell.strip()]
    read = [each.value for cell in written if (each := number(cell, decimal)) is not None]
    return len(read) > 0.9 * len(written) and (any(each % 1 for each in read) or len(set(read)) > MOST_NAMES)


def _are_units(cells: Sequence[str]) -> bool:
    written = [cell for cell in cells if cell.strip()]
    return len(written) >= RETURNS and all(map(unit_of, written))


def widened(lines: Sequence[str], long: LongForm) -> list[str]:
    """As many lines, with a column for each quantity at their ends."""
    wide = list(lines)
    if long.head_at is not None:
        head = cells_of(lines[long.head_at], long.separator) or []
        wide[long.head_at] = _line(long, [*_kept(long, head, "probe"), *QUANTITIES])
    if long.units_at is not None:
        wide[long.units_at] = ""
    begun: dict[tuple[str, ...], tuple[int, dict[str, str]]] = {}
    end = len(lines)
    if cut_at_the_end([*lines[long.first :]], long.separator):
        end -= 1
        wide[end] = lines[end].split(long.separator)[0]  # no row: its value may be cut off
    for at in range(long.first, end):
        cells = cells_of(lines[at], long.separator) if lines[at].strip() else None
        if cells is None or len(cells) != long.width:
            continue  # a broken line is reported as such
        role, value = heads.role_in(cells[long.quantity_at]), _value(long, cells)
        wide[at] = ""
        if role not in QUANTITIES:
            continue
        kept = tuple(_kept(long, cells, heads.probe_in(cells[long.quantity_at], False)))
        place, held = begun.get(kept, (at, {}))
        if role in held:  # the same moment again: a row of its own, to be reported as a repeat
            place, held = at, {}
        held[role] = value
        begun[kept] = place, held
        wide[place] = _line(long, [*kept, *(held.get(each, "") for each in QUANTITIES)])
    return wide


def _kept(long: LongForm, cells: Sequence[str], probe: str) -> list[str]:
    gone = (long.quantity_at, long.value_at, long.unit_at)
    kept = [cell.strip() for at, cell in enumerate(cells) if at not in gone]
    return [*kept, probe] if long.names_probes else kept


def _value(long: LongForm, cells: Sequence[str]) -> str:
    value = cells[long.value_at].strip()
    named = heads.unit_in(cells[long.quantity_at])
    unit = named if long.unit_at is None else cells[long.unit_at].strip()
    return f"{value} {unit}" if value and unit else value


def _line(long: LongForm, cells: Sequence[str]) -> str:
    return long.separator.join(
        '"{}"'.format(cell.replace('"', '""')) if long.separator in cell or '"' in cell else cell for cell in cells
    )
