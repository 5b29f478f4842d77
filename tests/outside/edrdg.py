"""EDICT, ENAMDICT and KANJIDIC2 of the EDRDG, read from Debian's packages of these names.

Licence of the data: CC BY-SA (Electronic Dictionary Research and Development Group). Nothing of it
is kept here: it is read, and held against the tables.
"""

from __future__ import annotations

import gzip
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from functools import cache

import debian

LONGEST = 4  # signs of a name that is looked up
U_ROW, I_ROW = "うくぐすつぬぶむる", "いきぎしちにびみり"
_LINE = re.compile(r"([^ /]+) (?:\[([^\]]+)\] )?/(.*)/")
_VOICED = dict(
    zip(
        "かきくけこさしすせそたちつてとはひふへほ",
        "がぎぐげござじずぜぞだぢづでどばびぶべぼ",
        strict=True,
    )
)
_HALF = dict(zip("はひふへほ", "ぱぴぷぺぽ", strict=True))


def _lines(name: str) -> Iterator[tuple[str, str, str]]:
    """Yield writing, reading and glosses of each entry of a dictionary."""
    with debian.file(f"edict/{name}", name).open(encoding="euc_jp", errors="replace") as lines:
        for line in lines:
            if entry := _LINE.match(line):
                yield entry[1], hiragana(entry[2] or entry[1]), entry[3]


@cache
def _edict() -> dict[str, dict[str, str]]:
    found: dict[str, dict[str, str]] = {}
    for written, kana, gloss in _lines("edict"):
        known = found.setdefault(written, {})
        known[kana] = f"{known[kana]}/{gloss}" if kana in known else gloss
    return found


@cache
def _enamdict() -> dict[str, str]:
    found: dict[str, str] = {}
    for written, kana, _ in _lines("enamdict"):
        if len(written) <= LONGEST:
            found[written] = f"{found[written]} {kana}" if written in found else kana
    return found


def all_words() -> dict[str, dict[str, str]]:
    """Return every word of EDICT: its readings, each with its glosses."""
    return _edict()


def words(written: str) -> dict[str, str]:
    """Return the readings of a word in EDICT, each with its glosses."""
    return _edict().get(written, {})


def names(written: str) -> list[str]:
    """Return the readings of a name in ENAMDICT."""
    return _enamdict().get(written, "").split()


def hiragana(text: str) -> str:
    """Return kana as hiragana, without spaces and marks between words."""
    told = "".join(chr(ord(c) - 0x60) if "ァ" <= c <= "ヶ" else c for c in text)
    return re.sub(r"[ ・|]", "", told)


@cache
def readings_of_signs() -> dict[str, frozenset[str]]:
    """Return every reading of each sign in KANJIDIC2: on, kun with what it bends to, in names."""
    root = ET.fromstring(
        gzip.decompress(debian.file("edict/kanjidic2.xml.gz", "kanjidic-xml").read_bytes())
    )
    found = {}
    for sign in root.iter("character"):
        given = [e.text or "" for e in sign.iter("reading") if e.get("r_type", "")[:3] == "ja_"]
        given += [e.text or "" for e in sign.iter("nanori")]
        plain = {hiragana(each).strip("-") for each in given}
        bent = frozenset(form for each in plain for form in _bent(each))
        found[sign.findtext("literal") or ""] = bent
    return found


def _bent(kun: str) -> Iterator[str]:
    """Yield what a reading may be inside a word: ほ.る is ほ, ほる, ほり."""
    stem, _, ending = kun.partition(".")
    yield from (stem, stem + ending, stem + ending[:-1])
    if ending and ending[-1] in U_ROW:
        yield stem + ending[:-1] + I_ROW[U_ROW.index(ending[-1])]


def _sounds(reading: str) -> Iterator[str]:
    """Yield a reading as it sounds inside a word: voiced, shortened before the next."""
    for first in {reading[:1], _VOICED.get(reading[:1], ""), _HALF.get(reading[:1], "")} - {""}:
        yield first + reading[1:]
        if len(reading) > 1 and reading[-1] in "つちくき":
            yield first + reading[1:-1] + "っ"


@cache
def is_composed(written: str, kana: str) -> bool:
    """Whether a reading is made of readings of words and signs, with の, が, に between them.

    >>> is_composed("吉日", "きちじつ"), is_composed("吉日", "きちじぬ")
    (True, False)
    """
    if not written:
        return kana in ("", "す")  # 製す: a word of Chinese made a verb
    if kana and kana[0] in "のがつにと" and is_composed(written, kana[1:]):
        return True
    return any(
        kana.startswith(sound) and is_composed(written[length:], kana[len(sound) :])
        for length in range(1, min(len(written), LONGEST) + 1)
        for reading in _known(written[:length])
        for sound in _sounds(reading)
    )


def _known(written: str) -> set[str]:
    told = {*words(written), *names(written)}
    if len(written) == 1:
        told |= {hiragana(written)} if hiragana(written)[0] < "ゟ" else set()
        told |= readings_of_signs().get(written, frozenset())
    return told


def is_held(written: str, kana: str) -> bool:
    """Whether the EDRDG has a reading of a word or name, or has all its parts."""
    return is_composed(written, hiragana(kana))


@cache
def _classes_by_kana() -> dict[str, frozenset[str]]:
    """Return the classes of verbs in EDICT (v1, v5r, vz) by their kana."""
    found: dict[str, set[str]] = {}
    for known in _edict().values():
        for kana, gloss in known.items():
            if told := re.findall(r"\b(v[124z5][a-z-]*)(?=[,)])", gloss):
                found.setdefault(kana, set()).update(told)
    return {kana: frozenset(classes) for kana, classes in found.items()}


def verb_classes(kana: str) -> frozenset[str]:
    """Return the classes that EDICT gives the verbs said so."""
    return _classes_by_kana().get(kana, frozenset())
