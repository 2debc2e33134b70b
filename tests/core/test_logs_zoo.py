"""The law of the zoo: each file is read right, asked about with the right answer offered, or refused with the reason.
None is read wrong without a word."""

import pytest

from tests.core.zoo_columns import all_columns
from tests.core.zoo_dates import all_dates
from tests.core.zoo_files import all_files
from tests.core.zoo_oddities import all_oddities
from tests.core.zoo_sheet import Sheet, judge
from tests.core.zoo_strays import all_strays

SHEETS = [*all_dates(), *all_columns(), *all_files(), *all_strays(), *all_oddities()]
MOST_REFUSED = 0.15
"""A zoo of which most is refused shows nothing."""


@pytest.mark.parametrize("sheet", SHEETS, ids=[sheet.name for sheet in SHEETS])
def test_read_right_or_asked_with_the_right_answer_or_refused(sheet: Sheet):
    outcome, why = judge(sheet)
    assert outcome != "wrong", why
    assert outcome != "refused" or why.endswith(".")


def test_most_of_the_zoo_is_read():
    refused = sum(1 for sheet in SHEETS if judge(sheet)[0] == "refused")
    assert refused <= MOST_REFUSED * len(SHEETS)
