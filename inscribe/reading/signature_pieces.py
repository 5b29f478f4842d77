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
from inscribe.reading.kana_names import is_signed_with_mixed_name, mixed_name
from inscribe.reading.made_names import Ending, ending_of
from inscribe.reading.name_elements import Position, choices, usualness
from inscribe.reading.name_lists import place_names, surnames, surnames_from
from inscribe.reading.names import own_names
from inscribe.reading.register import is_kana_name, mixed_name_at
from inscribe.reading.signature_words import Word, words_from

# A kao, a seal, a gap, an unreadable sign: as inscribe.forms writes them.
MARK = re.compile(r"（花押）|（印「[^」]*」）|（印）|［[^］]*］|□")

# A name in kana, as some carvers wrote theirs.
_KANA_NAME = re.compile(
    "(?<![ぁ-ゖ])[ぁ-ゖ]{2,8}(?![ぁ-ゖ])|(?<![ァ-ヺ])[ァ-ヺー]{2,8}(?![ァ-ヺー])"
)
_KANA = re.compile("[ぁ-ゖァ-ヺ]")
_KANA_COST = 4.5
_MIXED_COST = 3.0  # 恒とも, where more than the usual formula is beside it
_KANA_NAME_ALONE = 0.5  # in a short text that is a name in kana and little else
_NAME = 2.2  # an art name of two usual characters
_RARE_CHARACTER = 0.55  # for each step by which a character is less usual in its place
_USUAL_CHARACTER = 3.6  # from this usualness on a character costs nothing
_SINGLE_NAME = 5.2
_ENDED_NAME = 2.0  # with a studio or everyday ending
_LONG_STEM = 4.2  # for each character more before an ending than is usual
_DOUBTFUL_ENDING = 4.0
_LONG_EVERYDAY_STEM = 1.5  # 久米吉
_ENDING_AHEAD = 3.0  # 斎, 軒, 堂 end names and seldom begin one
_LINKED_STEM = 2.5  # a 之 within a stem (十二支之内)
_AFTER_GIVEN_NAMES = "翁子叟"  # said of a man: 綾国翁 is old Ayakuni
_GIVEN_AND_HONOUR = 3.4
_MOSTLY = 0.7  # the share of a reading that is the usual one
_LONG_NAME = 8.0  # three characters without a known pattern
_LONGEST_NAME = 6
_LONGEST_WORD = 8
_MOST_KNOWN = 50_000  # stretches whose prices are kept
_SURNAME = 1.3
_UNLISTED_SURNAME = 4.3
_HOUSE = "屋"  # of tradesmen's houses: 吉川屋, 伊勢屋
_LISTED_HOUSE = 1.8
_HOUSE_NAME = 3.2
_ENDS_OF_SURNAMES = frozenset("田川山村井本野藤島木原沢口谷崎橋岡森内尾塚池部")
_WORN_SURNAME = 2.8
_LIKE_A_NAME = 1.5
_CLOSER_AS_NAME = 2.0  # 筆意, 所望: words of the formulas, hardly names
_WORD_IN_SURNAME = 2.5  # 門 or 需 makes a surname of three signs that no list has unlikely
_BEFORE_NAMES = frozenset({"adverb", "closer:patron", "appraised"})
_AROUND_NAMES = _BEFORE_NAMES | {"relation"}
_LISTED_PLACE = 2.2  # in place_names.tsv
_UNLISTED_PLACE = 4.0
_WORN_PROVINCE = "□州"
_CALLS_FOR_PLACE = frozenset("於于在")
_OWN_NAME = 0.3
_FORMULA_SIGN = 2.0  # a sign of the formulas (作 住 於) within a name
_CLOSERS = frozenset({"closer"})
_ENDS_WORDS = frozenset({"verb", "residence"})  # of the formula signs those that end something
_FORMULA_KINDS = frozenset({"verb", "opener", "residence"})
_OTHER = 6.0
_DATE = 0.3
_DOT = Word("・", "joiner", "", gloss="and")


def is_seal(mark: str) -> bool:
    """Whether a mark of the transcriber stands for a seal."""
    return mark.startswith("（印")


def legend_of(seal: str) -> str:
    """Return what a seal says, nothing where it is not told.

    >>> legend_of("（印「寿」）"), legend_of("（印）")
    ('寿', '')
    """
    return seal[3:-2] if "「" in seal else ""


class Piece(NamedTuple):
    """A stretch of the text (``first`` to ``last``, offsets, both counted) and what it is.

    A named tuple, as a signature of ten signs has some fifty of them.
    """

    text: str
    kind: str
    first: int
    last: int
    cost: float
    word: Word | None = None
    order_kind: str = ""  # the class by which the order of pieces is priced, with its family


def pieces_of(text: str, dated: Collection[Piece] = ()) -> list[list[Piece]]:
    """Return every piece the text could hold, by its first offset."""
    found: list[list[Piece]] = [[] for _ in text]
    for piece in dated:
        found[piece.first].append(piece)
    position = 0
    has_kana = _KANA.search(text) is not None
    while position < len(text):
        if mark := MARK.match(text, position):
            kind = "unread" if mark.group()[0] in "□［" else "mark"
            found[position].append(_piece(mark.group(), kind, position, 0.0))
            if mark.group() == "□":
                found[position] += _pieces_at(text, position)
                found[position] += _place_pieces(text, position)
            position = mark.end()
            continue
        if text[position] == "・":
            found[position].append(Piece("・", "joiner", position, position, 0.0, _DOT, "joiner"))
        found[position] += _pieces_at(text, position)
        found[position] += _place_pieces(text, position)
        found[position].append(_piece(text[position], "other", position, _OTHER))
        if has_kana:
            found[position] += _kana_names(text, position)
        position += 1
    if len(text) == 2:
        found[0] = [_without_formula(piece) for piece in found[0]]
    return found


def _without_formula(piece: Piece) -> Piece:
    """Return a name of two signs that is all of a text as a name though it begins with 以 or 在."""
    whole = piece.kind == "name" and len(piece.text) == 2
    if whole and _is_formula_sign(piece.text[0]) and not _may_be(piece.text[1], _CLOSERS):
        return piece._replace(cost=piece.cost - _FORMULA_SIGN)
    return piece


def _kana_names(text: str, position: int) -> Iterator[Piece]:
    """Yield the names that begin at a place and are, or are half, in kana."""
    if kana := _KANA_NAME.match(text, position):
        cost = _KANA_NAME_ALONE if is_kana_name(text) else _KANA_COST
        yield _piece(kana.group(), "name", position, cost)
    mixed = mixed_name_at(text, position)
    if mixed and mixed_name(mixed):
        cost = _KANA_NAME_ALONE if is_signed_with_mixed_name(text) else _MIXED_COST
        yield _piece(mixed, "name", position, cost)


def _pieces_at(text: str, position: int) -> list[Piece]:
    """Return the words and names that begin at a place."""
    known = _known_stretches()
    found: list[Piece] = []
    for end in range(position + 1, min(position + _LONGEST_WORD, len(text)) + 1):
        stretch = text[position:end]
        meanings = known.get(stretch)
        if meanings is None:
            if len(known) > _MOST_KNOWN:
                known.clear()
            meanings = known[stretch] = tuple(_meanings_of(stretch))
        for kind, cost, word, order_kind in meanings:
            found.append(Piece(stretch, kind, position, end - 1, cost, word, order_kind))
    return found


Meaning = tuple[str, float, Word | None, str]  # kind, cost, word, order kind


@tables.compiled
def _known_stretches() -> dict[str, tuple[Meaning, ...]]:
    return {}


def _meanings_of(stretch: str) -> Iterator[Meaning]:
    """Yield every word and kind of name that a stretch of text could be."""
    for word in words_from(stretch[0]).get(stretch, ()):
        order_kind = f"{word.kind}:{word.family}" if word.family else word.kind
        yield word.kind, word.cost, word, order_kind
    if len(stretch) <= _LONGEST_NAME and all(map(is_name_character, stretch)):
        for kind, cost in _names_it_could_be(stretch):
            yield kind, cost, None, kind


def _piece(text: str, kind: str, first: int, cost: float) -> Piece:
    return Piece(text, kind, first, first + len(text) - 1, cost, None, kind)


def date_piece(text: str, first: int, last: int, kind: str) -> Piece:
    """Return a date or an age as a piece."""
    return Piece(text[first : last + 1], kind, first, last, _DATE, None, kind)


def is_name_character(char: str) -> bool:
    """Return whether a character may stand in a name: a kanji, or a sign that cannot be read."""
    return char == "□" or _is_kanji(char)


def _is_kanji(char: str) -> bool:
    return "一" <= char <= "鿿" or char == "々" or "㐀" <= char <= "䶿" or char >= "\U00020000"


def _names_it_could_be(name: str) -> Iterator[tuple[str, float]]:
    """Yield the kinds of name a stretch could be, with their prices."""
    if own := own_names().get(name):
        yield _PIECE_KINDS.get(own[0].kind, "name"), _OWN_NAME
    yield from _given_names(name)
    if name in surnames_from(name[0]):
        yield "surname", _surname_cost(name)
    elif 1 < len(name) < 5 and name[-1] == _HOUSE and "□" not in name:
        yield "surname", _LISTED_HOUSE if _is_of_surname_or_place(name[:-1]) else _HOUSE_NAME
    elif len(name) == 2 and name[0] == "□" and name[1] in _ENDS_OF_SURNAMES:
        yield "surname", _WORN_SURNAME
    elif 1 < len(name) < 4 and "□" not in name:
        yield "surname", _unlisted_surname_cost(name)


def _is_of_surname_or_place(name: str) -> bool:
    return bool(surnames(name)) or _is_known_place(name) or bool(place_names(name))


def _unlisted_surname_cost(name: str) -> float:
    cost = _UNLISTED_SURNAME + 2.0 * (len(name) - 2)
    if len(name) == 2:  # what would make a good art name is the less likely a surname
        cost += max(0.0, _LIKE_A_NAME - _rarity(name[0], "first") - _rarity(name[1], "last"))
    if len(name) == 3 or _may_be(name[0], _BEFORE_NAMES):
        cost += _WORD_IN_SURNAME * any(_may_be(char, _AROUND_NAMES) for char in name)
    return cost + _formula_signs_cost(name)


def _may_be(char: str, kinds: frozenset[str]) -> bool:
    """Return whether a sign alone may be a word of one of the classes."""
    found = words_from(char).get(char, ())
    return any(word.kind in kinds or f"{word.kind}:{word.family}" in kinds for word in found)


def _place_pieces(text: str, position: int) -> Iterator[Piece]:
    """Yield the places that cities.tsv lacks, where the formula calls for one."""
    after_opener = position > 0 and text[position - 1] in _CALLS_FOR_PLACE
    after_opener = after_opener or (position == 1 and text[0] == "住")
    for length in (2, 3):
        name = text[position : position + length]
        following = text[position + length : position + length + 1]
        called_for = after_opener or (following and _follows_place(following))
        if not called_for or len(name) < length or not all(map(is_name_character, name)):
            continue
        if _is_known_place(name) or _ends_in_known_place(name):
            continue  # and the table of all places need not be loaded
        if "□" in name and (length > 2 or name == "□□"):
            continue
        if length > 2 and _is_known_place(name[:2]):
            continue
        if name == _WORN_PROVINCE:
            yield _piece(name, "unlisted_place", position, _SURNAME)
            continue
        cost = _LISTED_PLACE if place_names(name) else _UNLISTED_PLACE + length - 2
        yield _piece(name, "unlisted_place", position, cost + _formula_signs_cost(name))


def _ends_in_known_place(name: str) -> bool:
    """Return whether a known place ends a stretch that is none itself: 州津, not 宮津."""
    inside = any(_is_known_place(name[start:]) for start in range(1, len(name)))
    return inside and not place_names(name)


def _is_known_place(name: str) -> bool:
    words = words_from(name[0]).get(name, ())
    return any(word.kind in ("place", "city", "quarter") for word in words)


def _follows_place(char: str) -> bool:
    for word in words_from(char).get(char, ()):
        if word.kind in ("residence", "place_suffix"):
            return True
    return False


def _formula_signs_cost(name: str) -> float:
    return 2 * _FORMULA_SIGN * sum(map(_is_formula_sign, name))


def _is_formula_sign(char: str) -> bool:
    known = _formula_signs()
    if char not in known:
        known[char] = any(w.kind in _FORMULA_KINDS for w in words_from(char).get(char, ()))
    return known[char]


@tables.compiled
def _formula_signs() -> dict[str, bool]:
    return {}


_PIECE_KINDS = {
    "given": "name",
    "art": "art_name",
    "common": "common_name",
    "surname": "surname",
    "name": "name",
}


def _surname_cost(name: str) -> float:
    usual = _SURNAME + min(1.1, max(0.0, (surnames(name)[0][1] - 6500) / 2500))
    return usual + (1.8 if len(name) == 1 else 0.0)


def _given_names(name: str) -> Iterator[tuple[str, float]]:
    if "□" in name and "之" in name:
        return  # a sign before 之 is the verb that cannot be read
    if len(name) == 1:
        if name != "□":
            yield "name", _SINGLE_NAME
        return
    ending = ending_of(name)
    ahead = _ENDING_AHEAD * _is_studio_ending(name[0])
    if len(name) == 2:
        cost = ahead + _NAME + _rarity(name[0], "first") + _rarity(name[1], "last")
        cost += _FORMULA_SIGN * (_is_formula_sign(name[0]) + _may_be(name[1], _ENDS_WORDS))
        cost += _CLOSER_AS_NAME * _is_closer(name)
        sort = ending and ending.kind == "art" and ending.weight >= 1
        yield "art_name" if sort else "name", cost
    elif ending and ("□" not in name or ending.weight >= 1):
        stem = name[: -len(ending.text)]
        cost = (
            _ENDED_NAME
            + ahead
            + _LINKED_STEM * ("之" in stem)
            + _DOUBTFUL_ENDING * (1 - ending.weight)
            + _long_stem_cost(stem, ending)
        )
        cost += sum(_rarity(char, "first") for char in stem) / 2
        if name[-1] in _AFTER_GIVEN_NAMES and _is_given_name(stem):
            cost += _GIVEN_AND_HONOUR
        cost += _FORMULA_SIGN * sum(map(_is_formula_sign, stem))
        yield f"{ending.kind}_name", cost
    if len(name) == 3:
        yield "name", _LONG_NAME


def _is_studio_ending(char: str) -> bool:
    known = _studio_endings()
    if char not in known:
        ending = ending_of(f"□{char}")
        known[char] = bool(ending and ending.kind == "art" and ending.weight >= 1)
    return known[char]


@tables.compiled
def _studio_endings() -> dict[str, bool]:
    return {}


def _long_stem_cost(stem: str, ending: Ending) -> float:
    """Return what a stem costs that is longer than usual: two signs in 篤雲斎, one in 源七."""
    if ending.kind == "art":
        return _LONG_STEM * max(0, len(stem) - 2)
    return _LONG_EVERYDAY_STEM * (len(stem) - 1)


def _is_given_name(stem: str) -> bool:
    """Return whether two signs are a given name of name readings, both usual in their places."""
    if len(stem) != 2 or "□" in stem:
        return False
    places: tuple[Position, ...] = ("first", "last")
    heads = [choices(char, place)[:1] for char, place in zip(stem, places, strict=True)]
    return all(h and not h[0].is_on and h[0].share >= _MOSTLY for h in heads) and not (
        _rarity(stem[0], "first") or _rarity(stem[1], "last")
    )


def _is_closer(text: str) -> bool:
    return any(word.kind == "closer" for word in words_from(text[0]).get(text, ()))


def _rarity(char: str, place: str) -> float:
    """Return what a character costs for being unusual at this place of a name."""
    if char == "□":
        return 1.0
    found = usualness(char, "first" if place == "first" else "last")
    return max(0.0, _USUAL_CHARACTER - found) * _RARE_CHARACTER
