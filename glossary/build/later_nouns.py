"""Build later_nouns.tsv from EDICT and ENAMDICT: nouns of later verse that UniDic does not have.

Needs the Debian packages edict and enamdict (EDRDG, CC BY-SA) and unidic-lite. Kept are

- of EDICT, nouns with two to four kanji and at most five signs; of those with four kanji that are
  read as Chinese only buildings: the others are words of offices and sciences; no
  phrases (虫の声);
- of ENAMDICT, temples, shrines, gates and halls.

What UniDic has as a noun is left to it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from sources import EDICT, ENAMDICT, lines_of

from inscribe.forms import normalise_text, readings
from inscribe.reading.chinese.compounds import as_in_compounds
from inscribe.reading.mecab.unidic import classes, folder, words
from inscribe.reading.spelling import hiragana

ENTRY = re.compile(r"(?P<text>\S+) \[(?P<kana>[^\]]+)\] /(?P<senses>.*)/")
NOUN = re.compile(r"\((?:uk|obsc|arch|P)?\)? ?\(?n[),-]")
PHRASE = re.compile("[々\u4e00-\u9fff][のがをに][々\u4e00-\u9fff]")  # 虫の声 is three words
NOT_WANTED = re.compile(
    r"\((?:ok|ik|iK|io|oK|comp|MA|math|physics|chem|geom|abbr|sl|vulg|X|mahj|sports|med|engr|econ"
    r"|finc|law|electr|col|anat|baseb|ling|biol|geol|astron)\)"
)
WRITTEN = re.compile("[\u4e00-\u9fff][\u3041-\u3096々\u4e00-\u9fff]{1,4}")
KANJI = re.compile("[々\u4e00-\u9fff]")
KANA = re.compile("[\u3041-\u3096]{2,8}")
BUILDINGS = "寺院宮門堂"
PLACES = re.compile(r"\([a-z,]*[pu]")


def entries(path: Path) -> Iterator[tuple[str, str, str]]:
    """Yield writing in current forms, kana and senses of the entries that verse could write."""
    for line in lines_of(path):
        entry = ENTRY.match(line)
        if not entry or not WRITTEN.fullmatch(entry["text"]) or "ー" in entry["kana"]:
            continue
        kana = hiragana(entry["kana"])
        if KANA.fullmatch(kana):
            yield normalise_text(entry["text"]).text, kana, entry["senses"]


@cache
def chinese_sounds(sign: str) -> tuple[str, ...]:
    """Return the readings of a sign from Chinese, as they may stand in a compound."""
    return as_in_compounds([hiragana(on) for on in readings(sign).on])


def is_chinese(text: str, kana: str) -> bool:
    """Whether every sign of a word is read as Chinese.

    >>> is_chinese("菩提寺", "ぼだいじ"), is_chinese("太鼓橋", "たいこばし")
    (True, False)
    """
    places = {0}
    for sign in text:
        sounds = chinese_sounds(sign)
        places = {at + len(s) for at in places for s in sounds if kana.startswith(s, at)}
    return len(kana) in places


def is_of_verse(text: str, kana: str, senses: str) -> bool:
    """Whether a noun of EDICT is one that a poem could have."""
    kanji = len(KANJI.findall(text))
    if not 2 <= kanji <= 4 or PHRASE.search(text):
        return False
    if not NOUN.match(senses) or NOT_WANTED.search(senses):
        return False
    building = text[-1] in BUILDINGS
    return kanji < 4 or building or not is_chinese(text, kana)


def unidic_nouns() -> frozenset[str]:
    """Return what UniDic has as a noun."""
    dictionary = folder()
    numbers = classes(dictionary).numbers(lambda row: row[0] == "名詞")
    return frozenset(word.surface for word in words(dictionary, numbers))


def built() -> dict[str, list[list[str]]]:
    """Return the rows of later_nouns."""
    there = unidic_nouns()
    found: dict[tuple[str, str], str] = {}
    for text, kana, senses in entries(EDICT):
        if text not in there and is_of_verse(text, kana, senses):
            found[text, kana] = "noun"
    named = there.union(text for text, _ in found)
    for text, kana, senses in entries(ENAMDICT):
        place = len(text) > 2 and text[-1] in BUILDINGS and PLACES.match(senses)
        if place and text not in named and is_chinese(text, kana):
            found[text, kana] = "place"
    return {"later_nouns": [[*word, kind] for word, kind in sorted(found.items())]}
