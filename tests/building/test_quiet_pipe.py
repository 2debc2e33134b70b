"""A reader of `python -m core` that has had enough, in real processes: the core's own suite has none."""

import subprocess
import sys

from building.paths import ROOT


def test_the_first_line_alone_may_be_read():
    """The reader is gone before the rest is written: no traceback, and the status says that nothing went wrong."""
    with subprocess.Popen(
        [sys.executable, "-m", "core", "--json"], cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as core:
        assert core.stdout is not None
        assert core.stderr is not None
        core.stdout.close()
        assert core.stderr.read() == b""
        assert core.wait() == 0
