"""A batch in its stages: what each came to, in a line, and which one is now."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from attrs import frozen

from core.daybook.batch import Batch, Stage
from core.daybook.curing import known_cure
from core.daybook.due.salt import waits_for_salt
from core.daybook.piece import Piece
from core.mix.measures import GOING_IN
from core.quantities import COUNT, LOSS, PH, Amount
from core.sentence import Message, Rounded, Said, Sentence, Value, in_a_row, listed
from core.verdict import Reason, Verdict
from web.screens.ferment.panel import Panel
from web.screens.ferment.panel import summary as ferment_summary
from web.screens.mix.salt_panel import salt_summary
from web.visitor import now, reader

TITLES: dict[Stage, Message] = {"mix": "Mix", "ferment": "Ferment", "dry": "Dry", "release": "Release"}
_EACH: dict[str, Message] = {"ready": "{count} ready", "hold": "{count} hold", "discard": "{count} discard"}


@frozen
class Step:
    """One of the strip. is_now: what is to be done is done here."""

    key: Stage
    result: Said
    is_now: bool
    is_done: bool

    @property
    def title(self) -> Message:
        return TITLES[self.key]


def steps(batch: Batch, verdicts: Mapping[str, Verdict], ferment: Panel | None) -> tuple[Step, ...]:
    """A whole muscle, and one whose meat nobody watched while it was warm, has no fermentation."""
    came_to: dict[Stage, Said] = {
        "mix": _mixed(batch),
        "ferment": _fermented(batch, ferment),
        "dry": dried(batch.hanging or batch.pieces, batch.start.target_loss),
        "release": _released(batch, verdicts),
    }
    ferments = ferment is not None or batch.start.style != "whole-muscle"
    keys: list[Stage] = [key for key in TITLES if ferments or key != "ferment"]
    present = keys.index("mix" if is_unsalted(batch) else batch.stage)
    return tuple(Step(key, came_to[key], at == present, at < present) for at, key in enumerate(keys))


def is_unsalted(batch: Batch) -> bool:
    """Cured, and neither put into salt nor hung: that comes first."""
    return batch.cure is not None and not batch.pieces and waits_for_salt(batch)


def summary(batch: Batch, verdicts: Mapping[str, Verdict]) -> Said:
    """The one figure that matters at the batch's stage, and the verdicts where there are some."""
    if batch.stage == "mix":
        return _mixed(batch)
    if fermenting := ferment_summary(batch, now()):
        return fermenting
    if batch.stage == "ferment":
        return _read(batch) or ppm(batch)
    lost = _mean_loss(batch.hanging)
    if lost is None:
        return ppm(batch)
    return Sentence("lost {loss}; {verdicts}", {"loss": lost, "verdicts": listed(_counted(verdicts))})


def ppm(batch: Batch) -> Said:
    cure = known_cure(batch)
    if cure is None:
        return ""
    told = {"nitrite": Rounded(Amount(cure.nitrite_ppm * 1e-6, GOING_IN))}
    if cure.over_by_licence:
        return Sentence("{nitrite} nitrite, over the limit by an exception", told)
    return Sentence("{nitrite} nitrite", told)


def dried(pieces: Iterable[Piece], target: float) -> Said:
    lost = _mean_loss(pieces)
    told: dict[str, Value] = {"target": Rounded(Amount(target, LOSS))}
    if lost is None:
        return Sentence("{target} to lose", told)
    return Sentence("{loss} lost of {target}", {"loss": lost, **told})


def _mixed(batch: Batch) -> Said:
    if batch.cure is None:
        return Sentence("cure not weighed")
    return (salt_summary(batch, now()) if batch.in_salt else None) or ppm(batch)


def _fermented(batch: Batch, ferment: Panel | None) -> Said:
    if ferment and ferment.over:
        return Sentence("over its degree-hours")
    done = ferment.done if ferment else None
    return done or ferment_summary(batch, now()) or _read(batch) or ""


def _read(batch: Batch) -> Sentence | None:
    return None if batch.last_ph is None else Sentence("pH {ph}", {"ph": Amount(batch.last_ph, PH)})


def _released(batch: Batch, verdicts: Mapping[str, Verdict]) -> Said:
    down = len(batch.pieces) - len(batch.hanging)
    taken = [Sentence("{count} taken down", {"count": Amount(down, COUNT)}, plural="{count} taken down")]
    told = [*_counted(verdicts), *(taken if down else ())]
    return Sentence("{told}", {"told": in_a_row(told)}) if told else ""


def _counted(verdicts: Mapping[str, Verdict]) -> list[Sentence]:
    words = Counter(verdict.word for verdict in verdicts.values())
    return [Sentence(_EACH[word], {"count": Amount(count, COUNT)}, plural=_EACH[word]) for word, count in words.items()]


def _mean_loss(pieces: Iterable[Piece]) -> Rounded | None:
    losses = [piece.loss for piece in pieces if piece.loss is not None]
    return Rounded(Amount(sum(losses) / len(losses), LOSS)) if losses else None


@frozen
class Shared:
    """What several pieces wait for alike: said once. texts: why, one where it is the same of all."""

    pieces: tuple[Piece, ...]
    texts: tuple[Sentence, ...]
    settle: Sentence
    fatal: bool


def waited_for(batch: Batch, verdicts: Mapping[str, Verdict]) -> tuple[Shared, ...]:
    """What keeps the pieces from being ready, with all the pieces that it keeps; what is thrown away comes first."""
    found: dict[tuple[str, bool], list[tuple[Piece, Reason]]] = {}
    for piece in batch.hanging:
        for reason in verdicts[piece.id].unmet:
            found.setdefault((reason.settle.say(reader()), reason.fatal), []).append((piece, reason))
    return tuple(sorted(map(_shared, found.values()), key=lambda each: not each.fatal))


def _shared(found: list[tuple[Piece, Reason]]) -> Shared:
    pieces = {piece.id: piece for piece, _ in found}
    texts = {reason.text.say(reader()): reason.text for _, reason in found}
    _, reason = found[0]
    return Shared(tuple(pieces.values()), tuple(texts.values()), reason.settle, reason.fatal)
