r"""One sign written as several code points: combining marks, variation selectors, half marks.

>>> [len(sign) for sign in signs_of("か\u3099葛\U000e0100〳〵／＼")]
[2, 2, 2, 2]
>>> [step.after for step in joined("か\u3099")]
['が']
"""

from __future__ import annotations

import unicodedata

from inscribe.forms.steps import (
    COMPOSED,
    REPEAT_MARK,
    UNICODE,
    VARIATION,
    VOICING_MARK,
    Step,
    steps,
)
from inscribe.notation.segments import segments

VOICED = "\u3099"
_COMBINING = {"\uff9e": VOICED, "\uff9f": "\u309a", "゛": VOICED, "゜": "\u309a"}
_LAST_PIECES = "＼"  # of a mark that segments() takes for several signs


def signs_of(text: str) -> list[str]:
    """Return a plain text as signs, each with the marks that belong to it; nothing is lost."""
    found: list[str] = []
    for sign in segments(text):
        while sign[-1] in _LAST_PIECES and found and _is_piece(found[-1] + sign):
            sign = found.pop() + sign
        found.append(sign)
    return found


def _is_piece(text: str) -> bool:
    return any(mark.endswith(text) for mark in steps() if len(mark) > 1)


def joined(sign: str) -> list[Step]:
    """Return the steps that bring one sign of several code points to one, where that can be.

    A repeat mark in pieces is left whole: what it repeats hangs on its neighbours. The steps of a
    description sequence (⿰木黑) are none.
    """
    if sign in steps() or "\u2ff0" <= sign[0] <= "\u2fff":
        return []
    found: list[Step] = []
    bare = "".join(char for char in sign if not is_selector(char))
    if bare and bare != sign:
        found.append(Step(sign, bare, VARIATION, UNICODE, "the shape chosen is not kept"))
        sign = bare
    return found + _composed(sign) if len(sign) > 1 else found


def is_selector(char: str) -> bool:
    """Whether the character chooses a shape of the one before it."""
    return "\ufe00" <= char <= "\ufe0f" or "\U000e0100" <= char <= "\U000e01ef"


def voiced(kana: str, mark: str) -> str:
    """Return kana with a voicing mark of any kind, as one character where there is one."""
    return unicodedata.normalize("NFC", kana + _COMBINING.get(mark, mark))


def _composed(sign: str) -> list[Step]:
    base = steps().get(sign[0])
    if base and base.kind not in (REPEAT_MARK, VOICING_MARK) and base.after != base.before:
        after = unicodedata.normalize("NFC", base.after + _combining(sign[1:]))
        return [Step(sign, after, base.kind, base.table, base.note, base.doubtful)]
    after = unicodedata.normalize("NFC", sign[0] + _combining(sign[1:]))
    if after == sign:
        return []
    kind = VOICING_MARK if sign[1] in "\u3099\u309a\uff9e\uff9f" else COMPOSED
    return [Step(sign, after, kind, UNICODE)]


def _combining(marks: str) -> str:
    return "".join(_COMBINING.get(mark, mark) for mark in marks)
