"""What is said of worn places, each looked at: where they are, and what surely stood there.

``tests/data/answers/restorations.jsonl`` has a text and its answer a line: of the candidates only
the first, and only where it is likelier than all others together; further words change the rest.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from inscribe.notation import parse
from inscribe.restoring import restore

LINES = (Path(__file__).parent / "data/answers/restorations.jsonl").read_text("utf-8").splitlines()
CASES = [pytest.param(case, id=case["text"]) for case in map(json.loads, LINES)]
SURE = 0.5


def first(lacuna: dict[str, Any]) -> list[Any] | None:
    best, *_ = [*lacuna["candidates"], None]
    if best is None or best["probability"] < SURE:
        return None
    return [best["text"], best["forms"], [[e["kind"], e["text"]] for e in best["evidence"]]]


@pytest.mark.parametrize("case", CASES)
def test_what_is_said_of_worn_places(case: dict[str, Any]) -> None:
    found = json.loads(json.dumps(restore(parse(case["text"])).to_dict()))
    places = [
        {key: value for key, value in each.items() if key != "candidates"} | {"first": first(each)}
        for each in found["lacunae"]
    ]
    kept = {key: found[key] for key in ("register", "worn_places", "sources")}
    assert {**kept, "lacunae": places} == case["answer"]


@pytest.mark.parametrize("case", CASES)
def test_candidates_are_ranked_by_their_probability(case: dict[str, Any]) -> None:
    for lacuna in restore(parse(case["text"])).to_dict()["lacunae"]:
        chances = [each["probability"] for each in lacuna["candidates"]]
        assert chances == sorted(chances, reverse=True)
        assert [each["rank"] for each in lacuna["candidates"]] == list(range(1, len(chances) + 1))
        assert sum(chances) <= 1.001
