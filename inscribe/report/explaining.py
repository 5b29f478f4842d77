"""Explanations in the language of the house style: what the program says in English, in Japanese.

A sentence is looked up clause by clause in ``explanations.tsv``; a clause that the table has not
stays as it is.

>>> in_japanese("は and ば differ in the voicing mark")
'はとばは濁点の有無が異なる'
"""

from __future__ import annotations

import re
from typing import NamedTuple

from inscribe import tables

BETWEEN = "; "  # clauses
_HOLES = re.compile(r"\\{(\w+)\\}")


class Wording(NamedTuple):
    """One clause: how it is recognised, and what is said for it."""

    pattern: re.Pattern[str]
    said: str


def in_japanese(text: str) -> str:
    """Return an explanation in Japanese, as far as the table goes."""
    whole = _clause(text)
    if whole is not None:
        return whole
    clauses = text.split(BETWEEN)
    if len(clauses) == 1:
        return text
    return "；".join(_clause(clause) or clause for clause in clauses)


def _clause(clause: str) -> str | None:
    for wording in _wordings():
        if found := wording.pattern.fullmatch(clause):
            held = {key: _held(key, value) for key, value in found.groupdict().items()}
            return wording.said.format(**held)
    return None


def _held(name: str, value: str) -> str:
    """Return what stands in a hole: counts of signs, and what is an explanation, in Japanese."""
    is_told = name == "rest" or re.fullmatch(r"\d+ signs?", value)
    return in_japanese(value) if is_told else value


@tables.cached()
def _wordings() -> tuple[Wording, ...]:
    """Return the clauses of the table, those with most words of their own first."""
    rows = sorted(tables.rows("explanations"), key=lambda row: -len(re.sub("{.*?}", "", row["en"])))
    return tuple(Wording(_pattern(row["en"]), row["ja"]) for row in rows)


def _pattern(clause: str) -> re.Pattern[str]:
    return re.compile(_HOLES.sub(r"(?P<\1>(?:(?!; ).)+?)", re.escape(clause)))
