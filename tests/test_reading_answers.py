"""What is read of usual inscriptions, each looked at: words, signature parts, phrases, passages.

``tests/data/answers/readings.jsonl`` has a text and its answer a line. Left out are chances, other
readings and glosses, which further words change. Only texts on whose reading nobody would differ
are here; a change has to be looked at.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from inscribe.notation import parse
from inscribe.reading import read

LINES = (Path(__file__).parent / "data/answers/readings.jsonl").read_text("utf-8").splitlines()
CASES = [pytest.param(case, id=case["text"]) for case in map(json.loads, LINES)]


def told(part: Any) -> Any:
    if isinstance(part, dict):
        return part["text"]
    return [each["text"] for each in part] if isinstance(part, list) else part


@pytest.mark.parametrize("case", CASES)
def test_what_is_read(case: dict[str, Any]) -> None:
    found: Any = read(parse(case["text"])).to_dict()
    words = [[t["surface"], t["kana"], t["signs"], t["grammar"]] for t in found["tokens"]]
    answer = {
        "kana": found["kana"],
        "romaji": found["romaji"],
        "register": found["register"],
        "tokens": words,
        "signature": {key: told(part) for key, part in (found["signature"] or {}).items()},
        "dates": [[date["text"], date["year"]] for date in found["dates"]],
        "phrases": found["phrases"],
        "passages": [[each["kind"], each["signs"]] for each in found["passages"]],
    }
    assert json.loads(json.dumps(answer)) == case["answer"]
