"""The two faces the pages are set in, as they come from npm: only the letters of the Latin alphabets are shipped."""

from building.paths import MODULES
from building.placing import Site
from building.running import Failed

_PACKAGES = MODULES / "@fontsource-variable"
_SERIF = "source-serif-4/files/source-serif-4-{}-wght-normal.woff2"
_SANS = "atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-{}-wght-normal.woff2"
FACES = {
    "serif.woff2": _SERIF.format("latin"),
    "serif-extended.woff2": _SERIF.format("latin-ext"),
    "sans.woff2": _SANS.format("latin"),
    "sans-extended.woff2": _SANS.format("latin-ext"),
}
"""The name in web/static/faces.css → the file of the package. Both are under the SIL Open Font License 1.1."""
LICENCES = {
    "serif-licence.txt": "source-serif-4/LICENSE",
    "sans-licence.txt": "atkinson-hyperlegible-next/LICENSE",
}


def add_faces(site: Site) -> None:
    for name, file in (FACES | LICENCES).items():
        path = _PACKAGES / file
        if not path.exists():
            raise Failed(f"{path.name} is missing. Delete web/node_modules and run again.")
        site.put_hashed(name, name, path.read_bytes())


def named_as_placed(style: bytes, site: Site) -> bytes:
    """The faces stand beside the style sheet, under the names that their content gave them."""
    for name in FACES:
        style = style.replace(name.encode(), site.assets[name].rpartition("/")[2].encode())
    return style
