"""Words of two signs by their Chinese sounds: the reading UniDic has, or one put together.

UniDic may know a word only as somebody's name (明月 Akatsuki), which does not count; nor does a
reading that is not made of Chinese sounds of its signs, softened or cut short as in compounds.

>>> compound("明月").kana, compound("石上").kana, sounds_apart("山河", "さんが")
('めいげつ', 'せきじょう', ('さん', 'が'))
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.reading.spelling import hiragana

if TYPE_CHECKING:
    from fugashi import GenericTagger

_CLEAR = "かきくけこさしすせそたちつてとはひふへほ"
_VOICED = dict(zip(_CLEAR, "がぎぐげござじずぜぞだぢづでどばびぶべぼ", strict=True))
_HARD = dict(zip("はひふへほ", "ぱぴぷぺぽ", strict=True))
_NUMBERS = ("いち", "に", "さん", "し", "ご", "ろく", "しち", "はち", "く", "じゅう")
_VOWELS = tuple("あいうえお")
_CUT_SHORT = ("つ", "く", "ち", "き")
# Every word MeCab finds, with what the path to it costs; those over all of a text are asked for.
_EVERY_WORD = r"-a -F '%m\t%pc\t%H\n' -U '' -E ''"
_ORIGIN, _CHINESE = 12, "漢"  # UniDic's field of where a word is from
_OF_DOING, _PLACE_NAME = "サ変可能", "地名"
_SPELLING = 17  # UniDic's field of how it is spelled in kana


class ChineseCompound(NamedTuple):
    """How two signs are read as one word, and whether the dictionary has the word.

    In ``kana`` a bar stands before a vowel that begins the second sign: はく|うん.
    """

    kana: str
    known: bool
    is_verb: bool = False  # a word of doing: 浮動す


@tables.cached(4096)
def compound(text: str) -> ChineseCompound:
    """Return the reading of two signs as one word of Chinese sounds."""
    for kana, is_verb in _readings_in_unidic(text):
        if sounds := sounds_apart(text, kana):
            return ChineseCompound(with_bars(sounds), known=True, is_verb=is_verb)
    return ChineseCompound(_put_together(first_sound(text[0]), text[1]), known=False)


def _put_together(first: str, sign: str) -> str:
    """Return two sounds as one word: いち and けん make いっけん, げつ and こう げっこう."""
    sound = "がつ" if sign == "月" and first in _NUMBERS else first_sound(sign)
    if first[-1:] in ("つ", "ち") and len(first) > 1 and sound[:1] in _CLEAR:
        return first[:-1] + "っ" + _HARD.get(sound[0], sound[0]) + sound[1:]
    return with_bars((first, sound))


def with_bars(sounds: Iterable[str]) -> str:
    """Return sounds as one word, a bar before each vowel that begins one.

    >>> with_bars(["はく", "うん"]), with_bars(["せい", "ふう"])
    ('はく|うん', 'せいふう')
    """
    found = ""
    for sound in sounds:
        found += f"|{sound}" if found and sound[:1] in _VOWELS else sound
    return found


def first_sound(sign: str) -> str:
    """Return the usual Chinese sound of a sign, its native reading if it has none, or itself."""
    from inscribe.forms import readings

    found = readings(sign)
    sounds = found.on or tuple(kun.partition(".")[0].strip("-") for kun in found.kun)
    return hiragana(sounds[0]) if sounds else sign


@tables.cached()
def sounds_in_compounds(sign: str) -> tuple[str, ...]:
    """Return the Chinese sounds of a sign as they may stand in a word, the usual ones first."""
    from inscribe.forms import readings

    return as_in_compounds(hiragana(on) for on in readings(sign).on)


def as_in_compounds(sounds: Iterable[str]) -> tuple[str, ...]:
    """Return sounds with the forms they take in a word: voiced, hard, or cut short.

    >>> as_in_compounds(["はつ"])
    ('はつ', 'はっ', 'ばつ', 'ばっ', 'ぱつ', 'ぱっ')
    """
    found: list[str] = []
    for sound in filter(None, sounds):
        heads = dict.fromkeys((sound[0], _VOICED.get(sound[0], ""), _HARD.get(sound[0], "")))
        for head in filter(None, heads):
            whole = head + sound[1:]
            found.append(whole)
            if len(whole) > 1 and whole.endswith(_CUT_SHORT):
                found.append(whole[:-1] + "っ")
    return tuple(dict.fromkeys(found))


def sounds_apart(text: str, kana: str) -> tuple[str, ...]:
    """Return what each sign of ``text`` is read, or nothing if ``kana`` is not Chinese sounds."""
    if not text:
        return ()
    if len(text) == 1:
        return (kana,) if kana in sounds_in_compounds(text) else ()
    for sound in sounds_in_compounds(text[0]):
        if kana.startswith(sound) and (rest := sounds_apart(text[1:], kana[len(sound) :])):
            return (sound, *rest)
    return ()


def _readings_in_unidic(text: str) -> list[tuple[str, bool]]:
    """Return the readings UniDic has for a Chinese word or a place, and whether it is of doing."""
    found: list[tuple[int, str, bool]] = []
    for line in _tagger().parse(text).split("\n"):
        written, _, told = line.partition("\t")
        cost, _, feature = told.partition("\t")
        fields = feature.split(",")
        if written != text or len(fields) <= _SPELLING:
            continue
        if fields[_ORIGIN] == _CHINESE or fields[2] == _PLACE_NAME:
            found.append((int(cost), hiragana(fields[_SPELLING]), fields[2] == _OF_DOING))
    found.sort(key=lambda each: each[0])
    return [(kana, of_doing) for _, kana, of_doing in found]


@tables.cached()
def _tagger() -> GenericTagger:
    from inscribe.reading import mecab

    return mecab.opened_tagger(mecab.folder(), _EVERY_WORD)
