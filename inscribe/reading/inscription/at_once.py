"""Texts that are plainly one passage, told without weighing every way to divide them.

Most inscriptions are one signature, or one poem. A poem that keeps its metre to the mora, and a
signature whose every word is usual, need no second look.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from inscribe.reading.chinese import has_marks, is_letter
from inscribe.reading.inscription.readers import poem
from inscribe.reading.inscription.register import (
    has_modern_grammar,
    is_heading,
    looks_like_verse,
)
from inscribe.reading.inscription.wishes import Wishes
from inscribe.reading.names import is_kana_name
from inscribe.reading.signatures import is_all_formula, is_half_in_kana, is_signature
from inscribe.reading.spelling import KANA, is_kanji_only
from inscribe.reading.verse import VerseReading
from inscribe.reading.words import MARK, Doubt, InscribedText, Kind, has_legible

_LONGEST_DIVIDED = 160  # signs; a longer text is prose
_LONG = 8  # signs of a column in which there is hardly more than one passage
_SHORT = 3  # signs of a text in kanji that is a name or a word
_SURE_TITLE = 6.0
_THE_ABOVE = "右"
_SEAL = re.compile("(?:（印[^）]*）)+")
_NAMES_AFTER_POEM = 6  # kanji at the end, in which there are hardly no names
_END_OF_POEM = 2  # kanji with which a poem may end that needs no second look


class AtOnce(NamedTuple):
    """The kind of a text that is one passage, and its reading where it is a poem."""

    kind: Kind
    verse: VerseReading | None = None
    doubts: tuple[Doubt, ...] = ()


def kind_at_once(text: InscribedText, wishes: Wishes) -> AtOnce | None:
    """Return the one passage that a text plainly is; None where it must be weighed."""
    plain = text.normal.text
    if _SEAL.fullmatch(plain):
        return AtOnce("seal")
    if not has_legible(MARK.sub("", plain)):
        return AtOnce("signature" if is_signature(plain) else "prose")
    if len(plain) > _LONGEST_DIVIDED or has_modern_grammar(plain) or "「" in MARK.sub("", plain):
        return AtOnce("prose")
    if "（印" in plain or text.cuts:
        return None
    if not text.breaks and is_letter(plain):
        return AtOnce("prose")
    if KANA.search(plain):
        return _poem_at_once(text, wishes)
    return _kanji_at_once(text)


def _poem_at_once(text: InscribedText, wishes: Wishes) -> AtOnce | None:
    plain = text.normal.text
    if is_heading(plain):
        return AtOnce("prose")
    if is_kana_name(plain) or is_half_in_kana(plain):
        return AtOnce("signature")
    if not text.breaks and len(plain) <= _LONG and is_all_formula(plain):
        return AtOnce("signature")
    if "［" in plain or "（" in plain or text.faces or not looks_like_verse(plain):
        return AtOnce("prose") if "、" in plain else None
    from inscribe.reading.passages import proverb_words

    if proverb_words(plain):
        return AtOnce("prose")
    reading, _ = poem(text, wishes)
    metre = reading.metre
    if metre is None or metre.name not in ("tanka", "haiku"):
        return AtOnce("prose") if "、" in plain else None
    if "、" in plain:
        return AtOnce("verse", reading) if _commas_end_phrases(reading) else AtOnce("prose")
    kept = tuple(count for count, _ in reading.phrases) == metre.phrases
    named = is_kanji_only(plain[-_END_OF_POEM - 1 :])
    if is_kanji_only(plain[-_NAMES_AFTER_POEM:]):
        return None  # a metre may be kept by chance over the names below a poem
    if kept or (not text.breaks and not named and metre.name == "tanka"):
        return AtOnce("verse", reading)
    return None


def _commas_end_phrases(reading: VerseReading) -> bool:
    """Whether every comma stands at the end of a phrase.

    In prose that has a metre by chance, commas stand anywhere.
    """
    firsts = {first for _, first in reading.phrases} | {len(reading.words)}
    commas = (n for n, word in enumerate(reading.words) if word.written == "、")
    return all(n in firsts or n + 1 in firsts for n in commas)


def _kanji_at_once(text: InscribedText) -> AtOnce | None:
    from inscribe.reading.passages import (
        begins_in_chinese,
        is_date,
        is_dedication,
        is_district,
        is_landmark,
        is_of_words,
        is_surely_signed,
        is_work,
        names_one,
    )

    plain = text.normal.text
    if has_marks(plain) or begins_in_chinese(plain):
        return None
    if not text.breaks and is_district(plain):
        return AtOnce("signature")
    if len(plain) <= _SHORT and not text.breaks:
        return None if is_date(plain) else _short(text)
    if text.faces:
        return None
    if not text.breaks and is_work(plain):
        return AtOnce("heading")
    if not text.breaks and (is_landmark(plain) or is_of_words(plain)):
        return None if is_date(plain) else AtOnce("heading")
    if not text.breaks and is_dedication(text):
        return AtOnce("dedication")
    if is_surely_signed(text):
        return AtOnce("signature")
    if is_date(plain):
        return None
    alone = not text.breaks and len(plain) <= _LONG and not is_title(plain)
    return AtOnce("signature") if alone and names_one(text) and is_signature(plain) else None


def _short(text: InscribedText) -> AtOnce | None:
    """Return what a text of up to three kanji is: a saying, a title, a name, else a word."""
    from inscribe.reading.passages import is_known_saying, is_landmark, is_work

    plain = text.normal.text
    if is_known_saying(plain):
        why = f"{plain} may be a name or a saying"
        doubt = Doubt(text.normal.origin[0], text.normal.origin[-1], why)
        return AtOnce("chinese", doubts=(doubt,) if is_signature(plain) else ())
    if is_title(plain) or is_landmark(plain) or is_work(plain):
        return AtOnce("heading")
    if is_signature(plain):
        return AtOnce("signature")
    from inscribe.dates import find
    from inscribe.reading.signatures import is_quoted

    if is_quoted(plain):
        return AtOnce("prose")
    if find(plain) or not is_kanji_only(plain.replace("□", "")):
        return None
    return AtOnce("prose" if "□" in plain else "chinese")


def is_title(plain: str) -> bool:
    """Whether a text is framed as a title is: 布袋図, 題隅田川."""
    from inscribe.reading.passages import framed_weight

    after = plain[:1] == _THE_ABOVE  # 右忠岑歌 stands after its poem
    return framed_weight("heading", plain, first=True, last=after) > _SURE_TITLE
