"""Nouns in kanji alone that are no native words: 孔雀, 屏風, 元禄, 煙草.

Haiku and later verse have them as everyday words, court verse hardly. UniDic's own are taken with
their costs; where the same kanji have a native reading (夜半 yowa, 白雲 shirakumo) that one stays
the likelier by far, unless ``glossary/verse/verse_readings.tsv`` ranks them; and everywhere cost
and metre decide. ``later_nouns`` adds what UniDic does not have, of any origin: 雪折れ, 太鼓橋.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from inscribe import tables
from inscribe.reading import mecab
from inscribe.reading.lexicon.shortened import bare_compounds
from inscribe.reading.lexicon.stems import ClassIndex
from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.spelling import hiragana
from inscribe.reading.words import LATER

_KANJI = re.compile("[\u3005\u3400-\u9fff]+")
_RAREST = 9900  # of UniDic's costs; most nouns it has seldom seen lie about 7,400
_LEAST_USUAL = 6500  # what newspapers have every day is no likelier in verse than other nouns
_BESIDE_NATIVE = 4500  # 夜半 yahan costs this much more
_SINGLE = 3000  # so does a single kanji: 縁 en
_MORE = {"漢": 1500, "外": 1500, "固": 3000}
_LATER = {"noun": "名詞-普通名詞-一般", "place": "名詞-固有名詞-地名-一般"}
_LATER_COST = 9000  # by trial on verse and haiku alike
_SOUND_CHANGED = ("濁音形", "促音形")  # 太鼓 daiko: only the second part of a compound


def compound_entries(
    source: Path, index: ClassIndex, native: set[str], settled: dict[tuple[str, str], int]
) -> Iterator[DictionaryEntry]:
    """Yield the compounds of UniDic; ``native`` are the writings of native words.

    ``settled`` are the costs of the readings the tables give.
    """
    common = index.number("名詞-普通名詞-一般", "*", "*")
    assert common is not None
    for word in mecab.words(source, index.classes.numbers(_may_be_compound)):
        fields = word.fields
        changed = fields[14] in _SOUND_CHANGED or fields[16] == "促音形"
        if changed or word.cost > _RAREST or not _KANJI.fullmatch(word.surface):
            continue
        kana = hiragana(fields[19])
        cost = max(word.cost, _LEAST_USUAL) + _MORE[fields[12]]
        cost += _BESIDE_NATIVE * (word.surface in native) + _SINGLE * (len(word.surface) == 1)
        yield DictionaryEntry(
            word.surface,
            word.connection if fields[12] != "固" else common,
            settled.get((word.surface, kana), cost),
            kana,
            "-".join(part for part in fields[:4] if part != "*"),
            "*",
            "*",
            fields[7],
            fields[12],
        )


def later_entries(index: ClassIndex) -> Iterator[DictionaryEntry]:
    """Yield the nouns of later verse that UniDic does not have, with and without okurigana."""
    common = index.number("名詞-普通名詞-一般", "*", "*")
    assert common is not None
    for row in tables.rows("later_nouns"):
        pos, written = _LATER[row["kind"]], row["written"]
        entry = DictionaryEntry(
            written, common, _LATER_COST, row["kana"], pos, "*", "*", written, LATER
        )
        yield entry
        yield from bare_compounds(entry)


def _may_be_compound(row: tuple[str, ...]) -> bool:
    """Whether a class holds common nouns from abroad, or names that are no family's or place's."""
    pos, kind, further, last, *_, origin = row
    if (pos, origin) == ("名詞", "固"):
        return kind == "固有名詞" and (further == "一般" or (further, last) == ("人名", "一般"))
    return (pos, kind) == ("名詞", "普通名詞") and origin in ("漢", "外")
