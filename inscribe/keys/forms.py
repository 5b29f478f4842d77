"""Keys of ``inscribe sign``, and of the changes that lead to current forms."""

from __future__ import annotations

from typing import Annotated, TypedDict

from inscribe.keys.base import Count, Sign

ChangeKeys = TypedDict(
    "ChangeKeys",
    {
        "sign": Annotated[Sign, "the sign that changed"],
        "from": Annotated[str, "what stood there before"],
        "to": Annotated[str, "what stands there now; the same as before for a mere warning"],
        "kind": Annotated[str, "what sort of change, as old form, variant, repeat mark"],
        "source": Annotated[str, "the glossary table that says so"],
    },
)

ChangeKeys.__doc__ = "One step from a carved sign to its current form."


class RelationKeys(TypedDict):
    """How the sign is related to another."""

    char: Annotated[str, "the other sign"]
    kind: Annotated[str, "what the other is to it, as variant or look-alike"]
    table: Annotated[str, "the glossary table that says so"]
    note: Annotated[str, "a remark, or empty"]


class FormKeys(TypedDict):
    """Why the sign has another current form."""

    kind: Annotated[str, "what sort of change, as old form or variant"]
    table: Annotated[str, "the glossary table that says so"]
    note: Annotated[str, "a remark, or empty"]


class MergedKeys(TypedDict):
    """The word a sign is used for, where one current form stands for several old ones."""

    form: Annotated[str, "the old form that writes this word"]
    meaning: Annotated[str, "the word's meaning, in English"]


class PartKeys(TypedDict):
    """A part of a character."""

    part: Annotated[str, "the part as it stands there"]
    position: Annotated[str, "where: left, right, top, bottom, around, tare, nyo, inside, ..."]
    whole: Annotated[str, "the character of which the part is a reduced shape, or the part itself"]
    parts: Annotated[list[PartKeys], "its own parts"]


class RepeatKeys(TypedDict):
    """What a repeat mark repeats."""

    what: Annotated[str, "what is repeated: a kana, a kanji, several kana"]
    voiced: Annotated[bool, "whether the repetition is voiced"]


class SignKeys(TypedDict):
    """One sign looked up."""

    char: Annotated[str, "the sign"]
    relations: Annotated[list[RelationKeys], "other forms first, then look-alikes"]
    on: Annotated[list[str], "on-readings, in katakana"]
    kun: Annotated[list[str], "kun-readings, okurigana after a full stop"]
    names: Annotated[list[str], "readings in names"]
    parts: Annotated[list[str], "every part at any depth, each once, the larger first"]
    strokes: Annotated[Count | None, "the usual number of strokes"]
    code_points: Annotated[list[str], "of each character of the sign, as U+8229"]
    name: Annotated[str, "the name Unicode gives it"]
    current: Annotated[str, "its current form; the sign itself where there is no other"]
    form: Annotated[FormKeys | None, "why the current form is another"]
    word: Annotated[MergedKeys | None, "the word it is used for, where forms have been merged"]
    readings_of: Annotated[str, "the sign whose readings are given"]
    senses: Annotated[list[str], "meanings, in English"]
    stroke_counts: Annotated[list[Count], "all numbers of strokes it is counted with"]
    layout: Annotated[list[PartKeys], "the direct parts and where each stands"]
    kana: Annotated[list[str], "what a hentaigana may be read as, the usual kana first"]
    parent: Annotated[str | None, "the kanji that a hentaigana was written from"]
    hentaigana: Annotated[list[str], "hentaigana written from this kanji, or for this kana"]
    sounds: Annotated[list[str], "kana for whose sound the kanji is written"]
    number: Annotated[int | None, "the number that the sign means"]
    repeats: Annotated[RepeatKeys | None, "what it repeats, where it is a repeat mark"]
