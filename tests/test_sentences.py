"""Every sentence that is said of some two hundred examples (see ``sentences.py``)."""

from __future__ import annotations

import pytest
from sentences import kept, said


@pytest.mark.parametrize(
    ("kind", "given", "expected"), [pytest.param(*row, id=f"{row[0]}: {row[1]}") for row in kept()]
)
def test_what_is_said(kind: str, given: str, expected: list[str]) -> None:
    assert said(kind, given) == expected
