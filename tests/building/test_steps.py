"""The small parts of the build: names, stamps, counts and pins."""

import json
import subprocess
import sys

import pytest

from building import bench, browsers, environment, packaging, python_zips, stamps
from building.checks import Count, read_closing
from building.commands import main
from building.paths import ROOT, WEB
from building.placing import Site
from building.running import Failed, run


@pytest.fixture
def site():
    site = Site()
    site.put_hashed("page", "page.js", b"1")
    return site


def test_a_file_s_name_follows_its_content(site):
    before = site.assets["page"]
    site.put_hashed("page", "page.js", b"2")
    assert site.assets["page"] != before


def test_an_asset_is_named_relative_to_the_page(site):
    assert site.fill("{{ asset('page') }}", {}, "x") == f"./{site.assets['page']}"


def test_an_unknown_asset_is_refused_with_those_that_are_known(site):
    with pytest.raises(Failed, match=r"asks for .*Known: page"):
        site.fill("{{ asset('nothing') }}", {}, "shell.html")


def test_a_file_under_its_own_name_carries_a_revision(site):
    site.put_named("index.html", b"<p>")
    assert site.precached[-1]["revision"]


def test_a_step_is_done_again_when_its_input_changes(tmp_path, monkeypatch):
    monkeypatch.setattr(stamps, "STAMPS", tmp_path)
    stamps.set_fresh("step", stamps.content_hash("one"))
    assert not stamps.is_fresh("step", stamps.content_hash("two"), [])


def test_a_step_is_skipped_when_nothing_has_changed(tmp_path, monkeypatch):
    monkeypatch.setattr(stamps, "STAMPS", tmp_path)
    stamps.set_fresh("step", stamps.content_hash("one"))
    assert stamps.is_fresh("step", stamps.content_hash("one"), [])


def test_a_step_is_done_again_when_its_result_is_gone(tmp_path, monkeypatch):
    monkeypatch.setattr(stamps, "STAMPS", tmp_path)
    stamps.set_fresh("step", "same")
    assert not stamps.is_fresh("step", "same", [tmp_path / "gone"])


def test_two_parts_do_not_hash_like_one():
    assert stamps.content_hash("ab", "c") != stamps.content_hash("a", "bc")


@pytest.mark.parametrize(
    ("line", "count"),
    [
        ("12 passed in 0.10s", Count(12, 0)),
        ("2 failed, 40 passed, 3 skipped, 1 error in 1.20s", Count(40, 3)),
        ("no tests ran in 0.01s", Count()),
    ],
)
def test_pytest_s_closing_line_is_read(line, count):
    assert read_closing(line) == count


def test_a_program_that_fails_leads_to_its_log():
    with pytest.raises(Failed, match=r"Do this\. Its output is in \.build/logs/failing\.log"):
        run([sys.executable, "-c", "raise SystemExit(1)"], "failing", "Do this.")


def test_a_program_that_is_not_there_is_said_in_one_line():
    with pytest.raises(Failed, match="no-such-program could not be started"):
        run(["no-such-program"], "missing", "Do this.")


@pytest.mark.parametrize("group", ["app", "build", "test", "alone"])
def test_every_python_package_is_pinned(group):
    assert [pin for pin in environment.pins(group) if "==" not in pin] == []


def test_every_javascript_part_is_pinned():
    package = json.loads((WEB / "package.json").read_text())
    versions = {**package["dependencies"], **package["devDependencies"]}
    assert [name for name, version in versions.items() if not version[0].isdigit()] == []


def test_the_lock_file_names_no_download_address():
    assert "resolved" not in (WEB / "package-lock.json").read_text()


def test_the_kept_modules_are_in_order_and_named_once():
    kept = [line for line in python_zips.KEPT.read_text().splitlines() if not line.startswith("#")]
    assert kept == sorted(set(kept))


def test_an_unknown_measurement_is_refused_with_those_that_are_known():
    with pytest.raises(Failed, match="first-visit"):
        bench.run(["nothing"])


def test_an_unknown_stage_is_said_in_one_line(capsys):
    main(["test", "nothing"])
    assert capsys.readouterr().err.startswith("build.py test: There is no stage nothing. Stages: lint, core,")


def test_the_package_repeats_bit_for_bit(dist):
    first = packaging.package().read_bytes()
    assert packaging.package().read_bytes() == first


def test_ci_runs_the_test_command_and_nothing_else():
    assert (ROOT / ".ci/run").read_text().splitlines()[-1] == "exec python3 build.py test"


def test_the_door_says_what_it_can_do():
    done = subprocess.run([sys.executable, ROOT / "build.py", "--help"], capture_output=True, text=True, check=True)
    assert all(command in done.stdout for command in ("serve", "build", "test", "bench", "package"))


def test_a_browser_may_be_named_by_a_variable(monkeypatch):
    monkeypatch.setenv("DAYBOOK_CHROMIUM", sys.executable)
    assert str(browsers.chromium()) == sys.executable


def test_a_named_browser_that_is_not_there_is_missing(monkeypatch):
    monkeypatch.setenv("DAYBOOK_CHROMIUM", "no-such-browser")
    assert "chromium" in browsers.missing()
