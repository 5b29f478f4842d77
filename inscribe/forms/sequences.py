r"""One sign written as several code points: combining marks, variation selectors, half marks.

>>> [len(sign) for sign in signs_of("か\u3099葛\U000e0100〳〵／＼")]
[2, 2, 2, 2]
>>> [step.after for step in joined("か\u3099", {})]
['が']
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping

from inscribe.forms.steps import (
    COMPOSED,
    JOINING,
    REPEAT_MARK,
    UNICODE,
    VARIATION,
    VOICING_MARK,
    FormStep,
)
from inscribe.notation import is_selector, segments

VOICED = "\u3099"
_COMBINING = {"\uff9e": VOICED, "\uff9f": "\u309a", "゛": VOICED, "゜": "\u309a"}
# What makes one sign with the characters beside it, as it stands in normal text.
PARTS_OF_SIGNS = frozenset("\u3099\u309a\u31ef").union(map(chr, range(0x2FF0, 0x3000)))

_VOICING = "\u3099\u309a\uff9e\uff9f゛゜"
_VOICED_MARKS = {"〱": "〲", "〳〵": "〴〵", "／＼": "／″＼"}


def signs_of(text: str) -> list[str]:
    """Return a plain text as signs, each with the marks that belong to it; nothing is lost."""
    return list(segments(text))


def joined(sign: str, known: Mapping[str, FormStep]) -> list[FormStep]:
    """Return the steps that bring one sign of several code points to one, where that can be.

    ``known`` are the steps of single signs.

    A repeat mark in pieces is left whole: what it repeats hangs on its neighbours. The steps of a
    description sequence (⿰木黑) are none.
    """
    if sign in known or "\u2ff0" <= sign[0] <= "\u2fff":
        return []
    found: list[FormStep] = []
    bare = "".join(char for char in sign if not is_selector(char))
    if bare and bare != sign:
        found.append(FormStep(sign, bare, VARIATION, UNICODE, "the shape chosen is not kept"))
        sign = bare
    if sign[-1] in _VOICING and (tall := _VOICED_MARKS.get(sign[:-1])):
        found.append(FormStep(sign, tall, VOICING_MARK, UNICODE))
        sign = tall
    return found + _composed(sign, known) if len(sign) > 1 and sign not in known else found


def voiced(kana: str, mark: str = VOICED) -> str:
    """Return a kana with a voicing mark of any kind, as one character where there is one."""
    return unicodedata.normalize("NFC", kana + _COMBINING.get(mark, mark))


def _composed(sign: str, known: Mapping[str, FormStep]) -> list[FormStep]:
    step = known.get(sign[0])
    if step and step.kind not in (REPEAT_MARK, JOINING, VOICING_MARK):
        after = _with_marks(step.after, sign[1:])
        return [FormStep(sign, after, step.kind, step.table, step.note, step.doubtful)]
    after = _with_marks(sign[0], sign[1:])
    if after == sign:
        return []
    return [FormStep(sign, after, VOICING_MARK if sign[1] in _VOICING else COMPOSED, UNICODE)]


def _with_marks(base: str, marks: str) -> str:
    """Return a base with its marks composed; spacing marks that do not join stay as they are."""
    made = base
    for mark in marks:
        joined_to_last = voiced(made[-1:], mark) if mark in _COMBINING else ""
        made = made[:-1] + joined_to_last if len(joined_to_last) == 1 else made + mark
    return unicodedata.normalize("NFC", made)
