"""Everything the tables know of one sign, gathered for someone who looks it up.

>>> d = describe("舩")
>>> d.current, d.character.strokes, [part.char for part in d.parts]
('船', (10,), ['舟', '公'])
>>> describe("𛂥").parent, describe("廿").number
('者', 20)
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from inscribe.forms import characters, components
from inscribe.forms.characters import Character, Readings
from inscribe.forms.components import CharacterPart
from inscribe.forms.normalising import normalise_text
from inscribe.forms.numbers import value_of
from inscribe.forms.relations import Merged, Relation, merged_word, related
from inscribe.forms.repeats import Mark, marks
from inscribe.forms.steps import FormStep, kana_values, steps


@dataclass(frozen=True, slots=True)
class Description:
    """One sign: its forms and relations, how it is read, what it is built of.

    ``current`` is what normalisation makes of it (itself where nothing changes) and ``step`` why;
    a form without readings of its own has those of its current form, and ``readings_of`` names
    the character they belong to.
    """

    char: str
    code_points: tuple[str, ...]  # as U+8229
    name: str  # Unicode's
    current: str
    step: FormStep | None
    merged: Merged | None
    relations: dict[str, Relation]  # by the related sign, other forms before look-alikes
    character: Character
    readings: Readings
    readings_of: str
    parts: tuple[CharacterPart, ...]
    kana: tuple[str, ...] = ()  # what a hentaigana may be read as, the usual kana first
    parent: str | None = None  # the kanji a hentaigana was written from
    hentaigana: tuple[str, ...] = ()  # written from this kanji, or for this kana
    sounds: tuple[str, ...] = ()  # kana the kanji is written for as a sound
    number: int | None = None
    repeats: Mark | None = None  # what a repeat mark repeats


def describe(sign: str) -> Description:
    """Return what is known of one sign; fields stay empty where nothing is.

    Raises:
        TableError: a glossary table cannot be used.
    """
    step = steps().get(sign)
    normal = normalise_text(sign).text
    own = characters.character(sign)
    readings_of = sign if own.readings != Readings() else normal
    return Description(
        char=sign,
        code_points=tuple(f"U+{ord(char):04X}" for char in sign),
        name=", ".join(unicodedata.name(char, "no name") for char in sign),
        current=normal,
        step=step,
        merged=merged_word(sign),
        relations=related(sign),
        character=own,
        readings=characters.readings(readings_of),
        readings_of=readings_of,
        parts=components.parts(sign),
        kana=kana_values().get(sign, ()),
        parent=characters.parent_of(sign),
        hentaigana=characters.hentaigana_from(sign) or characters.hentaigana_for(sign),
        sounds=characters.sounds_of(sign),
        number=value_of(sign),
        repeats=marks().get(sign),
    )
