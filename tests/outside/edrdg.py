"""EDICT, ENAMDICT and KANJIDIC2 of the EDRDG, read from Debian's packages of these names.

``INSCRIBE_DEBIAN`` names the folder in which the packages were unpacked; without it they are looked
for where Debian installs them. A test that needs a file that is not there is skipped, and says so.

Licence of the data: CC BY-SA (Electronic Dictionary Research and Development Group). Nothing of it
is kept here: it is read, and held against the tables.
"""

from __future__ import annotations

import gzip
import os
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

DEBIAN = Path(os.environ.get("INSCRIBE_DEBIAN", "/"))
_LINE = re.compile(r"([^ /]+) (?:\[([^\]]+)\] )?/(.*)/")
_VOICED = dict(zip("かきくけこさしすせそたちつてとはひふへほ", "がぎぐげござじずぜぞだぢづでどばびぶべぼ", strict=True))
_HALF = dict(zip("はひふへほ", "ぱぴぷぺぽ", strict=True))


def debian(name: str) -> Path:
    """Return a file of a Debian package; the test that asks is skipped where it is not."""
    path = DEBIAN / "usr/share" / name
    if not path.exists():
        pytest.skip(f"{name} of Debian is not installed")
    return path


@cache
def _entries(name: str) -> dict[str, dict[str, str]]:
    """Return the readings of each writing of a dictionary, and the glosses of each reading."""
    found: dict[str, dict[str, str]] = {}
    with debian(f"edict/{name}").open(encoding="euc_jp", errors="replace") as lines:
        for line in lines:
            if entry := _LINE.match(line):
                written, kana, gloss = entry.groups()
                known = found.setdefault(written, {})
                reading = hiragana(kana or written)
                known[reading] = f"{known.get(reading, '')}/{gloss}"
    return found


def words(written: str) -> dict[str, str]:
    """Return the readings of a word in EDICT, each with its glosses."""
    return _entries("edict").get(written, {})


def names(written: str) -> dict[str, str]:
    """Return the readings of a name in ENAMDICT, each with its glosses."""
    return _entries("enamdict").get(written, {})


def hiragana(text: str) -> str:
    """Return kana as hiragana, without spaces and marks between words."""
    told = "".join(chr(ord(c) - 0x60) if "ァ" <= c <= "ヶ" else c for c in text)
    return re.sub(r"[ ・|]", "", told)


@cache
def readings_of_signs() -> dict[str, frozenset[str]]:
    """Return every reading of each sign in KANJIDIC2: on, kun without its ending, in names."""
    root = ET.fromstring(gzip.decompress(debian("edict/kanjidic2.xml.gz").read_bytes()))
    found = {}
    for sign in root.iter("character"):
        given = [e.text or "" for e in sign.iter("reading") if e.get("r_type", "")[:3] == "ja_"]
        given += [e.text or "" for e in sign.iter("nanori")]
        plain = {hiragana(each).strip("-") for each in given}
        bare = {each.partition(".")[0] for each in plain}
        found[sign.findtext("literal") or ""] = frozenset(bare | {p.replace(".", "") for p in plain})
    return found


def _sounds(reading: str) -> Iterator[str]:
    """Yield a reading as it sounds inside a word: voiced, shortened before the next."""
    if not reading:
        return
    for first in {reading[0], _VOICED.get(reading[0], ""), _HALF.get(reading[0], "")} - {""}:
        yield first + reading[1:]
        if len(reading) > 1 and reading[-1] in "つちくき":
            yield first + reading[1:-1] + "っ"


def is_composed(written: str, kana: str) -> bool:
    """Whether a reading is made of readings of its signs, with の, が or つ between them.

    >>> is_composed("吉日", "きちじつ"), is_composed("吉日", "きちじぬ")
    (True, False)
    """
    if not written:
        return not kana
    sign, rest = written[0], written[1:]
    if kana and kana[0] in "のがつ" and is_composed(written, kana[1:]):
        return True
    if hiragana(sign) == kana[:1] and is_composed(rest, kana[1:]):
        return True
    known = readings_of_signs().get(sign, frozenset())
    return any(
        kana.startswith(sound) and is_composed(rest, kana[len(sound) :])
        for reading in known
        for sound in _sounds(reading)
    )


def is_held(written: str, kana: str) -> bool:
    """Whether the EDRDG has a reading of a word or name, or has all its parts."""
    told = hiragana(kana)
    return told in words(written) or told in names(written) or is_composed(written, told)
