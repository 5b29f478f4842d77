"""Build name_dictionary.tsv from ENAMDICT, the dictionary of Japanese proper names of the EDRDG.

Needs the Debian packages enamdict (version 2021.02.03) and kanjidic-xml. Kept are names in kanji
(with ノ or ケ, ヶ being written ケ), in current forms: surnames of up to four signs, places of up
to three, given names of two and three; of the names that ENAMDICT leaves unclassified those of two.
A place that is another with 町, 村, 市 ... after it is left out: the program composes it.

ENAMDICT does not say which reading is usual. Those of a surname and of a place are ordered by how
UniDic's surnames and places read each sign in its place (沢 last: ざわ more often than さわ);
families mostly bear the name of a place, and one kind of reading (雁瀬 is かりせ before がんせ).
"""

from __future__ import annotations

import math
import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from functools import cached_property

from name_statistics import (
    LENGTHENING,
    VOWELS,
    Readings,
    divisions,
    hiragana,
    kanjidic_readings,
    repeats_expanded,
    unidic_entries,
)
from sources import enamdict, listed

from inscribe.forms import normalise_text

COLUMNS = {"surname": ("s",), "place": ("p",), "given": ("g", "m", "u")}
LENGTHS = {"s": (1, 4), "p": (1, 3), "g": (2, 3), "m": (2, 3), "u": (2, 2)}
KANJI = "[一-鿿㐀-䶿\U00020000-\U0003ffff々]"
NAME = re.compile(f"(?!々){KANJI}(?:[{KANJI[1:-1]}ノケ]*{KANJI})?")
KANA = re.compile("[ぁ-ゖー]+")
SORTS = {"surname": "人名,姓", "place": "地名"}
SEEN = 0.1  # what a reading counts for that UniDic's names of the sort do not have
ALSO_PLACE = 1.5  # what speaks for a surname's reading that a place of the same signs has
MIXED = 1.5  # what speaks against an on-reading beside a native one
UNDIVIDED = -9.0  # the likelihood of a reading that is not its signs' (薬袋 みない)
GROWTH = "生"
DIVISIONS = "町村市区郡駅線"

Names = dict[str, dict[str, dict[str, None]]]  # by writing, then by column, the readings in order


def names() -> Names:
    """Return every name that is kept, by its writing in current forms."""
    found: Names = defaultdict(lambda: defaultdict(dict))
    for written, kana, codes in enamdict():
        written = written.replace("ヶ", "ケ")
        if not NAME.fullmatch(written):
            continue
        current = normalise_text(repeats_expanded(written)).text
        for column, wanted in COLUMNS.items():
            lengths = [LENGTHS[code] for code in wanted if code in codes]
            if any(low <= len(current) <= high for low, high in lengths):
                found[current][column][hiragana(kana)] = None
    return found


def is_division(written: str, found: Names) -> bool:
    """Return whether a place is another with 町, 村, 市 ... after it."""
    rest = written[:-1]
    return len(written) > 2 and written[-1] in DIVISIONS and "place" in found.get(rest, {})


def ways(written: str, kana: str, readings: Readings) -> list[tuple[str, ...]]:
    """Return every way to divide the kana of a name among its signs that KANJIDIC2 allows."""
    found = []
    for _, division in divisions(written, kana, readings):
        rest, parts = kana, []
        for reading, _is_on in division:
            parts.append(rest[: len(reading)])
            rest = rest[len(reading) :]
        found.append(tuple(parts))
    return found


def marked(written: str, kana: str, readings: Readings) -> str:
    """Return a name with | before a vowel that looks long and is not: こ|うみ.

    The vowel begins a sign's reading in every way to divide the name; but the う of 生 is drawn to
    the sound before it (園生 Sonō, 麻生 Asō).
    """
    long = {
        at
        for at in range(1, len(kana))
        if any(kana[at - 1] in VOWELS[v] and kana[at] in signs for v, signs in LENGTHENING.items())
    }
    if written[-1] == GROWTH and kana.endswith("う"):
        long.discard(len(kana) - 1)
    if long and (possible := ways(written, kana, readings)):
        for parts in possible:
            long &= {len("".join(parts[:n])) for n in range(1, len(parts))}
        return "".join(f"|{sign}" if at in long else sign for at, sign in enumerate(kana))
    return kana


def is_mixed(written: str, kana: str, readings: Readings) -> bool:
    """Whether a name has an on-reading beside a native one however it is divided."""
    found = [{is_on for _, is_on in division} for _, division in divisions(written, kana, readings)]
    return bool(found) and all(len(sorts) > 1 for sorts in found)


class Usage:
    """How often each sign is read so, first, last or between, in UniDic's names of one sort."""

    def __init__(self, entries: Iterable[tuple[str, str]], readings: Readings) -> None:
        self._readings = readings
        self._counts: Counter[tuple[str, str, str]] = Counter()
        for written, kana in entries:
            for parts in ways(written, kana, readings)[:1]:
                self._counts.update(self._placed(written, parts))

    @cached_property
    def _totals(self) -> Counter[tuple[str, str]]:
        totals: Counter[tuple[str, str]] = Counter()
        for (sign, place, _), count in self._counts.items():
            totals[sign, place] += count
        return totals

    @staticmethod
    def _placed(written: str, parts: tuple[str, ...]) -> Iterator[tuple[str, str, str]]:
        for at, (sign, part) in enumerate(zip(written, parts, strict=True)):
            place = "first" if at == 0 else "last" if at == len(written) - 1 else "between"
            yield sign, place, part

    def likelihood(self, written: str, kana: str) -> float:
        """Return the logarithm of how likely a name is read so, by its signs one by one."""
        possible = ways(written, kana, self._readings)
        best = max((self._of_parts(written, parts) for parts in possible), default=UNDIVIDED)
        return best - MIXED * is_mixed(written, kana, self._readings)

    def _of_parts(self, written: str, parts: tuple[str, ...]) -> float:
        return sum(
            math.log((self._counts[sign, place, part] + SEEN) / (self._totals[sign, place] + 1))
            for sign, place, part in self._placed(written, parts)
        )


def unidic_names(sort: str) -> Iterator[tuple[str, str]]:
    """Yield the names of a sort in UniDic with their kana."""
    for _, written, kana, _ in unidic_entries(sort):
        yield written, kana.replace("|", "")


def rows() -> Iterator[tuple[str, ...]]:
    """Yield the rows in the order of their first cells, as the program searches them by halving."""
    found, readings = names(), kanjidic_readings()
    usage = {column: Usage(unidic_names(sort), readings) for column, sort in SORTS.items()}
    for written in sorted(found):
        cells = []
        for column in COLUMNS:
            kana = found[written].get(column, {})
            kept = [each for each in kana if KANA.fullmatch(each)]
            if column == "place" and is_division(written, found):
                kept = []
            if len(kept) > 1 and column in usage:
                places = found[written].get("place", {}) if column == "surname" else {}
                kept.sort(
                    key=lambda kana: (
                        -usage[column].likelihood(written, kana) - ALSO_PLACE * (kana in places)
                    )
                )
            cells.append(listed(dict.fromkeys(marked(written, each, readings) for each in kept)))
        if any(cells):
            yield (written, *cells)


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    return {"name_dictionary": list(rows())}
