"""What a word or character means, as far as it tells whether two writings are of one word."""

from __future__ import annotations

import re

from inscribe import forms, tables

NO_MEANING = frozenset(
    ("a", "an", "and", "by", "counter", "for", "from", "in", "no", "of", "on", "or", "the", "to")
)


@tables.cached(8192)
def meanings(written: str) -> frozenset[str]:
    """Return the English words by which the tables gloss a word or character, without plurals.

    >>> sorted(meanings("浪") & meanings("波"))
    ['billow', 'wave']
    >>> sorted(meanings("千代") & meanings("千世")), sorted(meanings("年次") & meanings("年浪"))
    (['age', 'thousand'], ['year'])
    """
    glosses = [*forms.character(written).senses, *_glosses().get(written, ())]
    words = re.findall("[a-z]+", " ".join(glosses).lower())
    return frozenset(word.removesuffix("s") for word in words if word not in NO_MEANING)


@tables.cached()
def _glosses() -> dict[str, list[str]]:
    """Return the glosses of the nouns of verse, and of what manuscripts write."""
    found: dict[str, list[str]] = {}
    for table, column in (("verse_nouns", "gloss"), ("collation_readings", "note")):
        for row in tables.rows(table):
            found.setdefault(row["written"], []).append(row[column])
    return found
