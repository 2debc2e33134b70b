"""One zip of dist/ to carry to a web host. The same dist gives the same bytes."""

import io
import zipfile
from pathlib import Path

from building.bytecode import add
from building.paths import BUILD, DIST
from building.site import version


def package() -> Path:
    target = BUILD / f"curing-daybook-{version()}.zip"
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w") as archive:
        for path in sorted(DIST.rglob("*")):
            if path.is_file():
                add(archive, path.relative_to(DIST).as_posix(), path.read_bytes())
    target.write_bytes(data.getvalue())
    return target
