"""Letters and box notes in the polite written style: order and endings follow from grammar.

The readings are those of handbooks of old documents (common practice, no single source).
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from inscribe import read_text


@pytest.mark.parametrize(
    ("carved", "said"),
    [
        ("此品差上申候", "kono shina sashiage mōshi sōrō"),
        ("金子請取申候", "kinsu uketori mōshi sōrō"),
        ("早々可被遣候", "sōsō tsukawasarubeku sōrō"),
        ("疑無之候", "utagai kore naku sōrō"),
        ("他見ハ不可許", "taken wa yurusubekarazu"),
        ("為後日差出置候", "gojitsu no tame sashidashioki sōrō"),
    ],
)
def test_what_follows_decides_the_ending(carved: str, said: str) -> None:
    """不, 可, 被 come behind their verb; 候 wants the conjunctive form."""
    found = read_text(carved).proposals[0].romaji
    assert found.replace(" ", "") == said.replace(" ", "")


@pytest.mark.parametrize(
    "carved", ["不動明王ノ図", "花の色はうつりにけりな", "武州住嶺暁作", "可笑しき事"]
)
def test_other_texts_are_no_letters(carved: str) -> None:
    """A word that begins with 不 or 可 turns nothing."""
    from inscribe.reading.chinese import is_letter

    assert not is_letter(carved)


def test_the_signs_of_a_turned_word_are_kept() -> None:
    """Every sign is read once, though the order is another."""
    best = read_text("早々可被遣候").proposals[0]
    assert sorted(at for token in best.tokens for at in range(token.first, token.last + 1)) == list(
        range(6)
    )


@settings(max_examples=150, deadline=None)
@given(st.text(alphabet="候不可被令以為者之江而度間敷申下渡品御ニは", min_size=1, max_size=12))
def test_whatever_stands_there_every_sign_is_read_once(carved: str) -> None:
    """No row of such signs stops the reader or loses one of them."""
    from inscribe.reading.chinese import letter_words
    from inscribe.reading.prose import prose_words

    words, order = letter_words(carved, prose_words)
    assert sorted(order) == list(range(len(carved)))
    assert [sign for word in words for sign in word.written] == [carved[at] for at in order]
