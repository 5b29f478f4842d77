r"""One sign written as several code points: combining marks, variation selectors, half marks.

>>> [len(sign) for sign in signs_of("か\u3099葛\U000e0100〳〵")]
[2, 2, 2]
>>> [step.after for step in joined("か\u3099")]
['が']
"""

from __future__ import annotations

import re
import unicodedata

from inscribe.forms.steps import (
    REPEAT_MARK,
    UNICODE,
    VARIATION,
    VOICING_MARK,
    Step,
    steps,
)

_SELECTORS = "\ufe00-\ufe0f\U000e0100-\U000e01ef"
_MARKS = "\u0300-\u036f\u3099\u309a" + _SELECTORS
_SIGN = re.compile(rf"[〳〴]〵|／[″゛]?＼|[ｦ-ﾝ][ﾞﾟ]|[ぁ-ヿ][゛゜]|.[{_MARKS}]*|[{_MARKS}]", re.DOTALL)
_SELECTOR = re.compile(f"[{_SELECTORS}]")
_HALVES = {"〳〵": "〱", "〴〵": "〲", "／＼": "〱", "／″＼": "〲", "／゛＼": "〲"}
_SPACING = {"゛": "\u3099", "゜": "\u309a", "ﾞ": "\u3099", "ﾟ": "\u309a"}

_JOINING_RANGES = ((0x300, 0x36F), (0x3099, 0x309C), (0xFE00, 0xFE0F), (0xE0100, 0xE01EF))

JOINING = frozenset("ﾞﾟ〵＼").union(
    *(map(chr, range(first, last + 1)) for first, last in _JOINING_RANGES)
)


def signs_of(text: str) -> list[str]:
    """Return a plain text as signs, each with the marks that belong to it."""
    return _SIGN.findall(text)


def joined(sign: str) -> list[Step]:
    """Return the steps that bring one sign of several code points to one, if it has one."""
    if sign in _HALVES:
        return [Step(sign, _HALVES[sign], REPEAT_MARK, "repeat_marks", "written as two halves")]
    found: list[Step] = []
    if _SELECTOR.search(sign):
        bare = _SELECTOR.sub("", sign)
        found.append(Step(sign, bare, VARIATION, UNICODE, "the shape chosen is not kept"))
        sign = bare
    if len(sign) == 2 and sign[1] in "\u3099\u309a゛゜ﾞﾟ":
        found += _voiced(sign)
    elif (composed := unicodedata.normalize("NFC", sign)) != sign:
        found.append(Step(sign, composed, "composed form", UNICODE))
    return found


def _voiced(sign: str) -> list[Step]:
    step = steps().get(sign[0])
    base = step.after if step else sign[0]
    composed = unicodedata.normalize("NFC", base + _SPACING.get(sign[1], sign[1]))
    if step and len(step.after) == 1:
        return [Step(sign, composed, step.kind, step.table, step.note, step.doubtful)]
    if len(composed) == 1:
        return [Step(sign, composed, VOICING_MARK, UNICODE)]
    return []
