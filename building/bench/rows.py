"""The measurements by name. A new one is a function in a file of its own, and a line here."""

from collections.abc import Callable

from building.bench import Row, drying, logs, pages, settling
from building.bench.answer import answer, answer_slowed
from building.bench.first_visit import first_visit
from building.bench.journal import journal
from building.bench.many_chambers import CHAMBERS
from building.bench.start import start


def rows(chambers: int = CHAMBERS) -> dict[str, Callable[[], Row]]:
    return OTHERS | settling.rows(chambers) | drying.rows()


OTHERS: dict[str, Callable[[], Row]] = {
    "start": start,
    "answer": answer,
    "answer-slowed": answer_slowed,
    "journal": journal,
    "first-visit": first_visit,
    "today": pages.today,
    "batch-page": pages.batch_page,
    "batch-ahead": pages.batch_ahead,
    "logs": logs.logs,
    "logs-chart": logs.chart,
    "logs-growth": logs.growth,
}
ROWS = rows()
