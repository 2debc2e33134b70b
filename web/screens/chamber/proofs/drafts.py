"""A run being put together: its files' bytes, how they are laid out, what was typed. In memory until it is saved."""

from __future__ import annotations

from hashlib import sha256

from attrs import define, evolve, field, frozen
from flask import abort, current_app

from core.chamber.logs import Layout, guess
from core.daybook.facts.proofs import ProofRun
from core.quantities import COUNT, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from web.journal import fresh_id

MOST_DRAFTS = 3
MOST_FILES = 8
LARGEST = 20 * 2**20
"""Bytes of one file: two years of minutes."""
LONGEST_NAME = 80
TOO_LARGE = Sentence(
    "This file is larger than {size} MB: no log of a few days is.", {"size": Amount(LARGEST // 2**20, COUNT)}
)
TOO_MANY = Sentence(
    "A run can have {count} file at most.",
    {"count": Amount(MOST_FILES, COUNT)},
    plural="A run can have {count} files at most.",
)
LET_GO: Message = "A run that is not saved is lost when the daybook is closed. Choose the files again."


@frozen
class DraftFile:
    """is_settled: the maker has seen how it is read, and said that it is right."""

    sha256: str
    name: str
    data: bytes = field(repr=False)
    layout: Layout
    is_settled: bool = False


@define
class Draft:
    """run: what is to be looked at, once it is settled. corrects: the id of the saved run that this looks at anew.

    then: the path to go to once its files are laid out, where they are not for a run; "" where they are.
    """

    id: str
    files: list[DraftFile] = field(factory=list[DraftFile])
    texts: dict[str, str] = field(factory=dict[str, str])
    run: ProofRun | None = None
    corrects: str | None = None
    then: str = ""

    def take(self, name: str, data: bytes) -> None:
        """Add a file, with the guess of its layout. One that is there already is not added twice. Raises Refusal."""
        if len(data) > LARGEST:
            raise OutOfRange("file", TOO_LARGE)
        if len(self.files) >= MOST_FILES:
            raise OutOfRange("file", TOO_MANY)
        key = sha256(data).hexdigest()
        if all(file.sha256 != key for file in self.files):
            self.files.append(DraftFile(key, plain_name(name), data, guess(data)))
            self.run = None

    def lay_out(self, at: int, layout: Layout, *, is_settled: bool) -> None:
        self.files[at] = evolve(self.files[at], layout=layout, is_settled=is_settled)
        self.run = None

    def leave_out(self, at: int) -> None:
        del self.files[at]
        self.texts = {key: text for key, text in self.texts.items() if not key.startswith(("probe-", "instrument-"))}
        self.run = None

    @property
    def first_unsettled(self) -> int | None:
        return next((at for at, file in enumerate(self.files) if not file.is_settled), None)


def drafts() -> dict[str, Draft]:
    return current_app.extensions.setdefault("proof_drafts", {})


def begin_draft() -> Draft:
    kept = drafts()
    while len(kept) >= MOST_DRAFTS:
        del kept[next(iter(kept))]
    draft = Draft(fresh_id())
    kept[draft.id] = draft
    return draft


def find_draft(draft_id: str) -> Draft:
    return drafts().get(draft_id) or abort(410, LET_GO)


def plain_name(name: str) -> str:
    """A file's own name, without folders or signs that hide."""
    last = name.replace("\\", "/").rsplit("/", 1)[-1]
    shown = " ".join("".join(each if each.isprintable() else " " for each in last).split())
    return shown[-LONGEST_NAME:] or "log"
