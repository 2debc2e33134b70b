"""A photo that a form asks for: made small by the page, kept as a file beside the entry.

A camera writes beside the picture where and when it was taken, and by what. The page draws the picture anew without all
that, and what is kept is looked at once more.
"""

from __future__ import annotations

import re

from attrs import frozen
from flask import request

from core.quantities import Reader
from core.refusals import Refusal
from core.sentence import Message, Said
from web.files import keep_file

NO_PICTURE: Message = "That file is no picture this device can show. Take one with the camera, or choose a JPEG or PNG."
FILE_NAME = re.compile("[0-9a-f]{64}")
_BEGINS, _ENDS = b"\xff\xd8", b"\xff\xd9"
_ROWS = 0xDA
_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
_NEEDED = frozenset({0xE0, 0xE2, 0xEE})
"""How the colours are meant: JFIF, the colour profile, the way they are coded."""
_BESIDE = frozenset({*range(0xE0, 0xF0), 0xFE}) - _NEEDED
"""What is told beside the picture: EXIF with its place, XMP, a comment (ITU-T T.81, table B.1)."""


@frozen
class Photo:
    """A picture or none. Its text is the name of a file that is kept already."""

    key: str
    label: Said
    help: Said = ""
    optional: bool = True

    def read(self, text: str, reader: Reader) -> str | None:
        sent = request.files.get(self.key)
        if sent is None or not sent.filename:
            return text if FILE_NAME.fullmatch(text) else None
        sent.stream.seek(0)
        return keep_file(bare_jpeg(sent.stream.read(), self.key))


def bare_jpeg(data: bytes, field: str = "photo") -> bytes:
    """The picture, without what was told beside it. Raises a Refusal where it is no whole JPEG."""
    kept, at, has_frame = [data[:2]], 2, False
    if not (data.startswith(_BEGINS) and data.endswith(_ENDS)):
        raise Refusal(field, NO_PICTURE)
    while data[at : at + 1] == b"\xff" and at + 4 <= len(data):
        marker, end = data[at + 1], at + 2 + int.from_bytes(data[at + 2 : at + 4], "big")
        if marker == _ROWS and has_frame:
            return b"".join((*kept, data[at:]))
        has_frame = has_frame or marker in _FRAMES
        kept += [] if marker in _BESIDE else [data[at:end]]
        at = end
    raise Refusal(field, NO_PICTURE)
