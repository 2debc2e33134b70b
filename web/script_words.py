"""What the browser's scripts and the starting page say: the build gives them these, in each language that it ships.

A script asks by the key (web/browser/words.js); an element of web/shell.html has it as `data-say`.
"""

from core.language import Message, translated
from core.sentence import DAY_AND_MONTH, DAY_OF, IN_A_ROW, MOMENT, MONTHS
from web.days import OVER, TIME_LEFT

WORDS: dict[str, Message] = {
    "today": "Today",
    "batches": "Batches",
    "chamber": "Chamber",
    "sums": "Sums",
    "book": "Book",
    "description": "Sums and records for dry-curing sausage and whole muscles, on your own device.",
    "for_whom": "For anyone who dry-cures sausage and whole muscles in a small chamber: the sums, the chamber, and "
    "of each piece whether it is ready.",
    "no_script": "The daybook works on your own device and needs JavaScript for it. "
    "Turn it on in the browser's settings.",
    "too_old": "This browser is too old for the daybook. "
    "It needs Safari or iPadOS 16.4, Chrome 112, Firefox 114, or newer.",
    "opening": "Opening the daybook…",
    "readying": "Getting the sums ready…",
    "reading": "Reading your entries…",
    "report": "Report",
    "kept": "This device keeps your entries.",
    "not_kept": "The browser may clear your entries when space runs short: install the app first.",
    "saved_unshown": "It is saved, but the page could not be shown.",
    "failed": "That did not work, and nothing was saved.",
    "stopped": "The daybook stopped. Nothing saved is lost.",
    "rescue": "What is saved lies on this device, and a copy of it can be made now.",
    "save_copy": "Save a copy",
    "mended": "Files that this device had lost are back: the daybook works offline again.",
    "open_again": "Open it again",
    "new_version": "A new version is ready.",
    "use_it": "Use the new version",
    "offline": "Ready to work offline.",
    "no_file": "The file could not be made.",
    "copying": "Saving a copy: {done} of {of} files",
    "stop": "Stop",
    "over": OVER,
    "left": TIME_LEFT,
    "no_chart": "The chart could not be drawn.",
    "empty_chart": "There is nothing to draw.",
    "moves": "Move about in the chart",
    "In": "In",
    "Out": "Out",
    "All": "All",
    "Earlier": "Earlier",
    "Later": "Later",
    "means": "Each line is a mean over 3 h, its shade the lowest to the highest. Come nearer to see every reading.",
    "touch": "Touch the chart to read it.",
    "moment_in": "{chart}: moment",
    "in_sight": "{start} to {end}",
    "read_at": "{moment}: {reading}",
    "of_probe": "{probe} {readings}",
    "dew_point": "dew point {figure}",
    "next_reading": IN_A_ROW,
    "next_probe": "{before}; {next}",
    "day": DAY_AND_MONTH,
    "day_of": DAY_OF,
    "moment": MOMENT,
}
MONTH_KEYS = tuple(f"month_{number}" for number in range(1, 13))


def in_language(language: str) -> dict[str, str]:
    """By their keys. language: one that has been learnt."""
    texts = {**WORDS, **dict(zip(MONTH_KEYS, MONTHS, strict=True))}
    return {key: translated(text, language) for key, text in texts.items()}
