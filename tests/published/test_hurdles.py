"""What keeps and what still grows, by each rule set that is in print; boundaries on the side that its source says."""

import pytest

from core.dry.shrink import target_weight
from core.mix.salting_rules import brine_strength, by_rule, minimums
from core.release import keeping
from core.release.growth import is_stopped
from core.release.hurdles import rests_on_equality, too_dry_for_listeria
from core.release.lab_sheet import ratio_of
from core.units import DAY_S, OZ, POUND_KG
from tests.published.rows import Row, rows

CLASSES = {"very-perishable": 1, "perishable": 2, "shelf-stable": 3}


def _known(value: bool | None) -> int:
    return -1 if value is None else int(value)


def _rules(row: Row) -> float | None:
    it, ph, aw = row.inputs, row.inputs.get("ph"), row.inputs.get("aw")
    match row.quantity:
        case "listeria":
            return _known(too_dry_for_listeria(ph, aw))
        case "equality":
            return _known(rests_on_equality(ph, aw))
        case "ratio":
            return _known(keeping.keeps_by_ratio(ratio_of(it["water"], it["protein"]), ph))
        case "low_acid":
            return _known(keeping.is_low_acid(ph, aw))
        case "stopped":
            return _known(is_stopped(it["organism"], ph, aw))
        case "in_air":
            return _known(keeping.keeps_in_air(aw))
        case "in_vacuum":
            return _known(keeping.keeps_in_vacuum(aw))
        case "tilkens_air" | "tilkens_vacuum":
            return _known(getattr(keeping, row.quantity)(ph, aw))
        case "canada":
            return _known(keeping.keeps_in_canada(ph, it["lowest"], aw, it["cured"]))
        case "class":
            found = keeping.class_of(ph, aw)
            return -1 if found is None else CLASSES[found]
    return None


def _sums(row: Row) -> float:
    it = row.inputs
    match row.quantity:
        case "mpr":
            return ratio_of(it["water"], it["protein"])
        case "brine":
            return brine_strength(it["salt"], it["water"]).value
        case "pickle_days":
            figures = by_rule(it["lb"] * POUND_KG, None)
            return next(each.value for each in figures if each.key == "rule_pickle") / DAY_S
        case "finished":
            return target_weight(it["kg"], it["loss"]).value
        case "country_short":
            figures = minimums("ham", "country", it["salted"] * DAY_S, it["in_all"] * DAY_S)
            return max(each.value for each in figures if each.key.endswith("to_go")) / DAY_S
        case "nitrate_ppm":
            return OZ.to_si(it["oz"]) / (it["lb"] * POUND_KG) * 1e6
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("hurdles"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    found = _rules(row)
    computed = _sums(row) if found is None else found
    assert abs(computed - row.expected) <= row.tolerance


@pytest.mark.parametrize(("ph", "activity"), [(None, 0.96), (5.1, None), (None, None)])
def test_a_class_that_is_open_is_not_known(ph: float | None, activity: float | None):
    assert keeping.class_of(ph, activity) is None
