"""The dates and ages of a signature as pieces with their readings.

>>> [(piece.text, piece.kind, options[0].romaji) for piece, options in dated_pieces("行年六十八歳")]
[('行年六十八歳', 'age', 'gyōnen rokujūhassai')]
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.dates import find
from inscribe.dates.meaning import words
from inscribe.reading.names import known, place_names
from inscribe.reading.signatures.options import UNREAD_KANA, UNREAD_ROMAJI, Option
from inscribe.reading.signatures.pieces import SignaturePiece, date_piece

if TYPE_CHECKING:
    from inscribe.dates import DateReading

DatedPiece = tuple[SignaturePiece, tuple[Option, ...]]

_RECENT = 8
_ALTERNATIVE = 1.2
_MOST = 4
_WORN_AGE = "行年[一二三四五六七八九十有]*□+[一二三四五六七八九十有]*[歳才翁]?"
_PARTS_OF_AGES = {"行年": "gyōnen", "歳": "sai", "才": "sai", "翁": "ō"}
_SEASONS = "春夏秋冬"
_MAY_BEGIN_NAMES = _SEASONS + "天"  # 天 may stand for 年
_NUMERALS = "一二三四五六七八九十"
_LENGTHS_OF_PLACES = (2, 3)


def dated_pieces(text: str) -> list[DatedPiece]:
    """Return every date and age in a normalised text, with its readings, the best first.

    A date and an age in one expression (嘉永六年 行年七十) come apart.
    """
    return list(_dated_pieces(text))


@tables.cached(_RECENT)  # the register is judged by the dates that are then read
def _dated_pieces(text: str) -> list[DatedPiece]:
    found: list[DatedPiece] = []
    for reading in find(text):
        found.append(_dated(text, reading, 0))
        for first, end in (*_without_season(text, reading), *_without_place(text, reading)):
            found += [_dated(text, shorter, first) for shorter in find(text[first:end])]
    if "□" in text and "年" in text:
        found += [_worn_age(worn) for worn in re.finditer(_WORN_AGE, text)]
    return found


def _worn_age(worn: re.Match[str]) -> DatedPiece:
    """Return an age of which a number is worn (行年□十三歳), its legible parts read as they are."""
    spoken = [
        part if part[:1] == "□" else _said(part) for part in re.split("(□+)", worn.group()) if part
    ]
    romaji = _with_gaps(re.sub("□ (?=[a-z])", "□", " ".join(spoken)))
    piece = date_piece(worn.string, worn.start(), worn.end() - 1, "age")
    return piece, (Option("□", romaji, reason="a number cannot be read"),)


def _with_gaps(romaji: str) -> str:
    """Return Latin letters in which … stands for what cannot be read, as in names."""
    return re.sub(f"{UNREAD_KANA}+", UNREAD_ROMAJI, romaji)


def _said(part: str) -> str:
    """Return how a legible part of an age is read."""
    if part in _PARTS_OF_AGES:
        return _PARTS_OF_AGES[part]
    prefix = "" if part.startswith("行年") else "行年"
    found = find(prefix + part)
    words_ = [word.romaji for word in words(found[0])] if found else [part]
    return " ".join(words_[1:] if prefix and found else words_)


def _dated(text: str, reading: DateReading, start: int) -> DatedPiece:
    kind = "age" if reading.age is not None and reading.year is None else "date"
    piece = date_piece(text, start + reading.first, start + reading.last, kind)
    return piece, _options(reading)


def _without_season(text: str, reading: DateReading) -> Iterator[tuple[int, int]]:
    """Yield what is left of a date if the sign at its border belongs to a name (景春十七歳)."""
    first, end = reading.first, reading.last + 1
    if reading.text[0] in _SEASONS and first:
        yield first + 1, end
    if reading.text[-1] in _MAY_BEGIN_NAMES and end < len(text):
        yield first, end - 1


def _without_place(text: str, reading: DateReading) -> Iterator[tuple[int, int]]:
    """Yield what is left of a date if its last number begins a place: 孟冬｜二本松住."""
    at = reading.last
    if reading.text[-1] in _NUMERALS and at > reading.first:
        following = (text[at : at + length] for length in _LENGTHS_OF_PLACES)
        if any(place_names(each) or known(each).place for each in following):
            yield reading.first, at


def _options(reading: DateReading) -> tuple[Option, ...]:
    spoken = words(reading)
    kana = " ".join(word.kana for word in spoken)
    main = [_with_gaps(word.romaji) for word in spoken]
    options = [Option(kana, " ".join(main))]
    for at, word in enumerate(spoken):
        for other in word.also:
            changed = " ".join((*main[:at], other, *main[at + 1 :]))
            reason = f"{word.text} may be read so too"
            options.append(Option(kana, changed, _ALTERNATIVE * len(options), reason))
    if linked := _and_said(options[0], reading.text):
        options[0] = options[0]._replace(reason=f"{linked.reason[0]} is left unsaid")
        options.insert(0, linked)
    if "七十" in reading.text:
        options += _with_shichi(options[0])
    return tuple(options[:_MOST])


def _and_said(spoken: Option, text: str) -> Option | None:
    """Return a number with 有, or 又 for it, as it is said: shichijū yū ni."""
    and_ = re.search("[十百]([有又])[一二三四五六七八九]", text)
    if not and_:
        return None
    kana = re.sub("(.*(?:じゅう|ひゃく))(?=[ぁ-ゖ])", r"\1 ゆう ", spoken.kana, count=1)
    romaji = re.sub("(.*(?:jū|hyaku))(?=[a-z])", r"\1 yū ", spoken.romaji, count=1)
    return Option(kana, romaji, 0.0, f"{and_[1]} is said yū")


def _with_shichi(spoken: Option) -> list[Option]:
    """Return seventy as older counting has it: shichijū, not nanajū."""
    kana = spoken.kana.replace("なな", "しち")
    romaji = spoken.romaji.replace("nana", "shichi")
    if romaji == spoken.romaji:
        return []
    return [Option(kana, romaji, _ALTERNATIVE, "七十 may be read shichijū too")]
