"""Prose in historical spelling: read as the words it is, every word tied to what is written."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import pytest
from hypothesis import given, settings, strategies as st

from inscribe.reading import read_text
from inscribe.reading.inscription.register import has_modern_grammar, is_running_text
from inscribe.reading.prose.current import modern_spelling
from inscribe.reading.prose.reader import prose_words
from inscribe.reading.words.pieces import romaji_of

DEVELOPMENT_SET = Path(__file__).parent / "data" / "modern_dev.tsv"


@pytest.mark.parametrize(
    ("text", "letters"),
    [
        ("さう言つて笑つてゐた", "sō itte waratte ita"),
        ("けふは行かう", "kyō wa ikō"),
        ("をとこがゐる", "otoko ga iru"),
        ("といふことは", "to iu koto wa"),
        ("世ノ人ハサウ言ツタ", "yo no hito wa sō itta"),
    ],
)
def test_words_are_read_as_today(text: str, letters: str) -> None:
    assert romaji_of(prose_words(text)) == letters


def test_what_is_written_tiles_the_text() -> None:
    lines = DEVELOPMENT_SET.read_text(encoding="utf-8").splitlines()
    for line in lines[8:]:
        text = line.split("\t")[0]
        pieces = prose_words(text)
        assert "".join(piece.written for piece in pieces) == text
        assert "".join(piece.modern for piece in pieces) == modern_spelling(text)


@settings(deadline=None)
@given(
    st.text(
        st.sampled_from("思言行来花ゐゑをはひふへほつたやうさせかけきゝんの、。 　x"), max_size=20
    )
)
def test_any_kana_text_is_tiled(text: str) -> None:
    assert "".join(piece.written for piece in prose_words(text)) == text


@pytest.mark.parametrize(
    ("text", "running", "modern"),
    [
        ("「さうか。」と彼は言つた。", True, True),
        ("「行く」と言ふ", True, False),
        ("花の色は／うつりにけりな", False, False),
        ("春立つ。［　　］作之", False, True),
        ("国沢作（印「国」）", False, False),
        ("雨が降つてゐる", False, True),
    ],
)
def test_kinds_of_text(text: str, running: bool, modern: bool) -> None:
    assert is_running_text(text) is running
    assert has_modern_grammar(text) is modern


@pytest.mark.parametrize("register", ["auto", "prose"])
def test_punctuated_prose_is_read_as_it_stands(register: Literal["auto", "prose"]) -> None:
    found = read_text("「さうか。」　彼は（笑つて） Tokyo と言つた。", register)
    assert found.register == "prose"
    assert found.modern == "「そうか。」　彼は（笑って） Tokyo と言った。"
    assert "".join(token.normalised for token in found.proposals[0].tokens) == found.normalised


@pytest.mark.parametrize(
    ("text", "register"),
    [
        ("秋の田の、かりほの庵の、苫をあらみ、わが衣手は、露にぬれつつ", "verse"),
        ("花の色はうつりにけりな、いたづらにわが身世にふるながめせしまに", "verse"),
        ("馬車は砂埃をあげながら、まつすぐな道を驅けて行つた", "prose"),
        ("へえ、さうかねおれはちつとも知らなかつた", "prose"),
        ("向ふの家の二階からは、時々三味線の音が聞えて來る", "prose"),
    ],
)
def test_commas_tell_verse_from_prose_whose_metre_is_chance(text: str, register: str) -> None:
    assert read_text(text).register == register


def test_a_sign_that_cannot_be_read_keeps_its_place_in_prose() -> None:
    best = read_text("花の色は□つりにけりな", "prose").proposals[0]
    assert best.kana.count("…") == 1
    assert "…" in best.romaji


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("木から落る", "ki kara ochiru"),  # the kana that never changes is left out
        ("世を捨る", "yo o suteru"),
        ("燃る火", "moeru hi"),
        ("初心忘る可からす", "shoshin wasurubekarazu"),  # voicing is not marked
        ("己の欲せさる所人に施すなかれ", "onore no hossezaru tokoro hito ni hodokosu nakare"),
    ],
)
def test_endings_as_carved_are_read_out(text: str, romaji: str) -> None:
    assert read_text(text, "prose").proposals[0].romaji == romaji


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("日本晴", "Nihonbare"),
        ("日本史を読む", "Nihonshi o yomu"),
        ("大和魂を磨く", "Yamatodamashii o migaku"),
        ("日本人は武士なり", "Nihonjin wa bushi nari"),
    ],
)
def test_a_noun_read_as_a_whole_is_one_word_and_a_country_in_it_has_a_capital(
    text: str, romaji: str
) -> None:
    assert read_text(text).proposals[0].romaji == romaji


@pytest.mark.parametrize(
    ("text", "end"),
    [
        ("老後の手すさひに彫之", "ni kore o horu"),
        ("病中の慰に作之", "ni kore o tsukuru"),
        ("つれ〱のまゝに刻之", "no mama ni kore o kizamu"),
    ],
)
def test_a_makers_formula_that_closes_prose_is_read_as_signatures_have_it(
    text: str, end: str
) -> None:
    assert read_text(text).proposals[0].romaji.endswith(end)
