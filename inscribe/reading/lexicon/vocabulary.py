"""The words of classical verse, drawn from the installed UniDic and from the glossary.

UniDic knows modern Japanese; verse before 1900 has its own words and its own grammar. So the
native words of UniDic are kept with their costs, its verbs and adjectives are conjugated again
in the classical way, words of Chinese origin are made less likely, words that verse never has
(modern particles, loan words, personal names) are left out, and the glossary is added.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from sys import intern

from inscribe import tables
from inscribe.reading import mecab
from inscribe.reading.lexicon.borrowed import borrowed_ending, in_chinese_order
from inscribe.reading.lexicon.mixed_spellings import cut_short
from inscribe.reading.lexicon.paradigms import AT_START, classical, inflections
from inscribe.reading.lexicon.shortened import (
    SHORTENED,
    bare_compounds,
    left_out,
    shortened,
)
from inscribe.reading.lexicon.stems import KANA, ONLY_KANA, OTHER_READING, ClassIndex, Stem
from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.spelling import hiragana, old_spellings

_LEFT_OUT_FORMS = re.compile("意志推量形|融合|撥音便|促音便|ザンス|ザマス|ンス")
_MODERN = re.compile("五段|下一段|上一段|サ行変格|カ行変格|形容詞|無変化型|助動詞")
_NOT_IN_VERSE = re.compile("[ッーパピプペポァィゥェォ]")
_MAY_RUN_TOGETHER = re.compile(
    "[おこそとのほもよろごぞどぼ][うお]|[うくすつぬふむゆるぐずぶ]う|[あかさたなはまやらわがざだば]あ"
)
_KANA_RUN = re.compile("[\u3041-\u3096]+")
_MAY_BE_RESPELT = re.compile("[わいうえおじずゃゅょ]")
_MOST_SPELLINGS = 6
_SECOND_PART_ONLY = 4000
_VOICED_AT_START = 5000  # no native word began so in the language of verse
_VOICED = "ガギグゲゴザジズゼゾダヂヅデドバビブベボ"
_NUMERAL = 2500
_ONLY_IN_KANA = 2000  # an uninflected word in kana that the glossary's tables do not have
_RESPELT_NOUN = 2000  # a noun of UniDic's in a spelling UniDic does not give costs more still
_COME = "来"  # which is written the same in every form
_DEVERBAL = 4500
OTHER_SPELLING = 900  # a spelling UniDic does not give costs this much more
_ORIGIN_COST = {"和": 0, "混": 1500, "漢": 7000, "固": 1500}
# UniDic's cost above which a word is too rare to be met in verse.
_TOO_RARE = {"和": 15000, "混": 11000, "漢": 7000, "固": 14000}
_TOO_RARE_TO_RESPELL = 11500
_POS_COST = {"感動詞": 2500, "接尾辞": 1500, "接頭辞": 1000, "接続詞": 1500, "連体詞": 500}


def wanted_class(row: tuple[str, ...]) -> bool:
    """Whether words of this class of UniDic are used, as they are or conjugated anew."""
    pos, _, third, _, conjugation, form, *_, origin = row
    if pos in ("記号", "補助記号", "空白", "助詞", "助動詞") or origin not in _ORIGIN_COST:
        return False
    if origin == "固":
        return third == "地名"
    if conjugation.startswith("文語"):
        return not _LEFT_OUT_FORMS.search(f"{form} {conjugation}")
    if pos in ("動詞", "形容詞"):
        return form == "連用形-一般" and origin != "漢"
    return not _MODERN.match(conjugation)


def unidic_entries(
    words: Iterable[mecab.UnidicEntry], index: ClassIndex
) -> Iterator[DictionaryEntry]:
    """Yield entries of verse from UniDic's words."""
    for word in words:
        fields = word.fields
        pos = fields[0]
        conjugation = fields[4]
        if word.cost > _TOO_RARE[fields[12]]:
            continue
        if fields[12] != "漢" and _NOT_IN_VERSE.search(fields[19]):
            continue
        if pos in ("動詞", "形容詞") and not conjugation.startswith("文語"):
            yield from _conjugated(word, index)
            continue
        if "促音形" in (fields[14], fields[16]) or (pos == "感動詞" and word.surface in "んむ"):
            continue
        if conjugation.startswith("文語サ行変格") and fields[12] != "和":
            continue  # 住す, 賞す: words of prose
        extra = _ORIGIN_COST[fields[12]] + _POS_COST.get(pos, 0) + _unlikeliness(word)
        extra += _as_verb(word, index) if pos == "名詞" else 0
        place = index.number("名詞-普通名詞-一般", "*", "*") if fields[12] == "固" else None
        entry = DictionaryEntry(
            word.surface,
            word.connection if place is None else place,
            word.cost + extra,
            _with_boundaries(hiragana(fields[19]), hiragana(fields[9])),
            intern("-".join(part for part in fields[:4] if part != "*")),
            intern(conjugation),
            intern(fields[5]),
            fields[7],
            intern(fields[12]),
        )
        yield entry
        if entry.written == _COME:
            yield from in_chinese_order(entry, _COME, index)
        if pos == "名詞" and fields[12] == "和" and index.is_verbal_noun(entry.written, entry.kana):
            yield left_out(entry._replace(written=entry.written[:-1]))  # 濁 for 濁り
        if pos == "名詞" and fields[12] in ("和", "混"):
            yield from bare_compounds(entry)
        if fields[12] != "漢" and _MAY_BE_RESPELT.search(entry.written):
            classical_form = conjugation.startswith("文語")
            more = 0 if classical_form else _RESPELT_NOUN
            for other in respelt(entry, 1 if classical_form else 0):
                yield other._replace(cost=other.cost + more)


def _as_verb(word: mecab.UnidicEntry, index: ClassIndex) -> int:
    """Return what a noun costs more because verse takes what is written for a verb."""
    kana, more = hiragana(word.fields[19]), 0
    if index.is_misread_stem(word.surface, kana):
        more += OTHER_READING  # 摘み is tsumi
    if index.is_stem(word.surface):
        more += OTHER_READING  # 花咲 is hana saku
    elif index.ends_in_a_verb(word.surface, kana):
        more += _DEVERBAL  # 月待 is tsuki matsu, and seldom a noun
    return more


def _with_boundaries(kana: str, said: str) -> str:
    """Return the kana of a word with ``|`` where two vowels meet that are not one long vowel.

    >>> _with_boundaries("としのうち", "としのうち"), _with_boundaries("おうみ", "おーみ")
    ('としの|うち', 'おうみ')
    """
    if len(kana) != len(said) or not _MAY_RUN_TOGETHER.search(kana):
        return kana
    out = kana[:1]
    for before, sign, sound in zip(kana, kana[1:], said[1:], strict=False):
        meets = sign == sound and _MAY_RUN_TOGETHER.fullmatch(before + sign)
        out += "|" * bool(meets) + sign
    return out


def _unlikeliness(word: mecab.UnidicEntry) -> int:
    """Return what a word costs more because verse seldom has it where it stands alone."""
    more = 0
    if word.fields[14] == "濁音形":  # びと, ごころ: only the second part of a compound
        more += _SECOND_PART_ONLY
    elif word.fields[12] == "和" and word.fields[19][:1] in _VOICED:
        more += _VOICED_AT_START
    if word.fields[1] == "数詞":
        more += _NUMERAL
    if ONLY_KANA.match(word.surface) and not word.conjugation.startswith("文語"):
        more += _ONLY_IN_KANA
    return more


def _conjugated(word: mecab.UnidicEntry, index: ClassIndex) -> Iterator[DictionaryEntry]:
    fields = word.fields
    base, base_kana = fields[10], hiragana(fields[20])
    if fields[0] == "形容詞":
        yield from _adjective(word, base, base_kana, index)
        return
    if fields[6][-1:] != fields[20][-1:] or fields[6][-2:-1] not in fields[20][-2:]:
        return  # the potential of another verb (書ける beside 書く), unknown to classical grammar
    possible = classical(fields[4], fields[20])
    for conjugation in possible:
        cut = 1 if fields[4].startswith("五段") else 2
        if base[-1:] != base_kana[-1:]:
            continue
        swallowed = base[-cut:] != base_kana[-cut:]  # 寝る: the kanji holds the ending's first kana
        written = base[: len(base) - (1 if swallowed else cut)]
        kana = base_kana[: len(base_kana) - cut]
        stem = Stem(written, kana, conjugation, word.cost, fields[1], fields[7], fields[12])
        tables_say = index.conjugations.get((written, kana), set())
        told = tables_say.intersection(possible)
        if (told and conjugation not in told) or "ラ行変格" in tables_say:
            continue  # 越える was 越ゆ, the tables say, not 越ふ; 有る never ある alone
        if swallowed and index.has_other_readings(written, kana):
            continue
        stem = index.weighed(stem)
        if swallowed:
            for entry in conjugate(stem._replace(written=""), index):
                yield entry._replace(written=written + entry.written[1:])
        else:
            yield from _with_spellings(stem, index)


def _with_spellings(stem: Stem, index: ClassIndex) -> Iterator[DictionaryEntry]:
    """Yield the forms of a verb, its stem also in the other spellings its kana may have."""
    yield from conjugate(stem, index)
    if stem.cost < _TOO_RARE_TO_RESPELL and _MAY_BE_RESPELT.search(stem.written):
        whole = DictionaryEntry(stem.written, 0, stem.cost, stem.kana, "", "", "", "", "")
        for other in respelt(whole, 0):
            for entry in conjugate(stem._replace(written=other.written, cost=other.cost), index):
                yield entry._replace(note=other.note)
    short = cut_short(stem.written, stem.kana) if stem.cost < _TOO_RARE_TO_RESPELL else None
    if short and index.has_one_reading(stem.written[0], short[1]):  # 起 may be お or た
        cut = stem._replace(written=short[0], cost=stem.cost + OTHER_SPELLING)
        yield from conjugate(cut, index)  # 飛こむ


def _adjective(
    word: mecab.UnidicEntry, base: str, base_kana: str, index: ClassIndex
) -> Iterator[DictionaryEntry]:
    if not base.endswith("い"):
        return
    fields = word.fields
    stem, kana = base[:-1], base_kana[:-1]
    conjugation = "文語形容詞-ク"
    if kana.endswith("し") and len(kana) > 1:
        if not stem.endswith("し"):
            return
        conjugation, stem, kana = "文語形容詞-シク", stem[:-1], kana[:-1]
    found = Stem(stem, kana, conjugation, word.cost, fields[1], fields[7], fields[12])
    yield from _with_spellings(index.weighed(found), index)


def conjugate(stem: Stem, index: ClassIndex) -> Iterator[DictionaryEntry]:
    """Yield every form of a verb or adjective, and those whose okurigana were left out."""
    pos = stem.pos or f"{'形容詞' if '形容詞' in stem.conjugation else '動詞'}-{stem.kind}"
    conjugation = stem.conjugation.removeprefix("文語")
    full = f"文語{conjugation}"
    in_kanji = bool(stem.written) and not KANA.search(stem.written)
    told = index.conjugations.get((stem.written, stem.kana), {conjugation})
    cut = in_kanji and conjugation in told and "サ行変格" not in full  # 思き is no oboshiki
    for form, written, modern, more in inflections(stem.conjugation):
        number, said_pos = index.class_of(pos, full, form)
        if number is None or not stem.written + written:
            continue
        cost = stem.cost + more + _ORIGIN_COST.get(stem.origin, 0)
        begins = stem.ending_begins or not stem.kana
        kana = stem.kana + (written.translate(AT_START) if begins else modern)
        if modern.startswith("う") and not begins:  # 生ふる ouru, 数ふれ kazoure
            kana = f"{stem.kana}|{modern}"
        entry = DictionaryEntry(
            stem.written + written,
            number,
            cost,
            kana,
            said_pos,
            full,
            form,
            stem.lemma,
            stem.origin,
            stem.gloss,
        )
        yield entry
        short = cut and (form in SHORTENED or written[:1] == "し" != written)
        if short and written:
            yield from shortened(entry, stem.written, written, index.nouns)
        if cut and written:
            yield from borrowed_ending(entry, stem.written, written)
        if cut:
            yield from in_chinese_order(entry, stem.written, index)


def respelt(entry: DictionaryEntry, ending: int) -> Iterator[DictionaryEntry]:
    """Yield the entry in the other spellings of its kana, but for the last ``ending`` kana."""
    body = entry.written[: len(entry.written) - ending]
    rest = entry.written[len(body) :]
    for match in _KANA_RUN.finditer(body):
        inside = match.start() > 0
        for spelling, cost in _old(match[0], inside):
            written = f"{body[: match.start()]}{spelling}{body[match.end() :]}{rest}"
            yield entry._replace(
                written=written, cost=entry.cost + OTHER_SPELLING + cost, note="historical spelling"
            )


@tables.cached()
def _old(run: str, inside: bool) -> tuple[tuple[str, int], ...]:
    return old_spellings(run, inside=inside, wo=not inside)[:_MOST_SPELLINGS]
