"""A reading is a value: it can be copied and kept, and nothing of it can be changed."""

from __future__ import annotations

import copy
import pickle

import pytest

from inscribe.reading import Proposal, Token, read_text

TOKEN = Token("露岳", "露岳", "ろがく", "Rogaku", 0, 1)


def test_a_proposal_says_its_words_in_kana() -> None:
    assert Proposal((TOKEN,), "Rogaku", 1.0).kana == "ろがく"


@pytest.mark.parametrize("text", ["於東都應需造之", "春過て夏来にけらし白妙の衣ほすてふ天の香具山"])
def test_a_reading_can_be_copied_and_pickled(text: str) -> None:
    reading = read_text(text)
    assert pickle.loads(pickle.dumps(reading)) == copy.deepcopy(reading) == reading


def test_a_proposal_cannot_be_changed() -> None:
    proposal = Proposal((TOKEN,), "Rogaku", 1.0)
    with pytest.raises(AttributeError):
        proposal.romaji = "Tsuyutake"  # type: ignore[misc]  # that is what is tested
