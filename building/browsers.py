"""Where the browsers for the tests are, and getting them on a Debian-like system. A variable may name another."""

import os
import shutil
import sys
from pathlib import Path

from building.running import Failed, run, step

PACKAGES = {"chromium": "chromium", "webkit_driver": "webkit2gtk-driver", "xvfb": "xvfb"}


def chromium() -> Path | None:
    return _find("DAYBOOK_CHROMIUM", "chromium", "chromium-browser", "google-chrome")


def webkit_driver() -> Path | None:
    return _find("DAYBOOK_WEBKIT_DRIVER", "WebKitWebDriver")


def xvfb() -> Path | None:
    return _find("DAYBOOK_XVFB", "Xvfb")


def missing() -> list[str]:
    """Debian's names for what is not there."""
    there = {"chromium": chromium(), "webkit_driver": webkit_driver(), "xvfb": xvfb()}
    return [PACKAGES[name] for name, path in there.items() if path is None]


def ensure() -> None:
    """Install what is missing where that can be done without asking; else say what is missing, and go on."""
    wanted = missing()
    if wanted and sys.platform == "linux" and os.geteuid() == 0 and shutil.which("apt-get"):
        _install(wanted)
    for package in missing():
        without = "The Chromium tests cannot run" if package == "chromium" else "The WebKit tests are skipped"
        print(f"  {package} is missing. {without}. On Debian: apt-get install {package}", flush=True)


def _install(packages: list[str]) -> None:
    quiet = {"DEBIAN_FRONTEND": "noninteractive"}
    with step(f"Installing {', '.join(packages)}"):
        try:
            run(["apt-get", "update"], "apt-update", "Debian's package lists could not be fetched.", env=quiet)
            command = ["apt-get", "install", "-y", "--no-install-recommends", *packages]
            run(command, "apt-install", "Debian's packages could not be installed.", env=quiet)
        except Failed as failure:
            print(f"  {failure}", flush=True)


def _find(variable: str, *names: str) -> Path | None:
    named = os.environ.get(variable)
    if named:
        return Path(named) if Path(named).exists() else None
    found = (shutil.which(name) for name in names)
    return next((Path(path) for path in found if path), None)
