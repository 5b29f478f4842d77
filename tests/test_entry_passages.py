"""Entries that name each passage of an inscription: what it is, who did what, how it is read."""

from __future__ import annotations

import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli

POEM = "霞たちこのめも春の雪ふれは\n花なきさとも花そちりける"
SOURCE = "霞たちこのめもはるの雪ふれば\n花なきさとも花ぞちりける"  # Kokinshu 9, from memory


def entry(folder: Path, shape: str, text: str, *more: str) -> str:
    record = folder / "T-1.toml"
    record.write_text(
        f'id = "T-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\n'
        f'text = """\n{text}\n"""\n[inscription.source]\ntext = """\n{SOURCE}\n"""\nid = "s"\n',
        encoding="utf-8",
    )
    out = folder / f"T-1.{shape}"
    made = CliRunner().invoke(cli, ["entry", str(record), "--format", shape, "-o", str(out), *more])
    assert made.exit_code == 0, made.output
    if shape == "docx":
        with zipfile.ZipFile(out) as held:
            return held.read("word/document.xml").decode("utf-8")
    return out.read_text(encoding="utf-8")


@pytest.mark.parametrize("shape", ["md", "html", "docx"])
def test_each_passage_is_named_with_its_role_and_reading(tmp_path: Path, shape: str) -> None:
    found = entry(tmp_path, shape, f"{POEM}\n楓畦書\n鷺坂苗道刻之（花押）")
    for said in ("Verse", "Signature (wrote)", "Signature (carved)", "Fūkei sho", "「楓畦書」"):
        assert said in found
    assert "Beside the copied text" in found


@pytest.mark.parametrize("shape", ["md", "html"])
def test_a_poem_alone_is_not_named_twice(tmp_path: Path, shape: str) -> None:
    found = entry(tmp_path, shape, POEM)
    assert "Verse" not in found
    assert "Beside the copied text" not in found
