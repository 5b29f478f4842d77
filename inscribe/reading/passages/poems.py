"""What speaks for verse, and for prose: both are Japanese sentences, and verse keeps a metre."""

from __future__ import annotations

import re

from inscribe.reading.passages.language import weight_as_language
from inscribe.reading.passages.proverbs import proverb_words
from inscribe.reading.spelling import KANA, morae
from inscribe.reading.verse import PARTS, VerseReading, fitted_phrases, read_verse
from inscribe.reading.words import MARK, kana_in_formulas

_WHOLE = {"tanka": 9.0, "haiku": 4.0, "sedōka": 3.0}  # log odds that a kept metre is no chance
_PART = 1.5
_CHANCE_PART = -1.5  # two phrases that no column parts: many a motto is of 7-7 morae
_CLASSICAL_END = re.compile("(?:けりな?|ら[むん]|け[むん]|けらし|かな|ぬる|つる|もがな)$")
_HARDLY_KEPT = 10_000
_METRE_UNIT = 900.0  # of the cost of a metre that is kept badly
_IN_COLUMNS = 2.0  # columns end where phrases end
_BROKEN_OFF = 2.5  # two phrases before a gap, or after it
_CUTTING = re.compile("(?:かな|哉|けり|鳬|けりな)$")
_CUT_EARLY = re.compile("^[^やヤ]{2,6}[やヤ]")
_CUTTING_WORD = 4.0  # of a haiku
_CUT_AFTER = 5.0
_PRECEPT = re.compile(
    "(?:べし|へし|可し|べからず|へからす|可らず|ヘカラス|ヘシ|ベカラズ|ベシ|なかれ|勿れ|也|ナリ|ことなし"
    "|なり|たり|たる|とす|トス|なし|ナシ|にあり|ず|す|ス|ル|よ|あれ|忘るな|たまへ|給へ)$"
)
_SURE_PRECEPT = re.compile("(?:[べへヘベ][しシ]|か[らラ][ずす]|カラ[スズ]|なかれ|勿れ|とす|トス)$")
_ENDS_LIKE_PROSE, _ENDS_LIKE_A_PRECEPT = 0.7, 3.0
_NEARLY_HAIKU, _NEARLY = range(15, 20), 1.5
_NEARLY_TANKA, _LONG_ENOUGH = range(29, 34), 0.6
_LEAST_KANA = 2
_SIGNS = range(7, 49)
_KATAKANA = re.compile("[ァ-ヺ]")
_HIRAGANA, _OF_PROSE = re.compile("[ぁ-ゖ]"), 3.0  # precepts are written in katakana, poems hardly
_KANJI_TAIL = re.compile("[㐀-鿿]+$")
_LEAST_OF_PROSE, _SCRAP = 5, 4.0  # signs; what is shorter is a scrap of something else
_NEVER_LAST = frozenset("をヲのノ")
_OPEN_END = 5.0  # の at the end of a whole poem: a noun follows
_NEVER_FIRST, _SCRAP_AFTER = frozenset("をにはのがてとへもヲニハノガテトヘモ"), -4.0
_LONG_TAIL = 4  # kanji at the end of a sentence that are hardly part of it
_TAIL_SIGN = 1.2
_PROVERB = 25.0  # a proverb of EDICT is one, whatever metre it keeps


def poem_weight(text: str, breaks: frozenset[int]) -> tuple[float, str]:
    """Return the log odds that a stretch is verse, and the reason; 0 where it is none.

    >>> poem_weight("世にふるも更に時雨のやとりかな", frozenset())[0] > 10
    True
    """
    plain = MARK.sub("", text)
    if len(plain) not in _SIGNS or len(KANA.findall(plain)) < _LEAST_KANA:
        return 0.0, ""
    language = weight_as_language(text)
    if plain != text:
        return _broken_off(text, language)
    reading = read_verse(text, breaks)
    if reading.metre is None:
        morae = sum(word.morae for word in reading.words)
        if _opens_poem(reading):
            return language + _PART, "the opening of a poem, a phrase of it with a mora more"
        if morae in _NEARLY_HAIKU and _CUTTING.search(text):
            return language + _NEARLY, "a cutting word ends it"
        if morae in _NEARLY_TANKA:
            return language + _LONG_ENOUGH, "about as long as a tanka"
        return 0.0, ""
    language -= _OF_PROSE * bool(_KATAKANA.search(text) and not _HIRAGANA.search(text))
    return language + _metre_weight(text, reading, breaks), f"keeps the metre of a {_name(reading)}"


def _opens_poem(reading: VerseReading) -> bool:
    """Whether words are 5-7 morae as a poem opens, one more allowed in a phrase with a lone vowel.

    >>> [_opens_poem(read_verse(t)) for t in ("花の色はうつりにけりな", "刀は抜かぬを手柄とす")]
    [True, False]
    """
    kana = ["".join(word.kana for word in reading.words[:at]) for at in range(len(reading.words))]
    whole = "".join(word.kana for word in reading.words)
    if not _CLASSICAL_END.search(whole):
        return False
    return any(_is_phrase(head, 5) and _is_phrase(whole[len(head) :], 7) for head in kana)


def _is_phrase(kana: str, wanted: int) -> bool:
    count = morae(kana)
    with_vowel = any(vowel in kana[1:] for vowel in "あいうお")
    return count == wanted or (count == wanted + 1 and with_vowel)


def _name(reading: VerseReading) -> str:
    assert reading.metre is not None
    return reading.metre.name.removesuffix(" of a tanka")


def _metre_weight(text: str, reading: VerseReading, breaks: frozenset[int]) -> float:
    metre = reading.metre
    assert metre is not None
    cost, phrases = fitted_phrases(reading.words, metre)
    weight = _PART if metre in PARTS else _WHOLE.get(metre.name, _PART)
    weight -= cost / _METRE_UNIT + _OPEN_END * (metre not in PARTS and text.endswith("の"))
    ends, position = set(), 0
    firsts = {first for _, first in phrases[1:]}
    for index, word in enumerate(reading.words):
        if index in firsts:
            ends.add(position)
        position += word.length
    if breaks and breaks <= ends:
        weight += _IN_COLUMNS
    elif metre in PARTS:
        weight += _CHANCE_PART - _PART
    if metre.name == "tanka" and cost <= _HARDLY_KEPT:
        weight = max(weight, _LONG_ENOUGH)
    if metre.name == "haiku":
        weight += _CUTTING_WORD * bool(_CUTTING.search(text))
        weight += _CUT_AFTER * bool(_CUT_EARLY.search(text))
        if _CUTTING.search(text) or _CUT_EARLY.search(text):
            weight = max(weight, _NEARLY)
    return weight


def _broken_off(text: str, language: float) -> tuple[float, str]:
    """Return what speaks for verse around a gap: whole phrases beside it."""
    longest = max(MARK.split(text), key=len)
    reading = read_verse(longest)
    counts = [count for count, _ in reading.phrases]
    morae = sum(word.morae for word in reading.words)
    if reading.metre is None and morae < 12:
        return 0.0, ""
    bonus = _BROKEN_OFF if reading.metre is not None or counts else _BROKEN_OFF / 2
    return language + bonus, "verse with a gap"


def prose_weight(text: str) -> float:
    """Return the log odds that a stretch is prose; 0 where it has no kana.

    >>> prose_weight("刀は抜かぬを手柄とす") > 8, prose_weight("温故知新")
    (True, 0.0)
    """
    if not KANA.search(text):
        return 0.0
    plain = MARK.sub("", text)
    if not plain:  # marks of the transcriber and nothing else
        return 0.0
    if plain[0] in _NEVER_FIRST:
        return _SCRAP_AFTER
    weight = weight_as_language(text) - _SCRAP * (len(plain) < _LEAST_OF_PROSE)
    weight -= _SCRAP * (kana_in_formulas(plain) == len(KANA.findall(plain)))  # 嶺暁ニ倣フ
    if _SURE_PRECEPT.search(plain):
        weight += _ENDS_LIKE_A_PRECEPT
    elif _PRECEPT.search(plain):
        weight += _ENDS_LIKE_PROSE
    if plain[-1] in _NEVER_LAST:
        weight -= _SCRAP
    tail = _KANJI_TAIL.search(plain)
    if tail and len(tail.group()) >= _LONG_TAIL:
        weight -= _TAIL_SIGN * (len(tail.group()) - _LONG_TAIL + 1)
    return weight + _PROVERB * (proverb_words(plain) is not None)
