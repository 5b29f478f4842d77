"""Siddham letters: seed syllables on fittings, read as they are said in Japan.

A syllable that ``siddham.tsv`` lacks is spelt by the names that Unicode gives its letters.

>>> seed("𑖮𑖿𑖨𑖱𑖾").kana, seed("𑖀").kana, seed("𑖎𑖰").kana
('キリーク', 'ア', '')
>>> spelt("𑖎𑖰"), spelt("𑖮𑖿𑖨𑖱𑖾")
('ki', 'hrīḥ')
"""

from __future__ import annotations

import re
import unicodedata
from typing import NamedTuple

from inscribe import tables

SIDDHAM = re.compile("[\U00011580-\U000115ff]+")
_PREFIXES = ("LETTER ", "VOWEL SIGN ")
_SPELT = {"AA": "ā", "II": "ī", "UU": "ū", "VOCALIC R": "r̥", "NGA": "ṅa", "NYA": "ña"}
_SIGNS = {"ANUSVARA": "ṃ", "VISARGA": "ḥ", "CANDRABINDU": "m̐", "NUKTA": ""}


class Seed(NamedTuple):
    """A stretch of Siddham letters: how it is said (nothing if not known), whose seed it is."""

    written: str
    kana: str
    gloss: str


def is_siddham(sign: str) -> bool:
    """Return whether a sign is a Siddham letter."""
    return "\U00011580" <= sign[:1] <= "\U000115ff"


def seed(written: str) -> Seed:
    """Return what the table says of a seed syllable."""
    return _seeds().get(written, Seed(written, "", ""))


@tables.cached()
def _seeds() -> dict[str, Seed]:
    return {row["written"]: Seed(row["written"], row["kana"], row["gloss"]) for row in _rows()}


def _rows() -> tuple[dict[str, str], ...]:
    return tuple(tables.rows("siddham"))


def spelt(written: str) -> str:
    """Return Siddham letters in Latin ones, as their names in Unicode have them."""
    said = ""
    for sign in written:
        name = unicodedata.name(sign, "").removeprefix("SIDDHAM ")
        if name == "SIGN VIRAMA":
            said = said.removesuffix("a")
        elif name.startswith("SIGN "):
            said += _SIGNS.get(name.removeprefix("SIGN "), "")
        elif name.startswith("VOWEL SIGN "):
            said = said.removesuffix("a") + _letter(name)
        else:
            said += _letter(name)
    return said


def _letter(name: str) -> str:
    for prefix in _PREFIXES:
        name = name.removeprefix(prefix)
    return _SPELT.get(name, name.lower())
