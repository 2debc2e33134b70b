"""A proof run's logs, each corrected by the checks of the instrument that wrote it."""

from __future__ import annotations

from datetime import datetime, timedelta

from attrs import frozen

from core.chamber.checks import Correction
from core.chamber.proof_run import FailedCheck
from core.chamber.settling import proof_words
from core.daybook.facts.proofs import ProofRun
from core.daybook.instrument_checks import Measured
from core.daybook.instruments import Checked, Instrument, Shelf
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Sentence, Value


@frozen
class LogCorrection:
    """How a probe's readings are corrected. failed: the check after which what it logged proves nothing."""

    temperature: Correction | None = None
    humidity: Correction | None = None
    failed: FailedCheck | None = None
    notes: tuple[Sentence, ...] = ()


def log_corrections(shelf: Shelf, run: ProofRun, saved_at: datetime) -> tuple[LogCorrection, ...]:
    """One for each probe, by the checks of its instrument. saved_at: when the run is or was saved."""
    return tuple(_of_probe(shelf.find(probe.instrument), probe.name, run, saved_at) for probe in run.probes)


def _of_probe(instrument: Instrument | None, name: str, run: ProofRun, saved_at: datetime) -> LogCorrection:
    if instrument is None:
        return LogCorrection()
    of_temperature, of_humidity = (_in_force(instrument, each, run, saved_at) for each in ("temperature", "humidity"))
    checks = [each for each in (of_temperature, of_humidity) if each is not None]
    failed = [FailedCheck(Sentence(each.name), each.at.date()) for each in checks if each.failed]
    return LogCorrection(
        None if of_temperature is None else of_temperature.correction,
        None if of_humidity is None else of_humidity.correction,
        failed[0] if failed else None,
        tuple(_note(name, each) for each in checks),
    )


def _in_force(instrument: Instrument, measured: Measured, run: ProofRun, saved_at: datetime) -> Checked | None:
    """The check in force when the log began; else one made since, if the instrument was not recalibrated in between."""
    if run.begun_s is None:
        return instrument.in_force(measured, saved_at)
    begun_at = datetime(1970, 1, 1, tzinfo=saved_at.tzinfo) + timedelta(seconds=run.begun_s)
    check = instrument.in_force(measured, begun_at)
    if check is None and not any(begun_at < at <= saved_at for at in instrument.recalibrated):
        check = instrument.in_force(measured, saved_at)
    return check


def _note(name: str, check: Checked) -> Sentence:
    """What became of a probe's readings, by its check."""
    values: dict[str, Value] = {"probe": name, "check": Sentence(check.name), "at": check.at.date()}
    correction = check.correction
    if check.failed:
        key = "as-logged"
    elif correction is None or correction.is_none:
        key = "right"
    elif correction.gain != 1.0:
        key = "by-a-line"
    else:
        key = "raised" if correction.offset > 0 else "lowered"
        by = TEMPERATURE_DIFFERENCE if check.of == "temperature" else RELATIVE_HUMIDITY
        values["by"] = Amount(abs(correction.offset), by)
    return proof_words.corrected(f"{check.of}-{key}", values)
