"""Letters and box notes in the polite written style (候文), put into Japanese order.

Verbs stand in kanji without their endings, and auxiliaries stand before their verb as in Chinese
(不, 可, 被) or behind it (候, 度). What follows decides each ending, so the words are found first
and conjugated from the last to the first. What is none of these is left to the reader of prose.

>>> from inscribe.reading.words import romaji_of
>>> from inscribe.reading.mecab import unidic_words
>>> for text in ("右拝領仕候", "可被下候", "不可怠", "相違無之候"):
...     print(romaji_of(letter_words(text, unidic_words)[0]))
migi hairyō tsukamatsuri sōrō
kudasarubeku sōrō
okotarubekarazu
sōi kore naku sōrō
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.spelling import KANA
from inscribe.reading.words import ReadWord
from inscribe.scripts import is_kanji

_PLAIN = ("候", "如件")  # with one of these a text is such a letter
_TURNING = frozenset("不可被令")
# Asked of few texts, and a wide class takes a millisecond to prepare: compiled when needed.
_TWO_KANJI = "[\u4e00-\u9fff]{2}"
_NOUN_DONE = "[\u4e00-\u9fff]{2}(?:候|者|間敷|$)"
_LONGEST = 4
_PARTICLES = {"者": "わ", "江": "え", "与": "と", "茂": "も", "之": "の", "而": "て"}
_KANA_PARTICLES = {"ニ": "に", "ハ": "わ", "ヲ": "お", "ノ": "の", "モ": "も", "ト": "と"}
_OTHER = "other"
_WHOLE = "whole"  # of a stretch that ends there
_OBJECT = "object"  # 之 behind its verb
_ROWS = dict(zip("アカガサザタダナハバマヤラワ", range(14), strict=True))
_VOWELS = (
    "あかがさざただなはばまやらわ",
    "いきぎしじちぢにひびみいりい",
    "うくぐすずつづぬふぶむゆるう",
    "えけげせぜてでねへべめえれえ",
)
_SPOKEN = str.maketrans("はひふへぢづ", "わいうえじず")
# The vowel of the stem before each ending, and the rest: irrealis, conjunctive, final, attributive.
_FORMS = {
    "四段": ((0, ""), (1, ""), (2, ""), (2, "")),
    "下二": ((3, ""), (3, ""), (2, ""), (2, "る")),
    "サ変": ((3, ""), (1, ""), (2, ""), (2, "る")),
    "ラ変": ((0, ""), (1, ""), (1, ""), (2, "")),
}
_OF_THINGS = frozenset("者事物所儀段間付様由故也")  # before these 不 is attributive
_SAHEN = {"べ": "す ", "ず": "せ", "る": "せ", "しむ": "せ"}  # 可秘蔵: 秘蔵 す べし
_SAHEN_OF = {head + kana: (head, kana) for kana, head in _SAHEN.items()}
_MIZEN, _RENYO, _SHUSHI, _RENTAI = range(4)


class _Bit(NamedTuple):
    """A word as found: its signs' offsets, what it is, its kana or stem."""

    first: int
    end: int
    kind: str
    kana: str


def is_letter(text: str) -> bool:
    """Whether a text is in the polite written style, or turns auxiliaries and verbs among kana.

    >>> [is_letter(text) for text in ("拝領仕候", "花の色は", "鏨ニ不可打", "不動明王ノ図")]
    [True, False, True, False]
    """
    if any(word in text for word in _PLAIN):
        return True
    mixed = KANA.search(text) or text.endswith("者也")
    if not mixed or _TURNING.isdisjoint(text):
        return False
    turned = any(sign in _TURNING and is_kanji(then) for sign, then in pairwise(text))
    return turned and _is_turned(text)


def _is_turned(text: str) -> bool:
    """Whether an auxiliary stands before a verb, and the two are no word of the dictionary."""
    from inscribe.reading.mecab import unidic_words

    for turned, verb in pairwise(_bits(text)):
        verbal = _is_verb(verb) or verb.kind in (_OTHER, "before")
        if turned.kind == "before" and verbal:
            words = unidic_words(text[turned.first : turned.first + 2])
            if len(words) > 1 or not words[0].known:
                return True
    return False


def letter_words(
    text: str, words_of: Callable[[str], list[ReadWord]]
) -> tuple[list[ReadWord], list[int]]:
    """Return the words in Japanese order, and the offset that each of their signs has in the text.

    ``words_of`` reads what is no word of letters.
    """
    words: list[ReadWord] = []
    order: list[int] = []
    bits = _bits(text)
    at = 0
    while at < len(bits):
        group, after = _group(bits, at)
        for bit, kana in _conjugated(group, bits[after] if after < len(bits) else None, text):
            signs = text[bit.first : bit.end]
            words += words_of(signs) if bit.kind == _OTHER else _said(signs, kana, bit.kind)
            order += range(bit.first, bit.end)
        at = after
    return words, order


def _said(signs: str, kana: str, kind: str) -> list[ReadWord]:
    if kind == "particle":
        return [ReadWord(signs, kana, "助詞-格助詞")]
    pos = {"before": "助動詞", "after": "助動詞"}.get(kind, "名詞-普通名詞-一般")
    return [ReadWord(signs, kana, "動詞-一般" if kind in _conjugations() else pos)]


def _bits(text: str) -> list[_Bit]:
    """Return the words of a text, the longest first; what is no word of letters in one piece."""
    bits: list[_Bit] = []
    at = 0
    while at < len(text):
        found = _found(text, at, bits)
        if found is None:
            if bits and bits[-1].kind in ("before", "governs"):
                end = min(at + 2, len(text))  # its noun or verb, of two signs
                bits.append(_Bit(at, end, _OTHER, _WHOLE))
                at = end
                continue
            if bits and bits[-1].kind == _OTHER and bits[-1].kana != _WHOLE:
                bits[-1] = bits[-1]._replace(end=at + 1)
            else:
                bits.append(_Bit(at, at + 1, _OTHER, ""))
            at += 1
        else:
            bits.append(found)
            at = found.end
    return bits


def _found(text: str, at: int, before: list[_Bit]) -> _Bit | None:
    known = _table()
    if before and before[-1].kind == "governs":
        return None
    if text[at] == "之" and before and _is_verb(before[-1]):
        return _Bit(at, at + 1, _OBJECT, "これ を")
    for end in range(min(len(text), at + _LONGEST), at, -1):
        for kind, kana in known.get(text[at:end], ()):
            bit = _Bit(at, end, kind, kana)
            if kind == "word" or _bends_here(text, bit, before):
                return bit
    sign = text[at]
    if sign in _PARTICLES and at and _is_particle(text, at):
        return _Bit(at, at + 1, "particle", _PARTICLES[sign])
    alone = at and is_kanji(text[at - 1]) and not KANA.match(text[at + 1 : at + 2])
    if alone and sign in _KANA_PARTICLES:
        return _Bit(at, at + 1, "particle", _KANA_PARTICLES[sign])
    return None


def _is_particle(text: str, at: int) -> bool:
    """Whether a borrowed sign stands for a particle: behind a word, and something follows."""
    sign, after = text[at], text[at + 1 : at + 2]
    if sign == "者":
        return bool(after) and after not in "也に之を共"
    if sign == "江":
        return is_kanji(text[at - 1]) and after not in ("戸", "府", "州", "都")
    return bool(after)


def _bends_here(text: str, bit: _Bit, before: list[_Bit]) -> bool:
    """Whether a word that bends stands where one can: behind or before what bends with it."""
    if bit.kind == "before":
        verb = any(text.startswith(verb, bit.end) for verb in _verbs_and_turned())
        return verb or bool(re.match(_NOUN_DONE, text[bit.end :]))
    if bit.kind == "governs":
        free = not bit.first or not is_kanji(text[bit.first - 1]) or bit.kana.startswith("を")
        return free and bool(re.match(_TWO_KANJI, text[bit.end :]))
    if bit.kind == "after":
        return bool(before) and _is_verb(before[-1])
    turned = bool(before) and before[-1].kind == "before"
    return turned or "之" in text[bit.first : bit.end] or bool(_follows().match(text, bit.end))


@tables.cached()
def _follows() -> re.Pattern[str]:
    """Return what tells that kanji before it are a verb."""
    return re.compile("候|度|間敷|而|被|可|奉|仕|申候|置候|遣候|之(?:者也|候|$)")


@tables.cached()
def _verbs_and_turned() -> tuple[str, ...]:
    kinds = {*_conjugations(), "before"}
    return tuple(w for w, said in _table().items() if any(kind in kinds for kind, _ in said))


@tables.cached()
def _conjugations() -> frozenset[str]:
    return frozenset(
        kind for said in _table().values() for kind, _ in said if kind[:2] in _FORMS or kind == "ク"
    )


@tables.cached()
def _table() -> dict[str, tuple[tuple[str, str], ...]]:
    found: dict[str, tuple[tuple[str, str], ...]] = {}
    for row in tables.rows("letter_words"):
        said = (row["class"], row["kana"])
        found[row["written"]] = (*found.get(row["written"], ()), said)
    return found


def _is_verb(bit: _Bit) -> bool:
    return bit.kind in _conjugations()


def _group(bits: list[_Bit], at: int) -> tuple[list[_Bit], int]:
    """Return the words from ``at`` on that are read together, in Japanese order, and their end.

    Auxiliaries before a verb come behind it, the last of them first: 可被下 is 下 被 可; so does
    what governs a noun, and 之 behind a verb comes before it.
    """
    turned: list[_Bit] = []
    while at < len(bits) and bits[at].kind in ("before", "governs"):
        turned.append(bits[at])
        at += 1
    if at == len(bits):
        return turned, at
    if turned and bits[at].kind == _OTHER and turned[-1].kind == "before":
        turned[-1] = turned[-1]._replace(kana=_SAHEN[turned[-1].kana] + turned[-1].kana)
    if not turned and _is_verb(bits[at]) and at + 1 < len(bits) and bits[at + 1].kind == _OBJECT:
        return [bits[at + 1], bits[at]], at + 2
    return [bits[at], *reversed(turned)], at + 1


def _conjugated(group: list[_Bit], following: _Bit | None, text: str) -> Iterator[tuple[_Bit, str]]:
    """Yield the words of a group with their kana, each in the form that what follows wants."""
    said: list[tuple[_Bit, str]] = []
    form = _form_before(following, text, group[-1])
    for at in range(len(group) - 1, -1, -1):
        bit = group[at]
        after = said[-1][0] if said else None
        kana, form = _in_form(bit, form, after, group[at - 1] if at else None)
        said.append((bit, kana))
    yield from reversed(said)


def _form_before(following: _Bit | None, text: str, last: _Bit) -> int:
    """Return the form of what bends before what follows: conjunctive before 候 and verbs.

    What is negated is an adverb before other nouns than 者 and 事: 不残揃, nokorazu soroi.
    """
    if following is None:
        return _SHUSHI
    sign = text[following.first]
    if sign in "候度而" or _is_verb(following) or following.kana in _ADVERBS:
        return _RENYO
    if text.startswith("間敷", following.first):
        return _RENTAI if last.kind == "ラ変" else _SHUSHI
    return _RENYO if last.kana == "ず" and sign not in _OF_THINGS else _RENTAI


_ADVERBS = frozenset(("ありがたく", "かたじけなく"))


def _in_form(bit: _Bit, form: int, after: _Bit | None, before: _Bit | None) -> tuple[str, int]:
    """Return the kana of a word in a form, and the form that it wants of what stands before."""
    if bit.kind not in ("before", "after"):
        return (_bent(bit, form) if _is_verb(bit) else bit.kana), form
    exists = before is not None and before.kind == "ラ変"
    head, kana = _SAHEN_OF.get(bit.kana, ("", bit.kana))
    if kana == "べ":
        negated = after is not None and after.kana == "ず"
        said = "べから" if negated else ("", "べく", "べし", "べき")[form]
        return head + said, _RENTAI if exists else _SHUSHI
    if kana == "ず":
        return head + ("", "ず", "ず", "ざる")[form], _MIZEN
    if kana == "る":
        long = head or (before is not None and not before.kind.startswith(("四段", "ラ変")))
        return head + "ら" * bool(long) + ("れ", "れ", "る", "るる")[form], _MIZEN
    if kana == "しむ":
        return head + ("しめ", "しめ", "しむ", "しむる")[form], _MIZEN
    ends = ("から", "く", "し", "き") if kana != "まじ" else ("から", "く", "", "き")
    return kana + ends[form], (_RENTAI if exists else _SHUSHI) if kana == "まじ" else _RENYO


def _bent(bit: _Bit, form: int) -> str:
    if bit.kind == "ク":
        return bit.kana + ("から", "く", "し", "き")[form]
    vowel, rest = _FORMS[bit.kind[:2]][form]
    row = _ROWS[bit.kind[2:] or "ラ"]
    return bit.kana + _VOWELS[vowel][row].translate(_SPOKEN) + rest
