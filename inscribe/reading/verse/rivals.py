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
from inscribe.reading.verse.lattice import LatticeSpan, places_of, state_of, steps_of
from inscribe.reading.verse.metre import PARTS, Metre
from inscribe.reading.verse.readings import VerseReading, taken_apart
from inscribe.reading.verse.scansion import fitted_phrases
from inscribe.reading.verse.voicing import has_voiced_kana
from inscribe.reading.words import OKURIGANA_LEFT_OUT, VOICING_NOT_MARKED, ReadWord

MOST = 12  # rivals that are looked for
_BEAM = 5000  # partial readings that cost this much more than the best at their place are dropped
_SPREAD = 6000  # of the costs of rivals; what agrees well may be worth so much
_TRIED = 4000  # ends of readings that are gone on from before the search gives up
_BY_CONTEXT = frozenset(
    {"そ", "し", "か", "こと", "音"}
)  # words that what stands further off decides
_AGAIN, _NOT_YET = "また", "まだ"
_ONE_UNVOICED = 1200  # what it costs that a text which seems to mark voicing does not


class Rival(NamedTuple):
    """Another reading of a poem, and what it costs more than the best."""

    reading: VerseReading
    cost: int


# Offset in the text, state of the metre, class of the last word.
_Key = tuple[int, int, int]
_Arcs = dict[_Key, list[tuple[int, _Key, ReadWord]]]  # cost, where from, the word between
_FIRST: _Key = (0, 0, 0)
_Tail = tuple[ReadWord, "_Tail"] | None  # the words from a key to the end


def rivals(reading: VerseReading) -> list[Rival]:
    """Return the next best readings of a poem that keep its metre, the likeliest first.

    >>> from inscribe.reading.verse.reader import read_verse
    >>> best = read_verse("鶯の笠にぬふてふ梅花折てかささん老かくるやと")
    >>> others = rivals(best)  # やと is 宿, or や and と
    >>> {other.reading.words[-1].kana for other in (Rival(best, 0), *others)} >= {"やど", "と"}
    True
    """
    if reading.near:
        return [Rival(reading._replace(words=w, phrases=p), cost) for w, p, cost in reading.near]
    own, others = ways(reading)
    if own is None:
        own = Rival(reading, min((rival.cost for rival in others), default=0))
    return _in_order(own, others)


def agreeing(reading: VerseReading) -> VerseReading:
    """Return the reading, or the rival whose words agree so much better that it costs less.

    Only where okurigana are left out, or a kana may be a voiced one and only what stands further
    off says so: what is written decides more than what agrees. The rivals are kept with the
    reading.
    """
    reading = _not_yet(reading)
    doubtful = any(word.written in _BY_CONTEXT for word in reading.words)
    if not doubtful and not _is_cut_short(reading):
        return reading
    own, others = ways(reading)
    if own is None:
        return reading
    if not _is_cut_short(reading):
        agreed = _agreed(own)
        others = [other for other in others if _agreed(other) < agreed]
    best, *rest = sorted([own, *others], key=_cost_agreed)
    near = tuple(
        (rival.reading.words, rival.reading.phrases, rival.cost) for rival in _in_order(best, rest)
    )
    return reading._replace(words=best.reading.words, phrases=best.reading.phrases, near=near)


def _not_yet(reading: VerseReading) -> VerseReading:
    """Return a reading with まだ for また before a verb that is negated: 露もまたひぬ.

    The search keeps one word of those that are written, and stand, alike.
    """
    words = list(reading.words)
    for at, (again, verb, after) in enumerate(zip(words, words[1:], words[2:], strict=False)):
        negated = verb.form.startswith("未然形") and "助動詞-ズ" in after.conjugation
        if again.written == again.kana == _AGAIN and negated and not reading.voiced:
            others = tagger.homographs_of(_AGAIN, voiced=False).every
            words[at] = next((word for word in others if word.kana == _NOT_YET), again)
    return reading._replace(words=words)


def _is_cut_short(reading: VerseReading) -> bool:
    return any(word.note == OKURIGANA_LEFT_OUT for word in reading.words)


def _agreed(rival: Rival) -> int:
    return disagreement(rival.reading.words, rival.reading.phrases)


def _cost_agreed(rival: Rival) -> int:
    return rival.cost + _agreed(rival)


def _in_order(best: Rival, others: Sequence[Rival]) -> list[Rival]:
    """Return the others with what they cost more than the best, the likeliest first."""
    own = _cost_agreed(best)
    near = [Rival(other.reading, _cost_agreed(other) - own) for other in others]
    return sorted([each for each in near if each.cost <= FARTHEST], key=lambda each: each.cost)


def ways(reading: VerseReading, most: int = MOST) -> tuple[Rival | None, list[Rival]]:
    """Return the reading itself as the search finds it, and others that sound otherwise.

    Their costs are those of their words and their metre. None where the search does not find it.
    """
    metre = reading.metre
    if metre is None or metre in PARTS or reading.lattice:
        return None, []
    text = "".join([word.written for word in reading.words])
    unmarked = not reading.voiced or not has_voiced_kana(text)
    spans = tagger.verse_spans(text, voiced=not unmarked)
    itself = sounds_of(reading.words)
    own: Rival | None = None
    said: set[str] = set()
    found: list[Rival] = []
    cheapest: int | None = None
    for cost, words in _ways(spans, len(text), metre, reading.voiced):
        cheapest = cost if cheapest is None else cheapest
        if cost > cheapest + _SPREAD:
            break
        sounds = sounds_of(words)
        if sounds in said:
            continue
        said.add(sounds)
        if sounds == itself:
            own = Rival(reading, cost)
            continue
        phrases = fitted_phrases(words, metre)[1]
        other = taken_apart(VerseReading(words, metre, phrases, voiced=reading.voiced))
        found.append(Rival(other, cost))
        if len(found) == most:
            break
    return own, found


def sounds_of(words: Sequence[ReadWord]) -> str:
    """Return the Latin letters of words without what divides them."""
    return "".join([word.romaji for word in words]).lower().replace(" ", "").replace("-", "")


def _ways(
    spans: Sequence[LatticeSpan], length: int, metre: Metre, voiced: bool
) -> Iterator[tuple[int, list[ReadWord]]]:
    """Yield readings in a metre with their costs, the cheapest first."""
    best, arcs, ends = _forward(spans, length, metre, voiced)
    number = count()
    heap: list[tuple[int, int, int, _Key, str, _Tail]] = [
        (best[key] + more, next(number), more, key, "", None) for key, more in ends
    ]
    heapq.heapify(heap)
    seen: set[tuple[_Key, str]] = set()
    tried = 0
    while heap and tried < _TRIED:
        total, _, behind, key, said, tail = heapq.heappop(heap)
        tried += 1
        if not key[0]:
            yield total, _words_of(tail)
            continue
        if (key, said) in seen:
            continue
        seen.add((key, said))
        for cost, before, word in arcs[key]:
            more = behind + cost
            sounds = word.kana + said
            way = (best[before] + more, next(number), more, before, sounds, (word, tail))
            heapq.heappush(heap, way)


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
    places = places_of(starting, length)
    best: dict[_Key, int] = {_FIRST: 0}
    arcs: _Arcs = {}
    at: dict[int, dict[_Key, None]] = {0: {_FIRST: None}}
    steps = steps_of(metre, False, True)
    for position in range(length):
        keys = at.get(position)
        if not keys or position not in starting:
            continue
        limit = min([best[key] for key in keys]) + _BEAM
        kept = [(best[key], key) for key in keys if best[key] <= limit]
        for _, end, words in starting[position]:
            reached = at.setdefault(end, {})
            fewest, most = places[end].fewest, places[end].most
            for connection, own, right, beat, word in words.weighed:
                row = side * connection
                if voiced and word.note == VOICING_NOT_MARKED:
                    own += _ONE_UNVOICED
                after_word = steps[beat]
                for so_far, key in kept:
                    cost = own + cells[key[2] + row]
                    for state, more, due in after_word[key[1]]:
                        if not fewest <= due <= most:
                            continue
                        new = (end, state, right)
                        total = so_far + cost + more
                        if new not in reached:
                            reached[new] = None
                            best[new], arcs[new] = total, []
                        elif total < best[new]:
                            best[new] = total
                        arcs[new].append((cost + more, key, word))
    done = state_of(len(metre.phrases), 0, False)
    ends = [(key, cells[key[2]]) for key in at.get(length, ()) if key[1] == done]
    return best, arcs, ends
