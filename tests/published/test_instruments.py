"""Corrections, Nernst's slope and the limits of instruments against print."""

import pytest

from core.chamber import checks_ph
from core.chamber.checks import Point, through_two
from core.chamber.checks_hygrometer import WAITS_S, per_kelvin
from core.chamber.checks_ph import Buffer, nernst_v, ph_meter
from core.chamber.checks_thermometer import TOLERANCE_K
from core.chamber.ph_temperature import compensated_ph
from tests.published.rows import Row, rows


def _line(row: Row):
    return through_two(*(Point(reading, truth, row.inputs.get("each", 0.0)) for reading, truth in row.inputs["points"]))


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "two_point":
            return _line(row).apply(given["reading"])
        case "two_point_uncertainty":
            return _line(row).uncertainty_at(given["reading"])
        case "per_kelvin":
            return per_kelvin(1.0, given["temperature_c"]) * 100
        case "nernst_mv":
            return nernst_v(given["temperature_c"]) * 1000
        case "slope_of_25":
            return (4.0 - 7) / (compensated_ph(4.0, given["sample_c"], 25.0) - 7)
        case "slope_percent":
            return ph_meter(*(Buffer(*buffer) for buffer in given["buffers"])).figures[0].value * 100
        case "limit":
            return getattr(checks_ph, given["name"])
        case "tolerance_k":
            return TOLERANCE_K
        case "wait_min":
            return WAITS_S[given["bulk"]] / 60
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("instruments"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance


@pytest.mark.parametrize(("id", "word"), [("P1-slope", "accept"), ("P2-slope", "clean")])
def test_a_printed_electrode_is_judged_as_its_page_judges_it(id: str, word: str):
    row = next(row for row in rows("instruments") if row.id == id)
    assert ph_meter(*(Buffer(*buffer) for buffer in row.inputs["buffers"])).word == word
