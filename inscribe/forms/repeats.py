"""Repeat marks: what each of them repeats, and where that cannot be known.

々 and 〻 repeat one kanji; ゝ and ヽ one kana without its voicing mark, ゞ and ヾ with one; 〱 and
〲 two or more morae, 〲 voicing the first. Several marks in a row repeat as many characters as
there are marks (一歩々々). How far back 〱 reaches is not written down: a kanji (with its kana
ending) is taken whole, a word commonly doubled is known from a table, and otherwise two kana are
taken and the change is marked doubtful.

>>> [e.after for e in expansions("ゞ", "かた")]
['だ']
>>> expansions("〱", "いろ")[0].after
'いろ'
>>> expansions("〲", "かへす")[0].after
'がへす'
"""

from __future__ import annotations

import re
import unicodedata
from typing import NamedTuple

from inscribe import tables
from inscribe.errors import TableError

_VOICED_MARK = "\u3099"
_KANA_END = re.compile(r"[ぁ-ゖァ-ヺー]+$")
_KANJI = re.compile(r"[㐀-䶿一-鿿豈-龎\U00020000-\U000323af〆ヶ]")
_BREAKS = " \t\n\u3000／」"
_UNKNOWN = "what it repeats cannot be known: {}"
REACH = 16  # characters looked at before a mark


class Expansion(NamedTuple):
    """What a mark stands for, and why a person should look at it again, if so."""

    after: str
    note: str = ""
    doubtful: bool = False


class Mark(NamedTuple):
    """One row of the table of repeat marks."""

    repeats: str  # "kanji", "kana" or "several"
    voiced: bool


@tables.compiled
def marks() -> dict[str, Mark]:
    """Return what each repeat mark repeats.

    Raises:
        TableError: a row names no known kind of repetition.
    """
    found: dict[str, Mark] = {}
    columns = ("mark", "repeats", "voiced", "note")
    for (mark, repeats, voiced, _), place in tables.rows("repeat_marks", columns):
        if repeats not in ("kanji", "kana", "several") or voiced not in ("yes", "no"):
            hint = "expected kanji, kana or several, and yes or no"
            raise TableError("this repeat mark cannot be used", place, hint)
        found.setdefault(mark, Mark(repeats, voiced == "yes"))
    return found


@tables.compiled
def doubled_words() -> frozenset[str]:
    """Return the kana words that are commonly doubled."""
    return frozenset(row[0] for row, _ in tables.rows("reduplications", ("unit", "note")))


def expansions(run: str, before: str) -> list[Expansion]:
    """Return what each mark of an unbroken run of marks stands for, after the text ``before``.

    ``before`` is in current forms; column and line breaks at its end are passed over.
    """
    before = before.rstrip(_BREAKS)
    if not before:
        return [_left(mark, "nothing stands before it") for mark in run]
    if len(run) > 1 and (block := _block(run, before)):
        return block
    found: list[Expansion] = []
    for mark in run:
        found.append(_expansion(mark, before))
        before += found[-1].after
    return found


def _left(mark: str, why: str) -> Expansion:
    return Expansion(mark, _UNKNOWN.format(why), True)


def _block(run: str, before: str) -> list[Expansion]:
    """Return the expansion of marks that together repeat as many characters as they are."""
    known = marks()
    if any(known[mark].repeats == "several" for mark in run):
        return []
    unit = before[-len(run) :]
    kanji = all(_is_kanji(sign) for sign in unit)
    kana = all(_is_kana(sign) for sign in unit)
    if len(unit) < len(run) or not (kanji or kana):
        return []
    note = f"{len(run)} marks taken to repeat {unit}"
    return [
        Expansion(_repeated(sign, known[mark].voiced) if kana else sign, note, kana)
        for mark, sign in zip(run, unit, strict=True)
    ]


def _expansion(mark: str, before: str) -> Expansion:
    repeats, voiced = marks()[mark]
    last = before[-1]
    if not (_is_kanji(last) or _is_kana(last)):
        return _left(mark, f"{last} stands before it")
    if repeats == "several":
        return _several(before, voiced)
    if _is_kanji(last):
        return Expansion(last, "" if repeats == "kanji" else "a kana mark after a kanji")
    if repeats == "kanji":
        return Expansion(last, "a kanji mark after kana", True)
    return _one_kana(last, voiced)


def _one_kana(kana: str, voiced: bool) -> Expansion:
    after = _repeated(kana, voiced)
    if voiced and after == _unvoiced(kana):
        return Expansion(after, f"{kana} cannot be voiced", True)
    if not voiced and after != kana:
        return Expansion(after, f"or {kana}, if voicing was not marked", True)
    return Expansion(after)


def _several(before: str, voiced: bool) -> Expansion:
    """Return the expansion of a mark for two or more morae."""
    kana = match.group() if (match := _KANA_END.search(before)) else ""
    stem = before[: len(before) - len(kana)]
    if not kana:
        return _whole_kanji(before, voiced)
    for length in range(len(kana), 1, -1):
        if kana[-length:] in doubled_words():
            return _voiced_unit(kana[-length:], voiced)
    if len(kana) == 1:
        if stem and _is_kanji(stem[-1]):
            return _voiced_unit(stem[-1] + kana, voiced)
        note = "only one kana stands before a mark for two or more"
        return _voiced_unit(kana, voiced)._replace(note=note, doubtful=True)
    if len(kana) == 2:
        doubt = bool(stem) and _is_kanji(stem[-1])
        note = f"or {stem[-1]}{kana}" if doubt else ""
        return _voiced_unit(kana, voiced)._replace(note=note, doubtful=doubt)
    others = " or ".join(kana[-length:] for length in range(3, min(len(kana), 5) + 1))
    note = f"how much is repeated cannot be known: {kana[-2:]} is taken, it may be {others}"
    return _voiced_unit(kana[-2:], voiced)._replace(note=note, doubtful=True)


def _whole_kanji(before: str, voiced: bool) -> Expansion:
    if len(before) > 1 and _is_kanji(before[-2]):
        return Expansion(before[-1], f"or {before[-2:]}", True)
    return Expansion(before[-1], "the repetition is voiced" if voiced else "")


def _voiced_unit(unit: str, voiced: bool) -> Expansion:
    if _is_kanji(unit[0]):
        return Expansion(unit, "the repetition is voiced" if voiced else "")
    return Expansion(_repeated(unit[0], voiced) + unit[1:] if voiced else unit)


def _repeated(kana: str, voiced: bool) -> str:
    plain = _unvoiced(kana)
    if not voiced:
        return plain
    composed = unicodedata.normalize("NFC", plain + _VOICED_MARK)
    return composed if len(composed) == 1 and plain not in "うウ" else plain


def _unvoiced(kana: str) -> str:
    base = unicodedata.normalize("NFD", kana)
    return base[0] if base[1:] == _VOICED_MARK else kana


def _is_kanji(sign: str) -> bool:
    return _KANJI.match(sign) is not None


def _is_kana(sign: str) -> bool:
    return _KANA_END.match(sign) is not None
