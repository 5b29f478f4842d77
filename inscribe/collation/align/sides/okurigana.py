"""Verbs and adjectives with the part of their ending that is written in kana, or is not.

A reading is given as dictionaries do, a dot between what the character stands for and the
okurigana: わす.れる. A scribe may write more of it in kana (忘すれ), less (忘る) or nothing (忘).
What he does write must go on as the word does: before り, 知 is し, not ち.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from inscribe.reading import spelling

ADJECTIVE_ENDINGS = ("し", "き", "く", "け", "さ", "み", "か")  # か of かり, かる, かれ
# A verb's ending う stands for classical ふ, so its row is は: かよ.う -> かよは, かよひ ...
# No form of a classical verb ends in o: 霞も is 霞 and も (思ほゆ and 聞こゆ are other verbs).
ROW_OF_U = "はひうへ"
VOWELS = 4  # of a row, those in which verbs are inflected
# What may follow は where it ends a verb (願はず, 問はば); elsewhere it is the particle.
BEHIND_HA = frozenset(spelling.fold("すずぬねむんばでしじまれせさめ"))
_SOFT_ROWS = "".join(spelling.ROWS[vowel][row] for row in (0, 5, 7, 9) for vowel in range(5))
CHANGED = "いつむ"  # 書いて, 散って, 読んで: only before て and た


class StemReading(NamedTuple):
    """What a character is read, and the letters one of which must follow it in kana ("": any)."""

    kana: str
    follows: str = ""
    changes: bool = False  # whether its end may change before て and た

    def goes_on(self, following: str) -> bool:
        """Whether it may be followed by kana that fold to these letters, the next one or two."""
        first = following[:1]
        changed = self.changes and first in CHANGED and following[1:] in ("て", "た")
        return not self.follows or (bool(first) and (first in self.follows or changed))


def beginnings(kun: str) -> Iterator[StemReading]:
    """Yield the stem and every longer part of a word up to its end.

    >>> [(part.kana, "れ" in part.follows) for part in beginnings("わす.れる")]
    [('わす', True), ('わすれ', False), ('わすれる', False)]
    """
    stem, _, tail = kun.partition(".")
    for length in range(len(tail) + 1):
        kana = stem + tail[:length]
        rest = tail[length:]
        if tail and (tail[-1] in "いし" or spelling.letter(tail[-1]) not in spelling.ROWS[2]):
            yield StemReading(kana, "" if rest in ("", "い", "し") else spelling.letter(rest[0]))
            continue  # an adjective, or a word like さだ.か
        stands_alone = rest == "る" and spelling.letter(kana[-1:] or "ん") in (*_I_ROW, *_E_ROW)
        letters = "" if not rest or stands_alone else _row_letters(rest)
        yield StemReading(kana, letters, len(rest) == 1)


_I_ROW, _E_ROW = spelling.ROWS[1], spelling.ROWS[3]


def _row_letters(rest: str) -> str:
    first = spelling.letter(rest[0])
    if first in _SOFT_ROWS:
        letters = _SOFT_ROWS
    else:
        at = next((row.index(first) for row in spelling.ROWS if first in row), 0)
        letters = "".join(row[at] for row in spelling.ROWS)
    return letters


def may_be_inflected(behind: Sequence[str]) -> bool:
    """Whether は may end a verb before the letters ``behind``: 問はず, not 恋は世に."""
    return bool(behind) and behind[0] in BEHIND_HA


def row_of(ending: str) -> str:
    """Return the letters with which a verb's endings begin; nothing for an adjective's.

    >>> row_of("つ"), row_of("し")
    ('たちつて', '')
    """
    return "" if ending[-1] in "いし" else "".join(map(spelling.letter, _row(ending[0])))


def cut_short(kun: str) -> Iterator[StemReading]:
    """Yield stems shorter than the dictionary's, the rest being in kana: 現はる is あら + はる."""
    stem = kun.partition(".")[0]
    for length in range(len(stem) - 1, 0, -1):
        after = spelling.letter(stem[length])
        same = [letters for letters in spelling.OPEN.values() if after in letters]
        yield StemReading(stem[:length], "".join((after, *same)))


def spoken_forms(kun: str) -> list[str]:
    """Return every part and form of a word that its writing may stand for."""
    return [part.kana for part in beginnings(kun) if part.kana] + inflected(kun)


def inflected(kun: str) -> list[str]:
    """Return the forms of a verb or adjective that one character may stand for without its ending.

    >>> inflected("き.ゆ")[:5], inflected("うつく.しい")[:3]
    (['きや', 'きい', 'きえ', 'きゆる', 'きゆれ'], ['うつくし', 'うつくしし', 'うつくしき'])
    """
    stem, _, tail = kun.partition(".")
    if not tail:
        return []
    base, end = (stem + tail)[:-1], tail[-1]
    if end == "い":
        return [base, *(base + ending for ending in ADJECTIVE_ENDINGS)]
    if end == "し":
        stems = (base, base + "し")
        return [stem + ending for stem in stems for ending in ADJECTIVE_ENDINGS]
    forms = [base + kana for kana in _row(end) if kana != end]
    forms += [base + end + rest for rest in "るれ"]
    if end == "る":
        forms += _two_grade(base)
    return forms


def _row(end: str) -> str:
    if end == "う":
        return ROW_OF_U
    at = spelling.ROWS[2].find(spelling.letter(end))
    return "" if at < 0 else "".join(row[at] for row in spelling.ROWS[:VOWELS])


def _two_grade(base: str) -> list[str]:
    """Return the classical forms of a modern -える or -いる verb: きえ -> きゆ, きゆる, きゆれ."""
    last = spelling.letter(base[-1:]) if base else ""
    for row in (spelling.ROWS[3], spelling.ROWS[1]):
        if last and (at := row.find(last)) >= 0:
            endings = "ゆうふ" if last in "えい" else spelling.ROWS[2][at]
            return [base[:-1] + u + rest for u in endings for rest in ("", "る", "れ")]
    return []
