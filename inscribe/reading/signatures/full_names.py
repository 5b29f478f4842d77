"""Readings of a name of any make: divided into surname, studio name and art name where it can be.

>>> [reading.romaji for reading in full_readings("三輪綾国")][:1]
['Miwa Ayakuni']
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.errors import InputError
from inscribe.forms import NormalText, normalise_text
from inscribe.reading.names import MOST, NameKind, NameReading, own_names, readings
from inscribe.reading.signatures.reader import read_signature
from inscribe.reading.words import Proposal
from inscribe.terms import SignIndex

if TYPE_CHECKING:
    from inscribe.keys import NameKeys

_PARTS_OF_NAMES = frozenset(
    {"surname", "clan", "name", "art_name", "common_name", "title", "office", "place", "generation"}
)
_LONGEST_SINGLE = 2
MAX_NAME = 20  # characters of one name


@dataclass(frozen=True, slots=True)
class NameLookUp:
    """A name and its ranked readings; ``text`` as given, ``normalised`` in current forms.

    >>> from inscribe import look_up_name
    >>> look_up_name("嶺曉").normalised
    '嶺暁'
    """

    text: str
    normalised: str
    readings: tuple[NameReading, ...]

    def __repr__(self) -> str:
        readings = notebook.counted(len(self.readings), "reading")
        return f"<NameLookUp of {notebook.short(self.text)}: {readings}>"

    def to_dict(self) -> NameKeys:
        """Return it as ``inscribe name --format json`` prints it."""
        return {
            "text": self.text,
            "normalised": self.normalised,
            "readings": [
                {
                    "rank": rank,
                    "kana": reading.plain_kana,
                    "romaji": reading.romaji,
                    "kind": reading.kind,
                    "score": round(reading.score, 4),
                    "reason": reading.reason,
                }
                for rank, reading in enumerate(self.readings, start=1)
            ],
        }


def look_up(name: str, kind: NameKind = "auto") -> NameLookUp:
    """Return a name as given and its readings, best first.

    Raises:
        InputError: the name is empty, or longer than a name is.
        TableError: a row of a table of names cannot be used.

    >>> look_up("三輪綾國").readings[0].romaji
    'Miwa Ayakuni'
    """
    normal = normalise_text(name.strip()).text
    if not 0 < len(normal) <= MAX_NAME:
        raise InputError(f"a name has 1 to {MAX_NAME} characters", hint="give one name a word")
    return NameLookUp(name, normal, full_readings(normal, kind))


def full_readings(name: str, kind: NameKind = "auto") -> tuple[NameReading, ...]:
    """Return the readings of a name in current forms, best first, each with its reason.

    With ``kind`` "auto" a name of three characters and more is divided first (三輪 + 綾国); any
    other kind reads it as one. Names of the user's own list come first, whatever the kind.

    Raises:
        TableError: a row of a table of names cannot be used.
    """
    if kind != "auto" or len(name) <= _LONGEST_SINGLE or name in own_names():
        return readings(name, kind)
    found = read_signature(NormalText(name, tuple(map(SignIndex, range(len(name))))))
    divided = tuple(_as_reading(p) for p in found.proposals if _is_name(p) and len(p.tokens) > 1)
    whole = readings(name, kind)
    single = any(_is_name(p) and len(p.tokens) == 1 for p in found.proposals[:1])
    ranked = (*whole, *divided) if single or not divided else (*divided, *whole)
    distinct: dict[str, NameReading] = {}
    for reading in ranked:
        distinct.setdefault(reading.romaji, reading)
    return tuple(distinct.values())[:MOST]


def _is_name(proposal: Proposal) -> bool:
    return all(token.part_of_speech in _PARTS_OF_NAMES for token in proposal.tokens)


def _as_reading(proposal: Proposal) -> NameReading:
    parts = " ".join(f"{t.surface} ({_LABELS[t.part_of_speech]})" for t in proposal.tokens)
    reason = f"{parts}; {'; '.join(proposal.reasons)}"
    return NameReading(proposal.kana, proposal.romaji, proposal.score, reason, "full")


_LABELS = {
    "surname": "surname",
    "clan": "clan",
    "name": "given",
    "art_name": "studio name",
    "common_name": "everyday name",
    "title": "title",
    "office": "office",
    "place": "place",
    "generation": "generation",
}
