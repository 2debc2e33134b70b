"""Set-points against real moist air, and the programmes against what is printed."""

import pytest

from core.chamber.programmes import BY_KEY, beef_ageing
from core.chamber.setpoints import coldest_dry_surface, equal_humidity, set_point
from tests.published.rows import Row, rows


def _computed(row: Row) -> float:
    given = row.inputs
    if row.quantity == "beef_limits_met":
        return sum(reason.met is True for reason in beef_ageing(**given))
    if "programme" in given:
        return _printed(BY_KEY[given["programme"]], *row.quantity.split("_"))
    match row.quantity:
        case "deficit_pa":
            return set_point(given["temperature_c"], given["humidity"], given["activity"])[0].value
        case "coldest_dry_c":
            return coldest_dry_surface(given["temperature_c"], given["humidity"]).value
        case "equal_humidity":
            return equal_humidity(*(given[key] for key in ("temperature_c", "humidity", "activity", "other_c"))).value
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


def _printed(programme, end: str, kind: str) -> float:
    at = 0 if end == "low" else 1
    match kind:
        case "c":
            return programme.temperature_c[at]
        case "f":
            return programme.temperature_c[at] * 1.8 + 32
        case "humidity":
            return programme.humidity[at]
        case "days":
            return programme.days[at]
        case "speed":
            return programme.air_speed_m_s[at]
    raise AssertionError(kind)


@pytest.mark.parametrize("row", rows("setpoints"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance
