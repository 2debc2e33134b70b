"""Where things lie. Everything the build writes is under .venv, .build, web/node_modules and dist."""

from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
BUILD = ROOT / ".build"
LOGS = BUILD / "logs"
STAMPS = BUILD / "stamps"
DIST = ROOT / "dist"
CORE = ROOT / "core"
WEB = ROOT / "web"
MODULES = WEB / "node_modules"
PYODIDE = MODULES / "pyodide"


def shown(path: Path) -> str:
    """As a reader would type it: relative to the repository."""
    return path.relative_to(ROOT).as_posix() if path.is_relative_to(ROOT) else path.name
