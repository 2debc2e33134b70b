"""What a proof is held to: where it starts from, what is refused."""

from __future__ import annotations

import pytest

from core.daybook.facts.chamber import SetPointsChosen
from core.daybook.facts.instruments import InstrumentAdded
from tests.core.proof_files import high, low
from tests.web.conftest import Visitor
from tests.web.proving import enter, laid_out


def test_the_band_starts_from_common_practice_and_says_so(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    assert [page.typed(name) for name in ("temperature_c", "humidity")] == ["12.8", "80"]
    assert "common practice" in page.text


def test_the_band_starts_from_the_set_points_in_force(visitor: Visitor):
    enter(visitor, SetPointsChosen(11.0, 0.75))
    page = laid_out(visitor, ("low.csv", low()))
    assert [page.typed(name) for name in ("temperature_c", "humidity")] == ["11", "75"]


def test_two_files_with_one_probe_each_are_called_by_their_files(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()), ("high.csv", high()))
    assert [page.typed(name) for name in ("probe-0", "probe-1")] == ["low", "high"]


def test_two_files_whose_heads_name_the_probes_keep_those_names(visitor: Visitor):
    one = low().replace(b"Temp", b"Larder 1 Temp").replace(b"RH", b"Larder 1 RH")
    page = laid_out(visitor, ("low.csv", one), ("high.csv", one.replace(b"Larder 1", b"Larder 2")))
    assert [page.typed(name) for name in ("probe-0", "probe-1")] == ["Larder 1", "Larder 2"]


def _added(visitor: Visitor, name: str, probe: str = "") -> str:
    return enter(visitor, InstrumentAdded(name, "hygrometer", probe=probe), about=None)


def _larder(visitor: Visitor, file: str = "log.csv") -> str:
    """What is chosen for the probe that its log calls Larder-A."""
    data = low().replace(b"Temp", b"Larder-A Temp").replace(b"RH", b"Larder-A RH")
    return laid_out(visitor, (file, data)).typed("instrument-0")


@pytest.mark.parametrize("probe", ["Larder-A", "larder a", "LARDER_A", "LarderA"])
def test_a_loggers_name_finds_its_instrument_whatever_its_capitals_spaces_and_hyphens(visitor: Visitor, probe: str):
    known = _added(visitor, "By the door", probe)
    assert _larder(visitor) == known


def test_an_instrument_of_that_name_is_found_too_and_the_one_that_says_so_before_it(visitor: Visitor):
    named = _added(visitor, "larder a")
    assert _larder(visitor) == named
    said = _added(visitor, "Left logger", "LARDER A")
    assert _larder(visitor) == said


def test_another_letter_is_another_logger_and_of_two_none_is_guessed(visitor: Visitor):
    _added(visitor, "By the door", "Larder B")
    assert _larder(visitor) == "another"
    for name in ("One", "Other"):
        _added(visitor, name, "Larder A")
    assert _larder(visitor) == "another"


def test_two_probes_of_one_name_are_refused(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()), ("high.csv", high()))
    again = visitor.send(page.form_with("temperature_c"), **{"probe-1": "low"})
    assert "Another probe is called low already" in again.beside("probe-1")


def test_a_band_that_is_no_number_is_refused_and_stays_as_typed(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), temperature_c="cool")
    assert again.status == 422
    assert again.typed("temperature_c") == "cool"


@pytest.mark.parametrize("name", ["temperature_c", "temperature_half_k", "humidity", "humidity_half", "room_c"])
@pytest.mark.parametrize("text", ["much", "NaN", "1e3", "-80", "<script>alert(1)</script>", "9" * 400])
def test_whatever_is_typed_for_a_number_is_refused_beside_it(visitor: Visitor, name: str, text: str):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), **{name: text})
    assert again.status == 422
    assert again.beside(name)


def test_a_humidity_without_its_width_is_refused(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), humidity="80", humidity_half="")
    assert "humidity tolerance" in again.beside("humidity_half")


def test_a_part_that_ends_before_it_begins_is_refused(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), from_s="2026-11-24T10:00", until_s="2026-11-23T10:00")
    assert "later than the beginning" in again.beside("until_s")
