"""Repeat marks: what is repeated, and that the tool says so where it cannot be known.

Cases are common practice and published rules of 1946 (from memory), the words invented or everyday.
"""

from __future__ import annotations

import unicodedata

import pytest

from inscribe.forms import normalise_text

KNOWN = [
    ("人々", "人人"),
    ("佐々木", "佐佐木"),
    ("國々", "国国"),
    ("各〻", "各各"),
    ("一歩々々", "一歩一歩"),
    ("日ゝ", "日日"),
    ("こゝろ", "こころ"),
    ("たゞ", "ただ"),
    ("かゞみ", "かがみ"),
    ("ばゞ", "ばば"),
    ("いすゞ川", "いすず川"),
    ("スヽキ", "ススキ"),
    ("スヾメ", "スズメ"),
    ("コノナカ〱", "コノナカナカ"),
    ("なか〱", "なかなか"),
    ("いろ〳〵", "いろいろ"),
    ("ほの〲", "ほのぼの"),
    ("さま〴〵", "さまざま"),
    ("かへす〲も", "かへすがへすも"),
    ("ところ〲", "ところどころ"),
    ("花のいろ〱", "花のいろいろ"),
    ("人〱", "人人"),
    ("重ね〲", "重ね重ね"),
    ("思ひ〱に", "思ひ思ひに"),
    ("見る〱", "見る見る"),
    ("めでたし〱", "めでたしめでたし"),
    (unicodedata.lookup("HENTAIGANA LETTER NA-1") + "か〱", "なかなか"),
]

DOUBTFUL = [
    ("づゝ", "づつ", "づ"),
    ("らゞ", "らら", "voiced"),
    ("はる々", "はるる", "kana"),
    ("くる々々", "くるくる", "くる"),
    ("一度〱", "一度度", "一度"),
    ("嬉しや〱", "嬉しや嬉しや", "しや"),
    ("山いろ〱", "山いろいろ", "山いろ"),
    ("花にさてや〱", "花にさてやてや", "さてや"),
    ("か〱", "かか", "only one"),
    ("はる〱", "はるはる", "はるばる"),
]

UNKNOWABLE = ["々", "ゝ", "〱", "〳〵", "。ゝ", "A々", "、〱", "□ゞ", "／／ゝ"]


@pytest.mark.parametrize(("carved", "expected"), KNOWN)
def test_what_is_repeated_is_known(carved: str, expected: str) -> None:
    normal = normalise_text(carved)
    assert normal.text == expected
    assert not any(change.doubtful for change in normal.changes)
    assert any(change.kind == "repeat mark" for change in normal.changes)


@pytest.mark.parametrize(("carved", "expected", "said"), DOUBTFUL)
def test_a_guess_is_marked_as_one(carved: str, expected: str, said: str) -> None:
    normal = normalise_text(carved)
    assert normal.text == expected
    doubts = [change.note for change in normal.changes if change.doubtful]
    assert doubts
    assert said in doubts[0]


@pytest.mark.parametrize("carved", UNKNOWABLE)
def test_a_mark_after_nothing_stays_and_is_told(carved: str) -> None:
    normal = normalise_text(carved)
    assert normal.text == carved
    (change,) = normal.changes
    assert change.doubtful
    assert "cannot be known" in change.note


@pytest.mark.parametrize("between", ["", "\n", "／", "」\n"])
def test_a_word_may_run_over_a_break(between: str) -> None:
    carved = f"い{between}ろ{between}〱"
    assert normalise_text(carved).text == carved.replace("〱", "いろ")


def test_a_space_before_a_mark_is_passed_over() -> None:
    assert normalise_text("山　々").text == "山　山"


def test_a_mark_can_repeat_what_a_mark_expanded() -> None:
    assert normalise_text("こゝゝ").text == "こここ"
    assert normalise_text("山々ゝ").text == "山山山"


@pytest.mark.parametrize("mark", ["〱\u3099", "〳〵\u3099", "／＼゛", "〴〵", "〳〵ﾞ"])
def test_a_tall_mark_is_voiced_by_any_voicing_mark(mark: str) -> None:
    assert normalise_text(f"かへす{mark}").text == "かへすがへす"
