"""Lines on a terminal: broken between words there, whole in a pipe."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from inscribe.report.terminal.reading import width
from inscribe.report.terminal.wrapping import fitted, wrapped

LINE = "reading       Tōto ni oite motome ni ōjite kore o tsukuru Kaei gonen chūshū"


def test_a_line_is_broken_between_words_and_indented(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "50")
    first, *rest = fitted(LINE, 14).split("\n")
    assert width(first) <= 50
    assert rest
    assert all(line.startswith(" " * 14) for line in rest)


def test_a_pipe_gets_a_fact_a_line(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("COLUMNS", raising=False)
    monkeypatch.setattr("os.get_terminal_size", _no_terminal)
    assert fitted(LINE, 14) == LINE


def _no_terminal(number: int) -> None:
    raise OSError(f"{number} is no terminal")


@given(st.text(alphabet="ab 花", max_size=80), st.integers(40, 120), st.integers(0, 20))
def test_wrapping_keeps_every_word(text: str, columns: int, indent: int) -> None:
    assert wrapped(text, columns, indent).split() == text.split()
