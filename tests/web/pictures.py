"""Pictures made by hand: a JPEG's segments without a picture worth seeing, with what a camera writes beside it."""

PLACE = b"Exif\0\0GPS 47.1 N 8.5 E"


def segment(marker: int, data: bytes) -> bytes:
    return bytes((0xFF, marker)) + (len(data) + 2).to_bytes(2, "big") + data


def jpeg(*beside: bytes, rows: bytes = b"\x12\x34") -> bytes:
    """beside: what stands between its head and its frame."""
    head = segment(0xE0, b"JFIF\0\x01\x01\0\0\x01\0\x01\0\0")
    frame = segment(0xC0, b"\x08\0\x10\0\x10\x01\x01\x11\0")
    return b"".join((b"\xff\xd8", head, *beside, frame, segment(0xDA, b"\x01\x01\0\0\x3f\0"), rows, b"\xff\xd9"))
