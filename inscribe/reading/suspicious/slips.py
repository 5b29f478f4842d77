"""Kanji in a signature that are rather a sign of the formulas which they look like: 嶺暁昨 for 作.

Only a sign is named that nothing explains, where the sign it looks like makes a word of the
formula, a place, a title or a date that fits.

>>> [(slip.at, slip.instead) for slip in slips("武州往嶺暁作")]
[(2, '住')]
>>> list(slips("武州住嶺暁作"))
[]
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe import forms, tables
from inscribe.dates import find
from inscribe.dates.written import STARTS, words_from as date_words_from
from inscribe.forms import look_alikes
from inscribe.reading.names import usualness
from inscribe.reading.signatures import (
    USUAL_SIGN,
    SignatureDivision,
    is_kanji,
    is_signature,
)
from inscribe.reading.suspicious.pricing import (
    division,
    gain_in_signature,
    is_explained,
    most_gained,
    piece_at,
    replaced,
)
from inscribe.reading.words import words_of

_CHEAPER = 1.2  # by what the signature must be cheaper with a look-alike
_CHEAPER_UNSIGNED = 4.0  # the same where nothing else tells a signature
_CHEAPER_BY_PARTS = (2.0, 5.0)  # with a sign that is a part or a whole of it; that shares parts
_USUAL_NAME = 2.5  # the price of a name of which no sign is unusual where it stands
_LONGEST_WORD = 4
_COMMONER = 3  # how much commoner a look-alike of a rare sign must be to be worth a word
_RARE = 1000  # the place by frequency after which a character is rare enough to be doubted
_RANKED = 2501  # the dictionary ranks this many characters by frequency
_SHOWN = 4
_PROPER = "固有名詞"
_STEMS = "甲乙丙丁戊己庚辛壬癸"
_LONGEST = 60  # signs of a signature that is looked at


class Slip(NamedTuple):
    """An offset, the sign that is likelier there, and by how much."""

    at: int
    instead: str
    gain: float


def slips(text: str) -> Iterator[Slip]:
    """Yield the likeliest slip at each place of a signature in current forms, without its date.

    What is no signature as it stands may be one but for the slip: then it must gain more. Where
    every part is usual there is nothing to explain by a slip, and none is looked for.
    """
    if not text or len(text) > _LONGEST:
        return
    like = [at for at, sign in enumerate(text) if is_kanji(sign) and _meant(sign)]
    if not like:
        return
    found = division(text)
    said = sum(len(piece.text) for piece in found.pieces if piece.kind != "date")
    if found.cost <= USUAL_SIGN * said:
        return
    for at in like:
        if is_explained(found, at) or _is_usual_name(found, at):
            continue
        likely = list(_likely(text, at))
        if likely and not is_signature(text):
            likely = [slip for slip in likely if slip.gain >= _CHEAPER_UNSIGNED]
        if likely and not _is_of_a_word(text, at):
            yield max(likely, key=lambda slip: slip.gain)


def _is_usual_name(found: SignatureDivision, at: int) -> bool:
    """Whether a sign is part of a usual name; after a year it may be of a pair: 天保三年千辰."""
    name = piece_at(found, at)
    after_date = any(p.kind == "date" and p.last + 1 == name.first for p in found.pieces)
    return name.cost <= _USUAL_NAME and not after_date


def without_date(text: str) -> str:
    """Return a text without the year of an era that ends it: nothing is wrong with that.

    Of the sign of the year that follows, the second half may stand in the next column.

    >>> without_date("武州往嶺暁作嘉永六年癸丑"), without_date("武州往嶺暁作嘉永六年癸")
    ('武州往嶺暁作', '武州往嶺暁作')
    >>> without_date("武州往嶺暁作又永六年")
    '武州往嶺暁作又永六年'
    """
    last = find(text)[-1:]
    if not last or last[0].year is None:
        return text
    rest = text[last[0].last + 1 :]
    return text[: last[0].first] if not rest or (len(rest) == 1 and rest in _STEMS) else text


def _is_of_a_word(text: str, at: int) -> bool:
    """Whether a character and one beside it are a word of the dictionary (鑑定), and no name."""
    from inscribe.reading.mecab import unidic_words

    pairs = [text[start : start + 2] for start in (at - 1, at) if start >= 0]
    words = [unidic_words(pair) for pair in pairs if len(pair) == 2]
    return any(len(w) == 1 and w[0].known and _PROPER not in w[0].part_of_speech for w in words)


def _likely(text: str, at: int) -> Iterator[Slip]:
    meant = [each for each in _meant(text[at]) if _makes_a_word(replaced(text, at, each[1]), at)]
    most = most_gained(text, at, [current for _, current, _ in meant]) if meant else 0.0
    for other, current, least in meant:
        if most < least:
            continue
        gain = gain_in_signature(text, at, current)
        if gain >= least and is_explained(division(replaced(text, at, current)), at):
            yield Slip(at, other, gain)


@tables.cached()
def _meant(sign: str) -> tuple[tuple[str, str, float], ...]:
    """Return the signs of the formulas that a sign may be, and how much cheaper they must be.

    Each as it is shown and in its current form.
    """
    found = [(other, _CHEAPER) for other in look_alikes(sign)]
    row = _table().first_about(sign)
    if row is not None:
        for least, meant in zip(_CHEAPER_BY_PARTS, (row["whole"], row["parts"]), strict=True):
            found += ((other, least) for other in tables.listed(meant))
    current = ((other, forms.normalise_text(other).text, least) for other, least in found)
    return tuple(each for each in current if len(each[1]) == 1 and each[1] != sign)


def _makes_a_word(text: str, at: int) -> bool:
    """Whether a character may be part of a word of signatures or dates where it stands."""
    for start in range(max(0, at - _LONGEST_WORD + 1), at + 1):
        for end in range(at + 1, min(len(text), start + _LONGEST_WORD) + 1):
            if words_of(text[start:end]):
                return True
    return text[at] in STARTS or any(
        text.startswith(word.text, start) and start + len(word.text) > at
        for start in range(max(0, at - 1), at + 1)
        for word in date_words_from(text[start])
    )


@tables.cached()
def _table() -> tables.Search:
    return tables.Search("misread_formulas")


def rare_look_alikes(text: str) -> Iterator[tuple[int, tuple[str, ...]]]:
    """Yield the signs that nothing explains, rare and unused in names, which look like usual ones.

    >>> list(rare_look_alikes("曰"))
    [(0, ('日',))]
    """
    rare = {at: others for at, sign in enumerate(text) if (others := _usual_look_alikes(sign))}
    if not rare or len(text) > _LONGEST:
        return
    found = division(text)
    for at, others in rare.items():
        if is_explained(found, at) or _is_of_a_word(text, at):
            continue
        if len(text) == 1 or is_signature(text):
            yield at, others[:_SHOWN]


@tables.cached(4096)
def _usual_look_alikes(sign: str) -> tuple[str, ...]:
    """Return the signs usual in names that a rare sign, unused in names, looks like."""
    rank = _rank(sign)
    if rank <= _RARE or not is_kanji(sign) or _is_usual_in_names(sign):
        return ()
    others = (other for other in look_alikes(sign) if _COMMONER * _rank(other) < rank)
    return tuple(other for other in others if is_kanji(other) and _is_usual_in_names(other))


def _is_usual_in_names(sign: str) -> bool:
    return max(usualness(sign, "first"), usualness(sign, "last")) > 0


def _rank(sign: str) -> int:
    """Return a character's place by frequency, a high number where it is not known."""
    return forms.character(sign).rank or _RANKED
