"""Old spellings of words of today: what must be found, what must not, and laws."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from inscribe.reading.mecab.unidic import UnidicEntry
from inscribe.reading.prose.old_forms import current_spelling, old_forms
from inscribe.reading.spelling.backwards import old_spellings

HIRAGANA = [chr(code) for code in range(0x3041, 0x3094)]


@pytest.mark.parametrize(
    ("modern", "old"),
    [
        ("しょう", "せう"),
        ("ちょう", "てふ"),
        ("ちょっと", "ちよつと"),
        ("ゆうべ", "ゆふべ"),
        ("まず", "まづ"),
        ("いえ", "いへ"),
        ("こえ", "こゑ"),
        ("かわいそう", "かはいさう"),
        ("たおれる", "たふれる"),
        ("じいさん", "ぢいさん"),
        ("なお", "なほ"),
        ("いなか", "ゐなか"),
    ],
)
def test_spellings(modern: str, old: str) -> None:
    assert old in dict(old_spellings(modern))


@pytest.mark.parametrize(
    ("modern", "never"),
    [("わたし", "はたし"), ("おはな", "をはな"), ("えき", "へき"), ("よう", "やふ")],
)
def test_what_no_rule_allows(modern: str, never: str) -> None:
    assert never not in dict(old_spellings(modern))


def test_words_of_chinese_origin() -> None:
    assert "くわいしや" in dict(old_spellings("かいしゃ", chinese=True))
    assert "いはひ" not in dict(old_spellings("いはい", chinese=True))
    assert "をとこ" in dict(old_spellings("おとこ", wo=True))


def word(surface: str, conjugation: str, form: str, base: str, kana: str) -> UnidicEntry:
    fields = ["動詞", "一般", "*", "*", conjugation, form, "", "", surface, "", base, "", "和"]
    return UnidicEntry(surface, 0, 0, [*fields, "", "", "", "", kana, "", kana])


@pytest.mark.parametrize(
    ("surface", "conjugation", "form", "base", "kana", "old"),
    [
        ("思い", "五段-ワア行", "連用形-一般", "思う", "オモイ", "思ひ"),
        ("言っ", "五段-ワア行", "連用形-促音便", "言う", "イッ", "言つ"),
        ("言おう", "五段-ワア行", "意志推量形", "言う", "イオウ", "言はう"),
        ("行こう", "五段-カ行", "意志推量形", "行く", "イコウ", "行かう"),
        ("考える", "下一段-ア行", "終止形-一般", "考える", "カンガエル", "考へる"),
        ("植え", "下一段-ア行", "連用形-一般", "植える", "ウエ", "植ゑ"),
        ("いる", "上一段-ア行", "終止形-一般", "いる", "イル", "ゐる"),
        ("思い出し", "五段-サ行", "連用形-一般", "思い出す", "オモイダシ", "思ひ出し"),
        ("閉じ", "上一段-ザ行", "連用形-一般", "閉じる", "トジ", "閉ぢ"),
    ],
)
def test_forms(surface: str, conjugation: str, form: str, base: str, kana: str, old: str) -> None:
    entry = word(surface, conjugation, form, base, kana)
    assert old in dict(old_forms(entry))
    assert current_spelling(entry) == surface


@pytest.mark.parametrize(
    ("surface", "kana", "modern"),
    [
        ("言ふ", "イウ", "言う"),
        ("衰へる", "オトロエル", "衰える"),
        ("思ひ出", "オモイデ", "思い出"),
        ("けふ", "キョウ", "きょう"),
        ("ラヂオ", "ラジオ", "ラジオ"),
        ("こじんまり", "コヂンマリ", "こじんまり"),
        ("いう", "ユウ", "いう"),
    ],
)
def test_entries_unidic_has_in_old_spelling(surface: str, kana: str, modern: str) -> None:
    said = "イウ" if surface == "いう" else kana
    fields = ["名詞", *"*" * 11, "和", *"*" * 4, said, "", kana]
    assert current_spelling(UnidicEntry(surface, 0, 0, fields)) == modern


@given(st.text(st.sampled_from(HIRAGANA), max_size=10), st.booleans(), st.booleans(), st.booleans())
def test_laws(modern: str, inside: bool, chinese: bool, wo: bool) -> None:
    found = old_spellings(modern, inside=inside, chinese=chinese, wo=wo)
    assert modern not in dict(found)
    assert len(dict(found)) == len(found) <= 12
    assert [cost for _, cost in found] == sorted(cost for _, cost in found)
