"""Build glossary/dates/eras.tsv from CLDR and eras_by_hand.tsv.

Needs the npm packages ``cldr-core`` (start days) and ``cldr-cal-japanese-full`` (names), unpacked
in the folder that the environment variable CLDR names (by default node_modules).
"""

from __future__ import annotations

import csv
import json
import os
import re
from pathlib import Path

import jaconv
from sources import listed

from inscribe.descriptions import described
from inscribe.tables import SEPARATOR

CLDR = Path(os.environ.get("CLDR", "node_modules"))
HERE = Path(__file__).parent


def cldr() -> dict[str, dict[str, str]]:
    """Return the eras of CLDR by name, as rows of the table."""
    core, full = CLDR / "cldr-core", CLDR / "cldr-cal-japanese-full"
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
        entry = eras.setdefault(row["written"], {})
        entry.update({key: cell for key, cell in row.items() if cell})
    result = []
    for written, entry in eras.items():
        year, month, day = entry["start"].split("-")
        kana = kana_of(entry["romaji"])
        facts = {"written": written, "kana": kana, "year": year, "month": month, "day": day}
        row = {column: entry.get(column, "") for column in described("eras").columns} | facts
        also = (name for name in row["also"].split(SEPARATOR) if name != row["romaji"])
        result.append(row | {"also": listed(also)})
    result.sort(key=lambda row: tuple(int(row[part]) for part in ("year", "month", "day")))
    close(result)
    return result


def close(rows: list[dict[str, str]]) -> None:
    """Fill in the last year of each era: that in which the next of its court began."""
    for index, row in enumerate(rows):
        court = row["court"]
        following = (after for after in rows[index + 1 :] if after["court"] in (court, ""))
        successor = next(following, None)
        if not row["last_year"] and successor:
            row["last_year"] = successor["year"]


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    return {"eras": [tuple(row.values()) for row in table(cldr())]}
