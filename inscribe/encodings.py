r"""What a text is encoded in that is not UTF-8, and text that was encoded twice.

Guesses serve messages, and the import of lists (:func:`decoded`), which tells them. A text encoded
twice was UTF-8, was read as something else (Windows-1252, or Shift_JIS on a Japanese computer) and
saved as UTF-8 again:

>>> twice = read_twice("æ\xad¦å·ž")
>>> twice.stands, twice.means
('æ\xad¦å·ž', '武州')
>>> likely("髙橋作".encode("cp932"))
'Shift_JIS'
"""

from __future__ import annotations

import codecs
import re
from itertools import islice
from typing import NamedTuple

_SAMPLE = 65536  # bytes looked at
_LEAST = 0.5  # of what is not ASCII looks like Japanese
_SHOWN = 12  # signs quoted
_LOOKED_AT = 50  # places that may have been encoded twice
_KEPT = 0.7  # of the bytes of a passage that was, at least so many make signs again

# Python's codecs and what to call them. Windows' Shift_JIS (cp932) has 髙 and 﨑, as NEC and IBM
# added them; the standards of 2004 have the signs that came with JIS X 0213.
_CODECS = {
    "utf_16_le": "UTF-16",
    "utf_16_be": "UTF-16",
    "cp932": "Shift_JIS",
    "euc_jp": "EUC-JP",
    "shift_jis_2004": "Shift_JIS",
    "euc_jis_2004": "EUC-JP",
}
_MARKED = {
    b"\xff\xfe\x00\x00": "UTF-32",
    b"\x00\x00\xfe\xff": "UTF-32",
    b"\xff\xfe": "UTF-16",
    b"\xfe\xff": "UTF-16",
    b"+/v": "UTF-7",
}

# UTF-8 as Windows-1252 or Latin-1 shows it: what a sign begins with, and what goes on.
_SPECIAL = "".join(bytes([code]).decode("cp1252", "ignore") for code in range(0x80, 0xA0))
_AS_LATIN = re.compile(f"(?:[Â-ô][\x80-\xbf{_SPECIAL}\ufffd]{{1,3}})+")
# UTF-8 as Shift_JIS shows it: kana begin with 縺, 繧 or 繝, kanji leave half-width katakana behind.
_AS_SHIFT_JIS = re.compile("[縺繧繝｡-ﾟ]")
# Compiled when a text gives cause: its wide class of kanji takes a millisecond to prepare.
_SUSPICIOUS = "[縺繧繝][^\\s\x00-\x7f]{1,2}[縺繧繝]|[\u4e00-\u9fff][｡-ﾟ]|[｡-ﾟ][\u4e00-\u9fff]"
_PASSAGE = re.compile("[^\\s\x00-\x7f]+")
_LONGEST = 200  # characters of a passage looked at


class Twice(NamedTuple):
    """A passage that was encoded twice: where it begins, what stands there and what it means."""

    offset: int
    stands: str
    means: str

    @property
    def said(self) -> str:
        """What to say of it."""
        return f"the text was encoded twice: {self.stands[:_SHOWN]} is {self.means[:_SHOWN]}"


WHAT_TO_DO = (
    "use the text as it was before it was converted, and save that as UTF-8 once, "
    "without converting it again"
)


def read_twice(text: str) -> Twice | None:
    """Return the first passage of a text that was encoded twice, if there is one."""
    if text.isascii():
        return None
    return _by_latin(text) or _by_shift_jis(text)


def _by_latin(text: str) -> Twice | None:
    first = None
    for found in islice(_AS_LATIN.finditer(text), _LOOKED_AT):
        stands = found[0][:_LONGEST]
        means = _again(_latin_bytes(stands))
        if len(means) > 1:
            return Twice(found.start(), stands, means)
        if means and not first:
            first = Twice(found.start(), stands, means)
    # A single sign may be chance (é”—), but not where there is nothing else beyond ASCII.
    usual = first and (_usualness(first.means) >= 0.6 or _is_western(first.means))
    alone = usual and _AS_LATIN.sub("", text).isascii()
    return first if alone else None


def _by_shift_jis(text: str) -> Twice | None:
    for found in islice(_AS_SHIFT_JIS.finditer(text), _LOOKED_AT):
        near = max(0, found.start() - 3)
        if not re.search(_SUSPICIOUS, text[near : found.start() + 4]):
            continue
        start = found.start()
        while start and found.start() - start < _LONGEST and _PASSAGE.match(text, start - 1):
            start -= 1
        passage = _PASSAGE.match(text, start, start + 2 * _LONGEST)
        assert passage is not None
        data = passage[0].encode("cp932", "ignore")
        means = _again(data)
        whole = len(means.encode()) == len(data)
        if whole or (len(means) > 1 and len(means.encode()) >= _KEPT * len(data)):
            return Twice(start, passage[0], means)
    return None


def _again(data: bytes) -> str:
    """Return what bytes mean as UTF-8, as far as they are, if that makes sense; else nothing."""
    means = data.decode("utf-8", "ignore")
    sensible = all(_is_japanese(char) or _is_western(char) for char in means)
    return means if sensible else ""


def _is_western(char: str) -> bool:
    """Whether it is a letter with a mark, as é or ō, or a sign of printers, as “."""
    return "\xbf" < char < "\u0250" or "\u2010" <= char <= "\u203b"


def _latin_bytes(stands: str) -> bytes:
    return b"".join(
        char.encode("latin-1") if char <= "\xff" else char.encode("cp1252", "ignore")
        for char in stands
    )


def _is_japanese(char: str) -> bool:
    return (
        "\u3000" <= char <= "\u30ff"
        or "\u3400" <= char <= "\u9fff"
        or "\uf900" <= char <= "\ufaff"
        or "\uff01" <= char <= "\uff5e"
        or char > "\U0001b000"
    )


def likely(data: bytes) -> str:
    """Return the name of the encoding that data in Japanese, which are no UTF-8, may have.

    An empty string says that none fits: the data are damaged UTF-8, or no text.
    """
    for mark, name in _MARKED.items():
        if data.startswith(mark):
            return name
    sample = data[:_SAMPLE]
    if _is_damaged_utf8(sample):
        return ""
    likeness = {codec: _likeness(sample, codec) for codec in _CODECS}
    codec = max(_CODECS, key=lambda each: likeness[each])  # the first of those that are alike
    return _CODECS[codec] if likeness[codec] >= _LEAST else ""


def decoded(data: bytes, codec: str = "") -> tuple[str, str] | None:
    """Return the text of a list that may have been saved by any program, and how it was encoded.

    Only for lists that are imported, where what was found is told. ``codec`` is the encoding where
    it is known. None where the data are no text in it, or in any that is likely.

    >>> decoded("髙橋".encode("cp932")), decoded("花".encode("utf-8-sig"))
    (('髙橋', 'Shift_JIS'), ('花', 'UTF-8'))
    """
    name = likely(data)
    marked = ["utf_16"] if data[:2] in (b"\xff\xfe", b"\xfe\xff") else []
    guessed = [each for each, called in _CODECS.items() if called == name]
    for each in [codec] if codec else ["utf-8-sig", *marked, *guessed]:
        try:
            text = data.decode(each)
        except (UnicodeError, LookupError):
            continue
        if "\x00" not in text:
            called = {"utf-8-sig": "UTF-8", "utf_16": "UTF-16"} | _CODECS
            return text.lstrip("\ufeff"), called.get(each, each)
    return None


def disguised(text: str) -> str:
    """Return the name of an encoding whose bytes happen to be UTF-8, or an empty string."""
    if "\x1b$B" in text or "\x1b$@" in text:
        return "ISO-2022-JP"
    beginning = text[:_SAMPLE]
    every_other = len(beginning) < 3 * beginning.count("\x00") < 2 * len(beginning)
    return "UTF-16" if every_other else ""


def _is_damaged_utf8(sample: bytes) -> bool:
    """Whether most of what is not ASCII is UTF-8, so that only a few bytes are wrong."""
    sound = sum(3 for char in sample.decode("utf-8", "ignore") if _is_japanese(char))
    return sound > sum(byte > 0x7F for byte in sample) / 2


def _likeness(sample: bytes, codec: str) -> float:
    """Return how much of a sample beyond ASCII is Japanese in an encoding, from 0 to 1."""
    try:
        text = codecs.getincrementaldecoder(codec)().decode(sample)
    except UnicodeDecodeError:
        return 0.0
    beyond = [char for char in text if not "\t" <= char <= "~"]
    return sum(map(_usualness, beyond)) / len(beyond) if beyond else 0.0


def _usualness(char: str) -> float:
    """Return how usual a character is in Japanese: kana and common kanji 1, half-width kana 0.1."""
    if "\u3000" <= char <= "\u30ff" or "\uff01" <= char <= "\uff5e":
        return 1.0
    if "\uff61" <= char <= "\uff9f":
        return 0.1
    if not _is_japanese(char):
        return 0.0
    try:
        row = char.encode("euc_jp")[0]
    except UnicodeEncodeError:
        return 0.6 if char.encode("cp932", "ignore") else 0.0  # 髙, which only Windows has
    return 1.0 if 0xB0 <= row <= 0xCF else 0.6 if row != 0x8F else 0.3
