"""Serve dist/ on this machine as a plain static host would: types, gzip, caching, and the policy as a header."""

import gzip
from contextlib import suppress
from functools import partial
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from socket import SHUT_RDWR, socket
from typing import Any
from urllib.parse import unquote, urlsplit

from building.paths import BUILD
from building.placing import short_hash
from building.policy import CONTENT_SECURITY_POLICY, FRAMING
from building.running import Failed

GZIPPED = BUILD / "gzip"
TYPES = {
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
    ".zip": "application/zip",
}
PRESSED = (".css", ".html", ".js", ".json", ".mjs", ".svg", ".wasm", ".webmanifest")  # as hosts do; zips are already
ALWAYS = {
    "Content-Security-Policy": f"{CONTENT_SECURITY_POLICY}; {FRAMING}",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
}
NOT_HERE = (
    '<!doctype html><html lang="en"><title>Not here</title><p>There is no such page. <a href="{}">Open the daybook</a>.'
)


class Handler(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"

    def __init__(self, *args: Any, folder: Path, at: str) -> None:
        self.folder, self.at = folder, at
        super().__init__(*args)

    def do_GET(self) -> None:
        path = self._file()
        if path is None:
            self._answer(
                HTTPStatus.NOT_FOUND, ".html", NOT_HERE.format(self.at).encode(), {"Cache-Control": "no-store"}
            )
            return
        data = path.read_bytes()
        headers = {"Cache-Control": self._caching(path), "Vary": "Accept-Encoding", "ETag": f'"{short_hash(data)}"'}
        if self.headers.get("If-None-Match") == headers["ETag"]:
            self._answer(HTTPStatus.NOT_MODIFIED, path.suffix, b"", headers)
            return
        if path.suffix in PRESSED and "gzip" in self.headers.get("Accept-Encoding", ""):
            data, headers = gzipped(data), headers | {"Content-Encoding": "gzip"}
        self._answer(HTTPStatus.OK, path.suffix, data, headers)

    def do_HEAD(self) -> None:
        self.do_GET()

    def _file(self) -> Path | None:
        path = unquote(urlsplit(self.path).path)
        if not path.startswith(self.at):
            return None
        found = (self.folder / (path.removeprefix(self.at) or "index.html")).resolve()
        return found if found.is_file() and found.is_relative_to(self.folder.resolve()) else None

    def _caching(self, path: Path) -> str:
        is_hashed = path.is_relative_to(self.folder.resolve() / "assets")
        return "public, max-age=31536000, immutable" if is_hashed else "no-cache"

    def _answer(self, status: HTTPStatus, suffix: str, data: bytes, headers: dict[str, str]) -> None:
        self.send_response(status)
        self.send_header("Content-Type", TYPES.get(suffix, "application/octet-stream"))
        self.send_header("Content-Length", str(len(data)))
        for name, value in {**ALWAYS, **headers}.items():
            self.send_header(name, value)
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(data)

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing of each request."""


def gzipped(data: bytes) -> bytes:
    """Kept on disk between runs: the engine takes a second to press."""
    kept = GZIPPED / short_hash(data)
    if not kept.exists():
        GZIPPED.mkdir(parents=True, exist_ok=True)
        kept.write_bytes(gzip.compress(data, 9, mtime=0))
    return kept.read_bytes()


class Server(ThreadingHTTPServer):
    """Closed, it is gone: connections that a browser keeps open for later are cut, or it would still be answered."""

    daemon_threads = True
    allow_reuse_address = True

    def __init__(self, *args: Any) -> None:
        self._connections: set[socket] = set()
        super().__init__(*args)

    def process_request(self, request: Any, client_address: Any) -> None:
        self._connections.add(request)
        super().process_request(request, client_address)

    def shutdown_request(self, request: Any) -> None:
        self._connections.discard(request)
        super().shutdown_request(request)

    def server_close(self) -> None:
        super().server_close()
        for each in tuple(self._connections):
            with suppress(OSError):
                each.shutdown(SHUT_RDWR)

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that goes away in the middle is no event."""


def open_server(folder: Path, port: int, at: str = "/") -> Server:
    """Bound to this machine only and not yet running; port 0 takes a free one. Tests run it in a thread."""
    prefix = f"/{at.strip('/')}/" if at.strip("/") else "/"
    try:
        return Server(("127.0.0.1", port), partial(Handler, folder=folder, at=prefix))
    except (OSError, OverflowError) as error:
        raise Failed(f"Port {port} is taken or not allowed. Try --port with another number.") from error


def serve(folder: Path, port: int, at: str) -> int:
    server = open_server(folder, port, at)
    prefix = f"/{at.strip('/')}/" if at.strip("/") else "/"
    print(f"Curing Daybook is at http://localhost:{server.server_port}{prefix}   (stop with Ctrl+C)", flush=True)
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        print()
    return 0
