"""What a fact is asked for stands once, with the field that keeps it: its form draws that box."""

from typing import Any

import attrs
import pytest

from core.daybook.facts import KNOWN, kind_of
from core.daybook.facts.fields import numbers
from core.worksheet import Number
from web.entry_forms import form_of

MADE_FROM_OTHERS = {"soda_kg_per_m3"}
"""Asked for, and kept as something else."""


def asked_in_its_form(kind: type[Any]) -> list[Number]:
    form = form_of(kind)
    return [] if form is None else [each for each in (*form.inputs, *form.every) if isinstance(each, Number)]


@pytest.mark.parametrize("kind", KNOWN, ids=kind_of)
def test_a_form_draws_the_boxes_of_its_fact(kind: type[Any]):
    own = {each.key: each for each in numbers(kind)}
    for drawn in asked_in_its_form(kind):
        if drawn.key not in MADE_FROM_OTHERS:
            box = own[drawn.key]
            assert (drawn.label, drawn.low, drawn.high, drawn.usual) == (box.label, box.low, box.high, box.usual)


@pytest.mark.parametrize("kind", KNOWN, ids=kind_of)
def test_a_box_has_the_name_of_its_field(kind: type[Any]):
    fields = {each.name for each in attrs.fields(kind)}
    assert {each.key for each in numbers(kind)} <= fields
