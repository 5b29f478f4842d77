"""Where words begin in a text, as the reading stage divides it."""

from __future__ import annotations

from functools import lru_cache

from inscribe.collate.sides import Side


def word_starts(side: Side, *, is_whole: bool = True) -> frozenset[int]:
    """Return the signs of ``side`` at which a word begins, the end of the text among them.

    A part of a longer text has no metre of its own; then ``is_whole`` is false.
    """
    sign_at: dict[int, int] = {}
    text = ""
    for index, part in enumerate(side.norm):
        sign_at[len(text)] = index
        text += part
    places = _word_places(text, is_whole)
    return frozenset(sign_at[place] for place in places if place in sign_at) | {0, len(side)}


@lru_cache(maxsize=256)
def _word_places(text: str, is_whole: bool) -> tuple[int, ...]:
    from inscribe.reading.mecab import verse_words
    from inscribe.reading.verse import read_verse

    places, at = [], 0
    for word in read_verse(text).words if is_whole else verse_words(text):
        places.append(at)
        at += word.length
    return tuple(places)
