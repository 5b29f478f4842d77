"""The eras against Unicode CLDR 41 (Debian package unicode-cldr-core; Unicode licence v3).

First days are in supplementalData.xml, names in Japanese in ja.xml, both by the number of the era.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET

import debian
import pytest

from inscribe.dates.calendar import eras

NORTHERN_AND_ADDED = 12  # eras of the table that CLDR does not know
# CLDR 41 says 1387-8-22 of 至徳, 1467-3-3 of 応仁 and 1487-7-29 of 長享. JMdict says 1384-2-27,
# 1467-3-5 and 1487-7-20 (test_edrdg.py), as later editions of CLDR do for the last two.
WRONG_IN_CLDR = {"至徳", "応仁", "長享"}


def _cldr(name: str) -> ET.Element:
    return ET.parse(debian.file(f"unicode/cldr/common/{name}", "unicode-cldr-core")).getroot()


@pytest.fixture
def first_days() -> dict[str, tuple[int, ...]]:
    """Return the first day of each era of CLDR by its Japanese name."""
    numbered = _cldr("supplemental/supplementalData.xml")
    calendar = "calendar[@type='japanese']/eras"
    days = {
        era.get("type"): tuple(int(part) for part in era.get("start", "").split("-"))
        for era in numbered.iterfind(f"calendarData/{calendar}/era")
    }
    names = _cldr("main/ja.xml").iterfind(f"dates/calendars/{calendar}/eraAbbr/era")
    return {name.text or "": days[name.get("type")] for name in names}


def test_first_days_are_those_of_cldr(first_days: dict[str, tuple[int, ...]]) -> None:
    ours = {era.name: era.start for era in eras.by_name().values()}
    assert len(first_days) > 230
    differing = {name for name, day in first_days.items() if name and ours.get(name) != day}
    assert differing == WRONG_IN_CLDR
    assert len(ours.keys() - first_days.keys()) <= NORTHERN_AND_ADDED
