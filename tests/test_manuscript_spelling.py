"""Verse as a manuscript of the sixteenth century writes it: no voicing marks, signs borrowed."""

from __future__ import annotations

import pytest

from inscribe.reading import read_text
from inscribe.reading.lexicon.mixed_spellings import compound_stems
from inscribe.reading.verse.voicing import marks_voicing

# Poems from before 1600 in spellings of our own; readings as the anthologies are read.
READ = [
    ("雪なから山もと霞む夕かな", "yuki nagara yamamoto kasumu yūbe kana"),  # Minase sangin 1
    ("あききぬとめにはさやかにみえねとも風のおとにそおとろかれぬる", "aki kinu to me ni wa"),
    ("鶯の笠にぬふてふ梅花折てかさゝん老かくるやと", "ume no hana orite kazasan"),  # Kokinshu 36
    ("夢とこそいふへかりけれ世中にうつゝある物と思ける哉", "iubekarikere yononaka ni"),  # 834
    ("思出るときはの山の岩躑躅いはねは社あれ恋しき物を", "iwaneba koso are"),  # Kokinshu 495
    ("なく涙雨と降なん渡川水増りなは帰りくるかに", "ame to furinan watarigawa"),  # Kokinshu 829
    (
        "年ことにもみちはなかす龍田河みなとや秋のとまりなるらん",
        "toshigoto ni momiji",
    ),  # Kokinshu 311
    ("郭公なく声きけは別れにし古郷さへそこひしかりける", "koe kikeba"),  # Kokinshu 146
]


@pytest.mark.parametrize(("poem", "words"), READ)
def test_manuscript_spelling_is_read(poem: str, words: str) -> None:
    assert words in read_text(poem).proposals[0].romaji


@pytest.mark.parametrize(
    ("poem", "marked"),
    [
        ("雨降れは笠取山の紅葉葉は行きかふ人の袖さへそ照る", False),  # few kana, all unmarked
        ("雨降れば笠取山の紅葉葉は行きかふ人の袖さへぞ照る", True),
        ("鶉鳴く真野の入江の浜風に尾花波寄る秋の夕暮", True),  # nothing there to mark
    ],
)
def test_whether_voicing_is_marked_is_told_by_the_words(poem: str, marked: bool) -> None:
    assert marks_voicing(poem) is marked


def test_a_stem_whose_last_sign_covers_its_ending_keeps_it() -> None:
    assert list(compound_stems("思ひ出", "おもひ", covers=True)) == ["思出", "おもひ出"]
