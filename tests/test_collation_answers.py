"""Whole answers about copies and plates, each looked at: what every key says.

``tests/data/answers/collations.jsonl`` has, a line each, a copy, its source, the measured plate
where there is one (width, height, tolerance; top, bottom, x, width of columns; what takes room;
boxes of signs), and the answer as ``inscribe collate --format json`` prints it. The plates are
invented; there is one for each verdict. A change of an answer has to be looked at, and then
written there.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from inscribe.collation import Collation, collate
from inscribe.notation import parse
from inscribe.record import ColumnMeasure, Inscription, Obstacle, Plate, SignBox

LINES = (Path(__file__).parent / "data/answers/collations.jsonl").read_text("utf-8").splitlines()
CASES = {case["about"]: case for case in map(json.loads, LINES)}
Case = dict[str, Any]


def collated(case: Case) -> Collation:
    if "plate" not in case:
        return collate(parse(case["copy"]), parse(case["source"]))
    measured = Inscription(
        "back plate",
        case["copy"],
        plate=Plate(*case["plate"]) if case["plate"] else None,
        columns=tuple(ColumnMeasure(*column) for column in case["columns"]),
        takes_room=tuple(Obstacle(*taken) for taken in case["takes_room"]),
        boxes=tuple(SignBox(*box) for box in case.get("boxes", ())),
    )
    source = parse(case["source"])
    return collate(measured.transcription, source, measured, extent="whole")


def rounded(value: Any) -> Any:
    """Return an answer with its lengths and odds to three places."""
    if isinstance(value, float):
        return round(value, 3)
    if isinstance(value, dict):
        return {key: rounded(each) for key, each in value.items()}
    return [rounded(each) for each in value] if isinstance(value, list | tuple) else value


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_all_that_is_said_of_a_copy(case: Case) -> None:
    assert rounded(collated(case).to_dict()) == rounded(case["answer"])


def test_there_is_a_plate_for_every_verdict() -> None:
    spaces = [case["answer"]["space"] for case in CASES.values() if case["answer"]["space"]]
    verdicts = {each["verdict"] for space in spaces for each in space["verdicts"]}
    assert verdicts == {"forced", "eased", "undecided", "unexplained", "unmeasured"}


def test_a_plate_measured_less_surely_needs_no_force() -> None:
    """What a tighter hand had found room for depends on by how much the lengths may err."""
    sure = collated(CASES["eased: a tighter hand had found room"]).space
    unsure = collated(next(c for name, c in CASES.items() if "7 mm wrong" in name)).space
    assert sure is not None
    assert unsure is not None
    assert [each.verdict for each in sure.judgements] == ["forced", "eased", "eased"]
    assert [each.verdict for each in unsure.judgements] == ["eased", "eased", "eased"]
    assert [s.weight for s in sure.judgements] == [u.weight for u in unsure.judgements]
