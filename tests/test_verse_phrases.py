"""Phrases of verse, invented, that a general rule of the tables decides.

Source: the school grammar of classical Japanese, from memory.
"""

from __future__ import annotations

import pytest

from inscribe import reading


def _letters(text: str) -> str:
    return reading.read_text(text, register="verse").proposals[0].romaji.replace(" ", "").lower()


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("岩の道踏み分け難く", "iwanomichifumiwakegataku"),  # a suffix after a verb
        ("君には逢ふこと難き", "kiminiwaaukotokataki"),  # an adjective after a noun
        ("草の葉の消ぬべきものを", "kusanohanokenubekimonoo"),
        ("山里に独りし居れば", "yamazatonihitorishioreba"),
        ("秋の夜に人待つ宵の月を見て", "akinoyonihitomatsuyoinotsukiomite"),
        ("春雨に濡れ初めてし衣かな", "harusameninuresometeshikoromokana"),
        ("若菜摘み侘びて", "wakanatsumiwabite"),
        ("いつよりか音をのみ泣きて", "itsuyorikaneonominakite"),
        ("風にな乱りそ我が青柳の枝ぞ", "kazeninamidarisowagaaoyaginoedazo"),
        ("今宵来なくに", "koyoikonakuni"),
    ],
)
def test_phrases(text: str, read: str) -> None:
    assert _letters(text) == read


def test_negative_at_the_end_of_a_poem_without_voicing_marks() -> None:
    """The attributive shi of the past seldom ends a poem: 忘れし there is wasureji."""
    assert _letters("年ふれと松の緑の色見れはつらき心も今は忘れし").endswith("wasureji")
