"""Build surnames.tsv and place_names.tsv from the names in UniDic.

Needs unidic-lite (UniDic 2.1.2, BSD licence).
"""

from __future__ import annotations

from collections import defaultdict

from name_statistics import unidic_entries
from sources import listed

LONGEST = 4


def item(written: str, readings: dict[str, int]) -> str:
    """Return WRITTEN=KANA:COST/KANA:COST, the likelier reading first.

    みわの beside みわ is the name with the particle of old clans, no reading of its own.
    """
    ranked = sorted(readings.items(), key=lambda entry: entry[1])
    shown = [
        f"{kana}:{cost}"
        for kana, cost in ranked
        if not (kana.endswith("の") and kana[:-1] in readings)
    ]
    return f"{written}={'/'.join(shown)}"


def rows_of(sort: str) -> list[tuple[str, ...]]:
    """Return the names of one sort, a row for each first character."""
    names: dict[str, dict[str, int]] = defaultdict(dict)
    for _, written, kana, cost in unidic_entries(sort):
        if len(written) <= LONGEST:
            names[written][kana] = min(cost, names[written].get(kana, cost))
    by_first: dict[str, list[str]] = defaultdict(list)
    for written, readings in sorted(names.items()):
        by_first[written[0]].append(item(written, readings))
    return [(first, listed(items)) for first, items in by_first.items()]


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of both tables."""
    return {"surnames": rows_of("人名,姓"), "place_names": rows_of("地名,一般")}
