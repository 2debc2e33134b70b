"""Run other programs and say what is happening: one line a step, one line for a failure, the rest in a log file."""

import os
import subprocess
import time
from collections.abc import Generator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

from building.paths import LOGS, ROOT, shown


class Failed(Exception):
    """A step could not be done. The message is one line: what is wrong and what to do about it."""


@contextmanager
def step(name: str) -> Generator[None]:
    print(f"{name} …", flush=True)
    begun = time.monotonic()
    yield
    seconds = time.monotonic() - begun
    if seconds >= 1:
        print(f"  done in {seconds:.0f} s", flush=True)


def run(command: Sequence[str | Path], log: str, remedy: str, *, env: Mapping[str, str] | None = None) -> None:
    """Run quietly with the output in .build/logs/LOG.log. Raises Failed with the remedy and the log's name."""
    LOGS.mkdir(parents=True, exist_ok=True)
    path = LOGS / f"{log}.log"
    with path.open("w", encoding="utf-8") as output:
        try:
            done = subprocess.run(
                [str(part) for part in command],
                cwd=ROOT,
                env={**os.environ, **(env or {})},
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=subprocess.STDOUT,
            )
        except OSError as error:
            raise Failed(f"{Path(command[0]).name} could not be started ({error.strerror}). {remedy}") from error
    if done.returncode:
        raise Failed(f"{remedy} Its output is in {shown(path)}.")
