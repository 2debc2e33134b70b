"""The chamber's single sums: what may be typed in each box, what stands there at first, what an empty one does."""

import pytest

from core.chamber import checks_sheets, moisture_sheets, setpoint_sheets
from core.worksheet import Number, Worksheet
from tests.core.telling import in_words

DAY_S, YEAR_S = 86_400.0, 365 * 86_400.0
SHEETS = {sheet.name: sheet for room in (setpoint_sheets, moisture_sheets, checks_sheets) for sheet in room.WORKSHEETS}
Box = tuple[str, float, float, float | None]
TEMPERATURE: Box = ("temperature", -20, 60, 12)
HUMIDITY: Box = ("humidity", 0.01, 1, 0.75)
ACTIVITY: Box = ("activity", 0.5, 1, 0.97)
LOSS: Box = ("loss", 1e-4 / DAY_S, 0.1 / DAY_S, 0.01 / DAY_S)  # 0.01 to 10 % a day
PEAK: Box = ("peak", 1e-4 / DAY_S, 0.1 / DAY_S, None)
SALT: tuple[Box, ...] = (("tolerance", 0.001, 0.5, 0.03), ("division", 0, 0.1, 0.001), ("apart_k", 0, 5, 0.2))
THERMOMETER: tuple[Box, ...] = (("tolerance_k", 0.01, 20, 1), ("division_k", 0, 5, 0.1))


@pytest.mark.parametrize(
    ("name", "boxes"),
    [
        ("set-point", [TEMPERATURE, HUMIDITY, ACTIVITY]),
        (
            "equal-drying",
            [TEMPERATURE, HUMIDITY, ACTIVITY, ("other_temperature", -20, 60, None), ("other_humidity", 0, 1, None)],
        ),
        (
            "cold-piece",
            [("piece", -1, 60, 2), TEMPERATURE, HUMIDITY, ("thickness", 0.01, 0.3, None), ("film", 2, 60, None)],
        ),
        (
            "moisture-load",
            [
                ("hanging", 0.001, 999, None), LOSS, PEAK, TEMPERATURE, HUMIDITY, ("chamber", 0.01, 100, None),
                ("thickness", 0.01, 0.3, None), ("air_speed", 0.02, 3, None),
            ],
        ),
        (
            "chamber-capacity",
            [
                LOSS, ("drained", 1e-6, 1, None), ("time", 6 * 3600, YEAR_S, None),
                ("rating", 1e-6 / DAY_S, 1 / DAY_S, None), ("hanging", 0.001, 999, None), PEAK,
            ],
        ),
        (
            "humidifier-need",
            [
                ("chamber", 0.01, 100, None), TEMPERATURE, HUMIDITY, ("room_temperature", -20, 60, 20),
                ("room_humidity", 0.01, 1, 0.5), ("changes", 0, 1000, None), ("drained", 0, 0.1 / DAY_S, None),
            ],
        ),
        ("ice-point", [("reading_c", -30, 50, None), *THERMOMETER]),
        (
            "boiling-point",
            [
                ("reading_c", 50, 150, None), ("altitude_m", -500, 4000, 0), ("pressure_pa", 60e3, 110e3, None),
                *THERMOMETER,
            ],
        ),
        ("salt-check", [("temperature_c", 0, 40, None), ("reading", 0, 1, None), *SALT]),
        (
            "salt-check-two",
            [
                ("temperature_c", 0, 40, None), ("reading", 0, 1, None), ("other_temperature_c", 0, 40, None),
                ("other_reading", 0, 1, None), ("now", 0, 1, None), *SALT,
            ],
        ),
        (
            "ph-meter",
            [
                ("buffer", 1, 13, 7), ("temperature_c", 5, 50, 25), ("reading", -1000, 1000, None),
                ("other_buffer", 1, 13, 4.01), ("other_temperature_c", 5, 50, 25), ("other_reading", -1000, 1000, None),
            ],
        ),
        ("ph-warmth", [("shown", 2, 12, None), ("sample", 0, 60, None), ("stands_at", 0, 60, 25)]),
        (
            "scale-check",
            [
                ("mass_kg", 1e-6, 999.999, None), ("reading_kg", 1e-6, 999.999, None), ("division_kg", 1e-6, 1, 1e-4),
                ("other_mass_kg", 1e-6, 999.999, None), ("other_reading_kg", 1e-6, 999.999, None),
            ],
        ),
    ],
)  # fmt: skip
def test_what_may_be_typed_and_what_stands_there_at_first(name: str, boxes: list[Box]):
    """The bounds are those that the sums themselves name, no unit of any system being nearer to one."""
    held = [each for each in SHEETS[name].inputs if isinstance(each, Number)]
    assert [each.key for each in held] == [key for key, *_ in boxes]
    for each, (_, low, high, default) in zip(held, boxes, strict=True):
        assert (each.low, each.high) == pytest.approx((low, high), rel=1e-12), each.key
        assert each.default == (None if default is None else pytest.approx(default, rel=1e-12)), each.key


def keys(sheet: Worksheet, **typed: str) -> list[str]:
    return [each.key for each in sheet.answer(typed).figures]


@pytest.mark.parametrize(
    ("typed", "answered"),
    [
        ({"other_temperature": "15 °C"}, ["equal_humidity", "vapour_pressure_deficit"]),
        ({"other_humidity": "85 %"}, ["equal_temperature", "vapour_pressure_deficit"]),
        (
            {"other_temperature": "15 °C", "other_humidity": "85 %"},
            ["equal_humidity", "equal_temperature", "vapour_pressure_deficit"],
        ),
    ],
)
def test_equal_drying_answers_what_is_asked(typed: dict[str, str], answered: list[str]):
    assert keys(SHEETS["equal-drying"], temperature="12 °C", humidity="80 %", **typed) == answered


def test_a_set_point_is_laid_beside_a_programme_only_where_one_is_chosen():
    plain = keys(SHEETS["set-point"], temperature="12 °C", humidity="80 %")
    assert plain == ["vapour_pressure_deficit", "dew_point", "coldest_dry_surface"]
    beside = keys(SHEETS["set-point"], temperature="12 °C", humidity="80 %", programme="dry-cellar")
    assert beside == [*plain, "programme_temperature", "programme_humidity"]


def test_a_ph_compensated_for_temperature_says_what_that_made():
    """pH 5 at 10 °C, the meter at 25: 7 − 2 × 298.15 ÷ 283.15 = 4.8940."""
    figures = SHEETS["ph-warmth"].answer({"shown": "5", "sample": "10 °C", "stands_at": "25 °C"}).figures
    assert [(each.key, round(each.value, 4)) for each in figures] == [("ph", 4.8940), ("change", -0.1060)]


@pytest.mark.parametrize(("cleaned", "word"), [("no", "Clean"), ("yes", "Replace the electrode")])
def test_a_bad_electrode_is_cleaned_once(cleaned: str, word: str):
    typed = {"shows": "ph", "buffer": "7", "reading": "7", "other_buffer": "4", "other_reading": "4.8"}
    cautions = in_words(SHEETS["ph-meter"].answer({**typed, "cleaned": cleaned}).figures[0].cautions)
    assert cautions[0].startswith(f"{word}:")


def test_the_pressure_of_the_place_goes_before_its_height():
    typed = {"reading_c": "96 °C", "altitude_m": "1000 m"}
    by_height = {each.key: each for each in SHEETS["boiling-point"].answer(typed).figures}
    by_pressure = {
        each.key: each for each in SHEETS["boiling-point"].answer({**typed, "pressure_pa": "1013.25 hPa"}).figures
    }
    assert by_height["truth"].value == pytest.approx(96.7, abs=0.1)  # ISO 2533: 898.7 hPa at 1000 m
    assert by_pressure["truth"].value == pytest.approx(99.97, abs=0.01)
