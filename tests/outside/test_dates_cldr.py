"""The eras against Unicode CLDR 48 (npm: cldr-core, supplemental/calendarData.json).

Set INSCRIBE_CLDR to the folder of the unpacked package; the test is skipped without it. Era names
are not in that file, so first days are compared in order.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from inscribe.dates.calendar import eras

NOT_IN_CLDR = frozenset(
    ("正慶", "暦応", "康永", "貞和", "観応", "文和", "延文", "康安", "貞治", "応安", "永和", "永徳")
)
# CLDR says 1387-8-22 of 至徳 (it was 1384-2-27) and gives 明治 its Gregorian first day.
OTHERWISE_IN_CLDR = {"至徳": (1387, 8, 22), "明治": (1868, 10, 23)}


def test_first_days_are_those_of_cldr() -> None:
    folder = os.environ.get("INSCRIBE_CLDR")
    if not folder:
        pytest.skip("INSCRIBE_CLDR does not name a folder with CLDR")
    path = Path(folder) / "supplemental/calendarData.json"
    data = json.loads(path.read_text("utf-8"))["supplemental"]["calendarData"]["japanese"]
    published = sorted(
        tuple(int(part) for part in era["_start"].split("-")) for era in data["eras"].values()
    )
    ours = sorted(
        OTHERWISE_IN_CLDR.get(era.name, era.start)
        for era in eras.by_name().values()
        if era.name not in NOT_IN_CLDR
    )
    assert ours == published
