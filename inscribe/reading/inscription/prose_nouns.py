"""Nouns of prose: mottoes say bushi and katana where poems have mononofu and tachi."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import accumulate

from inscribe import tables
from inscribe.reading.spelling import is_kanji_only
from inscribe.reading.words import ReadWord

_NOUN = "名詞-普通名詞-一般"
_PLACE = "固有名詞-地名"
_AFTER_NOUN = frozenset("はをのもにとがやなよこへまハヲノモニトガヤナヨコヘマ")
_NOTE = "as prose has it"
_SIGNS_AS_A_WHOLE = 3  # of shorter ones the dictionaries know what is usual


def as_in_prose(words: Sequence[ReadWord], plain: str) -> list[ReadWord]:
    """Return the words of a text with its nouns as prose has them.

    Args:
        words: words that tile the text.
        plain: the normalised text.

    >>> from inscribe.reading.verse import words_without_metre
    >>> words = words_without_metre("刀は武士の魂なり", voiced=False)
    >>> [word.kana for word in as_in_prose(words, "刀は武士の魂なり")][:3]
    ['かたな', 'は', 'ぶし']
    """
    return list(_said(words, plain))


def _said(words: Sequence[ReadWord], plain: str) -> Iterator[ReadWord]:
    ends = {0, *accumulate(word.length for word in words)}
    first = position = 0
    for word in words:
        if first < position:  # within a noun that has been read
            first += word.length
            continue
        written, kana = _longest_noun(plain, first, ends)
        position = first + len(written)
        if not written or (written == word.written and kana == word.kana):
            yield word
            position = first + word.length
        else:
            named = _PLACE in word.part_of_speech  # 日本史
            kind = word.part_of_speech if named or not is_kanji_only(written) else _NOUN
            yield ReadWord(written, kana, kind, lemma=written, note=_NOTE)
        first += word.length


def _longest_noun(plain: str, first: int, ends: Collection[int]) -> tuple[str, str]:
    """Return the longest noun of the table at a place that whole words make, and its kana."""
    for end in range(min(len(plain), first + _longest()), first, -1):
        kana = _kana(plain[first:end], plain)
        if kana and end in ends and _stands_alone(plain, first, end):
            return plain[first:end], kana
    return "", ""


def _kana(written: str, plain: str) -> str:
    """Return how a noun is read in a text: 夕 yūbe beside 朝, else yū."""
    kana, opposite = _beside().get(written, ("", ""))
    if kana and opposite in plain:
        return kana
    return _nouns().get(written, "") or noun_read_as_a_whole(written)


def noun_read_as_a_whole(written: str) -> str:
    """Return the reading of a noun of three signs that the readings of its signs do not give.

    >>> noun_read_as_a_whole("日本史"), noun_read_as_a_whole("世界史")
    ('にほんし', '')
    """
    if len(written) != _SIGNS_AS_A_WHOLE:
        return ""
    row = _as_a_whole().first_about(written)
    return row["kana"] if row else ""


@tables.cached()
def _as_a_whole() -> tables.Sorted:
    return tables.Sorted("jukujikun")


@tables.cached()
def _longest() -> int:
    return max(map(len, _nouns()))


def _stands_alone(plain: str, first: int, end: int) -> bool:
    """Whether a particle, or the end of the text, follows, and no kanji stands before."""
    after = plain[end : end + 1] if is_kanji_only(plain[end - 1]) else ""
    before = plain[first - 1 : first] if first else ""
    return (not after or after in _AFTER_NOUN) and not (before and is_kanji_only(before))


@tables.cached()
def _nouns() -> dict[str, str]:
    """Return how nouns are read in prose; those set down by hand before the dictionary's."""
    by_hand = (row for row in tables.rows("prose_nouns") if not row["beside"])
    return {row["written"]: row["kana"] for row in (*tables.rows("prose_usual"), *by_hand)}


@tables.cached()
def _beside() -> dict[str, tuple[str, str]]:
    """Return the nouns that are read in a way of their own where another is in the text."""
    rows = (row for row in tables.rows("prose_nouns") if row["beside"])
    return {row["written"]: (row["kana"], row["beside"]) for row in rows}
