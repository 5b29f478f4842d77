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

POET = "poet"  # the family of the names of poets
_COST_OF_SHORT_POET, _SURE_POET = 0.6, 3  # 小町 may be a surname

_COLUMNS = {
    "signature_words": ("written", "class", "kana", "with_object", "alternatives", "gloss"),
    "signature_formulas": (
        "written",
        "role",
        "family",
        "final",
        "joined",
        "alternatives",
        "gloss",
        "cost",
    ),
    "provinces": ("written", "kind", "kana", "province"),
    "cities": ("written", "kana", "kind", "alternatives", "gloss"),
    "titles": ("written", "kana", "kind", "alternatives", "gloss"),
    "techniques": ("written", "kind", "pos", "kana", "gloss"),
    "subjects": ("written", "kana", "gloss"),
    "poets": ("written", "kana", "gloss"),
    "poets_ranks": ("written", "kana", "gloss"),
    "passage_roles": ("written", "role", "kana", "alternatives", "gloss"),
}

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
def _tables() -> dict[str, tables.Rows]:
    return {name: tables.Rows(name, columns) for name, columns in _COLUMNS.items()}


@tables.compiled
def _known() -> Lexicon:
    return {}


def words_from(char: str) -> dict[str, tuple[Word, ...]]:
    """Return the words that begin with a character, by their writing.

    Raises:
        TableError: a row of the tables cannot be used.
    """
    known = _known()
    if char not in known:
        known[char] = _read_words_from(char)
    return known[char]


def lexicon() -> Lexicon:
    """Return all words by their first character, then by their writing."""
    signs = dict.fromkeys(sign for table in _tables().values() for sign in table.signs())
    return {sign: words_from(sign) for sign in signs}


def _read_words_from(char: str) -> dict[str, tuple[Word, ...]]:
    found: dict[str, list[Word]] = {}
    for word in (
        *_plain_words(char),
        *_formula_words(char),
        *_places(char),
        *_titles(char),
        *_materials(char),
        *_subjects(char),
        *_poets(char),
        *_closing_words(char),
    ):
        found.setdefault(word.text, []).append(word)
    return {text: _distinct(words) for text, words in found.items()}


def _distinct(words: list[Word]) -> tuple[Word, ...]:
    seen: dict[tuple[str, str], Word] = {}
    for word in words:
        seen.setdefault((word.kind, word.family), word)
    return tuple(seen.values())


def _cost(text: str) -> float:
    return _COST_BY_LENGTH.get(len(text), _COST_OF_LONG)


def _split(cell: str) -> tuple[str, ...]:
    return tuple(filter(None, cell.split("/")))


def _plain_words(char: str) -> Iterator[Word]:
    for cells, place in _tables()["signature_words"].about(char):
        text, kind, kana, with_object, others, gloss = cells
        if not kind or not kana:
            raise TableError("a cell is empty", place, "give writing, class and kana")
        yield Word(text, kind, kana, with_object, _split(others), gloss, cost=_cost(text))


def _formula_words(char: str) -> Iterator[Word]:
    for cells, place in _tables()["signature_formulas"].about(char):
        text, role, family, final, joined, others, gloss, rarity = cells
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


def _places(char: str) -> Iterator[Word]:
    for (text, kind, kana, province), _ in _tables()["provinces"].about(char):
        gloss = "province" if kind == "province" else f"the province of {province}"
        yield Word(text, "place", kana, gloss=gloss, cost=_cost(text))
    for (text, kana, kind, others, gloss), place in _tables()["cities"].about(char):
        if kind not in ("city", "quarter"):
            raise TableError(f"“{kind}” is no kind of town", place, "use city or quarter")
        yield Word(text, kind, kana, "", _split(others), gloss, cost=_cost(text))


def _titles(char: str) -> Iterator[Word]:
    for (text, kana, kind, others, gloss), _ in _tables()["titles"].about(char):
        role = "office" if kind == "office" else "title"
        yield Word(text, role, kana, "", _split(others), gloss, cost=_cost(text))


def _materials(char: str) -> Iterator[Word]:
    for (text, _, _, kana, gloss), _ in _tables()["techniques"].about(char):
        yield Word(text, "material", kana, gloss=gloss, cost=_cost(text) + 0.3)


def _subjects(char: str) -> Iterator[Word]:
    for (text, kana, gloss), _ in _tables()["subjects"].about(char):
        yield Word(text, "subject", kana, gloss=gloss, cost=_cost(text) + 0.3)


def _poets(char: str) -> Iterator[Word]:
    for (text, kana, gloss), _ in _tables()["poets"].about(char):
        cost = _cost(text) + (_COST_OF_SHORT_POET if len(text) < _SURE_POET else 0.0)
        yield Word(text, "name", kana, gloss=gloss, family=POET, cost=cost)


def _closing_words(char: str) -> Iterator[Word]:
    """Yield the ranks after the names of poets, and the verbs of composing and writing."""
    for (text, kana, gloss), _ in _tables()["poets_ranks"].about(char):
        yield Word(text, "honorific", kana, gloss=gloss, cost=_cost(text))
    for (text, _, kana, others, gloss), _ in _tables()["passage_roles"].about(char):
        if kana:
            yield Word(text, "verb", kana, "", _split(others), gloss, cost=_cost(text) + 0.5)


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
