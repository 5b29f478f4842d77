"""How a Chinese text may be said: as a known saying, in Japanese order, by its sounds; ranked.

>>> for reading in chinese_readings("孤村煙雨暗"):
...     print(reading.romaji, "-", reading.reason)
koson no en'u kurashi - in Japanese order by the usual rules
ko son en u an - by sound, each sign by itself

Return marks tell the order; then only the endings are found:

>>> chinese_readings("不㆑如㆓一見㆒")[0].romaji
'ikken ni shikazu'
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import exp

from inscribe.reading.chinese.compounds import compound, first_sound, sounds_apart
from inscribe.reading.chinese.grammar import parse
from inscribe.reading.chinese.lines import ReadLine, is_verse, read_lines
from inscribe.reading.chinese.marks import has_marks, without_marks
from inscribe.reading.chinese.order import reading_order
from inscribe.reading.chinese.phrases import Said
from inscribe.reading.chinese.sayings import (
    Saying,
    first_of_each,
    readings_of_saying,
    worn_sayings,
)
from inscribe.reading.spelling import KanaWord, hiragana
from inscribe.reading.words import ReadWord, romaji_of, unknown_piece

_KANJI = re.compile("[\u3400-\u9fff\U00020000-\U0003ffff]+")
_NOUN = "名詞-普通名詞-一般"
_SAYING, _OTHER_SAYING, _WORN = 0.95, 0.5, 0.7
_MARKED, _BY_SOUND, _AS_WORDS, _GUESSED_WORDS = 0.9, 0.3, 0.72, 0.25
_BEST, _EVEN_COST, _STEEPNESS = 0.85, 1.4, 4.0  # weight by the grammar's cost of a sign
_LONGEST_WORD = 5  # signs
_FINAL, _LINKING = "終止形", "連用形"
_PARTICLES = {"は": "わ", "を": "お", "へ": "え"}


@dataclass(frozen=True, slots=True)
class ChineseReading:
    """One way to say a Chinese text.

    ``words`` cover all its signs once, in the order said; ``weight`` is from 0 to 1, higher for
    likelier readings; ``reason`` says in English where the reading is from.
    """

    words: list[ReadWord]
    kana: str
    romaji: str
    weight: float
    reason: str


def chinese_readings(text: str, breaks: frozenset[int] = frozenset()) -> list[ChineseReading]:
    """Return the ways a Chinese text may be said, the likeliest first; at least one if not empty.

    Args:
        text: signs in current forms; kanji, with return marks or without. Other signs are left
            standing in a reading by sound.
        breaks: the indexes of signs that begin a column.

    Raises:
        NotationError: a return mark has nothing to return to; its column is named.
    """
    order = reading_order(text) if has_marks(text) else None
    plain = without_marks(text)
    if not plain:
        return []
    found = [*_as_sayings(plain), *_in_japanese_order(text, plain, breaks, order)]
    found += [*_as_words(plain), _by_sound(plain)]
    ranked = sorted(found, key=lambda reading: -reading.weight)
    return first_of_each(ranked, _letters)


def _letters(reading: ChineseReading) -> str:
    return reading.romaji.replace(" ", "").lower()


def _reading(words: Sequence[ReadWord], weight: float, reason: str) -> ChineseReading:
    kana = "".join(hiragana(word.kana) for word in words)
    return ChineseReading(list(words), kana, romaji_of(list(words)), round(weight, 3), reason)


def _as_sayings(text: str) -> Iterator[ChineseReading]:
    """Yield the customary readings of a known saying."""
    for rank, saying in enumerate(readings_of_saying(text)):
        weight = _OTHER_SAYING if rank else _SAYING
        reason = f"{'another' if rank else 'the'} usual reading of this saying ({saying.kind})"
        yield _reading(_words_of_saying(saying, text), weight, reason)
    worn = worn_sayings(text)
    for saying in worn:
        reason = f"fits the saying {saying.written} ({saying.kind}), lost signs supplied"
        yield _reading(_words_of_saying(saying, text), _WORN / len(worn), reason)


def _words_of_saying(saying: Saying, text: str) -> list[ReadWord]:
    """Return a saying as words, as one where its words do not follow its signs."""
    words = saying.romaji.split(" ")
    shown = saying.said.split(" ")
    cuts = _cuts(saying.written, [hiragana(word.replace("|", "")) for word in shown])
    if not cuts:
        return [_worded(text, saying.said, saying.romaji)]
    starts = (0, *cuts[:-1])
    signs = [text[start:end] for start, end in zip(starts, cuts, strict=True)]
    return [_worded(*each) for each in zip(signs, shown, words, strict=True)]


def _cuts(text: str, words: Sequence[str]) -> tuple[int, ...]:
    """Return where the signs of each word end, if each word is the sounds of signs in a row."""
    paths: dict[int, tuple[int, ...]] = {0: ()}  # by where the last word ends
    for word in words:
        longer: dict[int, tuple[int, ...]] = {}
        for start, ends in paths.items():
            for end in range(start + 1, min(len(text), start + _LONGEST_WORD) + 1):
                if sounds_apart(text[start:end], word):
                    longer.setdefault(end, (*ends, end))
        paths = longer
    return paths.get(len(text), ())


def _worded(written: str, said: str, romaji: str) -> ReadWord:
    """Return a word, or several said as one, whose Latin letters are known."""
    plain = hiragana(said)
    piece = ReadWord(
        written, plain, _NOUN, origin="漢", kana=plain.replace(" ", "").replace("|", "")
    )
    piece.word, piece.romaji, piece.apart = KanaWord(plain, _NOUN), romaji, True
    return piece


def _in_japanese_order(
    text: str, plain: str, breaks: frozenset[int], order: tuple[int, ...] | None
) -> Iterator[ChineseReading]:
    """Yield the reading by the grammar, and by its return marks if it has any."""
    if not _KANJI.fullmatch(plain):
        return
    if order is not None:
        yield _in_marked_order(text, plain, order)
        return
    lines = read_lines(plain, breaks)
    if not lines or len(plain) == 1:
        return
    words: list[ReadWord] = []
    for number, line in enumerate(lines, start=1):
        words += _words_of_line(line, _FINAL if number == len(lines) else _LINKING)
    cost = sum(line.cost for line in lines) / len(plain)
    weight = _BEST / (1 + exp(_STEEPNESS * (cost - _EVEN_COST)))
    yield _reading(words, weight, "in Japanese order by the usual rules")


def _in_marked_order(text: str, plain: str, order: tuple[int, ...]) -> ChineseReading:
    """Return a text in the order of its return marks, inflected where the grammar leads there."""
    places = {index: at for at, index in enumerate(i for i, _ in _without_marks(text))}
    said_order = [places[index] for index in order]
    phrase = parse(plain, (), said_order)
    if phrase is None:
        words = [ReadWord(plain[at], first_sound(plain[at]), _NOUN) for at in said_order]
        return _reading(words, _MARKED / 2, "in the order of the return marks, not inflected")
    said = [_piece(word) for word in phrase.with_topic().ending(_FINAL)]
    return _reading(said, _MARKED, "in the order of the return marks")


def _without_marks(text: str) -> Iterator[tuple[int, str]]:
    return ((index, sign) for index, sign in enumerate(text) if not has_marks(sign))


def _words_of_line(line: ReadLine, form: str) -> list[ReadWord]:
    if line.phrase is None:
        return _words_of_saying(line.saying, line.text) if line.saying else []
    word = line.phrase.head.word if line.phrase.head else None
    if word is not None and (word.describes or not is_verse(line.text)):
        form = _FINAL
    return [_piece(said) for said in line.phrase.ending(form)]


def _piece(said: Said) -> ReadWord:
    """Return a word of the grammar as a word of a reading; particles as they are said."""
    spoken = " |".join(_PARTICLES.get(part, part) for part in said.kana.split(" ") if part)
    kana = said.kana.replace(" ", "").replace("|", "")
    return ReadWord(said.written, spoken, said.part_of_speech, origin="漢", kana=kana)


def _as_words(text: str) -> Iterator[ChineseReading]:
    """Yield a short text read as words of two signs, as set phrases are: 家内安全."""
    if len(text) not in (2, 4) or not _KANJI.fullmatch(text):
        return
    pairs = [text[at : at + 2] for at in range(0, len(text), 2)]
    read = [compound(pair) for pair in pairs]
    weight = _AS_WORDS if all(word.known for word in read) else _GUESSED_WORDS
    words = [
        ReadWord(pair, word.kana, _NOUN, origin="漢")
        for pair, word in zip(pairs, read, strict=True)
    ]
    yield _reading(words, weight, "by sound, as words of two")


def _by_sound(text: str) -> ChineseReading:
    """Return the reading of each sign by its Chinese sound, as it stands in the words there."""
    words: list[ReadWord] = []
    at = 0
    while at < len(text):
        pair = text[at : at + 2]
        sounds: tuple[str, ...] = ()
        if len(pair) == 2 and _KANJI.fullmatch(pair) and (word := compound(pair)).known:
            sounds = sounds_apart(pair, word.kana.replace("|", ""))
        for sign, sound in zip(pair, sounds or (first_sound(pair[0]),), strict=False):
            legible = _KANJI.match(sign)
            whole = first_sound(sign) if sound.endswith("っ") else sound
            words.append(
                ReadWord(sign, whole, _NOUN, origin="漢") if legible else unknown_piece(sign)
            )
            at += 1
    return _reading(words, _BY_SOUND, "by sound, each sign by itself")
