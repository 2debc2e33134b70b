"""Raw files, byte for byte as they came, kept beside the entries that speak of them. A file's name is its SHA-256.

A view asks for a file to be kept as it asks for an entry: both are stored together or not at all. A view that needs a
file which Python does not hold breaks off; the host fetches it from the device and asks the same request again, so that
no view ever waits.
"""

from __future__ import annotations

from collections.abc import Mapping
from hashlib import sha256

from flask import current_app, g

from web.journal import require_stored

MOST_HELD = 64 * 2**20
"""Bytes. In a tablet's worker all of Python lives in a few hundred megabytes."""


class NoSuchFile(KeyError):
    """The device holds no file of this name: it was brought from elsewhere without its files, or they were cleared."""


class FileWanted(BaseException):
    """For the host, past every `except Exception` of a view: fetch this file and ask again."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name


def keep_file(data: bytes) -> str:
    """Ask for a file to be stored together with this request's entries; returns its name, 64 hex digits.

    The same file again is no second one. Raises NotSaved where the last try could not be stored.
    """
    require_stored()
    name = sha256(data).hexdigest()
    pending_files()[name] = data
    return name


def file_of(name: str) -> bytes:
    """A stored file, or one that this request has asked to keep. Raises NoSuchFile.

    Ask for it before anything that takes long: the view may be run anew from its beginning.
    """
    if name in pending_files():
        return pending_files()[name]
    try:
        return current_app.extensions["files"][name]
    except KeyError:
        raise NoSuchFile(name) from None


def pending_files() -> dict[str, bytes]:
    """This request's files, not yet stored."""
    return g.setdefault("files", {})


class DeviceFiles:
    """What Python holds of the files on a device. To a view it looks like a dict of all of them."""

    def __init__(self, most_held: int = MOST_HELD) -> None:
        self.asked: dict[str, bytes] = {}
        self._held: dict[str, bytes] = {}  # the one used last stands last
        self._absent: set[str] = set()
        self._most_held = most_held

    def __getitem__(self, name: str) -> bytes:
        if name in self._absent:
            raise KeyError(name)
        if name not in self._held:
            raise FileWanted(name)
        self._held[name] = self._held.pop(name)
        return self._held[name]

    def update(self, files: Mapping[str, bytes]) -> None:
        """To be stored. They are held only once they are given back: until then nobody knows that they are kept."""
        self.asked.update(files)

    def give(self, name: str, data: bytes | None) -> None:
        """data: what the device holds under this name; None: nothing."""
        if data is None:
            self._absent.add(name)
        else:
            self._held.pop(name, None)
            self._held[name] = data

    def end_request(self) -> None:
        """Only now may a file be let go: a request that needs several at once must find them all.

        What was absent is looked for again the next time: another tab may have stored it.
        """
        self._absent.clear()
        while len(self._held) > 1 and sum(map(len, self._held.values())) > self._most_held:
            del self._held[next(iter(self._held))]
