"""The files of the site as they are gathered: each under a name that changes with its content."""

import base64
import hashlib
import re
from pathlib import PurePosixPath
from typing import TypedDict

from attrs import field, mutable

from building.running import Failed

PLACEHOLDER = re.compile(r"\{\{\s*(?:asset\('(?P<asset>[^']+)'\)|(?P<word>\w+))\s*\}\}")


class Precached(TypedDict):
    url: str
    revision: str | None  # None where the name itself changes
    integrity: str  # other bytes, of an upload half done, are not taken for it: the version before stays in force


@mutable
class Site:
    """files: path under the site's root → content. assets: logical name → path."""

    files: dict[str, bytes] = field(factory=dict[str, bytes])
    assets: dict[str, str] = field(factory=dict[str, str])
    precached: list[Precached] = field(factory=list[Precached])

    @property
    def sizes(self) -> dict[str, int]:
        return {path: len(data) for path, data in self.files.items()}

    def put_hashed(self, name: str, file: str, data: bytes) -> None:
        """As assets/FILE with a hash in it; it needs no revision, as it never changes."""
        path = PurePosixPath(file)
        self.assets[name] = f"assets/{path.with_name(f'{path.stem}-{short_hash(data)}{path.suffix}')}"
        self._put(self.assets[name], data, None)

    def put_in_folder(self, name: str, folder: str, file: str, data: bytes) -> None:
        """A file that must keep its own name, in a folder with a hash in its name. Both can be asked for."""
        self.assets[folder] = f"assets/{folder}-{short_hash(data)}/"
        self.assets[name] = self.assets[folder] + file
        self._put(self.assets[name], data, None)

    def put_named(self, path: str, data: bytes) -> None:
        """Under its own name at the root, with a revision so that a change is noticed."""
        self._put(path, data, short_hash(data))

    def _put(self, path: str, data: bytes, revision: str | None) -> None:
        self.files[path] = data
        self.precached.append({"url": path, "revision": revision, "integrity": integrity(data)})

    def fill(self, text: str, words: dict[str, str], title: str) -> str:
        """Put values for {{ asset('name') }} and {{ word }}. Raises Failed for one that is not known."""

        def value(found: re.Match[str]) -> str:
            if found["asset"] and found["asset"] in self.assets:
                return "./" + self.assets[found["asset"]]
            if found["word"] in words:
                return words[found["word"]]
            raise Failed(f"{title} asks for {found[0]}. Known: {', '.join([*self.assets, *words])}.")

        return PLACEHOLDER.sub(value, text)


def integrity(data: bytes) -> str:
    """As Subresource Integrity writes it."""
    return f"sha256-{base64.b64encode(hashlib.sha256(data).digest()).decode()}"


def short_hash(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:12]
