"""The words suggested to a record: kinds of fitting, places, hands, executions."""

from __future__ import annotations

from dataclasses import dataclass

from inscribe import tables


@dataclass(frozen=True, slots=True)
class SuggestedTerm:
    """One suggested word and what it is called in Japanese."""

    word: str
    japanese: str
    note: str = ""


def suggested(field: str) -> tuple[SuggestedTerm, ...]:
    """Return the words suggested for the key ``field`` (kind, place, hand, execution).

    >>> [w.word for w in suggested("hand")][:3]
    ['regular', 'running', 'cursive']
    """
    return _words().get(field, ())


@tables.cached()
def _words() -> dict[str, tuple[SuggestedTerm, ...]]:
    words: dict[str, tuple[SuggestedTerm, ...]] = {}
    for row in tables.rows("fittings"):
        word = SuggestedTerm(row["en"], row["ja"], row["note"])
        words[row["field"]] = (*words.get(row["field"], ()), word)
    return words
