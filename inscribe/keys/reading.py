"""Keys of ``inscribe read`` and ``inscribe name``."""

from __future__ import annotations

from typing import Annotated, TypedDict

from inscribe.keys.base import Pair, Rank, Reasons, Share, Signs
from inscribe.keys.dates import DateKeys
from inscribe.keys.forms import ChangeKeys
from inscribe.terms import Kind, Register, Role

_CHANCE = "that it is read right, calibrated on texts whose readings are known"


class TokenKeys(TypedDict):
    """One word as read."""

    surface: Annotated[str, "as carved"]
    normalised: Annotated[str, "in current forms, spelling as carved"]
    kana: Annotated[str, "current kana spelling; empty for what is not said"]
    romaji: Annotated[str, "modified Hepburn with macrons; empty for what is not said"]
    signs: Annotated[Signs, "what it was read from"]
    gloss: Annotated[str, "what it means in English, or empty; --gloss looks for it"]
    grammar: Annotated[str, "what sort of word it is, in plain English words"]
    chance: Annotated[Share, _CHANCE]


class AlternativeKeys(TypedDict):
    """Another reading of the same text."""

    romaji: Annotated[str, "in Latin letters"]
    kana: Annotated[str, "in kana"]
    reason: Annotated[str, "in what it differs, and why it may be right"]
    chance: Annotated[Share, _CHANCE]


class SignaturePartKeys(TypedDict):
    """One part of a signature."""

    text: Annotated[str, "as carved"]
    kana: Annotated[str, "in kana"]
    romaji: Annotated[str, "in Latin letters"]
    signs: Annotated[Signs, "where it stands"]
    alternatives: Annotated[list[str], "other readings in Latin letters, the likelier first"]


class DoubtKeys(TypedDict):
    """Something a person should look at again."""

    signs: Annotated[Signs, "what it is about"]
    why: Annotated[str, "why it is doubtful"]


_Signature = Annotated[
    dict[str, SignaturePartKeys] | None,
    "the parts of a signature by name (place, title, surname, name, verb, age, patron, kao, ...)",
]


class PassageKeys(TypedDict):
    """A stretch that one person or one purpose put there, read as what it is."""

    kind: Annotated[Kind, "what it is read as"]
    signs: Annotated[Signs, "where it stands"]
    text: Annotated[str, "as carved, marks of the notation included"]
    normalised: Annotated[str, "in current forms, spelling as carved"]
    kana: Annotated[str, "the first reading in kana"]
    romaji: Annotated[str, "the first reading in Latin letters"]
    role: Annotated[Role | None, "what the person did whom it names"]
    chance: Annotated[Share, "that the inscription is divided so here"]
    reading_chance: Annotated[Share, _CHANCE]
    reasons: Annotated[list[str], "why it is this kind of passage and read so"]
    alternatives: Annotated[list[AlternativeKeys], "other readings, the likelier first"]
    signature: _Signature


MayNameKeys = TypedDict(
    "MayNameKeys",
    {
        "signs": Annotated[Signs, "where the name stands"],
        "text": Annotated[str, "the name in current forms"],
        "id": Annotated[str, "the person's id in the user's list (people.tsv)"],
        "name": Annotated[str, "how the list calls the person"],
        "as": Annotated[str, "the sorts of name that stand there, as pen name"],
        "why": Annotated[str, "the years of the list, and what agrees and what does not"],
        "chance": Annotated[Share, "against the others of the list and somebody who is in no list"],
        "outside_life": Annotated[
            str, "how a date on the object contradicts the person's years, or empty"
        ],
    },
)
MayNameKeys.__doc__ = "A person of the user's list whom some signs may name: no attribution."


class ReadingKeys(TypedDict):
    """What one inscription says."""

    text: Annotated[str, "as carved"]
    normalised: Annotated[str, "in current forms, spelling as carved"]
    modern: Annotated[str, "in current forms and current kana spelling"]
    kana: Annotated[str, "the first reading in kana, words divided by spaces"]
    romaji: Annotated[str, "the first reading in Latin letters"]
    register: Annotated[Register, "what it is read as on the whole"]
    chance: Annotated[Share, _CHANCE]
    tokens: Annotated[list[TokenKeys], "the words of the first reading, in the order they are said"]
    alternatives: Annotated[list[AlternativeKeys], "other readings, the likelier first"]
    signature: _Signature
    dates: Annotated[list[DateKeys], "the dates and ages in it"]
    changes: Annotated[list[ChangeKeys], "every step from the carved signs to current forms"]
    doubts: Annotated[list[DoubtKeys], "what a person should look at again"]
    reasons: Annotated[Reasons, "why the first reading is the first"]
    phrases: Annotated[
        list[Pair],
        "of verse, for each phrase: its morae, and the place of its first word in tokens, from 0",
    ]
    passages: Annotated[list[PassageKeys], "in order, together all signs"]
    persons: Annotated[list[MayNameKeys], "of the user's list, whom the signs may name"]


class NameReadingKeys(TypedDict):
    """One reading of a name."""

    rank: Rank
    kana: Annotated[str, "in kana"]
    romaji: Annotated[str, "in Latin letters"]
    kind: Annotated[str, "what sort of name it would be, as given, surname, art"]
    score: Annotated[float, "its weight against the others: higher is likelier"]
    reason: Annotated[str, "why it may be read so"]


class NameKeys(TypedDict):
    """A name and its readings."""

    text: Annotated[str, "as given"]
    normalised: Annotated[str, "in current forms"]
    readings: Annotated[list[NameReadingKeys], "the likeliest first"]
