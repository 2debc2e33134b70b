"""What is in dist/: nothing missing, nothing of this machine, nothing from elsewhere."""

import io
import json
import re
import zipfile

import pytest

from building.paths import ROOT
from building.policy import CONTENT_SECURITY_POLICY
from building.site import PRECACHED


def files(dist):
    return {path.relative_to(dist).as_posix(): path.read_bytes() for path in dist.rglob("*") if path.is_file()}


def references(dist):
    html = (dist / "index.html").read_text(encoding="utf-8")
    return re.findall(r'(?:href|src)="([^"]*)"', html)


def test_every_file_the_page_names_is_there(dist):
    assert [each for each in references(dist) if not (dist / each).is_file()] == []


def test_the_page_names_its_files_relative_to_itself(dist):
    assert all(each.startswith("./") for each in references(dist))


def test_every_icon_the_manifest_names_is_there(dist):
    manifest = json.loads((dist / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert [icon["src"] for icon in manifest["icons"] if not (dist / icon["src"]).is_file()] == []


def test_the_page_carries_the_policy(dist):
    assert f'content="{CONTENT_SECURITY_POLICY}"' in (dist / "index.html").read_text(encoding="utf-8")


def test_every_file_is_kept_for_offline_use(dist):
    assert sorted(files(dist)) == sorted(json.loads(PRECACHED.read_text()))


def test_every_asset_has_its_content_in_its_name(dist):
    assert [
        name for name in files(dist) if name.startswith("assets/") and not re.search(r"-[0-9a-f]{12}[./]", name)
    ] == []


def test_no_placeholder_is_left(dist):
    assert "{{" not in (dist / "index.html").read_text() + (dist / "manifest.webmanifest").read_text()


def test_nothing_names_a_folder_of_this_machine(dist):
    place = str(ROOT).encode()
    assert [name for name, data in unpacked(dist) if place in data] == []


@pytest.mark.parametrize("ending", [".map", ".so", ".py"])
def test_no_source_maps_natives_or_sources_are_shipped(dist, ending):
    made = "assets/app web/_build.py"  # two lines, not worth compiling
    assert [name for name, _ in unpacked(dist) if name.endswith(ending) and name != made] == []


def unpacked(dist):
    for name, data in files(dist).items():
        yield name, data
        if name.endswith(".zip"):
            archive = zipfile.ZipFile(io.BytesIO(data))
            yield from ((f"{name.rsplit('-', 1)[0]} {inner}", archive.read(inner)) for inner in archive.namelist())
