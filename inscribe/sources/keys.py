"""The sound key of a text: what the index compares, blind to every habit of spelling.

Kana are folded as the collator folds them, then further: は わ, ひ い, ふ う, へ え and ほ お fall
together wherever they stand, and so do the spellings of one long vowel (けふ, きょう, きやう).
The key of a text is a string of plain hiragana; what cannot be read is ``□``.

>>> key("けふ") == key("きょう") == key("きやう")
True
>>> key("こひしかるらむ"), key("恋ひ")
('こいしかるらむ', '□い')

Rules: correspondences of historical and current kana spelling (Cabinet order on current kana usage,
1986, appendix), applied without regard to word limits.
"""

from __future__ import annotations

import re

from inscribe.collate import sounds

UNKNOWN = "□"

_MERGED = str.maketrans("はひふへほジズ", "わいうえおしす")
_ROW_A, _ROW_I, _ROW_U, _ROW_E, _ROW_O = (
    "".join(dict.fromkeys(row.translate(_MERGED))) for row in sounds.ROWS
)
_A_TO_O = dict(zip(sounds.ROWS[0], sounds.ROWS[4], strict=True)) | {"わ": "お"}
_E_TO_I = dict(zip(sounds.ROWS[3], sounds.ROWS[1], strict=True))
_LONG = re.compile(f"[{_ROW_A}]う|[{_ROW_E}]う|[{_ROW_I}]う")


def key(kana: str) -> str:
    """Return the sound key of a stretch of kana; anything but kana becomes ``□``, runs as one."""
    letters = "".join(_folded(char) for char in kana if not char.isspace())
    letters = re.sub("□+", UNKNOWN, letters).translate(_MERGED)
    return _LONG.sub(_run_together, letters)


def _folded(char: str) -> str:
    if char == "ー":
        return ""
    return sounds.letter(char) if sounds.is_kana(char) else UNKNOWN


def _run_together(match: re.Match[str]) -> str:
    first = match.group()[0]
    if first in _A_TO_O:
        return _A_TO_O[first].translate(_MERGED) + "う"
    if first in _E_TO_I and first not in "えい":
        return _E_TO_I[first] + "よう"
    return {"え": "よう", "い": "ゆう"}.get(first, first + "ゆう")
