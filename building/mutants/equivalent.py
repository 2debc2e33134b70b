"""Changes that change nothing: one committed list with the reason for each, kept true by a test."""

import tomllib
from collections.abc import Iterable
from pathlib import Path

from attrs import frozen

from building.mutants.changes import Change, changes_of
from building.paths import ROOT

LIST = ROOT / "tests/equivalent_changes.toml"


@frozen
class Equivalent:
    file: str
    within: str
    before: str
    after: str
    why: str

    @property
    def key(self) -> tuple[str, str, str, str]:
        return self.file, self.within, self.before, self.after


def listed(path: Path = LIST) -> list[Equivalent]:
    """One section a reason: why, file, within, and the changes it holds for, each as [before, after]."""
    sections = tomllib.loads(path.read_text(encoding="utf-8"))["same"]
    return [
        Equivalent(each["file"], each["within"], before, after, each["why"])
        for each in sections
        for before, after in each["changes"]
    ]


def no_longer_there(equivalents: Iterable[Equivalent], root: Path = ROOT) -> list[Equivalent]:
    """Those that no change of today's code answers to."""
    wanted = list(equivalents)
    files = {each.file for each in wanted if (root / each.file).is_file()}
    there = {change.key for file in files for change in changes_of(file, (root / file).read_text(encoding="utf-8"))}
    return [each for each in wanted if each.key not in there]


def without(changes: Iterable[Change], equivalents: Iterable[Equivalent]) -> list[Change]:
    same = {each.key for each in equivalents}
    return [change for change in changes if change.key not in same]
