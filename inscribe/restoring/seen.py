"""What the reader still sees of a worn sign: parts, a number of strokes, a likeness.

>>> seen = Seen(parts=("氵",), strokes=(9, 11))
>>> seen.agrees("浦"), seen.agrees("春")
(True, False)
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from unicodedata import normalize

from inscribe.forms import characters, related
from inscribe.forms.parts import all_parts, parts
from inscribe.forms.relations import SIMPLIFIED_TABLE, look_alikes
from inscribe.forms.search import found

AGAINST = 0.01  # weight of a sign that what is seen speaks against: readers misjudge strokes
MOST_FOUND = 400  # characters taken into consideration for what is seen of them
_ALIKE = 1.0
_SHARES_A_PART = 0.15
_NOT_ALIKE = 0.01


@dataclass(frozen=True)
class Seen:
    """What can be seen: ``parts`` of a character, the fewest and most ``strokes``, a look-alike."""

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
        verb = "has" if self.agrees(sign) else "lacks"
        if self.parts:
            yield f"{verb} {'+'.join(self.parts)}"
        if self.strokes:
            counts = characters.character(sign).strokes
            count = f"{counts[0]} strokes" if counts else "strokes not known"
            yield f"{count}, {self.strokes[0]}–{self.strokes[1]} seen"
        if self.like:
            likeness = self._likeness(sign)
            how = "looks like" if likeness == _ALIKE else "shares a part with"
            yield f"{'does not look like' if likeness == _NOT_ALIKE else how} {self.like}"


@lru_cache(maxsize=8192)
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
