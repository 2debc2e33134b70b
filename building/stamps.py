"""Skip a step whose inputs have not changed: their contents are hashed and kept in a stamp beside the last result."""

import hashlib
from collections.abc import Iterable
from pathlib import Path

from building.paths import STAMPS, shown


def content_hash(*parts: Path | str | bytes) -> str:
    """One hash over files (path and content), texts and bytes, in the order given."""
    total = hashlib.sha256()
    for part in parts:
        name, data = _named(part)
        total.update(f"{name}:{len(data)}:".encode())
        total.update(data)
    return total.hexdigest()


def _named(part: Path | str | bytes) -> tuple[str, bytes]:
    if isinstance(part, Path):
        return shown(part), part.read_bytes() if part.is_file() else b"\0absent"
    return ("", part) if isinstance(part, bytes) else ("", part.encode())


def is_fresh(step: str, inputs: str, outputs: Iterable[Path]) -> bool:
    stamp = STAMPS / step
    return stamp.is_file() and stamp.read_text() == inputs and all(output.exists() for output in outputs)


def set_fresh(step: str, inputs: str) -> None:
    STAMPS.mkdir(parents=True, exist_ok=True)
    (STAMPS / step).write_text(inputs)


def clear(step: str) -> None:
    """Before the work begins: a step that is stopped half-way must not look done."""
    (STAMPS / step).unlink(missing_ok=True)
