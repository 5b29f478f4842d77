"""Stems of verbs and adjectives, weighed against what the tables say of their readings.

UniDic's words bring costs, the tables say which readings of a stem there are and which is the
likelier; a ``ClassIndex`` holds both together, and knows the connection class of each form.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from inscribe.reading import mecab

KANA = re.compile("[\u3041-\u3096]")
ONLY_KANA = re.compile("[\u3041-\u3096]+$")
_RARE_VERB = 1000  # a verb whose stem is written in kana, and that the tables do not have
RARER_CLASS = 3800  # 鳴る, 立つ (to raise) beside commoner 鳴く, 立つ (to stand)
_E_ROW = "えけげせてでねへべめれ"
_MOST_RANKED = 9000  # the likeliest reading of a ranked stem costs no more
_RANK = 3000  # each further reading of a stem costs this much more
OTHER_READING = 5000  # a reading of a stem that the tables do not give


class Stem(NamedTuple):
    """What a verb or adjective is conjugated from."""

    written: str
    kana: str
    conjugation: str
    cost: int  # of the conjunctive form
    kind: str  # UniDic's second part of speech: 一般 or 非自立可能
    lemma: str
    origin: str = "和"
    gloss: str = ""
    pos: str = ""  # where it is neither verb nor adjective
    ending_begins: bool = False  # the ending begins a part of the word: 年を経, としを|へ


class ClassIndex:
    """Finds the connection class of a word, and weighs the stems of UniDic against the tables'.

    ``stems`` are the readings the tables give for each written stem, ``ranks`` those whose order
    is known; ``costs`` and ``kinds`` collect what UniDic says of
    the stems: their cost and their second part of speech.
    """

    def __init__(
        self,
        classes: mecab.Classes,
        stems: dict[str, set[str]] | None = None,
        ranks: dict[str, list[str]] | None = None,
    ) -> None:
        self.classes = classes
        self._stems = stems or {}
        self._ranks = ranks or {}
        self.rarer: set[tuple[str, str, str]] = set()  # spelling, kana and conjugation
        self.conjugations: dict[tuple[str, str], set[str]] = {}  # of the tables' stems
        self.nouns: set[str] = set()  # usual nouns as written: 紅葉 is hardly a form of 紅葉つ
        self.fourfold: set[str] = set()  # stems of verbs that are 四段 and nothing else
        self.costs: dict[tuple[str, str], int] = {}
        self.kinds: dict[str, str] = {}
        self._classes_of: dict[tuple[str, str, str], tuple[int | None, str]] = {}
        self._found: dict[tuple[str, ...], int] = {}
        for number, row in enumerate(classes.rows):
            if row[8] in ("和", "固"):
                self._found.setdefault((*row[:6], row[6]), number)

    def weighed(self, stem: Stem) -> Stem:
        """Return a stem of UniDic's with the cost it has in verse."""
        readings = self._stems.get(stem.written)
        if readings is None:
            return stem._replace(cost=stem.cost + (_RARE_VERB if KANA.search(stem.written) else 0))
        if stem.kana not in readings:
            return stem._replace(cost=stem.cost + OTHER_READING)
        if (stem.written, stem.kana, stem.conjugation) in self.rarer:
            stem = stem._replace(cost=stem.cost + RARER_CLASS)
        key = (stem.written, stem.kana)
        self.costs[key] = min(stem.cost, self.costs.get(key, stem.cost))
        self.kinds[stem.written] = stem.kind
        if stem.written in self._ranks:
            return stem._replace(cost=stem.cost + self.rank_cost(stem.written, stem.kana))
        return stem

    def ranked_cost(self, written: str, kana: str) -> int | None:
        """Return the cost of a stem whose readings are ranked: all share the likeliest one's."""
        if written not in self._ranks:
            return None
        known = [
            self.costs[key]
            for kana in self._stems[written]
            if (key := (written, kana)) in self.costs
        ]
        if not known:
            return None
        return min(*known, _MOST_RANKED) + self.rank_cost(written, kana)

    def rank_cost(self, written: str, kana: str) -> int:
        """Return what a reading of a stem costs more for not being its likeliest."""
        ranked = self._ranks.get(written, ())
        if not ranked or not kana or kana in ranked:
            return _RANK * (ranked.index(kana) if kana in ranked else 0)
        return _RANK * (len(ranked) + 1)

    def class_of(self, pos: str, conjugation: str, form: str) -> tuple[int | None, str]:
        """Return the class of a form of a classical verb or adjective, and its part of speech."""
        key = (pos, conjugation, form)
        found = self._classes_of.get(key)
        if found is None:
            found = self._classes_of[key] = _class_of(self, pos, conjugation, form)
        return found

    def has_other_readings(self, written: str, kana: str) -> bool:
        """Whether the tables give readings for the stem, and not this one."""
        return written in self._stems and kana not in self._stems[written]

    def has_one_reading(self, written: str, kana: str) -> bool:
        """Whether the tables give this reading for the stem, and no other."""
        return self._stems.get(written) == {kana}

    def is_stem(self, written: str) -> bool:
        """Whether the tables have a verb or adjective with this stem, and no noun written so."""
        return written in self._stems and written not in self.nouns

    def ends_in_a_verb(self, written: str, kana: str) -> bool:
        """Whether a word in kanji ends in a verb of the tables with one kana more: 月待, 花咲."""
        if len(written) < 2 or KANA.search(written) or written in self.nouns:
            return False
        return any(stem and kana[:-1].endswith(stem) for stem in self._stems.get(written[-1], ()))

    def is_verbal_noun(self, written: str, kana: str) -> bool:
        """Whether a noun is a verb of the tables with the one kana of its ending: 濁り."""
        stem = written[:-1]
        if len(stem) > 1 or KANA.search(stem):
            return False
        return ONLY_KANA.match(written[-1:]) is not None and kana[:-1] in self._stems.get(stem, ())

    def is_misread_stem(self, written: str, kana: str) -> bool:
        """Whether a word is a stem of the tables and one kana, but is not read as the stem is."""
        if not ONLY_KANA.match(written[-1:]) or KANA.search(written[:-1]):
            return False
        if written[:-1] in self.fourfold and written[-1] in _E_ROW:
            return True  # 引け: a noun to modern ears
        return self.has_other_readings(written[:-1], kana[:-1])

    def knows_another(self, written: str, kana: str) -> bool:
        """Whether UniDic has the stem with another of the readings of the tables, but not this."""
        if (written, kana) in self.costs:
            return False
        return any((written, other) in self.costs for other in self._stems.get(written, ()))

    def number(self, pos: str, conjugation: str, form: str, written: str = "*") -> int | None:
        """Return the class of a word, the class of its very spelling where UniDic has one."""
        parts = (pos.split("-") + ["*"] * 4)[:4]
        for spelling in (written, "*"):
            found = self._found.get((*parts, conjugation, form, spelling))
            if found is not None:
                return found
        return None

    def auxiliary(self, conjugation: str, form: str, written: str) -> int | None:
        """Return the class of a form of an auxiliary: of its spelling, else of any, else alike."""
        kind = form.partition("-")[0]
        found = [
            (row[6] == written, row[5].startswith(kind), row[5] in (form, "終止形-一般"), -number)
            for number, row in enumerate(self.classes.rows)
            if row[0] == "助動詞" and row[4] == conjugation
        ]
        return -max(found)[3] if found else None


_STANDS_FOR = {"ミ語法": "名詞-普通名詞-副詞可能", "サ語法": "名詞-普通名詞-一般"}


def _class_of(index: ClassIndex, pos: str, conjugation: str, form: str) -> tuple[int | None, str]:
    if form in _STANDS_FOR:
        return index.number(_STANDS_FOR[form], "*", "*"), _STANDS_FOR[form]
    row = conjugation.partition("-")[2]
    fallbacks = [(pos, conjugation, form), (pos.split("-")[0] + "-一般", conjugation, form)]
    if form == "ク語法":
        fallbacks += [("名詞-普通名詞-一般", "*", "*")]
    for other in ("ラ行", "マ行") if row else ():  # where UniDic has no such class for the row
        fallbacks.append((pos.split("-")[0] + "-一般", conjugation.replace(row, other), form))
    fallbacks.append((pos.split("-")[0] + "-一般", "文語形容詞-ク", form))
    for candidate in fallbacks:
        if (number := index.number(*candidate)) is not None:
            return number, pos
    return None, pos
