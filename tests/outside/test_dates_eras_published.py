"""Days on which eras began, converted by the program and as two published tables convert them.

Sources: the tables of the PyPI packages japanera (2.1.3, MIT) and jeraconv (0.2.1, MIT), each of
which gives the Gregorian day on which every era began; neither says which chronology it follows.
The program has the Japanese month and day of CLDR, and computes. Both tables put the beginning of
Meiji otherwise: see ``OTHERWISE``.
"""

from __future__ import annotations

import importlib
import json
from datetime import date
from importlib.resources import files

import pytest

from inscribe import tables
from inscribe.dates.calendar import lunisolar

OTHERWISE = {
    ("japanera", "明治"): date(1868, 1, 23),  # the year it was proclaimed for began then (by a day)
    ("jeraconv", "明治"): date(1868, 10, 24),  # a day after the proclamation
}


def published(package: str) -> dict[str, date]:
    """Return the first day of each era from 1600 on, as a package has it."""
    pytest.importorskip(package, reason=f"{package} is not installed")
    found = {}
    if package == "japanera":
        data = importlib.import_module("japanera.era_data")
        for name, value in vars(data).items():
            if name.startswith("_ERA_DATA"):
                found |= {row[0]: row[2] for row in value if row[2]}
    else:
        text = files(package).joinpath("data/jeraconv.json").read_text("utf-8")
        for era, each in json.loads(text).items():
            found[era] = date(*each["start"].values())
    return {era: day for era, day in found.items() if 1600 <= day.year <= 1872}


def computed() -> dict[str, date]:
    """Return the first day of each era from 1600 on as the program converts it."""
    found = {}
    for row in tables.rows("eras"):
        if row["month"] and 1600 <= int(row["year"]) <= 1872:
            day = lunisolar.LunarDay(int(row["year"]), int(row["month"]), False, int(row["day"]))
            gregorian = lunisolar.to_gregorian(day)
            assert gregorian is not None
            found[row["written"]] = gregorian
    return found


@pytest.mark.parametrize("package", ["japanera", "jeraconv"])
def test_eras_begin_on_the_days_of_a_published_table(package: str) -> None:
    ours, theirs = computed(), published(package)
    assert len(ours) >= 35
    assert ours.keys() == theirs.keys()
    other = {(package, era): theirs[era] for era in ours if ours[era] != theirs[era]}
    assert other == {key: day for key, day in OTHERWISE.items() if key[0] == package}
