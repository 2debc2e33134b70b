"""Which humidity belongs to which temperature, and what their probe is called: by heads, by order, or asked."""

import pytest

from core.chamber.logs import Column, guess
from core.chamber.logs.naming import named, note_on
from tests.core.telling import in_words

ORDER = ("The heads do not say which humidity belongs to which temperature: they were paired in their order.",)


def columns(heads: str, beside: int | None = None) -> tuple[Column, ...]:
    """A time, then a column a head: a humidity where it says RH."""
    held = [
        Column("humidity", head, beside=beside) if "RH" in head else Column("temperature", head)
        for head in heads.split(", ")
    ]
    return (Column("time", "Time"), *held)


@pytest.mark.parametrize(
    ("heads", "probes"),
    [
        ("Temp, RH", ["Probe 1", "Probe 1"]),
        ("Temp", ["Probe 1"]),
        ("RH", ["Probe 1"]),
        ("Front Temp, Front RH", ["Front", "Front"]),
        ("Front Temp, Back Temp, Front RH, Back RH", ["Front", "Back", "Front", "Back"]),
        ("Front Temp, Back Temp, Back RH, Front RH", ["Front", "Back", "Back", "Front"]),
        ("Temp 1, Temp 2, RH 2, RH 1", ["Probe 1", "Probe 2", "Probe 2", "Probe 1"]),
        # one of them has no partner
        ("Front Temp, Back Temp, Back RH", ["Front", "Back", "Back"]),
        ("Front Temp, Front RH, Back RH", ["Front", "Front", "Back"]),
        ("Temp, Back Temp, RH", ["Probe 1", "Back", "Probe 1"]),
        # in their order, by the temperatures' heads where these differ
        ("Front Temp, Back Temp, Left RH, Right RH", ["Front", "Back", "Front", "Back"]),
        ("Front Temp, Back Temp, RH, RH", ["Front", "Back", "Front", "Back"]),
        ("Temp, Temp, RH, RH", ["Probe 1", "Probe 2", "Probe 1", "Probe 2"]),
        ("Temp, Back Temp, RH, RH", ["Probe 1", "Probe 2", "Probe 1", "Probe 2"]),
        ("Door Temp, Door Temp, Left RH, Right RH", ["Probe 1", "Probe 2", "Probe 1", "Probe 2"]),
        ("Front Temp, Left RH", ["Front", "Front"]),
        # each alone
        ("Front Temp, Back Temp, RH", ["Front", "Back", "Column 4"]),
        ("Temp, Temp, Back Temp, Back RH", ["Column 2", "Column 3", "Back", "Back"]),
        ("Temp, Temp, RH", ["Column 2", "Column 3", "Column 4"]),
    ],
)
def test_what_a_probe_is_called(heads: str, probes: list[str]):
    assert [each.probe for each in named(columns(heads))[1:]] == probes


@pytest.mark.parametrize(
    ("heads", "astray"),
    [
        ("Front Temp, Back Temp, RH", [4]),
        ("Front Temp, Back Temp, Back RH", []),
        ("Front Temp, Back Temp, Left RH, Right RH", []),
        ("Front Temp, Back Temp, Front RH, Left RH, Right RH", [5, 6]),
        ("Temp, Temp, RH", [4]),
        ("Temp, Temp, Back Temp, Back RH", []),
        ("Temp, Front RH, Back RH", []),
        ("Temp, RH", []),
    ],
)
def test_a_humidity_that_no_head_or_more_than_one_claims_is_astray(heads: str, astray: list[int]):
    assert [at + 1 for at, each in enumerate(named(columns(heads))) if each.asks_beside] == astray


@pytest.mark.parametrize(
    ("beside", "probe"),
    [(2, "Front"), (3, "Back"), (0, "Column 4"), (None, "Column 4"), (1, "Column 4"), (4, "Column 4")],
)
def test_a_humidity_astray_is_of_the_temperature_that_is_told(beside: int | None, probe: str):
    humid = named(columns("Front Temp, Back Temp, RH", beside))[3]
    assert (humid.probe, humid.asks_beside) == (probe, True)


def test_what_is_told_of_one_that_is_not_astray_changes_nothing():
    assert named(columns("Front Temp, Back Temp, Back RH", 2))[3].probe == "Back"


def test_another_column_has_no_probe():
    assert named(columns("Temp, RH"))[0].probe == ""


@pytest.mark.parametrize(
    ("heads", "note"),
    [
        ("Front Temp, Back Temp, Left RH, Right RH", ORDER),
        ("Temp, Temp, RH, RH", ORDER),
        ("Front Temp, Back Temp, Front RH, Back RH", ()),
        ("Front Temp, Back Temp, RH", ()),
        ("Front Temp, Left RH", ()),
        ("Front Temp, Left RH, Right RH", ()),
    ],
)
def test_a_pairing_by_order_alone_is_told(heads: str, note: tuple[str, ...]):
    assert in_words(each.said for each in note_on(columns(heads))) == note


def test_a_humidity_beside_two_temperatures_under_one_head_is_asked_about():
    rows = [f"2025-06-20 10:{i:02},{12 + i % 7 / 10:.1f},{5 + i % 5 / 10:.1f},{80 + i % 9 / 10:.1f}" for i in range(60)]
    layout = guess("\n".join(("Time,Temp (°C),Temp (°C),RH (%)", *rows, "")).encode())
    (question,) = layout.questions
    assert (question.about, [choice.key for choice in question.choices]) == ("beside 4", ["2", "3", "0"])
