"""Whatever is shipped has the text of its licence beside it, and a licence that nobody has read stops the build."""

import pytest

from building import environment, licences
from building.running import Failed

SHIPPED = list(licences.every())


def test_every_python_package_is_among_them():
    names = {name.partition(" ")[0] for name, _, _ in SHIPPED}
    assert {pin.partition("==")[0] for pin in environment.pins("app")} <= names


@pytest.mark.parametrize("name", ["Curing", "htmx.org", "workbox-strategies", "pyodide", "uplot"])
def test_what_lies_in_the_bundles_is_among_them(name: str):
    assert any(each.startswith(name) for each, _, _ in SHIPPED)


@pytest.mark.parametrize(("name", "licence", "text"), SHIPPED, ids=[name for name, _, _ in SHIPPED])
def test_each_has_a_text_of_its_own(name: str, licence: str, text: str):
    assert licence in licences.KNOWN
    assert len(text) > 300


def test_a_licence_under_which_the_source_is_owed_says_where_it_is():
    assert all(text.startswith("Its source: https://") for _, licence, text in SHIPPED if licence == "MPL-2.0")


@pytest.mark.parametrize("licence", [None, "", "SSPL-1.0", "see LICENSE"])
def test_a_package_under_a_licence_that_nobody_has_read_stops_the_build(licence: object):
    with pytest.raises(Failed, match="odd is under"):
        licences.known("odd", licence)
