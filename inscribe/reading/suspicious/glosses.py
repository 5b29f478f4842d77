"""Kana that only say how the kanji before them are read: 嶺暁 れいぎょう, 武州ぶしゅう住.

Such a gloss belongs under the record's reading or an override, for it is not carved.

>>> [(gloss.first, gloss.last) for gloss in glosses(tuple("嶺暁れいぎょう作"))]
[(2, 6)]
>>> list(glosses(tuple("花の色はうつりにけり")))
[]
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.spelling import modern_kana
from inscribe.scripts import hiragana

_LEAST = 2  # kana
_MOST_KANJI = 6
_AFTER_NAMES = "作造彫刻製鐫之"  # verbs, behind which the reading of a name may stand
_MOST_KANA = 12
_RESPELT = frozenset("はひふへほゐゑをくわうむ")
_SMALL = str.maketrans("ぁぃぅぇぉっゃゅょゎ", "あいうえおつやゆよわ")


class Gloss(NamedTuple):
    """The places of the kana, first and last."""

    first: int
    last: int


def glosses(signs: Sequence[str]) -> Iterator[Gloss]:
    """Yield the runs of kana that are a reading of the kanji right before them, and no more."""
    at, before = 0, ""
    for sort, run in groupby(signs, key=_sort):
        written = list(run)
        may_be = sort == "kana" and before and _LEAST <= len(written) <= _MOST_KANA
        if may_be and _is_gloss(before, "".join(written)):
            yield Gloss(at, at + len(written) - 1)
        before = "".join(written)[-_MOST_KANJI:] if sort == "kanji" else ""
        at += len(written)


def _is_gloss(before: str, kana: str) -> bool:
    """Whether kana are a reading of the last kanji before them, or of the name before a verb."""
    if any(_reads(before[start:], kana) for start in range(len(before))):
        return True
    name = before.rstrip(_AFTER_NAMES)
    return name != before and any(_reads(name[start:], kana) for start in range(len(name) - 1))


def _sort(sign: str) -> str:
    if len(sign) == 1 and ("ぁ" <= sign <= "ゖ" or "ァ" <= sign <= "ヺ" or sign == "ー"):
        return "kana"
    return "kanji" if "\u3400" <= sign <= "\u9fff" or sign >= "\U00020000" else "other"


@tables.cached(4096)
def _reads(kanji: str, kana: str) -> bool:
    """Whether kana are a reading of kanji, each read one of its ways; one alone not as in names.

    鳴なる is a verb with an auxiliary, though 鳴 is Naru in names.
    """
    names = len(kanji) > 1
    said = _plain(kana)
    if not _may_read(kanji, said, names):
        return False
    modern = _plain(modern_kana(hiragana(kana)))
    return _can_be(kanji, said, names) or _can_be(kanji, modern, names)


def _may_read(kanji: str, said: str, names: bool) -> bool:
    """Whether a reading of the first kanji begins, and one of the last ends, as the kana do.

    A kana that historical spelling may have there instead of another tells nothing.
    """
    begins = said[0] in _RESPELT or said[0] in _edges(kanji[0], names)[0]
    return begins and (said[-1] in _RESPELT or said[-1] in _edges(kanji[-1], names)[1])


@tables.cached(4096)
def _edges(kanji: str, names: bool) -> tuple[frozenset[str], frozenset[str]]:
    """Return the first and the last kana of the readings of a kanji."""
    known = _readings(kanji, names)
    return frozenset(each[0] for each in known), frozenset(each[-1] for each in known)


def _can_be(kanji: str, said: str, names: bool) -> bool:
    if not kanji:
        return not said
    return any(
        said.startswith(reading) and _can_be(kanji[1:], said[len(reading) :], names)
        for reading in _readings(kanji[0], names)
    )


@tables.cached(4096)
def _readings(kanji: str, names: bool) -> frozenset[str]:
    from inscribe.forms import readings

    known = readings(kanji)
    stems = (each.strip("-").partition(".")[0] for each in known.kun)
    found = {*known.on, *stems, *(known.names if names else ())}
    return frozenset(filter(None, map(_plain, found)))


def _plain(kana: str) -> str:
    """Return kana as hiragana of full size without voicing marks, by which sounds are compared."""
    bare = unicodedata.normalize("NFD", hiragana(kana))
    return "".join(sign for sign in bare if not unicodedata.combining(sign)).translate(_SMALL)
