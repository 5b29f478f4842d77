"""Everything a signature could be made of: at each place, the words, names, dates and marks.

Each piece has a price: what is usual is cheap. Which of them it is made of, the splitter decides.

>>> [(p.text, p.kind) for p in pieces_of("武州作")[0] if p.cost < 3]
[('武州', 'place'), ('武州', 'name')]
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.names import (
    is_kana_name,
    is_signed_with_mixed_name,
    known,
    mixed_name,
    mixed_name_at,
    place_names,
    surnames,
    usualness,
)
from inscribe.reading.signatures.names import (
    FORMULA_SIGN,
    family_with_kana,
    is_formula_sign,
    is_known_place,
    is_name_character,
    is_womans,
    may_be,
    names_it_could_be,
)
from inscribe.reading.signatures.surname_cuts import cutting_cost
from inscribe.reading.signatures.unlisted import unlisted_words
from inscribe.reading.signatures.unlisted_places import quarters, temples, unlisted_places
from inscribe.reading.words import SignatureWord, words_from, words_of

# A kao, a seal, a gap, an unreadable sign: as inscribe.forms writes them.
MARK = re.compile(r"（花押）|（印「[^」]*」）|（印）|［[^］]*］|□")

# A name in kana, as some carvers wrote theirs.
_KANA_NAME = re.compile(
    "(?<![ぁ-ゖ])[ぁ-ゖ]{2,8}(?![ぁ-ゖ])|(?<![ァ-ヺ])[ァ-ヺー]{2,8}(?![ァ-ヺー])"
)
_KANA_COST = 4.5
_MIXED_COST = 3.0  # 恒とも, where more than the usual formula is beside it
_KANA_NAME_ALONE = 0.5  # in a short text that is a name in kana and little else
_LONGEST_NAME = 6
_LONGEST_PLACE = 4
_LONGEST_WORD = 8
_MOST_KNOWN = 50_000  # stretches whose prices are kept
_AGAINST_FORMULA = 4.0  # what a name costs that begins with the 住 of 京都住 or the 需 of 応需
_LIVES = frozenset({"residence", "native"})  # 京都住, 臼杵人
_LIVING = "住"
_OPEN_PLACES = frozenset("於于在")
_SUFFIXES = frozenset({"place_suffix"})
_BEGINS_NAMES = 1.5  # the usualness of a sign at the beginning of names
_VERBS = frozenset({"verb"})
_FAMILY = "家"
_HOUSE, _OF_A_HOUSE = "屋", 3.0  # 金屋 before a name is a family rather than a goldsmith
_ENDS_MANY_NAMES = 4.0  # the usualness of a sign at the end of names: 正, 敬
_NAME_END_IN_VERB = 1.2
_CLOSERS = frozenset({"closer"})
_OTHER = 6.0
_ONE_SIGN = 3.0  # 三輪氏女綾: names of women have one sign
_DATE = 0.3
_WORN_YEAR = SignatureWord("年", "day_word", "ねん", gloss="of a year not legible", cost=0.5)
_DOT = SignatureWord("・", "joiner", "", gloss="and")

# What stands where nothing but the place in the formula says what a stretch is.
UNEXPLAINED = frozenset({"name", "surname", "art_name", "common_name", "unlisted_place", "other"})


def is_seal(mark: str) -> bool:
    """Whether a mark of the transcriber stands for a seal."""
    return mark.startswith("（印")


def legend_of(seal: str) -> str:
    """Return what a seal says, nothing where it is not told.

    >>> legend_of("（印「寿」）"), legend_of("（印）")
    ('寿', '')
    """
    return seal[3:-2] if "「" in seal else ""


class SignaturePiece(NamedTuple):
    """A stretch of the text (``first`` to ``last``, offsets, both counted) and what it is.

    A named tuple, as a signature of ten signs has some fifty of them.
    """

    text: str
    kind: str
    first: int
    last: int
    cost: float
    word: SignatureWord | None = None
    order_kind: str = ""  # the class by which the order of pieces is priced, with its family


def pieces_of(text: str, dated: Collection[SignaturePiece] = ()) -> list[list[SignaturePiece]]:
    """Return every piece the text could hold, by its first offset.

    Nothing else is made of the signs of a date that is all of the text.
    """
    if whole := [piece for piece in dated if piece.kind == "date" and piece.text == text]:
        return [whole, *([] for _ in text[1:])]
    found: list[list[SignaturePiece]] = [[] for _ in text]
    for piece in dated:
        found[piece.first].append(piece)
    position = 0
    has_kana = any("ぁ" <= sign <= "ヺ" for sign in text)
    while position < len(text):
        if mark := MARK.match(text, position):
            kind = "unread" if mark.group()[0] in "□［" else "mark"
            found[position].append(_piece(mark.group(), kind, position, 0.0))
            if mark.group() == "□":
                found[position] += _pieces_at(text, position)
            position = mark.end()
            continue
        if text[position] == "・":
            found[position].append(
                SignaturePiece("・", "joiner", position, position, 0.0, _DOT, "joiner")
            )
        if text[position] == "年" and text[position - 1 : position] in ("□", "］"):
            found[position].append(_of_word(_WORN_YEAR, position))
        found[position] += _pieces_at(text, position)
        found[position] += [_of_word(word, position) for word in unlisted_words(text, position)]
        found[position].append(_piece(text[position], "other", position, _OTHER))
        if has_kana:
            found[position] += _kana_names(text, position)
        position += 1
    if len(text) == 2:
        found[0] = [_without_formula(piece) for piece in found[0]]
    return found


def words_over(text: str, at: int) -> Iterator[SignaturePiece]:
    """Yield the words that could stand over an offset, each at no more than it costs there.

    >>> [(word.text, word.order_kind) for word in words_over("武州住綾国作", 2)]
    [('住', 'residence'), ('住', 'opener:stay')]
    """
    for first in range(max(0, at - _LONGEST_WORD + 1), at + 1):
        for end in range(at + 1, min(first + _LONGEST_WORD, len(text)) + 1):
            stretch = text[first:end]
            for kind, cost, word, order_kind in _words_alone(stretch):
                yield SignaturePiece(stretch, kind, first, end - 1, cost, word, order_kind)
        for word in (*words_of_many_signs(text, first), *unlisted_words(text, first)):
            if first + len(word.text) > at:
                yield _of_word(word, first)


def _without_formula(piece: SignaturePiece) -> SignaturePiece:
    """Return a name of two signs that is all of a text as a name though it begins with 以 or 在."""
    whole = piece.kind == "name" and len(piece.text) == 2
    if whole and is_formula_sign(piece.text[0]) and not may_be(piece.text[1], _CLOSERS):
        return piece._replace(cost=piece.cost - FORMULA_SIGN)
    return piece


def _kana_names(text: str, position: int) -> Iterator[SignaturePiece]:
    """Yield the names that begin at a place and are, or are half, in kana."""
    kana = _KANA_NAME.match(text, position)
    if kana and not words_of(kana.group()):
        cost = _KANA_NAME_ALONE if is_kana_name(text) else _KANA_COST
        yield _piece(kana.group(), "name", position, cost)
    mixed = mixed_name_at(text, position)
    if mixed and mixed_name(mixed):
        cost = _KANA_NAME_ALONE if is_signed_with_mixed_name(text) else _MIXED_COST
        yield _piece(mixed, "name", position, cost)


def _pieces_at(text: str, position: int) -> list[SignaturePiece]:
    """Return the words, names and places that begin at an offset."""
    found: list[SignaturePiece] = []
    goes_on = _formula_goes_on(text, position)
    surcharge = _AGAINST_FORMULA * goes_on
    for end in range(position + 1, min(position + _LONGEST_WORD, len(text)) + 1):
        stretch = text[position:end]
        for kind, cost, word, order_kind in _meanings_of(stretch):
            if word:
                price = cost + cutting_cost(word, text, position)
            else:
                price = cost + surcharge if goes_on and not _stays(stretch, kind) else cost
                price -= _ONE_SIGN * (kind == "name" and is_womans(text, position, end))
            found.append(SignaturePiece(stretch, kind, position, end - 1, price, word, order_kind))
    for word in words_of_many_signs(text, position):
        found.append(_of_word(word, position))
    if not goes_on:  # the formula calls for no place then
        found += [
            _piece(name, "unlisted_place", position, cost)
            for name, cost in unlisted_places(text, position)
        ]
        found += [
            _piece(name, "unlisted_place", position, cost)._replace(order_kind="quarter")
            for name, cost in (*quarters(text, position), *temples(text, position))
        ]
    return found


def words_of_many_signs(text: str, position: int) -> Iterator[SignatureWord]:
    """Yield the words of the tables that are longer than others and begin at a place."""
    for written, words in words_from(text[position]).items():
        if len(written) > _LONGEST_WORD and text.startswith(written, position):
            yield from words


def _formula_goes_on(text: str, position: int) -> bool:
    """Return whether 住 or 町 follows a place (京都住, 三条町), or a closer its opener (応需).

    The 山 of 京都山 may as well begin a name; 町, 郡 and 宿 hardly ever do.
    """
    if not position:
        return False
    sign, before = text[position], text[position - 1]
    is_suffix = may_be(sign, _SUFFIXES) and usualness(sign, "first") < _BEGINS_NAMES
    if is_suffix or may_be(sign, _LIVES):
        if before == sign:
            return False  # 京都住住山
        starts = range(max(0, position - _LONGEST_PLACE), position)
        return any(
            _is_any_place(text[start:position])
            for start in starts
            if not (start and text[start - 1] in _OPEN_PLACES)  # 於東都住谷
        )
    closers = frozenset(f"closer:{word.family}" for word in _openers(before))
    return bool(closers) and may_be(sign, closers)


def _stays(name: str, kind: str) -> bool:
    """Return whether a name is a family's though a formula could go on (生井, 志水, not 住田)."""
    listed = kind == "surname" and name[0] != _LIVING
    return listed and bool(surnames(name) or known(name).surname)


def _openers(sign: str) -> list[SignatureWord]:
    return [word for word in words_from(sign).get(sign, ()) if word.kind == "opener"]


def _is_any_place(name: str) -> bool:
    return is_known_place(name) or (len(name) > 1 and bool(place_names(name) or known(name).place))


Meaning = tuple[str, float, SignatureWord | None, str]  # kind, cost, word, order kind


@tables.cached(_MOST_KNOWN)
def _meanings_of(stretch: str) -> tuple[Meaning, ...]:
    return tuple(_possible_meanings(stretch))


def _possible_meanings(stretch: str) -> Iterator[Meaning]:
    """Yield every word and kind of name that a stretch of text could be."""
    yield from _words_alone(stretch)
    if len(stretch) <= _LONGEST_NAME and all(map(is_name_character, stretch)):
        for kind, cost in names_it_could_be(stretch):
            yield kind, cost, None, kind
    elif (price := family_with_kana(stretch)) is not None:
        yield "surname", price, None, "surname"


def _words_alone(stretch: str) -> Iterator[Meaning]:
    for word in words_of(stretch):
        house = word.kind == "heading" and stretch[-1] == _HOUSE and known(stretch).surname
        price = word.cost + _name_end_cost(word) + _OF_A_HOUSE * bool(house)
        yield word.kind, price, word, _order_kind(word)


def _name_end_cost(word: SignatureWord) -> float:
    """Return what a verb costs whose first sign rather ends a name: 正作 in 国正作."""
    first = word.text[0]
    if word.kind != "verb" or len(word.text) == 1 or may_be(first, _VERBS):
        return _NAME_END_IN_VERB * ((word.kind, word.text) == ("verb", "学"))  # 近代文学
    return _NAME_END_IN_VERB if usualness(first, "last") > _ENDS_MANY_NAMES else 0.0


def _piece(text: str, kind: str, first: int, cost: float) -> SignaturePiece:
    return SignaturePiece(text, kind, first, first + len(text) - 1, cost, None, kind)


def _of_word(word: SignatureWord, first: int) -> SignaturePiece:
    last = first + len(word.text) - 1
    return SignaturePiece(word.text, word.kind, first, last, word.cost, word, _order_kind(word))


def _order_kind(word: SignatureWord) -> str:
    if word.text == _FAMILY and word.kind == "honorific":
        return "honorific:house"  # after families, hardly after given names
    return f"{word.kind}:{word.family}" if word.family else word.kind


def date_piece(text: str, first: int, last: int, kind: str) -> SignaturePiece:
    """Return a date or an age as a piece."""
    return SignaturePiece(text[first : last + 1], kind, first, last, _DATE, None, kind)
