"""Tests in a process of their own, forked from one that has read the large libraries, nothing of the tree."""

import importlib
import os
import signal
import sys
import time
import traceback
from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from building.paths import ROOT

MEMORY_BYTES = 4 << 30
ENDED = -1
"""The child did not say how it went: its time was over, or it fell."""
BROKEN = 70
"""It fell over its own feet, not over a test."""
OF_THE_TREE = ("core", "tests", "web")
OPTIONS = ("-q", "--tb=short", "--no-header", "-p", "no:cacheprovider", "-p", "no:xdist", "--hypothesis-seed=0")


def read_ahead(names: Iterable[str]) -> None:
    os.environ["OPENBLAS_NUM_THREADS"] = "1"  # threads do not outlive a fork
    for name in names:
        with suppress(Exception):
            importlib.import_module(name)


def in_child(work: Callable[[], int], tree: Path, log: Path, seconds: float) -> int:
    """The status of work done in tree in so many seconds of processor time; ENDED where it did not end by itself."""

    def settled() -> int:
        settle_in(tree, log)
        allow(seconds)
        return work()

    child = begin(settled)
    try:
        return wait(child, seconds)
    finally:
        end(child)


def begin(work: Callable[[], int], in_our_group: bool = False) -> int:
    """The process that does it, at the head of a group of its own or in ours, with which it is then ended."""
    sys.stdout.flush()
    child = os.fork()
    if child:
        return child
    status = BROKEN
    try:
        if not in_our_group:
            os.setsid()
        status = work()
    except BaseException:  # nothing may escape into the parent's code
        traceback.print_exc()
    finally:
        sys.stdout.flush()
        os._exit(status)


def wait(child: int, seconds: float) -> int:
    """Its status. seconds is the processor's time; on a busy machine the clock's may be twenty times as long."""
    until = time.monotonic() + 20 * seconds
    while time.monotonic() < until:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return os.WEXITSTATUS(status) if os.WIFEXITED(status) else ENDED
        time.sleep(0.002)
    return ENDED


def end(child: int) -> None:
    with suppress(ProcessLookupError, PermissionError):
        os.killpg(child, signal.SIGKILL)
    with suppress(ChildProcessError):
        os.waitpid(child, 0)


def kill(child: int) -> None:
    with suppress(ProcessLookupError):
        os.kill(child, signal.SIGKILL)
    with suppress(ChildProcessError):
        os.waitpid(child, 0)


def allow(seconds: float) -> None:
    """This process falls when it has used so many seconds more of the processor."""
    import resource  # not on Windows, which cannot fork either

    limit = int(time.process_time() + seconds) + 1
    resource.setrlimit(resource.RLIMIT_CPU, (limit, resource.RLIM_INFINITY))


def run_pytest(files: Sequence[str], plugin: Any, *options: str) -> int:
    import hypothesis
    import pytest

    # A failure found is enough: it need not be made small, nor remembered.
    phases = (hypothesis.Phase.explicit, hypothesis.Phase.generate)
    hypothesis.settings.register_profile("mutants", database=None, deadline=None, phases=phases)
    hypothesis.settings.load_profile("mutants")
    return int(pytest.main([*OPTIONS, *options, *files], plugins=[plugin]))


def settle_in(tree: Path, log: Path) -> None:
    import resource

    resource.setrlimit(resource.RLIMIT_AS, (MEMORY_BYTES, MEMORY_BYTES))
    output = os.open(log, os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    for stream in (1, 2):
        os.dup2(output, stream)
    os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
    os.chdir(tree)
    os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    for name in [name for name in sys.modules if name.split(".")[0] in OF_THE_TREE]:
        del sys.modules[name]  # the build itself has read some of the core
    sys.path[:] = [str(tree), *(path for path in sys.path if path and Path(path) != ROOT)]
