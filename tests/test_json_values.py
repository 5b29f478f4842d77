"""Every key of the JSON that commands print, asserted with a value (see ``json_values.py``)."""

from __future__ import annotations

import json
from collections import defaultdict

import pytest
from click.testing import CliRunner
from json_values import EXAMPLES, Row, Workplace, at, promised, rows, shown, tells

from inscribe.cli import cli

# Printed by no example here: of lines that cannot be used (below), and of texts with a licence.
ELSEWHERE = {
    ("refused-line", "error"),
    ("refused-line", "id"),
    ("refused-line", "line"),
    ("collate", "id"),
    ("source-list", "licence"),
    ("source-list", "provenance"),
}
CLOSE = 0.05  # by which a chance may change with the tables


def by_example() -> dict[str, list[Row]]:
    found: defaultdict[str, list[Row]] = defaultdict(list)
    for row in rows():
        found[row[2]].append(row)
    return found


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Workplace:
    return Workplace(tmp_path_factory.mktemp("place"))


@pytest.mark.parametrize("example", by_example())
def test_the_keys_of_an_answer_have_their_values(example: str, place: Workplace) -> None:
    if example == "measure":
        pytest.importorskip("cv2")
    answer = place.answer(example)
    for name, key, _, path, value in by_example()[example]:
        expected, found = json.loads(value), shown(at(answer, path))
        if isinstance(expected, float):
            assert found == pytest.approx(expected, rel=CLOSE, abs=CLOSE), f"{name}.{key}"
        else:
            assert found == expected, f"{name}.{key}"


def test_no_key_is_left_out() -> None:
    assert promised() - {(name, key) for name, key, *_ in rows()} == ELSEWHERE
    assert {row[2] for row in rows()} <= EXAMPLES.keys()


def test_most_keys_have_a_value_that_tells_something() -> None:
    silent = [row for row in rows() if not tells(json.loads(row[4]))]
    assert len(silent) < len(rows()) / 16, silent


def test_a_line_that_cannot_be_used_has_its_number_and_why() -> None:
    given = "花の色は\n［花\n"
    done = CliRunner().invoke(cli, ["read", "--lines", "--format", "jsonl"], input=given)
    _, refused = map(json.loads, done.stdout.splitlines())
    assert refused["line"] == 2
    assert "［" in refused["error"]
    pairs = '{"id": "a", "copy": "花の", "source": "花の"}\n{"id": "b", "copy": "［花"}\n'
    arguments = ["collate", "--pairs", "-", "--format", "jsonl"]
    done = CliRunner().invoke(cli, arguments, input=pairs)
    first, second = map(json.loads, done.stdout.splitlines())
    assert (first["id"], second["id"], second["line"]) == ("a", "b", 2)
