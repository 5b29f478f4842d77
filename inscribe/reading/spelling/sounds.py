"""Sounds as they are compared: kana spelling folded to what it may stand for.

Two spellings agree when some sound fits both. Every kana is folded to one *letter*: voicing marks,
small forms and the pairs を/お, ゐ/い, ゑ/え, ん/む fall together, since manuscripts mix them. A
*pattern* is such letters, with katakana for the places where a reading leaves the spelling open:
in a dictionary's かわ the わ may be written は (historical spelling), so かわ becomes か + ワ.

>>> fold("ゆゑ"), fold("がゝ"[:1])
('ゆえ', 'か')
>>> fits("かワ", "かは"), fits("かワ", "かわ"), fits("かワ", "かほ")
(True, True, False)
>>> sorted(patterns("きょう"))
['きやウ', 'きよウ', 'けウ']

Rules: historical kana spelling as taught in any school grammar of classical Japanese (common
practice); which exchanges scribes make, from memory.
"""

from __future__ import annotations

import unicodedata
from itertools import product

from inscribe import tables
from inscribe.reading.spelling.letters import hiragana
from inscribe.scripts import is_kana as is_kana, is_kanji as is_kanji

SMALL = str.maketrans("ぁぃぅぇぉゃゅょゎっゕゖ", "あいうえおやゆよわつかけ")
PAIRS = str.maketrans("をゐゑん", "おいえむ")
ROWS: tuple[str, ...] = (
    "あかさたなはまやらわ",
    "いきしちにひみいりい",
    "うくすつぬふむゆるう",
    "えけせてねへめえれえ",
    "おこそとのほもよろお",
)

# Open letters: the plain letters each of them may stand for.
OPEN = {
    "ワ": "わは",
    "イ": "いひ",
    "ウ": "うふ",
    "エ": "えへ",
    "オ": "おほ",
    "ジ": "しち",
    "ズ": "すつ",
}
_EXCHANGED = ("わは", "いひ", "うふ", "えへ", "おほ")
_MEDIAL = str.maketrans("わはいひうふえへおほ", "ワワイイウウエエオオ")
_FITTING = {(o, letter) for o, letters in OPEN.items() for letter in letters}
_FITTING |= {(letter, o) for o, letter in _FITTING}


@tables.cached(512)
def letter(kana: str) -> str:
    """Return the letter one kana is folded to; じ and ず stay open: ぢ and づ often stood there."""
    kana = hiragana(unicodedata.normalize("NFC", kana))
    if kana in "じず":
        return "ジ" if kana == "じ" else "ズ"
    plain = unicodedata.normalize("NFD", kana)[:1]
    return plain.translate(SMALL).translate(PAIRS)


def fold(kana: str) -> str:
    """Return the letters of a stretch of kana."""
    return "".join(map(letter, kana))


def voiceless(kana: str) -> str:
    """Return one kana as plain hiragana without its voicing mark, otherwise as spelled."""
    return unicodedata.normalize("NFD", hiragana(kana))[:1]


def fits(pattern: str, letters: str) -> bool:
    """Whether two stretches of letters of the same length may be one sound."""
    if pattern == letters:
        return True
    if len(pattern) != len(letters):
        return False
    for pair in zip(pattern, letters, strict=True):
        if pair[0] != pair[1] and pair not in _FITTING:
            return False
    return True


def exchanged(one: str, other: str) -> bool:
    """Whether scribes exchange the two letters within a word: は/わ, う/ふ, じ/ぢ."""
    return fits(one, other) or any(one in plain and other in plain for plain in _EXCHANGED)


def starts_alike(one: str, other: str) -> bool:
    """Whether the shorter of two stretches of letters may be the beginning of the longer."""
    for pair in zip(one, other, strict=False):
        if pair[0] != pair[1] and pair not in _FITTING:
            return False
    return True


def first_letters(pattern: str) -> str:
    """Return every letter a stretch may begin with to fit ``pattern``."""
    return _fitting(pattern[0])


@tables.cached(512)
def _fitting(letter: str) -> str:
    open_ones = (o for o, letters in OPEN.items() if letter in letters)
    return "".join((letter, OPEN.get(letter, ""), *open_ones))


@tables.cached(16384)
def patterns(reading: str) -> tuple[str, ...]:
    """Return the patterns of a dictionary's reading: all ways it may have been spelled."""
    letters = fold(_without_bars(hiragana(reading)))
    if not letters:
        return ()
    open_form = as_within(letters)
    ways = [_ways_at(open_form, i) for i in range(len(open_form))]
    if all(len(w) == 1 for w in ways) or len(letters) > 12:
        return (open_form,)
    return tuple(dict.fromkeys(_joined(open_form, ways)))


def _joined(letters: str, ways: list[tuple[tuple[int, str], ...]]) -> list[str]:
    done: list[list[str]] = [[] for _ in range(len(letters) + 1)]
    done[0] = [""]
    for at in range(len(letters)):
        for head, (length, written) in product(done[at], ways[at]):
            done[at + length].append(head + written)
    return done[-1]


def _ways_at(letters: str, at: int) -> tuple[tuple[int, str], ...]:
    """Return (letters used, how they may be written) for the sound that begins at ``at``."""
    plain = (1, letters[at])
    if not at and letters[0] == "う" and letters[1:2] in tuple("まみむめもはへワエ"):
        return (plain, (1, "む"))  # うめ is written むめ
    if at and letters[at] in "やゆよ" and letters[at - 1] in ROWS[1]:
        return (plain,)
    return (plain, *long_spellings(letters[at : at + 3]))


# Only modern spelling has う for every long vowel: おう may be あふ, but おふ is another word.
_U = ("う", "ウ")


@tables.cached(4096)
def long_spellings(letters: str) -> tuple[tuple[int, str], ...]:
    """Return other spellings of a long vowel that ``letters`` begin with, and its length there.

    >>> long_spellings("きよウ")
    ((3, 'きやウ'), (3, 'けウ'))
    """
    found: list[tuple[int, str]] = []
    first, rest = letters[:1], letters[1:]
    if rest[:1] in ("よ", "や") and rest[1:2] in _U and (at := ROWS[1].find(first)) >= 0:
        found += [(3, first + other + "ウ") for other in "よや" if other != rest[0]]
        found.append((3, ROWS[3][at] + "ウ"))
    elif rest[:1] == "ゆ" and rest[1:2] in _U and first in ROWS[1]:
        found.append((3, first + "ウ"))
    elif first == "ゆ" and rest[:1] in _U:
        found.append((2, "いウ"))
    elif rest[:1] in ("お", "オ") and first in ROWS[0]:
        found.append((2, first + "ウ"))  # あふひ is now あおい
    elif rest[:1] in _U and (at := ROWS[4].find(first)) >= 0:
        found.append((2, ROWS[0][at] + "ウ"))
    return tuple(found)


def as_within(letters: str) -> str:
    """Return letters with those left open, behind the first, that scribes exchange in a word.

    >>> as_within("うつろふ"), as_within("はは")
    ('うつろウ', 'はワ')
    """
    return letters[:1] + letters[1:].translate(_MEDIAL)


def _without_bars(kana: str) -> str:
    """Return ``kana`` with each length bar written as the vowel it lengthens."""
    if "ー" not in kana:
        return kana
    out = ""
    for char in kana:
        if char == "ー" and out:
            row = next((r for r in ROWS if letter(out[-1]) in r), ROWS[2])
            char = "う" if row is ROWS[4] else row[0]
        out += char
    return out
