"""The logs looked at, a slice a request: how far it is, or what was found. Drafts and saved runs alike."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from hashlib import sha256
from typing import Any

from attrs import frozen
from flask import Response, abort, make_response, render_template, request

from core.chamber.proof_run import Doing, Found, find, finding
from core.daybook.corrections.logs import LogCorrection, log_corrections
from core.daybook.facts.proofs import ProofRun
from core.daybook.proofs import given
from core.refusals import Refusal, Refused
from core.sentence import Message, Sentence
from web.files import NoSuchFile, file_of
from web.instruments import shelf
from web.screens.chamber.proofs.drafts import Draft
from web.work import work

UNREADABLE: Message = "The log cannot be read here."


@frozen
class Look:
    """A run and how its probes are corrected. data: its files' bytes, None where they are asked of the device."""

    run: ProofRun
    corrections: tuple[LogCorrection, ...]
    data: tuple[bytes, ...] | None = None

    @property
    def key(self) -> str:
        """All that what is found depends on, but for the names of run and files."""
        run = self.run
        files = [(file.sha256, file.layout) for file in run.files]
        asked = (run.temperature_c, run.temperature_half_k, run.humidity, run.humidity_half, run.room_c, run.centre)
        part = (run.from_s, run.until_s, run.utc_offset_s)
        return sha256(repr((files, run.probes, self.corrections, asked, part)).encode()).hexdigest()

    @property
    def notes(self) -> tuple[Sentence, ...]:
        return tuple(note for each in self.corrections for note in each.notes)

    def files(self) -> tuple[bytes, ...]:
        """Raises NoSuchFile where the device does not hold one; may break off the request to have it fetched."""
        return self.data if self.data is not None else tuple(file_of(file.sha256) for file in self.run.files)


def look_at(run: ProofRun, at: datetime, draft: Draft | None = None) -> Look:
    """at: when it is or was saved."""
    data = None if draft is None else tuple(file.data for file in draft.files)
    return Look(run, log_corrections(shelf(), run, at), data)


def found_in(look: Look) -> Found | None:
    """What was found, if the work is done."""
    return work().result(look.key)


def found_again(look: Look) -> Found:
    """Of what the page has just shown; should it have been let go since, it is worked out once more."""
    try:
        return found_in(look) or find(given(look.run, look.files(), look.corrections))
    except (NoSuchFile, Refusal, Refused):
        abort(404, UNREADABLE)


def go_on(look: Look) -> Found | Doing | None:
    """One slice of work. None: it was stopped. Raises Refusal or Refused for logs that cannot be looked at."""
    if (found := found_in(look)) is not None:
        return found
    if is_waiting() and not work().is_under_way(look.key):
        return None  # the page that waits must not begin again what was stopped
    if not work().is_under_way(look.key):
        files = look.files()
        work().begin(look.key, lambda: finding(given(look.run, files, look.corrections)))
    doing = work().advance(look.key)
    return found_in(look) if doing is None else doing


def is_waiting() -> bool:
    """Whether the page asks by itself how far the work is."""
    return "step" in request.args


def _step() -> int:
    """Each asking differs from the one before: only then does the page ask once more."""
    text = request.args.get("step", "")
    return int(text) if text.isdecimal() and len(text) < 9 else 0


def progress(doing: Doing | None, path: str) -> Response | tuple[str, int]:
    """The answer to a page that waits, while there is more to do."""
    if doing is None:
        return "", 204
    return make_response(render_template("chamber/proofs/progress.html", doing=doing, path=path, step=_step()))


def whole_page(page: str) -> Response:
    """The answer to a page that waits, once there is nothing to wait for: it takes the whole page's place."""
    response = make_response(page)
    if is_waiting():
        response.headers["HX-Retarget"] = "body"
        response.headers["HX-Reswap"] = "innerMorph"
    return response


def sentences(refused: Refusal | Refused) -> Sequence[Sentence]:
    return [each.said for each in (refused.refusals if isinstance(refused, Refused) else (refused,))]


def drop(look: Look) -> None:
    work().drop(look.key)


def stage(look: Look, path: str, template: str, **context: Any) -> Response | tuple[str, int] | Found:
    """Found where it is done; else the answer to give now: how far it is, or why it cannot be looked at."""
    try:
        outcome = go_on(look)
    except (Refusal, Refused) as refused:
        page = render_template(template, run=look.run, doing=None, path=path, refused=sentences(refused), **context)
        return whole_page(page)
    if isinstance(outcome, Found):
        return outcome
    if is_waiting():
        return progress(outcome, path)
    return make_response(
        render_template(template, run=look.run, doing=outcome, path=path, refused=(), step=0, **context)
    )
