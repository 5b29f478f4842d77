"""A line ends where editors end it: at a line feed, a carriage return, or both together."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, strategies as st

from inscribe import files, tables
from inscribe.cli import cli
from inscribe.errors import InputError

ENDS = st.sampled_from(["\n", "\r", "\r\n"])
WORDS = st.text("花のa", max_size=3)


@given(st.lists(st.tuples(WORDS, ENDS)), WORDS)
def test_lines_are_those_of_the_whole_text(lines: list[tuple[str, str]], last: str) -> None:
    written = "".join(word + end for word, end in lines) + last
    expected = io.StringIO(written, newline=None).read()  # as Python reads a text file
    assert files.decode(written.encode(), "a.txt") == expected
    read = files.bounded_lines(io.BytesIO(written.encode()), "a.txt")
    assert [files.decode(line, "a.txt") for line in read] == expected.splitlines(keepends=True)


@pytest.mark.parametrize("end", ["\r", "\r\n", "\n"])
def test_a_line_is_named_as_the_editor_names_it(end: str, tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    path.write_bytes(end.join(["花", "の", "色"]).encode() + b"\xff")
    for read in (lambda: files.read_text(path), lambda: list(files.read_lines(path))):
        with pytest.raises(InputError) as raised:
            read()
        assert (raised.value.place.line, raised.value.place.column) == (3, 2)


@pytest.mark.parametrize("end", ["\r", "\r\n", "\n"])
def test_texts_a_line(end: str) -> None:
    given_texts = end.join(["嶺暁作", "［", "露岳作"]) + end
    done = CliRunner().invoke(cli, ["read", "--lines", "--format", "jsonl"], input=given_texts)
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    assert [each.get("text") or each["line"] for each in answers] == ["嶺暁作", 2, "露岳作"]


@pytest.mark.parametrize("end", ["\r", "\r\n", "\n"])
def test_rows_of_a_table(end: str, tmp_path: Path) -> None:
    lines = ["# note", "written\tkana", "花\tか", "色\tいろ"]
    (tmp_path / "small.tsv").write_bytes(end.join(lines).encode())
    tables.add_folder(tmp_path)
    assert [tuple(row.values()) for row in tables.rows("small")] == [("花", "か"), ("色", "いろ")]
    assert tables.Search("small").first_about("色") == {"written": "色", "kana": "いろ"}
    tables.remove_folder(tmp_path)
