"""Historical spelling: rules, exceptions, reasons and laws."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from inscribe.reading.spelling.historical import explain, modern_kana, pronunciation

PAIRS = """
けふ きょう
てふ ちょう
やう よう
かう こう
くわう こう
ぐわつ がつ
せう しょう
てうし ちょうし
しうか しゅうか
じふ じゅう
にふだう にゅうどう
いうげん ゆうげん
しやうぐわつ しょうがつ
あふぎ おうぎ
あふみ おうみ
あふさか おうさか
あふひ あおい
あふぐ あおぐ
たふれて たおれて
たふとし とうとし
はは はは
あさひ あさひ
あはれ あわれ
かは かわ
かほ かお
にほひ におい
いはほ いわお
ゆふぐれ ゆうぐれ
ゆふひ ゆうひ
ゆくへ ゆくえ
こひ こい
くれなゐ くれない
こゑ こえ
ゆゑ ゆえ
をみなへし おみなえし
をとこ おとこ
しづか しずか
もみぢ もみじ
みかづき みかづき
つづく つづく
はらはら はらはら
うつくしう うつくしゅう
たかう たこう
むめ うめ
おほえやま おおえやま
あはぢしま あわじしま
ほととぎす ほととぎす
よもすがら よもすがら
"""


@pytest.mark.parametrize("pair", PAIRS.split("\n")[1:-1])
def test_words(pair: str) -> None:
    historical, modern = pair.split()
    assert modern_kana(historical) == modern


@pytest.mark.parametrize(
    ("historical", "part_of_speech", "modern"),
    [
        ("あふ", "動詞", "あう"),
        ("いふ", "動詞", "いう"),
        ("うつろふ", "動詞", "うつろう"),
        ("たまふ", "動詞", "たまう"),
        ("つたふる", "動詞", "つたうる"),
        ("うれふれ", "動詞", "うれうれ"),
        ("ゑふ", "動詞", "よう"),
        ("たふ", "名詞", "とう"),
        ("む", "助動詞", "ん"),
        ("らむ", "助動詞", "らん"),
        ("よむ", "動詞", "よむ"),
        ("は", "助詞-係助詞", "は"),
        ("を", "助詞-格助詞", "を"),
    ],
)
def test_by_part_of_speech(historical: str, part_of_speech: str, modern: str) -> None:
    assert modern_kana(historical, part_of_speech) == modern


def test_a_part_of_a_word_begins_anew() -> None:
    assert modern_kana("くさはら", boundaries=(2,)) == "くさはら"
    assert modern_kana("やまぢ", boundaries=(2,)) == "やまぢ"
    assert modern_kana("てふてふ", boundaries=(2,)) == "ちょうちょう"


@pytest.mark.parametrize(
    ("historical", "part_of_speech", "said"),
    [
        ("けふ", "名詞", "きょー"),
        ("おもふ", "動詞", "おもう"),
        ("いふ", "動詞", "いう"),
        ("おほえやま", "名詞", "おーえやま"),
        ("うれしい", "形容詞", "うれしい"),
        ("へ", "助詞", "え"),
        ("つづく", "動詞", "つずく"),
    ],
)
def test_pronunciation(historical: str, part_of_speech: str, said: str) -> None:
    assert pronunciation(historical, part_of_speech) == said


def test_every_step_has_its_place_and_reason() -> None:
    steps = explain("をしへ").steps
    assert [(s.first, s.last, s.before, s.after) for s in steps] == [
        (0, 0, "を", "お"),
        (2, 2, "へ", "え"),
    ]
    assert all(step.why for step in steps)


HISTORICAL = st.text(st.sampled_from([chr(c) for c in range(0x3041, 0x3094)]), max_size=8)


@given(HISTORICAL, st.sampled_from(["", "動詞", "名詞", "助動詞", "助詞"]), st.integers(0, 8))
def test_laws(historical: str, part_of_speech: str, boundary: int) -> None:
    result = explain(historical, part_of_speech, (boundary,))
    assert modern_kana(historical, part_of_speech, (boundary,)) == result.kana
    assert "ゐ" not in result.kana
    assert "ゑ" not in result.kana
    for step in result.steps:
        assert 0 <= step.first <= step.last < len(historical)
        assert step.before != step.after
    if not result.steps:
        assert result.kana == historical


@given(st.text(max_size=10))
def test_any_text_is_taken(text: str) -> None:
    pronunciation(text, "動詞")
