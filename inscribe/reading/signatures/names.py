"""What kinds of name a stretch of a signature could be, each with its price: the usual is cheap.

>>> [kind for kind, cost in names_it_could_be("綾国") if cost < 3]
['name']
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import scripts, tables
from inscribe.reading.names import (
    Ending,
    Position,
    choices,
    ending_of,
    is_family_written_out,
    is_said_alone,
    known,
    own_names,
    place_names,
    surnames,
    usualness,
)
from inscribe.reading.words import words_from, words_of

_WOMEN = frozenset("女娘妻母妹姉室")
_NAME = 2.2  # an art name of two usual characters
_RARE_CHARACTER = 0.55  # for each step by which a character is less usual in its place
_USUAL_CHARACTER = 3.6  # from this usualness on a character costs nothing
_SINGLE_NAME, _SAID_ALONE = 5.2, 2.2
_ENDED_NAME = 2.0  # with a studio or everyday ending
_STEM_OF_TWO = 0.4  # 篤雲斎 against 篤斎
_LONG_STEM = 4.2  # for each character more before an ending than is usual
_DOUBTFUL_ENDING = 4.0
_LONG_EVERYDAY_STEM = 1.5  # 久米吉
_FAMILY_AS_STEM = 2.0  # 安藤 in 安藤三右衛門 is the family
_TOO_LONG_STEM = 4.0  # for each character more than two
_ENDING_AHEAD = 3.0  # 斎, 軒, 堂 end names and seldom begin one
_LINKED_STEM = 2.5  # a 之 within a stem (十二支之内)
_AFTER_GIVEN_NAMES = "翁子叟"  # said of a man: 綾国翁 is old Ayakuni
_LORDS = ("君", "殿")  # 楓渓君 is no family 楓 and a name 渓君
_GIVEN_AND_HONOUR = 3.4
_RARE_NAME = 1.0  # a name rarer than this is no given name for sure
_MOSTLY = 0.7  # the share of a reading that is the usual one
_LONG_NAME = 8.0  # three characters without a known pattern
SURNAME = 1.3
_SINGLE_SURNAME, _SINGLE_OF_FAMILIES = 1.8, 0.2  # 轟, 筧: signs that hardly begin a given name
_BEGINS_NAMES, _SELDOM = 0.6, 0.9  # for each step of usualness in front of names above the second
_LONG_SURNAME = 0.7  # for each sign more than two a listed surname is seldom there by chance
_SURNAME_OF_DICTIONARY = 2.9
_KANA_IN_FAMILIES = "ノケヶ"
_UNLISTED_SURNAME = 5.0
_LONG_UNLISTED = 3.6  # for the third sign: ENAMDICT has nearly every such family
_HOUSE = "屋"  # of tradesmen's houses: 吉川屋, 伊勢屋
_LISTED_HOUSE = 1.8
_HOUSE_NAME = 3.2
# The last signs of most surnames of two signs in UniDic, without those that end given names.
_ENDS_OF_SURNAMES = frozenset(
    "田川野山谷井原木島村沢本岡崎尾藤内森部坂口瀬戸倉見津間屋上松橋江宮浦塚林沼賀池"
)
_WORN_SURNAME, _HALF_WORN_SURNAME = 2.8, 4.5
_LIKE_A_NAME = 1.5
_CLOSER_AS_NAME = 2.0  # 筆意, 所望: words of the formulas, hardly names
_RESPECT, _WISHES = frozenset({"honorific"}), frozenset({"closer:patron"})
_WORD_IN_SURNAME = 2.5  # 門 or 需 makes a surname of three signs that no list has unlikely
_BEFORE_NAMES = frozenset({"adverb", "closer:patron", "appraised"})
_AROUND_NAMES = _BEFORE_NAMES | {"relation"}
_ENDS_IN_DEED = 2.0  # 加 or 観 ends a name of three signs that no list has less likely than a deed
_DEEDS = frozenset({"transitive"})
_END_NO_SURNAME = _DEEDS | {"joiner"}
_DEED_CLOSED, _CLOSING = 1.5, frozenset({"closing", "object"})  # 観之, 染了: rather deeds
_OWN_NAME = 0.3
_OFFICE_ENDING = 0.5  # 兵衛尉 is there by no chance
_CLAN_AHEAD = 2.5  # 源楯房 is Tatefusa of the Minamoto
_OPENER_OF_PLACES = 2.5  # 於 begins no name
FORMULA_SIGN = 2.0  # a sign of the formulas (作 住 於) within a name
_ENDS_WORDS = frozenset({"verb", "residence"})  # of the formula signs those that end something
_FORMULA_KINDS = frozenset({"verb", "opener", "residence"})
_PIECE_KINDS = {
    "given": "name",
    "art": "art_name",
    "common": "common_name",
    "surname": "surname",
    "name": "name",
}


def names_it_could_be(name: str) -> Iterator[tuple[str, float]]:
    """Yield the kinds of name a stretch could be, with their prices."""
    if own := own_names().get(name):
        yield _PIECE_KINDS.get(own[0].kind, "name"), _OWN_NAME
    yield from _given_names(name)
    if surnames(name):
        yield "surname", _surname_cost(name)
    elif 1 < len(name) < 5 and name[-1] == _HOUSE and "□" not in name:
        cost = _LISTED_HOUSE if _is_of_surname_or_place(name[:-1]) else _HOUSE_NAME
        yield "surname", cost + formula_signs_cost(name)
    elif len(name) == 2 and name[1] == "□" and is_kanji(name[0]):
        yield "surname", _HALF_WORN_SURNAME
    elif len(name) == 2 and name[0] == "□" and name[1] in _ENDS_OF_SURNAMES:
        yield "surname", _WORN_SURNAME
    elif len(name) < 5 and "□" not in name and _is_known_family(name):
        yield "surname", _dictionary_surname_cost(name)
    elif 1 < len(name) < 4 and "□" not in name:
        yield "surname", _unlisted_surname_cost(name)


def _is_known_family(name: str) -> bool:
    if len(name) == 1 and max(usualness(name, "first"), usualness(name, "last")) > 0:
        return False  # 露 rather begins an art name; 鱸 does not
    return bool(known(name).surname) or (len(name) > 2 and is_family_written_out(name))


def is_name_character(char: str) -> bool:
    """Return whether a character may stand in a name: a kanji, or a sign that cannot be read."""
    return char == "□" or is_kanji(char)


def is_kanji(char: str) -> bool:
    """Return whether a character is a kanji or 々."""
    return scripts.is_kanji(char) or char == "々"


def _surname_cost(name: str) -> float:
    usual = SURNAME + min(1.1, max(0.0, (surnames(name)[0][1] - 6500) / 2500))
    if len(name) == 1:
        begins_names = _BEGINS_NAMES * max(0.0, usualness(name, "first") - _SELDOM)
        return usual + min(_SINGLE_SURNAME, _SINGLE_OF_FAMILIES + begins_names)
    return usual - _LONG_SURNAME * max(0, len(name) - 2)


def _dictionary_surname_cost(name: str) -> float:
    longer = _LONG_SURNAME * max(0, len(name) - 2)
    return _SURNAME_OF_DICTIONARY - longer + formula_signs_cost(name) / 4


def family_with_kana(name: str) -> float | None:
    """Return the price of a family written with ノ or ケ (塩ノ崎), None for what is none."""
    inside = name[1:-1]
    if not any(sign in inside for sign in _KANA_IN_FAMILIES) or not known(name).surname:
        return None
    return _dictionary_surname_cost(name)


def _unlisted_surname_cost(name: str) -> float:
    cost = _UNLISTED_SURNAME + _LONG_UNLISTED * (len(name) - 2)
    if len(name) == 2:  # what would make a good art name is the less likely a surname
        cost += max(0.0, _LIKE_A_NAME - _rarity(name[0], "first") - _rarity(name[1], "last"))
    if len(name) == 3 or may_be(name[0], _BEFORE_NAMES):
        cost += _WORD_IN_SURNAME * any(may_be(char, _AROUND_NAMES) for char in name)
    if len(name) == 3:
        cost += _ENDS_IN_DEED * may_be(name[-1], _END_NO_SURNAME)
    return cost + formula_signs_cost(name)


def _is_of_surname_or_place(name: str) -> bool:
    return bool(surnames(name)) or is_known_place(name) or bool(place_names(name))


def is_womans(text: str, first: int, end: int) -> bool:
    """Return whether a sign is a woman's name: after what she is to somebody.

    >>> is_womans("三輪氏女綾", 4, 5), is_womans("三輪綾", 2, 3)
    (True, False)
    """
    return end == first + 1 and first > 1 and text[first - 1] in _WOMEN


def is_known_place(name: str) -> bool:
    """Return whether a stretch is a province, town or quarter of the tables."""
    words = words_from(name[0]).get(name, ())
    return any(word.kind in ("place", "city", "quarter") for word in words)


def _given_names(name: str) -> Iterator[tuple[str, float]]:
    if "□" in name and "之" in name:
        return  # a sign before 之 is the verb that cannot be read
    if len(name) == 1:
        if name != "□":
            yield "name", _SAID_ALONE if is_said_alone(name) else _SINGLE_NAME
        return
    ending = ending_of(name)
    ahead = _ENDING_AHEAD * _is_studio_ending(name[0])
    if len(name) == 2:
        cost = ahead + _NAME + _rarity(name[0], "first") + _rarity(name[1], "last")
        cost += FORMULA_SIGN * (is_formula_sign(name[0]) + may_be(name[1], _ENDS_WORDS))
        cost += _OPENER_OF_PLACES * (name[0] in "於于")
        cost += _DEED_CLOSED * (may_be(name[0], _DEEDS) and may_be(name[1], _CLOSING))
        cost += _CLOSER_AS_NAME * _is_closer(name) + _GIVEN_AND_HONOUR * (name[1] in _LORDS)
        cost += _CLOSER_AS_NAME * (name[1] == "之" and may_be(name[0], _RESPECT))  # 君之嘱
        cost += _CLOSER_AS_NAME * (name[0] == "之" and may_be(name[1], _WISHES))  # 之好
        if ending and ending.kind == "art" and ending.weight >= 1:
            yield "art_name", min(cost, _ENDED_NAME + ahead + _rarity(name[0], "first") / 2)
        else:
            yield "name", cost
    elif ending and ("□" not in name or ending.weight >= 1):
        stem = name[: -len(ending.text)]
        cost = (
            _ENDED_NAME
            + ahead
            + _LINKED_STEM * ("之" in stem)
            + _DOUBTFUL_ENDING * (1 - ending.weight)
            + _long_stem_cost(stem, ending)
            - _OFFICE_ENDING * (" の " in ending.kana[0])
            + _CLAN_AHEAD * (len(name) == 3 and name[0] in "源平橘" and ending.weight < 1)
        )
        cost += sum(_rarity(char, "first") for char in stem) / 2
        if name[-1] in _AFTER_GIVEN_NAMES and (_is_given_name(stem) or surnames(stem)):
            cost += _GIVEN_AND_HONOUR
        cost += FORMULA_SIGN * sum(map(is_formula_sign, stem))
        yield f"{ending.kind}_name", cost
    if len(name) == 3:
        cost = FORMULA_SIGN * sum(map(is_formula_sign, name))
        cost += _ENDS_IN_DEED * may_be(name[-1], _DEEDS)
        yield "name", _LONG_NAME + cost + _OPENER_OF_PLACES * (name[0] in "於于")


def _long_stem_cost(stem: str, ending: Ending) -> float:
    """Return what a stem costs that is longer than usual: two signs in 篤雲斎, one in 源七."""
    if ending.kind == "art":
        return _STEM_OF_TWO * (len(stem) > 1) + _LONG_STEM * max(0, len(stem) - 2)
    is_family = len(stem) > 1 and len(ending.text) > 2 and bool(surnames(stem))
    return (
        _FAMILY_AS_STEM * is_family
        + _LONG_EVERYDAY_STEM * (len(stem) - 1)
        + _TOO_LONG_STEM * max(0, len(stem) - 2)
    )


@tables.cached()
def _is_studio_ending(char: str) -> bool:
    ending = ending_of(f"□{char}")
    return bool(ending and ending.kind == "art" and ending.weight >= 1)


def _is_given_name(stem: str) -> bool:
    """Return whether two signs are a given name of name readings, both usual in their places."""
    if len(stem) != 2 or "□" in stem:
        return False
    places: tuple[Position, ...] = ("first", "last")
    heads = [choices(char, place)[:1] for char, place in zip(stem, places, strict=True)]
    rarity = _rarity(stem[0], "first") + _rarity(stem[1], "last")
    by_kun = all(h and not h[0].is_on and h[0].share >= _MOSTLY for h in heads)
    return by_kun and rarity <= _RARE_NAME


def _rarity(char: str, place: str) -> float:
    """Return what a character costs for being unusual at this place of a name."""
    if char == "□":
        return 1.0
    found = usualness(char, "first" if place == "first" else "last")
    return max(0.0, _USUAL_CHARACTER - found) * _RARE_CHARACTER


def may_be(char: str, kinds: frozenset[str]) -> bool:
    """Return whether a sign alone may be a word of one of the classes."""
    found = words_from(char).get(char, ())
    return any(word.kind in kinds or f"{word.kind}:{word.family}" in kinds for word in found)


def _is_closer(text: str) -> bool:
    return any(word.kind == "closer" for word in words_of(text))


def formula_signs_cost(name: str) -> float:
    """Return what it costs a surname or a place to hold signs of the formulas."""
    return 2 * FORMULA_SIGN * sum(map(is_formula_sign, name))


@tables.cached()
def is_formula_sign(char: str) -> bool:
    """Return whether a sign alone is a verb, an opener or a word of residence."""
    return any(w.kind in _FORMULA_KINDS for w in words_from(char).get(char, ()))
