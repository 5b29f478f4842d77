"""Whether a text marks voicing, and the words of the best path either way."""

from __future__ import annotations

import re

from inscribe.reading.verse import tagger
from inscribe.reading.words import OKURIGANA_LEFT_OUT, VOICING_NOT_MARKED, ReadWord

BETTER_UNVOICED = 1200  # from here on, a text without a voiced kana leaves them unmarked
_VOICED = frozenset("がぎぐげござじずぜぞだぢづでどばびぶべぼ")
_KANA = re.compile("[\u3041-\u3096]")
_TOO_FEW_KANA = 5
_BETTER_OF_FEW_KANA = 2400
_OF_UNVOICED = (VOICING_NOT_MARKED, OKURIGANA_LEFT_OUT)  # words only such texts are read with
_MORE_WHERE_CUT_SHORT = 300  # a word without its okurigana costs less in such a text
_SURELY_UNVOICED = 3  # so many words whose voicing is not marked are no chance


def has_voiced_kana(text: str) -> bool:
    """Whether a text has a kana with a voicing mark, and so marks voicing."""
    return not _VOICED.isdisjoint(text)


def marks_voicing(text: str) -> bool:
    """Whether a text marks voicing at all.

    One without a single voiced kana does not if its words make much better sense with some.

    >>> marks_voicing("はなのいろはうつりにけりないたつらに"), marks_voicing("ひとしれず")
    (False, True)
    """
    return best_words(text)[1]


def best_words(text: str) -> tuple[list[ReadWord], bool]:
    """Return the words of MeCab's best path, and whether the text marks voicing."""
    if not _VOICED.isdisjoint(text):
        return tagger.verse_words(text), True
    few = len(_KANA.findall(text)) < _TOO_FEW_KANA
    unvoiced, unvoiced_cost = tagger.verse_path(text, voiced=False)
    unmarked = sum([word.note in _OF_UNVOICED for word in unvoiced])
    cut_short = sum([word.note == OKURIGANA_LEFT_OUT for word in unvoiced])
    if not unmarked or unmarked - cut_short >= _SURELY_UNVOICED:
        return unvoiced, not unmarked
    words, cost = tagger.verse_path(text, voiced=True)
    least = _BETTER_OF_FEW_KANA if few else BETTER_UNVOICED
    marked = cost - unvoiced_cost <= least + _MORE_WHERE_CUT_SHORT * cut_short
    return (words, True) if marked else (unvoiced, False)
