"""Identifiers of concepts in published vocabularies, from a user's table ``concepts.tsv``."""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables


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


@tables.cached()
def _concepts() -> dict[tuple[str, str], tuple[Concept, ...]]:
    found: dict[tuple[str, str], tuple[Concept, ...]] = {}
    for row in tables.rows("concepts"):
        of = row["field"], row["word"]
        found[of] = (*found.get(of, ()), Concept(row["identifier"], row["source"]))
    return found
