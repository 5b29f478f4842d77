"""Where one written sign ends and the next begins.

A sign is one base character with the marks that belong to it (combining marks such as a separate
voicing mark, variation selectors), an ideographic description sequence standing for a character
that Unicode lacks (⿰木黑), or the two halves of a tall repeat mark (〳〵, or ／＼ where type lacks
it). The rule follows the grapheme clusters of UAX #29 as far as East Asian text needs them.

>>> segments("葛\U000e0100か゚⿰木黑")
('葛\U000e0100', 'か゚', '⿰木黑')
"""

from __future__ import annotations

import re
import unicodedata

from inscribe import tables

DOT_BELOW = "\u0323"  # Leiden's mark of a damaged sign: a note on the sign, not part of it
SPACING_VOICING = "゛゜"
_HALF_WIDTH_VOICING = "\uff9e\uff9f"
_REPEAT_HALVES = ("〳〵", "〴〵", "／＼", "／″＼", "／゛＼")
_SELECTORS = "[\ufe00-\ufe0f\U000e0100-\U000e01ef]*"  # they choose a shape and part no halves
_HALVES = re.compile("|".join(map(_SELECTORS.join, _REPEAT_HALVES)))
# Kana, their half-width, circled and squared forms (ｶ, ㋕, ㌔), hentaigana.
_KANA = (("ぁ", "ヿ"), ("ｦ", "ﾟ"), ("㋐", "㍗"), ("\U0001b000", "\U0001b16f"))
_THREE_PARTS = "⿲⿳"
_ONE_PART = "\u2ffe\u2fff"
MAX_DESCRIPTION = 32  # characters in one description sequence; Unicode once allowed 16
_RECURRING = 4096  # signs of which is kept whether they are one
MAX_MARKS = 8  # combining marks and variation selectors of one sign; a kana has one or two


def is_mark(char: str) -> bool:
    """Whether ``char`` belongs to the sign before it.

    >>> is_mark("゙"), is_mark("花")
    (True, False)
    """
    if char < "\u0300" or char == DOT_BELOW:
        return False
    return unicodedata.category(char)[0] == "M" or char in _HALF_WIDTH_VOICING


def is_description(char: str) -> bool:
    """Whether the character begins the description of a character in parts (⿰木黑)."""
    return "\u2ff0" <= char <= "\u2fff" or char == "\u31ef"


def is_selector(char: str) -> bool:
    """Whether the character chooses a shape of the one before it."""
    return "\ufe00" <= char <= "\ufe0f" or "\U000e0100" <= char <= "\U000e01ef"


def continues(text: str, offset: int) -> bool:
    """Whether the character at ``offset`` belongs to the sign before it.

    Besides combining marks, a spacing voicing mark does after a kana: か゛ is one carved sign.
    """
    char = text[offset]
    if char in SPACING_VOICING:
        before = offset - 1
        while before and is_mark(text[before]):
            before -= 1
        base = text[before]
        return not is_mark(base) and any(first <= base <= last for first, last in _KANA)
    return is_mark(char)


def end_of_sign(text: str, start: int) -> int:
    """Return the offset at which the sign that begins at ``start`` ends.

    A description sequence that breaks off ends where it breaks off; see :func:`is_one_sign`.
    """
    if is_description(text[start]):
        return _end_of_description(text, start)[0]
    if halves := _HALVES.match(text, start):
        return _end_of_marks(text, halves.end())
    return _end_of_character(text, start)


def segments(text: str) -> tuple[str, ...]:
    """Return ``text`` cut into signs; nothing is lost or changed."""
    found = []
    start = 0
    while start < len(text):
        end = end_of_sign(text, start)
        found.append(text[start:end])
        start = end
    return tuple(found)


@tables.cached(_RECURRING)
def is_one_sign(text: str) -> bool:
    """Whether ``text`` can stand as the text of one carved sign.

    >>> is_one_sign("花"), is_one_sign("花の"), is_one_sign("⿰木"), is_one_sign(" ")
    (True, False, False, False)
    """
    if not text or is_mark(text[0]) or DOT_BELOW in text:
        return False
    if excess(text) or end_of_sign(text, 0) != len(text) or any(map(refusal, text)):
        return False
    if is_description(text[0]):
        return _end_of_description(text, 0)[1] == 0
    return not text[0].isspace()


def excess(text: str) -> str:
    """Return why a sign is longer than any sign is, or an empty string.

    >>> excess("か" + 9 * "\u0301"), excess("か\u3099")
    ('a sign carries 9 marks', '')
    """
    if text and is_description(text[0]):
        too_long = len(text) > MAX_DESCRIPTION
        return f"the description of a sign has {len(text)} characters" if too_long else ""
    marks = len(text) - 1
    return f"a sign carries {marks:,} marks" if marks > MAX_MARKS else ""


def refusal(char: str) -> str:
    r"""Return why ``char`` can never be part of a sign, or an empty string if it can.

    >>> refusal("\x1b")
    'an invisible or control character (U+001B)'
    """
    category = unicodedata.category(char)
    code = f"U+{ord(char):04X}"
    if category in ("Cc", "Cf", "Zl", "Zp"):
        return f"an invisible or control character ({code})"
    if category == "Cs":
        return f"half of a character ({code}, a lone surrogate)"
    if category == "Co":
        return f"a private-use character ({code}), which only its own font can show"
    if char == "\ufffd" or (category == "Cn" and _is_noncharacter(ord(char))):
        return f"a sign of a damaged file ({code})"
    return ""


def _is_noncharacter(code: int) -> bool:
    return code & 0xFFFE == 0xFFFE or 0xFDD0 <= code <= 0xFDEF


def _is_part(char: str) -> bool:
    """Whether ``char`` may be a part in a description; □ is a part that cannot be read."""
    radical_or_operator = "\u2e80" <= char <= "\u2fff"
    return unicodedata.category(char)[0] == "L" or radical_or_operator or char in "□？\u31ef"


def _parts_of(operator: str) -> int:
    if operator in _ONE_PART:
        return 1
    return 3 if operator in _THREE_PARTS else 2


def _end_of_character(text: str, start: int) -> int:
    end = start + 1
    while end < len(text) and continues(text, end):
        end += 1
    return end


def _end_of_marks(text: str, start: int) -> int:
    end = start
    while end < len(text) and is_mark(text[end]):
        end += 1
    return end


def _end_of_description(text: str, start: int) -> tuple[int, int]:
    """Return where a description sequence ends, and how many of its parts are missing there."""
    missing, end = 1, start
    limit = min(len(text), start + MAX_DESCRIPTION)
    while missing and end < limit and _is_part(text[end]):
        if is_description(text[end]):
            missing += _parts_of(text[end]) - 1
            end += 1
        else:
            missing -= 1
            end = _end_of_character(text, end)
    return end, missing
