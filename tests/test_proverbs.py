"""Proverbs as mottoes: known by their kanji, read as they are said, however they are spelled.

The proverbs and their readings are EDICT's (Electronic Dictionary Research and Development Group).
"""

from __future__ import annotations

import pytest

from inscribe import parse
from inscribe.reading import read


@pytest.mark.parametrize(
    ("carved", "romaji"),
    [
        ("急がば回れ", "isogaba maware"),
        ("急かは廻れ", "isogaba maware"),  # no voicing marked, another form of the sign
        ("一年の計は元旦にあり", "ichinen no kei wa gantan ni ari"),  # keeps a metre by chance
        ("百聞は一見に如かす", "hyakubun wa ikken ni shikazu"),
        ("武士は食ねど高楊枝", "bushi wa kuwanedo takayōji"),  # the ending within the kanji
        ("光陰矢の如し", "kōin ya no gotoshi"),
        ("弘法も筆のあやまり", "Kōbō mo fude no ayamari"),  # a kanji of the proverb is in kana
        ("一寸の虫にも五分の魂", "issun no mushi ni mo gobu no tamashii"),  # a haiku's morae
        ("女の一念岩をも通す", "onna no ichinen iwa o mo tōsu"),
    ],
)
def test_a_proverb_is_read_as_it_is_said(carved: str, romaji: str) -> None:
    found = read(parse(carved))
    assert found.proposals[0].romaji == romaji
    assert [passage.kind for passage in found.passages] == ["prose"]
    assert any("the proverb" in reason for reason in found.proposals[0].reasons)


def test_a_proverb_and_the_carver_after_it_are_two_passages() -> None:
    found = read(parse("一年の計は元旦にあり嶺暁刻"))
    assert [(p.kind, p.text) for p in found.passages] == [
        ("prose", "一年の計は元旦にあり"),
        ("signature", "嶺暁刻"),
    ]


def test_other_words_with_the_kanji_of_a_proverb_are_none() -> None:
    found = read(parse("光陰に矢をつかふ如し"))
    assert not any("proverb" in reason for reason in found.proposals[0].reasons)
