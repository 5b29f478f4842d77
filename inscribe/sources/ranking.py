"""Which text an inscription is from: candidates from the index, the best few compared in full.

The probability of a hit weighs the letters that fit against the size of the library (a match of
few letters means little among many texts), the share of the query that fits, and how far the next
different text lies behind; its weights are fitted on queries whose answer is known (see
``tests/benchmarks/find_scores.py``), some of which have no source in the library. Where hardly any
of those queries lie, at few letters or a small share, the probability falls off. Texts that differ
exclude each other, so that their probabilities add up to 1 at the most; near twins, the same words
in two books, are one answer.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from inscribe.files import StrPath
from inscribe.signs import Transcription
from inscribe.sources import index
from inscribe.sources.keys import UNKNOWN
from inscribe.sources.library import Library
from inscribe.sources.matching import fit, sign_gain
from inscribe.sources.opening import opened
from inscribe.sources.passages import SourcePassage
from inscribe.sources.query import SourceQuery, grams_of, query_of
from inscribe.sources.texts import SourceText

if TYPE_CHECKING:
    from inscribe.keys import HitKeys, HitsKeys

CANDIDATES = 3000  # passages taken from the index
COMPARED = 80  # of these, how many are compared in full
COMPARED_SOUNDS = 100_000  # fewer passages, where so many sounds of a long query are compared
FEWEST_COMPARED = 40
DOUBTFUL = 0.7  # share of a query below which the best fit makes the search be done once more ...
MORE_CANDIDATES = 12000  # ... among so many passages
IN_ORDER = 0.75  # share of a query that fits in order, from which no other order is tried
TRIED = 10  # candidates that are tried in another order
NO_SOURCE = 0.5  # below this probability the answer is: no source found
BITS_A_LETTER = 3.6  # what one fitting letter tells, in verse; from memory
BITS_A_GRAM = 6.0  # grams that tell so many bits weigh as much as one letter in its place
UNLIKELY = 0.001  # probability below which a text is not looked at for its twins
MOST_TOLD = 60.0  # bits
MOST_AHEAD = 8.0  # letters
WEIGHTS = (-6.59, 0.09, 6.55, 0.25)  # intercept and one a feature, fitted by find_scores.py
# No query of the benchmark with so small a share that fits, and few with so few letters (with less
# than five none), was from the text found.
SMALL_SHARE, PER_SHARE = 0.7, 40.0
FEW_LETTERS, PER_LETTER = 6.0, 0.8
TWIN = 0.8  # share of letters in common above which two passages are near twins


@dataclass(frozen=True, slots=True)
class Hit:
    """One text that may be the source, and how probable that is.

    >>> import tempfile
    >>> from inscribe import Library, SourceText, add_texts, find_source, parse
    >>> cherries = SourceText("cherries", ("世の中に絶えて桜のなかりせば",))
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     with Library(f"{folder}/library.sqlite", create=True) as library:
    ...         _ = add_texts(library, [cherries])
    ...         hit = find_source(library, parse("世の中に桜のなかりせは"))[0]
    >>> hit.text.id, hit.rank
    ('cherries', 1)
    """

    rank: int
    text: SourceText
    score: float  # probability from 0 to 1 that this is the source
    first_line: int  # of the text, from 0
    last_line: int
    gain: float  # letters that fit, less the price of what does not
    weight: int  # letters the query has
    behind: float = 0.0  # the gain of the next different text
    why: str = ""

    @property
    def spelled(self) -> str:
        """The lines found, in kana where the text is Japanese and has that for each line."""
        kana = self.text.spelled.replace("／", "\n").split("\n")
        lines = kana if len(kana) == len(self.text.lines) else self.text.lines
        return "\n".join(lines[self.first_line : self.last_line + 1])

    def to_dict(self) -> HitKeys:
        """Return it as printed in JSON; lines count from 1."""
        return {
            "rank": self.rank,
            "id": self.text.id,
            "title": self.text.title,
            "score": round(self.score, 4),
            "text": self.text.text,
            "why": self.why,
            "lines": [self.first_line + 1, self.last_line + 1],
        }


def answer(query: str, hits: Sequence[Hit]) -> HitsKeys:
    """Return the answer to one query: the hits, and whether any is probable enough to be it."""
    is_found = any(hit.score >= NO_SOURCE for hit in hits)
    return {"query": query, "found": is_found, "hits": [hit.to_dict() for hit in hits]}


@dataclass(frozen=True, slots=True)
class _SourceCandidate:
    text: int
    passage: SourcePassage
    gain: float


def find(library: Library | StrPath, text: Transcription, most: int = 5) -> tuple[Hit, ...]:
    """Return up to ``most`` texts that ``text`` may be from, the most probable first.

    ``library`` is an open library, or the path of its file.

    An empty result, or a first score below one half, means that no source was found.

    Raises:
        InputError: there are fewer than two legible signs to look for, or there is no such library.

    >>> import tempfile
    >>> from inscribe import Library, SourceText, add_texts, find_source, parse
    >>> cherries = SourceText("cherries", ("世の中に絶えて桜のなかりせば",))
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     with Library(f"{folder}/library.sqlite", create=True) as library:
    ...         _ = add_texts(library, [cherries])
    ...         find_source(library, parse("世の中に桜のなかりせは"))[0].text.id
    'cherries'
    """
    with opened(library) as held:
        assert held is not None
        return _found(held, text, most)


def _found(library: Library, text: Transcription, most: int) -> tuple[Hit, ...]:
    query = query_of(text)
    compared = _compared(library, query, CANDIDATES)
    if not compared or compared[0].gain < DOUBTFUL * query.weight:
        compared = _compared(library, query, MORE_CANDIDATES)
    ranked = _by_text(_in_any_order(query, compared))
    hits = []
    for rank, (candidate, score, behind) in enumerate(_scored(query, ranked, library.size), 1):
        if rank > most:
            break
        hits.append(
            Hit(
                rank,
                library.text_of_number(candidate.text),
                score,
                candidate.passage.first_line,
                candidate.passage.last_line,
                candidate.gain,
                query.weight,
                behind,
            )
        )
    return tuple(replace(hit, why=_why(hit)) for hit in hits)


def _scored(
    query: SourceQuery, ranked: Sequence[_SourceCandidate], size: int
) -> list[tuple[_SourceCandidate, float, float]]:
    """Return each candidate, its probability, and the gain of the next different one."""
    found = []
    rest = 0.0
    answers: list[tuple[_SourceCandidate, float]] = []  # the best of each group of twins
    for candidate in ranked:
        behind = next((c.gain for c in ranked if not _are_twins(c, candidate)), 0.0)
        score = probability_of(features(query, candidate.gain, behind, size))
        found.append((candidate, score, behind))
        if score <= UNLIKELY:
            rest += score
        elif not any(_are_twins(each, candidate) for each, _ in answers):
            answers.append((candidate, score))
    whole = max(1.0, rest + sum(score for _, score in answers))
    return [(candidate, score / whole, behind) for candidate, score, behind in found]


def _compared(library: Library, query: SourceQuery, most: int) -> list[_SourceCandidate]:
    """Return the likeliest of ``most`` passages from the index, compared in full, best first."""
    shared = dict(index.passages_sharing(library.db, grams_of(query), most=most))
    found = list(library.passages(list(shared)))
    likely = _likely_letters(query)
    found.sort(key=lambda item: -_promise(likely, item[2].sounds, shared[item[0]]))
    looked_at = max(FEWEST_COMPARED, min(COMPARED, COMPARED_SOUNDS // int(query.weight + 1)))
    gains = (
        _SourceCandidate(text, passage, _gain(query, passage))
        for _, text, passage in found[:looked_at]
    )
    return sorted(gains, key=lambda candidate: -candidate.gain)


def _gain(query: SourceQuery, passage: SourcePassage) -> float:
    return max(fit(query, passage.sounds).gain, sign_gain(query, passage.signs))


def _in_any_order(query: SourceQuery, ranked: list[_SourceCandidate]) -> list[_SourceCandidate]:
    """Return the candidates with the best also tried with their phrases in another order."""
    if not ranked or ranked[0].gain >= IN_ORDER * query.weight:
        return ranked
    turned = [
        replace(c, gain=max(c.gain, fit(query, c.passage.sounds, _turn(c.passage)).gain))
        for c in ranked[:TRIED]
    ]
    return sorted([*turned, *ranked[TRIED:]], key=lambda c: -c.gain)


def _turn(passage: SourcePassage) -> float:
    """Return the price, in letters, of going on at another place of the passage.

    In a long passage something that fits is found by chance, so there it is higher.
    """
    return -math.log2(len(passage.sounds) + 2) / BITS_A_LETTER


def _promise(likely: str, sounds: str, shared: float) -> float:
    from rapidfuzz.distance import LCSseq

    return shared / BITS_A_GRAM + float(LCSseq.similarity(likely, sounds))


def _likely_letters(query: SourceQuery) -> str:
    """Return the letters of the first way through the lattice, without what cannot be read."""
    at, found = 0, ""
    while at < len(query):
        end, letters = query.arcs[at][0] if query.arcs[at] else (at + 1, "")
        found += letters
        at = end
    return found.replace(UNKNOWN, "")


def _by_text(candidates: Sequence[_SourceCandidate]) -> list[_SourceCandidate]:
    best: dict[int, _SourceCandidate] = {}
    for candidate in candidates:
        best.setdefault(candidate.text, candidate)
    return list(best.values())


def _are_twins(one: _SourceCandidate, other: _SourceCandidate) -> bool:
    from rapidfuzz.distance import LCSseq

    return one is other or bool(
        LCSseq.normalized_similarity(one.passage.sounds, other.passage.sounds) > TWIN
    )


def features(query: SourceQuery, gain: float, behind: float, size: int) -> tuple[float, ...]:
    """Return what the probability of a hit is judged by.

    The bits its fitting letters tell beyond the size of the library, the share of the query that
    fits, how many letters the next different text lies behind, each held within bounds, and how
    many letters are wanting to enough of them. ``size`` is the number of passages.
    """
    told = BITS_A_LETTER * gain - math.log2(max(size, 1) + 1)
    share = gain / query.weight
    few = max(0.0, FEW_LETTERS - gain)
    ahead = min(gain - behind, MOST_AHEAD)
    return min(told, MOST_TOLD), max(-1.0, min(share, 1.0)), ahead, few


def probability_of(judged: tuple[float, ...]) -> float:
    """Return the probability that a hit with these features is the source."""
    *fitted, few = judged
    logit = WEIGHTS[0] + sum(w * value for w, value in zip(WEIGHTS[1:], fitted, strict=True))
    logit -= PER_SHARE * max(0.0, SMALL_SHARE - fitted[1]) + PER_LETTER * few
    return 1 / (1 + math.exp(-max(-30.0, min(30.0, logit))))


def _why(hit: Hit) -> str:
    lines = (
        f"line {hit.first_line + 1}"
        if hit.first_line == hit.last_line
        else f"lines {hit.first_line + 1}–{hit.last_line + 1}"
    )
    share = max(0.0, min(1.0, hit.gain / hit.weight))
    return f"{share:.0%} of about {hit.weight} sounds fit {lines}"
