"""What may stand in a worn place of a poem: every sign tried, read, and weighed.

Each sign of verse is put in the place, and MeCab's best path through the whole poem is taken. What
the path costs (words and their neighbours), how the metre is kept, and how often verse uses the
sign are added up; the weights were fitted on odd-numbered poems of the development set so that the
shares are probabilities (``tests/benchmarks/restore.py`` measures them on the even-numbered).
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from inscribe import tables
from inscribe.reading.verse import (
    Metre,
    OpenPlace,
    fitted_phrases,
    marks_voicing,
    path_cost,
    pattern_of,
    read_verse,
    verse_words,
)
from inscribe.reading.words import ReadWord, beat_of

UNREAD = "□"
_TABLES = ("verse_nouns", "verse_verbs", "verse_adjectives", "verse_places", "verse_phrases")
PATH = 1300.0  # of MeCab's units, make a reading e times less likely
METRE = 5000.0  # the same for the metre, whose cost weighs more where readings are compared
FREQUENCY = 0.4  # power of a sign's own frequency, which the words' costs hold in part
NO_METRE = 15000  # what a poem costs whose words fit no metre
RARE = 0.05  # per mille: a sign that glossary/verse/verse_signs.tsv does not name
NEAR = 16  # signs on either side that are read where there is no metre to hear
MANY_WORN = 6  # worn signs above which only the commonest signs of verse are tried ...
TRIED_OF_MANY = 400  # ... so many of them
_MOST_RHYTHMS = 2000  # whose metre is kept
_MORAE_OF_UNREAD = 1.3  # on the average
_KANA = "".join(
    chr(code) for code in range(0x3042, 0x3094) if chr(code) not in "ぃぅぇぉっゃゅょゎ"
)
_MEANING = ("名詞", "動詞", "形容詞", "代名詞", "副詞")
_VOICED = frozenset("がぎぐげござじずぜぞだぢづでどばびぶべぼぱぴぷぺぽ")


@dataclass(frozen=True, slots=True)
class WornPoem:
    """A poem in current forms, its worn places □, and what is known of the whole."""

    text: str
    metre: Metre | None
    voiced: bool


def setting(text: str, *, metrical: bool = True) -> WornPoem:
    """Return what is known of a text in kanji and kana, with its metre if it is verse."""
    if not metrical:
        return WornPoem(text, None, marks_voicing(text))
    words = verse_words(text.replace(UNREAD, ""))
    count = sum(word.morae for word in words) + _MORAE_OF_UNREAD * text.count(UNREAD)
    metre = pattern_of(round(count))
    return WornPoem(text, metre, marks_voicing(text))


def with_gap(poem: WornPoem, at: int) -> WornPoem:
    """Return a poem with a gap at ``at``, and the metre it has if that is mended."""
    text = poem.text[:at] + poem.text[at + 1 :]
    count = sum(word.morae for word in verse_words(text, voiced=poem.voiced))
    metre = pattern_of(count) or next(
        (m for m in map(pattern_of, range(count + 1, count + 8)) if m is not None), None
    )
    return WornPoem(poem.text, metre, poem.voiced)


def weights_at(poem: WornPoem, at: int, signs: Collection[str]) -> dict[str, float]:
    """Return the logarithm of each sign's weight at offset ``at``."""
    text, start = poem.text, at
    if poem.metre is None or text.count(UNREAD) > 1:  # how long the others are is not known
        first = max(0, at - NEAR)
        text, start = text[first : at + NEAR + 1], at - first
        poem = WornPoem(poem.text, None, poem.voiced)
    before, after = text[:start], text[start + 1 :]
    costs: dict[str, float] = {}
    ways = OpenPlace(before, after, voiced=poem.voiced).cheapest(tuple(signs))
    for beats, read_so in ways.items():
        of_metre = _metre_cost(beats, poem.metre)
        costs |= {sign: words / PATH + of_metre for sign, words in read_so.items()}
    unknown = [sign for sign in signs if sign not in costs]  # in no word of the dictionary
    of_kanji = next((cost(before + s + after, poem) for s in unknown if _is_kanji(s)), 0.0)
    for sign in unknown:  # MeCab makes all kanji up alike
        costs[sign] = of_kanji if _is_kanji(sign) else cost(before + sign + after, poem)
    return {sign: frequency(sign) - costs[sign] for sign in signs}


def _is_kanji(sign: str) -> bool:
    return "一" <= sign <= "鿿"


@tables.cached(4096)
def frequency(signs: str) -> float:
    """Return the logarithm of the weight signs have by how often verse uses them."""
    return FREQUENCY * sum(math.log(usage(sign)) for sign in signs)


def usage(sign: str) -> float:
    """Return how often verse uses a sign, per mille."""
    return _per_mille().get(sign, RARE)


def cost(text: str, poem: WornPoem) -> float:
    """Return what a text costs by its words and, where there is one, by the poem's metre."""
    words = verse_words(text, voiced=poem.voiced)
    beats = tuple(word.beat for word in words)
    return path_cost(words) / PATH + _metre_cost(beats, poem.metre)


@tables.cached(_MOST_RHYTHMS)  # most signs tried change nothing that the metre hears
def _metre_cost(beats: tuple[int, ...], metre: Metre | None) -> float:
    if metre is None:
        return 0.0
    more, phrases = fitted_phrases([*map(beat_of, beats)], metre)
    return (more if phrases else NO_METRE) / METRE


@tables.cached()
def _by_frequency() -> tuple[str, ...]:
    known = _per_mille()
    return tuple(sorted(known, key=lambda sign: -known[sign]))


def commonest(count: int) -> tuple[str, ...]:
    """Return the signs that verse uses most."""
    return _by_frequency()[:count]


@dataclass(frozen=True, slots=True)
class Heard:
    """How a poem reads with a sign in its place: the word it is in, and the phrases."""

    word: ReadWord
    phrases: tuple[int, ...]  # morae, empty where no metre can be heard
    regular: bool


def heard(poem: WornPoem, at: int, sign: str) -> Heard:
    """Return how the poem reads with ``sign`` at offset ``at``."""
    text = poem.text[:at] + sign + poem.text[at + 1 :]
    if poem.metre is None or UNREAD in text:
        return Heard(word_with(poem, at, sign)[0], (), False)
    words = verse_words(text, voiced=poem.voiced)
    counts = tuple(count for count, _ in fitted_phrases(words, poem.metre)[1])
    return Heard(_word_over(words, at)[0], counts, counts == poem.metre.phrases)


def word_with(poem: WornPoem, at: int, sign: str) -> tuple[ReadWord, int]:
    """Return the word that holds ``sign`` at offset ``at``, and the offset where it begins."""
    first = max(0, at - NEAR)
    text = poem.text[first:at] + sign + poem.text[at + 1 : at + 1 + NEAR]
    word, begins = _word_over(verse_words(text, voiced=poem.voiced), at - first)
    return word, first + begins


def _word_over(words: Sequence[ReadWord], at: int) -> tuple[ReadWord, int]:
    position = 0
    for word in words:
        if position <= at < position + word.length:
            return word, position
        position += word.length
    return words[-1], position - words[-1].length


def kanji_habit(poem: WornPoem) -> float:
    """Return how many words with a meaning of their own are in kanji for each in kana.

    It tells whether a worn word was likelier in kanji.
    """
    in_kanji = in_kana = 1.0
    for word in verse_words(poem.text, voiced=poem.voiced):
        if UNREAD not in word.written and word.part_of_speech.startswith(_MEANING):
            if any(map(_is_kanji, word.written)):
                in_kanji += 1
            else:
                in_kana += 1
    return in_kanji / in_kana


def missing_morae(poem: WornPoem) -> dict[int, int]:
    """Return how many morae each worn sign must have for the metre, by offset.

    The reading that best keeps the metre decides how it is shared out among several worn signs.
    """
    found: dict[int, int] = {}
    position = 0
    for word in read_verse(poem.text).words if poem.metre else ():
        if word.written == UNREAD:
            found[position] = word.morae
        position += word.length
    return found


def lost_morae(poem: WornPoem) -> int | None:
    """Return how many morae a poem lacks in its one gap, whatever their signs."""
    if poem.metre is None:
        return None
    text = poem.text.replace(UNREAD, "")
    lost = poem.metre.length - sum(w.morae for w in verse_words(text, voiced=poem.voiced))
    return lost if lost > 0 else None


@tables.cached()
def signs_of_verse() -> tuple[str, ...]:
    """Return the signs that verse is written with, kana first."""
    written = "".join(row["written"] for table in _TABLES for row in tables.rows(table))
    kanji = (c for c in (*_per_mille(), *written) if _is_kanji(c) or c in "々ゝ")
    return tuple(dict.fromkeys((*_KANA, *kanji)))


def signs_tried(poem: WornPoem) -> tuple[str, ...]:
    """Return the signs to be tried in a worn place: fewer where much is worn."""
    many = poem.text.count(UNREAD) > MANY_WORN
    signs = commonest(TRIED_OF_MANY) if many else signs_of_verse()
    return signs if poem.voiced else without_voicing(signs)


def without_voicing(signs: Collection[str]) -> tuple[str, ...]:
    """Return the signs that a text which marks no voicing can have."""
    return tuple(sign for sign in signs if sign not in _VOICED)


@tables.cached()
def _per_mille() -> dict[str, float]:
    found: dict[str, float] = {}
    for row in tables.rows("verse_signs"):
        for sign in tables.listed(row["signs"]):
            found.setdefault(sign, float(row["weight"]))
    return found
