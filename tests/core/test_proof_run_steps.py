"""From files to findings, step by step: what is said meanwhile, on which clock it is, what is corrected."""

import math
from datetime import UTC, date, datetime, timedelta

import pytest

from core.chamber.checks import Correction
from core.chamber.logs import answer, guess, read
from core.chamber.proof_run import (
    Doing,
    FailedCheck,
    Given,
    GivenFile,
    GivenProbe,
    find,
    finding,
    means_as_logged,
    probes_in,
)
from core.quantities import METRIC
from core.sentence import Sentence
from tests.core.telling import in_words
from tests.core.telling import told as words_of

BEGUN = datetime(2026, 11, 23, 10, tzinfo=UTC)
BEGUN_S = BEGUN.timestamp()
HEAD = "Time,Temp (°C),RH (%)"


def rows(count: int = 60, stamp: str = "%Y-%m-%d %H:%M:%S", minutes: int = 0) -> list[str]:
    """A reading a minute, the compressor's cycle a quarter of an hour."""
    return [
        f"{BEGUN + timedelta(minutes=minutes + at):{stamp}},{12 + math.sin(at * math.tau / 15):.1f},{80 - at % 5}.0"
        for at in range(count)
    ]


def file_of(lines: list[str], name: str = "low.csv", head: str = HEAD, **answers: str) -> GivenFile:
    data = "\n".join((head, *lines, "")).encode()
    layout = guess(data)
    for about, key in answers.items():
        layout = answer(data, layout, about, key)
    return GivenFile(name, data, layout)


def given(*files: GivenFile, **more: object) -> Given:
    probes = tuple(
        GivenProbe(at, in_log, f"{at} {in_log}") for at, file in enumerate(files) for in_log in probes_in(file.layout)
    )
    return Given(files, probes, **more)  # type: ignore[arg-type]


def done(given: Given) -> list[Doing]:
    return list(finding(given))


def test_each_file_has_its_part_of_the_first_45_hundredths():
    steps = done(given(file_of(rows()), file_of(rows(), "high.csv")))[:5]
    assert [(words_of(each.words), words_of(each.detail)) for each in steps] == [
        ("Reading low.csv", "line 1 of 62"),
        ("Reading low.csv", "line 62 of 62"),
        ("Reading high.csv", "line 1 of 62"),
        ("Reading high.csv", "line 62 of 62"),
        ("Putting the probes on one clock", ""),
    ]
    assert [each.share for each in steps] == pytest.approx(
        [0.225 / 62, 0.225, 0.225 + 0.225 / 62, 0.45, 0.45], abs=1e-9
    )


def test_the_rest_is_the_looking_a_step_at_a_time():
    steps = done(given(file_of(rows()), file_of(rows(), "high.csv")))[5:]
    words = list(dict.fromkeys(words_of(each.words) for each in steps))
    assert words == ["Analysing “0 Probe 1”", "Analysing “1 Probe 1”", "Comparing the probes"]
    assert [each.share for each in steps] == pytest.approx([0.45 + 0.55 * at / 26 for at in range(len(steps))])
    assert steps[-1].share <= 1


def test_a_long_file_is_told_by_the_thousand():
    steps = finding(given(file_of(rows(5000))))
    told = [next(steps), next(steps)]
    assert [words_of(each.detail) for each in told] == ["line 1 of 5\u00a0002", "line 4\u00a0097 of 5\u00a0002"]
    assert told[1].share == pytest.approx(0.45 * 4097 / 5002)


def test_no_note_is_made_of_logs_on_the_clock_of_the_wall():
    found = find(given(file_of(rows()), file_of(rows(minutes=5), "high.csv"), utc_offset_s=3600.0))
    assert found.notes == ()
    assert [each.times_s[0] for each in found.series] == [BEGUN_S, BEGUN_S + 300]
    assert found.has_dates


@pytest.mark.parametrize(
    ("offset_s", "notes"),
    [
        (3600.0, ("utc.csv counts in UTC; its times are shown 1 h later, as the clock here.",)),
        (-12_600.0, ("utc.csv counts in UTC; its times are shown 3.5 h earlier, as the clock here.",)),
        (0.0, ()),
    ],
)
def test_a_log_in_utc_is_shown_by_the_clock_here(offset_s: float, notes: tuple[str, ...]):
    utc = file_of(rows(stamp="%Y-%m-%d %H:%M:%SZ"), "utc.csv")
    found = find(given(utc, utc_offset_s=offset_s))
    assert in_words(found.notes) == notes
    assert found.series[0].times_s[0] == BEGUN_S + offset_s
    assert (found.series[0].probe, found.has_dates) == ("0 Probe 1", True)


def from_start(name: str = "counts.csv") -> GivenFile:
    lines = [f"{at},{row.split(',', 1)[1]}" for at, row in enumerate(rows())]
    return file_of(lines, name, "Elapsed (min),Temp (°C),RH (%)")


def test_a_log_that_counts_from_its_start_begins_with_the_first_of_the_others():
    found = find(given(from_start(), file_of(rows(minutes=7), "late.csv"), file_of(rows(minutes=5), "early.csv")))
    assert in_words(found.notes) == (
        "counts.csv counts from its own start; it is laid beside the others as if all began at once.",
    )
    assert [each.times_s[0] - BEGUN_S for each in found.series] == [300, 420, 300]
    assert found.has_dates


def test_where_all_count_from_their_start_there_are_no_dates():
    found = find(given(from_start(), from_start("other.csv")))
    assert found.notes == ()
    assert [each.times_s[0] for each in found.series] == [0, 0]
    assert not found.has_dates


@pytest.mark.parametrize(("minutes", "is_judged"), [(1, True), (0, False)])
def test_a_probe_is_judged_by_two_temperatures_at_least(minutes: int, is_judged: bool):
    late = file_of(rows(minutes=59), "late.csv")
    found = find(given(file_of(rows(90)), late, until_s=BEGUN_S + 60 * (59 + minutes)))
    assert [each.probe for each in found.series] == ["0 Probe 1", "1 Probe 1"][: 1 + is_judged]
    note = "“1 Probe 1” has fewer than two temperatures in this part: it is not judged."
    assert in_words(found.notes) == (() if is_judged else (note,))


def test_a_probe_that_its_log_does_not_hold_is_not_judged():
    file = file_of(rows())
    probes = (GivenProbe(0, "Probe 1", "low"), GivenProbe(0, "Probe 9", "gone"))
    assert [each.probe for each in find(Given((file,), probes)).series] == ["low"]


def test_a_failed_instrument_is_a_reason_by_its_own_name():
    file = file_of(rows())
    failed = FailedCheck(Sentence("ice check"), date(2026, 11, 3))
    probes = (GivenProbe(0, "Probe 1", "{low}", failed=failed), GivenProbe(0, "Probe 1", "b"))
    because = [each for each in find(Given((file,), probes)).proof.because if each.key.startswith("instrument")]
    (reason,) = because
    assert (reason.key, reason.met) == ("instrument-{low}", None)
    assert "“{low}”" in reason.text.say(METRIC)
    assert "ice check" in reason.text.say(METRIC)


def with_corrections(temperature: Correction | None, humidity: Correction | None) -> tuple[float | None, float | None]:
    probe = GivenProbe(0, "Probe 1", "low", temperature, humidity)
    return means_as_logged(find(Given((file_of(rows()),), (probe,))), "low")


def test_what_was_not_corrected_has_no_mean_as_logged():
    assert with_corrections(None, None) == (None, None)


def test_what_was_corrected_has_the_mean_that_was_logged():
    """Four whole cycles about 12 °C from the first reading at 12; humidity from 76 to 80 in turn."""
    warm, damp = with_corrections(Correction(-0.5), Correction(0.03))
    assert warm == pytest.approx(12.0, abs=0.06)
    assert damp == pytest.approx(0.78, abs=1e-6)
    assert with_corrections(Correction(-0.5), None)[1] is None
    assert with_corrections(None, Correction(0.03))[0] is None


def test_without_a_hygrometer_there_is_no_mean_humidity():
    file = file_of([row.rsplit(",", 1)[0] for row in rows()], head="Time,Temp (°C)")
    found = find(Given((file,), (GivenProbe(0, "Probe 1", "low", Correction(-0.5), Correction(0.03)),)))
    assert means_as_logged(found, "low")[1] is None


def test_the_probes_of_a_layout_are_its_columns_or_its_names():
    two = file_of([f"{row},{row.split(',')[1]}" for row in rows()], head="Time,Front T (°C),Front RH (%),Back T (°C)")
    assert probes_in(two.layout) == ("Front", "Back")
    named = file_of(
        [f"{row.rsplit(',', 1)[0]},{'AB'[at % 2]}" for at, row in enumerate(rows())], head="Time,T (°C),Sensor"
    )
    assert probes_in(named.layout) == ("A", "B")
    assert [each.probe for each in read(named.data, named.layout).series] == ["A", "B"]


@pytest.mark.parametrize("damp", ["80.0", ""])
def test_of_two_readings_one_may_be_all_that_is_left_after_the_pull_down(damp: str):
    """It begins cold, and the second reading is the usual one already; only one or none has a humidity."""
    lines = [f"{BEGUN:%Y-%m-%d %H:%M},10.0,{damp}", f"{BEGUN + timedelta(minutes=1):%Y-%m-%d %H:%M},12.0,"]
    file = file_of([*lines, *rows(minutes=10)])
    probe = GivenProbe(0, "Probe 1", "low", Correction(-0.5), Correction(0.01))
    found = find(Given((file,), (probe,), until_s=BEGUN_S + 60))
    assert found.analysis.probes[0].steady.mean == 11.5
    assert means_as_logged(found, "low") == (12.0, None)
