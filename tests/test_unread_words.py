"""Words of a reading, in every format: a worn sign is □, what is restored stands in brackets."""

from __future__ import annotations

import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli

EXAMPLE = Path(__file__).parent.parent / "examples" / "DEMO-004.toml"


@pytest.mark.parametrize(
    "format_name", ["html", "handout", "docx", "slides", "csv", "tei", "lido", "json", "md"]
)
def test_worn_signs_are_never_words_that_are_read(format_name: str, tmp_path: Path) -> None:
    out = tmp_path / f"entry.{format_name}"
    arguments = ["entry", str(EXAMPLE), "--format", format_name, "-o", str(out)]
    assert CliRunner().invoke(cli, arguments).exit_code in (0, 1)
    if format_name == "docx":
        with zipfile.ZipFile(out) as packed:
            text = packed.read("word/document.xml").decode()
    else:
        text = out.read_text("utf-8")
    assert "autumn leaves" not in text
    assert "紅葉</rb>" not in text
    assert "<ruby>紅葉" not in text
    assert '"紅葉"' not in text


def test_what_is_restored_stands_in_brackets(tmp_path: Path) -> None:
    out = tmp_path / "entry"
    CliRunner().invoke(cli, ["entry", str(EXAMPLE), "--format", "html", "-o", str(out)])
    assert "とま［や］" in out.read_text("utf-8")
    out = tmp_path / "entry.xml"
    CliRunner().invoke(cli, ["entry", str(EXAMPLE), "--format", "tei", "-o", str(out)])
    assert 'とま<supplied reason="lost">や</supplied>の［' in out.read_text("utf-8")
