"""The guide: its chapters, its Python examples, the pages made of it, the example collection."""

from __future__ import annotations

import doctest
import shutil
import subprocess
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe.cli import COMMANDS, cli
from inscribe.guide import CHAPTERS, chapter
from inscribe.record import RECORD

ROOT = Path(__file__).parent.parent


def run(*arguments: str) -> Result:
    return CliRunner().invoke(cli, arguments)


@pytest.mark.parametrize("name", CHAPTERS)
def test_each_chapter_can_be_shown(name: str) -> None:
    result = run("guide", name)
    assert result.exit_code == 0
    assert result.stdout.startswith("# ")
    assert name in run("guide").stdout


def test_the_chapter_on_records_tells_every_key() -> None:
    told = chapter("record")
    tables = [RECORD]
    for table in tables:
        for field in table.fields:
            assert f"- `{field.key}`" in told
            tables += [field.table] if field.table else []
    assert len(tables) > 8


def test_no_chapter_names_a_command_or_chapter_that_is_none() -> None:
    import re

    for name in CHAPTERS:
        for line in chapter(name).splitlines():
            for command in re.findall(r"(?:^|`|\$ )inscribe ([a-z]+)", line):
                assert command in COMMANDS, line
            for other in re.findall(r"inscribe guide ([a-z-]+)", line):
                assert other in CHAPTERS, line


def test_the_python_examples_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "collection").symlink_to(ROOT / "examples")
    monkeypatch.chdir(tmp_path)
    text = chapter("library").replace("```", "")
    test = doctest.DocTestParser().get_doctest(text, {}, "library.md", "library.md", 0)
    assert len(test.examples) > 8
    said: list[str] = []
    assert doctest.DocTestRunner().run(test, out=said.append).failed == 0, "".join(said)


def test_manual_pages_are_made_of_every_command_and_chapter(tmp_path: Path) -> None:
    assert run("guide", "--man", str(tmp_path)).exit_code == 0
    pages = {path.stem for path in tmp_path.rglob("inscribe*")}
    assert {f"inscribe-{name}" for name in (*COMMANDS, *CHAPTERS)} <= pages
    page = (tmp_path / "man1/inscribe-collate.1").read_text("utf-8")
    assert r"\fB\-\-strict\fR" in page
    assert "Hold a copy against its source" in page


def test_manual_pages_are_whole(tmp_path: Path) -> None:
    run("guide", "--man", str(tmp_path))
    for path in tmp_path.rglob("inscribe*"):
        page = path.read_text("utf-8")
        assert not page.partition(".SH NAME\n")[2].splitlines()[0].endswith("..."), path
        assert ".SH EXAMPLES\n.nf\n\n" not in page, path
        assert "`" not in page, path


@pytest.mark.skipif(shutil.which("groff") is None, reason="groff is not installed")
def test_manual_pages_are_sound(tmp_path: Path) -> None:
    run("guide", "--man", str(tmp_path))
    for path in (*tmp_path.glob("man1/*"), *tmp_path.glob("man7/*")):
        done = subprocess.run(
            ["groff", "-man", "-Kutf8", "-Tutf8", "-ww", "-z", str(path)],
            capture_output=True,
            text=True,
            check=False,
        )
        assert done.stderr == "", path


def test_the_example_collection_is_laid_down_once(tmp_path: Path) -> None:
    folder = tmp_path / "collection"
    assert run("example", str(folder)).exit_code == 0
    assert len(list(folder.glob("*.toml"))) == len(list((ROOT / "examples").glob("*.toml")))
    assert run("check", str(folder)).exit_code == run("check", str(ROOT / "examples")).exit_code
    changed = folder / "DEMO-001.toml"
    changed.write_text("mine", "utf-8")
    again = run("example", str(folder))
    assert "is there already" in str(again.exception)
    assert changed.read_text("utf-8") == "mine"
    assert run("example", str(folder), "--force").exit_code == 0
    assert changed.read_text("utf-8") != "mine"
