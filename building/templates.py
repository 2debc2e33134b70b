"""The templates as Python modules, for Jinja's own ModuleLoader: the tablet need not compile them as it starts."""

from collections.abc import Iterator

from jinja2 import ModuleLoader

from building.paths import WEB, shown
from core.daybook.book import Book
from web.app import COMPILED, create_app

SOURCES = WEB / "templates"


def compiled() -> Iterator[tuple[str, bytes]]:
    """With the application's own settings, which decide what the code looks like."""
    environment = create_app(Book()).jinja_env
    for path in sorted(SOURCES.rglob("*.html")):
        name = path.relative_to(SOURCES).as_posix()
        source = path.read_text(encoding="utf-8")
        code = environment.compile(source, name, shown(path), raw=True, defer_init=True)  # as ModuleLoader wants it
        yield f"{shown(COMPILED)}/{ModuleLoader.get_module_filename(name)}", code.encode()
