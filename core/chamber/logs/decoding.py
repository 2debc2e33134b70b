"""From a file's bytes to lines and cells of text, whatever wrote them."""

from __future__ import annotations

import csv
from collections.abc import Sequence
from typing import Literal

from core.refusals import Refusal

Encoding = Literal["utf-8", "utf-16-le", "utf-16-be", "cp1252"]
Separator = Literal[",", ";", "\t", "|", " "]
"""A space means any run of blanks: columns set out under each other."""
UNREAD = "\ufffd"
KEPT_TEXTS = 4096
"""Texts whose meaning is kept: most come again."""

_MARKS: tuple[tuple[bytes, Encoding], ...] = (
    (b"\xef\xbb\xbf", "utf-8"),
    (b"\xff\xfe", "utf-16-le"),
    (b"\xfe\xff", "utf-16-be"),
)
_WIDE: tuple[tuple[int, Encoding], ...] = ((1, "utf-16-le"), (0, "utf-16-be"))
"""Which of each two bytes is nothing, for most letters."""
_NO_TEXT = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"%PDF", b"\x1f\x8b", b"\x89PNG", b"\xff\xd8\xff", b"SQLite format")


def encoding_of(data: bytes) -> Encoding:
    """By the byte-order mark; else by where zero bytes fall; else UTF-8 unless most of its letters do not come out.

    Raises Refusal for what is plainly no text.
    """
    if not data.strip(b"\0 \t\r\n"):
        raise Refusal("file", "This file is empty. Choose the text file that the logger saved.")
    if data.startswith(_NO_TEXT):
        raise Refusal("file", "This file is not text. Save or export it from the logger as text (CSV) and choose that.")
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return encoding
    for zeros_from, encoding in _WIDE:
        zeros, others = data[zeros_from::2].count(0), data[1 - zeros_from :: 2].count(0)
        if zeros * 4 > len(data) and others * 10 < len(data):
            return encoding
    text = data.decode("utf-8", "replace")
    unread = text.count(UNREAD)
    letters = len(text) - len(text.encode("ascii", "ignore"))
    return "cp1252" if unread * 2 > letters else "utf-8"


def lines_of(data: bytes, encoding: Encoding) -> list[str]:
    """Every line without its ending, the last one "" where the file ends with one. Zero bytes at a line's ends go:
    a logger that lost power leaves them. One inside a line stays, so that the line is not taken."""
    text = data.decode(encoding, "replace").removeprefix("\ufeff")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return [line.strip("\0") for line in lines] if "\0" in text else lines


def cells_of(line: str, separator: str) -> list[str] | None:
    """The cells of one line, None where a quotation mark is not closed: a quote never reaches into the next line."""
    if '"' not in line:
        return line.split() if separator == " " else line.split(separator)
    if "\0" in line:
        return None
    try:
        return next(csv.reader((line,), delimiter=separator, skipinitialspace=True, strict=True))
    except csv.Error:
        return None


def cut_at_the_end(rows: list[str], separator: str) -> bool:
    """Whether the last line may have lost its end: it has no line ending, and does not end as the fifty before it do.

    A cut "80.1" is "80." or "8", so a line is whole if it ends in the same sign as the others or, where that is a
    digit, in as many digits after the same decimal mark or colon.
    """
    if not rows or not rows[-1]:
        return False
    tail = _tail(rows[-1], separator)
    before = [_tail(line, separator) for line in rows[-51:-1] if line]
    return not tail or not before or before.count(tail) < 0.9 * len(before)


def _tail(line: str, separator: str) -> str:
    """What a line ends in, digits as 0: ".0" of 80.1, "C" of 12 °C; "" where whole digits may be missing."""
    rest = line.rstrip("0123456789")
    if rest == line:
        return line[-1:]
    ends_in_a_fraction = rest[-1:] in (".", ",", ":") and rest[-1:] != separator
    return rest[-1] + "0" * (len(line) - len(rest)) if ends_in_a_fraction else ""


def join(cells: Sequence[str], lead: int) -> list[str]:
    """Cells of a row whose values were parted at their decimal commas, joined again. Half a number becomes none."""
    pairs = zip(cells[lead::2], cells[lead + 1 :: 2], strict=False)
    return [*cells[:lead], *(f"{whole},{part}" if whole and part else whole + part and "?" for whole, part in pairs)]
