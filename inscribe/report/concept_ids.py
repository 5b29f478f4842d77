"""Identifiers of concepts in published vocabularies, from a user's table ``concepts.tsv``."""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables

COLUMNS = ("field", "word", "identifier", "source")


class Concept(NamedTuple):
    """An identifier of a concept, and the vocabulary it is from."""

    identifier: str
    source: str


def concepts(field: str, word: str) -> tuple[Concept, ...]:
    """Return the identifiers a user's table gives for a word of a field, as kind and tsuba.

    Raises:
        TableError: the table does not fit.
    """
    return _concepts().get((field, word), ())


@tables.compiled
def _concepts() -> dict[tuple[str, str], tuple[Concept, ...]]:
    found: dict[tuple[str, str], tuple[Concept, ...]] = {}
    for (field, word, identifier, source), _ in tables.rows("concepts", COLUMNS):
        known = found.get((field, word), ())
        found[field, word] = (*known, Concept(identifier, source))
    return found
