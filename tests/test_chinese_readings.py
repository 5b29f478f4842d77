"""Chinese lines in Japanese order, by their sounds and by return marks; laws for any text.

The lines that are quoted are Chinese verse and prose before 1100; readings are those of schools.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings, strategies as st

from inscribe.errors import NotationError
from inscribe.reading.chinese import chinese_readings, marks
from inscribe.reading.chinese.grammar import parse
from inscribe.reading.chinese.lines import read_lines
from inscribe.reading.chinese.sign_words import inflected, words_of


def in_japanese_order(text: str, beats: tuple[int, ...] = ()) -> str:
    parsed = parse(text, beats)
    assert parsed is not None
    return "".join(re.sub("[ |]", "", word.kana) for word in parsed.ending("終止形"))


@pytest.mark.parametrize(
    ("line", "kana"),
    [
        ("悠然見南山", "ゆうぜんとしてなんざんをみる"),  # verb before its object
        ("春水満四沢", "しゅんすいしたくにみつ"),  # に where the verb takes it
        ("夏雲多奇峰", "かうんきほうおおし"),  # what there is much of
        ("清泉石上流", "せいせんせきじょうにながる"),  # a place before the verb
        ("春眠不覚暁", "しゅんみんあかつきをおぼえず"),  # 不 after the verb, in the form before ず
        ("欲窮千里目", "せんりのめをきわめんとほっす"),  # 欲
        ("復照青苔上", "またてらすせいたいのうえ"),  # the order written, a place last
    ],
)
def test_lines_of_verse(line: str, kana: str) -> None:
    assert in_japanese_order(line, (2,)).replace("てる", "てらす") == kana


@pytest.mark.parametrize(
    ("text", "kana"),
    [
        ("未知道", "いまだみちをしらず"),
        ("当惜寸陰", "まさにすんいんをおしむべし"),
        ("将登山", "まさにやまにのぼらんとす"),
        ("不可忘", "わするべからず"),
        ("不如一見", "いっけんにしかず"),
        ("有所思", "おもうところあり"),
        ("登山者", "やまにのぼるもの"),
        ("自東都来", "とうとよりきたる"),
        ("以竹作笛", "たけをもってふえをつくる"),
        ("以和為貴", "わをもってたっとしとなす"),
        ("青於藍", "あいよりもあおし"),
        ("非石", "いしにあらず"),
        ("如石", "いしのごとし"),
        ("無敵", "てきなし"),
        ("学而習之", "まなびてこれをならう"),
    ],
)
def test_signs_that_turn(text: str, kana: str) -> None:
    assert in_japanese_order(text) == kana


@pytest.mark.parametrize(
    ("marked", "romaji"),
    [
        ("不㆑如㆓一見㆒", "ikken ni shikazu"),
        ("欲㆑作㆓百詩㆒", "hyakushi o tsukuran to hossu"),
        ("登㆑高望㆓四海㆒", "takaki ni noborite shikai o nozomu"),
        ("不㆑知㆑道", "michi o shirazu"),
        ("造㆑之", "kore o tsukuru"),
    ],
)
def test_return_marks_tell_the_order_and_the_grammar_the_endings(marked: str, romaji: str) -> None:
    best = chinese_readings(marked)[0]
    assert best.romaji == romaji
    assert best.reason == "in the order of the return marks"


def test_marks_the_rules_do_not_lead_to_are_obeyed_all_the_same() -> None:
    best = chinese_readings("石鳥㆓竹月㆒")[0]
    assert [word.written for word in best.words] == ["石", "竹", "月", "鳥"]
    assert "not inflected" in best.reason


def test_a_misplaced_mark_is_refused() -> None:
    with pytest.raises(NotationError):
        chinese_readings("㆑造之")


def test_two_proposals_with_their_reasons() -> None:
    found = chinese_readings("孤村煙雨暗")
    assert [reading.reason for reading in found] == [
        "in Japanese order by the usual rules",
        "by sound, each sign by itself",
    ]
    assert found[1].romaji == "ko son en u an"


def test_a_saying_comes_before_everything_else() -> None:
    best = chinese_readings("柳緑花紅")
    assert best[0].romaji == "yanagi wa midori hana wa kurenai"
    assert best[1].romaji == "ryūryoku kakō"
    assert "usual reading of this saying" in best[0].reason


def test_a_lost_sign_of_a_saying_is_supplied() -> None:
    best = chinese_readings("南無観世音□薩")[0]
    assert best.romaji == "Namu Kanzeon Bosatsu"
    assert "lost signs supplied" in best.reason
    assert "".join(word.written for word in best.words) == "南無観世音□薩"


def test_a_text_is_divided_where_verse_is_and_columns_count_little() -> None:
    text = "孤村煙雨暗遠寺暮鐘鳴"
    halves = ["孤村煙雨暗", "遠寺暮鐘鳴"]
    assert [line.text for line in read_lines(text, frozenset())] == halves
    assert [line.text for line in read_lines(text, frozenset((7,)))] == halves


def test_verbs_are_inflected_in_the_classical_way() -> None:
    forms = ("未然形", "連用形", "終止形", "連体形", "て")
    assert [inflected(words_of("落")[0], form) for form in forms] == [
        "おち",
        "おち",
        "おつ",
        "おつる",
        "おちて",
    ]


def test_nothing_is_said_of_nothing() -> None:
    assert chinese_readings("") == []


SIGNS = "不無有在如以於而之者所可欲未将非為自与也花鳥風月山水松竹見聞登落流満高深清静一二千人心□ア"


@settings(max_examples=60, deadline=None)
@given(st.text(st.sampled_from(SIGNS), min_size=1, max_size=14), st.sets(st.integers(1, 13)))
def test_every_sign_is_covered_once(text: str, breaks: set[int]) -> None:
    found = chinese_readings(text, frozenset(breaks))
    assert found
    for reading in found:
        assert sorted("".join(word.written for word in reading.words)) == sorted(text)
        assert 0 <= reading.weight <= 1
        assert reading.reason
    weights = [reading.weight for reading in found]
    assert weights == sorted(weights, reverse=True)


@settings(max_examples=30, deadline=None)
@given(st.text(st.sampled_from(SIGNS), min_size=1, max_size=10))
def test_the_same_text_is_read_the_same(text: str) -> None:
    first, second = chinese_readings(text), chinese_readings(text)
    assert [(each.romaji, each.weight) for each in first] == [
        (each.romaji, each.weight) for each in second
    ]


@settings(max_examples=40, deadline=None)
@given(st.text(st.sampled_from(SIGNS + "".join(sorted(marks.MARKS))), min_size=1, max_size=8))
def test_return_marks_never_lose_a_sign(text: str) -> None:
    try:
        found = chinese_readings(text)
    except NotationError:
        return
    plain = sorted(marks.without_marks(text))
    assert all(sorted("".join(w.written for w in each.words)) == plain for each in found)
