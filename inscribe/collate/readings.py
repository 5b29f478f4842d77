"""Every way one Chinese character may have been read where it stands in a text.

Collation does not ask how a character is best read but whether it can be read as the other text
spells it; so each dictionary reading is widened to what scribes leave unwritten: the ending of a
verb or adjective (思 for おもふ, おもひ), in its classical and its modern inflection.

>>> [reading.spoken for reading in readings_of("咲")["さ"]][:6]
['さ', 'さく', 'さか', 'さき', 'さけ', 'さこ']
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

from inscribe import tables
from inscribe.collate import sounds

TABLES = {
    "collation_readings": ("text", "reading", "note"),
    "verse_nouns": ("written", "kana_historical", "kana_modern", "part_of_speech", "gloss"),
    "verse_verbs": ("written_stem", "kana_stem_historical", "class", "gloss"),
    "verse_adjectives": ("written_stem", "kana_stem_historical", "class", "gloss"),
}
# The ending that makes a dictionary form of a verb's or adjective's stem, by its class.
_FINALS = dict(zip("カガサザタダナハバマヤラワア", "くぐすずつづぬふぶむゆるうう", strict=True))
VERB_ENDINGS = {"ク": ".し", "シク": ".し", "サ変": ".す"}
VERB_ENDINGS |= {
    kind + row: "." + ("る" if kind == "上一" else final)
    for row, final in _FINALS.items()
    for kind in ("四段", "上二", "下二", "上一")
}
VERB_ENDINGS |= {"ラ変": ".る", "ナ変": ".ぬ"}
ADJECTIVE_ENDINGS = ("し", "き", "く", "け", "さ", "み")
# A verb's ending う stands for classical ふ, so its row is は: かよ.う -> かよは, かよひ, かよふ ...
ROW_OF_U = "はひうへほ"


class Reading(NamedTuple):
    """One way to read the next ``length`` signs: the sound, how plausible, and who says so."""

    length: int
    pattern: str  # letters, see inscribe.collate.sounds
    step: str  # "kun", "inflected", "cut", "on", "name", "word", ...: a row of the cost table
    spoken: str  # as the source spells it, hiragana
    source: str


# Readings by the letter they may begin with; all of them under "".
ByLetter = Mapping[str, tuple[Reading, ...]]


def by_letter(readings: Iterable[Reading]) -> ByLetter:
    """Return ``readings`` by the letters they may begin with, each sound of a length once."""
    found: dict[str, dict[tuple[int, str], Reading]] = {"": {}}
    for reading in readings:
        key = (reading.length, reading.pattern)
        if key not in found[""]:
            for letter in ("", *sounds.first_letters(reading.pattern)):
                found.setdefault(letter, {})[key] = reading
    return {letter: tuple(once.values()) for letter, once in found.items()}


@lru_cache(maxsize=4096)
def readings_of(char: str) -> ByLetter:
    """Return the readings of one character by their first letter, the most plausible first."""
    return by_letter(
        Reading(1, pattern, step, spoken, source)
        for spoken, step, source in _spoken(char)
        for pattern in sounds.patterns(spoken)
    )


def _spoken(char: str) -> list[tuple[str, str, str]]:
    from inscribe import forms

    known = forms.readings(char)
    kun = list(table_readings().get(char, ()))
    kun += [(reading.strip("-"), "KANJIDIC") for reading in known.kun]
    on = [sounds.hiragana(reading).strip("-") for reading in known.on]
    found = [(prefix, "kun", source) for k, source in kun for prefix in written(k)]
    found += [(form, "inflected", source) for k, source in kun for form in inflected(k)]
    found += [(reading, "on", "KANJIDIC") for reading in on]
    found += [("くわ" + reading[1:], "on", "KANJIDIC") for reading in on if reading[:1] in "かが"]
    found += [(cut, "cut", source) for k, source in kun for cut in _cut(k)]
    found += [(name, "name", "KANJIDIC") for name in known.names]
    return [(spoken, plausibility, source) for spoken, plausibility, source in found if spoken]


@tables.compiled
def table_readings() -> dict[str, list[tuple[str, str]]]:
    """Return the readings of the glossary's tables by what is written: (reading, table).

    A dot divides the stem of a verb or adjective from its ending: 消 -> き.ゆ.
    """
    found: dict[str, list[tuple[str, str]]] = {}
    for table, columns in TABLES.items():
        for (text, reading, *rest), _place in tables.rows(table, columns):
            if rest[0] in VERB_ENDINGS:
                reading += VERB_ENDINGS[rest[0]]
            found.setdefault(text, []).append((reading, table))
    return found


def written(kun: str) -> list[str]:
    """Return the stem and every longer part up to the whole word: わす.れる -> わす, わすれ, わすれる."""
    stem, _, tail = kun.partition(".")
    return [stem + tail[:length] for length in range(len(tail) + 1)]


def _cut(kun: str) -> list[str]:
    """Return stems shorter than the dictionary's, for scribes who write more kana: あらわ.れる -> あら."""
    stem = kun.partition(".")[0]
    return [stem[:length] for length in range(len(stem) - 1, 1 if len(stem) > 2 else 0, -1)]


def inflected(kun: str) -> list[str]:
    """Return the forms of a verb or adjective that one character may stand for without its ending.

    >>> inflected("き.える"), inflected("うつく.しい")[:4]
    (['きえら', 'きえり', 'きえれ', 'きえろ', 'きえるる', 'きえるれ', 'きゆ', 'きゆる', 'きゆれ', 'きう', 'きうる', 'きうれ', 'きふ', 'きふる', 'きふれ'], ['うつくし', 'うつくしし', 'うつくしき', 'うつくしく'])
    """
    stem, _, tail = kun.partition(".")
    if not tail:
        return []
    base, end = (stem + tail)[:-1], tail[-1]
    if end == "い":
        return [base, *(base + ending for ending in ADJECTIVE_ENDINGS)]
    if end == "し":
        stems = (base, base + "し")
        return [stem + ending for stem in stems for ending in ADJECTIVE_ENDINGS]
    forms = [base + kana for kana in _row(end) if kana != end]
    forms += [base + end + rest for rest in "るれ"]
    if end == "る":
        forms += _two_grade(base)
    return forms


def _row(end: str) -> str:
    if end == "う":
        return ROW_OF_U
    at = sounds.ROWS[2].find(sounds.letter(end))
    return "" if at < 0 else "".join(row[at] for row in sounds.ROWS)


def _two_grade(base: str) -> list[str]:
    """Return the classical two-grade forms of a modern -える or -いる verb: き + え -> きゆ, きゆる."""
    last = sounds.letter(base[-1:]) if base else ""
    for row in (sounds.ROWS[3], sounds.ROWS[1]):
        if last and (at := row.find(last)) >= 0:
            endings = "ゆうふ" if last in "えい" else sounds.ROWS[2][at]
            return [base[:-1] + u + rest for u in endings for rest in ("", "る", "れ")]
    return []
