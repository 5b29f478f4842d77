"""Normalisation by cases: each kind of step, its trace, and what must not change."""

from __future__ import annotations

import copy
import pickle
import unicodedata

import pytest

from inscribe import forms
from inscribe.forms import normalise, normalise_text
from inscribe.signs import Certainty, Kind, Sign, transcription

HA = unicodedata.lookup("HENTAIGANA LETTER HA-1")
YA = unicodedata.lookup("HENTAIGANA LETTER YA-1")

CHANGED = [
    ("國澤作", "国沢作", ["old form", "old form"]),
    ("舩の嶋", "船の島", ["variant", "variant"]),
    ("龜龍壽", "亀竜寿", ["old form"] * 3),
    ("\ufa19\ufa3d\ufa45", "神悔海", ["old form"] * 3),
    (HA + YA, "はや", ["hentaigana"] * 2),
    ("\U0001b001\U0001b11f\U0001b000", "えうエ", ["hentaigana", "hentaigana", "archaic kana"]),
    ("ゟ", "より", ["ligature"]),
    ("そのヿなし", "そのことなし", ["ligature"]),
    ("コノヿナシ", "コノコトナシ", ["ligature"]),
    ("行ケ\U0002a708", "行ケトモ", ["ligature"]),
    ("ヿ", "こと", ["ligature"]),
    ("⽇⽊", "日木", ["compatibility form"] * 2),
    ("㍾", "明治", ["compatibility form"]),
    ("㊄月", "五月", ["compatibility form"]),
    ("\uf914", "楽", ["compatibility form"]),
    ("ｶﾞﾗｽ１２Ａ", "ガラス12A", ["width"] * 6),
    ("か\u3099は\u309a", "がぱ", ["voicing mark"] * 2),
    (HA + "\u3099", "ば", ["hentaigana"]),
    ("か゛", "が", ["voicing mark"]),
    ("こゝ゛", "こご", ["voicing mark", "repeat mark"]),
    ("葛\U000e0100城", "葛城", ["variation sequence"]),
    ("國\U000e0100", "国", ["variation sequence", "old form"]),
    ("神\ufe00", "神", ["variation sequence"]),
    ("e\u0301", "é", ["composed form"]),
]

KEPT = [
    "",
    "花のいろはうつりにけりな",
    "檜と槇と鷗と焰",  # printed as they are
    "盃をかはす",
    "己已巳",
    "弌弍廿卅卌",  # the dates' business
    "てふてふけふ",  # historical spelling stays
    "（花押）「」、。／・",
    "　 \n\t",
    "か\u309a",  # no character of its own
    "⿰木黑",
    "□■",
]


@pytest.mark.parametrize(("carved", "current", "kinds"), CHANGED)
def test_each_step_is_taken_and_told(carved: str, current: str, kinds: list[str]) -> None:
    normal = normalise_text(carved)
    assert normal.text == current
    assert [change.kind for change in normal.changes] == kinds
    assert all(change.table for change in normal.changes)
    assert forms.carved(normal) == carved


@pytest.mark.parametrize("text", KEPT)
def test_what_needs_no_change_is_left_alone(text: str) -> None:
    normal = normalise_text(text)
    assert (normal.text, normal.changes) == (text, ())


def test_merged_characters_become_current_with_the_change_traced() -> None:
    normal = normalise_text("餘豫藝辨辯瓣")
    assert normal.text == "余予芸弁弁弁"
    assert [change.before for change in normal.changes] == list("餘豫藝辨辯瓣")


@pytest.mark.parametrize(("sign", "meant"), [("东", "東"), ("图", "図"), ("龙", "竜")])
def test_a_chinese_simplified_character_is_a_warning_and_no_change(sign: str, meant: str) -> None:
    normal = normalise_text(sign)
    (change,) = normal.changes
    assert normal.text == sign
    assert (change.before, change.after, change.doubtful) == (sign, sign, True)
    assert change.kind == "simplified form"
    assert meant in change.note


def test_characters_japanese_shares_with_simplified_chinese_are_no_warning() -> None:
    assert not normalise_text("国会学台体声来当万与号").changes


def test_a_hentaigana_of_several_values_is_doubtful() -> None:
    (change,) = normalise_text("\U0001b11d").changes
    assert change.doubtful
    assert "む" in change.note


def test_marks_of_the_transcriber_stand_for_what_cannot_be_normalised() -> None:
    signs = [
        Sign("國"),
        Sign("", certainty=Certainty.UNREADABLE),
        Sign("", kind=Kind.GAP),
        Sign("〱"),
        Sign("", kind=Kind.KAO),
        Sign("壽山", kind=Kind.SEAL),
        Sign("", certainty=Certainty.STRUCK),
        Sign("葛\U000e0100"),
    ]
    normal = normalise(transcription([[signs]]))
    assert normal.text == "国□［　　］〱（花押）（印「寿山」）□葛"
    assert normal.origin == (0, 1, *[2] * 4, 3, *[4] * 4, *[5] * 7, 6, 7)
    assert [change.sign for change in normal.changes] == [0, 3, 5, 7]
    assert normal.changes[1].doubtful


def test_repeat_marks_reach_over_columns_and_faces() -> None:
    t = transcription([[[Sign("山")], [Sign("々"), Sign("い")]], [[Sign("ろ")], [Sign("〱")]]])
    assert normalise(t).text == "山山いろいろ"


def test_offsets_count_signs_not_code_points() -> None:
    normal = normalise_text("葛\U000e0100か\u3099ゟ〳〵花")
    assert normal.text == "葛がよりより花"
    assert normal.origin == (0, 1, 2, 2, 3, 3, 4)


def test_a_user_table_wins_while_its_folder_is_read(tmp_path) -> None:
    from inscribe import add_glossary, tables

    header = "written\tcurrent\tsource\n"  # the note may be left out
    (tmp_path / "variants.tsv").write_text(header + "舩\t舟\tmine\n", encoding="utf-8")
    assert normalise_text("舩").text == "船"
    add_glossary(str(tmp_path))
    assert normalise_text("舩").text == "舟"
    tables.remove_folder(tmp_path)
    assert normalise_text("舩").text == "船"


def test_a_normal_text_can_be_copied_and_pickled_before_its_changes_are_asked_for() -> None:
    normal = normalise_text("國澤人々作")
    kept = pickle.loads(pickle.dumps(normalise_text("國澤人々作")))
    assert kept == copy.copy(normal) == normal
    assert [change.before for change in kept.changes] == list("國澤々")
    with pytest.raises(AttributeError):
        normal.text = "x"  # type: ignore[misc]
    with pytest.raises(AttributeError):
        _ = normal.nothing  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("written", "one"),
    [
        *(("か" + mark, "が") for mark in "\u3099゛\uff9e"),
        *(("は" + mark, "ぱ") for mark in "\u309a゜\uff9f"),
        *(("ハ" + mark, "パ") for mark in "\u309a゜\uff9f"),
    ],
)
def test_a_kana_and_its_voicing_mark_of_any_kind_are_one_sign(written: str, one: str) -> None:
    assert normalise_text(f"花{written}鳥").text == f"花{one}鳥"


def test_a_kana_that_may_be_another_says_which() -> None:
    (change,) = normalise_text("𛄝").changes
    assert change.note == "from 无; it may also be む or も"
