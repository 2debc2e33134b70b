"""Reads one subject's table of published values: `rows("cure")` is tests/published/cure.csv."""

import csv
import json
from pathlib import Path
from typing import Any

from attrs import frozen

COLUMNS = ["id", "quantity", "inputs", "expected", "tolerance", "source", "verified", "note"]
VERIFIED = ("seen", "copy", "memory", "practice", "computed")


@frozen
class Row:
    id: str
    quantity: str
    inputs: dict[str, Any]
    expected: float
    tolerance: float
    source: str
    verified: str
    note: str


def rows(subject: str) -> list[Row]:
    """Every row; ValueError where the head, an id or a `verified` is not as agreed."""
    with (Path(__file__).parent / f"{subject}.csv").open(encoding="utf-8", newline="") as file:
        reader = csv.DictReader(file)
        if reader.fieldnames != COLUMNS:
            raise ValueError(f"{subject}.csv must have the columns {', '.join(COLUMNS)}.")
        read = [_row(subject, **line) for line in reader]
    if len({row.id for row in read}) != len(read):
        raise ValueError(f"{subject}.csv uses an id twice.")
    return read


def _row(subject: str, inputs: str, expected: str, tolerance: str, verified: str, **words: str) -> Row:
    if verified not in VERIFIED:
        raise ValueError(f"{subject}.csv, {words['id']}: {verified!r} is none of {', '.join(VERIFIED)}.")
    return Row(
        inputs=json.loads(inputs), expected=float(expected), tolerance=float(tolerance), verified=verified, **words
    )
