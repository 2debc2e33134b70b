"""What can happen in the kitchen, one record a kind. It never changes; `core.daybook.entries` says when it happened.

Values are SI. KIND is the kind's name in the journal, whatever its class is called one day. Once entries of a kind
exist its fields may be added to (with a default), never renamed.
"""

from __future__ import annotations

from typing import Any, get_args

from attrs import frozen

from core.daybook.facts import (
    air_log,
    batch,
    chamber,
    cure,
    device,
    drying,
    ferment,
    formula,
    instruments,
    meat,
    note,
    preparation,
    proofs,
    salting,
)


@frozen
class Withdrawn:
    """Takes back the entry it corrects: it was a mistake and nothing stands in its place."""

    KIND = "withdrawn"


@frozen
class Unknown:
    """A kind this version does not know, from a newer daybook. Kept as it came, so that no export loses it."""

    kind: str
    fields: dict[str, Any]


@frozen
class Unreadable(Unknown):
    """A fact that cannot be: altered outside, damaged, or of an older version that let more in. Kept as it came."""


Fact = (
    batch.Fact
    | chamber.Fact
    | air_log.Fact
    | drying.Fact
    | cure.Fact
    | ferment.Fact
    | salting.Fact
    | meat.Fact
    | formula.Fact
    | instruments.Fact
    | preparation.Fact
    | proofs.Fact
    | device.Fact
    | note.Fact
    | Withdrawn
    | Unknown
)

KNOWN: tuple[type[Any], ...] = (
    *get_args(batch.Fact),
    *get_args(chamber.Fact),
    air_log.AirLogTaken,
    drying.DryingBounded,
    *get_args(cure.Fact),
    *get_args(ferment.Fact),
    *get_args(salting.Fact),
    meat.MeatNoted,
    *get_args(formula.Fact),
    *get_args(instruments.Fact),
    *get_args(preparation.Fact),
    proofs.ProofRun,
    device.DeviceNamed,
    note.NoteTaken,
    Withdrawn,
)


def kind_of(fact: Fact | type[Any]) -> str:
    """The kind's name in the journal: "piece-weighed"."""
    return fact.kind if isinstance(fact, Unknown) else fact.KIND


KINDS: dict[str, type[Any]] = {kind_of(cls): cls for cls in KNOWN}
