"""The words of signatures, gathered from the glossary: places, titles, verbs, formulas.

Each word has a class that says what it does in the formula; which class follows which is in
``glossary/signatures/signature_order.tsv``, which the splitter reads.

>>> [word.kind for word in words_from("造")["造"]]
['verb']
>>> words_from("武")["武州"][0].kana
'ぶしゅう'
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables

# What a formula gives: where, by order of whom, for whom, after which model, out of what.
FAMILIES = ("place", "patron", "purpose", "model", "means")

POET = "poet"  # the family of the names of poets
_COST_OF_SHORT_POET, _SURE_POET = 0.6, 3  # 小町 may be a surname

_TABLES = (
    "signature_words",
    "signature_formulas",
    "provinces",
    "cities",
    "titles",
    "techniques",
    "subjects",
    "poets",
    "poets_ranks",
    "passage_roles",
)

# What a lexicon word costs by its length: long words are seldom there by chance.
_COST_BY_LENGTH = {1: 1.5, 2: 0.7}
_COST_OF_LONG = 0.4

# 武州 is also 武陽, 播州 播陽, in the Chinese manner; but such words are art names as well.
_PROVINCE, _PROVINCE_KANA, _SUNNY = "州", "しゅう", "陽"
_SELDOM = 1.0


class Word(NamedTuple):
    """A word of a signature. Kana: a space divides words, ``|`` the parts of one."""

    text: str
    kind: str  # its class: "verb", "place", "opener", ...
    kana: str
    with_object: str = ""  # of a verb after 之, as the table lists them; of an opener before a verb
    alternatives: tuple[str, ...] = ()
    gloss: str = ""
    family: str = ""  # of openers and closers: "place", "patron", "model", ...
    cost: float = 1.0


Lexicon = dict[str, dict[str, tuple[Word, ...]]]


@tables.cached()
def _tables() -> dict[str, tables.Rows]:
    return {name: tables.Rows(name) for name in _TABLES}


@tables.cached()
def words_from(char: str) -> dict[str, tuple[Word, ...]]:
    """Return the words that begin with a character, by their writing."""
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


def lexicon() -> Lexicon:
    """Return all words by their first character, then by their writing."""
    signs = dict.fromkeys(sign for table in _tables().values() for sign in table.signs())
    return {sign: words_from(sign) for sign in signs}


def _distinct(words: list[Word]) -> tuple[Word, ...]:
    seen: dict[tuple[str, str], Word] = {}
    for word in words:
        seen.setdefault((word.kind, word.family), word)
    return tuple(seen.values())


def _cost(text: str) -> float:
    return _COST_BY_LENGTH.get(len(text), _COST_OF_LONG)


def _plain_words(char: str) -> Iterator[Word]:
    for row in _tables()["signature_words"].about(char):
        yield Word(
            row["written"],
            row["class"],
            row["kana"],
            row["with_object"],
            tables.listed(row["also"]),
            row["gloss"],
            cost=_cost(row["written"]),
        )


def _formula_words(char: str) -> Iterator[Word]:
    for row in _tables()["signature_formulas"].about(char):
        yield Word(
            row["written"],
            row["kind"],
            row["kana"],
            row["joined"],
            tables.listed(row["also"]),
            row["gloss"],
            row["family"],
            _cost(row["written"]) + float(row["cost"]),
        )


def _places(char: str) -> Iterator[Word]:
    for row in _tables()["provinces"].about(char):
        text, kana = row["written"], row["kana"]
        whole = f"the province of {' or '.join(tables.listed(row['province']))}"
        gloss = "province" if row["kind"] == "province" else whole
        also = tables.listed(row["also"])
        yield Word(text, "place", kana, "", also, gloss, cost=_cost(text))
        if text.endswith(_PROVINCE) and kana.endswith(_PROVINCE_KANA):
            head = kana.removesuffix(_PROVINCE_KANA).replace("っ", "つ")
            sunny, cost = text[:-1] + _SUNNY, _cost(text) + _SELDOM
            yield Word(sunny, "place", f"{head}よう", gloss=whole, cost=cost)
    for row in _tables()["cities"].about(char):
        yield _with_readings(row, row["kind"])


def _titles(char: str) -> Iterator[Word]:
    for row in _tables()["titles"].about(char):
        yield _with_readings(row, "office" if row["kind"] == "office" else "title")


def _with_readings(row: tables.Row, kind: str) -> Word:
    text, also = row["written"], tables.listed(row["also"])
    return Word(text, kind, row["kana"], "", also, row["gloss"], cost=_cost(text))


def _materials(char: str) -> Iterator[Word]:
    for row in _tables()["techniques"].about(char):
        yield _seldom_there(row, "material")


def _subjects(char: str) -> Iterator[Word]:
    for row in _tables()["subjects"].about(char):
        yield _seldom_there(row, "subject")


def _seldom_there(row: tables.Row, kind: str) -> Word:
    text = row["written"]
    return Word(text, kind, row["kana"], gloss=row["gloss"], cost=_cost(text) + 0.3)


def _poets(char: str) -> Iterator[Word]:
    for row in _tables()["poets"].about(char):
        text = row["written"]
        cost = _cost(text) + (_COST_OF_SHORT_POET if len(text) < _SURE_POET else 0.0)
        yield Word(text, "name", row["kana"], gloss=row["gloss"], family=POET, cost=cost)


def _closing_words(char: str) -> Iterator[Word]:
    """Yield the ranks after the names of poets, and the verbs of composing and writing."""
    for row in _tables()["poets_ranks"].about(char):
        text = row["written"]
        yield Word(text, "honorific", row["kana"], gloss=row["gloss"], cost=_cost(text))
    for row in _tables()["passage_roles"].about(char):
        text, others = row["written"], tables.listed(row["also"])
        if row["kana"]:
            yield Word(text, "verb", row["kana"], "", others, row["gloss"], cost=_cost(text) + 0.5)


@tables.cached()
def order() -> dict[str, dict[str, float]]:
    """Return the cost of one class after another."""
    found: dict[str, dict[str, float]] = {}
    for row in tables.rows("signature_order"):
        for kind in tables.listed(row["after"]):
            found.setdefault(row["before"], {}).setdefault(kind, float(row["cost"]))
    return found


def order_cost(before: str, after: str) -> float | None:
    """Return what it costs that class ``after`` follows ``before``; None where nothing is said."""
    row = order().get(before)
    return None if row is None else row.get(after)
