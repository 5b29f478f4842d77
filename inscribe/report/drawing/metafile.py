"""A drawing as an enhanced metafile (EMF), which word processors of every age show.

The drawings of this room are made of rectangles, ellipses, polygons, lines and text; each becomes
one record. Source: [MS-EMF], Microsoft's published specification of the format.
"""

from __future__ import annotations

import struct
import xml.etree.ElementTree as ET
from collections.abc import Iterable
from typing import NamedTuple

INK = 0x181B1D  # colours as the format has them: blue, green, red
QUIET = 0x2F373A
METAL = 0xE3EAEC
WHITE = 0xFFFFFF
SOLID, DASH, DOT = 0, 1, 2
NO_BRUSH = 0x80000005
SIGNS, LETTERS = "Yu Mincho", "Georgia"
BELOW = 0.37  # from the middle of a sign to its base line, as a share of its size; from memory


class Look(NamedTuple):
    """How shapes of one class are drawn; ``fill`` None where their ground shows."""

    pen: int = SOLID
    fill: int | None = None


LOOKS = {
    "plate": Look(SOLID, METAL),
    "opening": Look(SOLID, WHITE),
    "frame": Look(DASH, WHITE),
    "unsure": Look(DOT),
    "leader": Look(DOT),
    "caret": Look(SOLID, INK),
}


def as_metafile(svg: str) -> bytes:
    """Return a drawing of this room as EMF."""
    root = ET.fromstring(svg)
    sheet = _Records()
    width, height = (float(side) for side in root.attrib["viewBox"].split()[2:])
    mm = (_mm(root.attrib["width"]), _mm(root.attrib["height"]))
    for element in root:
        sheet.draw(element)
    return sheet.file(round(width), round(height), mm)


def _mm(text: str) -> float:
    return float(text.removesuffix("mm"))


class _Records:
    """The records of a metafile in the making."""

    def __init__(self) -> None:
        self.made: list[bytes] = []
        self.handles = 0

    def add(self, kind: int, data: bytes) -> None:
        self.made.append(struct.pack("<II", kind, 8 + len(data)) + data)

    def draw(self, element: ET.Element) -> None:
        """Add what draws one element of the drawing; those that draw nothing are passed over."""
        kind = element.tag.rpartition("}")[2]
        held = {key: element.get(key, "") for key in element.attrib}
        name = held.get("class", "")
        if kind == "text":
            self._text(element.text or "", held, name)
            return
        if kind not in ("rect", "ellipse", "polygon", "line"):
            return
        used = self._select(LOOKS.get(name, Look()))
        if kind == "rect":
            x, y, width, height = (float(held[key]) for key in ("x", "y", "width", "height"))
            self.add(43, _whole(x, y, x + width, y + height))
        elif kind == "ellipse":
            x, y, across, down = (float(held[key]) for key in ("cx", "cy", "rx", "ry"))
            self.add(42, _whole(x - across, y - down, x + across, y + down))
        elif kind == "polygon":
            self._polygon([tuple(map(float, p.split(","))) for p in held["points"].split()])
        else:
            x1, y1, x2, y2 = (float(held[key]) for key in ("x1", "y1", "x2", "y2"))
            self.add(27, _whole(x1, y1))
            self.add(54, _whole(x2, y2))
        self._drop(used)

    def _select(self, look: Look) -> list[int]:
        """Take up pen and brush; return the handles to give back."""
        self.add(38, struct.pack("<IIiiI", 1, look.pen, 1, 0, INK))
        self.add(37, struct.pack("<I", 1))
        used = [1]
        if look.fill is None:
            self.add(37, struct.pack("<I", NO_BRUSH))
        else:
            self.add(39, struct.pack("<IIII", 2, 0, look.fill, 0))
            self.add(37, struct.pack("<I", 2))
            used.append(2)
        return used

    def _drop(self, used: Iterable[int]) -> None:
        self.add(37, struct.pack("<I", 0x80000007))  # the stock pen and brush in their place
        self.add(37, struct.pack("<I", 0x80000000))
        for handle in used:
            self.add(40, struct.pack("<I", handle))

    def _polygon(self, points: list[tuple[float, ...]]) -> None:
        data = b"".join(struct.pack("<hh", round(x), round(y)) for x, y in points)
        self.add(86, _whole(0, 0, 0, 0) + struct.pack("<I", len(points)) + data)

    def _text(self, text: str, held: dict[str, str], name: str) -> None:
        size = float(held["font-size"])
        face = LETTERS if name == "label" else SIGNS
        font = struct.pack("<iiiii8B", -round(size), 0, 0, 0, 400, 0, 0, 0, 1, 0, 0, 0, 0)
        font += _wide(face, 32) + bytes(228)
        self.add(82, struct.pack("<I", 3) + font)
        self.add(37, struct.pack("<I", 3))
        self.add(24, struct.pack("<I", INK if name == "sign" else QUIET))
        units = text.encode("utf-16-le")
        count, padded = len(units) // 2, units + bytes(-len(units) % 4)
        x, y = round(float(held["x"])), round(float(held["y"]) + size * BELOW)
        data = _whole(0, 0, 0, 0) + struct.pack("<Iff", 1, 1.0, 1.0)
        data += struct.pack("<iiIII", x, y, count, 76, 0) + _whole(0, 0, 0, 0)
        data += struct.pack("<I", 76 + len(padded)) + padded
        data += (
            struct.pack(f"<{count}I", *[round(size)] * count)
            if name != "label"
            else (struct.pack(f"<{count}I", *[round(size * 0.5)] * count))
        )
        self.add(84, data)
        self.add(37, struct.pack("<I", 0x8000000D))  # the system's font in its place
        self.add(40, struct.pack("<I", 3))

    def file(self, width: int, height: int, mm: tuple[float, float]) -> bytes:
        """Return the whole file; ``width`` and ``height`` are in units, ``mm`` the true size."""
        before = [
            struct.pack("<III", 17, 12, 8),  # units of our own
            struct.pack("<IIii", 10, 16, 0, 0),
            struct.pack("<IIii", 9, 16, width, height),
            struct.pack("<IIii", 12, 16, 0, 0),
            struct.pack("<IIii", 11, 16, width, height),
            struct.pack("<III", 18, 12, 1),  # the ground shows through text
            struct.pack("<III", 22, 12, 30),  # text is centred on its base line
        ]
        end = struct.pack("<IIIII", 14, 20, 0, 16, 20)
        body = b"".join([*before, *self.made, end])
        count = len(before) + len(self.made) + 2
        frame = _whole(0, 0, mm[0] * 100, mm[1] * 100)
        head = _whole(0, 0, width, height) + frame
        head += struct.pack("<IIIIHHIII", 0x464D4520, 0x10000, 88 + len(body), count, 4, 0, 0, 0, 0)
        head += struct.pack("<ii", width, height) + _whole(*mm)
        return struct.pack("<II", 1, 88) + head + body


def _whole(*numbers: float) -> bytes:
    return struct.pack(f"<{len(numbers)}i", *map(round, numbers))


def _wide(text: str, length: int) -> bytes:
    data = text.encode("utf-16-le")
    return data + bytes(2 * length - len(data))
