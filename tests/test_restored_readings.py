"""Readings of worn signs: bracketed, ranked after what can be read alone, never in the record."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from inscribe import notation, reading
from inscribe.cli import cli
from inscribe.restoring import with_restored
from inscribe.restoring.spellings import left_over

# The worn text, what can be read alone, and what is proposed.
WORN = [
    ("行□五十八歳作之", "gyō… gojūhassai kore o tsukuru", "gyō[nen] gojūhassai kore o tsukuru"),
    ("嘉永元戊□年", "Kaei gan tsuchinoe-… no toshi", "Kaei gan tsuchinoe-[saru] no toshi"),
    ("応□澹堂彫之", "… ni ōjite Tandō kore o horu", "[motome] ni ōjite Tandō kore o horu"),
    ("竹林七□之図", "chikurin shichi… no zu", "chikurin shichi[ken] no zu"),
]


@pytest.mark.parametrize(("text", "bare", "restored"), WORN)
def test_the_worn_sign_is_restored_in_brackets_and_spoils_no_neighbour(
    text: str, bare: str, restored: str
) -> None:
    t = notation.parse(text)
    found = with_restored(reading.read(t), t, reading.read)
    best, first = found.proposals[:2]
    assert best.romaji.lower() == bare.lower()
    assert first.romaji.lower() == restored.lower()
    assert 0.5 <= first.chance < 1
    assert found.text == text
    assert t == notation.parse(text)


def test_the_command_prints_them_as_alternatives_with_their_chance() -> None:
    done = CliRunner().invoke(
        cli, ["read", "--text", "行□六十二歳露岳作", "--format", "json"], catch_exceptions=False
    )
    found = json.loads(done.output)
    assert found["romaji"] == "gyō… rokujūnisai Rogaku saku"
    assert found["alternatives"][0]["romaji"] == "gyō[nen] rokujūnisai Rogaku saku"
    assert 0.5 < found["alternatives"][0]["chance"] < 1
    assert "restored as 年" in found["alternatives"][0]["reason"]


def test_what_nothing_tells_stays_open() -> None:
    t = notation.parse("□□□")
    found = with_restored(reading.read(t), t, reading.read)
    assert found == reading.read(t)


def test_a_kanji_says_as_much_as_leaves_a_kana_for_each_other_sign() -> None:
    assert [left_over("生", "うまれぬ", signs) for signs in (1, 2, 3)] == ["ぬ", "れぬ", "まれぬ"]
    assert [left_over("明", "あけぬ", signs) for signs in (0, 2)] == ["ぬ", "けぬ"]
