"""What somebody noted of a batch, of a piece or of the chamber, in words or as a photo."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import matches_re, max_len, optional

MOST_WORDS = 500


@frozen
class NoteTaken:
    """photo: the name of its file, the SHA-256; None where there is none. Words, a photo, or both."""

    KIND = "note-taken"

    words: str = field(default="", validator=max_len(MOST_WORDS))
    photo: str | None = field(default=None, validator=optional(matches_re("[0-9a-f]{64}")))


Fact = NoteTaken
