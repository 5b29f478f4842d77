"""How a word of today was spelt in kana before 1946: the rules of old spelling run backwards.

One sound had several spellings, and only the word tells which was its own. For finding a
word in an old text that does not matter: every spelling the rules allow is made, with a cost
(in MeCab's units) that says how far-fetched it is.

>>> [old for old, cost in old_spellings("しょう")][:4]
['しやう', 'しゃう', 'せう', 'せふ']
>>> old_spellings("ちがい")
(('ちがひ', 0), ('ちがゐ', 150))
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

Option = tuple[str, int]

_MOST = 12  # spellings of one word
_FARTHEST = 1500  # cost above which a spelling is not made

_O_TO_A = dict(zip("おこそとのほもよろごぞどぼぽ", "あかさたなはまやらがざだばぱ", strict=True))
_I_TO_E = dict(zip("きしちにひみりぎじびぴ", "けせてねへめれげぜべぺ", strict=True))
_SMALL = {"っ": "つ", "ゃ": "や", "ゅ": "ゆ", "ょ": "よ"}
_INSIDE = {
    "わ": (("は", 0),),
    "い": (("ひ", 0), ("ゐ", 150)),
    "う": (("ふ", 0),),
    "え": (("へ", 0), ("ゑ", 100)),
    "お": (("ほ", 0), ("を", 200), ("ふ", 500)),
}
_CHINESE = {"い": (("ゐ", 0),), "え": (("ゑ", 0),), "お": (("を", 200),)}
_START = {"い": (("ゐ", 0),), "え": (("ゑ", 0),)}
_ANYWHERE = {"じ": (("ぢ", 0),), "ず": (("づ", 0),)}


def old_spellings(
    modern: str, *, inside: bool = False, chinese: bool = False, wo: bool = False
) -> tuple[Option, ...]:
    """Return the old spellings of a word in current spelling, with their costs, likeliest first.

    With ``inside``, more of the word stands before (a kanji, a stem). ``chinese`` lets か be くわ,
    ``wo`` lets the first お be を. っ ゃ ゅ ょ are all written large or all small. Anything that is
    not hiragana stands as it is; the word itself is not among the spellings.
    """
    found: dict[str, int] = {}
    for large in (True, False) if any(sign in _SMALL for sign in modern) else (True,):
        units = list(_units(modern, inside, chinese, wo, large))
        for choice in product(*(_fewer(options, units) for options in units)):
            cost = sum(cost for _, cost in choice)
            spelling = "".join(kana for kana, _ in choice)
            if cost <= _FARTHEST and cost < found.get(spelling, _FARTHEST + 1):
                found[spelling] = cost
    found.pop(modern, None)
    return tuple(sorted(found.items(), key=lambda item: item[1])[:_MOST])


def _fewer(options: tuple[Option, ...], units: list[tuple[Option, ...]]) -> tuple[Option, ...]:
    open_units = sum(len(unit) > 1 for unit in units)
    return options if open_units <= 3 else options[: 3 if open_units <= 5 else 2]


def _units(
    modern: str, inside: bool, chinese: bool, wo: bool, large: bool
) -> Iterator[tuple[Option, ...]]:
    """Cut a word into what is spelt as one, each with its spellings, its own among them."""
    position = 0
    while position < len(modern):
        rest = modern[position:]
        further = inside or position > 0
        for length, options in (
            (3, _glide_and_long(rest[:3], large)),
            (2, _glide(rest[:2], large) or _long(rest, further, chinese)),
            (1, _single(rest[0], further, chinese, wo, large)),
        ):
            if options:
                yield options
                position += length
                break


def _glide_and_long(three: str, large: bool) -> tuple[Option, ...]:
    """きょう, きゅう: きやう けう けふ, きう きふ."""
    first, rest = three[:1], three[1:]
    if first not in _I_TO_E or rest not in ("ょう", "ゅう"):
        return ()
    if rest == "ゅう":
        found = [(first + "う", 0), (first + "ふ", 100), (first + ("ゆう" if large else rest), 100)]
        return (*found, *([("ぢう", 200), ("ぢゆう", 200)] if first == "じ" else ()))
    e = _I_TO_E[first]
    found = [(first + ("やう" if large else "ゃう"), 0), (e + "う", 100), (e + "ふ", 200)]
    found.append((first + ("よう" if large else rest), 200))
    return (*found, *([("ぢやう", 100), ("でう", 300)] if first == "じ" else ()))


def _glide(two: str, large: bool) -> tuple[Option, ...]:
    """きゃ きゅ きょ, the second kana once written large; じゃ is also ぢや."""
    if len(two) < 2 or two[0] not in _I_TO_E or two[1] not in "ゃゅょ":
        return ()
    second = _SMALL[two[1]] if large else two[1]
    return tuple((first + second, 0) for first in ("じぢ" if two[0] == "じ" else two[0]))


def _long(rest: str, further: bool, chinese: bool) -> tuple[Option, ...]:
    """こう: かう かふ くわう; ゆう: いう いふ ゆふ."""
    o, two = rest[:1], rest[:2]
    if len(two) < 2 or two[1] != "う":
        return ()
    if o == "ゆ":
        return ((two, 0), ("いう", 200), ("ゆふ", 0), ("いふ", 400))
    if o not in _O_TO_A:
        return ()
    a = _O_TO_A[o]
    found = [(a + "う", 0), (two, 0), (o + "ふ", 800)]
    if chinese or len(rest) > 2:
        found.append((a + "ふ", 200 if chinese else 1000))
    if o == "お":
        found += [("わう", 0), ("をう", 300)]
        found += [("はう", 0)] if further else []
    if o == "よ":
        found += [("えう", 200), ("えふ", 400)]
    if o in "こご":
        found.append(("くわう" if o == "こ" else "ぐわう", 300))
    return tuple(found)


def _single(sign: str, further: bool, chinese: bool, wo: bool, large: bool) -> tuple[Option, ...]:
    if sign in _SMALL:
        return ((_SMALL[sign] if large else sign, 0),)
    vowels = _START if not further else _CHINESE if chinese else _INSIDE
    found = [*_ANYWHERE.get(sign, ()), *vowels.get(sign, ())]
    if wo and not further and sign == "お":
        found.append(("を", 0))
    if chinese and sign in "かが":
        found.append(("くわ" if sign == "か" else "ぐわ", 300))
    return (*found, (sign, 0))
