"""From a run's files to what they show: read, put on one clock, corrected, looked at; in steps, so that it can stop."""

from __future__ import annotations

from collections.abc import Generator, Iterator, Sequence
from datetime import date

from attrs import evolve, field, frozen

from core.chamber.checks import Correction
from core.chamber.logs import Layout, Log, reading
from core.chamber.series import Series
from core.chamber.settling import proof_words
from core.chamber.settling.analysis import Analysis, analysing
from core.chamber.settling.proof import Proof, prove
from core.chamber.settling.statistics import spread
from core.chamber.settling.swing import arrives_at
from core.chamber.settling.wanted import Wanted
from core.quantities import COUNT, HOURS, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import COMMON_PRACTICE
from core.verdict import Reason

NOT_JUDGED: Message = "“{probe}” has fewer than two temperatures in this part: it is not judged."
FROM_ITS_START: Message = "{file} counts from its own start; it is laid beside the others as if all began at once."
READING_PART = 0.45
"""Of all the work, about."""
STEPS_A_PROBE = 12


@frozen
class GivenFile:
    """name: the file's own, for what is said of it."""

    name: str
    data: bytes = field(repr=False)
    layout: Layout


@frozen
class FailedCheck:
    """name: as a day is put after it, "ice check"."""

    name: Sentence
    on: date


@frozen
class GivenProbe:
    """file: counted from 0. in_log: what the log calls it. name: what it is called here, each another.

    failed: the check that its instrument failed: then what it logged proves nothing.
    """

    file: int
    in_log: str
    name: str
    temperature: Correction | None = None
    humidity: Correction | None = None
    failed: FailedCheck | None = None


@frozen
class Given:
    """from_s, until_s: the part to look at, on the clock of the logs. utc_offset_s: of the clock on the wall, for logs
    that count in UTC."""

    files: tuple[GivenFile, ...]
    probes: tuple[GivenProbe, ...]
    wanted: Wanted = field(factory=Wanted)
    room_c: float | None = None
    centre: str | None = None
    from_s: float | None = None
    until_s: float | None = None
    utc_offset_s: float = 0.0


@frozen
class Doing:
    """What is being done, how much of all is done, 0 to 1, and how far that one thing is."""

    words: Sentence
    share: float
    detail: Sentence | None = None


@frozen(eq=False)
class Found:
    """logs: a file each. raw, series: the probes judged, as logged and corrected. notes: what else was done to them.

    has_dates: whether the times are a clock's; else they count from the start of the log.
    """

    given: Given
    logs: tuple[Log, ...]
    raw: tuple[Series, ...]
    series: tuple[Series, ...]
    notes: tuple[Sentence, ...]
    has_dates: bool
    analysis: Analysis
    proof: Proof


def find(given: Given) -> Found:
    """In one go. Refusals as in `finding`."""
    steps = finding(given)
    while True:
        try:
            next(steps)
        except StopIteration as done:
            return done.value


def finding(given: Given) -> Generator[Doing, None, Found]:
    """Raises Refused where a layout is not settled, Refusal on "log" where nothing is left to look at."""
    logs: list[Log] = []
    for file in given.files:
        done_before = READING_PART * len(logs) / len(given.files)
        log = yield from _read(file, done_before, READING_PART / len(given.files))
        logs.append(log)
    yield Doing(Sentence("Putting the probes on one clock"), READING_PART)
    shifts_s, notes = _one_clock(logs, given)
    raw: list[Series] = []
    for probe in given.probes:
        series = _part(logs[probe.file], probe, shifts_s[probe.file], given)
        if series is None:
            notes.append(Sentence(NOT_JUDGED, {"probe": probe.name}))
        else:
            raw.append(series)
    if not raw:
        raise OutOfRange("log", "No probe has two temperatures or more in this part of the logs.")
    corrections = {probe.name: (probe.temperature, probe.humidity) for probe in given.probes}
    series = [each.corrected(*corrections[each.probe]) for each in raw]
    analysis = yield from _analysed(series, given)
    has_dates = any(log.clock != "start" for log in logs)
    return Found(
        given,
        tuple(logs),
        tuple(raw),
        tuple(series),
        tuple(notes),
        has_dates,
        analysis,
        prove(analysis, tuple(_doubts(given))),
    )


def means_as_logged(found: Found, name: str) -> tuple[float | None, float | None]:
    """A probe's mean temperature after the pull-down, and its mean humidity, before they were corrected.

    None for what was not corrected, or not logged; nor has one reading of the humidity a mean.
    """
    probe = next(each for each in found.given.probes if each.name == name)
    raw, as_corrected = (next(each for each in series if each.probe == name) for series in (found.raw, found.series))
    warm_c = humidity = None
    if probe.temperature is not None:
        first = arrives_at(as_corrected.temperatures_c)
        warm_c = spread(raw.times_s[first:], raw.temperatures_c[first:], lasts_s=raw.held_s[first:]).mean
    times_s, _, humidities = raw.humid()
    if probe.humidity is not None and len(times_s) > 1:
        humidity = spread(times_s, humidities).mean
    return warm_c, humidity


def _doubts(given: Given) -> Iterator[Reason]:
    for probe in given.probes:
        if probe.failed:
            values = {"probe": probe.name, "check": probe.failed.name, "at": probe.failed.on}
            text = proof_words.reason("instrument-failed", values)
            settle = Sentence("Clean or replace that instrument, check it, and run again.")
            yield Reason(f"instrument-{probe.name}", text, None, COMMON_PRACTICE, settle)


def probes_in(layout: Layout) -> tuple[str, ...]:
    """The names of the series that a log of this layout has, in their order."""
    if layout.holding("probe"):
        return layout.probes
    return tuple(dict.fromkeys(layout.columns[at].probe for at in layout.holding("temperature", "humidity")))


def _read(file: GivenFile, done: float, part: float) -> Generator[Doing, None, Log]:
    steps = reading(file.data, file.layout)
    while True:
        try:
            progress = next(steps)
        except StopIteration as read:
            return read.value
        told = {"line": Amount(progress.done, COUNT), "all": Amount(progress.of, COUNT)}
        words, detail = Sentence("Reading {file}", {"file": file.name}), Sentence("line {line} of {all}", told)
        yield Doing(words, done + part * progress.done / progress.of, detail)


def _one_clock(logs: Sequence[Log], given: Given) -> tuple[list[float], list[Sentence]]:
    """What to add to each log's times, and what to say of it."""
    notes: list[Sentence] = []
    begun = [log.series[0].times_s[0] for log in logs if log.series and log.clock != "start"]
    shifts: list[float] = []
    for log, file in zip(logs, given.files, strict=True):
        shift_s = 0.0
        if log.clock == "utc":
            shift_s = given.utc_offset_s
            if shift_s:
                notes.append(_in_utc(file.name, shift_s))
        elif log.clock == "start" and begun:
            shift_s = min(begun)
            notes.append(Sentence(FROM_ITS_START, {"file": file.name}))
        shifts.append(shift_s)
    return shifts, notes


def _in_utc(file: str, shift_s: float) -> Sentence:
    told = {"file": file, "hours": Amount(abs(shift_s), HOURS)}
    if shift_s > 0:
        return Sentence("{file} counts in UTC; its times are shown {hours} later, as the clock here.", told)
    return Sentence("{file} counts in UTC; its times are shown {hours} earlier, as the clock here.", told)


def _part(log: Log, probe: GivenProbe, shift_s: float, given: Given) -> Series | None:
    logged = next((series for series in log.series if series.probe == probe.in_log), None)
    if logged is None:
        return None
    if shift_s:
        logged = evolve(logged, times_s=[at_s + shift_s for at_s in logged.times_s])
    series = evolve(logged.between(given.from_s, given.until_s).warm(), probe=probe.name)
    return series if len(series) > 1 else None


def _analysed(series: Sequence[Series], given: Given) -> Generator[Doing, None, Analysis]:
    steps = analysing(series, given.wanted, room_c=given.room_c, centre=given.centre)
    all_of_them = STEPS_A_PROBE * len(series) + 2
    count = 0
    while True:
        try:
            name = next(steps)
        except StopIteration as done:
            return done.value
        words = Sentence("Analysing “{probe}”", {"probe": name}) if name else Sentence("Comparing the probes")
        yield Doing(words, READING_PART + (1 - READING_PART) * count / all_of_them)
        count += 1
