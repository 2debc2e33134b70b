"""The app's routes as a Python module, so that what we ship need not import every screen to know them."""

from pprint import pformat

from core.daybook.book import Book
from web.app import create_app
from web.routing import routes_of, screen_modules

TEXT = '''"""Made by the build: see web/routing.py."""

ROUTES = {}

SCREENS = {}
'''


def written_down() -> tuple[str, bytes]:
    routes, screens = list(routes_of(create_app(Book()))), screen_modules()
    return "web/_routes.py", TEXT.format(pformat(routes, width=120), pformat(screens, width=120)).encode()
