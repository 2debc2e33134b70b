"""Who is asking, and how they want to be answered: unit system, decimal mark, theme, and what their clock says.

The page sends its settings as cookies and its local time as a header; under a plain server the system clock stands in.
"""

from __future__ import annotations

import re
import secrets
from datetime import datetime, tzinfo
from typing import Literal

from flask import Response, g, request

from core.daybook.due.copies import Copied
from core.daybook.entries import MOST_LETTERS
from core.language import ENGLISH
from core.quantities import Reader
from core.shipped import spoken_here

_DEVICE_ID = re.compile("[0-9a-f]{16}")
_COPIED = re.compile("([0-9]{1,10})-([0-9]{1,9})")
TEN_YEARS_S = 10 * 365 * 86400
CLOCK_HEADER = "Daybook-Now"
THEN_HEADER = "Daybook-Then"
KEPT_HEADER = "Daybook-Kept"
THEMES = ("auto", "light", "dark")
KEYS = ("page", "tablet")


def reader() -> Reader:
    system: Literal["metric", "us"] = "us" if request.cookies.get("units") == "us" else "metric"
    language = spoken_here(request.cookies.get("language", ENGLISH))
    return Reader(system, "," if request.cookies.get("decimal") == "comma" else ".", language)


def theme() -> str:
    chosen = request.cookies.get("theme", "auto")
    return chosen if chosen in THEMES else "auto"


def keys() -> str:
    """Whose number keys come to a box: the page's own, unless it was set otherwise."""
    return "tablet" if request.cookies.get("keys") == "tablet" else "page"


def now() -> datetime:
    """The visitor's own local time with its offset; the worker knows no time zones of its own."""
    try:
        moment = datetime.fromisoformat(request.headers.get(CLOCK_HEADER, ""))
    except ValueError:
        return datetime.now().astimezone()
    return moment if moment.utcoffset() is not None else moment.astimezone()


def offset_at(typed: datetime) -> tzinfo | None:
    """The offset her clock had at a moment she typed: on the other side of a clock change it is not today's."""
    try:
        then = datetime.fromisoformat(request.headers.get(THEN_HEADER, ""))
    except ValueError:
        return now().tzinfo
    same = then.replace(second=0, microsecond=0, tzinfo=None) == typed.replace(second=0, microsecond=0)
    return then.tzinfo if same and then.utcoffset() is not None else now().tzinfo


def device() -> str:
    """This tablet's own id: made by chance when it first writes, and kept by the page as its settings are."""
    known = request.cookies.get("device", "")
    if _DEVICE_ID.fullmatch(known):
        return known
    if "device" not in g:
        g.device = secrets.token_hex(8)
    return g.device


def new_device() -> str | None:
    """The id that this request made, for the page to keep."""
    return g.pop("device", None)


def writer() -> str:
    """Who writes, where they said so; else nothing."""
    return request.cookies.get("writer", "")[:MOST_LETTERS]


def from_today() -> bool:
    """Whether a line of Today opened this form: it leads back there."""
    return request.values.get("from") == "today"


def keep_copied(response: Response, entries: int) -> None:
    """Kept on the device and not in the book: a copy is of this device's book, and cannot hold the entry that tells of
    it; read in elsewhere, such an entry would speak of a copy that nobody has there."""
    value = f"{int(now().timestamp())}-{entries}"
    response.set_cookie("copied", value, max_age=TEN_YEARS_S, samesite="Lax")


def copied() -> Copied | None:
    """The last copy that was saved on this device."""
    found = _COPIED.fullmatch(request.cookies.get("copied", ""))
    return None if found is None else Copied(datetime.fromtimestamp(int(found[1]), now().tzinfo), int(found[2]))


def kept() -> str:
    """What the browser answered when asked to keep the entries: "yes", "no" or "unknown"."""
    answer = request.headers.get(KEPT_HEADER, "unknown")
    return answer if answer in ("yes", "no") else "unknown"
