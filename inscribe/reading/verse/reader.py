"""Verse: the reading that keeps the metre at the least cost.

MeCab's own best path is taken where it keeps the metre to the mora: metre only ever adds to the
cost of a reading, so no other can be better; and where it breaks it only as poets often do.
Otherwise the words between the regular phrases at either end are searched again with the metre in
view (``inscribe.reading.verse.reader.lattice``), and all of them if that does not mend it.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe import tables
from inscribe.reading.verse import tagger
from inscribe.reading.verse.lattice import LatticeSpan, Node, best_path, spans_of
from inscribe.reading.verse.mending import MENDED_ENOUGH, mended
from inscribe.reading.verse.metre import (
    COMIC,
    HAIKU,
    PARTS,
    SEDOKA,
    SHORT,
    TANKA,
    Metre,
    pattern_of,
)
from inscribe.reading.verse.readings import VerseReading, path_cost, taken_apart
from inscribe.reading.verse.rivals import agreeing
from inscribe.reading.verse.scansion import (
    Phrases,
    fitted_phrases,
    nearly_regular,
    regular_phrases,
)
from inscribe.reading.verse.second_parts import with_second_parts
from inscribe.reading.verse.settled import settled_nodes
from inscribe.reading.verse.usual_signs import as_written, in_usual_signs
from inscribe.reading.verse.voicing import BETTER_UNVOICED, best_words, has_voiced_kana
from inscribe.reading.words import (
    UNREAD_SIGNS,
    OverrideLike,
    ReadWord,
    unread_piece,
)
from inscribe.scripts import hiragana

NEARLY_REGULAR = 3000  # MeCab's best path is taken if its metre costs no more
_NO_METRE = 15000  # what a text costs more that keeps no metre
_TOO_DEAR = 7000  # what keeping the metre of a haiku may cost
_LONGEST = 80  # signs; no poem that has a metre here is longer
_OF_COMIC_VERSE = 2  # nouns that court verse has not
_COMIC = 9000  # what it costs to be comic verse
_MORAE_OFF = 8  # a best path with so many morae too few or too many may hide a poem
_KANA_REPEATED = frozenset("ゝゞ")
_MOST_MORAE = 4  # of one sign that cannot be read
_KATAKANA = frozenset(map(chr, range(ord("ァ"), ord("ヴ")))) - {"ケ"}  # not the ケ of 三ケ月
_NO_ENDS: frozenset[int] = frozenset()


def read_verse(
    text: str,
    breaks: frozenset[int] = frozenset(),
    overrides: Sequence[OverrideLike] = (),
    origin: Sequence[int] = (),
) -> VerseReading:
    """Return the best reading of ``text`` as verse.

    ``breaks`` are the offsets where columns begin; they count as ends of phrases only if every
    phrase has its own column. ``origin`` gives the sign of each character, which ``overrides``
    speak of. Katakana among other signs (春ハ) are read as hiragana.
    """
    plain = _in_hiragana(text)
    found = _agreeing(plain, breaks, overrides, origin)
    usual = in_usual_signs(plain, found.words)
    if usual != plain:
        found = _agreeing(usual, breaks, overrides, origin)
    return found if usual == text else as_written(found, text)


def _in_hiragana(text: str) -> str:
    if "ー" in text:
        return text
    return "".join([hiragana(sign) if sign in _KATAKANA else sign for sign in text])


def _agreeing(
    text: str, breaks: frozenset[int], overrides: Sequence[OverrideLike], origin: Sequence[int]
) -> VerseReading:
    """Return the best reading, its words shown one by one and held against its rivals."""
    found = taken_apart(_read(text, breaks, overrides, origin))
    return with_second_parts(found if overrides or breaks else agreeing(found))


def read_among(
    text: str, words: list[ReadWord], nodes: Sequence[Node], *, voiced: bool
) -> VerseReading:
    """Return the best reading in metre that these nodes allow; ``words`` where there is none."""
    metre = pattern_of(sum([word.morae for word in words]))
    if metre is None:
        found = _part_of_a_poem(words, voiced)
    else:
        found = _searched(text, words, metre, _NO_ENDS, spans_of(nodes), voiced)
    return found._replace(lattice=tuple(nodes))


def words_without_metre(text: str, *, voiced: bool) -> list[ReadWord]:
    """Return the words of a text in the language of verse that has no metre."""
    words = tagger.verse_words(text, voiced=voiced)
    return taken_apart(VerseReading(words, None, voiced=voiced)).words


def _read(
    text: str, breaks: frozenset[int], overrides: Sequence[OverrideLike], origin: Sequence[int]
) -> VerseReading:
    """Return the best reading; where a text may or may not mark voicing, the one in metre."""
    words, voiced = best_words(text)
    found = _read_marked(text, words, voiced, breaks, overrides, origin)
    if found.regular or not voiced or len(text) > _LONGEST or has_voiced_kana(text):
        return found
    unvoiced = tagger.verse_words(text, voiced=False)
    other = _read_marked(text, unvoiced, False, breaks, overrides, origin)
    if other.metre is None or other.metre in PARTS:
        return found
    return other if _cost(other) + BETTER_UNVOICED < _cost(found) else found


def _cost(reading: VerseReading) -> int:
    """Return what a reading costs by its words and its metre."""
    words = path_cost(reading.words)
    if reading.metre is None or reading.metre in PARTS:
        return words + _NO_METRE
    cost, phrases = fitted_phrases(reading.words, reading.metre)
    return words + (cost if phrases else _NO_METRE)


def _read_marked(
    text: str,
    words: list[ReadWord],
    voiced: bool,
    breaks: frozenset[int],
    overrides: Sequence[OverrideLike],
    origin: Sequence[int],
) -> VerseReading:
    metre = pattern_of(sum([word.morae for word in words]))
    if len(text) > _LONGEST:
        return VerseReading(words, None, voiced=voiced)
    ends = breaks if metre and len(breaks) == len(metre.phrases) - 1 else _NO_ENDS
    if overrides or "□" in text:
        nodes = tagger.verse_lattice(text, voiced=voiced)
        if "□" in text:
            nodes = with_unread(nodes, text)
        if overrides:
            nodes = settled_nodes(nodes, overrides, origin, text)
        found = _searched(text, words, metre or TANKA, ends, spans_of(nodes), voiced)
        return found._replace(lattice=tuple(nodes))
    if metre is None:
        part = _part_of_a_poem(words, voiced)
        return part if part.metre else _read_as_a_poem(text, words, ends, voiced) or part
    if not metre.foreign or not any(word.foreign for word in words):
        kept = _kept_as_it_is(words, metre, ends, voiced)
        if reading := kept or mended(text, words, metre, ends, voiced):
            return reading
    spans = tagger.verse_spans(text, voiced=voiced)
    searched = _searched(text, words, metre, ends, spans, voiced)
    if metre is TANKA and sum([word.foreign for word in words]) >= _OF_COMIC_VERSE:
        searched = _as_comic_verse(searched, _searched(text, words, COMIC, ends, spans, voiced))
    if metre is SEDOKA and fitted_phrases(searched.words, metre)[0] > MENDED_ENOUGH:
        return VerseReading(words, None, voiced=voiced, searched=True)
    return searched


def _as_comic_verse(courtly: VerseReading, comic: VerseReading) -> VerseReading:
    """Return the reading as comic verse where court verse would want much less natural words."""
    if not comic.metre or not courtly.metre:
        return courtly if courtly.metre else comic
    foreign = TANKA.foreign * sum([word.foreign for word in courtly.words])
    return comic if _cost(comic) + _COMIC < _cost(courtly) + foreign else courtly


def _kept_as_it_is(
    words: list[ReadWord], metre: Metre, ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Return MeCab's best path if it keeps the metre, or breaks it as poets often do."""
    phrases = regular_phrases(words, metre)
    regular = bool(phrases)
    if not regular:
        nearly = nearly_regular(words, metre, NEARLY_REGULAR)
        if nearly is None:
            return None
        phrases = nearly[1]
    if ends and ends != _phrase_offsets(words, phrases):
        return None
    return VerseReading(words, metre, phrases, regular, voiced)


def _phrase_offsets(words: list[ReadWord], phrases: Phrases) -> frozenset[int]:
    firsts = {first for _, first in phrases[1:]}
    offsets, position = set(), 0
    for index, word in enumerate(words):
        if index in firsts:
            offsets.add(position)
        position += word.length
    return frozenset(offsets)


def _part_of_a_poem(words: list[ReadWord], voiced: bool) -> VerseReading:
    for metre in PARTS:
        if phrases := regular_phrases(words, metre):
            return VerseReading(words, metre, phrases, True, voiced)
    return VerseReading(words, None, voiced=voiced)


def _read_as_a_poem(
    text: str, words: list[ReadWord], ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Return a reading in a metre for a text whose best path nearly has a poem's morae.

    None if keeping the metre would need a much less natural reading.
    """
    count = sum([word.morae for word in words])
    metres = [metre for metre in (HAIKU, TANKA) if abs(count - metre.length) <= _MORAE_OFF]
    if not metres:
        return None
    found = _searched(
        text, words, metres[-1], ends, tagger.verse_spans(text, voiced=voiced), voiced
    )
    if not found.phrases:
        return None
    cost = fitted_phrases(found.words, metres[-1])[0] + path_cost(found.words)
    return found if cost - path_cost(words) <= MENDED_ENOUGH else None


def with_unread(nodes: list[Node], text: str) -> list[Node]:
    """Let each sign that cannot be read stand for one to three morae.

    What a repeat mark of kana stands for, and repeats, has one.
    """
    nodes = [node for node in nodes if UNREAD_SIGNS.isdisjoint(node.piece.written)]
    for index, sign in enumerate(text):
        if sign in UNREAD_SIGNS:
            of_kana = not _KANA_REPEATED.isdisjoint(text[index : index + 2])
            for piece in _unread_pieces(sign, 1 if of_kana else _MOST_MORAE):
                nodes.append(Node(index, index + 1, piece))
    return nodes


@tables.cached()
def _unread_pieces(sign: str, most: int) -> tuple[ReadWord, ...]:
    return tuple(unread_piece(sign, count) for count in range(1, most + 1))


def _searched(
    text: str,
    words: list[ReadWord],
    metre: Metre,
    ends: frozenset[int],
    spans: Sequence[LatticeSpan],
    voiced: bool,
) -> VerseReading:
    connections = tagger.verse_connections()
    path = best_path(spans, len(text), metre, connections, ends)
    if path is None and ends:
        path = best_path(spans, len(text), metre, connections)
    if path is None:
        return VerseReading(words, None, voiced=voiced, searched=True)
    found = list(path.words)
    off, phrases = fitted_phrases(found, metre)
    if off >= 2 * SHORT or (metre is HAIKU and _kept_by_chance(found, words, metre)):
        return VerseReading(words, None, voiced=voiced, searched=True)
    return VerseReading(found, metre, phrases, False, voiced, True)


def _kept_by_chance(found: list[ReadWord], words: list[ReadWord], metre: Metre) -> bool:
    """Whether words keep a short metre only at the price of much less natural words."""
    if not all(word.known for word in found if word.morae):  # a comma has none
        return True
    cost = fitted_phrases(found, metre)[0] + path_cost(found)
    return cost - path_cost(words) > _TOO_DEAR
