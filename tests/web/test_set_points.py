"""Set-points: programmes that are printed, the form, what they mean, and where they show."""

import pytest

from core.chamber.programmes import PROGRAMMES
from core.quantities import METRIC
from tests.web.conftest import Visitor

OWN = "/chamber/set-points/choose/own"
every_programme = pytest.mark.parametrize("programme", PROGRAMMES, ids=lambda each: each.key)


def choose(visitor: Visitor, **values: str):
    return visitor.fill(OWN, **{"temperature_c": "12.8", "humidity": "80"} | values)


def test_set_points_are_kept(visitor: Visitor):
    fact = visitor.fact(choose(visitor, temperature_differential_k="0.5", air_speed_m_s="0.2").saved)
    assert (fact.temperature_c, fact.humidity, fact.temperature_differential_k) == (12.8, 0.80, 0.5)
    assert fact.air_speed_m_s == pytest.approx(0.2)


def test_set_points_are_kept_from_us_units(visitor: Visitor):
    visitor.settings(units="us")
    fact = visitor.fact(choose(visitor, temperature_c="55", temperature_differential_k="1.8", air_speed_m_s="40").saved)
    assert fact.temperature_c == pytest.approx(115 / 9)
    assert fact.temperature_differential_k == pytest.approx(1.0)
    assert fact.air_speed_m_s == pytest.approx(0.2032)


def test_a_decimal_comma_is_taken(visitor: Visitor):
    visitor.settings(decimal="comma")
    assert visitor.fact(choose(visitor, temperature_c="12,8").saved).temperature_c == 12.8


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"humidity": "105"}, "humidity"),
        ({"temperature_c": "99"}, "temperature_c"),
        ({"temperature_c": ""}, "temperature_c"),
        ({"surface_activity": "1.2"}, "surface_activity"),
        ({"temperature_differential_k": "-1"}, "temperature_differential_k"),
        ({"piece_c": "2"}, "thickness_m"),
    ],
)
def test_what_cannot_be_set_is_refused_beside_its_box(visitor: Visitor, values: dict[str, str], field: str):
    page = choose(visitor, **values)
    assert page.status == 422
    assert page.beside(field)
    assert len(visitor.book) == 0


def test_the_figures_are_live(visitor: Visitor):
    page = visitor.get(
        OWN, figures="1", temperature_c="12.8", humidity="80", surface_activity="0.97", piece_c="2", thickness_m="60"
    )
    assert page.figures["vapour_pressure_deficit"] == "252 Pa"
    assert {"dew_point", "coldest_dry_surface", "equal_colder", "equal_warmer", "wet_for"} <= set(page.figures)
    assert "In a word: moderate" in page.text


def test_every_programme_is_shown_with_its_source(visitor: Visitor):
    page = visitor.get("/chamber/set-points")
    links = [link.text for link in page.all("a")]
    for programme in PROGRAMMES:
        assert programme.name in links
        assert f"{programme.source.where.say(METRIC)}." in page.text


@every_programme
@pytest.mark.parametrize("units", ["metric", "us"])
def test_a_programme_fills_the_form(visitor: Visitor, programme, units: str):
    visitor.settings(units=units)
    page = visitor.get(f"/chamber/set-points/choose/{programme.key}")
    assert page.status == 200
    assert bool(page.typed("temperature_c")) == bool(programme.temperature_c)
    assert bool(page.typed("humidity")) == bool(programme.humidity)


def test_a_programme_is_kept_with_the_choice(visitor: Visitor):
    fact = visitor.fact(visitor.fill("/chamber/set-points/choose/dry-practice").saved)
    assert (fact.process, fact.programme) == ("drying", "dry-practice")
    assert fact.temperature_c == pytest.approx(115 / 9, abs=0.05)


def test_a_correction_keeps_the_programme(visitor: Visitor):
    key = visitor.fill("/chamber/set-points/choose/dry-practice").saved
    visitor.fill(f"/entries/{key}/correct", humidity="75")
    assert (visitor.fact(key).programme, visitor.fact(key).humidity) == ("dry-practice", 0.75)


def test_an_unknown_programme_is_no_page(visitor: Visitor):
    assert visitor.get("/chamber/set-points/choose/moonlight").status == 404


def test_aged_beef_shows_the_four_limits_of_the_rule(visitor: Visitor):
    visitor.fill("/chamber/set-points/choose/beef-eu")
    page = visitor.get("/chamber/set-points")
    words = [each.text for each in page.all("span", "mark")]
    assert words == ["yes", "yes", "yes", "not known"]
    assert "2024/1141" in page.text


def test_aged_beef_tells_its_limits_while_one_types(visitor: Visitor):
    page = visitor.get(
        "/chamber/set-points/choose/beef-eu", figures="1", temperature_c="5", humidity="80", surface_activity="0.97"
    )
    assert "Outside the EU rule for aged beef: Surface 5 °C; the rule allows −0.5 °C to 3 °C." in page.html
    assert "Not shown to be within the EU rule for aged beef: Air speed is not measured" in page.html


def test_a_set_point_outside_the_rule_is_told(visitor: Visitor):
    visitor.fill("/chamber/set-points/choose/beef-eu", temperature_c="5", humidity="90", air_speed_m_s="")
    assert visitor.get("/chamber/set-points").texts("span", "mark") == ["no", "no", "not known", "not known"]


def test_sausage_shows_no_rule_for_beef(visitor: Visitor):
    choose(visitor)
    assert visitor.get("/chamber/set-points").texts("span", "mark") == []


def test_the_scale_of_words_is_shown_with_its_source(visitor: Visitor):
    page = visitor.get("/chamber/set-points")
    assert "Common practice; no published source." in page.texts("p", "source")[-1]
    assert [each.text for each in page.all("th") if each["scope"] == "row"] == [
        "none",
        "faint",
        "gentle",
        "moderate",
        "brisk",
        "hard",
    ]


@pytest.mark.parametrize("path", ["/", "/chamber"])
def test_the_air_stands_beside_what_is_set(visitor: Visitor, path: str):
    choose(visitor)
    visitor.fill("/chamber/air", temperature_c="15", humidity="70")
    text = visitor.get(path).text
    assert "2.2 K warmer than set" in text
    assert "10 % of humidity below what is set" in text
    assert "Drying force: brisk" in text


@pytest.mark.parametrize("path", ["/", "/chamber"])
def test_air_without_humidity_has_no_drying_force(visitor: Visitor, path: str):
    choose(visitor)
    visitor.fill("/chamber/air", temperature_c="12.8", humidity="")
    text = visitor.get(path).text
    assert "Temperature as set" in text
    assert "Drying force:" not in text


def test_changing_them_starts_from_what_is_set(visitor: Visitor):
    choose(visitor, humidity="77")
    assert visitor.get(OWN).typed("humidity") == "77"
