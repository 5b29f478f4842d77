"""The parts a character is built of and where they stand, and characters found by their parts.

>>> [(part.char, part.position) for part in parts("舩")]
[('舟', 'left'), ('公', 'right')]
>>> all_parts("舩")
('舟', '公', '八', '厶')
>>> built_of(["舟", "公"])[:1]
('舩',)
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from inscribe import tables

if TYPE_CHECKING:
    from inscribe.keys import PartKeys

_TOKEN = re.compile(r"(\w+):([^\s=()]+)(?:=([^\s()]+))?|([()])")


@dataclass(frozen=True, slots=True)
class CharacterPart:
    """One part of a character.

    ``whole`` is the character of which the part is a reduced shape (氵: 水), or empty;
    ``position`` is left, right, top, bottom, around, tare (top and left), nyo (left and bottom),
    inside, middle, or part where the source does not say.
    """

    char: str
    position: str
    whole: str = ""
    parts: tuple[CharacterPart, ...] = ()

    def to_dict(self) -> PartKeys:
        """Return it as printed in JSON."""
        return {
            "part": self.char,
            "position": self.position,
            "whole": self.whole or self.char,
            "parts": [inner.to_dict() for inner in self.parts],
        }


def parts(char: str) -> tuple[CharacterPart, ...]:
    """Return the direct parts of a character, or none where they are not known."""
    return _parsed(_cells().get(char, ""))


def all_parts(char: str) -> tuple[str, ...]:
    """Return every part of a character, at any depth, each once, the larger ones first."""
    level, found = list(parts(char)), dict[str, None]()
    while level:
        found |= dict.fromkeys(part.char for part in level)
        level = [inner for part in level for inner in part.parts]
    return tuple(found)


def built_of(
    wanted: Sequence[str], forms: Mapping[str, Collection[str]] = MappingProxyType({})
) -> tuple[str, ...]:
    """Return the characters that have all the wanted parts, at any depth.

    A part may be given as the whole character it is a shape of (水 finds 氵); one given twice must
    be there twice. ``forms`` gives other forms in which a part may stand. Characters with the
    parts as given come first, then those built of nothing else, then those of fewer parts.
    """
    need = Counter(wanted)
    named = {form: part for part in need for form in forms.get(part, ())}
    named |= {part: part for part in need}
    found: list[tuple[bool, int, int, str]] = []
    for char, cell in _cells().items():
        if len({named[sign] for sign in named.keys() & set(cell)}) == len(need):
            tree = _parsed(cell)
            there = Counter(sign for part in _walk(tree) for sign in {part.char, part.whole})
            if need <= _as_named(tree, named):
                rank = (not need <= there, _distance(tree, need), there.total())
                found.append((*rank, char))
    return tuple(char for *_, char in sorted(found))


def _as_named(tree: tuple[CharacterPart, ...], named: Mapping[str, str]) -> Counter[str]:
    """Return how often each wanted part is there, in whatever form."""
    found: Counter[str] = Counter()
    for part in _walk(tree):
        sign = part.char if part.char in named else part.whole
        if sign in named:
            found[named[sign]] += 1
    return found


def _distance(tree: tuple[CharacterPart, ...], need: Counter[str]) -> int:
    """Return how many direct parts were not asked for, plus how many asked for are not direct."""
    direct = Counter(part.whole if part.whole in need else part.char for part in tree)
    return ((direct - need) + (need - direct)).total()


def _walk(tree: tuple[CharacterPart, ...]) -> Iterator[CharacterPart]:
    for part in tree:
        yield part
        yield from _walk(part.parts)


@tables.cached()
def _cells() -> dict[str, str]:
    found: dict[str, str] = {}
    for row in tables.rows("parts"):
        found.setdefault(row["written"], row["parts"])
    return found


def _parsed(cell: str) -> tuple[CharacterPart, ...]:
    open_levels: list[list[CharacterPart]] = [[]]
    for match in _TOKEN.finditer(cell):
        if match[4] == "(":
            open_levels.append([])
        elif match[4] is None:
            open_levels[-1].append(CharacterPart(match[2], match[1], match[3] or ""))
        else:
            inner = tuple(open_levels.pop())
            open_levels[-1].append(replace(open_levels[-1].pop(), parts=inner))
    return tuple(open_levels[0])
