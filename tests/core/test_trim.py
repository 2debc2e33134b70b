"""What is left of an aged cut once it is trimmed: the shares, and what is refused or doubted."""

import pytest

from core.dry.trim import trimmed
from core.quantities import METRIC
from core.refusals import OutOfRange


@pytest.mark.parametrize(("weights", "field"), [((10, 10.1, 5), "now_kg"), ((10, 9, 9.1), "net_kg")])
def test_what_grew_is_refused(weights, field):
    with pytest.raises(OutOfRange) as refused:
        trimmed(*weights)
    assert refused.value.field == field


@pytest.mark.parametrize(("now_kg", "is_doubted"), [(8.5, False), (8.4, True)])
def test_a_shrink_above_what_was_printed_is_doubted(now_kg, is_doubted):
    _, loss, _ = trimmed(10, now_kg, 5)
    assert any("6 % to 15 %" in each.say(METRIC) for each in loss.cautions if not isinstance(each, str)) == is_doubted


def test_what_lost_nothing_yields_all():
    assert [each.value for each in trimmed(10, 10, 10)] == [1, 0, 0]
