"""What is said of a record that contradicts itself: each whole message, and what to do.

``tests/data/answers/record_messages.jsonl`` has a part of a record and its messages a line: the
program's own, looked over. ``python tests/test_record_messages.py`` writes the messages anew.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from inscribe.errors import InscribeError
from inscribe.record import loads

FILE = Path(__file__).parent / "data/answers/record_messages.jsonl"
HEAD = 'id = "X-1"\nkind = "kozuka"\n'
INSCRIPTION = '[[inscription]]\nplace = "back"\ntext = "武州住／嶺暁作"\n'


def kept() -> list[tuple[str, str, list[str]]]:
    lines = map(json.loads, FILE.read_text("utf-8").splitlines())
    return [(line["about"], line["record"], line["said"]) for line in lines]


def said(part: str) -> list[str]:
    text = HEAD + part.replace("INSCRIPTION", INSCRIPTION)
    try:
        loads(text, "x.toml")
    except InscribeError as error:
        return [line.strip() for line in str(error).splitlines()]
    return []


@pytest.mark.parametrize(
    ("part", "expected"), [pytest.param(part, said_of, id=about) for about, part, said_of in kept()]
)
def test_what_is_said_of_a_record(part: str, expected: list[str]) -> None:
    assert said(part) == expected


def main() -> None:
    rows = [{"about": a, "record": part, "said": said(part)} for a, part, _ in kept()]
    lines = (json.dumps(row, ensure_ascii=False) for row in rows)
    FILE.write_text("".join(f"{line}\n" for line in lines), "utf-8")


if __name__ == "__main__":
    main()
