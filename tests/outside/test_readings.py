"""Readings, strokes, numbers and parts against the files they come from.

Sources: KANJIDIC2 (Debian package kanjidic-xml, CC BY-SA 4.0), kTotalStrokes, kJapaneseOn and the
numeric values of Unihan (Debian package unicode-data, Unicode licence v3).
"""

from __future__ import annotations

import bz2
import gzip
import xml.etree.ElementTree as ET
from functools import cache

import debian
import jaconv
import pytest

from inscribe import forms
from inscribe.forms import characters, components
from inscribe.forms.numbers import numbers

UNICODE = debian.FOLDER / "unicode"
KANJIDIC = debian.FOLDER / "edict/kanjidic2.xml.gz"


@cache
def kanjidic() -> list[ET.Element]:
    if not KANJIDIC.exists():
        pytest.skip("the Debian package kanjidic-xml is not installed")
    with gzip.open(KANJIDIC) as file:
        return list(ET.parse(file).getroot().iter("character"))


def unihan(file: str, *names: str) -> list[tuple[str, str, str]]:
    path = UNICODE / f"Unihan_{file}.txt.bz2"
    if not path.exists():
        pytest.skip("the Debian package unicode-data is not installed")
    with bz2.open(path, "rt", encoding="utf-8") as lines:
        cells = [line.rstrip("\n").split("\t") for line in lines]
    return [(chr(int(c[0][2:], 16)), c[1], c[2]) for c in cells if len(c) == 3 and c[1] in names]


def test_every_reading_of_kanjidic_is_there() -> None:
    assert len(kanjidic()) > 13000
    for entry in kanjidic():
        char = entry.findtext("literal", "")
        found = characters.character(char)
        said = [(r.get("r_type"), r.text) for r in entry.iter("reading")]
        assert found.readings.on == tuple(text for kind, text in said if kind == "ja_on")
        assert found.readings.kun == tuple(text for kind, text in said if kind == "ja_kun")
        assert found.readings.names == tuple(name.text for name in entry.iter("nanori"))
        assert found.strokes[0] == int(entry.findtext("misc/stroke_count", "0"))


def test_sino_japanese_readings_agree_with_unihan() -> None:
    """Two dictionaries: at least one reading in common for nearly all kanji of JIS X 0208."""
    compared = agreed = 0
    for char, _, value in unihan("Readings", "kJapaneseOn"):
        ours = {jaconv.kata2hira(on) for on in forms.readings(char).on}
        if not ours or len(char.encode("euc_jp", "ignore")) != 2:
            continue
        theirs = {jaconv.alphabet2kana(on.lower()) for on in value.split()}
        compared += 1
        agreed += bool(ours & theirs)
    assert compared > 5000
    assert agreed / compared > 0.98


def test_strokes_agree_with_unihan_for_joyo_kanji() -> None:
    """Unihan counts Chinese shapes (辶, 艹 ...), so some differ; by more than two hardly any."""
    joyo = {char for char, _, _ in unihan("OtherMappings", "kJoyoKanji")}
    counts = {char: int(v.split()[0]) for char, _, v in unihan("IRGSources", "kTotalStrokes")}
    apart = [abs(characters.character(c).strokes[0] - counts[c]) for c in joyo if c in counts]
    assert len(apart) > 2000
    assert sum(gap > 0 for gap in apart) / len(apart) < 0.1
    assert sum(gap > 2 for gap in apart) / len(apart) < 0.01


def test_numbers_agree_with_unihan() -> None:
    listed = unihan("NumericValues", "kPrimaryNumeric", "kAccountingNumeric", "kOtherNumeric")
    theirs = {char: int(value.split()[0]) for char, _, value in listed}
    # 廾 is a variant of 廿 in dates; Unihan gives its use in the suzhou-like row of digits.
    # 亿 and 兆 have other values in other places; 什 is ten in both.
    differing = {sign for sign, value in numbers().items() if theirs.get(sign, value) != value}
    assert differing == {"廾"}
    assert len(set(numbers()) & set(theirs)) > 35


def test_parts_say_as_many_strokes_as_the_whole() -> None:
    """A character of two whole parts side by side has the strokes of both, in nearly all cases."""
    compared = agreed = 0
    for entry in kanjidic():
        char = entry.findtext("literal", "")
        direct = components.parts(char)
        if [part.position for part in direct] not in (["left", "right"], ["top", "bottom"]):
            continue
        inside = [characters.character(part.char).strokes for part in direct]
        if all(inside) and not any(part.whole for part in direct):
            compared += 1
            agreed += sum(counts[0] for counts in inside) in characters.character(char).strokes
    assert compared > 1000
    assert agreed / compared > 0.9
