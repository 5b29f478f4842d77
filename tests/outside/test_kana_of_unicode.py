"""Hentaigana, archaic kana, ligatures and marks against Python's Unicode data and the names list.

Sources: unicodedata of Python (Unicode 14 or later); NamesList.txt of the Unicode Character
Database (Debian package unicode-data, Unicode licence v3).
"""

from __future__ import annotations

import re
import unicodedata

import debian
import pytest

from inscribe import tables
from inscribe.forms import kana_of, normalise_text, parent_of, relation

NAMES_LIST = debian.FOLDER / "unicode/NamesList.txt"
ROWS = [tuple(row.values()) for row in tables.rows("hentaigana")]
NAMED = [chr(code) for code in range(0x1B000, 0x1B170) if unicodedata.name(chr(code), "")]


def test_every_sign_python_knows_is_in_the_table() -> None:
    assert len([s for s in NAMED if "HENTAIGANA" in unicodedata.name(s)]) == 285
    assert set(NAMED) <= {row[0] for row in ROWS}


@pytest.mark.parametrize("sign", NAMED)
def test_names_agree(sign: str) -> None:
    (row,) = (row for row in ROWS if row[0] == sign)
    assert row[3] == unicodedata.name(sign)


@pytest.mark.parametrize("sign", [s for s in NAMED if "HENTAIGANA LETTER" in unicodedata.name(s)])
def test_the_kana_is_what_the_name_says(sign: str) -> None:
    sounds = re.sub(r"-\d+$", "", unicodedata.name(sign).removeprefix("HENTAIGANA LETTER "))
    (row,) = (row for row in ROWS if row[0] == sign)
    values = tables.listed(row[1])
    assert len(values) == len(sounds.split("-"))
    for kana, sound in zip(values, sounds.split("-"), strict=True):
        assert unicodedata.name(kana) == f"HIRAGANA LETTER {sound}"
    assert kana_of(sign) == values[0]
    assert normalise_text(sign).text == values[0]
    assert relation(sign, values[0]).kind == "kana form"


def test_parents_agree_with_the_names_list() -> None:
    if not NAMES_LIST.exists():
        pytest.skip("the Debian package unicode-data is not installed")
    text = NAMES_LIST.read_text("utf-8")
    pattern = r"^(1B[01]..)\tHENTAIGANA LETTER .*\n(?:\t.*\n)*?\t\* derived from ([0-9A-F]+)"
    parents = dict(re.findall(pattern, text, re.MULTILINE))
    assert len(parents) >= 285
    for code, parent in parents.items():
        assert parent_of(chr(int(code, 16))) == chr(int(parent, 16))


def test_ligatures_agree_with_the_decompositions() -> None:
    for sign in "ゟヿ":
        plain = unicodedata.normalize("NFKC", sign)
        script = "の" if sign == "ゟ" else "ノ"
        assert normalise_text(script + sign).text == script + plain


def test_repeat_marks_are_the_ones_of_unicode() -> None:
    of_unicode = {
        char
        for char in map(chr, range(0x3000, 0x3100))
        if re.search(
            r"ITERATION MARK|REPEAT (WITH VOICED SOUND )?MARK$", unicodedata.name(char, "")
        )
        and unicodedata.category(char) == "Lm"
    }
    whole = {char for char in of_unicode if "COMBINING" not in unicodedata.name(char)}
    known = {row["written"] for row in tables.rows("repeat_marks")}
    assert whole <= known
    for voiced, plain in (("ゞ", "ゝ"), ("ヾ", "ヽ")):
        assert unicodedata.normalize("NFD", voiced)[0] == plain
