"""Moments in many languages' words, in the one writing that is read."""

import pytest

from core.chamber.logs.spelling import month_of, months_meant, plain, shared_month
from tests.core.zoo_dates import MONTHS

AMBIGUOUS = {("Croatian", 6), ("Croatian", 7), ("Croatian", 10)}
"""Told by its short word alone, another language's month."""


@pytest.mark.parametrize("language", [each for each in MONTHS if each != "Roman"])
def test_every_month_of_a_language_is_its_month(language: str):
    tongue = "hr" if language == "Croatian" else "pl"
    assert [month_of(word, tongue) for word in MONTHS[language].split()] == list(range(1, 13))


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("lip", {"hr": "Jun", "pl": "Jul"}),
        ("srp", {"hr": "Jul", "pl": "Aug"}),
        ("listopada", {"hr": "Oct", "pl": "Nov"}),
        ("mar", {}),
    ],
)
def test_a_word_of_two_languages_means_two_months(word: str, meant: dict[str, str]):
    assert months_meant(word) == meant
    assert bool(month_of(word)) != bool(meant)


@pytest.mark.parametrize(
    ("text", "word"), [("28 lip 2025 05:00", "lip"), ("28 lipca 2025", ""), ("28 lipnja 2025", ""), ("28 jul 2025", "")]
)
def test_a_word_in_full_belongs_to_one_language(text: str, word: str):
    assert shared_month(text) == word


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("20/06/2025 10:00:00 p. m.", "20/06/2025 10:00:00 PM"),
        ("20/06/2025 10:00:00 a. m.", "20/06/2025 10:00:00 AM"),
        ("20/06/2025 10:00 π.μ.", "20/06/2025 10:00 AM"),
        ("20/06/2025 10:00 μ.μ.", "20/06/2025 10:00 PM"),
        ("2025-06-20 오전 10:00:00", "2025-06-20 10:00:00 AM"),
        ("2025-06-20 오후 10:00:00", "2025-06-20 10:00:00 PM"),
        ("2025/06/20 上午 10:00", "2025/06/20 10:00 AM"),
        ("2025/06/20 下午 10:00", "2025/06/20 10:00 PM"),
        ("2025.06.20. de. 10:00", "2025.06.20. 10:00 AM"),
        ("2025.06.20. du. 10:00", "2025.06.20. 10:00 PM"),
        ("20.06.2025 ÖÖ 10:00", "20.06.2025 10:00 AM"),
        ("20.06.2025 ÖS 10:00", "20.06.2025 10:00 PM"),
        ("06/20/2025 10:00a", "06/20/2025 10:00 AM"),
        ("06/20/2025 10:00p", "06/20/2025 10:00 PM"),
        ("20.06.2025 22:00 Uhr", "20.06.2025 22:00"),
        ("20/06/2025 22h00", "20/06/2025 22:00"),
        ("20/06/2025 22h05m07s", "20/06/2025 22:05:07"),
        ("20.06.2025 klo 22.00", "20.06.2025 22.00"),
        ("20/06/2025 à 22:00", "20/06/2025 22:00"),
        ("20/06/2025 - 22:00:00", "20/06/2025 22:00:00"),
        ("2025-06-20_22:00:00", "2025-06-20 22:00:00"),
        ("2025-06-20:22:00:00", "2025-06-20 22:00:00"),
        ("22:00:00 20/06/2025", "20/06/2025 22:00:00"),
        ("10:00 PM 20-Jun-2025", "20-Jun-2025 10:00 PM"),
        ("2025-06-20-22-00-05", "2025-06-20 22:00:05"),
        ("2025-06-20 22-00", "2025-06-20 22:00"),
        ("2025-06-20 22:00:00:250", "2025-06-20 22:00:00.250"),
        ("20/ 6/2025  7:00", "20/6/2025 07:00"),
        ("2025-06-20 22", "2025-06-20 22:00"),
        ("Fri Jun 20 22:00:00 2025", "Jun 20 2025 22:00:00"),
        ("Fri, 20 Jun 2025 22:00:00 +0200", "20 Jun 2025 22:00:00 +0200"),
        ("20. Juni 2025, 22:00 Uhr", "20. Jun 2025 22:00"),
        ("20 de junho de 2025 22:00", "20 Jun 2025 22:00"),
        ("20/VI/2025 22:00", "20/Jun/2025 22:00"),
        ("28 marraskuuta 2025 05:00", "28 Nov 2025 05:00"),
        ("28 márc. 2025 05:00", "28 Mar.2025 05:00"),
        ("2025. 06. 20. 22:00", "2025.06.20. 22:00"),
        ("2025年06月20日 22时05分", "2025-06-20 22:05"),
        ("2025/06/20(Fri) 22:00", "2025/06/20 22:00"),
        ("20/06/2025 Fri 22:00", "20/06/2025 22:00"),
        ("2025-06-20 22:00:00 CEST", "2025-06-20 22:00:00"),
        ("2025-06-20T22:00:00+02:00[Europe/Nowhere]", "2025-06-20 22:00:00 +02:00"),
        ("20JUN2025:22:00:00", "20Jun2025 22:00:00"),
        ('="2025-06-20 22:00"', "2025-06-20 22:00"),
        ("2025-171T22:00", "2025-06-20 22:00"),
        ("2025-W25-5T22:00", "2025-06-20 22:00"),
        ("20/06/2568 22:00", "20/06/2025 22:00"),
        ("20 Jun '25 22:00", "20 Jun 25 22:00"),
        ("٢٠٢٥-٠٦-٢٠ ٢٢:٠٠", "2025-06-20 22:00"),
        ("22.00 Uhr", "22.00"),
    ],
)
def test_a_moment_in_plain_writing(text: str, shown: str):
    assert plain(text) == shown


@pytest.mark.parametrize(
    ("day", "shown"), [("001", "2025-01-01"), ("366", "2026-01-01"), ("000", "2025-000"), ("367", "2025-367")]
)
def test_a_year_has_days_from_1_to_366(day: str, shown: str):
    assert plain(f"2025-{day} 22:00") == f"{shown} 22:00"


@pytest.mark.parametrize(("year", "shown"), [(2539, "2539"), (2540, "1997"), (2649, "2106"), (2650, "2650")])
def test_the_years_of_the_thai_calendar(year: int, shown: str):
    assert plain(f"20/06/{year} 22:00") == f"20/06/{shown} 22:00"


def test_what_is_not_known_stays_and_is_no_moment():
    assert plain("20 kuxuq 2025 22:00") == "20 kuxuq 2025 22:00"


def test_a_text_of_few_digits_or_too_long_is_left_as_it_is():
    assert plain("Uhr 12") == "Uhr 12"
    assert plain("22h00 Uhr") == "22:00"
    whole = "22h00" + " " * (48 - 5)
    assert (plain(whole), plain(whole + " ")) == ("22:00", whole + " ")


@pytest.mark.parametrize(
    ("word", "month"),
    [
        ("lipnja", 6), ("lipanj", 6), ("lipca", 7), ("lipiec", 7), ("srpnja", 7), ("srpanj", 7), ("srpna", 8),
        ("srpen", 8), ("липня", 7), ("листопада", 11), ("Mar", 3), ("MARCH", 3), ("x", 0), ("", 0),
    ],
)  # fmt: skip
def test_a_word_that_is_told_apart_is_one_month_in_any_tongue(word: str, month: int):
    assert [month_of(word, tongue) for tongue in ("", "hr", "pl")] == [month] * 3


@pytest.mark.parametrize(
    ("word", "croatian", "polish"), [("lip", 6, 7), ("srp", 7, 8), ("lis", 10, 11), ("listopad", 10, 11)]
)
def test_a_shared_word_is_a_month_in_its_own_tongue(word: str, croatian: int, polish: int):
    assert [month_of(word, tongue) for tongue in ("", "hr", "pl")] == [0, croatian, polish]


@pytest.mark.parametrize(
    ("text", "word"), [("28 LIPA 2025", ""), ("28 listopada 2025", "listopada"), ("x 28 srp 2025", "srp")]
)
def test_the_shared_word_of_a_text_is_found(text: str, word: str):
    assert shared_month(text) == (word or "lipa")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Uhr 123", "123"), ("Uhr 12", "Uhr 12"), ("7h05", "07:05"), ("1h05 2", "2 01:05"),
        ("20/1/2025 22:00", "20/1/2025 22:00"), ("20/i/2025 22:00", "20/Jan/2025 22:00"),
        ("20.xii.2025 22:00", "20.Dec.2025 22:00"), ("20 iii 2025 22:00", "20 Mar 2025 22:00"),
        ("20iii 2025 22:00", "20Mar 2025 22:00"), ("iii 2025 22:00", "Mar 2025 22:00"),
        ("20 mar 2025 22:00", "20 Mar 2025 22:00"),
        ("mar 20 2025 22:00", "Mar 20 2025 22:00"),
        ("2025-06-20t22:00", "2025-06-20 22:00"), ("2025-06-20 t 22:00", "2025-06-20 22:00"),
        ("20/06/2025 10:00 a", "20/06/2025 10:00 AM"), ("20/06/2025 10:00 p", "20/06/2025 10:00 PM"),
        ("20/06/2025 1000 pm", "20/06/2025 1000 pm"), ("20/06/2025 10.00 pm", "20/06/2025 10.00 PM"),
        ("pm 10:00 20/06/2025", "20/06/2025 10:00 PM"),
        ("2025-06-20 22:00 +0200", "2025-06-20 22:00 +0200"), ("2025-06-20 22:00 \u22122", "2025-06-20 22:00 -2"),
        ("2025-06-20 22:00 UTC", "2025-06-20 22:00 Z"),
        ("2025-06-20 -02", "2025-06-20 -02"), ("22:00 2025-06-20", "2025-06-20 22:00"),
        ("2025-06-20 22:00:05.25", "2025-06-20 22:00:05.25"), ("2025-06-20 22:00:05,25", "2025-06-20 22:00:05.25"),
        ("2025-06-20 22:00:", "2025-06-20 22:00"), ("2025:22:00", "2025 22:00"), ("2025-06-20 7", "2025-06-20 07:00"),
        ("2025-06-20-22-00", "2025-06-20 22:00"), ("2025-06-20 22-00-05", "2025-06-20 22:00:05"),
        ("1970-001 22:00", "1970-01-01 22:00"), ("1969-001 22:00", "1969-001 22:00"),
        ("2025-W01-1 22:00", "2024-12-30 22:00"), ("2025-W60-1 22:00", "2025-w60-1 22:00"),
        ("2025-06-20", "2025-06-20"), ("20 - 06 - 2025", "20 -06 -2025"),
        ("(Fr.) 20.06.2025 22:00", "20.06.2025 22:00"), ("20.06.2025 [UTC] 22:00", "20.06.2025 22:00"),
        ("\u200e20.06.2025\u00a022:00", "20.06.2025 22:00"), ("２０２５／０６／２０ ２２：００", "2025/06/20 22:00"),
        ("२०२५-०६-२० २२:००", "2025-06-20 22:00"), ("۲۰۲۵-۰۶-۲۰ ۲۲:۰۰", "2025-06-20 22:00"),
    ],
)  # fmt: skip
def test_what_only_decorates_a_moment_goes_and_each_part_keeps_its_place(text: str, shown: str):
    assert plain(text) == shown
