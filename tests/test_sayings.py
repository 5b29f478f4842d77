"""Sayings by their customary reading: invocations, mottoes, set phrases, couplets.

Readings checked against EDICT (EDRDG, file of 2021-02-03) where it has the phrase.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from inscribe import tables
from inscribe.forms import normalise_text
from inscribe.reading.chinese import Saying, known_saying
from inscribe.reading.chinese.sayings import readings_of_saying, worn_sayings

ROWS = [tuple(row.values()) for row in tables.rows("sayings")]


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("和而不同", "wa shite dōzezu"),
        ("日々是好日", "nichinichi kore kōnichi"),
        ("南無妙法蓮華経", "Namu Myōhō Rengekyō"),
        ("八幡大菩薩", "Hachiman daiBosatsu"),
        ("忠孝", "chūkō"),
        ("一期一会", "ichigo ichie"),
        ("精神一到何事不成", "seishin ittō nanigoto ka narazaran"),
        ("温故知新", "onko chishin"),  # EDICT
        ("四面楚歌", "shimen soka"),  # EDICT alone
        ("低頭思故郷", "kōbe o tarete kokyō o omou"),
    ],
)
def test_customary_readings(text: str, romaji: str) -> None:
    found = known_saying(text)
    assert found is not None
    assert found.romaji.lower() == romaji.lower()


@pytest.mark.parametrize(
    ("old", "current"),
    [
        ("南無阿彌陀佛", "南無阿弥陀仏"),
        ("國士無雙", "国士無双"),
        ("龜鶴齊壽", "亀鶴斉寿"),
        ("盡忠報國", "尽忠報国"),
        ("龍吟雲起", "竜吟雲起"),
        ("弌心不亂", "一心不乱"),
    ],
)
def test_old_forms_are_the_same_saying(old: str, current: str) -> None:
    found = known_saying(current)
    assert found is not None
    assert known_saying(old) == found


def test_column_breaks_are_left_out() -> None:
    assert known_saying("風林／火山") == known_saying("風林火山")


def test_a_couplet_is_its_lines() -> None:
    found = known_saying("國破山河在城春草木深")
    assert found is not None
    assert found.romaji == "kuni yaburete sanga ari shiro haru ni shite sōmoku fukashi"
    assert found.kind == "verse"


@pytest.mark.parametrize("text", ["", "朧谷鐫之", "鐫", "白日依山", "大吉忠信", "あうん", "□□□□"])
def test_what_is_no_saying_is_none(text: str) -> None:
    assert known_saying(text) is None


def test_all_readings_of_a_phrase_the_usual_one_first() -> None:
    found = [saying.romaji for saying in readings_of_saying("安心立命")]
    assert found[0] == "anshin ritsumei"
    assert "anjin ryūmyō" in found


def test_worn_sayings_need_enough_that_is_seen() -> None:
    assert [saying.written for saying in worn_sayings("尽忠□国")] == ["尽忠報国"]
    assert worn_sayings("□□報国") == ()


def test_the_table_is_in_current_forms_and_says_nothing_twice() -> None:
    texts = [row[0] for row in ROWS]
    assert len(set(texts)) > 1000
    assert len({row[:2] for row in ROWS}) == len(ROWS)
    assert [text for text in texts if normalise_text(text).text != text] == []


@pytest.mark.parametrize("kind", sorted({row[2] for row in ROWS}))
def test_readings_are_kana_and_glosses_are_given(kind: str) -> None:
    rows = [row for row in ROWS if row[2] == kind]
    for _, reading, _, gloss in rows:
        assert all(sign in " |ー" or "\u3041" <= sign <= "\u30fa" for sign in reading), reading
        assert gloss


@given(st.sampled_from(ROWS))
def test_every_row_is_found_and_its_latin_letters_are_latin(row: tuple[str, ...]) -> None:
    found = known_saying(row[0])
    assert isinstance(found, Saying)
    assert found.written == row[0]
    assert found.romaji.replace(" ", "").replace("'", "").isalpha()
    assert not any("\u3041" <= sign <= "\u30fa" for sign in found.romaji)


@given(st.sampled_from(ROWS), st.integers(1, 8))
def test_a_break_anywhere_changes_nothing(row: tuple[str, ...], at: int) -> None:
    assert known_saying(row[0][:at] + "／" + row[0][at:]) == known_saying(row[0])
