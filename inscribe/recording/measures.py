"""Lengths as people type them: 97,2 or 97.2 mm, 9.7 cm, 七寸二分, 3寸2分半.

>>> mm_of("97,2"), mm_of("９７．２ mm"), mm_of("9.72cm"), mm_of("wide")
(97.2, 97.2, 97.2, None)
>>> mm_of("七寸"), mm_of("二寸三分半"), converted("七寸"), converted("97.2")
(212.1, 71.2, '212.1 mm', '')
"""

from __future__ import annotations

import re

from inscribe import tables
from inscribe.dates.written import value_of
from inscribe.recording.typed import plain

_NUMBER = r"\d+(?:[.,]\d+)?|[.,]\d+|[〇一二三四五六七八九十百廿卅]+"
_PART = re.compile(rf"\s*({_NUMBER})\s*([^\d\s.,〇一二三四五六七八九十百廿卅半]*)(半)?")
_BETWEEN = re.compile(r"\s*(?:;|/|[-–—~〜]|\bto\b)\s*|\s+")
_DECIMALS = 1  # of a length that was converted: callipers tell no more


def mm_of(typed: str) -> float | None:
    """Return a length in mm, or None where none is typed; without a unit it is in mm."""
    text = plain(typed).lower()
    total, at, units = 0.0, 0, 0
    while at < len(text):
        found = _PART.match(text, at)
        if found is None:
            return None
        number, unit, half = _number(found[1]), found[2], bool(found[3])
        factor = _units().get(unit) if unit else None
        if number is None or (unit and factor is None) or (not unit and (units or half)):
            return None
        if not unit:
            return number if found.end() == len(text) else None
        units += 1
        total += (number + 0.5 * half) * (factor or 1.0)
        at = found.end()
        at += len(text[at:]) - len(text[at:].lstrip())
    return round(total, _DECIMALS if _is_japanese(text) else 4) if units else None


def extent_of(typed: str) -> tuple[float, float] | None:
    """Return two lengths in mm: 5 89.5, 5,0 - 89,5, 二分 から is none.

    >>> extent_of("5 89.5"), extent_of("5,0-89,5"), extent_of("５．０　８９．５"), extent_of("5")
    ((5.0, 89.5), (5.0, 89.5), (5.0, 89.5), None)
    """
    text = re.sub(r"(?<=\d)\s+(?=[a-z㎜㎝])", "", plain(typed).lower())
    parts = [part for part in _BETWEEN.split(text) if part]
    sizes = [mm_of(part) for part in parts]
    if len(sizes) != 2 or sizes[0] is None or sizes[1] is None:
        return None
    return sizes[0], sizes[1]


def converted(typed: str) -> str:
    """Return a length in mm as it is to be shown, or nothing where it was typed just so."""
    size = mm_of(typed)
    if size is None or re.fullmatch(r"\d+(\.\d+)?( ?mm)?", typed.strip()):
        return ""
    return f"{size:g} mm"


def _number(written: str) -> float | None:
    if written[0].isdecimal() or written[0] in ".,":
        return float(written.replace(",", "."))
    value = value_of(written)
    return None if value is None else float(value)


def _is_japanese(text: str) -> bool:
    return any(unit in text for unit in ("尺", "寸", "分", "厘", "shaku", "sun", "bu", "rin"))


@tables.cached()
def _units() -> dict[str, float]:
    return {
        written: float(row["mm"])
        for row in tables.rows("units")
        for written in tables.listed(row["written"])
    }


@tables.cached()
def sizes_of(kind: str) -> tuple[str, ...]:
    """Return what is measured of a kind of fitting; everything, where that is not known.

    >>> sizes_of("tsuba")
    ('height', 'width', 'thickness')
    """
    for row in tables.rows("fitting_sizes"):
        if row["kind"] == kind:
            return tuple(tables.listed(row["sizes"]))
    return ("length", "width", "height", "thickness", "diameter")
