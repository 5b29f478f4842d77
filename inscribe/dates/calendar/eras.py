"""The eras since 645: their names, their first days, and the years counted in them.

>>> by_name()["嘉永"].romaji, by_name()["嘉永"].western(6)
('Kaei', 1853)
>>> [(era.romaji, number) for era, number in of_year(1854)]
[('Kaei', 7), ('Ansei', 1)]
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables

_OPEN_END = 9999


class Era(NamedTuple):
    """One era; ``start`` is its first (year, month, day), lunisolar up to 1872."""

    name: str
    kana: str
    romaji: str
    also: tuple[str, ...]
    court: str
    start: tuple[int, int, int]
    last: int  # the last western year counted in it
    note: str

    @property
    def first(self) -> int:
        """The western year in which its first year began."""
        return self.start[0]

    @property
    def years(self) -> int:
        """How many years were counted in it."""
        return self.last - self.first + 1

    def western(self, number: int) -> int:
        """Return the western year of its year ``number``, whether or not it reached that far."""
        return self.first + number - 1

    def has(self, year: int) -> bool:
        """Return whether the western ``year`` was counted in it, wholly or in part."""
        return self.first <= year <= self.last


@tables.cached()
def by_name() -> dict[str, Era]:
    """Return all eras by name, in the order of their first days."""
    found: dict[str, Era] = {}
    for row in tables.rows("eras"):
        era = Era(
            row["written"],
            row["kana"],
            row["romaji"],
            tables.listed(row["also"]),
            row["court"],
            (int(row["year"]), int(row["month"]), int(row["day"])),
            int(row["last_year"] or _OPEN_END),
            row["note"],
        )
        found.setdefault(era.name, era)
    return found


@tables.cached()
def of_year(year: int) -> tuple[tuple[Era, int], ...]:
    """Return the eras that the western ``year`` was counted in, each with its year number.

    The private era name 白鳳 counts too; its note says what it is.
    """
    found = (era for era in by_name().values() if era.has(year))
    return tuple((era, year - era.first + 1) for era in found)


def after(era: Era) -> Era | None:
    """Return the era that followed ``era`` in the same court."""
    later = (
        other
        for other in by_name().values()
        if other.start > era.start and other.court in (era.court, "")
    )
    return next(later, None)
