"""Kana to Latin letters, and words to lines."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from inscribe.reading.spelling.division import KanaWord, capital, romanise, romanise_word
from inscribe.reading.spelling.letters import hepburn, hiragana, iso3602, spoken

HIRAGANA = [chr(code) for code in range(0x3041, 0x3095)]


@pytest.mark.parametrize(
    ("kana", "letters"),
    [
        ("きょう", "kyō"),
        ("ちょうちょう", "chōchō"),
        ("おおえやま", "ōeyama"),
        ("お|おぎ", "oogi"),
        ("うつくしい", "utsukushii"),
        ("えいが", "eiga"),
        ("おねえさん", "onēsan"),
        ("みやこどり", "miyakodori"),
        ("つづく", "tsuzuku"),
        ("かった", "katta"),
        ("いっぽん", "ippon"),
        ("ざっし", "zasshi"),
        ("こっち", "kotchi"),
        ("あっ", "a"),
        ("さんおう", "san'ō"),
        ("しん|よう", "shin'yō"),
        ("くわんぱく", "kuwanpaku"),
        ("くゎんぱく", "kanpaku"),
        ("をとめ", "otome"),
        ("ヴェール", "vēru"),
        ("刀", "刀"),
        ("", ""),
    ],
)
def test_hepburn(kana: str, letters: str) -> None:
    assert hepburn(kana) == letters


@pytest.mark.parametrize(
    ("kana", "letters"),
    [
        ("おう", "ou"),
        ("くう", "kuu"),
        ("ゆう", "yuu"),
        ("まよう", "mayou"),
        ("いう", "iu"),
        ("なろう", "narou"),
    ],
)
def test_the_ending_of_a_verb_stands_apart(kana: str, letters: str) -> None:
    assert hepburn(kana, verb=True) == letters


@pytest.mark.parametrize(
    ("spelling", "pronunciation", "letters"),
    [
        ("コウマ", "コウマ", "kouma"),  # 子馬
        ("バアイ", "バアイ", "baai"),  # 場合
        ("コウリ", "コウリ", "kouri"),  # 小売
        ("オウジ", "オージ", "ōji"),  # 王子
        ("チイサイ", "チーサイ", "chiisai"),
        ("オカアサン", "オカーサン", "okāsan"),
        ("ビール", "ビール", "bīru"),
        ("ニイガタ", "ニーガタ", "niigata"),
    ],
)
def test_a_dictionary_tells_where_parts_meet(
    spelling: str, pronunciation: str, letters: str
) -> None:
    assert hepburn(spoken(spelling, pronunciation)) == letters


@pytest.mark.parametrize(
    ("words", "line"),
    [
        (
            "いろ/名詞 は/助詞,係助詞 うつり/動詞 に/助動詞 けり/助動詞 な/助詞,終助詞",
            "iro wa utsurinikeri na",
        ),
        ("みれ/動詞 ば/助詞,接続助詞 ふり/動詞 つつ/助詞,接続助詞", "mireba furitsutsu"),
        ("うつくしい/形容詞 です/助動詞", "utsukushiidesu"),
        ("ひと/名詞 です/助動詞", "hito desu"),
        ("いっ/動詞 た/助動詞 と/助詞,格助詞 おもう/動詞", "itta to omou"),
        ("よん/動詞 で/助詞,接続助詞", "yonde"),
        ("お/接頭辞 はな/名詞 を/助詞,格助詞", "ohana o"),
        ("とうと/名詞,固有名詞,地名 へ/助詞,格助詞", "Tōto e"),
        ("むさし/名詞,固有名詞,地名 ぐん/接尾辞,名詞的", "Musashi-gun"),
        ("はな/名詞 、/補助記号 つき/名詞 。/補助記号", "hana, tsuki."),
        ("ろく/名詞,数詞 じゅう/名詞,数詞 はっ/名詞,数詞 さい/接尾辞", "rokujūhassai"),
    ],
)
def test_word_division(words: str, line: str) -> None:
    assert romanise([KanaWord(*word.split("/")) for word in words.split()]) == line


def test_a_sentence_begins_with_a_capital() -> None:
    assert romanise([KanaWord("おうさか", "名詞")], sentence=True) == "Ōsaka"
    assert capital("‘’") == "‘’"


def test_iso_keeps_every_particle_as_written() -> None:
    assert romanise_word("は", "助詞-係助詞", "iso3602") == "ha"
    assert romanise_word("を", "助詞-格助詞", "iso3602") == "wo"


@given(st.text(st.sampled_from([*HIRAGANA, "ー", "|", "ン"]), max_size=12))
def test_all_kana_become_latin_letters(kana: str) -> None:
    for letters in (hepburn(kana), iso3602(kana)):
        assert not any("ぁ" <= letter <= "ヺ" for letter in letters)


@given(st.text(max_size=12))
def test_any_text_is_taken(text: str) -> None:
    hepburn(text)
    iso3602(text)


@given(
    st.text(st.sampled_from(HIRAGANA), max_size=8), st.text(st.sampled_from(HIRAGANA), max_size=8)
)
def test_katakana_are_read_as_hiragana(first: str, second: str) -> None:
    katakana = "".join(chr(ord(sign) + 0x60) for sign in first)
    assert hiragana(katakana) == first
    assert hepburn(katakana + second) == hepburn(first + second)


@given(st.text(st.sampled_from("かきくけこさしすせそたちつてとはひふへほ"), min_size=1, max_size=8))
def test_iso_tells_plain_kana_apart(kana: str) -> None:
    back = {iso3602(sign): sign for sign in "かきくけこさしすせそたちつてとはひふへほ"}
    letters = iso3602(kana)
    assert "".join(back[letters[i : i + 2]] for i in range(0, len(letters), 2)) == kana
