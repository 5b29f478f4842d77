"""How the texts of the library are heard, line by line, and cut into passages."""

from __future__ import annotations

import pytest

from inscribe import notation
from inscribe.errors import Place
from inscribe.record import Inscription
from inscribe.sources.copied import copied_signs
from inscribe.sources.keys import letters
from inscribe.sources.matching import fit
from inscribe.sources.passages import PASSAGE_SOUNDS, passages_of
from inscribe.sources.query import kana_of_romanised, query_of
from inscribe.sources.texts import source_text


def sounds(text: str) -> str:
    """Return what the passages of a text sound like."""
    return "".join(p.sounds for p in passages_of(source_text("text", text, Place())))


# Shin kokinshu 1 and Kokin wakashu 9, a phrase a line
@pytest.mark.parametrize(
    ("text", "kana"),
    [
        (
            "み吉野は／山もかすみて／白雪の／ふりにし里に／春は来にけり",
            "みよしのはやまもかすみてしらゆきのふりにしさとにはるはきにけり",
        ),
        (
            "霞立ち／木の芽もはるの／雪降れば／花なき里も／花ぞ散りける",
            "かすみたちこのめもはるのゆきふればはななきさともはなぞちりける",
        ),
    ],
)
def test_phrases_of_verse_are_read_together(text: str, kana: str) -> None:
    assert sounds(text) == letters(kana)


def test_punctuation_has_no_sound() -> None:
    plain = sounds("大江山／いく野の道の／遠ければ")
    assert sounds("大江山、／いく野の道の、／遠ければ。") == plain
    assert sounds("「大江山／いく野の道の／遠ければ」") == plain
    query = query_of(notation.parse("大江山、いく野"))
    assert query.arcs[3] == ((4, ""),)


@pytest.mark.parametrize(
    "text", ["山" * 300, "山" * 70 + "\n" + "川" * 70, "行到水窮處坐看雲起時" * 40]
)
def test_lines_of_more_sounds_than_a_passage_come_to_an_end(text: str) -> None:
    found = passages_of(source_text("text", text, Place()))
    assert len(found) < len(text) / 10
    assert all(len(p.sounds) < 6 * PASSAGE_SOUNDS for p in found)


@pytest.mark.parametrize(
    "heard", ["tōkereba", "tookereba", "toukereba", "tohkereba", "tohokereba", "TÔKEREBA"]
)
def test_a_long_o_is_found_however_it_is_romanised(heard: str) -> None:
    query = query_of(notation.parse(kana_of_romanised(heard)))
    assert fit(query, letters("まだとほければ")).gain > len(query)


@pytest.mark.parametrize(
    ("text", "looked_for"),
    [
        (
            "霞たちこのめも春の雪ふれは\n花なきさとも花そちりける楓畦書\n鷺坂苗道刻之（花押）",
            "霞たちこのめも春の雪ふれは花なきさとも花そちりける",
        ),
        ("霞たちこのめも春の雪ふれは\n花なきさとも花そちりける", None),
        ("鷺坂苗道刻之", None),
    ],
)
def test_the_copied_passages_of_a_record_are_looked_for(text: str, looked_for: str | None) -> None:
    inscription = Inscription("back plate", text)
    assert copied_signs(inscription).text == (looked_for or inscription.transcription.text)
