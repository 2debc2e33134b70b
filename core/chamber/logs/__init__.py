"""A logger's text file, whatever wrote it: `guess` its layout, ask what the file leaves open, `read` it.

The guess is shown and may be changed; a layout with an open question reads nothing. Nothing outside physical sense is
taken, and every line that was not taken is listed with the reason.
"""

from core.chamber.logs.changing import check, with_order
from core.chamber.logs.column import Choice, Column, Question, TimeStyle
from core.chamber.logs.guessing import answer, change, guess
from core.chamber.logs.layout import Layout
from core.chamber.logs.log import Log, clock_kind
from core.chamber.logs.reading import Progress, preview_times, read, reading
from core.chamber.logs.rows import Skipped
from core.chamber.series import Series

__all__ = [
    "Choice",
    "Column",
    "Layout",
    "Log",
    "Progress",
    "Question",
    "Series",
    "Skipped",
    "TimeStyle",
    "answer",
    "change",
    "check",
    "clock_kind",
    "guess",
    "preview_times",
    "read",
    "reading",
    "with_order",
]
