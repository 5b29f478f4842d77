"""Build surname_counts.tsv: how many persons of ENAMDICT have a surname read so.

Needs the Debian package enamdict. Of each person ENAMDICT writes the name in Latin letters, the
family first (星野立子, Hoshino Tatsuko): that tells where the family ends, in the signs and in the
kana. Kept are the surnames that ENAMDICT or UniDic read in several ways; no person is kept.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict

from name_dictionary import KANA, NAME
from name_statistics import hiragana
from sources import ENAMDICT, listed

from inscribe.forms import normalise_text
from inscribe.reading.spelling import hepburn

ENTRY = re.compile(r"(\S+) \[([^]]+)\] /\(([a-z,]+)\) ([A-Z][a-z']+)")
LONGEST = 4

Families = dict[str, set[str]]


def families() -> Families:
    """Return the readings of each surname, as written."""
    found: Families = defaultdict(set)
    for written, kana, codes, _ in entries():
        if "s" in codes:
            found[written].add(kana)
    return found


def entries() -> list[tuple[str, str, set[str], str]]:
    """Return writing, kana, classes and first Latin word of the entries of ENAMDICT."""
    with ENAMDICT.open(encoding="euc_jp", errors="ignore") as lines:
        found = [entry for line in lines if (entry := ENTRY.match(line))]
    return [(e[1], hiragana(e[2]), set(e[3].split(",")), e[4].lower()) for e in found]


def spelt(kana: str) -> str:
    """Return kana in the Latin letters of ENAMDICT, whose long vowels are spelt out."""
    return "".join(hepburn(sign) for sign in re.findall("っ?[ぁ-ゖー][ゃゅょ]?", kana))


def counted() -> dict[str, Counter[str]]:
    """Return the number of persons by surname, in current forms, and reading."""
    known = families()
    found: dict[str, Counter[str]] = defaultdict(Counter)
    for written, kana, codes, latin in entries():
        if "h" not in codes:
            continue
        for length in range(min(LONGEST, len(written) - 1), 0, -1):
            ways = known.get(written[:length], ())
            said = [way for way in ways if kana.startswith(way) and spelt(way) == latin]
            if said:
                found[normalise_text(written[:length]).text].update(said[:1])
                break
    return found


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    several = {
        normalise_text(written).text for written, ways in families().items() if len(ways) > 1
    }
    rows = []
    for written, ways in sorted(counted().items()):
        if written in several and NAME.fullmatch(written):
            kept = [(k, n) for k, n in ways.most_common() if KANA.fullmatch(k)]
            rows.append((written, listed(f"{kana}:{number}" for kana, number in kept)))
    return {"surname_counts": rows}
