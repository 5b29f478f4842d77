"""From what is carved to current characters, in traced steps that can be undone."""

from inscribe.forms.characters import (
    Character,
    Readings,
    character,
    kana_of,
    parent_of,
    readings,
)
from inscribe.forms.normal import Change, NormalText, carved
from inscribe.forms.normalising import GAP, KAO, UNREAD, normalise, normalise_text
from inscribe.forms.relation import Relation, related, relation, same_character
from inscribe.forms.sequences import signs_of

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
