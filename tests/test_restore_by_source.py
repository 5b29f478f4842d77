"""A word that a source spells out may be worn on the plate in one of its kanji."""

from __future__ import annotations

import pytest

from inscribe import parse
from inscribe.restoring import restore

# Kokinshu 933 and 53, from memory, in kana without voicing marks.
ASUKA = "よのなかはなにかつねなるあすかかはきのふのふちそけふはせになる"
CHERRIES = "よのなかにたえてさくらのなかりせははるのこころはのとけからまし"


@pytest.mark.parametrize(
    ("text", "source", "truth"),
    [
        ("世の中は何か常なる飛□川きのふの淵ぞ今日は瀬になる", ASUKA, "鳥"),
        ("世の中は何か常なる飛鳥□きのふの淵ぞ今日は瀬になる", ASUKA, "川"),
        ("世の中に絶えて□のなかりせば春の心はのどけからまし", CHERRIES, "桜"),
        ("世の中に絶えて桜のなかり□ば春の心はのどけからまし", CHERRIES, "せ"),
    ],
)
def test_the_sign_that_the_source_spells_out_comes_first(
    text: str, source: str, truth: str
) -> None:
    (worn,) = restore(parse(text), copied=source).lacunae
    assert worn.candidates[0].text == truth
    total = sum(each.probability for each in worn.candidates)
    assert total == pytest.approx(1, abs=0.1)


# The same poem, its voiced kana marked.
VOICED = "よのなかにたえてさくらのなかりせばはるのこころはのどけからまし"


def chances(text: str, source: str) -> dict[str, float]:
    (worn,) = restore(parse(text), copied=source).lacunae
    return {each.text: each.probability for each in worn.candidates}


def test_a_source_without_voicing_marks_may_mean_the_voiced_kana() -> None:
    found = chances("世の中に絶えて桜のなかりせ□春の心はのどけからまし", CHERRIES)
    assert found["ば"] > found["は"] > 0.1


def test_a_source_that_marks_voicing_means_what_it_writes() -> None:
    found = chances("世の中に絶えて桜のなかりせば春の心□のどけからまし", VOICED)
    assert found["は"] > 0.5
    assert found.get("ば", 0.0) < 0.05
    assert chances("世の中に絶えて桜のなかりせ□春の心はのどけからまし", VOICED)["ば"] > 0.9


def test_the_sign_of_the_source_comes_before_its_other_forms() -> None:
    found = chances("住吉の□に生ふてふ忘れ草", "住吉の嶋に生ふてふ忘れ草")
    assert found["嶋"] > 10 * found.get("島", 0.0)


def test_a_kanji_of_the_source_may_stand_without_its_okurigana() -> None:
    found = chances("山路を踏□鳴鹿の声", "山路を踏み分け鳴く鹿の声")
    assert found["分"] > 0.9
    assert "け" not in found or found["け"] < 0.05


@pytest.mark.parametrize(
    ("source", "sign"),
    [("葛\U000e0100の花", "葛"), ("か\u3099の花", "が")],  # a shape that is chosen; a separate mark
)
def test_a_sign_of_several_code_points_is_one_sign(source: str, sign: str) -> None:
    (first, *_) = restore(parse("□の花"), copied=source).lacunae[0].candidates
    assert first.text == sign
    both = restore(parse("□□の花"), copied=source).lacunae
    offered = {each.text for lacuna in both for each in lacuna.candidates}
    assert not {
        each for each in offered if each and (each[0] == "\u3099" or each[0] > "\U000e0000")
    }
