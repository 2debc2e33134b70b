"""The seam between the browser's worker and the application: strings and bytes in, strings and bytes out.

The worker calls `start` once, `learn` with what its store holds, and `answer` for each request. Entries that a request
wants written come back in the answer's head; the worker stores them and hands them to `learn` before anybody is told
they are saved. Raw files go the same way, their bytes beside the head. A file that a request needs and Python does not
hold is all the answer says; the worker hands it to `give` and asks again.
"""

from __future__ import annotations

import io
import json
from importlib import import_module
from typing import Any

from flask import Flask

from core.daybook.book import Book
from web.app import create_app
from web.files import DeviceFiles, FileWanted
from web.journal import REFUSED
from web.routing import screen_modules

_book = Book()
_files = DeviceFiles()
_asked: list[dict[str, Any]] = []
_app: Flask | None = None
_base = ""
_cold = screen_modules()


def start(base: str, build_id: str) -> str:
    """base: the path of the site's root without its last slash. Returns the build id, as a sign of life."""
    global _app, _base
    _base = base
    _app = create_app(_book, _asked.extend, build_id)
    _app.extensions["files"] = _files
    return build_id


def warm() -> int:
    """Import one more screen, between two requests; returns how many are left."""
    if _cold:
        import_module(_cold.pop(0))
    return len(_cold)


def learn(entries_json: str) -> int:
    """Take in stored entries, a JSON array. Repeats are harmless. Returns how many are known."""
    _book.learn(json.loads(entries_json))
    return len(_book)


def give(name: str, data: Any) -> None:
    """Take in a file that lies on the disk, wanted or just stored. None: there is no such file."""
    _files.give(name, None if data is None else _as_bytes(data))


def answer(head_json: str, body: Any) -> list[Any]:
    """Answer one request {method, path, headers, refused}. Returns [head, body, the bytes of the files].

    head: {status, headers, entries, files: their names}, or only {wants: the name of a file}.
    """
    assert _app is not None, "start() comes first"
    head = json.loads(head_json)
    _asked.clear()
    _files.asked.clear()
    try:
        status, headers, answered = _through_wsgi(_app, _environment(head, _as_bytes(body)))
    except FileWanted as wanted:
        return [json.dumps({"wants": wanted.name}), b"", []]
    _files.end_request()
    entries, files = ([], {}) if head.get("refused") else (list(_asked), dict(_files.asked))
    said = {"status": status, "headers": headers, "entries": entries, "files": list(files)}
    return [json.dumps(said), answered, list(files.values())]


def _as_bytes(body: Any) -> bytes:
    """A JavaScript Uint8Array arrives as a proxy that knows how to copy itself."""
    if body is None:
        return b""
    return body.to_bytes() if hasattr(body, "to_bytes") else bytes(body)


def _environment(head: dict[str, Any], body: bytes) -> dict[str, Any]:
    path, _, query = head["path"].partition("?")
    environment: dict[str, Any] = {
        "REQUEST_METHOD": head["method"],
        "SCRIPT_NAME": _base,
        "PATH_INFO": _unquoted(path),
        "QUERY_STRING": query,
        "CONTENT_LENGTH": str(len(body)),
        "SERVER_NAME": "daybook",
        "SERVER_PORT": "80",
        "SERVER_PROTOCOL": "HTTP/1.1",
        "wsgi.version": (1, 0),
        "wsgi.url_scheme": "http",
        "wsgi.input": io.BytesIO(body),
        "wsgi.errors": io.StringIO(),
        "wsgi.multithread": False,
        "wsgi.multiprocess": False,
        "wsgi.run_once": False,
        REFUSED: head.get("refused"),
    }
    for name, value in head.get("headers", {}).items():
        key = name.upper().replace("-", "_")
        environment[key if key == "CONTENT_TYPE" else f"HTTP_{key}"] = value
    return environment


def _unquoted(path: str) -> str:
    """WSGI wants the path's bytes as Latin-1 text (PEP 3333)."""
    from urllib.parse import unquote_to_bytes

    return unquote_to_bytes(path).decode("latin-1")


def _through_wsgi(app: Flask, environment: dict[str, Any]) -> tuple[int, list[tuple[str, str]], bytes]:
    started: list[tuple[str, list[tuple[str, str]]]] = []
    written: list[bytes] = []

    def start_response(status: str, headers: list[tuple[str, str]], exc_info: object = None):
        started.append((status, headers))
        return written.append

    chunks = app.wsgi_app(environment, start_response)
    try:
        written.extend(chunks)
    finally:
        if close := getattr(chunks, "close", None):
            close()
    status, headers = started[-1]
    return int(status.split()[0]), [(str(name), str(value)) for name, value in headers], b"".join(written)
