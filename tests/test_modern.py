"""Whole texts in current spelling: the development set, and laws for any text."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st
from rapidfuzz.distance import Levenshtein

from inscribe.forms import normalise_text
from inscribe.reading import read_text
from inscribe.reading.prose.current import modern_normal, modern_spelling, modern_text, modern_words

DEVELOPMENT_SET = Path(__file__).parent / "data" / "modern_dev.tsv"


def development_set() -> list[tuple[str, str]]:
    lines = DEVELOPMENT_SET.read_text(encoding="utf-8").splitlines()
    rows = [line.split("\t") for line in lines if line and not line.startswith("#")]
    return [(old, modern) for old, modern in rows[1:]]


@pytest.mark.parametrize("half", [0, 1], ids=["looked at", "only measured"])
def test_development_set(half: int) -> None:
    rows = development_set()[half::2]
    errors = sum(Levenshtein.distance(modern_text(old), modern) for old, modern in rows)
    assert errors <= 0.01 * sum(len(modern) for _, modern in rows)


def test_current_spelling_is_left_alone() -> None:
    rows = development_set()
    errors = sum(Levenshtein.distance(modern_text(modern), modern) for _, modern in rows)
    assert errors <= 0.001 * sum(len(modern) for _, modern in rows)


@pytest.mark.parametrize(
    ("old", "modern"),
    [
        ("人々は各々の道を行つた。", "人々は各々の道を行った。"),
        (
            "いろ〳〵な話をきゝながら、たゞ默つてゐた。",
            "いろいろな話をききながら、ただ黙っていた。",
        ),
        ("駈けて行かう。", "駈けて行こう。"),
        ("聞えますか。", "聞えますか。"),
        ("第１回！ Ａさんは五％だけ、ｶﾅで答へた。", "第１回！ Ａさんは五％だけ、カナで答えた。"),
        ("さうでせう？\n\n　いゝえ、ちがひます。\n", "そうでしょう？\n\n　いいえ、ちがいます。\n"),
        ("", ""),
        (" \t\n", " \t\n"),
    ],
)
def test_what_stays_and_what_changes(old: str, modern: str) -> None:
    assert modern_text(old) == modern


def test_signs_of_a_transcription() -> None:
    normal = normalise_text("人々")
    assert modern_normal(normal, ["人", "々"]) == "人々"


OLD_PRINT = st.text(
    st.sampled_from(
        "思言立行來國花 、。「」\nゐゑをはひふへほつてたやうさせまかきゝ〳〵々んでにの"
    ),
    max_size=25,
)


@settings(deadline=None)
@given(st.one_of(OLD_PRINT, st.text(max_size=20)))
def test_words_tile_any_text(text: str) -> None:
    words = modern_words(text)
    assert "".join(word.written for word in words) == text
    assert [word.first for word in words] == [0, *(word.last + 1 for word in words[:-1])][
        : len(words)
    ]


@settings(deadline=None)
@given(OLD_PRINT)
def test_lines_are_kept(text: str) -> None:
    assert modern_spelling(text).count("\n") == text.count("\n")


@pytest.mark.parametrize(
    ("text", "modern", "romaji"),
    [
        ("人々は。", "人々は。", "hitobito wa"),
        ("じめ／＼した所で。", "じめじめした所で。", "jimejime shita tokoro de"),
        ("ところ／″＼に居た。", "ところどころに居た。", "tokorodokoro ni ita"),
        ("馬鹿々々しい話。", "馬鹿々々しい話。", "bakabakashii hanashi"),
        ("抑々は。", "抑々は。", "somosomo somosomo wa"),  # UniDic has no such word
        ("。々", "。々", "…"),
    ],
)
def test_repeat_marks_in_running_text(text: str, modern: str, romaji: str) -> None:
    found = read_text(text, "prose")
    assert found.modern == modern
    assert found.proposals[0].romaji == romaji


@pytest.mark.parametrize(
    ("printed", "current"),
    [
        ("チユーリツプ", "チューリップ"),
        ("ベツド", "ベッド"),
        ("ヨツト", "ヨット"),
        ("キヤツプ", "キャップ"),
        ("ヂエツト機", "ジェット機"),
        ("ドイツのバケツ", "ドイツのバケツ"),
        ("ユーカリ", "ユーカリ"),
    ],
)
def test_large_kana_of_loanwords(printed: str, current: str) -> None:
    assert modern_text(printed) == current
