"""Laws of the proof against trichinella: less known, a worse value, or other meat never makes it better."""

from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from core.release.cured_pork import METHODS, conditions_of, is_cured_by
from core.release.cured_readings import BOXES
from core.release.frozen_pork import LAWS, MEASURED, Frozen, is_frozen_long_enough
from core.release.growth import ORGANISMS, is_stopped
from core.release.trichinella import Meat, trichinella
from core.worksheet import Number

RANK = {True: 2, None: 1, False: 0}
law = settings(max_examples=300, deadline=None)


@st.composite
def cured(draw: st.DrawFn) -> tuple[str, dict[str, float]]:
    """Some way, with readings that meet it or nearly."""
    method = draw(st.sampled_from(sorted(METHODS)))
    readings = {key: draw(_some(key)) for key in METHODS[method].asks}
    for condition in conditions_of(method, readings):
        if draw(st.integers(0, 9)):
            limit = condition.least if condition.most is None else condition.most
            if limit is not None:
                readings[condition.reading] = limit
    return method, readings


def _some(key: str) -> st.SearchStrategy[float]:
    box = BOXES[key]
    return st.floats(box.low, box.high) if isinstance(box, Number) else st.sampled_from([0.0, 1.0])


@law
@given(cured(), st.data())
def test_a_cure_of_which_less_is_known_proves_no_more(made: tuple[str, dict[str, float]], data: st.DataObject):
    method, readings = made
    gone = data.draw(st.sampled_from(sorted(readings)))
    fewer = {key: value for key, value in readings.items() if key != gone}
    assert is_cured_by(method, fewer) is not True
    assert RANK[is_cured_by(method, fewer)] <= max(RANK[is_cured_by(method, readings)], RANK[None])


@law
@given(cured(), st.floats(0.01, 1.0), st.data())
def test_a_worse_reading_never_makes_a_cure_better(made: tuple[str, dict[str, float]], by: float, data: st.DataObject):
    method, readings = made
    before = is_cured_by(method, readings)
    found = [each for each in conditions_of(method, readings) if each.least is not None or each.most is not None]
    condition = data.draw(st.sampled_from(found))
    box = BOXES[condition.reading]
    span = box.high - box.low if isinstance(box, Number) else 1.0
    worse = by * span * (1 if condition.least is None else -1)
    after = is_cured_by(method, {**readings, condition.reading: readings[condition.reading] + worse})
    assert not (after is True and before is not True)


freezings = st.builds(
    Frozen,
    measured=st.sampled_from(sorted(MEASURED)),
    warmest_c=st.none() | st.floats(-45, -5),
    lasts_s=st.none() | st.floats(0, 3e6),
    thickness_m=st.none() | st.floats(0.01, 0.7),
    law=st.sampled_from(sorted(LAWS)),
)


@law
@given(freezings, st.floats(0, 20), st.floats(0, 1e6), st.floats(0, 0.3))
def test_frozen_warmer_shorter_or_thicker_never_proves_more(meat: Frozen, warm: float, less: float, thick: float):
    before = is_frozen_long_enough(meat)
    for change in (
        {"warmest_c": None if meat.warmest_c is None else meat.warmest_c + warm},
        {"lasts_s": None if meat.lasts_s is None else meat.lasts_s - less},
        {"thickness_m": None if meat.thickness_m is None else meat.thickness_m + thick},
        {"law": "both"},
        {"warmest_c": None},
        {"lasts_s": None},
    ):
        after = is_frozen_long_enough(evolve(meat, **change))
        assert not (after is True and before is not True)


@law
@given(freezings, cured(), st.sampled_from(["frozen", "cured", "shown"]))
def test_of_game_neither_cold_nor_salt_is_a_proof(freezing: Frozen, made: tuple[str, dict[str, float]], proof: str):
    method, readings = made
    meat = Meat("game", proof, freezing=freezing, method=method, readings=readings)  # type: ignore[arg-type]
    assert trichinella(meat).met is not True


@law
@given(st.sampled_from(sorted(ORGANISMS)), st.floats(3.5, 7.5), st.floats(0.7, 1.0), st.floats(0, 1), st.floats(0, 0.1))
def test_sourer_and_drier_never_lets_more_grow(name: str, ph: float, activity: float, up: float, wetter: float):
    before = RANK[is_stopped(name, ph, activity)]
    assert RANK[is_stopped(name, ph + up, activity + wetter)] <= before
    assert RANK[is_stopped(name, None, activity)] <= before or before < 2
