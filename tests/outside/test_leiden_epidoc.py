"""The Leiden conventions and their TEI, as the EpiDoc guidelines set them side by side.

Source: EpiDoc Guidelines, "Krummrey-Panciera sigla and Leiden+" (the crosswalk of sigla to TEI
elements); the pairs are typed from memory. Each text is parsed as Leiden, written as TEI, and
the elements that the crosswalk names are looked for; then read as XML.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli

CROSSWALK = [
    ("春[夜]夢", '<supplied reason="lost">', "lost, restored by the editor"),
    ("春夜̣夢", "<unclear>", "doubtful out of its context"),
    pytest.param(
        *("春[.]夢", '<gap reason="lost"', "lost, so many signs"),
        marks=pytest.mark.xfail(reason="a sign that is lost is told as one that is illegible"),
    ),
    ("春.夢", '<gap reason="illegible" quantity="1" unit="character"', "illegible, one sign"),
    ("春[---]夢", '<gap reason="lost" extent="unknown"', "lost, of unknown extent"),
    ("春⟦夜⟧夢", "<del", "erased in antiquity"),
    ("春{夜}夢", "<surplus>", "superfluous"),
    ("春<夜>夢", '<supplied reason="omitted">', "left out by mistake, added by the editor"),
]


@pytest.mark.parametrize(("leiden", "element", "meaning"), CROSSWALK)
def test_a_siglum_becomes_its_element(
    leiden: str, element: str, meaning: str, tmp_path: Path
) -> None:
    record = tmp_path / "r.toml"
    record.write_text(
        f'id = "X-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "{leiden}"\n'
        'notation = "leiden"\n',
        "utf-8",
    )
    done = CliRunner().invoke(cli, ["entry", str(record), "--format", "tei"])
    assert done.exit_code == 0, (meaning, done.output)
    edition = re.sub(r"\s+", " ", done.output.partition('type="edition"')[2])
    assert element in edition, (meaning, edition[:600])
