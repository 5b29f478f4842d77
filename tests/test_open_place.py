"""Every sign tried in one place of a poem costs what MeCab says of the whole poem with it."""

from __future__ import annotations

import pytest

from inscribe.reading.lexicon import verse_dictionary
from inscribe.reading.mecab import NOWHERE, CompiledWords
from inscribe.reading.verse import OpenPlace, path_cost, verse_words

SIGNS = tuple("のもは花月夢風人心山川見思鳥秋霞舟袖涙露")
POEMS = (
    ("世の中に絶えて", "のなかりせば春の心はのどけからまし"),
    ("", "の色はうつりにけりないたづらに"),
    ("秋風に鹿の声する草枕面", "もたえつつ人を待つかな"),
    ("見わたせば□□も", "紅葉もなかりけり浦の□まやの秋の夕暮"),
    ("人はいさ心も知らずふるさとは花ぞ昔の香ににほひけ", ""),
)


@pytest.mark.parametrize("voiced", [True, False])
@pytest.mark.parametrize(("before", "after"), POEMS)
def test_a_sign_costs_what_the_whole_poem_costs_with_it(
    before: str, after: str, voiced: bool
) -> None:
    ways = OpenPlace(before, after, voiced=voiced).cheapest(SIGNS)
    found = {sign: (cost, beats) for beats, costs in ways.items() for sign, cost in costs.items()}
    for sign in SIGNS:
        words = verse_words(f"{before}{sign}{after}", voiced=voiced)
        cost, beats = found[sign]
        assert cost == path_cost(words), sign
        if "□" not in before:  # of signs that cannot be read nobody knows the beat
            assert beats == tuple(word.beat for word in words), sign


def test_a_sign_that_is_in_no_word_has_no_way() -> None:
    assert OpenPlace("花の", "は", voiced=True).cheapest(("龘",)) == {}


def test_words_go_on_with_the_signs_that_the_dictionary_has() -> None:
    words = CompiledWords(verse_dictionary() / "sys.dic")
    place = words.after(words.start, "桜")
    further = dict(words.signs_after(place))
    assert further["花"] == words.after(words.start, "桜花")
    assert "龘" not in further
    assert words.after(words.start, "桜龘") == NOWHERE
    assert words.words(words.after(words.start, "桜花"))
