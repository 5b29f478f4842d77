"""Signs that are suspicious whatever stands around them: marks, modern kana, letters, odd forms.

>>> outside("△").instead, outside("花"), outside("ﾊ").instead
(('□',), None, ('ハ',))
"""

from __future__ import annotations

import unicodedata

from inscribe import tables
from inscribe.dates import written
from inscribe.reading.suspicious.model import Suspicion

_SMALL = "ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ"
_FULL = "あいうえおつやゆよわアイウエオツヤユヨワカケ"
_MODERN = frozenset(f"{_SMALL}ゔヴー")
_OUTSIDE = "no sign of Japanese writing; □ stands for one that cannot be read"
# Blocks of what may be carved: kanji, kana, repeat and reading marks, descriptions, Sanskrit.
_CARVED = (
    (0x3005, 0x3007),  # 々 〆 〇
    (0x3031, 0x3035),  # tall repeat marks
    (0x303B, 0x303D),  # 〻 〼 〽
    (0x3041, 0x309F),
    (0x30A1, 0x30FF),
    (0x3190, 0x319F),  # marks of Chinese read in Japanese order
    (0x31EF, 0x31FF),
    (0x2FF0, 0x2FFF),  # description sequences
    (0x3400, 0x9FFF),
    (0xF900, 0xFAFF),
    (0x11580, 0x115FF),  # Siddham
    (0x1B000, 0x1B16F),  # hentaigana
    (0x20000, 0x3FFFF),
)
_TALL = ("／＼", "／″＼", "／゛＼")
PUNCTUATION = frozenset("。、，．｡､,.・･「」『』")


@tables.cached(8192)
def outside(text: str) -> Suspicion | None:
    """Return what is suspicious about one sign by itself, with index 0, or None."""
    char = text[0]
    if char in _MODERN:
        why = "small and long kana are modern; carvers wrote the full sign"
        full = (_FULL[_SMALL.index(char)],) if char in _SMALL else ()
        return Suspicion(0, text, why, full, "kana")
    if known := _table().get(char):
        meant, why = known
        return Suspicion(0, text, why, (meant,) if meant else (), "mark")
    if (number := _figure(char)) is not None:
        figure = (written.as_kanji(number),)
        return Suspicion(0, text, "a figure that is hardly carved; type the kanji", figure, "form")
    if char.isascii() or "\uff01" <= char <= "\uff5e":
        return None if text in _TALL else _letter(text)
    if not _may_be_carved(ord(char)):
        return _odd(text)
    return _simplified(text) if char >= "\u4e00" else None


def _letter(text: str) -> Suspicion:
    alike = ("□",) if text in "OoXxＯｏＸｘ0" else ()
    return Suspicion(0, text, "a Latin letter or mark is hardly carved", alike, "mark")


def _figure(char: str) -> int | None:
    """Return the number that a figure of any other script than kanji stands for."""
    no_figure = "\u3000" < char < "\u3030" or "\u3190" <= char <= "\u319f"  # 〇, return marks
    if no_figure or unicodedata.category(char) not in ("Nd", "Nl", "No"):
        return None
    number = unicodedata.numeric(char, -1.0)
    return int(number) if number >= 0 and number == int(number) and number < 10_000 else None


def _may_be_carved(code: int) -> bool:
    return any(first <= code <= last for first, last in _CARVED)


def _odd(text: str) -> Suspicion:
    """Return a sign of no Japanese writing, with the form that Unicode has for it."""
    plain = unicodedata.normalize("NFKC", text)
    if plain != text and all(_may_be_carved(ord(char)) for char in plain):
        why = "a half-width, enclosed or radical form; type the full sign"
        return Suspicion(0, text, why, (plain,), "form")
    if unicodedata.category(text[0])[0] == "L":
        return _letter(text)
    return Suspicion(0, text, _OUTSIDE, ("□",), "mark")


def _simplified(text: str) -> Suspicion | None:
    from inscribe.forms import SIMPLIFIED, normalise_text

    if all(SIMPLIFIED not in change.kind for change in normalise_text(text).changes):
        return None
    row = tables.Search("simplified").first_about(text)
    known = tables.listed(row["current"]) if row else ()
    why = "a Chinese simplified form; type what is carved"
    return Suspicion(0, text, why, known, "simplified")


@tables.cached()
def _table() -> dict[str, tuple[str, str]]:
    """Return what the conventions have for each mark outside them, and why it is one."""
    found: dict[str, tuple[str, str]] = {}
    for row in tables.rows("outside_marks"):
        for mark in row["marks"]:
            found.setdefault(mark, (row["meant"], row["note"]))
    return found
