"""Formulas that are composed, not listed: each row is one of a class; the names are invented."""

from __future__ import annotations

import pytest

from inscribe import read_text
from inscribe.reading.signatures import divisions
from inscribe.reading.words import words_of

READ = {
    # a verb with what ended it
    "霰郷彫成之": "Araresato kore o horinasu",
    "霰郷鋳終之": "Araresato kore o iowaru",
    "霰郷鍛畢之": "Araresato kore o kitaeowaru",
    # what was done, for whose sake
    "為弔亡父霰郷造之": "bōfu o tomurawan ga tame ni Araresato kore o tsukuru",
    "為祝米寿霰郷作": "beiju o iwawan ga tame ni Araresato saku",
    # an office, its rank written with another sign
    "隼人佐霰郷": "Hayato no suke Araresato",
    "掃部介霰郷": "Kamon no suke Araresato",
    # a picture of somebody is a formula, neither Chinese nor a title
    "依楓溪画霰郷彫之": "Fūkei no ga ni yorite Araresato kore o horu",
    # a manner, one word with what it is after
    "古作写霰郷作": "kosaku utsushi Araresato saku",
    # places as they are divided today, and one that families are named after
    "群馬県桐生町三輪霰郷": "Gunma-ken Kiryū-machi Miwa Araresato",
    "名古屋市中区住霰郷": "Nagoya-shi Nakaku jū Araresato",
    "柳生住霰郷": "Yagyū jū Araresato",
    "三輪家四代目霰郷": "Miwa-ke yondaime Araresato",
    "霰郷嵌": "Araresato hamu",
    "霰郷銘之": "Araresato kore ni meisu",
}


@pytest.mark.parametrize(("carved", "said"), READ.items())
def test_a_formula_is_composed(carved: str, said: str) -> None:
    assert read_text(carved).proposals[0].romaji == said


@pytest.mark.parametrize("verb", ["謹彫", "敬刻", "再鏤", "自鐫"])
def test_an_adverb_and_a_verb_are_offered_by_sound_and_by_native_words(verb: str) -> None:
    word = words_of(verb)[0]
    assert any(" " in kana for kana in word.alternatives)


@pytest.mark.parametrize(
    "pieces",
    [
        ("応", "需", "京本", "霰斎", "作"),
        ("武州", "住", "居村", "磐房", "作"),
        ("京都", "住", "住山", "磐房", "作"),
        ("於", "東都", "上泉", "霰斎", "刻", "之"),
        ("江戸", "住", "元倉", "霰斎"),
        ("於", "東都", "住谷", "磐房", "刻", "之"),
    ],
)
def test_a_surname_is_not_torn_apart_by_a_word_it_begins_with(pieces: tuple[str, ...]) -> None:
    assert tuple(piece.text for piece in divisions("".join(pieces))[0].pieces) == pieces


def test_a_usual_opener_stays_one_where_a_surname_begins_so() -> None:
    assert read_text("為重代造之").proposals[0].romaji == "jūdai no tame ni kore o tsukuru"
