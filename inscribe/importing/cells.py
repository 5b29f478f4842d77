"""What a cell says: a size in mm, a day, a year, a usual word.

>>> millimetres("9,7 cm"), millimetres("97.2"), millimetres("3寸2分"), millimetres("約９７ｍｍ")
(97.0, 97.2, 97.0, 97.0)
>>> day("5.3.2019"), day("2019/3/5")
(datetime.date(2019, 3, 5), datetime.date(2019, 3, 5))
"""

from __future__ import annotations

import re
from datetime import date
from unicodedata import normalize

from inscribe.record import suggested

# 1 shaku is 10/33 m by the law of weights and measures of 1891; 10 sun, 100 bu.
SUN = 1000 / 33
UNITS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "寸": SUN, "分": SUN / 10, "ミリ": 1.0, "センチ": 10.0}
_NUMBER = r"\d+(?:[.,]\d+)?"
_UNIT = "|".join(sorted(UNITS, key=len, reverse=True))
_SIZE = re.compile(rf"(?:約|ca\.?|c\.|~|約)?\s*({_NUMBER})\s*({_UNIT})?", re.IGNORECASE)
_SUN = re.compile(rf"(?:約)?\s*(?:({_NUMBER})\s*寸)?\s*(?:({_NUMBER})\s*分)?")
_DIVIDER = re.compile(r"\s*(?:[x×✕✖*/]|by|;)\s*", re.IGNORECASE)
_DAYS = (
    re.compile(r"(?P<y>\d{4})[-/.年](?P<m>\d{1,2})[-/.月](?P<d>\d{1,2})日?"),
    re.compile(r"(?P<d>\d{1,2})\.\s?(?P<m>\d{1,2})\.\s?(?P<y>\d{4})"),
)


def millimetres(cell: str, unit: str = "") -> float | None:
    """Return a size in mm, or None where the cell says none; ``unit`` is that of the heading."""
    said = normalize("NFKC", cell).strip()
    if ("寸" in said or "分" in said) and (found := _SUN.fullmatch(said)):
        sun, bu = (_number(part) if part else 0.0 for part in found.groups())
        return round(sun * SUN + bu * SUN / 10, 1)
    found = _SIZE.fullmatch(said)
    if found is None:
        return None
    return round(_number(found[1]) * UNITS[(found[2] or unit or "mm").lower()], 2)


def sizes(cell: str, unit: str = "") -> tuple[float, ...] | None:
    """Return sizes that stand in one cell, as 97 x 14.2 mm; None where it says none.

    >>> sizes("9.7×1.42 cm"), sizes("97 x 14.2")
    ((97.0, 14.2), (97.0, 14.2))
    """
    parts = _DIVIDER.split(normalize("NFKC", cell).strip())
    last = re.search(rf"({_UNIT})$", parts[-1], re.IGNORECASE)
    common = last[1].lower() if last else unit
    found = [millimetres(part, common) for part in parts]
    return None if None in found else tuple(size for size in found if size is not None)


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def unit_of(heading: str) -> str:
    """Return the unit that a heading names.

    >>> unit_of("Länge (cm)"), unit_of("縦㎜"), unit_of("Höhe")
    ('cm', 'mm', '')
    """
    said = normalize("NFKC", heading).lower()
    found = re.search(r"(?<![a-z])(mm|cm)(?![a-z])|(寸|ミリ|センチ)", said)
    return (found[1] or found[2]) if found else ""


def day(cell: str) -> date | None:
    """Return the day that a cell names, or None."""
    said = normalize("NFKC", cell).strip()
    for pattern in _DAYS:
        if found := pattern.fullmatch(said):
            try:
                return date(int(found["y"]), int(found["m"]), int(found["d"]))
            except ValueError:
                return None
    return None


def year(cell: str) -> int | None:
    """Return a western year, or None."""
    found = re.fullmatch(r"(?:ca\.?|c\.|um|約)?\s*(\d{3,4})\s*年?", normalize("NFKC", cell).strip())
    return int(found[1]) if found else None


def usual_word(field: str, cell: str) -> str:
    """Return the usual word of a record's key for a word in Japanese or in other capitals.

    >>> usual_word("kind", "小柄"), usual_word("kind", "KOZUKA"), usual_word("kind", "Dolch")
    ('kozuka', 'kozuka', 'Dolch')
    """
    said = normalize("NFKC", cell).strip()
    for word in suggested(field):
        if said.casefold() == word.word.casefold() or said == word.japanese:
            return word.word
    return cell.strip()
