"""A folder's entries, written as they are made, are what they are when all are made first."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli, entry as entry_command
from inscribe.cli.entries.formats import ENDINGS, formats
from inscribe.cli.entry import ALONE, JOINED
from inscribe.entry import entries_in
from inscribe.report import Style

EXAMPLES = Path(__file__).parent.parent / "examples"


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from inscribe.reading.mecab import cache_folder

    cache = tmp_path / "cache"
    shutil.copytree(cache_folder(), cache, ignore=shutil.ignore_patterns("kept-*"))
    monkeypatch.setenv("INSCRIBE_CACHE", str(cache))
    monkeypatch.setenv("INSCRIBE_LIBRARY", str(tmp_path / "none.sqlite"))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copytree(EXAMPLES, tmp_path / "records")
    return tmp_path / "records"


def written(*arguments: str) -> str:
    result = CliRunner().invoke(cli, ["entry", *arguments], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.stdout_bytes.decode()


@pytest.mark.parametrize("form", JOINED)
def test_pieces_are_one_document(form: str, folder: Path) -> None:
    entries = [entry for _, entry in entries_in(folder)]
    whole = formats()[form](entries, Style())
    for _ in range(2):  # made, and as kept
        assert written(str(folder), "--format", form).rstrip("\n") == whole.rstrip("\n")
    out = folder.parent / "out"
    written(str(folder), "--format", form, "-o", str(out))
    assert out.read_bytes().decode("utf-8-sig").rstrip("\n") == whole.rstrip("\n")


@pytest.mark.parametrize("form", ALONE)
def test_each_entry_is_the_file_it_is_by_itself(
    form: str, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """They are made one after the other: the way that holds all entries is not taken."""
    monkeypatch.setattr(entry_command, "_entries", None)
    expected = {path.stem: formats()[form]([entry], Style()) for path, entry in entries_in(folder)}
    out = folder.parent / "out"
    out.mkdir()
    written(str(folder), "--format", form, "-o", str(out))
    files = {file.stem: file.read_text("utf-8") for file in out.rglob(f"*.{ENDINGS[form]}")}
    assert {stem: text.rstrip("\n") for stem, text in files.items()} == {
        stem: str(text).rstrip("\n") for stem, text in expected.items()
    }


def test_what_is_kept_follows_record_style_and_labels(folder: Path) -> None:
    before = written(str(folder), "--format", "md")
    assert written(str(folder), "--format", "md", "--labels", "ja") != before
    assert written(str(folder), "--format", "md") == before
    record = folder / "DEMO-001.toml"
    record.write_text(record.read_text("utf-8").replace("DEMO-001", "OTHER-001"), "utf-8")
    assert written(str(folder), "--format", "md") == before.replace("DEMO-001", "OTHER-001")


def test_a_record_that_cannot_be_used_is_left_out_and_named(folder: Path) -> None:
    (folder / "X.toml").write_text("id = 3", "utf-8")
    result = CliRunner().invoke(cli, ["entry", str(folder)], standalone_mode=False)
    assert result.return_value == 1
    assert "X.toml" in result.stderr
    assert "DEMO-015" in result.stdout


def test_nothing_is_left_where_no_record_can_be_used(tmp_path: Path) -> None:
    folder = tmp_path / "bad"
    folder.mkdir()
    for name in "ab":
        (folder / f"{name}.toml").write_text("id = 3", "utf-8")
    out = tmp_path / "out.md"
    result = CliRunner().invoke(cli, ["entry", str(folder), "-o", str(out)])
    assert result.exception
    assert "b.toml" in str(result.exception)
    assert [path.name for path in tmp_path.iterdir() if path.name.startswith((".out", "out"))] == []
