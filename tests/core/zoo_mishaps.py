"""What happens to a logger's file on its way: mishaps that may lose readings, but never make one out of nothing.

Each takes an animal and a source of chance, and returns the animal after the mishap. Digits, signs and the letters of
units and of AM and PM are never touched, so that any value read must be a true one of its moment.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from attrs import evolve, field, frozen

from tests.core.zoo_keeper import Animal

UNTOUCHED = frozenset(b"0123456789-+APMapmCFcf%\xb0")
UNWELCOME = frozenset(b"0123456789-+APMapmCFcf%\xb0")
"""What no byte is turned into: it would be another file's truth, not a broken one's."""


@frozen
class Victim:
    """A file after its mishaps. `holds`: what its columns hold now, for whoever answers its questions."""

    animal: Animal
    data: bytes
    holds: tuple[str, ...]
    mishaps: tuple[str, ...] = field(factory=tuple)


def _with_lines(victim: Victim, lines: list[str]) -> Victim:
    animal = evolve(victim.animal, lines=tuple(lines))
    return evolve(victim, animal=animal, data=animal.data)


def _parted(victim: Victim) -> tuple[list[str], list[str]]:
    lines = list(victim.animal.lines)
    return lines[: victim.animal.body], lines[victim.animal.body :]


def rows_dropped(victim: Victim, chance: Random) -> Victim:
    above, rows = _parted(victim)
    share = chance.choice((0.02, 0.2, 0.5))
    return _with_lines(victim, above + [row for row in rows if chance.random() > share])


def rows_repeated(victim: Victim, chance: Random) -> Victim:
    above, rows = _parted(victim)
    at, count = chance.randrange(len(rows) or 1), chance.choice((1, 3, 40))
    return _with_lines(victim, above + rows + rows[at : at + count])


def rows_shuffled(victim: Victim, chance: Random) -> Victim:
    above, rows = _parted(victim)
    chance.shuffle(rows)
    return _with_lines(victim, above + rows)


def a_block_moved(victim: Victim, chance: Random) -> Victim:
    above, rows = _parted(victim)
    at, count, to = chance.randrange(len(rows) or 1), chance.choice((1, 6, 30)), chance.randrange(len(rows) or 1)
    block, rest = rows[at : at + count], rows[:at] + rows[at + count :]
    return _with_lines(victim, above + rest[:to] + block + rest[to:])


def newest_first(victim: Victim, chance: Random) -> Victim:
    above, rows = _parted(victim)
    return _with_lines(victim, above + rows[::-1])


def the_head_lost(victim: Victim, chance: Random) -> Victim:
    return _with_lines(evolve(victim, animal=evolve(victim.animal, body=0)), _parted(victim)[1])


def the_head_again(victim: Victim, chance: Random) -> Victim:
    above, rows = _parted(victim)
    at = chance.randrange(len(rows) or 1)
    return _with_lines(victim, above + rows[:at] + above[-1:] + rows[at:])


def strange_lines(victim: Victim, chance: Random) -> Victim:
    above, rows = _parted(victim)
    for _ in range(chance.choice((1, 5))):
        at = chance.randrange(len(rows) or 1)
        rows.insert(at, chance.choice(("", "   ", "***", "ERR", "power lost", ",,,,", ";;", "\0\0\0\0", '"', "-" * 40)))
    return _with_lines(victim, above + rows)


def cells_emptied(victim: Victim, chance: Random) -> Victim:
    separator = victim.animal.separator
    above, rows = _parted(victim)
    for at in chance.sample(range(len(rows)), min(5, len(rows))):
        cells = rows[at].split(separator)
        kept = sum(held in ("time", "date", "clock", "probe") for held in victim.holds)  # they stand in front
        cells[chance.randrange(kept, len(cells))] = chance.choice(
            ("", "---", "ERR", "NaN", "999.9", "-127", "n/a", "-999")
        )
        rows[at] = separator.join(cells)
    return _with_lines(victim, above + rows)


def columns_swapped(victim: Victim, chance: Random) -> Victim:
    separator = victim.animal.separator
    width = len(victim.holds)
    order = list(range(width))
    chance.shuffle(order)
    swapped: list[str] = []
    if victim.animal.name == "the same heads again":
        return victim  # only their order tells its columns apart
    for number, line in enumerate(victim.animal.lines):
        cells = line.split(separator)
        if (len(cells) != width and number >= victim.animal.body - 2) or '"' in line or separator == "   ":
            return victim
        swapped.append(separator.join(cells[at] for at in order) if len(cells) == width else line)
    return _with_lines(evolve(victim, holds=tuple(victim.holds[at] for at in order)), swapped)


def cut_off(victim: Victim, chance: Random) -> Victim:
    return evolve(victim, data=victim.data[: chance.randrange(len(victim.data) // 3, len(victim.data))])


def bytes_flipped(victim: Victim, chance: Random) -> Victim:
    data = bytearray(victim.data)
    for _ in range(chance.choice((1, 4, 30))):
        at = chance.randrange(len(data))
        new = chance.randrange(256)
        if data[at] not in UNTOUCHED and new not in UNWELCOME:
            data[at] = new
    return evolve(victim, data=bytes(data))


def bytes_lost(victim: Victim, chance: Random) -> Victim:
    data = bytearray(victim.data)
    for _ in range(chance.choice((1, 4, 12))):
        at = chance.randrange(len(data))
        if data[at] not in UNTOUCHED:
            del data[at]
    return evolve(victim, data=bytes(data))


def line_endings_mixed(victim: Victim, chance: Random) -> Victim:
    encoded = [line.encode(victim.animal.encoding) for line in victim.animal.lines]
    endings = [ending.encode(victim.animal.encoding) for ending in ("\n", "\r\n", "\r", "\n\n")]
    return evolve(victim, data=victim.animal.mark + b"".join(line + chance.choice(endings) for line in encoded))


def zeros_written(victim: Victim, chance: Random) -> Victim:
    zeros = b"\0" * chance.choice((1, 512))
    return evolve(
        victim, data=chance.choice((victim.data + zeros, zeros + victim.data, victim.data + zeros + victim.data))
    )


OF_LINES: tuple[Callable[[Victim, Random], Victim], ...] = (
    *(rows_dropped, rows_repeated, rows_shuffled, a_block_moved, newest_first, the_head_lost, the_head_again),
    *(strange_lines, cells_emptied, columns_swapped),
)
OF_BYTES: tuple[Callable[[Victim, Random], Victim], ...] = (
    *(cut_off, bytes_flipped, bytes_lost, line_endings_mixed, zeros_written),
)


def befall(animal: Animal, chance: Random) -> Victim:
    """An animal after one mishap to its lines, one to its bytes, or both."""
    victim = Victim(animal, animal.data, animal.holds)
    picked = [chance.choice(OF_LINES)] if chance.random() < 0.7 else []
    if not picked or chance.random() < 0.6:
        picked.append(chance.choice(OF_BYTES))
    for mishap in picked:
        victim = mishap(victim, chance)
    return evolve(victim, mishaps=tuple(mishap.__name__ for mishap in picked))
