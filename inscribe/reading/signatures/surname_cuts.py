"""Words that cut a surname apart: 京 in 京本, 元 in 元倉, 上 in 上泉, 住居 in 住|居村.

Where a list has a surname that begins with a word of the formula, the word is the less likely.

>>> from inscribe.reading.words import words_of
>>> kyo = words_of("京")[0]
>>> cutting_cost(kyo, "京本綾国作", 0) > 0, cutting_cost(kyo, "京朧谷作", 0)
(True, 0.0)
"""

from __future__ import annotations

from inscribe.reading.names import known, surnames
from inscribe.reading.words import SignatureWord, words_of

_LIVING, _MAN = "住", "人"
_KINDS = frozenset({"place", "city", "quarter", "place_suffix", "heading", "prefix"}) | {
    "clan",
    "generation",
    "appraised",
    "native",
    "residence",
}
_DIVISIONS = frozenset("市県府郡")  # 大阪市東区: they hardly begin surnames after a place
_USUAL_OPENER = 1.5  # the price of 為, 応 and 於, which cut no surname: 為重代
_CUT = 0.7
_CLOSER_CUT = 3.5
_LIVING_CUT = 2.7  # 住居, 住持 where what follows 住 begins a surname


def cutting_cost(word: SignatureWord, text: str, first: int) -> float:
    """Return what a word costs at an offset of a text because a surname may stand there.

    Or because its first sign belongs with the 之 before it: the 作 of 作造 in 摸師之作造之.
    """
    end = first + len(word.text)
    if word.kind == "verb" and len(word.text) > 1 and text[max(0, first - 1)] == "之":
        return _CLOSER_CUT * any(w.family == "model" for w in words_of(word.text[0]))
    if word.kind == "place_suffix" and word.text in _DIVISIONS:
        return 0.0
    living = len(word.text) == 2 and word.text[0] == _LIVING and word.text[1] != _MAN
    if living and _is_surname(text[first + 1 : end + 1]):
        return _LIVING_CUT
    cut = word.cost > _USUAL_OPENER if word.kind == "opener" else word.kind in _KINDS
    return _CUT if cut and end < len(text) and _is_surname(text[first : end + 1]) else 0.0


def _is_surname(name: str) -> bool:
    """Return whether a list has a surname of two or three signs."""
    return 1 < len(name) < 4 and bool(surnames(name) or known(name).surname)
