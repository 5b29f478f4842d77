"""The glossary's tables of classical verbs and adjectives as dictionary entries.

A table gives a stem as it is written, its historical kana and its class; every form follows.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.lexicon.boundaries import (
    kanji_boundaries,
    okurigana_boundaries,
    part_readings,
)
from inscribe.reading.lexicon.groups import groups, with_words
from inscribe.reading.lexicon.mixed_spellings import compound_stems
from inscribe.reading.lexicon.nouns import common_word_costs, spoken_kana
from inscribe.reading.lexicon.paradigms import conjugation_named, inflections
from inscribe.reading.lexicon.shortened import inner_left_out, left_out
from inscribe.reading.lexicon.stems import RARER_CLASS, ClassIndex, Stem
from inscribe.reading.lexicon.vocabulary import conjugate
from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.spelling import modern_kana, morae, old_spellings

_SUFFIX = "接尾辞-形容詞的"
_COVERS_ENDING = {
    "カ行変格": "来",
    "サ行変格": "為",
    "下二段-ア行": "得",
    "下二段-ハ行": "経歴",
    "下二段-ナ行": "寝宿",
    "下二段-カ行": "消",
}
_INNER_KANA = re.compile("([\u4e00-\u9fff]+)[\u3041-\u3096]")
_ENDS_A_VERB = frozenset("きぎしちにひびみりえけせてねへめれ")
_KANA_RUN = re.compile("[\u3041-\u3096]+")
_MOST_COST = 9000  # a stem of the tables in kanji costs no more than this
_LEAST_COST = 5500
_UNKNOWN_READING = 2000  # a reading UniDic lacks for a stem it has
_KANA_COST = {1: 11000, 2: 9500, 3: 8700}  # a stem in kana, by the morae of its conjunctive form
_KANA_COST_LONG = 8000
_SHORT_AT_MOST_LESS = 500  # a short stem in kana, however UniDic has it
_OTHER_SPELLING = 600
_NOUN_AND_VERB = 2500  # 波立つ, two words: its phrase may end between them
_LEFT_OUT = {"る": ("連体形-一般",), "れ": ("已然形-一般",)}  # 春来こと: kuru, 影見は: mire
_IN_KANJI = 700
_CONTRACTED = {"下二段-カ行": 3500}  # 消 as ke, for kie
_MIXED = 300  # 思しる for 思ひ知る costs this much more


class VerbRow(NamedTuple):
    """One verb or adjective of the tables, its kana also in current spelling."""

    name: str  # its class as the tables write it
    written: str
    historical: str
    modern: str
    conjugation: str
    gloss: str
    covers: bool  # the last sign covers the first kana of the ending: 来, 見
    usual: bool = True  # the first spelling that the tables give


def verb_rows() -> list[VerbRow]:
    """Return the rows of both tables."""
    raw = []
    names: list[str] = []
    for table in ("verse_verbs", "verse_adjectives"):
        for row in tables.rows(table):
            conjugation = conjugation_named(row["class"])
            raw.append((row["written"], row["historical"], conjugation, row["gloss"]))
            names.append(row["class"])
    cuts: dict[str, set[int]] = {}
    parts = part_readings(raw)
    for written, kana, _, _ in raw:
        found = okurigana_boundaries(written, kana) or kanji_boundaries(written, kana, parts)
        cuts.setdefault(kana, set()).update(found if len(written) > 1 else ())
    first: dict[tuple[str, str], str] = {}
    for name, (written, kana, _, _) in zip(names, raw, strict=True):
        first.setdefault((kana, name), written)
    return [
        VerbRow(
            name,
            written,
            kana,
            _modern_stem(kana, conjugation, tuple(sorted(cuts[kana]) if len(written) > 1 else ())),
            conjugation,
            gloss,
            _covers(written, conjugation),
            first[kana, name] == written,
        )
        for name, (written, kana, conjugation, gloss) in zip(names, raw, strict=True)
    ]


def _modern_stem(kana: str, conjugation: str, cuts: tuple[int, ...]) -> str:
    """Return a stem in current spelling; its ending may decide (仰ぐ: あふ+ぐ is あおぐ)."""
    if not kana:
        return ""
    forms = {form: (written, modern) for form, written, modern, _ in inflections(conjugation)}
    written, modern = forms.get("終止形-一般", ("", ""))
    if written and not conjugation.startswith(("上一段", "形容詞")):
        whole = modern_kana(kana + written, "動詞", cuts)
        if whole.endswith(modern):
            return whole[: len(whole) - len(modern)]
    return modern_kana(kana, "", cuts)


def _covers(written: str, conjugation: str) -> bool:
    if conjugation.startswith("上一段"):
        return True
    return written[-1:] in _COVERS_ENDING.get(conjugation, "") and bool(written)


def stem_readings(rows: list[VerbRow]) -> dict[str, set[str]]:
    """Return the readings the tables give for each written stem."""
    readings: dict[str, set[str]] = {}
    for row in rows:
        for written in (row.written, row.historical, row.modern, without_inner_kana(row)):
            if written or not row.written:
                readings.setdefault(written, set()).add(_stem_kana(row))
    return readings


def _stem_kana(row: VerbRow) -> str:
    return row.modern[:-1] if row.conjugation.startswith("上一段") else row.modern


def verb_entries(rows: list[VerbRow], index: ClassIndex) -> Iterator[DictionaryEntry]:
    """Yield every form of every row, in kanji and in the kana spellings it may have."""
    common = common_word_costs()
    for row in rows:
        kana = spoken_kana(row.historical, row.modern)
        kana = kana[:-1] if row.conjugation.startswith("上一段") else kana
        for written, cost in _spellings(row, index, common):
            stem = Stem(
                written,
                kana,
                row.conjugation,
                cost,
                index.kinds.get(row.written, "一般"),
                row.written,
                gloss=row.gloss,
                pos=_SUFFIX if row.name.endswith("接尾") else "",
                ending_begins=row.covers,
            )
            in_kanji = written != row.historical and not _KANA_RUN.fullmatch(written[-1:])
            group = groups().get((row.written, row.historical))
            if group and "名詞" in group.parts_of_speech[0]:
                stem = stem._replace(cost=cost + _NOUN_AND_VERB)
            short = without_inner_kana(row) if written == row.written else ""
            if short and short not in index.nouns:  # 霧は is no kirawa
                for entry in conjugate(stem._replace(written=short), index):
                    bare = entry.written == short
                    yield left_out(entry) if bare else inner_left_out(entry)
            for entry in _forms(row, stem, index, in_kanji=in_kanji):
                yield with_words(entry, group, in_kana=not in_kanji)


def without_inner_kana(row: VerbRow) -> str:
    """Return a stem without the kana before its ending: 移 for 移ろ of 移ふ, 暮 for 暮ら of 暮す.

    Not where that kana begins a second verb (鳴そ is naki-so), nor of 知らす: 知す would rather be
    shirosu, to rule.
    """
    cut = _INNER_KANA.fullmatch(row.written)
    if cut is None or row.written == "知ら" or row.historical[-2:-1] in _ENDS_A_VERB:
        return ""
    return cut[1]


def stem_conjugations(rows: list[VerbRow]) -> dict[tuple[str, str], set[str]]:
    """Return the conjugations the tables give for each written stem and its kana."""
    found: dict[tuple[str, str], set[str]] = {}
    for row in rows:
        found.setdefault((row.written, _stem_kana(row)), set()).add(row.conjugation)
    return found


def fourfold_stems(rows: list[VerbRow]) -> set[str]:
    """Return the written stems of verbs that are conjugated in four grades (四段) only.

    A noun made of such a verb never ends in e.
    """
    others = {row.written for row in rows if not row.conjugation.startswith("四段")}
    return {row.written for row in rows} - others


def rarer_classes(rows: list[VerbRow]) -> set[tuple[str, str, str]]:
    """Return spelling, kana and conjugation of verbs that a commoner one is spelled like.

    鳴 is 鳴る, and more often 鳴く.
    """
    common = common_word_costs()
    alike: dict[tuple[str, str], list[tuple[str, int | None]]] = {}
    for row in rows:
        cost = common.get((row.historical, row.name), None)
        cost = common.get((f"{row.historical}={row.written}", row.name), cost)
        alike.setdefault((row.written, _stem_kana(row)), []).append((row.conjugation, cost))
    found: set[tuple[str, str, str]] = set()
    for (written, kana), classes in alike.items():
        least = min([cost for _, cost in classes if cost is not None], default=None)
        if least is not None:
            found |= {(written, kana, name) for name, cost in classes if cost != least}
    return found


def _forms(
    row: VerbRow, stem: Stem, index: ClassIndex, *, in_kanji: bool
) -> Iterator[DictionaryEntry]:
    """Yield the forms of one spelling of a row."""
    if not row.covers:
        yield from conjugate(stem, index)
    elif in_kanji:
        for entry in conjugate(stem._replace(written=""), index):
            yield entry._replace(written=stem.written + entry.written[1:])
            if entry.written[1:] in _LEFT_OUT and entry.form in _LEFT_OUT[entry.written[1:]]:
                yield left_out(entry._replace(written=stem.written))
    else:
        upper = row.conjugation.startswith("上一段")
        yield from conjugate(
            stem._replace(written=stem.written[:-1] if upper else stem.written), index
        )


def _spellings(
    row: VerbRow, index: ClassIndex, common: dict[tuple[str, str], int]
) -> Iterator[tuple[str, int]]:
    kana = _stem_kana(row)
    length = morae(kana) + 1
    in_kana = _KANA_COST.get(length, _KANA_COST_LONG)
    if row.written not in (row.historical, row.modern):
        rare = _UNKNOWN_READING if index.knows_another(row.written, kana) else 0
        cost = index.ranked_cost(row.written, kana)
        if cost is None:
            cost = min(index.costs.get((row.written, kana), _MOST_COST + rare), _MOST_COST + rare)
        usual = common.get((row.historical, row.name)) if row.usual else None
        if (row.written, kana, row.conjugation) in index.rarer:
            cost += RARER_CLASS
        elif usual is not None:
            cost = min(cost, usual + _IN_KANJI)
        if row.covers and row.conjugation in _CONTRACTED:
            cost += _CONTRACTED[row.conjugation]
        yield row.written, max(_LEAST_COST, cost)
        if (row.written, row.historical) not in groups():
            for spelling in compound_stems(row.written, row.historical, covers=row.covers):
                yield spelling, _MOST_COST + _MIXED
    own = index.costs.get((row.modern, kana), in_kana) if row.modern else in_kana
    own = max(_LEAST_COST, min(own, in_kana))
    if length == 2:  # はす, なぐ: as often particles or other words; the commonest are named
        own = max(own, in_kana - _SHORT_AT_MOST_LESS)
    yield row.historical, min(own, common.get((row.historical, row.name), own))
    given = {row.written, row.historical}
    others = [(row.modern, 0), *old_spellings(row.modern, wo=True)]
    for spelling, more in others:
        if spelling and spelling not in given:
            given.add(spelling)
            yield spelling, in_kana + _OTHER_SPELLING + more
