"""The computed calendar against days published in both calendars (see published_days.tsv)."""

from datetime import date
from pathlib import Path

import pytest

from inscribe.dates.calendar import lunisolar

PUBLISHED = Path(__file__).with_name("published_days.tsv")


def published() -> list[tuple[lunisolar.LunarDay, date, str]]:
    found = []
    for line in PUBLISHED.read_text("utf-8").splitlines():
        if line.startswith("#") or line.startswith("year"):
            continue
        year, month, leap, day, gregorian, what = line.split("\t")
        lunar = lunisolar.LunarDay(int(year), int(month), leap == "1", int(day))
        found.append((lunar, date.fromisoformat(gregorian), what))
    return found


@pytest.mark.parametrize(("lunar", "gregorian", "what"), published(), ids=lambda each: str(each))
def test_a_published_day_falls_where_it_is_published(
    lunar: lunisolar.LunarDay, gregorian: date, what: str
) -> None:
    assert lunisolar.to_gregorian(lunar) == gregorian, what
    assert lunisolar.of_day(gregorian) == lunar


def test_there_are_enough_published_days_from_each_calendar_in_force() -> None:
    years = [lunar.year for lunar, _, _ in published()]
    for first, last in ((1600, 1684), (1685, 1754), (1755, 1797), (1798, 1843), (1844, 1872)):
        assert sum(first <= year <= last for year in years) >= 5


def test_a_published_day_that_the_computation_puts_elsewhere_lies_in_a_month_marked_doubtful() -> (
    None
):
    """The Takada earthquake, Kanbun 5.12.27: its first day is near the change of day."""
    published_day = date(1666, 2, 1)
    month = lunisolar.month_of(1665, 12)
    assert month is not None
    assert month.doubtful
    computed = lunisolar.to_gregorian(lunisolar.LunarDay(1665, 12, False, 27))
    assert computed is not None
    assert abs((published_day - computed).days) == 1


# The leap months of 1600-1872 as printed in chronologies of Japan: year and month after which
# each stood. From memory; the nine that the computation alone puts elsewhere are listed with
# their evidence in glossary/build/months_corrections.tsv.
LEAP_MONTHS = """
1601-11 1604-8 1607-4 1610-2 1612-10 1615-6 1618-3 1620-12 1623-8 1626-4 1629-2 1631-10 1634-7
1637-3 1639-11 1642-9 1645-5 1648-1 1650-10 1653-6 1656-4 1658-12 1661-8 1664-5 1667-2 1669-10
1672-6 1675-4 1677-12 1680-8 1683-5 1686-3 1689-1 1691-8 1694-5 1697-2 1699-9 1702-8 1705-4
1708-1 1710-8 1713-5 1716-2 1718-10 1721-7 1724-4 1727-1 1729-9 1732-5 1735-3 1737-11 1740-7
1743-4 1745-12 1748-10 1751-6 1754-2 1756-11 1759-7 1762-4 1764-12 1767-9 1770-6 1773-3 1775-12
1778-7 1781-5 1784-1 1786-10 1789-6 1792-2 1794-11 1797-7 1800-4 1803-1 1805-8 1808-6 1811-2
1813-11 1816-8 1819-4 1822-1 1824-8 1827-6 1830-3 1832-11 1835-7 1838-4 1841-1 1843-9 1846-5
1849-4 1852-2 1854-7 1857-5 1860-3 1862-8 1865-5 1868-4 1870-10
"""


def test_the_leap_months_are_those_of_the_chronologies() -> None:
    expected = dict(tuple(map(int, each.split("-"))) for each in LEAP_MONTHS.split())
    found = {
        year: month
        for year in range(lunisolar.FIRST_YEAR, lunisolar.LAST_YEAR + 1)
        if (month := lunisolar.leap_month(year)) is not None
    }
    assert found == expected
