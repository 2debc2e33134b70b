"""Numbers and spans that tell a time: the years that decide what is counted, each bound from both sides."""

import math
from datetime import UTC, datetime

import pytest

from core.chamber.logs.counting import COUNTS, counts_that_fit, has_two_parts, span_of

NEW_YEAR = {year: datetime(year, 1, 1, tzinfo=UTC).timestamp() for year in (2000, 2008, 2060)}
AT_S = datetime(2025, 6, 20, 22, tzinfo=UTC).timestamp()


@pytest.mark.parametrize(
    ("key", "number"),
    [
        ("us1970", AT_S * 1e6),
        ("ns1970", AT_S * 1e9),
        ("s1904", AT_S + 2_082_844_800),
        ("s2000", AT_S - 946_684_800),
        ("s1980", AT_S - 315_964_800),
        ("tick1601", (AT_S + 11_644_473_600) * 1e7),
        ("d-4712", AT_S / 86_400 + 2_440_587.5),
    ],
)
def test_what_a_count_means(key: str, number: float):
    assert COUNTS[key].moment_s(number) == pytest.approx(AT_S, abs=1e-3)
    assert key in counts_that_fit([number])


@pytest.mark.parametrize(("key", "first"), [("us1970", 2000), ("s1904", 2008), ("s2000", 2008), ("s1980", 2008)])
def test_a_count_is_of_the_years_of_logs(key: str, first: int):
    count = COUNTS[key]

    def number(at_s: float) -> float:
        return (at_s - count.origin_s) / count.tick_s

    assert count.moment_s(number(NEW_YEAR[first])) == pytest.approx(NEW_YEAR[first])
    assert math.isnan(count.moment_s(number(NEW_YEAR[first] - 1)))
    assert count.moment_s(number(NEW_YEAR[2060] - 1)) == pytest.approx(NEW_YEAR[2060] - 1)
    assert math.isnan(count.moment_s(number(NEW_YEAR[2060])))


def test_the_parts_of_a_day_are_whole_seconds():
    assert COUNTS["d-4712"].moment_s(2_460_847.416_667) == AT_S


@pytest.mark.parametrize("numbers", [[0.0], [2025.0], [20_062_025.0], [], [AT_S * 1e6, 0.0]])
def test_what_fits_no_year_counts_nothing(numbers: list[float]):
    assert counts_that_fit(numbers) == ()


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("0:00", 0),
        ("0:10", 600),
        ("36:10", 130_200),
        ("036:10:05", 130_205),
        ("1:00:00.5", 3600.5),
        ("1d 12:10", 130_200),
        ("2 days, 0:00:01", 172_801),
        ("PT36H10M", 130_200),
        ("P1DT2H3M4.5S", 93_784.5),
    ],
)
def test_a_span_since_a_start(text: str, seconds: float):
    assert span_of(text) == seconds


@pytest.mark.parametrize("text", ["", "P", "12", "12:60", "1:2:3", "12:00:60", "12345:00", "T", "2025-06-20"])
def test_another_text_is_no_span(text: str):
    assert math.isnan(span_of(text))


@pytest.mark.parametrize(
    ("text", "first", "seconds"), [("36:10", "min", 2170), ("1:36:10", "min", 5770), ("1d 1:10", "min", 90_600)]
)
def test_two_parts_may_be_minutes_and_seconds(text: str, first: str, seconds: float):
    assert span_of(text, first) == seconds


@pytest.mark.parametrize(("text", "two"), [("36:10", True), ("36:10:00", False), ("1d 36:10", False), ("PT1H", False)])
def test_only_two_parts_leave_that_open(text: str, two: bool):
    assert has_two_parts(text) == two
