"""What an answer may be: what is wrong with it, and the usual words for it."""

from __future__ import annotations

import re
from collections.abc import Callable

from inscribe import notation
from inscribe.errors import InscribeError
from inscribe.record import MAX_MM, suggested
from inscribe.recording.measures import extent_of, mm_of
from inscribe.recording.typed import day_of, is_yes_or_no
from inscribe.settling import places_of, settlement

Check = Callable[[str], str]  # what is wrong with an answer, or nothing


def words_for(field: str) -> tuple[str, ...]:
    """Return the usual words for the key ``field`` of a record."""
    return tuple(word.word for word in suggested(field))


def places_on(kind: str) -> tuple[str, ...]:
    """Return the usual places of inscriptions on a kind of fitting.

    >>> places_on("kozuka")[:3], "rim" in places_on("kozuka"), "rim" in places_on("tsuba")
    (('back plate', 'face', 'butt'), False, True)
    """
    kinds = {word.word for word in suggested("kind")}
    return tuple(
        place.word
        for place in suggested("place")
        if not (named := kinds.intersection(re.findall(r"[\w-]+", place.note))) or kind in named
    )


def usual_word(key: str, said: str) -> str:
    """Return the word that records use for an answer in Japanese or in other letters' size.

    >>> usual_word("kind", "小柄"), usual_word("kind", "Tsuba"), usual_word("kind", "box")
    ('kozuka', 'tsuba', 'box')
    >>> usual_word("execution", "kebori"), usual_word("execution", "")
    ('hairline engraving', '')
    """
    for word in suggested(key) if said else ():
        if said == word.japanese or _bare(said) in (_bare(word.word), _bare(word.note)):
            return word.word
    return said


def _bare(word: str) -> str:
    """Return a word without what is written in several ways: capitals, hyphens, spaces."""
    return re.sub(r"[\s-]", "", word.lower())


def anything(answer: str) -> str:
    """Find nothing wrong, unless the answer holds what no record may."""
    return "" if answer.isprintable() else "it holds an invisible character"


def required(answer: str) -> str:
    """Find an empty answer wrong."""
    return anything(answer) if answer else "an answer is needed"


def size_problem(answer: str) -> str:
    """Find wrong what is no size.

    >>> size_problem("14,5"), size_problem("七寸"), size_problem("-3")
    ('', '', 'a length is expected: 14.5, 14,5 mm or 四寸八分')
    >>> size_problem("97200")
    'it must lie between 0 and 1000 mm'
    """
    if not answer:
        return ""
    size = mm_of(answer)
    if size is None:
        return "a length is expected: 14.5, 14,5 mm or 四寸八分"
    return "" if 0 < size <= MAX_MM else f"it must lie between 0 and {MAX_MM:g} mm"


def extent_problem(answer: str, height: float) -> str:
    """Find wrong what is no top and bottom on a plate of this height."""
    if not answer.strip():
        return ""
    extent = extent_of(answer)
    if extent is None:
        return "two lengths are expected, such as: 5.0 89.5"
    top, bottom = extent
    return (
        "" if 0 <= top < bottom <= height else f"they must lie on the plate, from 0 to {height:g}"
    )


def day_problem(answer: str) -> str:
    """Find wrong what is no day."""
    return "" if not answer or day_of(answer) else "a day is expected, such as 2026-03-14 or today"


def yes_problem(answer: str) -> str:
    """Find wrong what is neither yes nor no."""
    return "" if is_yes_or_no(answer) else "y or n is expected"


def column_problem(column: str) -> str:
    """Find wrong what breaks the transcription conventions, and say how."""
    try:
        notation.parse(column)
    except InscribeError as error:
        return str(error)
    return ""


def reading_problem(given: str, column: str) -> str:
    """Find wrong what is no reading of signs of a column, as 嶺曉=みねあき.

    >>> reading_problem("嶺暁=みねあき", "武州住嶺曉"), reading_problem("花=はな", "武州住")
    ('', '花 does not stand in this column')
    """
    try:
        said = settlement(given)
    except InscribeError as error:
        return str(error)
    if said.signs is not None or said.kind is not None:
        return "give the signs and their reading in kana, as in 嶺曉=みねあき"
    if not any(places_of(notation.parse(column), said.written)):
        return f"{said.written} does not stand in this column"
    return ""
