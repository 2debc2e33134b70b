"""The pH of bicarbonate water against PHREEQC, and against another way to solve for it."""

import math

import pytest

from core.water import constants, equilibrium
from tests.published.rows import Row, rows

ROWS = rows("carbonate")


def _computed(row: Row) -> float:
    known = constants(row.inputs["water_c"])
    match row.quantity:
        case "pk_first":
            return -math.log10(known.first)
        case "pk_second":
            return -math.log10(known.second)
        case "pk_water":
            return -math.log10(known.water)
        case "log_gas":
            return math.log10(known.gas)
        case "debye":
            return known.debye
        case "ph":
            return equilibrium(row.inputs["molality"], row.inputs["water_c"], _air(row)).ph
        case "ph_unpaired":
            return _solved(row.inputs["molality"], row.inputs["water_c"], _air(row), paired=False)
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


def _air(row: Row) -> float | None:
    return None if row.inputs["ppm"] is None else row.inputs["ppm"] / 1e6


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    if row.quantity == "ph_unpaired":
        pytest.importorskip("scipy")
    assert abs(_computed(row) - row.expected) <= row.tolerance


@pytest.mark.parametrize("carbon_dioxide", [None, 420e-6, 2000e-6])
@pytest.mark.parametrize("water_c", [0.0, 12.0, 30.0])
def test_another_way_to_solve_it_agrees(water_c: float, carbon_dioxide: float | None):
    pytest.importorskip("scipy")
    ours = equilibrium(0.1739, water_c, carbon_dioxide).ph
    assert ours == pytest.approx(_solved(0.1739, water_c, carbon_dioxide, paired=True), abs=1e-6)


@pytest.mark.parametrize("database", ["phreeqc.dat", "pitzer.dat"])
@pytest.mark.parametrize("air_ppm", [None, 100, 10_000])
@pytest.mark.parametrize(("molality", "water_c"), [(0.02, 0.0), (0.02, 30.0), (0.3, 0.0), (0.3, 30.0)])
def test_every_corner_agrees_with_phreeqc_where_it_is_installed(database, air_ppm, molality, water_c):
    phreeqpython = pytest.importorskip("phreeqpython")
    solution = phreeqpython.PhreeqPython(database=database).add_solution({"temp": water_c})
    solution.add("NaHCO3", molality * 1000)
    solution.change_temperature(water_c)
    if air_ppm:
        solution.equalize(["CO2(g)"], [math.log10(air_ppm * 1e-6)])
    air = None if air_ppm is None else air_ppm / 1e6
    assert equilibrium(molality, water_c, air).ph == pytest.approx(solution.pH, abs=0.1)


def _solved(molality: float, water_c: float, carbon_dioxide: float | None, *, paired: bool) -> float:
    """All unknowns at once in logarithms, by a library's root finder: no nesting, no bisection."""
    from scipy.optimize import root

    known = constants(water_c)
    pair_1, pair_2 = (known.pair_bicarbonate, known.pair_carbonate) if paired else (0.0, 0.0)

    def residuals(logs):
        hydrogen, sodium, bicarbonate, carbonate = (10.0**each for each in logs[:4])
        strength = logs[4]
        davies = math.sqrt(strength) / (1 + math.sqrt(strength)) - 0.3 * strength
        one, two = 10 ** (-known.debye * davies), 10 ** (-4 * known.debye * davies)
        hydroxide = known.water / (hydrogen * one * one)
        dissolved = hydrogen * bicarbonate * one * one / known.first
        with_bicarbonate, with_carbonate = pair_1 * sodium * bicarbonate * one**2, pair_2 * sodium * carbonate * two
        negative = bicarbonate + 2 * carbonate + with_carbonate + hydroxide
        once = sodium + hydrogen + bicarbonate + with_carbonate + hydroxide
        carbon = dissolved + bicarbonate + carbonate + with_bicarbonate + with_carbonate
        return [
            (sodium + hydrogen - negative) / molality,
            (sodium + with_bicarbonate + with_carbonate) / molality - 1,
            math.log10(hydrogen * carbonate * two / bicarbonate / known.second),
            carbon / molality - 1 if carbon_dioxide is None else math.log10(dissolved / (known.gas * carbon_dioxide)),
            ((once + 4 * carbonate) / 2 - strength) / molality,
        ]

    start = [-9.0, math.log10(molality), math.log10(molality / 2), math.log10(molality / 10), molality]
    found = root(residuals, start, tol=1e-13)
    assert max(map(abs, residuals(found.x))) < 1e-9, found.message
    hydrogen, strength = 10 ** found.x[0], found.x[4]
    return -math.log10(hydrogen) + known.debye * (math.sqrt(strength) / (1 + math.sqrt(strength)) - 0.3 * strength)
