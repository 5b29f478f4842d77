"""Build everyday_stems.tsv: how what stands before 兵衛 and 衛門 is read in everyday names.

Needs the Debian packages enamdict (version 2021.02.03) and kanjidic-xml. These names are read by
on-readings where other given names are not (清兵衛 Seibei, 清人 Kiyohito), but not all of them
(彦兵衛 Hikobei): so they are counted apart.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict

from name_statistics import hiragana, kanjidic_readings
from sources import enamdict, listed

from inscribe.forms import normalise_text

NAME = re.compile("(.)([郎良]?)(?:兵衛|[左右佐]?衛門)$")
ENDING = "(?:[べへぺ][えい]|[ひび]ょうえ|[ざさ]えもん|う?えもん)"
MEN = {"g", "m", "u", "h"}  # given names, unclassified ones, and persons with their family


def counted() -> dict[str, Counter[str]]:
    """Return the number of names by what stands before the ending (清, 三郎) and its reading."""
    known = kanjidic_readings()
    found: dict[str, Counter[str]] = defaultdict(Counter)
    for written, kana, codes in enamdict():
        where = NAME.search if "h" in codes else NAME.fullmatch
        name = where(normalise_text(written).text) if codes & MEN else None
        ways = sorted(known.get(name[1], ()), key=len, reverse=True) if name else ()
        if name and name[2]:
            ways = [f"{way}{son}" for way in ways for son in ("ろう", "ろ")]
        said = [way for way in ways if re.search(f"{way}{ENDING}$", hiragana(kana))]
        if name and said:
            found[name[1] + name[2]][said[0]] += 1
    return found


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    rows = [
        (stem, listed(f"{kana}:{number}" for kana, number in ways.most_common()))
        for stem, ways in sorted(counted().items())
    ]
    return {"everyday_stems": rows}
