import pytest

from building import site


@pytest.fixture(scope="session")
def dist():
    """The built site."""
    site.build()
    return site.DIST
