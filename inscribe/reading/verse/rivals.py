"""What else a whole poem may be read: the next best ways through the words MeCab found.

Other than a swap of one word (``alternatives``), a rival may divide the signs otherwise (や and と
for やど), or take a kana for a voiced one where the text may not mark voicing. The search goes
forward through the lattice with the metre in view, keeping every way into a place, and then
backward from the end, the cheapest first.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Sequence
from itertools import count
from typing import NamedTuple

from inscribe.reading.verse import tagger
from inscribe.reading.verse.agreement import disagreement
from inscribe.reading.verse.alternatives import FARTHEST
from inscribe.reading.verse.lattice import LatticeSpan, state_of, steps_of
from inscribe.reading.verse.metre import PARTS, Metre
from inscribe.reading.verse.readings import VerseReading, taken_apart
from inscribe.reading.verse.scansion import fitted_phrases
from inscribe.reading.verse.voicing import has_voiced_kana
from inscribe.reading.words import OKURIGANA_LEFT_OUT, VOICING_NOT_MARKED, ReadWord

MOST = 12  # rivals that are looked for
_BEAM = 5000  # partial readings that cost this much more than the best at their place are dropped
_TRIED = 4000  # ends of readings that are gone on from before the search gives up
_ONE_UNVOICED = 1200  # what it costs that a text which seems to mark voicing does not


class Rival(NamedTuple):
    """Another reading of a poem, and what it costs more than the best."""

    reading: VerseReading
    cost: int


# Offset in the text, state of the metre, class of the last word.
_Key = tuple[int, int, int]
_Arcs = dict[_Key, list[tuple[int, _Key, ReadWord]]]  # cost, where from, the word between
_Tail = tuple[ReadWord, "_Tail"] | None  # the words from a key to the end


def rivals(reading: VerseReading) -> list[Rival]:
    """Return the next best readings of a poem that keep its metre, the likeliest first.

    >>> from inscribe.reading.verse.reader import read_verse
    >>> best = read_verse("鶯の笠にぬふてふ梅花折てかささん老かくるやと")
    >>> others = rivals(best)  # やと is 宿, or や and と
    >>> {other.reading.words[-1].kana for other in (Rival(best, 0), *others)} >= {"やど", "と"}
    True
    """
    near, _ = _near(reading)
    return near


def _near(reading: VerseReading) -> tuple[list[Rival], bool]:
    """Return the rivals, and whether the reading itself was found among them, so costs compare."""
    metre = reading.metre
    if metre is None or metre in PARTS or reading.by_source or reading.lattice:
        return [], False
    text = "".join([word.written for word in reading.words])
    unmarked = not reading.voiced or not has_voiced_kana(text)
    spans = tagger.verse_spans(text, voiced=not unmarked)
    said = {sounds_of(reading.words)}
    own: int | None = None
    found: list[Rival] = []
    for cost, words in _ways(spans, len(text), metre, reading.voiced):
        sounds = sounds_of(words)
        if sounds in said:
            own = cost if own is None and sounds == sounds_of(reading.words) else own
            continue
        said.add(sounds)
        phrases = fitted_phrases(words, metre)[1]
        other = taken_apart(VerseReading(words, metre, phrases, voiced=reading.voiced))
        found.append(Rival(other, cost))
        if len(found) == MOST:
            break
    compared = own is not None
    if own is None:
        own = min((rival.cost for rival in found), default=0)
    own += disagreement(reading.words, reading.phrases)
    near = [
        Rival(other, cost + disagreement(other.words, other.phrases) - own) for other, cost in found
    ]
    near.sort(key=lambda rival: rival.cost)
    return [rival for rival in near if rival.cost <= FARTHEST], compared


def agreeing(reading: VerseReading) -> VerseReading:
    """Return the reading, or the rival whose words agree so much better that it costs less.

    Only where okurigana are left out: what is written decides more than what agrees.
    """
    if not any(word.note == OKURIGANA_LEFT_OUT for word in reading.words):
        return reading
    near, compared = _near(reading)
    better = min(near, key=lambda rival: rival.cost, default=None)
    if better is None or better.cost >= 0 or not compared:
        return reading
    return reading._replace(words=better.reading.words, phrases=better.reading.phrases)


def sounds_of(words: Sequence[ReadWord]) -> str:
    """Return the Latin letters of words without what divides them."""
    return "".join([word.romaji for word in words]).lower().replace(" ", "").replace("-", "")


def _ways(
    spans: Sequence[LatticeSpan], length: int, metre: Metre, voiced: bool
) -> Iterator[tuple[int, list[ReadWord]]]:
    """Yield readings in a metre with their costs, the cheapest first."""
    best, arcs, ends = _forward(spans, length, metre, voiced)
    number = count()
    heap: list[tuple[int, int, int, _Key, _Tail]] = [
        (best[key] + more, next(number), more, key, None) for key, more in ends
    ]
    heapq.heapify(heap)
    seen: set[tuple[_Key, str]] = set()
    tried = 0
    while heap and tried < _TRIED:
        total, _, behind, key, tail = heapq.heappop(heap)
        tried += 1
        words = _words_of(tail)
        if not key[0]:
            yield total, words
            continue
        if (key, sounds := sounds_of(words)) in seen:
            continue
        seen.add((key, sounds))
        for cost, before, word in arcs[key]:
            more = behind + cost
            heapq.heappush(heap, (best[before] + more, next(number), more, before, (word, tail)))


def _words_of(tail: _Tail) -> list[ReadWord]:
    words = []
    while tail is not None:
        word, tail = tail
        words.append(word)
    return words


def _forward(
    spans: Sequence[LatticeSpan], length: int, metre: Metre, voiced: bool
) -> tuple[dict[_Key, int], _Arcs, list[tuple[_Key, int]]]:
    """Return what it costs to come to each key, the ways into it, and what each end costs more."""
    side, cells = tagger.verse_connections()
    starting: dict[int, list[LatticeSpan]] = {}
    for span in spans:
        starting.setdefault(span.start, []).append(span)
    first: _Key = (0, 0, 0)
    best: dict[_Key, int] = {first: 0}
    arcs: _Arcs = {}
    at: dict[int, dict[_Key, None]] = {0: {first: None}}
    steps = steps_of(metre, False, True)
    for position in range(length):
        keys = at.get(position)
        if not keys or position not in starting:
            continue
        limit = min([best[key] for key in keys]) + _BEAM
        kept = [key for key in keys if best[key] <= limit]
        for _, end, words in starting[position]:
            for connection, own, right, beat, word in words.weighed:
                row = side * connection
                if voiced and word.note == VOICING_NOT_MARKED:
                    own += _ONE_UNVOICED
                after_word = steps[beat]
                for key in kept:
                    cost = own + cells[key[2] + row]
                    for state, more, _ in after_word[key[1]]:
                        new = (end, state, right)
                        total = best[key] + cost + more
                        if new not in best:
                            best[new], arcs[new] = total, []
                            at.setdefault(end, {})[new] = None
                        elif total < best[new]:
                            best[new] = total
                        arcs[new].append((cost + more, key, word))
    done = state_of(len(metre.phrases), 0, False)
    ends = [(key, cells[key[2]]) for key in at.get(length, ()) if key[1] == done]
    return best, arcs, ends
