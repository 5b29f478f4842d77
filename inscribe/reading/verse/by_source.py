"""A copied poem read by its source: where the source has kana, the kanji of the copy are told.

The source is read for itself; then the cheapest words are sought for the copy that say the same,
sound by sound. Where the copy says something else, there are none, and it is read alone.

>>> reading = read_by_source("鶯の鳴", "うぐひすのなく")
>>> [word.kana for word in reading.words] if reading else None
['うぐいす', 'の', 'なく']
"""

from __future__ import annotations

from inscribe.reading.spelling import kana_share, voiceless
from inscribe.reading.verse import tagger
from inscribe.reading.verse.lattice import Node
from inscribe.reading.verse.metre import pattern_of
from inscribe.reading.verse.reader import read_verse
from inscribe.reading.verse.readings import VerseReading, taken_apart
from inscribe.reading.verse.scansion import fitted_phrases, regular_phrases
from inscribe.reading.verse.voicing import has_voiced_kana
from inscribe.reading.words import ReadWord

READ_BY_SOURCE = "read as the source spells it in kana"
_LONGEST = 80  # signs of a poem

# A partial reading: its cost, the class of its last word, the reading before that word, the word.
_Partial = tuple[int, int, "_Partial | None", ReadWord | None]


def read_by_source(text: str, source: str) -> VerseReading | None:
    """Return the words of a poem that say what its source says; None where none do.

    Both are in current forms. A source with no more kana than the copy tells nothing.
    """
    if not source or len(text) > _LONGEST or kana_share(source) <= kana_share(text):
        return None
    theirs = read_verse(source)
    said = "".join(word.kana for word in theirs.words)
    marked = has_voiced_kana(source)
    words = _words_saying(text, said if marked else voiceless(said), marked)
    if words is None:
        return None
    metre = pattern_of(sum(word.morae for word in words)) or theirs.metre
    phrases = fitted_phrases(words, metre)[1] if metre else ()
    regular = bool(metre and regular_phrases(words, metre))
    voiced = any(has_voiced_kana(word.written) for word in words)
    found = VerseReading(
        words, metre if phrases else None, phrases, regular, voiced, by_source=True
    )
    return taken_apart(found)


def _words_saying(text: str, said: str, marked: bool) -> list[ReadWord] | None:
    """Return the cheapest words for a text that together say the kana ``said``."""
    starting: dict[int, list[Node]] = {}
    for node in tagger.verse_lattice(text, voiced=False):
        starting.setdefault(node.start, []).append(node)
    side, cells = tagger.verse_connections()
    reached: list[dict[tuple[int, int], _Partial]] = [{} for _ in range(len(text) + 1)]
    reached[0][0, 0] = (0, 0, None, None)
    for position in range(len(text)):
        for (spoken, _), before in reached[position].items():
            for node in starting.get(position, ()):
                word = node.piece
                kana = word.kana if marked else voiceless(word.kana)
                if not said.startswith(kana, spoken):
                    continue
                cost = before[0] + word.cost + cells[before[1] + side * word.connection]
                key = (spoken + len(kana), word.right_connection)
                there = reached[node.end].get(key)
                if there is None or cost < there[0]:
                    reached[node.end][key] = (cost, word.right_connection, before, word)
    ended = [each for (spoken, _), each in reached[len(text)].items() if spoken == len(said)]
    return _words_of(min(ended, key=lambda each: each[0])) if ended else None


def _words_of(partial: _Partial | None) -> list[ReadWord]:
    words: list[ReadWord] = []
    while partial is not None:
        _, _, partial, word = partial
        if word is not None:
            words.append(word)
    return words[::-1]
