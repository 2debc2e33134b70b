"""Water in the tank and in the basin: how much a day, when does the tank run dry, when is the basin full?

Read off what was poured. A tank is topped up to the same mark each time, so what went in is what had gone since the
filling before; a basin is emptied each time, so what came out is what had gathered. The first only starts the count.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from itertools import pairwise

from attrs import evolve, frozen

from core.chamber.rates import LASTING, WATER_A_DAY
from core.quantities import VOLUME, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence
from core.sources import COMMON_PRACTICE, DEFINITION
from core.traced import traced
from core.units import DAY_S
from core.working import Figure

ONE_FILLING = timedelta(hours=1)
"""Pourings closer together than this are one."""
LEAST_SPREAD, SPREAD_OF_ONE = 0.25, 0.5
"""A quarter either way at the least, half where there is one interval only (common practice; no published source)."""
ONLY_ONE = "This rests on one interval only: half as fast and half as fast again are both allowed for."
CHANGES = "The chamber asks for more or less as the meat dries, the door opens and the weather turns."
LARGEST_M3 = 1.0
LONGEST_S = 100 * 365 * DAY_S


@frozen
class Poured:
    """Water that was filled in or emptied out. at: a moment with its offset. volume_m3: 0 or more."""

    at: datetime
    volume_m3: float


@frozen
class Outlook:
    """When the level reaches its end. earliest, latest: as fast and as slow as the figures allow."""

    rate: Figure
    lasts: Figure
    earliest: datetime
    expected: datetime
    latest: datetime


def runs_dry(refills: Iterable[Poured], holds_m3: float, now_holds_m3: float | None = None) -> Outlook:
    """Water used a day and the moment the tank runs dry.

    refills: two at least, in any order, more than an hour apart, none above what the tank holds. holds_m3: the tank to
    its mark. now_holds_m3: what it held after the last filling; None means full. Raises OutOfRange.
    """
    _require_volume("holds_m3", "The tank", holds_m3)
    left_m3 = holds_m3 if now_holds_m3 is None else now_holds_m3
    _require_level(left_m3, holds_m3)
    return _outlook(refills, left_m3, holds_m3, "Water used a day", "From the last filling to a dry tank")


def runs_full(emptied: Iterable[Poured], holds_m3: float) -> Outlook:
    """Condensate gathered a day and the moment the basin is full.

    emptied: two at least, in any order, more than an hour apart, none above what the basin holds. holds_m3: to the
    brim. Raises OutOfRange.
    """
    _require_volume("holds_m3", "The basin", holds_m3)
    return _outlook(emptied, holds_m3, holds_m3, "Condensate a day", "From the last emptying to a full basin")


def _outlook(
    poured: Iterable[Poured], room_m3: float, holds_m3: float, rate_name: Message, lasts_name: Message
) -> Outlook:
    fillings = _gathered(poured)
    for each in fillings[1:]:
        if each.volume_m3 > holds_m3 * (1 + 1e-5):
            told = Sentence("No more than it holds, {holds}, can be poured at a time.", {"holds": _volume(holds_m3)})
            raise OutOfRange("poured", told)
    rate = _rate(fillings, rate_name)
    if rate.value <= 0 or rate.low is None or rate.high is None:
        raise OutOfRange("poured", "Some water must have been poured, or there is no rate to go by.")
    if room_m3 / rate.low > LONGEST_S:
        raise OutOfRange("poured", "So little was poured that no day can be told.")
    lasts = (traced("room", room_m3, VOLUME) / traced("rate", rate.value, WATER_A_DAY)).figure(
        "lasts",
        lasts_name,
        LASTING,
        before=rate.working,
        source=COMMON_PRACTICE,
        cautions=(*rate.cautions, CHANGES),
        low=room_m3 / rate.high,
        high=room_m3 / rate.low,
    )
    start = fillings[-1].at
    return Outlook(
        rate,
        lasts,
        earliest=start + timedelta(seconds=room_m3 / rate.high),
        expected=start + timedelta(seconds=lasts.value),
        latest=start + timedelta(seconds=room_m3 / rate.low),
    )


def _gathered(poured: Iterable[Poured]) -> list[Poured]:
    """In order of time, those within an hour of each other as one at its last moment. Raises OutOfRange."""
    fillings: list[Poured] = []
    for each in sorted(poured, key=lambda each: each.at):
        if not 0 <= each.volume_m3 < LARGEST_M3:
            told = Sentence("Each volume must be 0 or more and less than {most}.", {"most": Amount(LARGEST_M3, VOLUME)})
            raise OutOfRange("poured", told)
        if fillings and each.at - fillings[-1].at <= ONE_FILLING:
            each = evolve(each, volume_m3=each.volume_m3 + fillings.pop().volume_m3)
        fillings.append(each)
    if len(fillings) < 2:
        raise OutOfRange("poured", "Two at least must be logged, more than an hour apart: the first starts the count.")
    return fillings


def _rate(fillings: list[Poured], name: Message) -> Figure:
    intervals = [(later.volume_m3, (later.at - earlier.at).total_seconds()) for earlier, later in pairwise(fillings)]
    total_m3, total_s = (sum(each) for each in zip(*intervals, strict=True))
    mean = traced("total", total_m3, VOLUME) / traced("time", total_s, LASTING)
    rates = [volume_m3 / seconds for volume_m3, seconds in intervals]
    spread = LEAST_SPREAD if len(intervals) > 1 else SPREAD_OF_ONE
    amounts = {"slow": Amount(min(rates), WATER_A_DAY), "fast": Amount(max(rates), WATER_A_DAY)}
    return Figure(
        key="water_a_day",
        name=name,
        value=mean.value,
        quantity=WATER_A_DAY,
        working=(
            mean.line(WATER_A_DAY, "All but the first ÷ the time since the first"),
            Sentence("Between two pourings it was {slow} at the slowest, {fast} at the fastest.", amounts),
        ),
        source=DEFINITION,
        cautions=() if len(intervals) > 1 else (ONLY_ONE,),
        low=max(min(min(rates), mean.value * (1 - spread)), mean.value / 10),
        high=max(max(rates), mean.value * (1 + spread)),
    )


def _require_volume(field: str, label: Message, volume_m3: float) -> None:
    if not 0 < volume_m3 < LARGEST_M3:
        told = {"label": Sentence(label), "most": Amount(LARGEST_M3, VOLUME)}
        raise OutOfRange(field, Sentence("{label} must hold more than nothing and less than {most}.", told))


def _require_level(left_m3: float, holds_m3: float) -> None:
    if not 0 < left_m3 <= holds_m3 * (1 + 1e-5):
        told = Sentence("The tank holds more than nothing and at most {holds}.", {"holds": _volume(holds_m3)})
        raise OutOfRange("now_holds_m3", told)


def _volume(volume_m3: float) -> Rounded:
    return Rounded(Amount(volume_m3, VOLUME))
