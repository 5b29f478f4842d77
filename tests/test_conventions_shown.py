"""``--conventions``: the table of the notation, fit for a terminal, and nothing else done."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.report.terminal.reading import width


@pytest.mark.parametrize("command", ["read", "new"])
def test_how_a_transcription_is_written_is_shown(command: str) -> None:
    shown = CliRunner().invoke(cli, [command, "--conventions"], env={"COLUMNS": "80"})
    assert shown.exit_code == 0
    lines = shown.output.splitlines()
    assert max(map(width, lines)) <= 80
    row = next(line for line in lines if line.startswith("doubtful"))
    assert row.split() == ["doubtful", "花(カ)", "花(?)"]
    assert "``" not in shown.output
    assert ">>>" not in shown.output
