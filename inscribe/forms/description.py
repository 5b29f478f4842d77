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
from typing import TYPE_CHECKING

from inscribe.forms import characters, components
from inscribe.forms.characters import Character, Readings
from inscribe.forms.components import CharacterPart
from inscribe.forms.normalising import normalise_text
from inscribe.forms.numbers import value_of
from inscribe.forms.relations import Merged, Relation, merged_word, related
from inscribe.forms.repeats import Mark, marks
from inscribe.forms.steps import FormStep, kana_values, steps

if TYPE_CHECKING:
    from inscribe.keys import SignKeys


@dataclass(frozen=True, slots=True)
class Description:
    """One sign: its forms and relations, how it is read, what it is built of.

    ``current`` is what normalisation makes of it (itself where nothing changes) and ``step`` why;
    a form without readings of its own has those of its current form, and ``readings_of`` names
    the character they belong to.

    >>> from inscribe import look_up_sign
    >>> look_up_sign("舩")
    <Description of 舩, today 船>
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

    def __repr__(self) -> str:
        return f"<Description of {self.char}, today {self.current}>"

    def to_dict(self) -> SignKeys:
        """Return it as ``inscribe sign --format json`` prints it.

        ``parts`` names every part at any depth, the larger first; ``layout`` says where each
        stands.
        """
        step, merged, mark = self.step, self.merged, self.repeats
        return {
            "char": self.char,
            "relations": [
                {"char": other, "kind": each.kind, "table": each.table, "note": each.note}
                for other, each in self.relations.items()
            ],
            "on": list(self.readings.on),
            "kun": list(self.readings.kun),
            "names": list(self.readings.names),
            "parts": list(_names(self.parts)),
            "strokes": next(iter(self.character.strokes), None),
            "code_points": list(self.code_points),
            "name": self.name,
            "current": self.current,
            "form": {"kind": step.kind, "table": step.table, "note": step.note} if step else None,
            "word": {"form": merged.word, "meaning": merged.meaning} if merged else None,
            "readings_of": self.readings_of,
            "senses": list(self.character.senses),
            "stroke_counts": list(self.character.strokes),
            "layout": [part.to_dict() for part in self.parts],
            "kana": list(self.kana),
            "parent": self.parent,
            "hentaigana": list(self.hentaigana),
            "sounds": list(self.sounds),
            "number": self.number,
            "repeats": {"what": mark.repeats, "voiced": mark.voiced} if mark else None,
        }


def _names(parts: tuple[CharacterPart, ...]) -> dict[str, None]:
    """Return every part at any depth and the character it is a shape of, the larger first."""
    names: dict[str, None] = {}
    level = list(parts)
    while level:
        for part in level:
            names |= dict.fromkeys(name for name in (part.char, part.whole) if name)
        level = [inner for part in level for inner in part.parts]
    return names


def describe(sign: str) -> Description:
    """Return what is known of one sign; fields stay empty where nothing is.

    Raises:
        TableError: a glossary table cannot be used.

    >>> from inscribe import look_up_sign
    >>> look_up_sign("舩").current
    '船'
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
