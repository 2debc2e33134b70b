"""The humidity's single numbers as figures that show their working."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from core.chamber.settling.analysis import Probe
from core.chamber.settling.fog import Work
from core.chamber.settling.humidity import HumidRhythm
from core.chamber.settling.measures import FINE_TEMPERATURE, LASTS, STARTS, after
from core.chamber.settling.plain_figure import plain
from core.quantities import LOSS, RELATIVE_HUMIDITY, VAPOUR_PRESSURE
from core.sentence import Message, Sentence
from core.sources import CYCLES_SEEN, DEFINITION, SETTLED_DIN, WATER_SATURATION
from core.working import Figure

SHORT_BURSTS: Message = "About: bursts within some ten minutes of one another melt together in a slow hygrometer."
HALF_SEEN: Message = (
    "Roughly: runs of the compressor, doors and defrosts hide some spells of fog and part others in two."
)
OF_THE_LOG: Message = "Of the whole log: {value}"


def humid_figures(probe: Probe) -> Iterator[Figure]:
    """Only what its log shows."""
    humid = probe.humidity
    if humid is None:
        return
    weigh = "Each reading weighs by the time it covers: {value}"
    yield plain("humidity", "Mean humidity", humid.spread.mean, RELATIVE_HUMIDITY, weigh, DEFINITION)
    yield plain("driest", "Lowest humidity", humid.spread.lowest, RELATIVE_HUMIDITY, OF_THE_LOG, DEFINITION)
    yield plain("dampest", "Highest humidity", humid.spread.highest, RELATIVE_HUMIDITY, OF_THE_LOG, DEFINITION)
    yield plain("humid_low_5", "5 % of the time drier", humid.spread.low_5, RELATIVE_HUMIDITY, weigh, DEFINITION)
    yield plain("humid_high_95", "5 % of the time moister", humid.spread.high_95, RELATIVE_HUMIDITY, weigh, DEFINITION)
    if humid.spread.in_band is not None:
        words = "Time within the band of humidity ÷ time logged, of the whole log: {value}"
        yield plain("humid_in_band", "Humidity within its band", humid.spread.in_band, LOSS, words, DEFINITION)
    if humid.settled_s is not None:
        words = "From the first reading after which the humidity stays within its band: {value} into the log"
        since = after(humid.settled_s, probe.begins_s)
        step = Sentence(words, {"value": since})
        yield Figure("humid_settled", "Humidity settled after", since.value, LASTS, (step,), SETTLED_DIN)
    if humid.dew_point is not None:
        words = "Mean of every reading's dew point: {value}"
        yield plain("dew_point", "Mean dew point", humid.dew_point.mean, FINE_TEMPERATURE, words, WATER_SATURATION)
    words = "Mean of every reading's deficit against pure water as warm as the air: {value}"
    yield plain("deficit", "Mean vapour pressure deficit", humid.deficit.mean, VAPOUR_PRESSURE, words, WATER_SATURATION)
    yield from _rhythm(humid.rhythm)


def _rhythm(rhythm: HumidRhythm) -> Iterator[Figure]:
    if rhythm.swing is not None:
        words = "Highest less lowest humidity from run to run, half of them more, half less: {value}"
        name, swing = "Humidity swing with each run", rhythm.swing
        yield plain("humidity_swing", name, swing.size, LOSS, words, CYCLES_SEEN, (), swing.give)
    if rhythm.work is not None:
        yield from _work(rhythm.work)


def _work(work: Work) -> Iterator[Figure]:
    words = "Climbs of the vapour pressure that are as steep as when the humidifier works: {value}"
    if work.is_sure:
        worked = plain("bursts", "Humidifier works", work.an_hour / 3600, STARTS, words, CYCLES_SEEN, (SHORT_BURSTS,))
        yield evolve(worked, low=work.low / 3600, high=work.high / 3600)
        return
    least, most = work.low / 3600, work.high / 3600
    yield plain("bursts_least", "Humidifier works, at least", least, STARTS, words, CYCLES_SEEN, (HALF_SEEN,))
    yield plain("bursts_most", "Humidifier works, at most", most, STARTS, words, CYCLES_SEEN, (HALF_SEEN,))
