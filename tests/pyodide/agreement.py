"""agreement.py COMMAND ...: every figure of every worksheet must be the same number here and under COMMAND.

COMMAND runs figures.py in the other interpreter.
"""

from __future__ import annotations

import json
import math
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.pyodide.figures import figures  # noqa: E402  after the path is set

TOLERANCE = 1e-12  # relative


def difference(here: float | str, there: float | str) -> float:
    """Relative; infinite where one is a number and the other is not, or where words differ."""
    if isinstance(here, str) or isinstance(there, str):
        return 0.0 if here == there else math.inf
    if here == there or (math.isnan(here) and math.isnan(there)):
        return 0.0
    return abs(here - there) / max(abs(here), abs(there))


def main(command: list[str]) -> int:
    done = subprocess.run([*command, "figures.py"], stdout=subprocess.PIPE, text=True)
    if done.returncode:
        return done.returncode
    here, there = figures(), json.loads(done.stdout)
    differences = {key: difference(here.get(key, ""), there.get(key, "")) for key in here.keys() | there.keys()}
    wrong = sorted(key for key, each in differences.items() if not each <= TOLERANCE)
    for key in wrong[:20]:
        print(f"{key}: {here.get(key)} here, {there.get(key)} in Pyodide")
    print(
        f"{len(differences)} figures in both interpreters; greatest relative difference {max(differences.values()):.1e}"
    )
    print(f"{len(wrong)} failed" if wrong else "1 passed")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
