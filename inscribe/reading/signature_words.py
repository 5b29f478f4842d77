"""The words of signatures, gathered from the glossary: places, titles, verbs, formulas.

Each word has a class that says what it does in the formula; which class follows which is in
``glossary/signature_order.tsv``, which the splitter reads.

>>> [word.kind for word in words_from("造")["造"]]
['verb']
>>> words_from("武")["武州"][0].kana
'ぶしゅう'
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.errors import TableError

# What a formula gives: where, by order of whom, for whom, after which model, out of what.
FAMILIES = ("place", "patron", "purpose", "model", "means")

# What a lexicon word costs by its length: long words are seldom there by chance.
_COST_BY_LENGTH = {1: 1.5, 2: 0.7}
_COST_OF_LONG = 0.4


class Word(NamedTuple):
    """A word of a signature. Kana: a space divides words, ``|`` the parts of one."""

    text: str
    kind: str  # its class: "verb", "place", "opener", ...
    kana: str
    with_object: str = ""  # a verb after 之; an opener before a verb
    alternatives: tuple[str, ...] = ()
    gloss: str = ""
    family: str = ""  # of openers and closers: "place", "patron", "model", ...
    cost: float = 1.0


Lexicon = dict[str, dict[str, tuple[Word, ...]]]


@tables.compiled
def lexicon() -> Lexicon:
    """Return all words by their first character, then by their writing."""
    found: dict[str, dict[str, list[Word]]] = {}
    for word in (
        *_plain_words(),
        *_formula_words(),
        *_places(),
        *_titles(),
        *_materials(),
        *_subjects(),
    ):
        found.setdefault(word.text[0], {}).setdefault(word.text, []).append(word)
    return {
        first: {text: _distinct(words) for text, words in by_text.items()}
        for first, by_text in found.items()
    }


def words_from(char: str) -> dict[str, tuple[Word, ...]]:
    """Return the words that begin with a character, by their writing."""
    return lexicon().get(char, {})


def _distinct(words: list[Word]) -> tuple[Word, ...]:
    seen: dict[tuple[str, str], Word] = {}
    for word in words:
        seen.setdefault((word.kind, word.family), word)
    return tuple(seen.values())


def _cost(text: str) -> float:
    return _COST_BY_LENGTH.get(len(text), _COST_OF_LONG)


def _split(cell: str) -> tuple[str, ...]:
    return tuple(filter(None, cell.split("/")))


def _plain_words() -> Iterator[Word]:
    columns = ("written", "class", "kana", "with_object", "alternatives", "gloss")
    for (text, kind, kana, with_object, others, gloss), place in tables.rows(
        "signature_words", columns
    ):
        if not kind or not kana:
            raise TableError("a cell is empty", place, "give writing, class and kana")
        yield Word(text, kind, kana, with_object, _split(others), gloss, cost=_cost(text))


def _formula_words() -> Iterator[Word]:
    columns = ("written", "role", "family", "final", "joined", "alternatives", "gloss")
    for (text, role, family, final, joined, others, gloss, rarity), place in tables.rows(
        "signature_formulas", (*columns, "cost")
    ):
        if role not in ("opener", "closer"):
            raise TableError(f"“{role}” is no part of a formula", place, "use opener or closer")
        if family not in FAMILIES:
            expected = f"use {', '.join(FAMILIES)}"
            raise TableError(f"“{family}” is no family of formulas", place, expected)
        try:
            cost = _cost(text) + float(rarity)
        except ValueError:
            raise TableError("the cost is not a number", place, "give a number") from None
        yield Word(text, role, final, joined, _split(others), gloss, family, cost)


def _places() -> Iterator[Word]:
    for (text, kind, kana, province), _ in tables.rows(
        "provinces", ("written", "kind", "kana", "province")
    ):
        gloss = "province" if kind == "province" else f"the province of {province}"
        yield Word(text, "place", kana, gloss=gloss, cost=_cost(text))
    for (text, kana, kind, others, gloss), place in tables.rows(
        "cities", ("written", "kana", "kind", "alternatives", "gloss")
    ):
        if kind not in ("city", "quarter"):
            raise TableError(f"“{kind}” is no kind of town", place, "use city or quarter")
        yield Word(text, kind, kana, "", _split(others), gloss, cost=_cost(text))


def _titles() -> Iterator[Word]:
    for (text, kana, kind, others, gloss), _ in tables.rows(
        "titles", ("written", "kana", "kind", "alternatives", "gloss")
    ):
        role = "office" if kind == "office" else "title"
        yield Word(text, role, kana, "", _split(others), gloss, cost=_cost(text))


def _materials() -> Iterator[Word]:
    for (text, _, _, kana, gloss), _ in tables.rows(
        "techniques", ("written", "kind", "pos", "kana", "gloss")
    ):
        yield Word(text, "material", kana, gloss=gloss, cost=_cost(text) + 0.3)


def _subjects() -> Iterator[Word]:
    for (text, kana, gloss), _ in tables.rows("subjects", ("written", "kana", "gloss")):
        yield Word(text, "subject", kana, gloss=gloss, cost=_cost(text) + 0.3)


@tables.compiled
def order() -> dict[str, dict[str, float]]:
    """Return the cost of one class after another."""
    found: dict[str, dict[str, float]] = {}
    for (before, after, cost), place in tables.rows("signature_order", ("before", "after", "cost")):
        try:
            value = float(cost)
        except ValueError:
            raise TableError("the cost is not a number", place, "give a number") from None
        for kind in after.split():
            found.setdefault(before, {}).setdefault(kind, value)
    return found


def order_cost(before: str, after: str) -> float | None:
    """Return what it costs that class ``after`` follows ``before``; None where nothing is said."""
    row = order().get(before)
    return None if row is None else row.get(after)
