"""What a kitchen seldom changes, asked once: the curing salt at hand, the rules it goes by, how high it lies.

Kept by the page with the other settings, in SI, from the last sum that used it. It is shown in its box, where it can
be changed; nothing of it is used unseen.
"""

from __future__ import annotations

from collections.abc import Mapping

from flask import request
from werkzeug.wrappers import Response

from core.quantities import Reader
from core.worksheet import Choice, Number, Worksheet
from web.forms import typed
from web.visitor import TEN_YEARS_S

COOKIE = "kitchen"
KEPT = {
    ("nitrite", "strength"): "nitrite",
    ("nitrate", "strength"): "nitrate",
    ("law", "choice"): "law",
    ("rule", "choice"): "rule",
    ("altitude", "altitude"): "altitude",
    ("altitude_m", "altitude"): "altitude",
}
"""Input and what it tells → what is kept of it. A curing salt's nitrite is not the nitrite that went in."""


def texts_for(sheet: Worksheet, reader: Reader) -> dict[str, str]:
    """What is known of this kitchen, as one would type it into the boxes of the sum."""
    known = _known()
    found = {each.key: _text(each, known.get(_name(each), ""), reader) for each in sheet.inputs}
    return {key: text for key, text in found.items() if text}


def keep(response: Response, sheet: Worksheet, values: Mapping[str, object]) -> None:
    """From a sum that came to an answer."""
    told = {_name(each): str(values[each.key]) for each in sheet.inputs if _is_told(each, values)}
    known = _known()
    if told.items() - known.items():
        kept = "&".join(f"{key}:{value}" for key, value in (known | told).items())
        response.set_cookie(COOKIE, kept, max_age=TEN_YEARS_S, samesite="Lax")


def _is_told(each: Number | Choice, values: Mapping[str, object]) -> bool:
    return _name(each) != "" and values.get(each.key) is not None


def _name(each: Number | Choice) -> str:
    return KEPT.get((each.key, "choice" if isinstance(each, Choice) else each.quantity.key), "")


def _known() -> dict[str, str]:
    pairs = (each.partition(":") for each in request.cookies.get(COOKIE, "").split("&"))
    return {key: value for key, _, value in pairs if key in KEPT.values()}


def _text(each: Number | Choice, kept: str, reader: Reader) -> str:
    if isinstance(each, Choice):
        return kept if kept in each.options else ""
    try:
        return typed(float(kept), each.quantity, reader) if kept else ""
    except (ValueError, OverflowError):  # a setting that some other hand has written
        return ""
