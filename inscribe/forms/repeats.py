"""Repeat marks: what each of them repeats, and where that cannot be known.

々 and 〻 repeat one kanji; ゝ and ヽ one kana without its voicing mark, ゞ and ヾ with one; 〱 and
〲 two or more morae, 〲 voicing the first. Several marks in a row repeat as many characters as
there are marks (一歩々々). How far back 〱 reaches is not written down: a kanji is taken with its
kana ending, a word commonly doubled is known from a table, and otherwise the likeliest stretch is
taken and the change is marked doubtful.

>>> [e.after for e in expansions(["ゞ"], "かた")]
['だ']
>>> expansions(["〱"], "花のいろ")[0].after, expansions(["〲"], "かへす")[0].after
('いろ', 'がへす')
>>> expansions(["〱"], "嬉しや")[0]
Expansion(after='嬉しや', note='or しや', doubtful=True)
"""

from __future__ import annotations

import itertools
import unicodedata
from collections.abc import Sequence
from typing import NamedTuple

from inscribe import tables
from inscribe.forms.sequences import PARTS_OF_SIGNS, VOICED, voiced
from inscribe.notation import is_description, segments
from inscribe.scripts import hiragana

REACH = 16  # characters looked at before a mark
_BREAKS = frozenset("\n／」")  # a word may run over the end of a line or column
_SPACES = " \t\u3000"
_PAUSES = "".join(_BREAKS) + _SPACES
_NEVER_VOICED = "うウ"  # ゔ is no repetition


class Expansion(NamedTuple):
    """What a mark stands for, and why a person should look at it again, if so."""

    after: str
    note: str = ""
    doubtful: bool = False


class Mark(NamedTuple):
    """One row of the table of repeat marks."""

    repeats: str  # "kanji", "kana" or "several"
    voiced: bool


@tables.cached()
def marks() -> dict[str, Mark]:
    """Return what each repeat mark repeats."""
    found: dict[str, Mark] = {}
    for row in tables.rows("repeat_marks"):
        found.setdefault(row["written"], Mark(row["kind"], row["voiced"] == "yes"))
    return found


@tables.cached()
def doubled_words() -> dict[str, tuple[str, ...]]:
    """Return the kana words that are commonly doubled, with the ways the double is said."""
    found: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("reduplications"):
        found.setdefault(row["kana"], tables.listed(row["doubled"]))
    return found


def expansions(run: Sequence[str], before: str) -> list[Expansion]:
    """Return what each mark of an unbroken run of marks stands for, after the text ``before``.

    ``before`` is in current forms; ends of columns and lines in it count for nothing.
    """
    if not PARTS_OF_SIGNS.isdisjoint(before):
        signs = [sign for sign in segments(before.rstrip(_PAUSES)) if sign[0] not in _PAUSES]
        if signs and len(signs[-1]) > 1:
            return [_whole(mark, signs[-1]) for mark in run]
        before = _single_signs_at_the_end(signs)
    elif not _BREAKS.isdisjoint(before):
        before = "".join(sign for sign in before if sign not in _BREAKS)
    before = before.rstrip(_SPACES)
    if len(run) > 1 and (block := _block(run, before)):
        return block
    found: list[Expansion] = []
    for mark in run:
        found.append(_expansion(mark, before))
        before += found[-1].after
    return found


def _single_signs_at_the_end(signs: Sequence[str]) -> str:
    """Return the last of some signs, as far as each is one character."""
    singles = itertools.takewhile(lambda sign: len(sign) == 1, reversed(signs))
    return "".join(singles)[::-1]


def _whole(mark: str, last: str) -> Expansion:
    """Return the expansion of a mark after a sign that has no character of its own."""
    if not (is_kana(last[0]) or is_kanji(last[0]) or is_description(last[0])):
        return Expansion(mark, f"what it repeats cannot be known: {last} stands before it", True)
    if marks()[mark].repeats != "several":
        return Expansion(last, f"{last} is repeated as a whole")
    return Expansion(last, f"only {last} is taken; it may be more", True)


def _block(run: Sequence[str], before: str) -> list[Expansion]:
    """Return the expansion of marks that together repeat as many characters as they are."""
    known = [marks()[mark] for mark in run]
    if len(before) < len(run) or any(mark.repeats == "several" for mark in known):
        return []
    unit = before[-len(run) :]
    kana = all(map(is_kana, unit))
    if not (kana or all(map(is_kanji, unit))):
        return []
    note = f"{len(run)} marks taken to repeat {unit}"
    return [
        Expansion(_repeated(sign, mark.voiced) if kana else sign, note, kana)
        for mark, sign in zip(known, unit, strict=True)
    ]


def _expansion(mark: str, before: str) -> Expansion:
    known = marks()[mark]
    if known.repeats == "several" and (is_kanji(before[-1:]) or is_kana(before[-1:])):
        return _several(before, known.voiced)
    return _one(mark, known, before[-1:])


@tables.cached(4096)
def _one(mark: str, known: Mark, last: str) -> Expansion:
    """Return the expansion of a mark that hangs on the one character before it."""
    if is_kanji(last):
        return Expansion(last, "" if known.repeats == "kanji" else "a kana mark after a kanji")
    if not is_kana(last):
        what = last or "nothing"
        return Expansion(mark, f"what it repeats cannot be known: {what} stands before it", True)
    if known.repeats == "kanji":
        return Expansion(last, "a kanji mark after kana", True)
    return _one_kana(last, known.voiced)


def _one_kana(kana: str, is_voiced: bool) -> Expansion:
    after = _repeated(kana, is_voiced)
    if is_voiced and after == _unvoiced(kana):
        return Expansion(after, f"{kana} cannot be voiced", True)
    if not is_voiced and after != kana:
        return Expansion(after, f"or {kana}, where voicing was not marked", True)
    return Expansion(after)


def _several(before: str, is_voiced: bool) -> Expansion:
    """Return the expansion of a mark for two or more morae."""
    start = len(before)
    while start and is_kana(before[start - 1]):
        start -= 1
    kana, stem = before[start:], before[:start]
    kanji = stem[-1:] if is_kanji(stem[-1:]) else ""
    if not kana:
        return _after_kanji(stem, is_voiced)
    plain, words = hiragana(kana), doubled_words()
    known = [length for length in range(len(kana), 1, -1) if plain[-length:] in words]
    if known:
        found = _known_double(kana[-known[0] :], is_voiced)
        if kanji and known[0] == len(kana) == 2:  # it may be the ending of the kanji: 悲しき
            notes = "; ".join(note for note in (found.note, f"or {kanji}{kana}") if note)
            return found._replace(note=notes, doubtful=True)
        return found
    if kanji and len(kana) < 3:
        doubt = f"or {kana}" if len(kana) == 2 else ""
        return Expansion(_unit(kanji + kana, is_voiced), doubt, bool(doubt))
    if len(kana) == 1:
        note = "only one kana stands before a mark for two or more"
        return Expansion(_unit(kana, is_voiced), note, True)
    return _stretch(kana, bool(stem), is_voiced)


def _known_double(unit: str, is_voiced: bool) -> Expansion:
    after = _unit(unit, is_voiced)
    said = doubled_words()[hiragana(unit)]
    if is_voiced or hiragana(unit + after) in said:
        return Expansion(after)
    return Expansion(after, f"commonly {said[0]}, where voicing was not marked", True)


def _after_kanji(before: str, is_voiced: bool) -> Expansion:
    notes = ["the repetition is voiced"] if is_voiced else []
    compound = len(before) > 1 and is_kanji(before[-2])
    notes += [f"or {before[-2:]}"] if compound else []
    return Expansion(before[-1], "; ".join(notes), compound)


def _stretch(kana: str, inside: bool, is_voiced: bool) -> Expansion:
    """Return the expansion after kana of which no stretch is known to be doubled.

    Words of three or four kana stand alone at a beginning; within a text two kana are likelier.
    """
    length = len(kana) if len(kana) < 5 and not inside else 2
    lengths = [other for other in range(2, min(len(kana), 5) + 1) if other != length]
    note = "how much is repeated cannot be known"
    if lengths:
        note += ": or " + " or ".join(kana[-other:] for other in lengths)
    return Expansion(_unit(kana[-length:], is_voiced), note, bool(lengths))


def _unit(unit: str, is_voiced: bool) -> str:
    return _repeated(unit[0], True) + unit[1:] if is_voiced and is_kana(unit[0]) else unit


def _repeated(kana: str, is_voiced: bool) -> str:
    plain = _unvoiced(kana)
    if not is_voiced or plain in _NEVER_VOICED:
        return plain
    composed = voiced(plain)
    return composed if len(composed) == 1 else plain


def _unvoiced(kana: str) -> str:
    base = unicodedata.normalize("NFD", kana)
    return base[0] if base[1:] == VOICED else kana


def is_kanji(sign: str) -> bool:
    """Whether a single character is a kanji (or ヶ and 〆, which stand for one)."""
    return "\u3400" <= sign <= "\u9fff" or "\uf900" <= sign <= "\ufaff" or _is_rare(sign)


def _is_rare(sign: str) -> bool:
    return "\U00020000" <= sign <= "\U000323af" or sign in ("ヶ", "〆")


def is_kana(sign: str) -> bool:
    """Whether a single character is an ordinary kana or the mark of a long vowel."""
    return "ぁ" <= sign <= "ゖ" or "ァ" <= sign <= "ヺ" or sign == "ー"
