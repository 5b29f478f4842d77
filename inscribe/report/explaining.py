"""Explanations in the language of the house style: what the program says in English, in Japanese.

A sentence is looked up clause by clause in ``explanations.tsv``; a clause that the table has not
stays as it is.

>>> in_japanese("は and ば differ in the voicing mark")
'はとばは濁点の有無が異なる'
>>> in_japanese("Kaei 1 began in 1848, so Kaei 6 is 1853")
'嘉永元年は1848年なので、嘉永6年は1853年に当たる'
"""

from __future__ import annotations

import re
from typing import NamedTuple

from inscribe import tables

_BETWEEN = r"; (?![^(]*\))"  # clauses; what stands in brackets is one of them
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
    clauses = re.split(_BETWEEN, text)
    if len(clauses) == 1:
        return text
    return "；".join(_clause(clause) or clause for clause in clauses)


@tables.cached(4096)
def _clause(clause: str) -> str | None:
    """Return a clause in Japanese: by the first wording of which nothing stays English."""
    half = None
    for wording in _wordings():
        if found := wording.pattern.fullmatch(clause):
            held = {key: _held(key, value) for key, value in found.groupdict().items()}
            said = wording.said.format(**{key: text for key, (text, _) in held.items()})
            if all(is_told for _, is_told in held.values()):
                return said
            half = half or said
    return half


def _held(name: str, value: str) -> tuple[str, bool]:
    """Return what stands in a hole, and whether that is told in Japanese or only quoted.

    Told are what is itself an explanation, counts of signs, and names of eras.
    """
    if name.startswith("era"):
        return _eras().get(value, value), value in _eras()
    if name.startswith("rest") or re.fullmatch(r"\d+ signs?", value):
        said = in_japanese(value)
        return said, said != value
    return value, True


@tables.cached()
def _eras() -> dict[str, str]:
    """Return eras by their names in Latin letters, the last of several of one name."""
    return {row["romaji"]: row["written"] for row in tables.rows("eras")}


@tables.cached()
def _wordings() -> tuple[Wording, ...]:
    """Return the clauses of the table, those with most words of their own first."""
    rows = sorted(tables.rows("explanations"), key=lambda row: -len(re.sub("{.*?}", "", row["en"])))
    return tuple(Wording(_pattern(row["en"]), row["ja"]) for row in rows)


def _pattern(clause: str) -> re.Pattern[str]:
    """Return what recognises a clause: what is quoted has no colon, what is told may."""
    return re.compile(_HOLES.sub(_hole, re.escape(clause)))


def _hole(found: re.Match[str]) -> str:
    if found[1].startswith("year"):
        return rf"(?P<{found[1]}>\d+)"
    is_text = found[1].startswith(("rest", "gloss"))
    ends = _BETWEEN if is_text else f"{_BETWEEN}|: "
    return f"(?P<{found[1]}>(?:(?!{ends}).)+?)"
