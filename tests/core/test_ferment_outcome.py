"""What became of a fermentation, in words: each with its numbers, whether it is met, and what would settle it."""

from typing import get_args

import pytest

from core.ferment.judging import Fermentation, judge
from core.ferment.logged import summarised
from core.ferment.outcome import ASK, MEASURE_AGAIN, TOXIN, Deviation, Outcome, Word, reason, slow_reason
from core.ferment.rules import RULES, RuleKey
from core.quantities import METRIC, PH, Amount
from core.refusals import OutOfRange
from core.sentence import Sentence
from core.sources import DEGREE_HOURS_CANADA, DEGREE_HOURS_US, GD_2023_STAPHYLOCOCCI, Source
from tests.core.fermenting import H, acids, every_12_h, kept, warm

BOTH = {"sum_ks": 700 * H, "limit_ks": 500 * H}
MISSING = (Sentence("No temperature was read."),)
AGAINST = Sentence("pH {low} was contradicted.", {"low": Amount(5.2, PH)})


@pytest.mark.parametrize(
    ("word", "met", "told"),
    [
        ("passed", True, "It took 700 °C·h to come down to pH 5.3, fewer than the limit of 500 °C·h."),
        ("over", False, "Its degree-hours, 700 °C·h, reached the limit of 500 °C·h before its pH was known to be 5.3."),
        ("running", None, "It is not yet at pH 5.3; 700 °C·h of at most 500 °C·h used."),
        (
            "not shown",
            None,
            "The reading that shows pH 5.3 came at 700 °C·h, not fewer than 500 °C·h; whether it was there in time is "
            "a guess between two readings.",
        ),
        ("unknown", None, "Its degree-hours to pH 5.3 are not known. No temperature was read."),
    ],
)
def test_each_word_has_its_sentence_with_both_numbers(word: Word, met: bool | None, told: str):
    found = reason(Outcome(word, why=MISSING, **BOTH))
    assert (found.text.say(METRIC), found.met) == (told, met)


@pytest.mark.parametrize(
    ("word", "told"),
    [
        ("passed", "It came down to pH 5.3 in fewer degree-hours than the limit."),
        ("over", "Its degree-hours reached the limit before it came down to pH 5.3."),
        ("running", "It is not yet at pH 5.3."),
        ("not shown", "No reading shows that it came down to pH 5.3 in time."),
        ("unknown", "Its degree-hours to pH 5.3 are not known. Too little was read."),
    ],
)
@pytest.mark.parametrize("known", [{}, {"sum_ks": 1.0}, {"limit_ks": 1.0}], ids=["neither", "no limit", "no sum"])
def test_without_both_numbers_it_is_said_without_them(word: Word, told: str, known: dict[str, float]):
    assert reason(Outcome(word, **known)).text.say(METRIC) == told


@pytest.mark.parametrize(
    ("word", "met", "told"),
    [
        ("passed", True, "Its warm days made 700 °C·h, fewer than 500 °C·h; then it was kept cool."),
        (
            "over",
            False,
            "Its warm days made 700 °C·h, not fewer than 500 °C·h, without the acid that would have stopped what "
            "grows.",
        ),
        ("running", None, "It is not known to be cool for good yet; 700 °C·h of at most 500 °C·h used."),
        ("unknown", None, "How warm it was in its first days is not known. No temperature was noted."),
    ],
)
def test_so_has_each_of_a_slow_style(word: Word, met: bool | None, told: str):
    found = slow_reason(Outcome(word, **BOTH))
    assert (found.text.say(METRIC), found.met) == (told, met)


@pytest.mark.parametrize(
    ("word", "told"),
    [
        ("passed", "It was never warm for long, and then it was kept cool."),
        ("over", "Its warm days were too many."),
        ("running", "It is not known to be cool for good yet."),
        ("not shown", "Its warm days were too many."),
    ],
)
@pytest.mark.parametrize("known", [{}, {"sum_ks": 1.0}, {"limit_ks": 1.0}], ids=["neither", "no limit", "no sum"])
def test_and_without_both_numbers(word: Word, told: str, known: dict[str, float]):
    assert slow_reason(Outcome(word, **known)).text.say(METRIC) == told


TWO_REASONS = (
    Sentence("The first went to {first}.", {"first": Amount(5.2, PH)}),
    Sentence("The second went to {second}.", {"second": Amount(5.7, PH)}),
)


def test_of_two_reasons_the_first_is_said_with_its_amounts():
    unknown, running = Outcome("unknown", why=TWO_REASONS), Outcome("running", why=TWO_REASONS, **BOTH)
    assert reason(unknown).text.say(METRIC) == "Its degree-hours to pH 5.3 are not known. The first went to 5.2."
    assert slow_reason(unknown).text.say(METRIC) == (
        "How warm it was in its first days is not known. The first went to 5.2."
    )
    assert slow_reason(running).text.say(METRIC).startswith("The first went to 5.2. It is not known to be cool")


def test_why_a_slow_style_still_runs_is_said_first():
    found = slow_reason(Outcome("running", why=MISSING, **BOTH))
    assert found.text.say(METRIC).startswith("No temperature was read. It is not known to be cool")


def test_nobody_kept_the_hours():
    assert (reason(None).met, slow_reason(None).met) == (None, None)
    assert reason(None).settle == ASK
    assert slow_reason(None).text.say(METRIC).endswith("is not known. No temperature was noted.")


SETTLED_BY: list[tuple[Outcome, str]] = [
    (Outcome("running"), "Read the pH and the temperature before the time is up."),
    (Outcome("unknown"), "Enter the temperatures that were read, or the logger's file. If there are none: " + ASK.text),
    (Outcome("over"), f"{ASK.text} {TOXIN}"),
    (Outcome("not shown"), f"{ASK.text} {TOXIN}"),
    (Outcome("running", contradiction=AGAINST), MEASURE_AGAIN.say(METRIC)),
    (Outcome("unknown", contradiction=AGAINST), MEASURE_AGAIN.say(METRIC)),
    (Outcome("over", contradiction=AGAINST), f"{ASK.text} {TOXIN}"),
]


@pytest.mark.parametrize(("outcome", "settled"), SETTLED_BY)
def test_what_would_settle_it(outcome: Outcome, settled: str):
    assert reason(outcome).settle.say(METRIC) == settled


@pytest.mark.parametrize(("word", "said"), [("running", True), ("over", True), ("unknown", True), ("passed", False)])
def test_a_contradiction_is_said_unless_it_passed_all_the_same(word: Word, said: bool):
    text = reason(Outcome(word, contradiction=AGAINST, **BOTH)).text.say(METRIC)
    assert ("pH 5.2 was contradicted." in text) is said


def test_what_contradicts_goes_before_what_is_missing():
    text = reason(Outcome("unknown", why=MISSING, contradiction=AGAINST)).text.say(METRIC)
    assert text == "Its degree-hours to pH 5.3 are not known. pH 5.2 was contradicted."


def test_each_rule_has_its_source():
    assert (Outcome("over").source, Outcome("over", "canada").source) == (DEGREE_HOURS_US, DEGREE_HOURS_CANADA)
    assert (RULES["us"].name, RULES["canada"].name) == ("US rule", "Canadian rule")


@pytest.mark.parametrize("told", [reason, slow_reason])
@pytest.mark.parametrize(
    ("deviation", "met", "fatal"),
    [
        (Deviation(kept=True, result="clean"), True, False),
        (Deviation(kept=True, result="not-tested"), False, False),
        (Deviation(kept=True, result="found"), False, True),
        (Deviation(kept=False, result="clean"), False, True),
        (Deviation(kept=False, result="not-tested"), False, True),
    ],
)
def test_only_a_clean_test_and_the_decision_to_keep_it_clear_it(told, deviation: Deviation, met: bool, fatal: bool):
    found = told(Outcome("over", deviation=deviation, **BOTH))
    assert (found.met, found.fatal) == (met, fatal)


@pytest.mark.parametrize("told", [reason, slow_reason])
@pytest.mark.parametrize("decided", [Deviation(True, "clean"), Deviation(True, "not-tested")])
def test_a_decision_to_keep_takes_nothing_from_what_passed(told, decided: Deviation):
    assert told(Outcome("passed", deviation=decided)).met is True


@pytest.mark.parametrize("told", [reason, slow_reason])
@pytest.mark.parametrize("word", get_args(Word))
@pytest.mark.parametrize("decided", [Deviation(True, "found"), Deviation(False, "found"), Deviation(False, "clean")])
def test_what_condemns_a_batch_stands_whatever_its_sum_came_to(told, word: Word, decided: Deviation):
    found = told(Outcome(word, deviation=decided))
    assert (found.met, found.fatal) == (False, True)


@pytest.mark.parametrize("told", [reason, slow_reason])
def test_what_passed_and_was_condemned_is_not_said_to_have_missed(told):
    text = told(Outcome("passed", deviation=Deviation(False, "found", "Ana"))).text.say(METRIC)
    assert text == "It was decided by Ana: the test found what must not be there."


@pytest.mark.parametrize(
    "decided", [Deviation(True, "clean"), Deviation(True, "not-tested"), Deviation(False, "found")]
)
def test_a_slow_style_that_was_decided_about_is_told_of_its_warm_days(decided: Deviation):
    assert slow_reason(Outcome("over", deviation=decided)).key == "warm-days"


def test_a_slow_style_that_is_still_warm_is_not_cleared_by_a_test_made_meanwhile():
    assert slow_reason(Outcome("running", deviation=Deviation(True, "clean"), **BOTH)).met is None


@pytest.mark.parametrize(
    ("deviation", "said"),
    [
        (
            Deviation(True, "clean", "the {district}", "two pieces"),
            "It missed its degree-hours; it was tested (two pieces), nothing was found, and it was cleared by the "
            "{district}.",
        ),
        (
            Deviation(True, "found"),
            "It missed its degree-hours, and it was decided: the test found what must not be there.",
        ),
        (Deviation(False, "clean"), "It missed its degree-hours, and it was decided: it is not to be eaten."),
        (
            Deviation(True, "not-tested", "me"),
            "It missed its degree-hours; it was decided by me to keep it, but no test is noted that found it clean.",
        ),
    ],
)
def test_what_was_decided_is_said_with_who_and_what(deviation: Deviation, said: str):
    assert reason(Outcome("over", deviation=deviation)).text.say(METRIC) == said


def test_the_sum_of_what_began_sour_says_so():
    judged = judge(Fermentation("us", acids((10, 5.1)), every_12_h(12)), 20 * H)
    assert judged.sum is not None
    assert judged.sum.working[-1].text == "The first pH that was read was already 5.3 or lower: it was there by then."
    assert judged.sum.value == pytest.approx(10 * (24 - 140 / 9) * H)
    assert (judged.sum.low, judged.sum.high, judged.sum.name) == (None, None, "Degree-hours to pH 5.3")


def test_a_crossing_that_began_before_the_start_has_its_least_sum_at_nothing():
    judged = judge(Fermentation("us", acids((-5, 5.8), (10, 5.1)), every_12_h(12)), 20 * H)
    assert judged.sum is not None
    assert judged.sum.low == 0


def test_the_sum_so_far_is_named_so():
    judged = judge(Fermentation("us", acids((0, 5.8)), every_12_h(12)), 12 * H)
    assert judged.sum is not None
    assert judged.sum.name == "Degree-hours so far"


def test_each_place_has_the_sum_of_its_own_readings_alone():
    both = Fermentation("us", acids((0, 5.8)), (*every_12_h(24, 24), *every_12_h(24, 22, "core")))
    chamber, core = judge(both, 24 * H).places
    assert (chamber.name, core.name) == ("By the chamber alone", "By the core alone")
    assert (chamber.value, core.value) == pytest.approx((24 * 76 / 9 * H, 24 * 58 / 9 * H))


def test_sour_at_the_start_itself_without_a_temperature_it_has_passed():
    assert judge(Fermentation("us", acids((0, 5.2))), H).word == "passed"
    assert judge(Fermentation("us", acids((0.001, 5.2))), H).word == "unknown"


@pytest.mark.parametrize("count", [0, 1])
def test_a_log_of_fewer_than_two_temperatures_is_refused(count: int):
    with pytest.raises(OutOfRange) as refused:
        summarised([0.0][:count], [20.0][:count], 10)
    assert refused.value.field == "file"


def test_two_temperatures_are_a_log():
    assert summarised([0.0, 60.0], [20.0, 21.0], 4).temperatures_c == (20.0, 21.0)


def test_a_short_log_stays_as_it_is_from_its_own_beginning():
    made = summarised([100.0, 160.0, 220.0], [20.0, 5.0, 22.0], 3)
    assert (made.times_s, made.temperatures_c) == ((0.0, 60.0, 120.0), (20.0, 5.0, 22.0))
    assert (made.highest_c, made.lasts_s, made.readings) == (22.0, 120.0, 3)


def test_a_long_log_is_its_ends_and_the_means_between():
    """Six readings a minute apart, four points: two stretches of 150 s with three readings each."""
    made = summarised([60.0 * each for each in range(6)], [20.0, 22.0, 24.0, 26.0, 28.0, 30.0], 4)
    assert (made.times_s, made.temperatures_c) == ((0.0, 60.0, 240.0, 300.0), (20.0, 22.0, 28.0, 30.0))
    assert (made.highest_c, made.lasts_s, made.readings) == (30.0, 300.0, 6)


def test_a_mean_of_the_first_or_of_the_last_reading_alone_is_no_second_point():
    """Two stretches of 200 s: the first reading alone in one, or the last in the other."""
    late = summarised([0.0, 250.0, 300.0, 350.0, 400.0], [20.0, 22.0, 24.0, 26.0, 28.0], 4)
    assert (late.times_s, late.temperatures_c) == ((0.0, 325.0, 400.0), (20.0, 25.0, 28.0))
    early = summarised([0.0, 50.0, 100.0, 150.0, 400.0], [20.0, 22.0, 24.0, 26.0, 28.0], 4)
    assert (early.times_s, early.temperatures_c) == ((0.0, 75.0, 400.0), (20.0, 23.0, 28.0))


def test_a_log_by_the_half_second_has_its_means_within_the_first():
    made = summarised([0.0, 0.5, 1.0, 1.5, 2.0], [20.0, 22.0, 24.0, 26.0, 28.0], 4)
    assert made.times_s == (0.0, 0.25, 1.5, 2.0)


def test_what_lies_below_either_base_does_not_cool_the_means():
    made = summarised([60.0 * each for each in range(6)], [10.0, 10.0, 16.55, 10.0, 10.0, 10.0], 4)
    assert made.temperatures_c[1] == pytest.approx((15.55 + 15.55 + 16.55) / 3)
    assert made.temperatures_c[0] == 15.55


def test_a_log_that_was_never_warm_keeps_its_own_temperatures():
    made = summarised([60.0 * each for each in range(6)], [10.0, 11.0, 12.0, 13.0, 14.0, 15.55], 4)
    assert made.temperatures_c == pytest.approx((10.0, 11.0, (13 + 14 + 15.55) / 3, 15.55))


def test_a_gap_in_a_log_stays_one():
    times = [0.0, 60.0, 120.0, 7200.0, 7260.0, 7320.0]
    made = summarised(times, [20.0] * 6, 5)
    assert max(b - a for a, b in zip(made.times_s, made.times_s[1:], strict=False)) >= 7000


def test_a_day_kept_of_a_log_and_its_highest_reading():
    assert kept(warm((0, 20), (1, 20), (1, 21)), 1, 15.0) == pytest.approx(5.5)


@pytest.mark.parametrize(
    ("outcome", "begins"),
    [
        (None, "Enter the temperatures of its first three days"),
        (Outcome("unknown"), "Enter the temperatures of its first three days"),
        (Outcome("running"), "Enter the temperatures of its first three days"),
        (Outcome("over"), f"{ASK.text} {TOXIN}"),
        (Outcome("not shown"), f"{ASK.text} {TOXIN}"),
    ],
)
def test_what_would_settle_the_warm_days_of_a_slow_style(outcome: Outcome | None, begins: str):
    found = slow_reason(outcome)
    assert found.settle.say(METRIC).startswith(begins)
    assert (found.key, found.source) == ("warm-days", GD_2023_STAPHYLOCOCCI)


@pytest.mark.parametrize(("told", "key"), [(reason, "degree-hours"), (slow_reason, "warm-days")])
@pytest.mark.parametrize(
    ("decided", "settled"),
    [
        (Deviation(True, "clean"), ASK.text),
        (Deviation(True, "not-tested"), f"{ASK.text} {TOXIN}"),
        (
            Deviation(False, "found"),
            "Throw the whole batch away, well wrapped, so that neither people nor animals eat it.",
        ),
    ],
)
def test_what_was_decided_rests_on_its_rule_and_says_what_is_left_to_do(told, key, decided: Deviation, settled: str):
    found = told(Outcome("over", "canada", deviation=decided))
    assert (found.key, found.source, found.settle.say(METRIC)) == (key, DEGREE_HOURS_CANADA, settled)


@pytest.mark.parametrize(("rule", "source"), [("us", DEGREE_HOURS_US), ("canada", DEGREE_HOURS_CANADA)])
def test_every_figure_of_a_fermentation_names_its_rules_source(rule: RuleKey, source: Source):
    judged = judge(Fermentation(rule, acids((0, 5.8)), every_12_h(24)), 24 * H)
    assert judged.sum is not None
    assert judged.limit is not None
    assert judged.deadline.left is not None
    assert [judged.sum.source, judged.limit.source, judged.deadline.left.source] == [source] * 3
    assert reason(judged.outcome).source == source
