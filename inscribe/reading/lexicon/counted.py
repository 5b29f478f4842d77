"""Numbers with a Chinese counter, as haiku have them: 三人 sannin, 一寸 issun, 二三輪 nisanrin.

Where the same signs have a native reading (三人 mitari, 一年 hitotose) that one stays the likelier,
but for people; and in the metre of court verse what is read as Chinese costs more.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from inscribe import tables
from inscribe.reading.lexicon.stems import ClassIndex
from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.words import counted

_NOUN = "名詞-普通名詞-一般"
_DIGITS = "一二三四五六七八九"
_NUMBERS = {sign: at for at, sign in enumerate(_DIGITS + "十", start=1)}
_NUMBERS |= {"百": 100, "千": 1000}
_ALONE = ("いち", "に", "さん", "し", "ご", "ろく", "しち", "はち")
_COST = 8000
_BESIDE_NATIVE = 2500
_PEOPLE = "人"
_NATIVE_ALONE = ("一人", "二人")  # hitori, futari


def counted_entries(index: ClassIndex, native: Collection[str]) -> Iterator[DictionaryEntry]:
    """Yield each number with each counter; ``native`` are the writings of native words."""
    number = index.number(_NOUN, "*", "*")
    assert number is not None
    for row in tables.rows("verse_counters"):
        for sign, value in _NUMBERS.items():
            written, kana = sign + row["written"], counted(value, row["kana"])
            if written in _NATIVE_ALONE:
                continue
            beside = written in native and row["written"] != _PEOPLE
            cost = _COST + _BESIDE_NATIVE * beside
            entry = DictionaryEntry(written, number, cost, kana, _NOUN, "*", "*", written, "漢")
            yield entry._replace(gloss=f"{value} {row['gloss']}")
            if 1 < value < 10:  # two or three
                before = _DIGITS[value - 2]
                about = _ALONE[value - 2] + kana
                gloss = f"{value - 1} or {value} {row['gloss']}"
                yield entry._replace(written=before + written, kana=about, gloss=gloss)
