"""How well a stretch is said in classical Japanese: what verse and prose have in common.

MeCab's cost of the best path (set phrases whole, not taken apart) is a likelihood of words; names
and formulas cost it far more a sign than sentences do.
"""

from __future__ import annotations

from inscribe import tables
from inscribe.reading.mecab import unidic_words
from inscribe.reading.spelling import hiragana
from inscribe.reading.verse import path_cost, verse_words
from inscribe.reading.words import MARK

_EVEN_COST = 6000.0  # of a sign, at which a text is as likely Japanese as not
_UNIT = 1500.0  # of MeCab's cost; tempered, for what it measures is not independent by sign
_VOICED = frozenset("がぎぐげござじずぜぞだぢづでどばびぶべぼ")
_MOST = 3000  # stretches whose weights are kept


@tables.cached()
def _known() -> dict[str, float]:
    return {}


def weight_as_language(text: str) -> float:
    """Return the log odds that a normalised text is classical Japanese.

    >>> weight_as_language("言葉を慎み行を正しくすへし") > 5 > weight_as_language("鷺坂苗道刻之")
    True
    """
    known = _known()
    if text not in known:
        if len(known) > _MOST:
            known.clear()
        known[text] = sum(_of_legible(part) for part in MARK.split(text) if part)
    return known[text]


def _of_legible(text: str) -> float:
    kana = hiragana(text)
    words = verse_words(kana, voiced=not _VOICED.isdisjoint(kana))
    cost = path_cost([word for word in words if "□" not in word.written])
    read = sum(word.length for word in words if "□" not in word.written)
    return (_EVEN_COST * read - cost) / _UNIT


def is_common_noun(plain: str) -> bool:
    """Whether kanji are one word of the dictionary, and no name.

    >>> is_common_noun("創業"), is_common_noun("嘉永"), is_common_noun("鷺坂")
    (True, False, False)
    """
    words = unidic_words(plain)
    return len(words) == 1 and words[0].known and "固有名詞" not in words[0].part_of_speech
