"""Build surnames.tsv and place_names.tsv from the names in UniDic.

Run from the root of the checkout, with inscribe and unidic-lite installed (UniDic 2.1.2, BSD
licence): ``python glossary/build/name_lists.py``.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from name_statistics import unidic_entries

GLOSSARY = Path(__file__).parent.parent
LONGEST = 4
FORMAT = (
    "# first: the first character. names: those that begin with it (a row for each character, so\n"
    "# that the table loads quickly), each WRITTEN=KANA:COST/KANA:COST, the more usual reading\n"
    "# first; the cost is that of UniDic (lower is more frequent, or less like other words).\n"
)
SURNAMES = "# Surnames and their readings; no reading says which family is meant.\n"
PLACES = "# Names of places and their readings, for residences that cities.tsv does not list.\n"


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


def write(table: str, heading: str, sort: str) -> None:
    """Write the names of one sort, a row for each first character."""
    names: dict[str, dict[str, int]] = defaultdict(dict)
    for _, written, kana, cost in unidic_entries(sort):
        if len(written) <= LONGEST:
            names[written][kana] = min(cost, names[written].get(kana, cost))
    by_first: dict[str, list[str]] = defaultdict(list)
    for written, readings in sorted(names.items()):
        by_first[written[0]].append(item(written, readings))
    with (GLOSSARY / f"{table}.tsv").open("w", encoding="utf-8") as file:
        file.write(heading + FORMAT)
        file.write("# Source: unidic-lite 1.0.8 (UniDic 2.1.2, BSD licence), names of 1-4 kanji.\n")
        file.write("# Rebuild: python glossary/build/name_lists.py\nfirst\tnames\n")
        for first, items in by_first.items():
            file.write(f"{first}\t{' '.join(items)}\n")


if __name__ == "__main__":
    write("surnames", SURNAMES, "人名,姓")
    write("place_names", PLACES, "地名,一般")
