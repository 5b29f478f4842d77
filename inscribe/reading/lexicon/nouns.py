"""The glossary's tables of classical words as dictionary entries.

A word is entered as the table writes it, in historical and in current kana, and in the spellings
that writers of kana confused with them.
"""

from __future__ import annotations

import math
import re
from collections.abc import Collection, Iterator

from inscribe import tables
from inscribe.reading.lexicon.groups import Words, as_cell, groups, with_words
from inscribe.reading.lexicon.mixed_spellings import mixed_spellings, readings_of_signs
from inscribe.reading.lexicon.particles import COST_CONSTANT, COST_FACTOR
from inscribe.reading.lexicon.shortened import (
    TWO_NOUNS,
    as_subject,
    bare_inside,
    ends_in_a_verb,
    without_its_no,
    without_no,
)
from inscribe.reading.lexicon.stems import ClassIndex
from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.spelling import modern_kana, morae, old_spellings

_VERB_INSIDE = re.compile("[\u4e00-\u9fff]ふ")  # 思ふ人: a verb ends inside the word
_ONE_OF_ITS_FORMS = 1000  # a form of a verb is about a quarter as common as the verb
_WORD_COST = 7500  # a word of the tables in kanji, where UniDic has no lower cost
_MOST_COST = 9000  # what UniDic hardly knows and the tables do costs no more
_KANA_COST = {1: 12000, 2: 9500, 3: 8500}  # a word in kana, by its morae
_KANA_COST_LONG = 7500
_OTHER_SPELLING = 600  # a kana spelling that the table does not give costs this much more
_PARTICLE_LEFT_OUT = 1000  # 梅花 for 梅の花
_MIXED = 900  # 夕くれ for 夕暮 costs this much more
_SHARE = 0.2  # of UniDic's difference between two readings of a written form that is kept
_RANK = 2500  # each further reading of a written form costs this much more
_OKURIGANA_LEFT_OUT = 2200  # 思 for 思ひ, as often a form of the verb
_NAME = "固有名詞"
_POS_COST = {"接尾辞": 4500, "接頭辞": 1000, "感動詞": 1500, "接続詞": 1000}


def common_word_costs() -> dict[tuple[str, str], int]:
    """Return the costs of common words by historical kana (KANA=SPELLING of some) and class."""
    costs: dict[tuple[str, str], int] = {}
    for row in tables.rows("verse_common_words"):
        cost = int(COST_CONSTANT - COST_FACTOR * math.log(float(row["weight"]) / 1000))
        more = 0 if row["class"] == "*" else _ONE_OF_ITS_FORMS
        of_spelling = f"={row['written']}" if row["written"] else ""
        costs[row["historical"] + of_spelling, row["class"]] = cost + more
    return costs


def noun_rows() -> Iterator[tuple[str, str, str, str, str]]:
    """Yield the rows of the tables of uninflected words."""
    for table in ("verse_nouns", "verse_places", "verse_phrases"):
        for row in tables.rows(table):
            pos = row["pos"].replace(",", "-")
            if "成句" not in pos:  # a line of verse is read from its words, not known by heart
                yield row["written"], row["historical"], row["kana"], pos, row["gloss"]


def curated_readings() -> dict[str, list[str]]:
    """Return the readings the tables give for each written form, the likeliest first."""
    readings: dict[str, list[str]] = {}
    for row in tables.rows("verse_readings"):
        if not row["written"].endswith("-"):
            readings.setdefault(row["written"], []).extend(tables.listed(row["kana"]))
    for written, _, modern, _, _ in noun_rows():
        there = readings.setdefault(written, [])
        if modern not in there:
            there.append(modern)
    return readings


def ranked_stems() -> dict[str, list[str]]:
    """Return the readings of the stems of verbs and adjectives whose order the tables know."""
    ranked: dict[str, list[str]] = {}
    for row in tables.rows("verse_readings"):
        if row["written"].endswith("-"):
            ranked.setdefault(row["written"][:-1], []).extend(tables.listed(row["kana"]))
    return ranked


def bare_verbs(stems: dict[str, set[str]]) -> set[tuple[str, str]]:
    """Return the written nouns that may as well be a verb without its okurigana.

    思 is often 思ひ, while 霞 is the noun. ``stems`` are the readings of the stems of verbs.
    """
    rows = [(written, historical, modern) for written, historical, modern, *_ in noun_rows()]
    there = {(written, modern) for written, _, modern in rows}
    return {
        (written, modern)
        for written, historical, modern in rows
        if modern[:-1] in stems.get(written, ())
        and ((written + historical[-1], modern) in there or ends_in_a_verb(written, modern, stems))
    }


def settled_costs(
    costs: dict[tuple[str, str], int],
    readings: dict[str, list[str]],
    bare: Collection[tuple[str, str]] = (),
) -> dict[tuple[str, str], int]:
    """Return a cost for each reading of the tables.

    How often a written form occurs (UniDic knows) counts for all its readings alike; which reading
    is likelier only the tables say, for modern texts tell little of verse. ``bare`` are written
    forms that are as often a verb without its okurigana; they cost more.
    """
    least: dict[str, int] = {}
    for (written, _), cost in costs.items():
        least[written] = min(cost, least.get(written, cost))
    settled: dict[tuple[str, str], int] = {}
    for written, kana in readings.items():
        base = min(least.get(written, _WORD_COST), _MOST_COST)
        for rank, reading in enumerate(kana):
            own = min(costs.get((written, reading), base), _MOST_COST)
            more = _RANK * rank
            if (written, reading) in bare:
                more = max(more, _OKURIGANA_LEFT_OUT * (1 if len(written) == 1 else 2))
            settled[written, reading] = base + int((own - base) * _SHARE) + more
    return settled


def noun_entries(
    index: ClassIndex, settled: dict[tuple[str, str], int], readings: dict[str, list[str]]
) -> Iterator[DictionaryEntry]:
    """Yield the uninflected words; ``settled`` are the costs of their written forms."""
    common = common_word_costs()
    plain = {kana for _, kana, _, pos, _ in noun_rows() if _NAME not in pos}
    particle, subject = (index.number("助詞-格助詞", "*", "*", each) or 0 for each in "のが")
    signs = readings_of_signs((written, historical) for written, historical, *_ in noun_rows())
    for written, historical, modern, pos, gloss in noun_rows():
        number = index.number(pos, "*", "*", written)
        if number is None:
            number = index.number("名詞-普通名詞-一般", "*", "*")
        assert number is not None
        if pos.startswith("連語"):
            yield from _pillow_word(written, historical, modern, gloss, number, index)
            continue
        parts = _phrase_parts(written, historical, modern, readings)
        yield from _short_phrase(without_its_no(written, modern, readings), modern, number, gloss)
        if parts:
            yield from _set_phrase(parts, number, settled[written, modern], gloss)
            continue
        affix = _POS_COST.get(pos.partition("-")[0], 0)
        kana = spoken_kana(historical, modern)
        if _VERB_INSIDE.search(written):
            kana = kana.replace("う", "|う")
        for spelling, cost in _spellings(written, historical, modern):
            if spelling == written and not affix and spelling not in (historical, modern):
                cost = settled[written, modern]
            hidden = _NAME in pos and historical in plain  # あき is autumn, not the province
            hidden = hidden or _is_short_pronoun(pos, spelling)
            if spelling == historical and not affix and not hidden:
                cost = min(cost, common.get((historical, "*"), cost))
            entry = DictionaryEntry(
                spelling, number, cost + affix, kana, pos, "*", "*", written, "和", gloss
            )
            group = groups().get((written, historical))
            if group and not group.parts_of_speech[-1].startswith(("名詞", "助詞")):
                group = None  # 花見, flower viewing, beside 花見る
            yield with_words(entry, group, in_kana=spelling != written)
            yield from as_subject(entry, subject)
        if not affix and pos.startswith("名詞"):
            entry = DictionaryEntry(
                written, number, settled[written, modern], kana, pos, "*", "*", written, "和", gloss
            )
            yield from without_no(entry, particle)
            yield from (bare for bare in bare_inside(entry) if bare.written not in readings)
            for spelling in mixed_spellings(written, historical, signs):
                yield entry._replace(written=spelling, cost=entry.cost + _MIXED)


def _short_phrase(written: str, modern: str, number: int, gloss: str) -> Iterator[DictionaryEntry]:
    """Yield a phrase as manuscripts write it, if they do."""
    kana, noun = modern.replace("の", " の "), "名詞-普通名詞-一般"
    cost, note = _WORD_COST + _PARTICLE_LEFT_OUT, "の not written"
    if written:
        yield DictionaryEntry(
            written, number, cost, kana, noun, "*", "*", written, "和", gloss, note
        )


def _is_short_pronoun(pos: str, kana: str) -> bool:
    """Whether a word is a pronoun of one kana (み, か), less common than any noun so written."""
    return pos.startswith("代名詞") and len(kana) == 1


def _pillow_word(
    written: str, historical: str, modern: str, gloss: str, number: int, index: ClassIndex
) -> Iterator[DictionaryEntry]:
    """Yield a pillow word (a fixed epithet).

    Towards the word after it, it behaves like its own last particle: ひさかたの connects as の
    does.
    """
    ending = index.number("助詞-格助詞", "*", "*", "の") if modern.endswith("の") else None
    right = ending or index.number("連体詞", "*", "*") or number
    kana = spoken_kana(historical, modern)
    for spelling, cost in _spellings(written, historical, modern):
        entry = DictionaryEntry(
            spelling, number, cost, kana, "連語-枕詞", "*", "*", written, "和", gloss
        )
        yield entry._replace(right_connection=right)


Part = tuple[str, str, str]  # written, historical kana, spoken kana


def _phrase_parts(
    written: str, historical: str, modern: str, readings: dict[str, list[str]]
) -> tuple[Part, Part, Part] | None:
    """Return the words of a phrase like 花の色, where each is read as it is alone."""
    match = TWO_NOUNS.fullmatch(written)
    if match is None or len(historical) != len(modern):
        return None
    first, second = match.groups()
    for at, sign in enumerate(modern):
        before, after = modern[:at], modern[at + 1 :]
        known = before in readings.get(first, ()) and after in readings.get(second, ())
        if sign == "の" and known:
            particle = ("の", "の", "の")
            return (first, historical[:at], before), particle, (second, historical[at + 1 :], after)
    return None


def _set_phrase(
    parts: tuple[Part, Part, Part], number: int, cost: int, gloss: str
) -> Iterator[DictionaryEntry]:
    kana = " ".join(spoken for _, _, spoken in parts)
    lemma = "".join(written for written, _, _ in parts)
    in_kana = max(cost, _KANA_COST_LONG)
    noun, particle = "名詞-普通名詞-一般", "助詞-格助詞"
    for which, spelling_cost in ((0, cost), (1, in_kana)):
        pieces = [
            Words(part[which], part[2], particle if part[0] == "の" else noun) for part in parts
        ]
        written = "".join(piece.written for piece in pieces)
        whole = DictionaryEntry(
            written, number, spelling_cost, kana, noun, "*", "*", lemma, "和", gloss
        )
        yield whole._replace(parts=as_cell(pieces))


def short_form_entries(index: ClassIndex) -> Iterator[DictionaryEntry]:
    """Yield phrases as manuscripts write them, 梅花 for 梅の花."""
    number = index.number("名詞-普通名詞-一般", "*", "*")
    assert number is not None
    for row in tables.rows("verse_short_forms"):
        written, words = row["written"], row["historical"].split(" ")
        kana = " ".join(
            word if word in ("の", "が") else modern_kana(word, "名詞") for word in words
        )
        left_out = words[1] if words[1:2] in (["の"], ["が"]) else "okurigana"
        pos, note = "名詞-普通名詞-一般", f"{left_out} not written"
        cost = _WORD_COST + _PARTICLE_LEFT_OUT
        yield DictionaryEntry(
            written, number, cost, kana, pos, "*", "*", written, "和", row["gloss"], note
        )


def spoken_kana(historical: str, modern: str) -> str:
    """Return a word's kana with ``|`` before each part that begins with a bare vowel.

    Inside a part the old spelling had no bare vowel, unless sounds were contracted (いもうと); を
    hardly ever followed の, よ or も.

    >>> spoken_kana("たまのを", "たまのお"), spoken_kana("とを", "とお")
    ('たまの|お', 'とお')
    >>> spoken_kana("はなのいろ", "はなのいろ"), spoken_kana("きのふ", "きのう")
    ('はなの|いろ', 'きのう')
    """
    if len(historical) != len(modern):
        return modern
    out = modern[:1]
    for old, new, before in zip(historical[1:], modern[1:], modern, strict=False):
        meets = old in "あいえお" or (old == "う" and before == "の")
        meets = meets or (old == "を" and before in "のよも" and len(modern) > 2)
        meets = meets or (old == "ほ" and before == "も")
        out += "|" * meets + new
    return out


def _spellings(written: str, historical: str, modern: str) -> Iterator[tuple[str, int]]:
    in_kana = _KANA_COST.get(morae(modern), _KANA_COST_LONG)
    given = {written, historical, modern}
    if written not in (historical, modern):
        yield written, _WORD_COST
    yield historical, in_kana
    if modern != historical:
        yield modern, in_kana + _OTHER_SPELLING
    for spelling, cost in old_spellings(modern, wo=True):
        if spelling not in given:
            yield spelling, in_kana + _OTHER_SPELLING + cost
