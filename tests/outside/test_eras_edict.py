"""First days of eras against EDICT (EDRDG; Debian package edict, CC BY-SA), lunisolar as there.

Two eras of two courts are counted by the other court there: 建武 and 明徳.
"""

from __future__ import annotations

import re

import debian
import pytest

from inscribe import tables

EDICT = debian.FOLDER / "edict/edict"
ENTRY = re.compile(r"(\S+) \[[^\]]+\].* era \((\d{3,4})\.(\d+)\.(\d+)-")
OF_TWO_COURTS = {"建武", "明徳"}


def test_eras_begin_on_the_days_that_edict_gives() -> None:
    if not EDICT.exists():
        pytest.skip("the Debian package edict is not installed")
    published = {
        found[1].split(";")[0]: tuple(map(int, found.groups()[1:]))
        for line in EDICT.read_bytes().decode("euc_jp", "replace").split("\n")
        if (found := ENTRY.match(line))
    }
    ours = {
        row["written"]: (int(row["year"]), int(row["month"]), int(row["day"]))
        for row in tables.rows("eras")
        if row["written"] in published and row["month"]
    }
    assert len(ours) > 200
    assert {name for name in ours if ours[name] != published[name]} <= OF_TWO_COURTS
    assert ours["応仁"] == (1467, 3, 5)
    assert ours["長享"] == (1487, 7, 20)
