"""Tests in a process of their own, forked from one that has read the large libraries, nothing of the tree."""

import importlib
import os
import signal
import sys
import time
from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from building.paths import ROOT

MEMORY_BYTES = 4 << 30
ENDED = -1
"""The child did not say how it went: its time was over, or it fell."""
OF_THE_TREE = ("core", "tests", "web")
OPTIONS = ("-x", "-q", "--tb=short", "--no-header", "-p", "no:cacheprovider", "-p", "no:xdist", "--hypothesis-seed=0")


def read_ahead(names: Iterable[str]) -> None:
    os.environ["OPENBLAS_NUM_THREADS"] = "1"  # threads do not outlive a fork
    for name in names:
        with suppress(Exception):
            importlib.import_module(name)


def in_child(work: Callable[[], int], tree: Path, log: Path, seconds: float) -> int:
    """The status of work done in tree in so many seconds of processor time; ENDED where it did not end by itself."""
    sys.stdout.flush()
    child = os.fork()
    if child == 0:
        status = 1
        try:
            _settle_in(tree, log, seconds)
            status = work()
        except BaseException:  # nothing may escape into the parent's code
            import traceback

            traceback.print_exc()
        finally:
            sys.stdout.flush()
            os._exit(status)
    try:
        return _wait(child, time.monotonic() + 20 * seconds)
    finally:
        with suppress(ProcessLookupError, PermissionError):
            os.killpg(child, signal.SIGKILL)


def run_pytest(files: Sequence[str], plugin: Any) -> int:
    import hypothesis
    import pytest

    # A failure found is enough: it need not be made small, nor remembered.
    phases = (hypothesis.Phase.explicit, hypothesis.Phase.generate)
    hypothesis.settings.register_profile("mutants", database=None, deadline=None, phases=phases)
    hypothesis.settings.load_profile("mutants")
    return int(pytest.main([*OPTIONS, *files], plugins=[plugin]))


def _wait(child: int, until: float) -> int:
    while time.monotonic() < until:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return os.WEXITSTATUS(status) if os.WIFEXITED(status) else ENDED
        time.sleep(0.01)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return ENDED


def _settle_in(tree: Path, log: Path, seconds: float) -> None:
    import resource

    os.setsid()
    used = sum(os.times()[:2])
    limit = int(used + seconds) + 1
    resource.setrlimit(resource.RLIMIT_CPU, (limit, limit))
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
