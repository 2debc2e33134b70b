"""A pH meter in two buffers: does its electrode still give what Nernst says, and is it centred?

A meter that shows millivolts and one that shows only pH are asked the same: a pH it shows is read back into the volts
that a perfect electrode would have given.
"""

from __future__ import annotations

import math
from typing import Literal

from attrs import evolve, frozen

from core.chamber.checks import Check, Correction, Word, checked
from core.quantities import (
    ABSOLUTE_TEMPERATURE,
    COUNT,
    LOSS,
    PH,
    RATIO,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    Amount,
    DisplayUnit,
    Quantity,
)
from core.refusals import OutOfRange
from core.saturation import KELVIN_AT_ZERO_C
from core.sentence import Message, Rounded, Sentence, Value, listed
from core.sources import COMMON_PRACTICE, NERNST, USP_791
from core.traced import Traced, traced
from core.units import Unit
from core.working import Figure
from core.worksheet import Choice, Number

Shows = Literal["mv", "ph"]

NERNST_V_PER_K = 8.314462618 * math.log(10) / 96485.33212
NEUTRAL_PH = 7.0
LEAST_SLOPE, MOST_SLOPE, MOST_OFFSET_V = 0.90, 1.05, 0.030  # USP <791>
LEAST_BUFFERS_APART = 1.0
BUFFER_UNSURE_PH = 0.02  # as bottles say of themselves; common practice; no published source

VOLT = Unit("V", 1.0, ("v", "volt", "volts"))
MILLIVOLT = Unit("mV", 1e-3, ("mv", "millivolt", "millivolts"))
VOLTAGE = Quantity(
    key="voltage",
    noun="a voltage",
    units=(VOLT, MILLIVOLT),
    metric=(DisplayUnit(MILLIVOLT, 1),),
    us=(DisplayUnit(MILLIVOLT, 1),),
    bare_metric=MILLIVOLT,
    bare_us=MILLIVOLT,
    example_metric="-15 mV",
    example_us="-15 mV",
    trim=True,
)

CLEAN_IT = (
    "Clean the electrode as its maker says, let it soak in its storage solution, and check again in fresh buffers."
)
FRESH: Message = (
    "Use fresh buffer from the bottle, rinse between, and take each buffer's pH at its own temperature from its label."
)
NOT_BRACKETED = "Meat is read between pH 4.5 and 7: buffers of pH 4.01 and 7.00 lie on both sides of it; these do not."
AS_WARM = Sentence(
    "Millivolts are turned into pH as warm as the buffers were: read the meat as warm. At pH {ph}, {warmer} make "
    "{change} pH.",
    {
        "ph": Amount(5.0, COUNT),
        "warmer": Amount(10.0, TEMPERATURE_DIFFERENCE),
        "change": Amount(0.07, RATIO),
    },
)
ONLY_PH = (
    "This meter shows only pH, so this judges the electrode together with the setting in the meter's memory. After it "
    "has been recalibrated the old correction is void."
)


SHOWN = evolve(RATIO, key="shown", noun="a reading", example_metric="-15", example_us="-15")
SHOWS = Choice("shows", "The meter shows", {"mv": "millivolts", "ph": "pH only"}, default="ph")
BUFFER = Number("buffer", "pH of the first buffer", PH, 1.0, 13.0, help="At its temperature, by its label.")
BUFFER_TEMPERATURE = Number("temperature_c", "Temperature of the first buffer", TEMPERATURE, 5.0, 50.0)
READING = Number(
    "reading", "Meter shows in the first buffer", SHOWN, -1000.0, 1000.0, help="In millivolts or in pH, as chosen."
)
OTHER_BUFFER = Number("other_buffer", "pH of the second buffer", PH, 1.0, 13.0)
OTHER_TEMPERATURE = Number("other_temperature_c", "Temperature of the second buffer", TEMPERATURE, 5.0, 50.0)
OTHER_READING = Number("other_reading", "Meter shows in the second buffer", SHOWN, -1000.0, 1000.0)
CLEANED = Choice("cleaned", "Cleaned already", {"no": "no", "yes": "yes, and checked again"}, default="no")


@frozen
class Buffer:
    """A buffer's pH at its temperature, by its label, and what the meter showed in it: millivolts or pH."""

    ph: float
    temperature_c: float
    shown: float


def nernst_v(temperature_c: float) -> float:
    """Volts to the unit of pH that a perfect electrode gives: 0.05916 at 25 °C."""
    return _ideal(temperature_c).value


def _ideal(temperature_c: float) -> Traced:
    kelvin = traced("kelvin", temperature_c + KELVIN_AT_ZERO_C, ABSOLUTE_TEMPERATURE)
    return traced("per_kelvin", NERNST_V_PER_K, VOLTAGE) * kelvin


def ph_meter(one: Buffer, other: Buffer, shows: Shows = "mv", cleaned: bool = False) -> Check:
    """Slope, as a share of Nernst's, and offset at pH 7 from two buffers; accept, clean or replace.

    Buffers: pH 1 to 13 and at least 1 apart, 5 to 50 °C. shows: what `Buffer.shown` is. cleaned: whether the electrode
    has been cleaned already, after which a bad one is not cleaned again. Its last digit is 1 mV or 0.01. The
    correction takes what the meter shows and gives pH. Raises OutOfRange.
    Source of the limits: USP <791>, 90.0 to 105.0 % and ±30 mV.
    """
    _require(one, other)
    first_v, second_v = _volts(one, shows), _volts(other, shows)
    per_slope = _from_neutral_v(other) - _from_neutral_v(one)
    slope = (first_v - second_v) / per_slope
    if slope <= 0:
        raise OutOfRange("other_reading", "The readings run against the buffers: see whether the two were swapped.")
    offset_v = first_v + slope * _from_neutral_v(one)
    word = _judge(slope, offset_v, cleaned)
    correction = _correction(one, other, shows, slope, offset_v)
    figures = (
        _slope_figure(one, other, first_v, second_v, slope, shows),
        _offset_figure(one, first_v, slope, offset_v),
        _full_slope((one.temperature_c + other.temperature_c) / 2),
        _unsure(correction),
    )
    return checked(word, _sentence(word, slope, offset_v), correction, figures)


def _require(one: Buffer, other: Buffer) -> None:
    for buffer, boxes in (
        (one, (BUFFER, BUFFER_TEMPERATURE, READING)),
        (other, (OTHER_BUFFER, OTHER_TEMPERATURE, OTHER_READING)),
    ):
        for box, value in zip(boxes, (buffer.ph, buffer.temperature_c, buffer.shown), strict=True):
            box.check(value)
    if abs(one.ph - other.ph) < LEAST_BUFFERS_APART - 1e-9:
        raise OutOfRange("other_buffer", "The two buffers must be at least 1 pH apart: 4.01 and 7.00 suit meat.")


def _volts(buffer: Buffer, shows: Shows) -> float:
    if shows == "mv":
        return buffer.shown / 1000
    return -nernst_v(buffer.temperature_c) * (buffer.shown - NEUTRAL_PH)


def _from_neutral_v(buffer: Buffer) -> float:
    return nernst_v(buffer.temperature_c) * (buffer.ph - NEUTRAL_PH)


def _judge(slope: float, offset_v: float, cleaned: bool) -> Word:
    slack = 1e-9
    if LEAST_SLOPE - slack <= slope <= MOST_SLOPE + slack and abs(offset_v) <= MOST_OFFSET_V + slack:
        return "accept"
    return "replace" if cleaned else "clean"


LIMITS: Message = "slope between 90 and 105 %, offset within ±30 mV (USP <791>)"


def _sentence(word: Word, slope: float, offset_v: float) -> Sentence:
    if word == "accept":
        return Sentence("Accept: {limits}.", {"limits": Sentence(LIMITS)})
    told = {"slope": Rounded(Amount(slope, LOSS)), "offset": Rounded(Amount(offset_v, VOLTAGE))}
    wrong: list[Value] = []
    if not LEAST_SLOPE <= slope <= MOST_SLOPE:
        wrong.append(Sentence("slope {slope}", told))
    if abs(offset_v) > MOST_OFFSET_V:
        wrong.append(Sentence("offset {offset}", told))
    values: dict[str, Value] = {"wrong": listed(wrong), "limits": Sentence(LIMITS), "advice": Sentence(CLEAN_IT)}
    if word == "clean":
        return Sentence("Clean: {wrong}, but the limits are {limits}. {advice}", values)
    return Sentence("Replace the electrode: after cleaning it still has {wrong}, but the limits are {limits}.", values)


def _correction(one: Buffer, other: Buffer, shows: Shows, slope: float, offset_v: float) -> Correction:
    """pH = 7 − (volts − offset) ÷ (slope × Nernst), at the buffers' mean temperature."""
    nernst = nernst_v((one.temperature_c + other.temperature_c) / 2)
    volts_per_shown = 1e-3 if shows == "mv" else -nernst
    per_shown = -volts_per_shown / (slope * nernst)
    at_zero_v = 0.0 if shows == "mv" else NEUTRAL_PH * nernst
    half_ph = (1.0 if shows == "mv" else 0.01) / 2 * abs(per_shown)
    unsure = math.hypot(BUFFER_UNSURE_PH, half_ph)
    low, high = sorted((one, other), key=lambda buffer: buffer.shown)
    return Correction(
        offset=NEUTRAL_PH - (at_zero_v - offset_v) / (slope * nernst),
        gain=per_shown,
        uncertainty=unsure,
        low_reading=low.shown,
        high_reading=high.shown,
        high_uncertainty=unsure,
        least=0.0,
        most=14.0,
    )


def _slope_figure(one: Buffer, other: Buffer, first_v: float, second_v: float, slope: float, shows: Shows) -> Figure:
    amounts = {
        "volts": Amount(first_v, VOLTAGE),
        "other_volts": Amount(second_v, VOLTAGE),
        "between": Amount(first_v - second_v, VOLTAGE),
        "ph": Amount(one.ph, PH),
        "other_ph": Amount(other.ph, PH),
        "nernst": Amount(nernst_v(one.temperature_c), VOLTAGE),
        "other_nernst": Amount(nernst_v(other.temperature_c), VOLTAGE),
        "slope": Amount(slope, LOSS),
    }
    read_back = (Sentence("The pH shown, read back into volts: {volts} and {other_volts}", amounts),)
    bracketed = min(one.ph, other.ph) <= 4.5 and max(one.ph, other.ph) >= 6.8
    return Figure(
        key="slope",
        name="Slope, % of ideal",
        value=slope,
        quantity=LOSS,
        working=(
            Sentence("An ideal electrode gives for one unit of pH, in each buffer:", amounts),
            *(_ideal(buffer.temperature_c).line(VOLTAGE) for buffer in (one, other)),
            *(read_back if shows == "ph" else ()),
            Sentence("{volts} − {other_volts} = {between}", amounts),
            Sentence("{between} ÷ ({other_nernst} × ({other_ph} − 7) − {nernst} × ({ph} − 7)) = {slope}", amounts),
        ),
        source=USP_791,
        cautions=(FRESH, *(() if bracketed else (NOT_BRACKETED,)), ONLY_PH if shows == "ph" else AS_WARM),
    )


def _offset_figure(one: Buffer, first_v: float, slope: float, offset_v: float) -> Figure:
    amounts = {
        "volts": Amount(first_v, VOLTAGE),
        "slope": Amount(slope, RATIO),
        "nernst": Amount(nernst_v(one.temperature_c), VOLTAGE),
        "ph": Amount(one.ph, PH),
        "offset": Amount(offset_v, VOLTAGE),
    }
    step = Sentence("{volts} + {slope} × {nernst} × ({ph} − 7) = {offset}", amounts)
    return Figure("offset", "Offset, at pH 7", offset_v, VOLTAGE, (step,), USP_791)


def _full_slope(temperature_c: float) -> Figure:
    return _ideal(temperature_c).figure("full_slope", "Ideal slope, for one unit of pH", VOLTAGE, source=NERNST)


def _unsure(correction: Correction) -> Figure:
    unsure = Amount(correction.uncertainty, PH)
    said = "The buffers themselves, ±0.02, and half the last digit, added as squares: {unsure}"
    name = "Remaining uncertainty of a corrected pH, either way"
    return Figure("uncertainty", name, unsure.value, PH, (Sentence(said, {"unsure": unsure}),), COMMON_PRACTICE)
