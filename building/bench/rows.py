"""The measurements by name. A new one is a function in a file of its own, and a line here."""

from collections.abc import Callable

from building.bench import Row, settling
from building.bench.first_visit import first_visit

ROWS: dict[str, Callable[[], Row]] = {
    "first-visit": first_visit,
    "settling-cycles": settling.cycles,
    "settling-hold": settling.hold,
    "settling-tau": settling.tau,
    "settling-events": settling.events,
}
