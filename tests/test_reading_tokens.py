"""A proposal makes its tokens when they are asked for, and is the same before and after."""

from __future__ import annotations

import copy
import pickle

import pytest

from inscribe.reading import Proposal, Token, read_text

TOKEN = Token("露岳", "露岳", "ろがく", "Rogaku", 0, 1)


def test_tokens_are_made_once_and_when_asked_for() -> None:
    made = []

    def make() -> tuple[Token, ...]:
        made.append(TOKEN)
        return (TOKEN,)

    proposal = Proposal(make, "Rogaku", 1.0)
    assert made == []
    assert proposal.kana == "ろがく"
    assert proposal.tokens == (TOKEN,)
    assert made == [TOKEN]


def test_a_proposal_whose_tokens_are_not_made_equals_one_with_them() -> None:
    late, early = Proposal(lambda: (TOKEN,), "Rogaku", 1.0), Proposal((TOKEN,), "Rogaku", 1.0)
    assert late == early
    assert hash(late) == hash(early)
    assert late.replaced(romaji="Tsuyutake").tokens == (TOKEN,)


@pytest.mark.parametrize("text", ["於東都應需造之", "春過て夏来にけらし白妙の衣ほすてふ天の香具山"])
def test_a_reading_can_be_copied_and_pickled(text: str) -> None:
    reading = read_text(text)
    assert pickle.loads(pickle.dumps(reading)) == copy.deepcopy(reading) == reading


def test_a_proposal_cannot_be_changed() -> None:
    proposal = Proposal((TOKEN,), "Rogaku", 1.0)
    with pytest.raises(AttributeError):
        proposal.romaji = "Tsuyutake"
    with pytest.raises(AttributeError):
        _ = proposal.meaning
