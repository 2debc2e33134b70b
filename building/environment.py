"""The repository's own Python environment: .venv, with exactly the versions that pyproject.toml pins."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

from building.paths import ROOT, VENV
from building.running import Failed, run, step
from building.stamps import clear, content_hash, is_fresh, set_fresh

# "app": what goes into the tablet; "build": node and npm; "test": all that only tests need; "alone": more for tests, of
# which nothing is wanted but what lies in the packages themselves.
Group = str


def python() -> Path:
    return VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def site_packages() -> Path:
    if os.name == "nt":
        return VENV / "Lib/site-packages"
    return next(iter(VENV.glob("lib/python3*/site-packages")))


def pins(group: Group) -> list[str]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    if group == "app":
        return project["project"]["dependencies"]
    return project["dependency-groups"][group]


def ensure(*groups: Group) -> None:
    """Make .venv if there is none and install what is pinned and not yet there."""
    _make()
    for group in groups:
        wanted = pins(group)
        inputs = content_hash(*wanted)
        if is_fresh(f"python-{group}", inputs, [python()]):
            continue
        with step(f"Installing Python packages ({group}: {len(wanted)})"):
            clear(f"python-{group}")
            remedy = "Python packages could not be installed. Check the network and pip's settings, and run again."
            options = ["--disable-pip-version-check", *(["--no-deps"] if group == "alone" else [])]
            run([python(), "-m", "pip", "install", *options, *wanted], f"pip-{group}", remedy)
            set_fresh(f"python-{group}", inputs)


def _make() -> None:
    if is_fresh("venv", "made", [python()]):
        return
    for group in ("app", "build", "test", "alone"):
        clear(f"python-{group}")
    with step("Making .venv"):
        remedy = "The environment could not be made. Install Python's venv module (Debian: python3-venv) and run again."
        run([sys.executable, "-m", "venv", VENV], "venv", remedy)
        set_fresh("venv", "made")


def is_inside() -> bool:
    return Path(sys.prefix).resolve() == VENV.resolve()


def hand_over(arguments: list[str]) -> int:
    """Run build.py again under .venv's Python, in this process's place where the system can do that."""
    command = [str(python()), str(ROOT / "build.py"), *arguments]
    sys.stdout.flush()
    try:
        if os.name == "posix":
            os.execv(command[0], command)
        return subprocess.run(command).returncode
    except OSError as error:
        raise Failed(f".venv does not run ({error.strerror}). Delete .venv and run again.") from error
