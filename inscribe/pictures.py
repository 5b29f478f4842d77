"""What a picture file is: its kind and its size in pixels as it is seen, read from its head.

Only kinds that browsers and word processors show: PNG, JPEG and GIF, each after its published
format (ISO/IEC 15948, ISO/IEC 10918-1, GIF89a). A telephone held upright stores a photograph lying
and says so (the tag Orientation of Exif, CIPA DC-008); browsers turn it.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}  # the JPEG segments that bear the size
_ALONE = frozenset({0x01, *range(0xD0, 0xD9)})  # those without a length
_EXIF = 0xE1  # the segment that may bear Exif
_ORIENTATION, _SHORT = 0x0112, 3  # the tag, and the type of its value


class PictureKind(NamedTuple):
    """A picture's media type, and its width and height in pixels as it is seen.

    ``orientation`` is Exif's: 1 is stored as it is seen, 2 to 8 are mirrored or turned.
    """

    media: str
    width: int
    height: int
    orientation: int = 1


def picture_kind(data: bytes) -> PictureKind | None:
    r"""Return what the bytes of a file are a picture of, or None where they are no such picture.

    >>> picture_kind(b"GIF89a\x02\x00\x03\x00")
    PictureKind(media='image/gif', width=2, height=3, orientation=1)
    """
    if data.startswith(b"\x89PNG\r\n\x1a\n") and len(data) >= 24:
        return _sized("image/png", _number(data[16:20]), _number(data[20:24]))
    if data.startswith((b"GIF87a", b"GIF89a")) and len(data) >= 10:
        return _sized("image/gif", _number(data[7:5:-1]), _number(data[9:7:-1]))
    if data.startswith(b"\xff\xd8"):
        return _jpeg(data)
    return None


def _jpeg(data: bytes) -> PictureKind | None:
    at, orientation = 2, 1
    while at + 9 <= len(data) and data[at] == 0xFF:
        kind = data[at + 1]
        if kind in _FRAMES:
            height, width = _number(data[at + 5 : at + 7]), _number(data[at + 7 : at + 9])
            seen = (height, width) if orientation > 4 else (width, height)
            return _sized("image/jpeg", *seen, orientation)
        if kind == 0xFF:  # a byte that only fills
            at += 1
            continue
        after = at + (2 if kind in _ALONE else 2 + _number(data[at + 2 : at + 4]))
        if kind == _EXIF and data.startswith(b"Exif\0\0", at + 4):
            orientation = _orientation(data[at + 10 : after])
        at = after
    return None


def _orientation(exif: bytes) -> int:
    """Return the orientation that Exif tells, 1 where it tells none that there is."""
    order: Literal["little", "big"] = "little" if exif.startswith(b"II") else "big"
    start = int.from_bytes(exif[4:8], order)
    count = int.from_bytes(exif[start : start + 2], order)
    for at in range(start + 2, min(start + 2 + 12 * count, len(exif) - 11), 12):
        tag, kind = (int.from_bytes(exif[at + n : at + n + 2], order) for n in (0, 2))
        if (tag, kind) == (_ORIENTATION, _SHORT):
            told = int.from_bytes(exif[at + 8 : at + 10], order)
            return told if 1 <= told <= 8 else 1
    return 1


def _sized(media: str, width: int, height: int, orientation: int = 1) -> PictureKind | None:
    return PictureKind(media, width, height, orientation) if width and height else None


def _number(data: bytes) -> int:
    return int.from_bytes(data, "big")
