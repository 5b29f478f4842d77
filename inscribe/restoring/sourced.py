"""What the sources have in a worn place: the texts found, held against the inscription.

A source spelled otherwise helps too: where it has つき and one sign is worn, 月 is meant.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING
from unicodedata import normalize

from inscribe import notation
from inscribe.collation import collate
from inscribe.errors import InputError, InscribeError
from inscribe.forms import same_character
from inscribe.reading.spelling import is_kana, is_kanji
from inscribe.reading.verse import marks_voicing
from inscribe.restoring import verse
from inscribe.restoring.name_chances import UNREAD
from inscribe.restoring.spellings import left_over, says
from inscribe.signs import Transcription
from inscribe.sources import Hit, Library, SourceText, find, letters

if TYPE_CHECKING:
    from inscribe.collation import Group
    from inscribe.restoring.inscription import WornInscription

MOST_HITS = 3
LEAST_SCORE = 0.1
RECORDED = "the source of the record"
SURE = 0.98  # the most that sources together can weigh
OTHER_WORDING = 0.2  # what a source counts for whose wording differs beside the sign, by trial
_SAME = 1.0
_OTHERWISE = 0.0
_LINE_ENDS = re.compile("[／\n]")
_VOICING_MARK = "\u3099"
_OPEN_VOICING = 0.95  # of a voiced kana where the source marks no voicing, the inscription does
_LIKELIEST = 12  # kanji of which it is asked whether they form a word that the source has
_FORMS_WORD = 1.85  # weight of those, where 0.8 is that of a kanji with the reading
_SPELLED_OUT = 1.8  # what the language says is divided by, where the source has no kanji
_AROUND = 6  # signs of the source on either side in which the word with the sign is looked for
_USED = 0.5  # power of a kanji's frequency in verse, beside what the language says of it ...
_USED_KANA = 0.2  # ... and of a kana's; these and the weights before fitted on odd-numbered poems


@dataclass(frozen=True, slots=True)
class Answer:
    """What a source has where the inscription has a worn place, and how probable the source is."""

    hit: Hit
    text: str
    signs: int  # how many signs are worn there together
    position: int  # which of them this is, from 0
    spelled_out: bool = False  # the source is wholly in kana, the inscription is not
    voiced: bool = True  # the source marks voicing
    near: str = ""  # what the source has there and around
    agrees: bool = True  # it has the inscription's wording on either side of the worn place

    @property
    def stands(self) -> str:
        """What the source has in this place.

        It is one sign, or all signs of the stretch if one cannot tell which belongs here.
        """
        return self.text[self.position] if len(self.text) == self.signs else self.text

    @property
    def weight(self) -> float:
        """How much the source counts for here: its probability, less where its wording differs."""
        return self.hit.score * (1.0 if self.agrees else OTHER_WORDING)


def sources_of(text: Transcription, library: Library) -> tuple[Hit, ...]:
    """Return the texts that may be the source, the likeliest first; none if nothing is legible."""
    try:
        hits = find(library, text, MOST_HITS)
    except InputError:
        return ()
    return tuple(hit for hit in hits if hit.score >= LEAST_SCORE)


def named_source(words: str) -> Hit:
    """Return the source that a record names, which is as sure as a source can be."""
    lines = tuple(filter(None, _LINE_ENDS.split(words)))
    text = SourceText("", lines, title=RECORDED)
    return Hit(1, text, SURE, 0, len(lines) - 1, 0.0, 0)


def others(hits: Iterable[Hit], words: str) -> Iterator[Hit]:
    """Yield the texts found that have other words than the source that a record names."""
    recorded = letters(_LINE_ENDS.sub("", words))
    for hit in hits:
        if letters("".join(hit.text.lines)) != recorded:
            yield hit


def answers(text: Transcription, hits: Iterable[Hit]) -> dict[int, list[Answer]]:
    """Return what each source has for each sign of ``text`` that is in a worn group, by sign."""
    found: dict[int, list[Answer]] = {}
    for hit in hits:
        passage = "\n".join(hit.text.lines[hit.first_line : hit.last_line + 1])
        there = _answers_in(passage, text, hit)
        if hit.spelled != passage:
            in_kana = _answers_in(hit.spelled, text, hit)
            there |= {
                sign: answer
                for sign, answer in in_kana.items()
                if sign not in there or _is_better(answer, there[sign])
            }
        for sign, answer in there.items():
            found.setdefault(sign, []).append(answer)
    return found


def _is_better(in_kana: Answer, printed: Answer) -> bool:
    """Whether the kana of a source tells a sign where its print is written otherwise around.

    A worn place among kana may be one kana of what the print has a kanji for.
    """
    sign_for_sign = len(in_kana.text) == in_kana.signs and in_kana.agrees
    return sign_for_sign and not (printed.agrees and len(printed.text) == printed.signs)


def _answers_in(passage: str, text: Transcription, hit: Hit) -> dict[int, Answer]:
    """Return what the words of a source have for each worn sign."""
    try:
        source = notation.parse(passage)
    except InscribeError:  # a source with marks of its own
        return {}
    spelled_out = not _has_kanji(source) and _has_kanji(text)
    voiced = marks_voicing(source.text)
    found: dict[int, Answer] = {}
    for worn, stands, at, agrees in _worn_groups(collate(text, source).groups):
        near = source.text[max(0, at - _AROUND) : at + len(stands) + _AROUND]
        for position, sign in enumerate(worn):
            found[sign] = Answer(
                hit, stands, len(worn), position, spelled_out, voiced, near, agrees
            )
    return found


def _worn_groups(groups: Sequence[Group]) -> Iterator[tuple[range, str, int, bool]]:
    """Yield the signs of each worn group, what the source has there, where, and if it agrees.

    Where a kanji is thought to say what an unread sign after it may have said (思□ for おもひ), the
    sign is given what the kanji leaves over.
    """
    for at, (before, group) in enumerate(pairwise((None, *groups))):
        assert group is not None
        worn = range(group.copy.start, group.copy.end)
        if group.kind == "unread" and group.source.text:
            agrees = _says_the_same(groups[:at][::-1]) and _says_the_same(groups[at + 1 :])
            yield worn, group.source.text, group.source.start, agrees
        elif _is_worn_addition(group) and before is not None and before.kind == "spelling":
            kanji, said = before.copy.text[-1], before.source.text
            if len(before.copy) == 1 and (rest := left_over(kanji, said, len(group.copy))):
                yield worn, rest, before.source.end - len(rest), _says_the_same(groups[at + 1 :])


def _says_the_same(groups: Iterable[Group]) -> bool:
    """Whether the nearest legible group has the same wording in both texts."""
    return not next((group.is_substantive for group in groups if group.kind != "unread"), False)


def _is_worn_addition(group: Group) -> bool:
    return group.kind in ("added", "unread") and not group.copy.text.strip(UNREAD)


def _has_kanji(text: Transcription) -> bool:
    return any(map(is_kanji, text.text))


def weigh(
    answer: Answer, language: dict[str, float], made: WornInscription, sign: int
) -> dict[str, float]:
    """Return for each sign the share of probability that sources leave to it.

    The carver may have copied what a source has there. ``language`` are the logarithms of the
    signs' weights by all other evidence; they decide between two spellings of one sound.
    """
    text = answer.text
    if len(text) == answer.signs:  # sign for sign
        open_voicing = made.voiced and not answer.voiced
        if answer.spelled_out:
            matches = _spelled_out(answer.stands, language, open_voicing)
            odds = made.kanji_odds(sign, answer.stands)
            matches |= _in_kanji(answer, language, made, sign, odds)
        else:
            known = dict.fromkeys((*language, answer.stands))
            matches = {each: _match(each, answer.stands, open_voicing) for each in known}
    elif answer.signs == 1:
        matches = _in_kanji(answer, language, made, sign, 1.0)
    else:
        return _among(text, language)
    kept = {each: match for each, match in matches.items() if match > 0}
    if not kept:
        return _among(text, language)
    floor = min(language.values(), default=0.0)
    top = max(language.get(each, floor) for each in kept)
    # Where the source says which sign it is, the language has little say.
    least, divisor = (-4.0, 4.0) if len(text) == answer.signs else (-30.0, _SPELLED_OUT)
    if answer.spelled_out:
        least, divisor = -30.0, _SPELLED_OUT
    shares = {
        each: match * math.exp(max(least, (language.get(each, floor) - top) / divisor))
        for each, match in kept.items()
    }
    total = sum(shares.values())
    return {each: share / total for each, share in shares.items()}


def _spelled_out(stands: str, language: dict[str, float], open_voicing: bool) -> dict[str, float]:
    """Return how well each kana answers one kana of a source that has no kanji at all."""
    return {
        kana: match * verse.usage(kana) ** _USED_KANA
        for kana in dict.fromkeys((*language, stands))
        if is_kana(kana) and (match := _match(kana, stands, open_voicing))
    }


def _in_kanji(
    answer: Answer, language: dict[str, float], made: WornInscription, sign: int, odds: float
) -> dict[str, float]:
    """Return how well each kanji says what the source spells out, alone or in a longer word."""
    said = {each: says(each, answer.stands) for each in language if is_kanji(each)}
    near = letters(answer.near)
    likeliest = sorted(said, key=lambda each: -language[each])[:_LIKELIEST]
    found: dict[str, float] = {}
    for each in dict.fromkeys((*likeliest, *(kanji for kanji in said if said[kanji]))):
        match, its_odds = said[each], odds
        if made.forms_word(sign, each, near):
            match, its_odds = _FORMS_WORD, max(odds, made.habit)
        found[each] = its_odds * match * verse.usage(each) ** _USED
    return found


def _among(text: str, language: dict[str, float]) -> dict[str, float]:
    """Return shares where only the stretch is known, not which of its signs stands here."""
    signs = [sign for sign in dict.fromkeys(text) if is_kana(sign) or is_kanji(sign)]
    floor = min(language.values(), default=0.0)
    top = max((language.get(sign, floor) for sign in signs), default=0.0)
    shares = {sign: math.exp((language.get(sign, floor) - top) / 2) for sign in signs}
    total = sum(shares.values()) or 1.0
    return {sign: share / total for sign, share in shares.items()}


def _match(sign: str, stands: str, open_voicing: bool) -> float:
    if sign == stands:
        return _SAME
    if same_character(sign, stands):
        return 0.1
    if is_kana(sign) and is_kana(stands) and letters(sign) == letters(stands):
        marked = normalize("NFD", sign) == stands + _VOICING_MARK
        return _OPEN_VOICING if open_voicing and marked else 0.05
    if is_kana(stands) != is_kana(sign):
        return 0.02 * says(sign, stands)
    return _OTHERWISE


def named(hit: Hit) -> str:
    """Return what to call a source, and how probable it is, unless the record names it."""
    if not hit.text.id:
        return hit.text.title
    return f"{hit.text.title or hit.text.id} (probability {hit.score:.2f})"
