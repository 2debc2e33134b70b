"""Diffusion, water activity and drying of real products against print, and against what others compute."""

from collections import defaultdict
from statistics import mean

import pytest
from attrs import frozen

from core.dry.activity import SUGARS, Mix, activity_at, is_moist, may_miss, salt_activity, sugar_activity
from core.dry.crank import biot_roots, left_in
from core.dry.curve import Hung, fit
from core.dry.forecast import loss_by
from core.dry.shapes import square_time
from core.dry.trim import trimmed
from core.dry.warmth import mean_kinetic_c
from core.mix.balance import Content, dried
from core.roots import begins
from core.units import DAY_S
from tests.published.rows import Row, rows

ROWS = rows("drying")
ALONE = ("left_in", "biot_root", "salt_activity", "sugar_activity", "composite", "mean_kinetic")


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "left_in":
            return left_in(given["form"], given["fourier"])
        case "biot_root":
            return biot_roots(given["biot"])[given["place"] - 1]
        case "salt_activity":
            return salt_activity(given["molality"], given["temperature_c"])
        case "sugar_activity":
            molar = SUGARS[given["sugar"]].molar
            return sugar_activity(given["g_per_100g_water"] / 100 / molar, given["sugar"])
        case "mean_kinetic":
            return mean_kinetic_c([(celsius, 3600 * hours) for celsius, hours in given["spans"]])
        case "composite":
            return activity_at(Mix(given["water"], given["salt"]), given["loss"])
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", [row for row in ROWS if row.quantity in ALONE], ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance


@pytest.mark.parametrize("row", [row for row in ROWS if row.quantity == "loss_percent"], ids=lambda row: row.id)
def test_the_mass_balance_of_a_real_batch_closes(row: Row):
    water = row.inputs["moisture0"] / 100
    left = dried(Content(water=water, other=1 - water), row.expected / 100)
    slack = row.tolerance / 100 / (1 - row.expected / 100)
    assert left.water / left.total == pytest.approx(row.inputs["moisture"] / 100, abs=slack)


def _real_batches() -> dict[str, list[Row]]:
    found = defaultdict[str, list[Row]](list)
    for row in ROWS:
        if row.quantity == "loss_percent":
            found[row.inputs["treatment"]].append(row)
    return found


def _forecast_of_the_last(batch: list[Row]) -> tuple[float, float, float]:
    """The losses, in per cent, that are not exceeded with one, five and nine chances in ten: from the moisture at the
    start and the weighings before. The printed tolerance is two deviations. The air is not known."""
    *before, last = batch
    masses = tuple((row.inputs["day"] * DAY_S, 1 - row.expected / 100) for row in before)
    error = mean(row.tolerance for row in before) / 200 / 2**0.5
    known = fit([Hung(1.0, masses, error)], mix=Mix(last.inputs["moisture0"] / 100, 0.028))
    low, likely, high = (100 * loss_by(known, 0, last.inputs["day"] * DAY_S, share) for share in (0.1, 0.5, 0.9))
    return low, likely, high


def test_the_last_loss_of_real_batches_lies_in_the_range_of_four_of_five():
    hits = 0
    for batch in _real_batches().values():
        low, _, high = _forecast_of_the_last(batch)
        hits += low <= batch[-1].expected <= high
    assert hits >= 4


def test_the_most_likely_last_loss_of_each_real_batch_is_within_three_points():
    off = [abs(_forecast_of_the_last(batch)[1] - batch[-1].expected) for batch in _real_batches().values()]
    assert len(off) == 5
    assert max(off) <= 3.0


@frozen
class Met:
    """A real batch after the first day: its mix, what it lost, and the water activity that was measured."""

    mix: Mix
    loss: float
    measured: float

    @property
    def miss(self) -> float:
        return activity_at(self.mix, self.loss) - self.measured


def _met() -> list[Met]:
    """One salt to each batch, so that its first reading is met: what salt went in is not printed."""
    found: list[Met] = []
    salt = 0.0
    for row in (row for row in ROWS if row.quantity == "water_activity"):
        water = row.inputs["moisture0"] / 100
        if row.inputs["day"] == 0:
            met = row.expected
            salt = begins(lambda each, water=water, met=met: activity_at(Mix(water, each), 0.0) <= met, 0.0, 0.1)
            continue
        loss = 1 - (1 - water) / (1 - row.inputs["moisture_pct"] / 100)
        found.append(Met(Mix(water, salt), loss, row.expected))
    return found


def test_every_water_activity_of_real_batches_lies_within_the_stated_error():
    for each in _met():
        below, above = may_miss(each.mix, each.loss)
        assert -above <= each.miss <= below


def test_while_it_is_moist_it_misses_by_two_hundredths_on_the_mean():
    assert mean(abs(each.miss) for each in _met() if is_moist(each.mix, each.loss)) <= 0.02


def test_of_a_dry_piece_it_errs_to_the_unsafe_side_as_its_caution_says():
    dry = [each.miss for each in _met() if not is_moist(each.mix, each.loss)]
    assert len(dry) == 4
    assert min(dry) == pytest.approx(-0.069, abs=0.001)
    assert mean(dry) < -0.03


def test_the_rate_that_falls_with_the_square_takes_the_computed_times():
    for row in (row for row in ROWS if row.quantity == "square_time"):
        given = row.inputs
        time = square_time(given["end_percent"] / 100, given["left_percent"] / 100) / given["k"] * 100
        assert time == pytest.approx(row.expected, abs=row.tolerance)


@pytest.mark.parametrize("celsius", [0, 10, 20, 30, 40])
def test_salt_water_agrees_with_phreeqc_where_it_is_installed(celsius: int):
    phreeqpython = pytest.importorskip("phreeqpython")
    phreeqc = phreeqpython.PhreeqPython(database="pitzer.dat").ip
    for molality in (0.1, 1.0, 3.0, 6.0):
        phreeqc.run_string(
            'SELECTED_OUTPUT 1\n-reset false\nUSER_PUNCH 1\n-headings aw\n10 PUNCH ACT("H2O")\n'
            f"SOLUTION 1\nunits mol/kgw\ntemp {celsius}\nNa {molality}\nCl {molality}\nEND\n"
        )
        (activity,) = phreeqc.get_selected_output_array()[-1]
        assert salt_activity(molality, celsius) == pytest.approx(activity, abs=5e-4)


@pytest.mark.parametrize("row", [row for row in ROWS if row.quantity == "net_yield"], ids=lambda row: row.id)
def test_an_aged_cuts_weights_give_its_printed_shares(row: Row):
    start_kg, shrink = row.inputs["start_kg"], row.inputs["shrink"]
    found = {each.key: each.value for each in trimmed(start_kg, start_kg * (1 - shrink), row.inputs["net_kg"])}
    assert found["net_yield"] == pytest.approx(row.expected, abs=row.tolerance)
    assert found["loss"] == pytest.approx(shrink)
    assert sum(found.values()) == pytest.approx(1)
