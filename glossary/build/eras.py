"""Build glossary/eras.tsv from CLDR and eras_by_hand.tsv.

Run: ``python glossary/build/eras.py CORE FULL`` with the unpacked npm packages ``cldr-core``
(start days) and ``cldr-cal-japanese-full`` (names).
"""

from __future__ import annotations

import csv
import json
import re
import sys
from pathlib import Path

import jaconv

HERE = Path(__file__).parent
TABLE = HERE.parent / "eras.tsv"
COLUMNS = ("era", "kana", "romaji", "also", "court", "year", "month", "day", "last", "note")
HEADER = """\
# The eras (nengo) of Japan since 645, those of the northern and the southern court told apart.
# columns: era; kana; romaji (modified Hepburn); also (other readings met with, separated by ; );
#   court (north, south, empty: the whole country); year, month, day (its first day: lunisolar
#   up to 1872, Gregorian after; year = the western year in which year 1 began); last (the last
#   year counted in it: the year in which the next one began; empty for the era that runs); note
# Source: Unicode CLDR 48 (calendarData.json, ca-japanese.json; Unicode licence v3); the northern
#   court, the last years of the earliest eras and some readings from memory
#   (glossary/build/eras_by_hand.tsv).
# Rebuild: python glossary/build/eras.py CLDR-CORE CLDR-CAL-JAPANESE-FULL (unpacked npm packages)
"""


def cldr(core: Path, full: Path) -> dict[str, dict[str, str]]:
    """Return the eras of CLDR by name, as rows of the table."""
    data = json.loads((core / "supplemental/calendarData.json").read_text("utf-8"))
    starts = data["supplemental"]["calendarData"]["japanese"]["eras"]
    japanese, english = (names(full, language) for language in ("ja", "en"))
    return {
        japanese[code]: {
            "romaji": plain(english[code]),
            "start": "-".join(str(int(part)) for part in starts[code]["_start"].split("-")),
        }
        for code in japanese
    }


def names(full: Path, language: str) -> dict[str, str]:
    """Return the era names of a language by CLDR's number."""
    data = json.loads((full / f"main/{language}/ca-japanese.json").read_text("utf-8"))
    eras = data["main"][language]["dates"]["calendars"]["japanese"]["eras"]["eraNames"]
    return {code: name for code, name in eras.items() if code.isdigit()}


def plain(name: str) -> str:
    """Return an English name without its years, the syllable mark as an apostrophe."""
    return re.sub(r" \(.*", "", name).replace("’", "'")


def kana_of(romaji: str) -> str:
    """Return the kana of an era's name; a long o is おう and a long u うう in all of them."""
    letters = romaji.lower().replace("-", "")
    for long, short in (("ō", "ou"), ("ū", "uu"), ("nn", "n'n"), ("nm", "n'm"), ("np", "n'p")):
        letters = letters.replace(long, short)
    return jaconv.alphabet2kana(letters.replace("nb", "n'b").replace("n'", "ん"))


def by_hand() -> list[dict[str, str]]:
    """Return the rows of the corrections."""
    with (HERE / "eras_by_hand.tsv").open(encoding="utf-8", newline="") as file:
        lines = [line for line in file if not line.startswith("#")]
    return list(csv.DictReader(lines, delimiter="\t"))


def table(eras: dict[str, dict[str, str]]) -> list[dict[str, str]]:
    """Return the rows of the table in the order of their first days."""
    for row in by_hand():
        entry = eras.setdefault(row["era"], {})
        entry.update({key: cell for key, cell in row.items() if cell})
    result = []
    for era, entry in eras.items():
        year, month, day = entry["start"].split("-")
        kana = kana_of(entry["romaji"])
        facts = {"era": era, "kana": kana, "year": year, "month": month, "day": day}
        row = {column: entry.get(column, "") for column in COLUMNS} | facts
        also = (name for name in row["also"].split("; ") if name != row["romaji"])
        result.append(row | {"also": "; ".join(also)})
    result.sort(key=lambda row: tuple(int(row[part]) for part in ("year", "month", "day")))
    close(result)
    return result


def close(rows: list[dict[str, str]]) -> None:
    """Fill in the last year of each era: that in which the next of its court began."""
    for index, row in enumerate(rows):
        court = row["court"]
        following = (after for after in rows[index + 1 :] if after["court"] in (court, ""))
        successor = next(following, None)
        if not row["last"] and successor:
            row["last"] = successor["year"]


if __name__ == "__main__":
    rows = table(cldr(Path(sys.argv[1]), Path(sys.argv[2])))
    lines = ["\t".join(row[column] for column in COLUMNS) for row in rows]
    text = HEADER + "\t".join(COLUMNS) + "\n" + "\n".join(lines) + "\n"
    TABLE.write_text(text, encoding="utf-8")
    print(f"{len(rows)} eras written to {TABLE}")
