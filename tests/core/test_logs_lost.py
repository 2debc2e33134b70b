"""How much of a log may be lost before it is asked about or refused: a row on each side of each bound."""

import pytest

from core.chamber.logs.trial import is_much


@pytest.mark.parametrize(
    ("count", "of", "much"),
    [
        (0, 10, False),
        (2, 10, False),
        (2, 39, False),
        (3, 59, True),
        (3, 60, False),
        (4, 79, True),
        (4, 80, False),
        (500, 9999, True),
        (500, 10_000, False),
    ],
)
def test_three_are_much_where_they_are_more_than_a_twentieth(count: int, of: int, much: bool):
    assert is_much(count, of) is much
