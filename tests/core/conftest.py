"""The kitchen that the daybook's tests write in, and a batch of it that soured."""

import pytest

from tests.core.kitchen import Kitchen
from tests.core.proven import soured


@pytest.fixture
def kitchen() -> Kitchen:
    return Kitchen()


@pytest.fixture
def batch(kitchen: Kitchen) -> str:
    """Its pieces hang 20 days at least."""
    return soured(kitchen, least_s=20.0 * 86400)
