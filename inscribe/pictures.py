"""What a picture file is: its kind and its size in pixels, read from its head.

Only kinds that browsers and word processors show: PNG, JPEG and GIF, each after its published
format (ISO/IEC 15948, ISO/IEC 10918-1, GIF89a).
"""

from __future__ import annotations

from typing import NamedTuple

_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}  # the JPEG segments that bear the size
_ALONE = frozenset({0x01, *range(0xD0, 0xD9)})  # those without a length


class PictureKind(NamedTuple):
    """A picture's media type, and its width and height in pixels."""

    media: str
    width: int
    height: int


def picture_kind(data: bytes) -> PictureKind | None:
    r"""Return what the bytes of a file are a picture of, or None where they are no such picture.

    >>> picture_kind(b"GIF89a\x02\x00\x03\x00")
    PictureKind(media='image/gif', width=2, height=3)
    """
    if data.startswith(b"\x89PNG\r\n\x1a\n") and len(data) >= 24:
        return _sized("image/png", _number(data[16:20]), _number(data[20:24]))
    if data.startswith((b"GIF87a", b"GIF89a")) and len(data) >= 10:
        return _sized("image/gif", _number(data[7:5:-1]), _number(data[9:7:-1]))
    if data.startswith(b"\xff\xd8"):
        return _jpeg(data)
    return None


def _jpeg(data: bytes) -> PictureKind | None:
    at = 2
    while at + 9 <= len(data) and data[at] == 0xFF:
        kind = data[at + 1]
        if kind in _FRAMES:
            return _sized(
                "image/jpeg", _number(data[at + 7 : at + 9]), _number(data[at + 5 : at + 7])
            )
        if kind == 0xFF:  # a byte that only fills
            at += 1
        else:
            at += 2 if kind in _ALONE else 2 + _number(data[at + 2 : at + 4])
    return None


def _sized(media: str, width: int, height: int) -> PictureKind | None:
    return PictureKind(media, width, height) if width and height else None


def _number(data: bytes) -> int:
    return int.from_bytes(data, "big")
