"""A person of the user's list: names, years, and what else tells one from another.

>>> person = ListedPerson("P-1", "Uan", (), ListedYear(1712), ListedYear(1780, about=True))
>>> person.years, person.lived
('1712-about 1780', (1712, 1790))
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.reading.names import ListedForm

ABOUT = 10  # years by which "about" may be wrong; from memory
LONGEST_LIFE = 100  # years, where only birth or death is known
LONGEST_WORK = 60  # years before and after the years of work that are known


class ListedYear(NamedTuple):
    """A western year, or one that is only about right."""

    year: int
    about: bool = False

    def __str__(self) -> str:
        return f"{'about ' * self.about}{self.year}"

    @property
    def earliest(self) -> int:
        """The earliest year that may be meant."""
        return self.year - ABOUT * self.about

    @property
    def latest(self) -> int:
        """The latest year that may be meant."""
        return self.year + ABOUT * self.about


class ListedPerson(NamedTuple):
    """A row of the list."""

    id: str
    name: str
    forms: tuple[ListedForm, ...]
    birth: ListedYear | None = None
    death: ListedYear | None = None
    active: tuple[ListedYear, ListedYear] | None = None
    places: tuple[str, ...] = ()  # in current forms
    titles: tuple[str, ...] = ()  # in current forms
    roles: tuple[str, ...] = ()
    teachers: tuple[str, ...] = ()  # ids
    houses: tuple[str, ...] = ()
    note: str = ""
    source: str = ""

    @property
    def years(self) -> str:
        """Years of birth and death, else those of work, as they are said; nothing if unknown."""
        if self.birth and self.death:
            return f"{self.birth}-{self.death}"
        if self.birth or self.death:
            return f"born {self.birth}" if self.birth else f"died {self.death}"
        if not self.active:
            return ""
        first, last = self.active
        return f"active {first}" if first == last else f"active {first}-{last}"

    @property
    def lived(self) -> tuple[int, int] | None:
        """The earliest and the latest year of a life, as wide as the list leaves it open."""
        begun, ended = self.active or (None, None)
        early = [self.birth.earliest] if self.birth else []
        late = [self.death.latest] if self.death else []
        if not early:
            early += [begun.earliest - LONGEST_WORK] if begun else []
            early += [self.death.latest - LONGEST_LIFE] if self.death else []
        if not late:
            late += [ended.latest + LONGEST_WORK] if ended else []
            late += [self.birth.latest + LONGEST_LIFE] if self.birth else []
        return (max(early), min(late)) if early else None
