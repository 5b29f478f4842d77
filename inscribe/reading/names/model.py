"""What a reading of a name is: kana, Latin letters, weight and reason."""

from __future__ import annotations

from typing import Literal, NamedTuple

from inscribe.reading.names.elements import Choice, Position, choices
from inscribe.reading.spelling import hepburn

# "maker": a given or an art name, it is not known which.
NameKind = Literal["auto", "given", "surname", "art", "common", "place", "maker"]

MOST = 8  # readings given of one name
UNREAD = "□"


class NameReading(NamedTuple):
    """One reading of a name; ``score`` is its weight against the others (higher is likelier).

    >>> from inscribe import name_readings
    >>> name_readings("嶺暁")[0].reason
    'on-readings: 嶺 first is れい (usual), 暁 last is ぎょう (also read so)'
    """

    kana: str  # current kana spelling, | where two characters' readings meet
    romaji: str
    score: float
    reason: str
    kind: str = "given"

    @property
    def plain_kana(self) -> str:
        """The kana without marks of division."""
        return self.kana.replace("|", "")


def romaji(kana: str) -> str:
    """Return a name in kana as Latin letters, capitalised.

    >>> romaji("とも|おき"), romaji("りょう|うん|さい")
    ('Tomooki', 'Ryōunsai')
    """
    letters = hepburn(kana)
    return letters[:1].upper() + letters[1:]


def element(char: str, position: Position) -> tuple[Choice, ...]:
    """Return the readings of a character at a place in a name; one that has none stays itself."""
    if char == UNREAD:
        return (Choice(UNREAD, False, 1.0, "unreadable"),)
    return choices(char, position) or (Choice(char, False, 1.0, "not a kanji"),)


def ranked(found: list[NameReading]) -> list[NameReading]:
    """Return the best of the readings, the best first."""
    return sorted(found, key=lambda reading: -reading.score)[:MOST]
