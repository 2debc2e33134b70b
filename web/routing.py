"""Which view answers which path.

From its sources the app imports every screen and asks it. What the build ships has the answer written down
(web/_routes.py): there a screen is imported when it is first asked for, or between two requests. Importing all of them
first was half of the app's start.
"""

from __future__ import annotations

import pkgutil
from collections.abc import Callable, Iterator
from importlib import import_module
from types import ModuleType
from typing import Any

from flask import Blueprint, Flask

from web import screens

Route = tuple[str, str, tuple[str, ...], str, str]
"""Rule, endpoint, methods, module and name of the view."""


def _written_down() -> ModuleType | None:
    try:
        return import_module("web._routes")
    except ImportError:
        return None


written_down = _written_down()


def lay_routes(app: Flask) -> None:
    if written_down is None:
        for blueprint in _blueprints():
            app.register_blueprint(blueprint)
        return
    routes: tuple[Route, ...] = written_down.ROUTES
    for rule, endpoint, methods, module, name in routes:
        if endpoint not in app.view_functions:
            app.add_url_rule(rule, endpoint, _when_asked(module, name), methods=methods)
        else:
            app.add_url_rule(rule, endpoint, methods=methods)


def routes_of(app: Flask) -> Iterator[Route]:
    """What a started app has to write down. Raises LookupError on a view that could not be found again by its name."""
    for rule in app.url_map.iter_rules():
        view = app.view_functions[rule.endpoint]
        if getattr(import_module(view.__module__), view.__name__, None) is not view:
            raise LookupError(f"{rule.endpoint} is no plain function of {view.__module__}.")
        methods = sorted((rule.methods or set()) - {"HEAD", "OPTIONS"})
        yield rule.rule, rule.endpoint, tuple(methods), view.__module__, view.__name__


def screen_modules() -> list[str]:
    """The full names of all modules of web.screens."""
    if written_down is not None:
        return written_down.SCREENS
    return [found.name for found in pkgutil.walk_packages(screens.__path__, f"{screens.__name__}.")]


def import_every_screen() -> None:
    for name in screen_modules():
        import_module(name)


def _blueprints() -> list[Blueprint]:
    """Every screen's blueprint, with all its routes: each module of screens has been imported then."""
    modules = [import_module(name) for name in screen_modules()]
    found = (getattr(module, "screen", None) for module in modules)
    return list({id(each): each for each in found if isinstance(each, Blueprint)}.values())


def _when_asked(module: str, name: str) -> Callable[..., Any]:
    def view(**address: Any) -> Any:
        return getattr(import_module(module), name)(**address)

    return view
