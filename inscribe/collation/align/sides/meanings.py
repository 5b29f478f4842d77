"""What a character means, as far as it tells whether two characters write one native word."""

from __future__ import annotations

import re

from inscribe import forms, tables

NO_MEANING = frozenset(
    ("a", "an", "and", "by", "counter", "for", "from", "in", "no", "of", "on", "or", "the", "to")
)


@tables.cached(8192)
def meanings(char: str) -> frozenset[str]:
    """Return the English words by which the tables gloss a character, plurals as singulars.

    >>> sorted(meanings("浪") & meanings("波"))
    ['billow', 'wave']
    """
    glosses = [*forms.character(char).senses, *_nouns().get(char, ())]
    words = re.findall("[a-z]+", " ".join(glosses).lower())
    return frozenset(word.removesuffix("s") for word in words if word not in NO_MEANING)


@tables.cached()
def _nouns() -> dict[str, list[str]]:
    """Return the glosses of the nouns of verse that are written with one character."""
    found: dict[str, list[str]] = {}
    for row in tables.rows("verse_nouns"):
        if len(row["written"]) == 1:
            found.setdefault(row["written"], []).append(row["gloss"])
    return found
