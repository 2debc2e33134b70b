"""A device of one's own: Chromium as a process with its data on the disk, which can be killed like a tablet's."""

import contextlib
import json
import os
import signal
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from attrs import define, field
from playwright.sync_api import Browser, BrowserContext, BrowserType, Page

from building import browsers
from tests.browser.conftest import FLAGS, PATIENCE_MS, prepared

A_PAGE = ("http://", "https://")


@define
class Device:
    """profile: its disk. What its network stack is asked for goes into a log."""

    profile: Path
    engine: BrowserType
    extra: tuple[str, ...] = ()
    _process: subprocess.Popen[bytes] | None = None
    _browser: Browser | None = None
    _logs: list[Path] = field(factory=list)

    def start(self) -> BrowserContext:
        self.profile.mkdir(exist_ok=True)
        port_file = self.profile / "DevToolsActivePort"
        port_file.unlink(missing_ok=True)
        self._logs.append(self.profile.parent / f"net-{len(self._logs)}.json")
        command = [
            f"{browsers.chromium()}",
            *FLAGS,
            *self.extra,
            "--headless=new",
            "--remote-debugging-port=0",
            f"--user-data-dir={self.profile}",
            f"--log-net-log={self._logs[-1]}",
            "--window-size=1024,768",
            "about:blank",
        ]
        quiet = subprocess.DEVNULL
        self._process = subprocess.Popen(command, stdin=quiet, stdout=quiet, stderr=quiet, start_new_session=True)
        self._browser = self.engine.connect_over_cdp(f"http://127.0.0.1:{_port(port_file)}", timeout=PATIENCE_MS)
        return prepared(self._browser.contexts[0])

    def pages(self) -> list[Page]:
        assert self._browser is not None
        return self._browser.contexts[0].pages

    def kill(self) -> None:
        """As a tablet that falls into the brine: every process at once, nothing is told."""
        if self._process is None:
            return
        os.killpg(self._process.pid, signal.SIGKILL)
        self._process.wait()
        self._process = None
        assert self._browser is not None
        self._browser.close()

    def asked(self) -> list[str]:
        """Every address that a page, a worker or a service worker asked for: Chromium's own affairs name no origin."""
        events = [event for log in self._logs if log.exists() for event in _events(log)]
        return [
            event["params"]["url"]
            for event in events
            if str(event["params"].get("initiator", "")).startswith(A_PAGE) and "url" in event["params"]
        ]


def _events(log: Path) -> Iterator[dict[str, Any]]:
    """One a line; a killed browser leaves the last one torn."""
    for line in log.read_text(errors="replace").splitlines():
        if not line.startswith('{"params"'):
            continue
        with contextlib.suppress(json.JSONDecodeError):
            yield json.loads(line.rstrip(","))


def _port(file: Path) -> int:
    give_up = time.monotonic() + PATIENCE_MS / 1000
    while time.monotonic() < give_up:
        lines = file.read_text().split() if file.exists() else []
        if len(lines) == 2:
            return int(lines[0])
        time.sleep(0.05)
    raise TimeoutError("Chromium did not open its debugging port.")
