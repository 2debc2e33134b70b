"""Which tests are run against a change, and in which order: those that are nearest to it and quickest first."""

from collections.abc import Iterator, Sequence
from pathlib import Path

from attrs import frozen

from building.mutants.changes import Change
from building.mutants.flow import Felt, Part, defined_at, felt, functions_by_line, home_of, names_in, parts_of
from building.mutants.reach import Test, TestFile

FIRST_FILES = 2
TIMES_MORE = 4
SHARED = ("@cache", 'scope="module"')


@frozen
class Round:
    """Files of tests to run at once, and the tests in them, in their order."""

    tests: tuple[Test, ...]
    files: tuple[str, ...]

    @property
    def seconds(self) -> float:
        return sum(test.seconds for test in self.tests)


class Chooser:
    def __init__(self, tree: Path, files: Sequence[str], tested: Sequence[TestFile]) -> None:
        self.tree = tree
        self.tested = tested
        self.parts: list[Part] = [part for file in files for part in parts_of(file, self._read(file))]
        self.names = {
            each.file: frozenset(
                name for file in (each.file, *each.helpers) for name in names_in(file, self._read(file))
            )
            for each in tested
        }

        self.shared = {
            each.file
            for each in tested
            if any(mark in self._read(file) for file in (each.file, *each.helpers) for mark in SHARED)
        }
        """Files of tests of which one may see what another one has computed."""

    def rounds(self, change: Change) -> Iterator[Round]:
        """Few files first, then more and more: most changes are noticed at once."""
        ranked = self._ranked(self.felt(change))
        size, begin = FIRST_FILES, 0
        while begin < len(ranked):
            some = ranked[begin : begin + size]
            yield Round(tuple(test for tests, _ in some for test in tests), tuple(file for _, file in some))
            begin, size = begin + size, size * TIMES_MORE

    def is_used_while_reading(self, where: Felt) -> bool:
        """Whether a file of tests may have computed something with it before any test is run."""
        return any(self.names[each.file] & where.names or each.before_any & where.functions for each in self.tested)

    def felt(self, change: Change) -> Felt:
        source = self._read(change.file)
        function = functions_by_line(source).get(change.line, "")
        defined = [] if function else defined_at(source, change.line)
        return felt(self.parts, (change.file, function), {(home_of(change.file), name) for name in defined})

    def _ranked(self, where: Felt) -> list[tuple[list[Test], str]]:
        found: list[tuple[float, list[Test], str]] = []
        for file in self.tested:
            tests = [test for test in file.tests if test.functions & where.functions]
            sees_it = self.names[file.file] & where.names or file.before_any & where.functions
            if sees_it or (tests and file.file in self.shared):
                tests = list(file.tests)
            if tests:
                tests.sort(key=lambda test: test.seconds)
                nearness = len(tests) / len(file.tests)
                found.append((-nearness / (0.5 + sum(test.seconds for test in tests)), tests, file.file))
        return [(tests, file) for _, tests, file in sorted(found, key=lambda each: (each[0], each[2]))]

    def _read(self, file: str) -> str:
        return (self.tree / file).read_text(encoding="utf-8")
