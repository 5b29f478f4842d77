"""The words of signatures, gathered from the glossary: places, titles, verbs, formulas.

Each word has a class that says what it does in the formula; which class follows which is in
``glossary/signatures/signature_order.tsv``, which the splitter reads.

>>> [word.kind for word in words_from("造")["造"]]
['verb']
>>> words_from("武")["武州"][0].kana
'ぶしゅう'
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.words.compounds import compounds, compounds_of
from inscribe.reading.words.japanese_order import formulas_in_japanese, kana_of_formulas
from inscribe.reading.words.lexical import (
    SignatureWord,
    cost_by_length,
    without_marks_of_repetition,
)
from inscribe.reading.words.written_out import kanji_before_ending, verbs_in_kana, written_out

_TABLES = (
    "signature_words",
    "signature_formulas",
    "provinces",
    "cities",
    "titles",
    "techniques",
    "subjects",
    "works",
    "poets",
    "poets_ranks",
    "passage_roles",
    "festivals",
)
_AROUND_NAMES = frozenset({"modelled", "withal", "where"})  # ニ倣フ, ヲ以テ, ニ於テ
_NO_KANA, _IN_KATAKANA = re.compile("[^ぁ-ヺ]"), frozenset("ニヲノガ")
POET = "poet"  # the family of the names of poets
_COST_OF_SHORT_POET, _SURE_POET = 0.6, 3  # 小町 may be a surname
# 武州 is also 武陽, 播州 播陽, in the Chinese manner; but such words are art names as well.
_PROVINCE, _PROVINCE_KANA = "州", "しゅう"
_SUNNY, _ISLE = "陽", "洲"  # 武陽 for the land of 武州; 尾洲 for 尾州
_SELDOM = 1.0
_QUOTED = 0.2  # a poet rather signs than is named
_RECURRING = 20_000  # texts whose words are kept
_FEAST = 0.5
_SHORT_TITLE = 1.5  # 伊勢 and 葵 are seldom the poet and the chapter

Lexicon = dict[str, dict[str, tuple[SignatureWord, ...]]]


@tables.cached()
def _tables() -> dict[str, tables.Rows]:
    return {name: tables.Rows(name) for name in _TABLES}


@tables.cached()
def words_from(char: str) -> dict[str, tuple[SignatureWord, ...]]:
    """Return the words that begin with a character, by their writing."""
    found: dict[str, list[SignatureWord]] = {}
    for word in (
        *_plain_words(char),
        *_formula_words(char),
        *_places(char),
        *_titles(char),
        *_materials(char),
        *_subjects(char),
        *_poets(char),
        *_closing_words(char),
        *_quoted(char),
        *_feasts(char),
    ):
        text = without_marks_of_repetition(word.text)
        found.setdefault(text, []).append(word if text == word.text else word._replace(text=text))
    return {text: _distinct(words) for text, words in found.items()}


@tables.cached(_RECURRING)
def words_of(text: str) -> tuple[SignatureWord, ...]:
    """Return the words that a text is: those of the tables, those made of parts, verbs with kana.

    >>> [word.kana for word in words_of("造")], [word.kana for word in words_of("再鐫")]
    (['つくる'], ['さいせん'])
    """
    listed = words_from(text[0]).get(text, ())
    put_together = compounds(text)
    if not put_together:
        return listed or formulas_in_japanese(text) or tuple(_with_its_ending(text))
    made = {(word.kind, word.family): word for word in put_together}
    return (
        *(_also_read(word, made.pop((word.kind, word.family), None)) for word in listed),
        *made.values(),
    )


def kana_in_formulas(text: str) -> int:
    """Return how many kana of a text belong to 之 written out, or to a formula around a name.

    >>> kana_in_formulas("嶺暁ニ倣フ"), kana_in_formulas("コレヲ作"), kana_in_formulas("花に鳴く")
    (2, 3, 0)
    """
    formulas = _formulas_in_kana()
    listed = sum(len(_NO_KANA.sub("", found)) for found in formulas.findall(text))
    return listed + kana_of_formulas(text)


@tables.cached()
def _formulas_in_kana() -> re.Pattern[str]:
    words = [r["written"] for r in tables.rows("signature_words") if r["class"] in _AROUND_NAMES]
    words += compounds_of("patron", 1)  # ノ為ニ, 祝トシテ
    mixed = sorted((w for w in words if _NO_KANA.search(w) or w[:1] in _IN_KATAKANA), key=len)
    written = (*map(re.escape, reversed(mixed)), *(f"{verb}$" for verb in verbs_in_kana()))
    return re.compile("|".join(("(?:コレ|これ)[ヲを]", *written)))


def _with_its_ending(text: str) -> Iterator[SignatureWord]:
    """Yield the verb that a text is with its ending in kana, or all in kana: 作ル, ホル."""
    if verb := verbs_in_kana().get(text):
        yield SignatureWord(text, "verb", verb, verb, cost=cost_by_length(text))
    if kanji := kanji_before_ending(text):
        yield from written_out(text, words_of(kanji))


def _also_read(word: SignatureWord, made: SignatureWord | None) -> SignatureWord:
    """Return a listed word with the readings its parts give it too: 謹彫 tsutsushinde horu."""
    if made is None or not made.alternatives:
        return word
    others = dict.fromkeys((*word.alternatives, *made.alternatives))
    return word._replace(alternatives=tuple(kana for kana in others if kana != word.kana))


def lexicon() -> Lexicon:
    """Return all words of the tables by their first character, then by their writing."""
    signs = dict.fromkeys(sign for table in _tables().values() for sign in table.signs())
    return {sign: words_from(sign) for sign in signs}


def _distinct(words: list[SignatureWord]) -> tuple[SignatureWord, ...]:
    seen: dict[tuple[str, str], SignatureWord] = {}
    for word in words:
        seen.setdefault((word.kind, word.family), word)
    return tuple(seen.values())


def _plain_words(char: str) -> Iterator[SignatureWord]:
    for row in _tables()["signature_words"].about(char):
        yield SignatureWord(
            row["written"],
            row["class"],
            row["kana"],
            row["with_object"],
            tables.listed(row["also"]),
            row["gloss"],
            cost=cost_by_length(row["written"]),
        )


def _formula_words(char: str) -> Iterator[SignatureWord]:
    for row in _tables()["signature_formulas"].about(char):
        yield SignatureWord(
            row["written"],
            row["kind"],
            row["kana"],
            row["joined"],
            tables.listed(row["also"]),
            row["gloss"],
            row["family"],
            cost_by_length(row["written"]) + float(row["cost"]),
        )


def _places(char: str) -> Iterator[SignatureWord]:
    for row in _tables()["provinces"].about(char):
        text, kana = row["written"], row["kana"]
        whole = f"the province of {' or '.join(tables.listed(row['province']))}"
        gloss = "province" if row["kind"] == "province" else whole
        also = tables.listed(row["also"])
        yield SignatureWord(text, "place", kana, "", also, gloss, cost=cost_by_length(text))
        if text.endswith(_PROVINCE) and kana.endswith(_PROVINCE_KANA):
            head = kana.removesuffix(_PROVINCE_KANA).replace("っ", "つ")
            cost = cost_by_length(text) + _SELDOM
            for sign, said in ((_SUNNY, f"{head}よう"), (_ISLE, kana)):
                yield SignatureWord(text[:-1] + sign, "place", said, gloss=whole, cost=cost)
    for row in _tables()["cities"].about(char):
        yield _with_readings(row, row["kind"])


def _titles(char: str) -> Iterator[SignatureWord]:
    for row in _tables()["titles"].about(char):
        yield _with_readings(row, "office" if row["kind"] == "office" else "title")


def _with_readings(row: tables.Row, kind: str) -> SignatureWord:
    text, also = row["written"], tables.listed(row["also"])
    return SignatureWord(text, kind, row["kana"], "", also, row["gloss"], cost=cost_by_length(text))


def _materials(char: str) -> Iterator[SignatureWord]:
    for row in _tables()["techniques"].about(char):
        yield _seldom_there(row, "material")


def _subjects(char: str) -> Iterator[SignatureWord]:
    for row in _tables()["subjects"].about(char):
        yield _seldom_there(row, "subject")


def _poets(char: str) -> Iterator[SignatureWord]:
    """Yield each poet twice: as who signs, and as whom a heading names."""
    for row in _tables()["poets"].about(char):
        text, also = row["written"], tables.listed(row["also"])
        cost = cost_by_length(text)
        name = SignatureWord(text, "name", row["kana"], "", also, row["gloss"], POET, cost)
        quoted = name._replace(kind="poet", cost=cost + _QUOTED + _SHORT_TITLE * (len(text) < 3))
        yield name._replace(cost=cost + _COST_OF_SHORT_POET * (len(text) < _SURE_POET))
        yield quoted


def _closing_words(char: str) -> Iterator[SignatureWord]:
    """Yield the ranks after the names of poets, and the verbs of composing and writing."""
    for row in _tables()["poets_ranks"].about(char):
        text = row["written"]
        yield SignatureWord(
            text, "honorific", row["kana"], gloss=row["gloss"], cost=cost_by_length(text)
        )
    for row in _tables()["passage_roles"].about(char):
        text, others = row["written"], tables.listed(row["also"])
        if row["kana"]:
            yield SignatureWord(
                text, "verb", row["kana"], "", others, row["gloss"], cost=cost_by_length(text) + 0.5
            )


def _quoted(char: str) -> Iterator[SignatureWord]:
    for row in _tables()["works"].about(char):
        word = _with_readings({**row, "gloss": ""}, row["kind"])
        yield word._replace(cost=word.cost + _SHORT_TITLE * (len(word.text) < 3))


def _feasts(char: str) -> Iterator[SignatureWord]:
    """Yield the feasts that stand without a year; with one they are a date."""
    for row in _tables()["festivals"].about(char):
        text, kana = row["written"], row["kana"]
        if len(text) > 1:
            cost = cost_by_length(text) + _FEAST
            yield SignatureWord(text, "day_word", kana, family="feast", cost=cost)


def _seldom_there(row: tables.Row, kind: str) -> SignatureWord:
    text = row["written"]
    return SignatureWord(
        text, kind, row["kana"], gloss=row["gloss"], cost=cost_by_length(text) + 0.3
    )


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
