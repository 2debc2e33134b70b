"""Which temperature and which humidity belong to one probe, and what to call it."""

from __future__ import annotations

from attrs import evolve

from core.chamber.logs import heads
from core.chamber.logs.column import Column, Role
from core.chamber.logs.notes import ITS_HEAD_ENDS_IN_IT, Note
from core.quantities import METRIC
from core.sentence import Message, Sentence, as_typed

PROBE: Message = "Probe {number}"
COLUMN: Message = "Column {number}"


def named(columns: tuple[Column, ...]) -> tuple[Column, ...]:
    """Each temperature and humidity with its probe's name: what their heads have left in common, else their order."""
    warm, humid = _keys(columns, "temperature"), _keys(columns, "humidity")
    names = _paired(warm, humid)
    astray = _astray(warm, humid)
    for at in astray:
        beside = columns[at].beside
        names |= {at: names[beside - 1]} if beside and beside - 1 in warm else {}
    return tuple(evolve(column, probe=names.get(at, ""), asks_beside=at in astray) for at, column in enumerate(columns))


def _astray(warm: dict[int, str], humid: dict[int, str]) -> tuple[int, ...]:
    """The humidities whose heads do not say which of several temperatures they belong to: none has it, or two have."""
    if len(warm) < 2 or len(warm) == len(humid) or _heads_tell(warm, humid):
        return ()
    keys = list(warm.values())
    return tuple(at for at, key in humid.items() if keys.count(key) != 1)


def _keys(columns: tuple[Column, ...], role: Role) -> dict[int, str]:
    return {
        at: heads.probe_in(column.label, column.why_unit == Note(ITS_HEAD_ENDS_IN_IT))
        for at, column in enumerate(columns)
        if column.role == role
    }


def _paired(warm: dict[int, str], humid: dict[int, str]) -> dict[int, str]:
    """By what the heads have in common, where that tells each from the others; else in their order; else each alone."""
    if _heads_tell(warm, humid):
        return {at: _probe_name(key) for at, key in (warm | humid).items()}
    if len(warm) != len(humid):
        return _each_alone(warm, humid)
    own = [key for key in warm.values() if key]
    are_named = len(set(own)) == len(warm)
    names = [_probe_name(key) for key in own] if are_named else [_key(PROBE, i) for i in range(1, len(warm) + 1)]
    return dict(zip(warm, names, strict=True)) | dict(zip(humid, names, strict=True))


def _each_alone(warm: dict[int, str], humid: dict[int, str]) -> dict[int, str]:
    """By their heads where these differ, humidities beside the temperatures of their name; else by their columns."""
    keys = list(warm.values())
    names = {at: _probe_name(key) if keys.count(key) == 1 else _key(COLUMN, at + 1) for at, key in warm.items()}
    own = {key: names[at] for at, key in warm.items() if keys.count(key) == 1}
    return names | {at: own.get(key, _key(COLUMN, at + 1)) for at, key in humid.items()}


def _heads_tell(warm: dict[int, str], humid: dict[int, str]) -> bool:
    apart = all(len(set(keys.values())) == len(keys) for keys in (warm, humid))
    return apart and (set(humid.values()) <= set(warm.values()) or set(warm.values()) <= set(humid.values()))


def note_on(columns: tuple[Column, ...]) -> tuple[Note, ...]:
    """What to say where several probes differ in nothing but the order of their columns."""
    warm, humid = _keys(columns, "temperature"), _keys(columns, "humidity")
    if len(warm) < 2 or len(warm) != len(humid) or _heads_tell(warm, humid):
        return ()
    return (Note("paired"),)


def _probe_name(key: str) -> str:
    return _key(PROBE, key or 1) if not key or key.isdigit() else key


def _key(text: Message, number: int | str) -> str:
    """How a probe without a name is known, in every language alike: proofs keep it."""
    return Sentence(text, {"number": str(number)}).say(METRIC)


def called(probe: str) -> Sentence:
    """What a probe is called to the reader: as its head has it, or by its number."""
    number = probe.rpartition(" ")[2]
    numbered = (Sentence(PROBE, {"number": number}), Sentence(COLUMN, {"number": number}))
    return next((each for each in numbered if number and each.say(METRIC) == probe), as_typed(probe))
