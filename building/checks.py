"""Every test, in stages: quick first. A stage that fails ends the run; each says how it went and how long it took."""

import json
import os
import re
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from attrs import frozen

from building import browsers, languages, npm, pyodide_tests, site
from building.paths import BUILD, MODULES, ROOT, WEB
from building.running import Failed

CLOSING = re.compile(r"(\d+) (passed|failed|errors?|skipped|xfailed)\b")
PROCESSORS = min(os.cpu_count() or 1, 4)
SIDE_BY_SIDE = ("-n", str(PROCESSORS), "--dist", "loadfile")
"""Whole files: what a file sets up once, a scene walked or a site served, is not set up twice."""
SCRIPTS = ("web/browser", "building", "tests")
NODES_CLOSING = re.compile(r"^# (pass|fail|cancelled) (\d+)$", re.MULTILINE)
NO_TESTS = 5  # pytest's way of saying that it found none


@frozen
class Count:
    passed: int = 0
    failed: int = 0

    def __add__(self, other: "Count") -> "Count":
        return Count(self.passed + other.passed, self.failed + other.failed)


class StageFailed(Exception):
    def __init__(self, count: Count) -> None:
        super().__init__()
        self.count = count


def run_stages(names: Sequence[str], pytest_arguments: Sequence[str]) -> int:
    total = Count()
    is_well = True
    for name in names:
        print(f"== {name}", flush=True)
        begun = time.monotonic()
        try:
            count = STAGES[name](pytest_arguments)
        except StageFailed as failure:
            count, is_well = failure.count, False
        total += count
        outcome = "ok" if is_well else "FAILED"
        print(f"== {name}: {outcome}, {count.passed} passed, {count.failed} failed, {_since(begun)}", flush=True)
        if not is_well:
            break
    print(f"{total.passed} passed, {total.failed} failed")
    return 0 if is_well else 1


def _since(begun: float) -> str:
    return f"{time.monotonic() - begun:.0f} s"


def lint(_: Sequence[str]) -> Count:
    npm.ensure()
    commands: list[list[str | Path]] = [
        [sys.executable, "-m", "ruff", "format", "--check", "--quiet", "."],
        [sys.executable, "-m", "ruff", "check", "--quiet", "."],
        [npm.node(), MODULES / "pyright/index.js", "--pythonpath", sys.executable],
        [npm.node(), MODULES / "typescript/bin/tsc", "--project", WEB / "jsconfig.json"],
        [npm.node(), MODULES / "oxlint/bin/oxlint", "--quiet", "--config", WEB / ".oxlintrc.json", *SCRIPTS],
    ]
    for command in commands:
        if subprocess.run([str(part) for part in command], cwd=ROOT, stdin=subprocess.DEVNULL).returncode:
            raise StageFailed(Count(failed=1))
    return Count(passed=len(commands))


def core(arguments: Sequence[str]) -> Count:
    return _pytest(["tests/core", "tests/published"], (*SIDE_BY_SIDE, *arguments))


def web(arguments: Sequence[str]) -> Count:
    return _node_tests("tests/web/browser") + _pytest(["tests/web"], (*SIDE_BY_SIDE, *arguments))


def building(arguments: Sequence[str]) -> Count:
    return _pytest(["tests/building"], arguments)


def pyodide(arguments: Sequence[str]) -> Count:
    site.build()
    suite = pyodide_tests.suite_commands(arguments, PROCESSORS)
    return _counted(*suite, at_once=PROCESSORS) + _counted(pyodide_tests.agreement_command())


def browser(arguments: Sequence[str]) -> Count:
    browsers.ensure()
    site.build()
    in_their_order = "--no-loadscope-reorder"  # the longest file first, not the one of the most tests
    return _pytest(["tests/browser"], (*SIDE_BY_SIDE, in_their_order, *arguments))


def mutants(arguments: Sequence[str]) -> Count:
    from building.mutants import command

    caught, survived, is_well = command.run(arguments)
    if not is_well:
        raise StageFailed(Count(caught, survived))
    return Count(caught, survived)


STAGES: dict[str, Callable[[Sequence[str]], Count]] = {
    "lint": lint,
    "core": core,
    "web": web,
    "building": building,
    "pyodide": pyodide,
    "browser": browser,
    "mutants": mutants,
}


def _pytest(folders: Sequence[str], arguments: Sequence[str]) -> Count:
    there = [folder for folder in folders if any((ROOT / folder).rglob("test_*.py"))]
    if not there:
        raise Failed(f"There are no tests in {' or '.join(folders)}. Restore them from the repository.")
    return _counted([sys.executable, "-m", "pytest", *there, *arguments])


def _node_tests(folder: str) -> Count:
    """What of the page's scripts needs no browser, by Node's own runner. What it says is shown where one fails."""
    npm.ensure()
    (BUILD / "words.json").write_text(json.dumps(languages.words_of_scripts()), encoding="utf-8")
    files = sorted((ROOT / folder).glob("*.test.mjs"))
    if not files:
        raise Failed(f"There are no tests in {folder}. Restore them from the repository.")
    command = [str(part) for part in (npm.node(), "--test", "--test-reporter=tap", *files)]
    done = subprocess.run(command, cwd=ROOT, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, encoding="utf-8")
    ended = {word: int(number) for word, number in NODES_CLOSING.findall(done.stdout)}
    count = Count(ended.get("pass", 0), ended.get("fail", 0) + ended.get("cancelled", 0))
    if done.returncode or not count.passed:
        print(done.stdout)
        raise StageFailed(count if count.failed else count + Count(failed=1))
    return count


def _counted(*commands: Sequence[str | Path], at_once: int = 1) -> Count:
    """Of all of them: one that fails lets the others run."""
    with ThreadPoolExecutor(at_once) as beside:
        ended = list(beside.map(_run, commands))
    total = sum((count for count, _ in ended), Count())
    if not all(is_well for _, is_well in ended):
        raise StageFailed(total if total.failed else total + Count(failed=1))
    return total


def _run(command: Sequence[str | Path]) -> tuple[Count, bool]:
    """Show the command's output as it comes and read pytest's closing line out of it."""
    parts = [str(part) for part in command]
    last = ""
    with subprocess.Popen(parts, cwd=ROOT, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, text=True) as running:
        for line in running.stdout or ():
            print(line, end="", flush=True)
            last = line if CLOSING.search(line) else last
    return read_closing(last), running.returncode in (0, NO_TESTS)


def read_closing(line: str) -> Count:
    """ "3 failed, 40 passed, 2 skipped in 1.2s" → 40 passed, 3 failed. An error counts as a failure."""
    found = {word.rstrip("s"): int(number) for number, word in CLOSING.findall(line)}
    return Count(found.get("passed", 0), found.get("failed", 0) + found.get("error", 0))
