"""Haiku and later verse: nouns read as Chinese, endings not written, borrowed signs."""

import pytest

from inscribe import reading
from inscribe.reading.prose.current import modern_text


def romaji(text: str) -> str:
    return reading.read_text(text, register="verse").proposals[0].romaji


@pytest.mark.parametrize(
    ("verse", "word"),
    [
        ("夕風に孔雀の羽のひかりけり", "kujaku"),
        ("屏風にも月のひかりのさしにけり", "byōbu"),
        ("元日や松の影ある窓のうち", "ganjitsu"),
        ("名月や松の木の間の水の音", "meigetsu"),
        ("月影や煙草の煙たちのぼる", "tabako"),
    ],
)
def test_everyday_nouns_of_later_verse_are_read_as_chinese(verse: str, word: str) -> None:
    assert word in romaji(verse)


@pytest.mark.parametrize(
    ("verse", "words"),
    [
        ("白雲に羽うちかはし飛雁の数さへ見ゆる秋の夜の月", "tobu kari"),
        ("散花の鳴にしとまるものならば我鶯に劣らましやは", "chiru hana"),
    ],
)
def test_court_verse_keeps_native_words_where_the_same_kanji_are_a_chinese_noun(
    verse: str, words: str
) -> None:
    assert words in romaji(verse)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("鶯の鳴野辺ごとに来て見ればうつろふ花に風ぞ吹きける", "naku nobe"),
        ("我が宿の花見がてらに来人は散りなむ後ぞ恋しかるべき", "kuru hito"),
        ("散覧", "chiruran"),
        ("見鶴かな", "mitsuru kana"),
    ],
)
def test_what_follows_decides_what_is_not_written(text: str, words: str) -> None:
    assert words in romaji(text)


def test_the_kana_line_is_divided_as_the_latin_line() -> None:
    best = reading.read_text("花の色はうつりにけりないたづらに").proposals[0]
    assert "うつりにけり な" in best.kana
    assert len(best.kana.split()) == len(best.romaji.split())


@pytest.mark.parametrize(
    ("old", "now"),
    [
        ("酒を飲むだ", "酒を飲んだ"),
        ("鳥が飛むで行く", "鳥が飛んで行く"),
        ("飲むだけの", "飲むだけの"),
    ],
)
def test_classical_mu_before_da_and_de(old: str, now: str) -> None:
    assert modern_text(old) == now
