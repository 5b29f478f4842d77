"""A best path that breaks the metre, mended: one reading changed, or a stretch searched anew."""

from __future__ import annotations

from inscribe.reading.verse import tagger
from inscribe.reading.verse.lattice import Surroundings, best_path
from inscribe.reading.verse.metre import Metre
from inscribe.reading.verse.readings import VerseReading, path_cost
from inscribe.reading.verse.scansion import (
    fitted_phrases,
    regular_head,
    regular_phrases,
    regular_tail,
)
from inscribe.reading.words import ReadWord

_CHANGED_AT_MOST = 4000  # another reading of one word may cost this much more
MENDED_ENOUGH = 4000  # a stretch is mended if its metre costs no more


def mended(
    text: str, words: list[ReadWord], metre: Metre, ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Mend only the stretch between the phrases that keep the metre from either end.

    First by another reading of one word, then by searching the stretch. None where there is no
    such stretch, or nothing in it comes near the metre: then all must be searched.
    """
    head, kept_before = regular_head(words, metre.phrases)
    tail, kept_after = regular_tail(words, metre.phrases)
    stop, last = len(words) - tail, len(metre.phrases) - kept_after
    if head >= stop or kept_before >= last:  # the two runs meet: one of them is chance
        head, stop, tail = 0, len(words), 0
    if not ends and (swapped := _with_one_word_changed(words, head, stop, metre, voiced)):
        return VerseReading(swapped, metre, regular_phrases(swapped, metre), False, voiced)
    if not head and not tail:
        return None
    unmended = path_cost(words)
    start = sum([word.length for word in words[:head]])
    end = start + sum([word.length for word in words[head:stop]])
    if ends and not {start, end} - {0, len(text)} <= ends:
        return None
    stretch = metre._replace(phrases=metre.phrases[kept_before:last])
    around = Surroundings(
        words[head - 1].right_connection if head else 0,
        words[stop].connection if tail else 0,
        first=not head,
    )
    inner = frozenset(at - start for at in ends if start < at < end)
    spans = tagger.verse_spans(text[start:end], voiced=voiced)
    path = best_path(spans, end - start, stretch, tagger.verse_connections(), inner, around)
    if path is None:
        return None
    found = [*words[:head], *path.words, *words[stop:]]
    cost, phrases = fitted_phrases(found, metre)
    if not phrases or cost + path_cost(found) - unmended > MENDED_ENOUGH:
        return None
    return VerseReading(found, metre, phrases, False, voiced)


def _with_one_word_changed(
    words: list[ReadWord], first: int, stop: int, metre: Metre, voiced: bool
) -> list[ReadWord] | None:
    """Return the words with the one change of reading that mends the metre at the least cost."""
    wanted = metre.length - sum([word.morae for word in words])
    if not wanted:
        return None
    side, cells = tagger.verse_connections()
    best: tuple[int, int, ReadWord] | None = None
    for index in range(first, stop):
        word = words[index]
        if word.written == word.kana:  # kana has as many morae however it is read
            continue
        readings = tagger.homographs_of(word.written, voiced=voiced)
        if not readings.fewest <= word.morae + wanted <= readings.most:
            continue
        before = words[index - 1].right_connection if index else 0
        after = side * words[index + 1].connection if index + 1 < len(words) else 0
        own = word.cost + cells[before + side * word.connection]
        own += cells[word.right_connection + after]
        for piece in readings.worth_trying:
            if piece.morae != word.morae + wanted:
                continue
            cost = piece.cost + cells[before + side * piece.connection]
            cost += cells[piece.right_connection + after] - own
            if cost > (best[0] if best else _CHANGED_AT_MOST):
                continue
            changed = [*words[:index], piece, *words[index + 1 :]]
            if regular_phrases(changed, metre):
                best = (cost, index, piece)
    if best is None:
        return None
    return [*words[: best[1]], best[2], *words[best[1] + 1 :]]
