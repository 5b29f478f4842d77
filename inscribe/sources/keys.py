"""Sound keys: what the index compares, blind to every habit of spelling.

The *letters* of a text are its kana folded as the collator folds them, and further: は わ, ひ い,
ふ う, へ え and ほ お fall together wherever they stand. What cannot be read is ``□``. For the
index the spellings of one long vowel fall together as well (けふ, きょう, きやう), without regard
to word limits, for both sides are treated alike.

>>> letters("こひしかるらむ"), letters("恋ひ")
('こいしかるらむ', '□い')
>>> run_together(letters("けふ")) == run_together(letters("きやう")) == "きよう"
True

Rules: correspondences of historical and current kana spelling (Cabinet order on current kana usage,
1986, appendix).
"""

from __future__ import annotations

import re
import unicodedata
from itertools import product

from inscribe import tables
from inscribe.reading import spelling

UNKNOWN = "□"

_MERGED = str.maketrans("はひふへほワイウエオ", "わいうえおわいうえお")
_OPEN = {"ヲ": "おう", "ジ": "しち", "ズ": "すつ"}  # a reading leaves these spellings open
_PLAIN = str.maketrans("ヲジズ", "おしす")
_A_TO_O = dict(zip(spelling.ROWS[0], spelling.ROWS[4], strict=True)) | {"わ": "お"}
_E_TO_I = dict(zip(spelling.ROWS[3], spelling.ROWS[1], strict=True)) | {"え": ""}
_I_TO_IYU = {letter: letter + "ゆ" for letter in spelling.ROWS[1].translate(_MERGED)} | {"い": "ゆ"}
_BEFORE_U = (
    {a: o.translate(_MERGED) for a, o in _A_TO_O.items()}
    | {e: i + "よ" for e, i in _E_TO_I.items()}
    | _I_TO_IYU
)
_LONG = re.compile("([" + "".join(_BEFORE_U) + "])う")


def letters(kana: str) -> str:
    """Return the letters of a stretch of kana; each stretch of anything else becomes one ``□``.

    Punctuation has no sound.
    """
    folded = "".join(_folded(char) for char in kana if not char.isspace())
    return re.sub("□+", UNKNOWN, folded.translate(_MERGED).translate(_PLAIN))


def run_together(key: str) -> str:
    """Return letters with every long vowel in one spelling."""
    return _LONG.sub(lambda match: _BEFORE_U[match[1]] + "う", key)


@tables.cached(8192)
def spellings(pattern: str) -> tuple[str, ...]:
    """Return the letters a reading's pattern (see ``collate.sounds``) may stand for.

    >>> spellings("ふジ")
    ('うし', 'うち')
    """
    choices = [_OPEN.get(letter, letter) for letter in pattern.translate(_MERGED)]
    return tuple("".join(choice) for choice in product(*choices))


def _folded(char: str) -> str:
    if char == "ー" or unicodedata.category(char)[0] == "P":
        return ""
    return spelling.letter(char) if spelling.is_kana(char) else UNKNOWN
