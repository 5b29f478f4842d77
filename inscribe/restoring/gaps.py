"""What may have stood in a lost stretch of unknown length.

A source tells it outright. Without one, the formula of a signature proposes whole words; in verse
the metre says how many morae are lost, and the words are built sign by sign, the most promising
kept at each step. Longer stretches than ``MOST_MORAE`` are not guessed at.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator

from inscribe.restoring import formula, verse
from inscribe.restoring.answering import SURE, Answer, named
from inscribe.restoring.inscription import WornInscription
from inscribe.restoring.kinds import kind_name
from inscribe.restoring.model import Candidate, Evidence
from inscribe.restoring.name_chances import UNREAD
from inscribe.restoring.verse import WornPoem

MOST_MORAE = 7  # lost in verse, above which nothing is guessed
_MOST_SIGNS = 5
_KEPT = 10
_EXTENSIONS = 120  # the commonest signs of verse, by which a stretch is lengthened
_WORDS_OF = (1, 2, 3, 4)  # signs a lost word of a signature may have

Shares = dict[str, float]
_GAP_REMARK = "the signs lost are not counted; the length of a candidate is part of the guess"


def candidates(
    made: WornInscription, sign: int, answers: list[Answer], most: int
) -> tuple[tuple[Candidate, ...], str]:
    """Return what may fill a gap, the likeliest first, and a remark where little can be said."""
    remark = _GAP_REMARK
    if made.poem is None:
        language, remark = _words(made, sign)
    else:
        language, remark = _lines(made, sign)
    trust = min(SURE, sum(answer.weight for answer in answers))
    mixed = {text: share * (1 - trust) for text, share in language.items()}
    for answer in answers:
        part = trust * answer.weight / sum(a.weight for a in answers)
        mixed[answer.text] = mixed.get(answer.text, 0.0) + part
    ranked = sorted(mixed.items(), key=lambda item: (-item[1], item[0]))[:most]
    found = tuple(
        Candidate(rank, text, share, tuple(_evidence(made, sign, text, answers)))
        for rank, (text, share) in enumerate(ranked, start=1)
    )
    return found, "" if answers else remark


def _evidence(
    made: WornInscription, sign: int, text: str, answers: list[Answer]
) -> Iterator[Evidence]:
    for answer in answers:
        if answer.text == text:
            yield Evidence("source", f"{named(answer.hit)} has it here")
    if made.poem is None:
        kind = made.possible.get(sign, {}).get(text)
        if kind:
            yield Evidence("formula", kind_name(kind.kind))
        return
    at = made.offsets[sign]
    metre = _metre_of(made.poem, at)
    if metre is not None:
        heard = verse.heard(metre, at, text)
        if heard.phrases:
            counts = "-".join(map(str, heard.phrases))
            yield Evidence(
                "metre", f"{counts} morae: the metre is {'' if heard.regular else 'not '}kept"
            )


def _words(made: WornInscription, sign: int) -> tuple[Shares, str]:
    """Return the words that the formula lets stand in the gap, and what kinds of words it wants."""
    at, length = made.offset(sign), made.length(sign)
    before, after = made.text[:at], made.text[at + length :]
    found: dict[str, formula.Possible] = {}
    for count in _WORDS_OF:
        unread = before + UNREAD * count + after
        found |= formula.Walks(unread, made.names).words_at(at, at + count)
    total = sum(possible.chance for possible in found.values()) or 1.0
    made.possible[sign] = found
    kinds: defaultdict[str, float] = defaultdict(float)
    for possible in found.values():
        kinds[kind_name(possible.kind)] += possible.chance / total
    likeliest = sorted(kinds.items(), key=lambda item: -item[1])[:3]
    wanted = ", ".join(f"{kind} ({share:.0%})" for kind, share in likeliest)
    shares = {text: possible.chance / total for text, possible in found.items()}
    return shares, f"one word is lost here, by the formula: {wanted}" if wanted else ""


def _metre_of(poem: WornPoem, at: int) -> WornPoem | None:
    """Return the poem with its one gap as a single worn place, if a metre can be told for it."""
    if poem.text.count(verse.UNREAD) != 1:
        return None
    return verse.with_gap(poem, at)


def _lines(made: WornInscription, sign: int) -> tuple[Shares, str]:
    """Return stretches of verse that mend the metre, and a remark."""
    assert made.poem is not None
    at = made.offsets[sign]
    poem = _metre_of(made.poem, at)
    missing = verse.lost_morae(poem) if poem else None
    if poem is None or poem.metre is None or missing is None:
        return {}, "there is no metre to say how much is lost, and no source was found"
    if missing > MOST_MORAE:
        return {}, f"about {missing} morae are lost, too many to guess without a source"
    before, after = poem.text[:at], poem.text[at + 1 :]
    done: Shares = {}
    kept = [""]
    for _ in range(min(_MOST_SIGNS, missing)):
        grown = [text + each for text in kept for each in verse.commonest(_EXTENSIONS)]
        for text in grown:
            done[text] = -verse.cost(before + text + after, poem) + verse.frequency(text)
        kept = sorted(
            grown, key=lambda text: -(verse.frequency(text) - _start(before + text, poem))
        )
        kept = kept[:_KEPT]
    top = max(done.values())
    shares = {text: math.exp(weight - top) for text, weight in done.items()}
    total = sum(shares.values())
    return {text: share / total for text, share in shares.items()}, _GAP_REMARK


def _start(text: str, poem: WornPoem) -> float:
    """Return what the beginning of a poem costs by its words alone."""
    return verse.cost(text[-verse.NEAR :], WornPoem(text, None, poem.voiced))
