"""From files to findings: several files on one clock, corrections applied, in steps or in one go."""

from datetime import date, timedelta
from functools import cache

import pytest

from core.chamber.checks import Correction
from core.chamber.logs import answer, guess
from core.chamber.proof_run import Doing, FailedCheck, Found, Given, GivenFile, GivenProbe, find, finding, probes_in
from core.refusals import OutOfRange, Refused
from core.sentence import Sentence
from tests.core.proof_files import BEGUN, epoch_of, file_of, given, logged, low
from tests.core.telling import told


@cache
def found() -> Found:
    return find(given())


def in_steps(given: Given) -> tuple[list[Doing], Found]:
    steps = finding(given)
    done: list[Doing] = []
    while True:
        try:
            done.append(next(steps))
        except StopIteration as end:
            return done, end.value


def test_two_loggers_are_two_probes_of_one_run():
    assert [probe.name for probe in found().analysis.probes] == ["low", "high"]


def test_a_good_chamber_proves_itself_from_its_files():
    assert found().proof.is_settled, [reason.key for reason in found().proof.because]


def test_in_steps_it_comes_to_the_same():
    _, other = in_steps(given())
    assert other.proof == found().proof
    assert [probe.temperature for probe in other.analysis.probes] == [
        probe.temperature for probe in found().analysis.probes
    ]


def test_the_steps_tell_how_far_it_is():
    done, _ = in_steps(given())
    shares = [each.share for each in done]
    assert shares == sorted(shares)
    assert 0 <= shares[0] <= shares[-1] <= 1


def test_the_steps_name_what_is_being_read():
    assert "high.csv" in " ".join(told(each.words) for each in in_steps(given())[0])


def test_a_correction_moves_the_mean_by_as_much():
    probes = (GivenProbe(0, "Probe 1", "low", Correction(-0.4)), GivenProbe(1, "Probe 1", "high"))
    result = find(given(probes=probes))
    assert result.analysis.centre.temperature.mean == pytest.approx(found().analysis.centre.temperature.mean - 0.4)
    assert result.raw[0].temperatures_c[0] == pytest.approx(result.series[0].temperatures_c[0] + 0.4)


def test_an_instrument_that_failed_its_check_proves_nothing():
    probes = (GivenProbe(0, "Probe 1", "low", failed=FailedCheck(Sentence("ice check"), date(2026, 11, 3))),)
    because = find(given(probes=probes)).proof.because
    assert because[0].key == "instrument-low"
    assert because[0].met is None


def test_a_part_leaves_the_rest_out():
    begun_s = found().series[0].times_s[0]
    part = find(given(from_s=begun_s + 3600.0, until_s=begun_s + 7200.0))
    assert part.series[0].times_s[0] == begun_s + 3600.0
    assert part.series[0].times_s[-1] == begun_s + 7200.0


def test_a_part_without_readings_is_refused():
    with pytest.raises(OutOfRange, match="No probe has two temperatures"):
        find(given(from_s=0.0, until_s=1.0))


def test_a_log_in_utc_is_put_on_the_clock_of_the_wall():
    utc = epoch_of(logged(1, 0.1), 1_795_338_000 + 3600.0)  # 2026-11-22T09:00Z and an hour
    files = (file_of(low()), file_of(utc, "utc.csv"))
    both = find(given(files=files, utc_offset_s=3600.0))
    assert (both.series[1].times_s[0] - both.logs[1].series[0].times_s[0]) == 3600.0
    assert "counts in UTC" in told(both.notes[0])


def test_a_log_that_counts_from_its_start_is_laid_beside_the_other_and_that_is_said():
    rows = zip(logged().times_s, logged().temperatures_c, strict=True)
    lines = ("Elapsed time (min),Temp (°C)", *(f"{at_s / 60:.0f},{warm:.1f}" for at_s, warm in rows), "")
    data = "\n".join(lines).encode()
    layout = guess(data)
    while layout.questions:
        layout = answer(data, layout, layout.questions[0].about, "min")
    counts = GivenFile("counts.csv", data, layout)
    both = find(given(files=(file_of(low()), counts), probes=_probes_of(file_of(low()), counts)))
    assert both.series[1].times_s[0] == both.series[0].times_s[0]
    assert "from its own start" in told(both.notes[0])


def _probes_of(*files: GivenFile) -> tuple[GivenProbe, ...]:
    return tuple(
        GivenProbe(at, name, f"{at} {name}") for at, file in enumerate(files) for name in probes_in(file.layout)
    )


def test_a_probe_without_temperatures_is_told_and_not_judged():
    lines = ["Time,RH (%)", *(f"{BEGUN + timedelta(minutes=at):%Y-%m-%d %H:%M},80.{at % 10}" for at in range(60)), ""]
    damp = file_of("\n".join(lines).encode(), "damp.csv")
    both = find(given(files=(file_of(low()), damp), probes=_probes_of(file_of(low()), damp)))
    assert [probe.name for probe in both.analysis.probes] == ["0 Probe 1"]
    assert "not judged" in told(both.notes[0])


def test_a_layout_with_an_open_question_is_refused_at_the_first_step():
    data = b"Time,Temp (C)\n05/06/2025 10:00,12.0\n05/06/2025 10:01,12.0\n"
    with pytest.raises(Refused):
        next(finding(given(files=(file_of(data),), probes=(GivenProbe(0, "Probe 1", "low"),))))
