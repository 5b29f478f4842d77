"""What is said of worn places, each looked at: where they are, and what surely stood there.

``tests/data/answers/restorations.jsonl`` has a text and its answer a line: of the candidates only
the first, and only where it is likelier than all others together; further words change the rest.
"""

import json
from pathlib import Path
from typing import Any

import pytest
from restorations import FILE, WORN, answer, library_in

from inscribe.notation import parse
from inscribe.restoring import restore

LINES = (Path(__file__).parent / "data/answers/restorations.jsonl").read_text("utf-8").splitlines()
CASES = [pytest.param(case, id=case["text"]) for case in map(json.loads, LINES)]
RESTORED = [
    pytest.param(case, id=f"{case['text']} {case['copied']}")
    for case in map(json.loads, FILE.read_text("utf-8").splitlines())
]
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


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return library_in(tmp_path_factory.mktemp("texts"))


@pytest.mark.parametrize("case", RESTORED)
def test_what_is_restored_by_sources_and_how_it_is_read(
    case: dict[str, Any], library: Path
) -> None:
    found = answer(case["text"], case["copied"], library)
    assert json.loads(json.dumps(found)) == case["answer"]


def test_every_worn_text_has_its_answer() -> None:
    lines = FILE.read_text("utf-8").splitlines()
    assert [(each["text"], each["copied"]) for each in map(json.loads, lines)] == [*WORN]
