"""What is looked for: a lattice of the sounds an inscription may stand for, sign by sign.

Nothing depends on a best reading: 山 may be やま or さん, a sign that cannot be read may be one
sound or three, and a gap any number.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from inscribe.collation import prepared
from inscribe.collation.align import Side
from inscribe.errors import InputError
from inscribe.reading.spelling import ROWS, is_kana, is_kanji
from inscribe.signs import Transcription
from inscribe.sources import index, keys

READINGS = 6  # readings of one character that are looked up in the index
REACH = 5  # letters of the lattice walked from each sign: a gram, and what its long vowels need
MAX_SIGNS = 2000
FEWEST = 2  # legible signs: one alone is in any text
_ROMAN = re.compile(r"[A-Za-zāīūēōĀĪŪĒŌâîûêôÂÎÛÊÔ'’\s.,;:!?/-]+")
_LONG = str.maketrans({"ā": "aa", "ī": "ii", "ū": "uu", "ē": "ee", "ō": "ou"})
_OH = re.compile("oh(?![aiueoy])")  # a long vowel, as some write it
_LONG_O = {"う": "お", "お": "う"}  # a long o that is heard does not tell how it is spelled
_CIRCUMFLEX = str.maketrans("âîûêô", "āīūēō")
_O_ROW = frozenset(ROWS[4])


@dataclass(frozen=True, slots=True)
class SourceQuery:
    """A text to be found, as a lattice over its signs.

    ``arcs[i]`` are the ways to read on from sign ``i``: (sign reached, letters). ``kinds[i]`` says
    whether sign ``i`` is ``read``, ``unread`` or a ``gap``; ``signs`` are the legible signs in
    current forms; ``weight`` is the number of letters its likeliest readings have.
    """

    arcs: tuple[tuple[tuple[int, str], ...], ...]
    kinds: tuple[str, ...]
    signs: str
    weight: int

    def __len__(self) -> int:
        return len(self.arcs)


def query_of(text: Transcription) -> SourceQuery:
    """Return the query for a transcription.

    Raises:
        InputError: it has fewer than two legible signs, or more than 2,000 signs.
    """
    if len(text.signs) > MAX_SIGNS:
        raise InputError(
            f"the text looked for is longer than the limit of {MAX_SIGNS} signs",
            hint="look for a part of it",
        )
    side = prepared(text)
    arcs = tuple(tuple(_arcs(side, at)) for at in range(len(side)))
    kinds = tuple(_kind(sort) for sort in side.sort)
    signs = "".join(c for part in side.norm for c in part if is_kana(c) or is_kanji(c))
    if len(signs) < FEWEST:
        found = "one legible sign is too little" if signs else "there is no legible sign"
        raise InputError(f"{found} to look for", hint="give at least two signs")
    return SourceQuery(arcs, kinds, signs, _weight(arcs))


def is_romanised(text: str) -> bool:
    """Whether a text is in Latin letters, as heard or noted down.

    >>> is_romanised("koi shikaran"), is_romanised("恋しからん")
    (True, False)
    """
    return bool(_ROMAN.fullmatch(text)) and any(char.isalpha() for char in text)


def kana_of_romanised(text: str) -> str:
    """Return a romanised fragment in kana.

    >>> kana_of_romanised("Kyō koen to"), kana_of_romanised("Ohtomo no"), kana_of_romanised("oho")
    ('きょうこえんと', 'おうともの', 'おほ')
    """
    import jaconv

    plain = text.lower().translate(_CIRCUMFLEX).translate(_LONG)
    words = re.sub(r"[^a-z']", "", _OH.sub("ou", plain.replace("’", "'")))
    return str(jaconv.alphabet2kana(words)).replace("'", "")


def grams_of(query: SourceQuery) -> tuple[set[str], set[str]]:
    """Return the grams the index is asked for: those that tell most, then all others."""
    telling, others = index.sign_grams(query.signs), set[str]()
    for start in range(len(query)):
        for walked in set(_walks(query, start, REACH)):
            key = keys.run_together(walked)
            if len(key) > 2 and keys.UNKNOWN not in key[:3]:
                telling.add(key[:3])
            if len(key) > 1 and keys.UNKNOWN not in key[:2]:
                others.add(key[:2])
            if len(key) > 2 and keys.UNKNOWN not in (key[0], key[2]):
                others.add(key[0] + index.SKIP + key[2])
    return telling, others


def _walks(query: SourceQuery, start: int, reach: int) -> Iterator[str]:
    """Yield the letters of every way to read on from ``start``, ``reach`` letters each."""
    if start == len(query) or reach <= 0:
        yield ""
        return
    if query.kinds[start] != "read":
        for rest in _walks(query, start + 1, reach - 1):
            yield keys.UNKNOWN + rest
        return
    for end, letters in query.arcs[start][:READINGS]:
        for rest in _walks(query, end, reach - len(letters)):
            yield letters + rest


def _arcs(side: Side, at: int) -> Iterator[tuple[int, str]]:
    seen: dict[tuple[int, str], None] = {}
    if side.letters[at]:
        seen.update({(at + 1, s): None for s in keys.spellings(side.letters[at])})
        if side.letters[at] in _LONG_O and at and side.letters[at - 1] in _O_ROW:
            seen[at + 1, _LONG_O[side.letters[at]]] = None
    for reading in side.readings_at(at, ""):
        end = at + reading.length
        seen.update({(end, s): None for s in keys.spellings(reading.pattern)})
    if side.sort[at] == "stop":
        seen[at + 1, ""] = None  # punctuation has no sound
    yield from seen


def _kind(sort: str) -> str:
    return "gap" if sort == "gap" else "unread" if sort == "unread" else "read"


def _weight(arcs: tuple[tuple[tuple[int, str], ...], ...]) -> int:
    """Return how many letters a middling way of reading the query has."""
    total = 0.0
    for ways in arcs:
        single = [len(letters) for _, letters in ways[:4]]
        total += sum(single) / len(single) if single else 0
    return max(1, round(total))
