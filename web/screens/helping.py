"""What the help page says: each screen in a paragraph, the keys, and how sure the figures are."""

from __future__ import annotations

from core.sentence import Message

CHAPTERS: tuple[tuple[Message, Message], ...] = (
    (
        "Today",
        "What needs a hand, the most dangerous first. A tap on a line's button opens the form for it. Below "
        "it or beside it: the chamber as last read, and what hangs.",
    ),
    (
        "Batches",
        "A batch from the mix to the table. Weigh the cure, read the pH until it is 5.3 or lower, hang the "
        "pieces, weigh them as they dry. Of each piece the daybook says ready, hold or discard, and why.",
    ),
    (
        "Chamber",
        "Its air, water, set-points and instruments. Prepare it before the first batch: clean, sanitise, "
        "charge the humidifier, check the sensors, then prove it empty for two days with the loggers' files.",
    ),
    (
        "Sums",
        "Single sums that keep nothing. The answer stands beside the boxes while you type. Search by the word you use.",
    ),
    (
        "Book",
        "The record itself. It lives on this device only: save a copy after every day's work. A copy read in "
        "on another tablet is merged with what is there.",
    ),
    (
        "Ready, hold, discard",
        "Hold is the answer wherever the evidence does not suffice; the next step that would settle it is "
        "named. A verdict is no approval: local law and a food-safety authority come first.",
    ),
    (
        "Numbers",
        "A decimal comma or a point, and a unit if it is another than the one shown: 1.2 kg, 1250 g, 2 lb 3 "
        "oz, 55 °F. Nothing typed is lost: a half-filled form is there when you come back.",
    ),
    (
        "Keys",
        "Tab goes from box to box, Enter sends the form, Space opens a fold or ticks a box, arrows choose.",
    ),
    (
        "A slip",
        "Undo stands at the top right after saving. Later, every line of the log has Correct: the old value "
        "stays in the record beside the new one.",
    ),
    (
        "How sure a figure is",
        "Each figure shows its working and its source. A source is marked where it was read in a copy, comes "
        "from memory or was worked out here; common practice without a source is called that.",
    ),
)
"""Head and text, in the order of the tabs."""
