"""Tags: read in the order of their numbers, continued in their series."""

import pytest

from core.daybook.tags import next_tag, tag_order


def test_two_stands_before_ten():
    assert sorted(["J-10", "j-2", "A-3", "J-1"], key=tag_order) == ["A-3", "J-1", "j-2", "J-10"]


@pytest.mark.parametrize("tag", ["", "7", "loin", "J-1a", "ٱ٣"])
def test_every_tag_has_its_place(tag: str):
    assert sorted([tag, "J-1"], key=tag_order)


@pytest.mark.parametrize(
    ("tags", "then"),
    [
        ((), ""),
        (("J-1",), "J-2"),
        (("J-09",), "J-10"),
        (("J-1", "J-2", "J-1b"), ""),
        (("J-3", "j-2", "J-1"), "J-4"),
        (("loin",), ""),
        (("12",), "13"),
    ],
)
def test_the_next_tag_goes_on_from_the_last(tags: tuple[str, ...], then: str):
    assert next_tag(tags) == then
