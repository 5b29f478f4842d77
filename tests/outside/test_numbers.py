"""Signs of numbers against Unihan: kPrimaryNumeric and kAccountingNumeric (Debian unicode-data).

Unicode licence v3. Signs that Unihan gives no number are the table's own (廿 as two strokes, 卌).
"""

from __future__ import annotations

import bz2

import debian
import pytest

from inscribe import tables

NUMERIC = debian.FOLDER / "unicode/Unihan_NumericValues.txt.bz2"
PROPERTIES = ("kPrimaryNumeric", "kAccountingNumeric")


def test_numbers_are_those_of_unihan() -> None:
    if not NUMERIC.exists():
        pytest.skip("the Debian package unicode-data is not installed")
    published: dict[str, set[int]] = {}
    with bz2.open(NUMERIC, "rt", encoding="utf-8") as lines:
        for line in lines:
            code, *cells = line.rstrip("\n").split("\t")
            if code.startswith("U+") and cells[0] in PROPERTIES:
                published.setdefault(chr(int(code[2:], 16)), set()).update(
                    int(value) for value in cells[1].split()
                )
    compared = [row for row in tables.rows("numbers") if row["written"] in published]
    assert len(compared) > 20
    assert not [
        row["written"] for row in compared if int(row["value"]) not in published[row["written"]]
    ]
