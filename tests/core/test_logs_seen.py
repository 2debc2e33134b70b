"""One column of a log's rows, and what the others say of it: each share and count from both sides."""

import pytest
from attrs import evolve

from core.chamber.logs.column import Column
from core.chamber.logs.column_units import with_unit, with_units
from core.chamber.logs.doubles import agree, without_doubles
from core.chamber.logs.doubts import UNPLUGGED, with_doubts
from core.chamber.logs.notes import ITS_HEAD_ENDS_IN_IT, Note
from core.chamber.logs.scales import Unit
from core.chamber.logs.seen import Seen, see
from core.chamber.logs.table import Table
from core.chamber.logs.values import looks_broken, number, value_of
from tests.core.telling import in_words

WARM = Column("temperature")
WET = Column("humidity")


def column(cells: list[str], label: str = "", below: str = "", decimal: str = ".") -> Seen:
    return see(Table([[cell] for cell in cells], [label], [below], cells, ";", decimal), 0)


def of(*values: float, label: str = "", below: str = "") -> Seen:
    return column([f"{value:.2f}" for value in values], label, below)


@pytest.mark.parametrize(("numbers", "is_text"), [(5, False), (4, True), (0, True), (10, False)])
def test_a_column_of_which_less_than_half_are_numbers_is_text(numbers: int, is_text: bool):
    assert column(["12.5"] * numbers + ["x"] * (10 - numbers)).is_text is is_text


def test_an_empty_column_is_no_text():
    assert not column(["", " "]).is_text


@pytest.mark.parametrize(
    ("cells", "mark"),
    [
        (["12,5"] * 6 + ["12"] * 4, ","), (["12,5"] * 5 + ["12"] * 5, ""), (["x"] * 6 + ["12"] * 4, ""),
        (["12,5"] * 10, ","), (["12.5"] * 10, ""),
    ],
)  # fmt: skip
def test_a_column_most_of_which_another_mark_reads_has_that_mark(cells: list[str], mark: str):
    assert column(cells).mark == mark


def test_the_other_mark_of_a_comma_is_a_point():
    assert column(["12.5"] * 10, decimal=",").mark == "."


@pytest.mark.parametrize(("count", "is_constant"), [(20, True), (19, False)])
def test_twenty_readings_alike_are_constant(count: int, is_constant: bool):
    assert column(["12.5"] * count).is_constant is is_constant
    assert column(["12.5"] * count).decimals == (1 if is_constant else None)


@pytest.mark.parametrize(("many", "decimals"), [(19, 1), (18, None)])
def test_nineteen_in_twenty_tell_how_many_decimals_there_are(many: int, decimals: int | None):
    assert column(["12.5"] * many + ["12"] * (20 - many)).decimals == decimals


def test_of_whole_numbers_no_decimals_are_told():
    assert column(["12"] * 20).decimals is None


@pytest.mark.parametrize(
    ("cells", "may"),
    [
        (["1", "2"] * 5, True), (["1", "2"] * 4 + ["1"], False), (["1"] * 10, False), (["1"] * 7 + ["2"] * 3, True),
        (["1"] * 8 + ["2"] * 2, False), (["1.0", "2.0"] * 5, False), (["a", "b"] * 5, False),
        ([str(n) for n in range(50)] * 5, True), ([str(n) for n in range(51)] * 6, False),
        ([str(n) for n in range(10)] * 4, False),
    ],
)  # fmt: skip
def test_a_few_whole_numbers_that_return_may_number_probes(cells: list[str], may: bool):
    assert column(cells).may_number_probes is may


@pytest.mark.parametrize(("close", "do_agree"), [(9, True), (8, False)])
@pytest.mark.parametrize(("off_k", "is_close"), [(0.19, True), (0.21, False)])
def test_two_columns_agree_where_nine_rows_in_ten_lie_within_a_fifth_of_a_degree(
    close: int, do_agree: bool, off_k: float, is_close: bool
):
    celsius = of(*[12.0] * 10)
    fahrenheit = of(*[(12.0 + off_k) * 1.8 + 32] * close, *[99.0] * (10 - close))
    assert agree(celsius, "°C", fahrenheit, "°F", 0.2) is (do_agree and is_close)


def test_columns_without_a_row_in_common_do_not_agree():
    assert not agree(column(["12.0", "x"]), "°C", column(["x", "53.6"]), "°F", 0.2)


def test_the_unit_beside_a_number_outranks_the_column_s():
    assert agree(column(["53.6 °F"]), "°C", column(["12.0"]), "°C", 0.2)


def roles(columns: list[Column], seen: list[Seen]) -> list[str]:
    return [each.role for each in without_doubles(columns, seen)]


def test_a_temperature_again_in_the_other_unit_is_a_double_and_the_celsius_is_kept():
    celsius, fahrenheit = evolve(WARM, unit="°C"), evolve(WARM, unit="°F")
    seen = [of(12.0, 13.0), of(53.6, 55.4)]
    assert roles([celsius, fahrenheit], seen) == ["temperature", "ignored"]
    assert roles([fahrenheit, celsius], seen[::-1]) == ["ignored", "temperature"]
    assert roles([celsius, celsius], seen) == ["temperature", "temperature"]


# Dew points at 12 °C by Magnus’ formula with the constants of WMO-No. 8: 4.47 °C at 60 %, 8.65 °C at 80 %.
@pytest.mark.parametrize(
    ("dew", "wet", "label", "role"),
    [
        (4.49, 60.0, "x", "ignored"), (4.96, 60.0, "x", "ignored"), (4.98, 60.0, "x", "temperature"),
        (3.99, 60.0, "x", "ignored"), (3.96, 60.0, "x", "temperature"), (4.49, 60.0, "Temp", "temperature"),
        (8.65, 80.0, "x", "ignored"), (11.19, 95.0, "x", "ignored"), (11.21, 95.0, "x", "temperature"),
        (4.49, 0.0, "x", "temperature"),
    ],
)  # fmt: skip
def test_a_dew_point_under_another_name_is_no_probe(dew: float, wet: float, label: str, role: str):
    """Within half a kelvin of it, and 0.8 K below the air."""
    columns = [evolve(WARM, unit="°C"), evolve(WET, unit="%"), evolve(WARM, unit="°C")]
    seen = [of(*[12.0] * 10, label="Temp"), of(*[wet] * 10), of(*[dew] * 10, label=label)]
    assert roles(columns, seen) == ["temperature", "humidity", role]


@pytest.mark.parametrize(("many", "role"), [(9, "ignored"), (8, "temperature")])
def test_nine_rows_in_ten_tell_a_dew_point(many: int, role: str):
    columns = [evolve(WARM, unit="°C"), evolve(WET, unit="fraction"), evolve(WARM, unit="°C")]
    seen = [of(*[12.0] * 10, label="Temp"), of(*[0.6] * 10), of(*[4.49] * many, *[9.0] * (10 - many), label="x")]
    assert roles(columns, seen)[2] == role


def as_dew_point(dew: list[str], *, air: str = "12.0", wet: str = "95", unit: Unit = "%") -> str:
    """The role of a column of such numbers under no known name, beside air and humidity."""
    columns = [evolve(WARM, unit="°C"), evolve(WET, unit=unit), evolve(WARM, unit="°C")]
    return roles(columns, [column([air] * len(dew), "Temp"), column([wet] * len(dew)), column(dew, "x")])[2]


# Dew points by the same formula: 4.468 °C at 12 °C and 60 %; 11.223 °C at 12 °C and 95 %.
@pytest.mark.parametrize(
    ("dew", "air", "wet", "unit", "role"),
    [
        ("4.966", "12.0", "0.6", "fraction", "ignored"), ("4.970", "12.0", "0.6", "fraction", "temperature"),
        ("3.970", "12.0", "0.6", "fraction", "ignored"), ("3.966", "12.0", "0.6", "fraction", "temperature"),
        ("11.196", "12.0", "95", "%", "ignored"), ("11.204", "12.0", "95", "%", "temperature"),
        ("0.0", "0.8", "95", "%", "temperature"),
    ],
)  # fmt: skip
def test_half_a_kelvin_and_eight_tenths_tell_a_dew_point(dew: str, air: str, wet: str, unit: Unit, role: str):
    assert as_dew_point([dew] * 10, air=air, wet=wet, unit=unit) == role


@pytest.mark.parametrize(("below", "role"), [(9, "ignored"), (8, "temperature")])
def test_nine_rows_in_ten_lie_below_the_air_where_it_is_a_dew_point(below: int, role: str):
    assert as_dew_point(["11.1"] * below + ["11.3"] * (10 - below)) == role


def test_a_row_without_a_number_says_nothing_of_a_dew_point():
    assert as_dew_point(["11.1"] * 9 + ["x"]) == "ignored"


@pytest.mark.parametrize(("fahrenheit", "role"), [("53.9582", "ignored"), ("53.9618", "temperature")])
def test_a_fifth_of_a_kelvin_is_what_rounding_does(fahrenheit: str, role: str):
    """12.199 and 12.201 °C beside 12."""
    columns = [evolve(WARM, unit="°C"), evolve(WARM, unit="°F")]
    assert roles(columns, [column(["12"] * 10, "Temp 1"), column([fahrenheit] * 10, "Temp 2")])[1] == role


@pytest.mark.parametrize(("close", "do_agree"), [(43, True), (42, False)])
def test_of_47_rows_43_must_agree(close: int, do_agree: bool):
    other = column(["12.5"] * close + ["19"] * (47 - close))
    assert agree(column(["12"] * 47), "°C", other, "°C", 0.5) is do_agree


def test_a_dew_point_in_fahrenheit_is_told_by_the_same_rows():
    columns = [evolve(WARM, unit="°F"), evolve(WET, unit="%"), evolve(WARM, unit="°F")]
    seen = [of(*[53.6] * 10, label="Temp"), of(*[60.0] * 10), of(*[40.1] * 10, label="x")]
    assert roles(columns, seen)[2] == "ignored"


def unit_of(values: list[float], label: str = "", below: str = "", role: Column = WARM) -> Column:
    return with_unit(role, of(*values, label=label, below=below))


@pytest.mark.parametrize(
    ("label", "below", "unit", "why"),
    [
        ("Temp (°C)", "", "°C", "its head says it"), ("Temp", "°F", "°F", "the row of units says it"),
        ("Temp (°C)", "°F", "°C", "its head says it"), ("Temp (1/10 °C)", "", "°C/10", "its head says it"),
        ("Temp x10", "°C", "°C/10", "the row of units says it"), ("Temp (°C)", "x10", "°C/10", "its head says it"),
        ("Temp (%)", "°C", "°C", "the row of units says it"),
    ],
)  # fmt: skip
def test_a_unit_is_stated_by_the_head_or_under_it(label: str, below: str, unit: str, why: str):
    found = unit_of([40.0, 60.0] * 10, label, below)
    assert (found.unit, said_of(found.why_unit)) == (unit, why)


def test_a_factor_without_a_unit_leaves_those_so_multiplied():
    assert unit_of([1250.0] * 20, "Temp x100").units == ("°C/100", "°F/100")


@pytest.mark.parametrize(("written", "unit"), [(9, "written"), (8, "°C")])
def test_nine_cells_in_ten_that_say_their_unit_say_it_for_all(written: int, unit: str):
    seen = column(["12.5 °F"] * written + ["12.5"] * (10 - written), "Temp (°C)")
    assert with_unit(WARM, seen).unit == unit


@pytest.mark.parametrize(
    ("low", "high", "units", "is_likelier"),
    [
        (5.0, 25.0, ("°C", "°F"), True), (4.99, 25.0, ("°C", "°F"), False), (5.0, 25.01, ("°C", "°F"), False),
        (45.0, 69.0, ("°F", "°C"), True), (44.99, 69.0, ("°C", "°F"), False), (50.0, 70.0, ("°F", "°C"), True),
    ],
)  # fmt: skip
def test_a_chamber_s_degrees_are_likelier(low: float, high: float, units: tuple[str, ...], is_likelier: bool):
    found = unit_of([low, high] * 10)
    assert (found.unit, found.units, found.is_likelier) == ("", units, is_likelier)


@pytest.mark.parametrize(("most", "unit"), [(89.9, "°F"), (90.1, "°F")])
def test_one_unit_that_is_left_is_taken(most: float, unit: str):
    found = unit_of([71.0, most] * 10)
    assert (found.unit, said_of(found.why_unit)) == (unit, f"its numbers, 71 to {most:g}, leave no other")


def test_a_stated_unit_that_no_reading_could_have_is_doubted():
    found = unit_of([90.0, 95.0] * 10, "Temp (°C)")
    assert (found.unit, found.units) == ("", ("°F", "°C"))
    assert said_of(found.doubt) == "Its head says °C, but it reads 90 to 95."


@pytest.mark.parametrize(("apart", "unit"), [(10.0, "°C"), (10.05, "")])
@pytest.mark.parametrize("end", ["low", "high", "both"])
def test_a_temperature_has_the_unit_of_one_within_ten_degrees(apart: float, unit: str, end: str):
    low, high = (30.0 + (apart if end != "high" else 0)), (45.0 + (apart if end != "low" else 0))
    columns = with_units([WARM, WARM], [of(*[30.0, 45.0] * 10, label="Temp 1 (°C)"), of(*[low, high] * 10)])
    assert columns[1].unit == unit
    if unit:
        assert said_of(columns[1].why_unit) == "the temperatures beside it are so"


def test_a_temperature_again_in_the_other_unit_tells_which_is_which():
    celsius, fahrenheit = [12.0, 13.0] * 10, [53.6, 55.4] * 10
    both = with_units([WARM, WARM], [of(*celsius), of(*fahrenheit)])
    assert [each.unit for each in both] == ["°C", "°F"]
    told = with_units([WARM, WARM], [of(*fahrenheit), of(*celsius, label="Temp (°C)")])
    assert (told[0].unit, said_of(told[0].why_unit)) == ("°F", "another column gives it in °C")
    told = with_units([WARM, WARM], [of(*celsius), of(*fahrenheit, label="Temp (°F)")])
    assert (told[0].unit, said_of(told[0].why_unit)) == ("°C", "another column gives it in °F")


@pytest.mark.parametrize(
    ("labels", "values", "units"),
    [
        (("Temp C", "RH"), (30.0, 60.0), ["°C", "%"]),
        (("Temp F", "RH"), (30.0, 60.0), ["°F", "%"]),
        (("Temp A", "Temp C"), (30.0, 60.0), ["", ""]),
        (("Temp C", "RH C"), (30.0, 60.0), ["", "%"]),
        (("Temp C", "Temp F"), (12.0, 53.6), ["°C", "°F"]),
        (("Temp C", "Temp F"), (12.0, 60.0), ["", ""]),
    ],
)
def test_a_letter_at_the_end_is_a_unit_but_not_beside_other_letters(
    labels: tuple[str, str], values: tuple[float, float], units: list[str]
):
    columns = [WARM, WET if labels[1].startswith("RH") else WARM]
    seen = [of(*[value] * 10, label=label) for value, label in zip(values, labels, strict=True)]
    assert [each.unit for each in with_units(columns, seen)] == units


def test_a_letter_that_is_no_unit_says_none():
    assert with_units([WARM], [of(*[30.0, 60.0] * 10, label="Temp A")])[0].unit == ""


def test_letters_that_agree_as_units_say_so_by_themselves():
    both = with_units([WARM, WARM], [of(*[12.0, 13.0] * 10, label="Temp C"), of(*[53.6, 55.4] * 10, label="Temp F")])
    assert [each.why_unit for each in both] == [Note(ITS_HEAD_ENDS_IN_IT)] * 2


def test_only_temperatures_tell_each_other_s_units():
    celsius, fahrenheit = of(*[12.0, 13.0] * 10), of(*[53.6, 55.4] * 10)
    told = of(*[53.6, 55.4] * 10, label="Temp (°F)")
    left = Column("ignored")
    assert [each.unit for each in with_units([left, WARM, left], [celsius, told, celsius])] == ["", "°F", ""]
    assert [each.unit for each in with_units([WARM, left], [celsius, fahrenheit])] == ["", ""]
    assert [each.unit for each in with_units([WARM, WARM, left], [celsius, told, celsius])] == ["°C", "°F", ""]


@pytest.mark.parametrize(("most", "likelier"), [(90, True), (91, False)])
def test_whole_degrees_are_a_chamber_s_up_to_90_fahrenheit(most: int, likelier: bool):
    """They may be tenths of a degree Celsius as well."""
    found = with_unit(WARM, column(["50", str(most)] * 10))
    assert (found.units[:1] == ("°F",) and found.is_likelier) is likelier


def test_a_column_without_a_number_leaves_its_units_open():
    assert with_unit(WARM, column(["", ""])).units == ("°C", "°F", "K")


def test_a_stated_unit_is_kept_where_no_unit_fits_and_the_numbers_move():
    assert unit_of([500.0, 600.0] * 10, "Temp (°C)").unit == "°C"
    assert unit_of([500.0] * 20, "Temp (°C)").unit == ""
    assert said_of(unit_of([0.1, 1.0] * 10, "RH (%)", role=WET).doubt) == "Its head says %, but it reads 0.1 to 1."


def doubted(values: list[float], *, label: str = "Temp (°C)", beside: list[float] | None = None) -> Column:
    columns, seen = [evolve(WARM, unit="°C")], [of(*values, label=label)]
    if beside is not None:
        columns, seen = [*columns, evolve(WARM, unit="°C")], [*seen, of(*beside, label="Temp 2 (°C)")]
    return with_doubts(columns, seen)[0]


MOVING = [12.0 + n / 10 for n in range(20)]


@pytest.mark.parametrize(
    ("value", "beside", "role"),
    [
        (12.0, None, "temperature"), (12.0, MOVING, "unknown"), (12.0, [13.0] * 20, "temperature"),
        (85.0, None, "unknown"), (-127.0, None, "unknown"), (84.0, None, "temperature"),
    ],
)  # fmt: skip
def test_one_number_in_every_row_is_doubted_beside_one_that_moves_or_where_sensors_say_it(
    value: float, beside: list[float] | None, role: str
):
    assert doubted([value] * 20, beside=beside).role == role


def said_of(note: Note | None) -> str:
    return in_words([note.said])[0] if note else ""


def doubts_of(*heads: tuple[Column, str]) -> list[str]:
    columns = [evolve(role, unit="°C" if role.role == "temperature" else "%", why_unit=Note("x")) for role, _ in heads]
    return [said_of(each.doubt) for each in with_doubts(columns, [of(*MOVING, label=label) for _, label in heads])]


def test_a_strange_head_is_asked_about_by_what_it_would_be():
    warm, wet = (
        "Is it air or meat in the chamber, or something else?",
        "Is it the air's relative humidity, or something else?",
    )
    assert doubts_of((WARM, "Temp"), (WARM, "Kuxuq"), (WET, "RH"), (WET, "Fan")) == ["", warm, "", wet]


def test_two_humidities_that_say_so_are_plain_without_a_temperature():
    assert doubts_of((WET, "RH 1"), (WET, "RH 2")) == ["", ""]


def test_a_letter_that_is_no_unit_belongs_to_the_name():
    assert doubts_of((WARM, "Temp"), (WARM, "Kuxuq C"), (WET, "Kuxuq C")) == ["", "", ""]


def test_what_it_says_in_every_row_is_told_as_its_first_row_writes_it():
    steady = column(["12.0", *["12"] * 18, "12.00"], "Temp (°C)")
    columns = with_doubts([evolve(WARM, unit="°C")] * 2, [steady, of(*MOVING, label="Temp 2 (°C)")])
    assert said_of(columns[0].doubt) == "It says 12.0 in every row: a set value, or a sensor that is not plugged in?"


def test_what_sensors_say_while_they_are_not_plugged_in():
    """Common practice; no published source; entered here a second time."""
    assert UNPLUGGED == (-200, -127, -50, -40, 0, 85, 100, 125, 150, 850)


@pytest.mark.parametrize(
    ("values", "strays"),
    [
        # known of sensors: twice, eight from all others
        ([*MOVING, 0.0, 0.0], (0.0,)), ([*MOVING, 0.0], ()),
        ([8.0, 9.0, 10.0, 0.0, 0.0], (0.0,)), ([7.95, 9.0, 10.0, 0.0, 0.0], ()),
        # another number: three times, fifteen from all others, and three times as far as they are apart
        ([*MOVING * 3, 40.0, 40.0, 40.0], (40.0,)), ([*MOVING * 3, 40.0, 40.0], ()),
        ([12.0, 13.0, 28.0, 28.0, 28.0] + [12.5] * 100, (28.0,)), ([12.0, 13.0, 27.9, 27.9, 27.9] + [12.5] * 100, ()),
        ([5.0] * 50 + [15.0] * 50 + [45.0] * 3, (45.0,)), ([5.0] * 50 + [15.0] * 50 + [44.9] * 3, ()),
        ([12.0] * 10 + [85.0] * 10, ()), ([12.0, 12.5] * 10 + [85.0] * 10, (85.0,)),
        ([*MOVING, 0.0, 0.0, -127.0, -127.0], (-127.0, 0.0)), ([0.0, 85.0, 100.0] * 5, (0.0, 85.0, 100.0)),
    ],
)  # fmt: skip
def test_numbers_that_return_far_from_all_others_are_asked_about(values: list[float], strays: tuple[float, ...]):
    assert doubted(values).may_mean_nothing == strays


@pytest.mark.parametrize(
    ("cell", "value"),
    [
        ("-60.0", -60.0), ("-60.1", None), ("120.0", 120.0), ("120.1", None), ("85.0", None), ("84.9", 84.9),
        ("85.1", 85.1), ("x", None), ("12.5 °C", 12.5), ("50.0 °F", 10.0), ("12.5 %", None), ("12.55", None),
    ],
)  # fmt: skip
def test_a_temperature_in_a_cell(cell: str, value: float | None):
    found, why = value_of(cell, Column("temperature", unit="°C", decimals=1), ".")
    assert (found if not why else None) == value


@pytest.mark.parametrize(
    ("cell", "value"), [("0", 0.0), ("-0.1", None), ("110", 1.1), ("110.1", None), ("78.5", 0.785), ("78.5 °C", None)]
)
def test_a_humidity_in_a_cell(cell: str, value: float | None):
    found, why = value_of(cell, Column("humidity", unit="%"), ".")
    assert (found if not why else None) == (None if value is None else pytest.approx(value))


@pytest.mark.parametrize(
    ("cell", "mark", "value", "decimals"),
    [
        ("12.5", ".", 12.5, 1), ("12,5", ",", 12.5, 1), ("1,250.5", ".", 1250.5, 1), ("1.250,5", ",", 1250.5, 1),
        ("1 250", ".", 1250.0, 0), (".5", ".", 0.5, 1), ("-.5", ".", -0.5, 1), ("\u22122", ".", -2.0, 0),
        ("+2", ".", 2.0, 0), ("1.2e+02", ".", 120.0, 1), ("1.2E-1", ".", 0.12, 1), ("12.", ".", None, 0),
        ("", ".", None, 0), (".", ".", None, 0), ("-", ".", None, 0), ("12 x", ".", None, 0), ("0,250", ".", None, 0),
        ("12 50", ".", None, 0), ("1,250,500", ".", 1_250_500.0, 0), ("1,250 500", ".", None, 0),
    ],
)  # fmt: skip
def test_the_number_in_a_cell(cell: str, mark: str, value: float | None, decimals: int):
    found = number(cell, mark)
    assert (found and (found.value, found.decimals)) == (None if value is None else (value, decimals))


@pytest.mark.parametrize(
    ("cell", "broken"),
    [
        ("12.5", False), ("ERR", False), ("---", False), ("12.5.1", True), (".5.", True), ("-1x", True),
        ("x" * 16, False), ("x" * 17, True), ("a\0", True), ("a\ufffd", True), ("x1", False),
    ],
)  # fmt: skip
def test_a_cell_that_starts_as_a_number_or_is_too_long_breaks_its_line(cell: str, broken: bool):
    assert looks_broken(cell, ".") is broken
