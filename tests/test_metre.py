"""Metre: counting, the fast ways of keeping it, and the search, which is the measure of them."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from inscribe.reading.lexicon.paradigms import inflections
from inscribe.reading.spelling.mora_count import morae
from inscribe.reading.verse import reader as verse, tagger as mecab
from inscribe.reading.verse.lattice import best_path
from inscribe.reading.verse.metre import HAIKU, TANKA, Metre, pattern_of, phrase_cost
from inscribe.reading.verse.readings import path_cost
from inscribe.reading.verse.scansion import (
    fitted_phrases,
    nearly_regular,
    regular_head,
    regular_phrases,
    regular_tail,
)
from inscribe.reading.words.pieces import ReadWord

POEMS = Path(__file__).parent / "data" / "verse_dev.tsv"


def poems(count: int) -> list[str]:
    lines = [line for line in POEMS.read_text("utf-8").splitlines() if line[:1].isdigit()]
    return [line.split("\t")[2].replace("／", "") for line in lines[:count]]


@given(st.integers(0, 60))
def test_a_metre_is_near_its_length(count: int) -> None:
    metre = pattern_of(count)
    assert metre is None or abs(metre.length - count) <= 4


@given(st.integers(1, 12), st.sampled_from([5, 7]), st.booleans())
def test_only_the_right_number_is_free(count: int, target: int, vowel: bool) -> None:
    cost = phrase_cost(count, target, vowel=vowel)
    assert (cost == 0) == (count == target)


def words(*kana: str) -> list[ReadWord]:
    return [ReadWord(each, each, "名詞") for each in kana]


def test_phrases_of_words_that_keep_the_metre() -> None:
    haiku = words("ふるいけ", "や", "かわず", "とびこむ", "みず", "の", "おと")
    assert regular_phrases(haiku, HAIKU) == ((5, 0), (7, 2), (5, 4))
    assert fitted_phrases(haiku, HAIKU) == (0, ((5, 0), (7, 2), (5, 4)))
    assert regular_head(haiku, HAIKU.phrases) == (7, 3)
    assert regular_tail(haiku, HAIKU.phrases) == (7, 3)


def test_phrases_that_miss_by_one() -> None:
    long = words("ふるいけ", "や", "かわずが", "とびこむ", "みず", "の", "おと")
    assert regular_phrases(long, HAIKU) == ()
    cost, phrases = fitted_phrases(long, HAIKU)
    assert cost > 0
    assert [count for count, _ in phrases] == [5, 8, 5]


def test_a_phrase_does_not_begin_with_a_particle() -> None:
    leaning = [*words("はなのいろ"), ReadWord("は", "は", "助詞-係助詞"), *words("うつりけりな")]
    assert regular_phrases(leaning, HAIKU) == ()


@pytest.mark.parametrize("text", poems(40))
def test_the_fast_ways_cost_no_more_than_the_search_finds(text: str) -> None:
    """The quick reading's path and metre cost is close to the best of the whole lattice."""
    found = verse.read_verse(text)
    if found.metre is None:
        return
    path = best_path(
        mecab.verse_spans(text, voiced=found.voiced),
        len(text),
        found.metre,
        mecab.verse_connections(),
    )
    assert path is not None
    whole = verse._read(text, frozenset(), (), ())
    cost = path_cost(whole.words) + fitted_phrases(whole.words, found.metre)[0]
    assert cost <= path.cost + 3000
    if whole.regular:
        assert cost <= path.cost


def test_every_class_of_the_paradigms_has_its_forms() -> None:
    forms = {form: written for form, written, _, _ in inflections("下二段-ダ行")}
    assert forms["連体形-一般"] == "づる"
    assert {form: w for form, w, _, _ in inflections("ラ行変格")}["終止形-一般"] == "り"
    assert inflections("no such class") == ()


def test_morae_of_small_kana() -> None:
    assert morae("しゅんじゅう") == 4


def test_the_tanka_is_thirty_one_morae() -> None:
    assert TANKA.length == 31


KANA = st.lists(
    st.sampled_from(["は", "かぜ", "こころ", "いろ", "うめのはな", "の", "みず", "おもい"]),
    max_size=12,
)


@given(KANA, st.sampled_from([TANKA, HAIKU]))
def test_the_quick_fit_agrees_with_the_thorough_one(kana: list[str], metre: Metre) -> None:
    line = words(*kana)
    quick = nearly_regular(line, metre, 3000)
    cost, phrases = fitted_phrases(line, metre)
    if quick is not None:
        assert phrases
        assert cost <= quick[0] <= 3000
        assert sum(count for count, _ in quick[1]) == sum(word.morae for word in line)
    if regular := regular_phrases(line, metre):
        assert quick == (0, regular)
