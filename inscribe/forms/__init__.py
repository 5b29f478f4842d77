"""From what is carved to current characters, in traced steps that can be undone.

What a character is and how two are related load when they are first asked for: most texts are
only normalised.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late
from inscribe.forms.normal import Change, NormalText, carved
from inscribe.forms.normalising import GAP, KAO, UNREAD, normalise, normalise_text
from inscribe.forms.sequences import signs_of

if TYPE_CHECKING:
    from inscribe.forms.characters import (
        Character,
        Readings,
        character,
        kana_of,
        parent_of,
        readings,
    )
    from inscribe.forms.relations import Relation, related, relation, same_character

_HOMES = {
    "Character": "inscribe.forms.characters",
    "Readings": "inscribe.forms.characters",
    "Relation": "inscribe.forms.relations",
    "character": "inscribe.forms.characters",
    "kana_of": "inscribe.forms.characters",
    "parent_of": "inscribe.forms.characters",
    "readings": "inscribe.forms.characters",
    "related": "inscribe.forms.relations",
    "relation": "inscribe.forms.relations",
    "same_character": "inscribe.forms.relations",
}

__all__ = [
    "GAP",
    "KAO",
    "UNREAD",
    "Change",
    "Character",
    "NormalText",
    "Readings",
    "Relation",
    "carved",
    "character",
    "kana_of",
    "normalise",
    "normalise_text",
    "parent_of",
    "readings",
    "related",
    "relation",
    "same_character",
    "signs_of",
]

__getattr__ = late.names(__name__, _HOMES)
