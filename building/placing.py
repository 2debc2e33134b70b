"""The files of the site as they are gathered: each under a name that changes with its content."""

import hashlib
import re
from pathlib import PurePosixPath

from attrs import field, mutable

from building.running import Failed

PLACEHOLDER = re.compile(r"\{\{\s*(?:asset\('(?P<asset>[^']+)'\)|(?P<word>\w+))\s*\}\}")


@mutable
class Site:
    """files: path under the site's root → content. assets: logical name → path. precached: what works offline."""

    files: dict[str, bytes] = field(factory=dict)
    assets: dict[str, str] = field(factory=dict)
    precached: list[dict[str, str | None]] = field(factory=list)

    def put_hashed(self, name: str, file: str, data: bytes) -> None:
        """As assets/FILE with a hash in it; never needs a revision, as it never changes."""
        path = PurePosixPath(file)
        self.assets[name] = f"assets/{path.with_name(f'{path.stem}-{short_hash(data)}{path.suffix}')}"
        self._put(self.assets[name], data, None)

    def put_folder(self, name: str, folder: str, files: dict[str, bytes]) -> None:
        """Files that must keep their own names, in a folder with a hash in its name."""
        self.assets[name] = f"assets/{folder}-{short_hash(*files.values())}/"
        for file, data in files.items():
            self._put(self.assets[name] + file, data, None)

    def put_named(self, path: str, data: bytes) -> None:
        """Under its own name, with a revision so that a change is noticed."""
        self._put(path, data, short_hash(data))

    def _put(self, path: str, data: bytes, revision: str | None) -> None:
        self.files[path] = data
        self.precached.append({"url": path, "revision": revision})

    def fill(self, text: str, words: dict[str, str]) -> str:
        """Put values for {{ asset('name') }} and {{ word }}."""

        def value(found: re.Match[str]) -> str:
            if found["asset"] and found["asset"] in self.assets:
                return "./" + self.assets[found["asset"]]
            if found["word"] in words:
                return words[found["word"]]
            raise Failed(f"There is nothing to put for {found[0]}. Known: {', '.join([*self.assets, *words])}.")

        return PLACEHOLDER.sub(value, text)


def short_hash(*contents: bytes) -> str:
    total = hashlib.sha256()
    for data in contents:
        total.update(data)
    return total.hexdigest()[:12]
