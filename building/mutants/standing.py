"""A process that has read the core and its tests once, and tries one change after another in forks of itself."""

import gc
import os
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from building.mutants import child, in_memory
from building.mutants.changes import Change
from building.mutants.choice import Chooser
from building.mutants.reach import Test
from building.paths import LOGS
from building.running import Failed

SURVIVED, CAUGHT, ANEW = "survived", "caught", "anew"
BROKEN = "broken"
STATUSES = {0: SURVIVED, 3: ANEW, child.BROKEN: BROKEN}
LEAST_S = 5
TIMES_LONGER = 3


class Standing:
    """Asked by a change's place in the list; answers CAUGHT, SURVIVED, or ANEW where all must be read anew for it."""

    def __init__(self, changes: Sequence[Change], chooser: Chooser) -> None:
        (from_us, self.to), (self.answers, from_it) = os.pipe(), os.pipe()
        loop = Loop(changes, chooser, from_us, from_it)
        files = [each.file for each in chooser.tested]
        log = LOGS / "mutants-standing.log"

        def stand() -> int:
            os.close(self.to)  # or it would not see that we are gone
            child.settle_in(chooser.tree, log)
            return child.run_pytest(files, loop)

        self.process = child.begin(stand)
        os.close(from_us)
        os.close(from_it)
        self._answer()

    def ask(self, place: int) -> str:
        os.write(self.to, place.to_bytes(4, "big"))
        return self._answer()

    def end(self) -> None:
        child.end(self.process)
        os.close(self.to)
        os.close(self.answers)

    def _answer(self) -> str:
        said = os.read(self.answers, 16).decode()
        if said in ("", BROKEN):
            raise Failed("The tests could not be run. See .build/logs/mutants-standing.log.")
        return said


class Loop:
    """A pytest plugin: once all is read, it tries what it is asked for, instead of running the tests."""

    def __init__(self, changes: Sequence[Change], chooser: Chooser, asked: int, answers: int) -> None:
        self.changes, self.chooser = changes, chooser
        self.asked, self.answers = asked, answers

    def pytest_runtestloop(self, session: Any) -> bool:
        self.session = session
        self.items = {item.nodeid: item for item in session.items}
        self.functions = in_memory.functions_there()
        gc.freeze()  # what is shared with the forks is not touched by their collecting
        os.write(self.answers, b"ready")
        while asked := os.read(self.asked, 4):
            os.write(self.answers, self._tried(self.changes[int.from_bytes(asked, "big")]).encode())
        return True

    def _tried(self, change: Change) -> str:
        felt = self.chooser.felt(change)
        if self.chooser.is_used_while_reading(felt):
            return ANEW
        tests = [test for each in self.chooser.rounds(change) for test in each.tests]
        fork = child.begin(lambda: self._made_and_tested(change, self.chooser.tree, tests), in_our_group=True)
        status = child.wait(fork, LEAST_S + TIMES_LONGER * sum(test.seconds for test in tests))
        if status == child.ENDED:
            child.kill(fork)
        return STATUSES.get(status, CAUGHT)

    def _made_and_tested(self, change: Change, tree: Path, tests: Sequence[Test]) -> int:
        try:
            in_memory.make(change, tree, self.chooser.felt(change), self.functions)
        except in_memory.NotInMemory:
            return 3
        tests = [test for test in tests if test.name in self.items]
        items = [self.items[test.name] for test in tests]
        for test, item, following in zip(tests, items, [*items, None][1:], strict=True):
            child.allow(LEAST_S + TIMES_LONGER * test.seconds)
            item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
            if self.session.testsfailed:
                return 1
        return 0
