"""`build.py test mutants`: what is asked for, how far it is, and what came of it."""

import argparse
import json
import random
import secrets
import signal
import sys
import time
from collections.abc import Sequence
from pathlib import Path

from building.locking import alone
from building.mutants import child, equivalent
from building.mutants.changes import Change, changes_of, files_of
from building.mutants.choice import Chooser
from building.mutants.reach import TestFile, measured
from building.mutants.standing import ANEW, CAUGHT, Standing
from building.mutants.trial import copy_tree, is_caught
from building.paths import BUILD
from building.running import Failed, step

SAMPLE = 60
LEAST_CAUGHT = 0.95
TESTS = ("tests/core", "tests/published")
PINNED = (
    *("core/release/", "core/ferment/", "core/chamber/sanitising"),
    *("core/mix/limits", "core/mix/rule", "core/mix/weighing", "core/mix/limit_check"),
)
"""Where a change that nothing notices can hurt somebody: there none may be left."""
KEPT = BUILD / "mutants/survivors.json"


def run(arguments: Sequence[str]) -> tuple[int, int, bool]:
    """How many changes were caught and how many survived, and whether that will do."""
    options = parsed(arguments)
    signal.signal(signal.SIGTERM, signal.default_int_handler)  # ended either way, no test is left running
    with alone("mutants"):  # there is one copy
        return _run(options)


def _run(options: argparse.Namespace) -> tuple[int, int, bool]:
    tree = copy_tree()
    chosen, of = drawn(options, tree)
    chooser = _chooser(tree, options.as_measured)
    print(f"{len(chosen)} of {of} changes in {' and '.join(options.rooms)}, seed {options.seed}", flush=True)
    caught, survivors = _try_all(chosen, chooser)
    tried = caught + len(survivors)
    KEPT.write_text(json.dumps([change.key for change in survivors]), encoding="utf-8")
    print(
        f"{caught} of {tried} caught, seed {options.seed}; survivors:" if survivors else f"{caught} of {tried} caught"
    )
    for change in survivors:
        print(f"  {change}")
    pinned = any(change.file.startswith(PINNED) for change in survivors)
    return caught, len(survivors), not pinned and caught >= LEAST_CAUGHT * tried


def parsed(arguments: Sequence[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="build.py test mutants --")
    parser.add_argument(
        "rooms", nargs="*", help="folders or files of the core: every change in them, if no count is given"
    )
    parser.add_argument("--count", type=int, help=f"so many, drawn by chance; {SAMPLE} where no room is named")
    parser.add_argument("--seed", type=int, default=secrets.randbelow(10**6), help="draw as it was drawn before")
    parser.add_argument("--survivors", action="store_true", help="those again that nothing noticed last time")
    parser.add_argument("--as-measured", action="store_true", help="trust what was measured before the last edits")
    options = parser.parse_args(list(arguments))
    if options.count is None and not options.rooms and not options.survivors:
        options.count = SAMPLE
    options.rooms = options.rooms or ["core"]
    return options


def drawn(options: argparse.Namespace, tree: Path) -> tuple[list[Change], int]:
    found: list[Change] = []
    for room in options.rooms:
        files = files_of(tree, room.rstrip("/")) if room.startswith("core") else []
        if not files:
            raise Failed(f"There is no {room} to change. Name a folder or a file of the core, such as core/release.")
        found += [change for file in files for change in changes_of(file, (tree / file).read_text(encoding="utf-8"))]
    changes = equivalent.without(found, equivalent.listed())
    if options.survivors:
        kept = {tuple(key) for key in (json.loads(KEPT.read_text(encoding="utf-8")) if KEPT.is_file() else ())}
        return [change for change in changes if change.key in kept], len(changes)
    if options.count is None:
        return changes, len(changes)
    return random.Random(options.seed).sample(changes, min(options.count, len(changes))), len(changes)


def _chooser(tree: Path, though_changed: bool) -> Chooser:
    files = [path.relative_to(tree).as_posix() for room in TESTS for path in sorted((tree / room).glob("test_*.py"))]
    tested: list[TestFile] = []
    with step(f"Which test reaches what ({len(files)} files of tests)"):
        for file in files:
            tested.append(measured(tree, file, though_changed))
            child.read_ahead(tested[-1].libraries)
    for test in (test for file in tested for test in file.failing):
        print(f"  left out, for it fails on the core as it is: {test}", flush=True)
    return Chooser(tree, files_of(tree, "core"), tested)


def _try_all(drawn: Sequence[Change], chooser: Chooser) -> tuple[int, list[Change]]:
    """Stopped by hand, it says what it has found so far."""
    with step("Reading the core and its tests"):
        standing = Standing(drawn, chooser)
    survivors: list[Change] = []
    caught, begun, said = 0, time.monotonic(), 0.0
    try:
        for place, change in enumerate(drawn):
            answer = standing.ask(place)
            if answer == CAUGHT or (answer == ANEW and is_caught(change, chooser)):
                caught += 1
            else:
                survivors.append(change)
                print(f"  nothing notices  {change}", flush=True)
            now = time.monotonic()
            if now - said > (1 if sys.stdout.isatty() else 30):
                said, tried = now, caught + len(survivors)
                left = (now - begun) / tried * (len(drawn) - tried) / 60
                print(f"{tried} of {len(drawn)} tried, {caught} caught, about {left:.0f} min left", flush=True)
    except KeyboardInterrupt:
        print("Stopped.")
    finally:
        standing.end()
    return caught, survivors
