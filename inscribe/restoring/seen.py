"""What the reader still sees of a worn sign: parts, a number of strokes, a likeness.

>>> seen = Seen(parts=("氵",), strokes=(9, 11))
>>> seen.agrees("浦"), seen.agrees("春")
(True, False)
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from unicodedata import normalize

from inscribe import tables
from inscribe.forms import (
    SIMPLIFIED_TABLE,
    all_parts,
    character,
    found,
    look_alikes,
    parts,
    related,
)
from inscribe.signs import Kind, Sign

_DESCRIPTIONS = range(0x2FF0, 0x3000)  # ideographic description characters: ⿰木□
AGAINST = 0.01  # weight of a sign that what is seen speaks against: readers misjudge strokes
MOST_FOUND = 400  # characters taken into consideration for what is seen of them
_ALIKE = 1.0
_SHARES_A_PART = 0.15
_NOT_ALIKE = 0.01


@dataclass(frozen=True)
class Seen:
    """What can be seen: ``parts`` of a character, the fewest and most ``strokes``, a look-alike.

    >>> from inscribe import parse, restore
    >>> water = Seen(parts=("氵",))
    >>> worn = restore(parse("白□の流"), seen_of_it=water, register="verse").lacunae[0]
    >>> [candidate.text for candidate in worn.candidates[:2]]
    ['波', '浪']
    """

    parts: tuple[str, ...] = ()
    strokes: tuple[int, int] | None = None
    like: str = ""

    def __bool__(self) -> bool:
        return bool(self.parts or self.strokes or self.like)

    @cached_property
    def characters(self) -> tuple[str, ...]:
        """The characters that have these parts and strokes, or look like the one named."""
        searched = found(self.parts, "", self.strokes) if self.parts or self.strokes else ()
        alike = (self.like, *look_alikes(self.like)) if self.like else ()
        return tuple(dict.fromkeys((*alike, *searched[:MOST_FOUND])))

    @cached_property
    def _searched(self) -> frozenset[str]:
        return frozenset(found(self.parts, "", self.strokes))

    @cached_property
    def _with_parts(self) -> frozenset[str]:
        return frozenset(found(self.parts))

    def has_parts(self, sign: str) -> bool:
        """Whether a sign, in this or another form, has the parts seen."""
        return not self.parts or any(form in self._with_parts for form in _forms(sign))

    def agrees(self, sign: str) -> bool:
        """Whether a sign, in this or another form, has the parts and strokes seen."""
        if not (self.parts or self.strokes):
            return True
        return any(form in self._searched for form in _forms(sign))

    def weight(self, sign: str) -> float:
        """Return the factor by which what is seen changes a sign's chance."""
        weight = 1.0 if self.agrees(sign) else AGAINST
        return weight * self._likeness(sign) if self.like else weight

    def _likeness(self, sign: str) -> float:
        forms = _forms(sign)
        if self.like in forms or any(self.like in look_alikes(form) for form in forms):
            return _ALIKE
        own = set(all_parts(self.like)) | {self.like}
        if any(own & ({*all_parts(form), form}) for form in forms if parts(form)):
            return _SHARES_A_PART
        return _NOT_ALIKE

    def evidence(self, sign: str) -> Iterator[str]:
        """Yield what the seen says of a sign, for and against."""
        if self.parts:
            verb = "has" if self.has_parts(sign) else "lacks"
            yield f"{verb} {'+'.join(self.parts)}"
        if self.strokes:
            counts = character(sign).strokes
            count = f"{counts[0]} strokes" if counts else "strokes not known"
            yield f"{count}, {self.strokes[0]}–{self.strokes[1]} seen"
        if self.like:
            likeness = self._likeness(sign)
            how = "looks like" if likeness == _ALIKE else "shares a part with"
            yield f"{'does not look like' if likeness == _NOT_ALIKE else how} {self.like}"


def lacking_below(shares: dict[str, float], described: Seen, least: float) -> dict[str, float]:
    """Return shares in which a sign without the parts seen comes after all those that have them.

    Misjudging strokes is easy, seeing a part that is not there is rare. Of the signs that have the
    parts those with less than ``least`` of all are noise and hold nothing back.
    """
    having = {each: share for each, share in shares.items() if described.has_parts(each)}
    total = sum(having.values())
    if not total:
        return shares
    having = {each: share / total for each, share in having.items()}
    most = min(share for share in having.values() if share >= least) / 2
    lacking = {each: share for each, share in shares.items() if each not in having}
    scale = min(AGAINST / (sum(lacking.values()) or 1.0), most / max(lacking.values(), default=1.0))
    return having | {each: share * scale for each, share in lacking.items()}


@tables.cached(8192)
def _forms(sign: str) -> tuple[str, ...]:
    """Return a sign and its other forms, look-alikes left out."""
    others = (form for form, relation in related(sign).items() if relation.is_same_character)
    return (sign, *others)


def other_forms(sign: str) -> tuple[str, ...]:
    """Return the old and variant forms in which a carver may have written a kanji, each once."""
    if not "一" <= sign <= "鿿":
        return ()
    found = [
        form
        for form, relation in related(sign).items()
        if relation.kind in ("old form", "variant") and relation.table != SIMPLIFIED_TABLE
        if len(form) == 1
    ]
    return tuple(form for form in found if _ordinary(form) == form or _ordinary(form) not in found)


def _ordinary(form: str) -> str:
    """Return the ordinary code of a form that Unicode also has as a compatibility ideograph."""
    return normalize("NFC", form)


def is_unread(sign: Sign) -> bool:
    """Whether one sign stands there that cannot be read, or only parts of it."""
    if sign.kind is not Kind.CHARACTER:
        return False
    return not sign.text or (ord(sign.text[0]) in _DESCRIPTIONS and "□" in sign.text)


def seen_in(sign: Sign, given: Seen) -> Seen:
    """Return what is seen of a sign: what was given, and the parts its transcription describes."""
    if not sign.text or ord(sign.text[0]) not in _DESCRIPTIONS:
        return given
    legible = [char for char in sign.text if ord(char) not in _DESCRIPTIONS and char != "□"]
    return replace(given, parts=(*given.parts, *legible))
