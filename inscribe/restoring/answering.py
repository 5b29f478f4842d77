"""What a source has in a worn place, as an answer that is weighed against the language.

A source spelled otherwise helps too: where it has つき and one sign is worn, 月 is meant. Where the
answers come from: ``sourced``.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING
from unicodedata import normalize

from inscribe.forms import same_character
from inscribe.reading.spelling import is_kana, is_kanji
from inscribe.restoring import verse
from inscribe.restoring.spellings import says
from inscribe.sources import letters

if TYPE_CHECKING:
    from inscribe.restoring.inscription import WornInscription
    from inscribe.sources import Hit

SURE = 0.98  # the most that sources together can weigh
OTHER_WORDING = 0.2  # what a source counts for whose wording differs beside the sign, by trial
_WITH_OKURIGANA = re.compile("([\u4e00-\u9fff])[\u3041-\u3096]{1,2}")
_SAME = 1.0
_OTHERWISE = 0.0
_VOICING_MARK = "\u3099"
_OPEN_VOICING = 0.95  # of a voiced kana where the source marks no voicing, the inscription does
_LIKELIEST = 12  # kanji of which it is asked whether they form a word that the source has
_FORMS_WORD = 1.85  # weight of those, where 0.8 is that of a kanji with the reading
_SPELLED_OUT = 1.8  # what the language says is divided by, where the source has no kanji
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
    elif answer.signs == 1 and (kanji := _WITH_OKURIGANA.fullmatch(text)):
        matches = {kanji[1]: _SAME}  # ふみ分 for ふみ分け
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
