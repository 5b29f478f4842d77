"""What is read as one word and shown as several: nouns, particles and verbs that lean on them."""

from __future__ import annotations

import pytest

from inscribe.reading import read_text
from inscribe.reading.lexicon.groups import groups
from inscribe.reading.lexicon.nouns import noun_rows
from inscribe.reading.lexicon.verbs import verb_rows

# Division by the ALA-LC romanization table for Japanese, from memory: nouns and particles are words
# of their own, two particles in a row two words (e no, ni wa, de wa).
DIVIDED = [
    ("春過て夏来にけらし白妙の衣ほすてふ天の香具山", "natsu kinikerashi"),  # Shin Kokinshu 175
    ("春過て夏来にけらし白妙の衣ほすてふ天の香具山", "hosu chō"),
    ("みよしのの山の秋風さよふけてふるさと寒く衣うつなり", "sayo fukete"),  # Shin Kokinshu 483
    ("秋来ぬと目にはさやかに見えねども風の音にぞおどろかれぬる", "aki kinu to"),  # Kokinshu 169
    ("秋来ぬと目にはさやかに見えねども風の音にぞおどろかれぬる", "me ni wa"),
    ("秋来ぬと目にはさやかに見えねども風の音にぞおどろかれぬる", "oto ni zo"),
    ("花の色はうつりにけりないたづらに我が身世にふるながめせしまに", "wa ga mi yo ni"),  # 113
    ("山里は冬ぞさびしさまさりける人目も草もかれぬと思へば", "karenu to"),  # Kokinshu 315
    ("我が恋を人知るらめや敷妙の枕のみこそ知らば知るらめ", "makura nomi koso"),  # Kokinshu 504
    ("散ればこそいとど桜はめでたけれ憂き世になにか久しかるべき", "chireba koso"),  # Ise 82
]


@pytest.mark.parametrize(("poem", "words"), DIVIDED)
def test_words_stand_apart(poem: str, words: str) -> None:
    assert words in read_text(poem).proposals[0].romaji


def test_the_particle_kana_at_a_poems_end_is_one_word() -> None:
    tokens = read_text("忍ぶれど色に出でにけり我が恋はものや思ふと人の問ふかな").proposals[0].tokens
    assert [token.normalised for token in tokens[-2:]] != ["か", "な"]


def test_words_tile_the_text_they_are_shown_for() -> None:
    poem = "春過て夏来にけらし白妙の衣ほすてふ天の香具山"
    tokens = read_text(poem).proposals[0].tokens
    assert "".join(token.normalised for token in tokens) == poem
    assert [token.first for token in tokens[1:]] == [token.last + 1 for token in tokens[:-1]]


def test_every_group_has_an_entry() -> None:
    known = {(written, historical) for written, historical, *_ in noun_rows()}
    known |= {(row.written, row.historical) for row in verb_rows()}
    bare = [key for key, group in groups().items() if "助詞" not in group.parts_of_speech[-1]]
    assert [key for key in bare if key not in known] == []
