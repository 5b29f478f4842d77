"""Entries of many records in a folder: no file is lost, and a stopped run can be taken up again."""

from __future__ import annotations

import time
import unicodedata
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, strategies as st
from test_entry import EXAMPLES, ran

from inscribe.cli import cli
from inscribe.cli.entries.files import file_names
from inscribe.errors import InputError


@pytest.mark.parametrize("form", ["html", "svg", "docx"])
def test_a_run_into_a_folder_is_taken_up_again(form: str, tmp_path: Path) -> None:
    arguments = (str(EXAMPLES), "--format", form, "-o", f"{tmp_path}/pages/")
    assert ran(*arguments).exit_code == 0
    made = {file: file.read_bytes() for file in (tmp_path / "pages").iterdir() if file.is_file()}
    first, second, *_ = sorted(made)
    first.unlink()  # as if the run had been stopped before it
    before = second.stat().st_mtime_ns
    time.sleep(2.1)  # archives count in steps of two seconds
    assert ran(*arguments).exit_code == 0
    assert {
        file: file.read_bytes() for file in (tmp_path / "pages").iterdir() if file.is_file()
    } == made
    assert second.stat().st_mtime_ns == before


def test_what_somebody_else_wrote_is_kept_and_nothing_written(tmp_path: Path) -> None:
    pages = tmp_path / "pages"
    arguments = (str(EXAMPLES), "--format", "html", "-o", f"{pages}/")
    pages.mkdir()
    for name in ("DEMO-002.html", "DEMO-005.html"):
        (pages / name).write_text("mine", "utf-8")
    again = ran(*arguments)
    assert isinstance(again.exception, InputError)
    assert "DEMO-002.html" in str(again.exception)
    assert "1 more" in str(again.exception)
    assert {file.read_text("utf-8") for file in pages.iterdir() if file.is_file()} == {"mine"}
    assert ran(*arguments, "--force").exit_code == 0
    assert "mine" not in {file.read_text("utf-8") for file in pages.iterdir() if file.is_file()}


def test_no_drawing_takes_the_place_of_another(tmp_path: Path) -> None:
    records = tmp_path / "records"
    (records / "sub").mkdir(parents=True)
    two, one = (EXAMPLES / f"DEMO-0{n}.toml" for n in ("11", "08"))
    for name, record in {
        "A.toml": two,
        "A-2.toml": two,
        "A-2-2.toml": one,
        "a.toml": one,
        "sub/A.toml": one,
    }.items():
        (records / name).write_bytes(record.read_bytes())
    out = tmp_path / "out"
    run = ran(str(records), "--format", "svg", "-o", f"{out}/", "--force")
    assert run.exit_code == 0, run.exception
    files = [str(file.relative_to(out)) for file in out.rglob("*.svg")]
    assert len(files) == 7
    assert len({name.casefold() for name in files}) == 7
    assert {"A.svg", "A-2.svg", "A-2-2.svg", "sub/A.svg"} <= set(files)


@given(st.lists(st.tuples(st.text("Aa-23é\u0301e", min_size=1, max_size=4), st.integers(1, 4))))
def test_all_files_of_a_run_have_names_of_their_own(records: list[tuple[str, int]]) -> None:
    different = {f"{name}.toml": count for name, count in records}
    found = file_names([(Path(name), count) for name, count in different.items()], "svg")
    names = [unicodedata.normalize("NFC", str(path)).casefold() for each in found for path in each]
    assert len(names) == len(set(names)) == sum(different.values())


def test_the_byte_order_mark_is_for_spreadsheets_and_can_be_chosen(tmp_path: Path) -> None:
    record = str(EXAMPLES / "DEMO-001.toml")
    for number, (choice, output, marked) in enumerate(
        [
            ((), True, True),
            (("--no-byte-order-mark",), True, False),
            (("--byte-order-mark",), False, True),
            ((), False, False),
        ]
    ):
        for path in (record, str(EXAMPLES)):
            target = tmp_path / f"{number}-{Path(path).stem}.csv"
            to = ("-o", str(target)) if output else ("--format", "csv")
            result = CliRunner().invoke(cli, ["entry", path, *choice, *to, "--quiet"])
            text = target.read_text("utf-8") if output else result.stdout
            assert text.startswith("\ufeffid,") == marked, (choice, path)
            assert text.lstrip("\ufeff").startswith("id,")
    for path in (record, str(EXAMPLES)):  # each record to a file of its own
        for choice, marked in ((), True), (("--no-byte-order-mark",), False):
            folder = tmp_path / f"{Path(path).stem}-{marked}"
            asked = ["entry", path, "--format", "csv", "-o", f"{folder}/", *choice, "--quiet"]
            for _ in range(2):  # a second run finds what the first has written
                assert CliRunner().invoke(cli, asked).exit_code == 0
            written = [file.read_text("utf-8") for file in folder.rglob("*.csv")]
            assert written
            assert all(text.startswith("\ufeffid,") == marked for text in written)
    refused = CliRunner().invoke(cli, ["entry", record, "--format", "md", "--byte-order-mark"])
    assert refused.exit_code != 0
