"""Whole answers about signs, each looked at: what is made of a text, how two signs are related.

``tests/data/answers/forms.jsonl`` has a question and its answer a line. A change of an answer has
to be looked at, and then written there.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from inscribe.forms import describe, found, likeness, normalise_text, relation

LINES = (Path(__file__).parent / "data/answers/forms.jsonl").read_text("utf-8").splitlines()
Case = dict[str, Any]


def cases(kind: str) -> list[Any]:
    asked = [json.loads(line) for line in LINES]
    return [pytest.param(case, id=str(case[kind])) for case in asked if kind in case]


@pytest.mark.parametrize("case", cases("text"))
def test_all_that_becomes_of_a_text(case: Case) -> None:
    found = normalise_text(case["text"])
    changes = [
        [c.sign, c.before, c.after, c.kind, c.table, c.note, c.doubtful] for c in found.changes
    ]
    assert {
        "text": found.text,
        "origin": list(found.origin),
        "changes": changes,
    } == case["answer"]


@pytest.mark.parametrize("case", cases("pair"))
def test_how_two_signs_are_related(case: Case) -> None:
    found = relation(*case["pair"])
    assert [found.kind, found.table, found.note, found.is_same_character] == case["answer"]


@pytest.mark.parametrize("case", cases("sign"))
def test_all_that_is_said_of_a_sign(case: Case) -> None:
    assert json.loads(json.dumps(describe(case["sign"]).to_dict())) == case["answer"]


@pytest.mark.parametrize("case", cases("parts"))
def test_which_signs_are_found_first(case: Case) -> None:
    strokes = tuple(case["strokes"]) if case["strokes"] else None
    signs = found(tuple(case["parts"]), case["reading"], strokes)
    assert list(signs[: len(case["answer"])]) == case["answer"]


@pytest.mark.parametrize("case", cases("alike"))
def test_how_alike_two_signs_are(case: Case) -> None:
    alike = likeness(*case["alike"])
    assert (list(alike) if alike else None) == case["answer"]
