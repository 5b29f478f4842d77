"""Read a signature: its parts, and its readings ranked, in Japanese word order.

    >>> from inscribe.forms import normalise_text
    >>> reading = read_signature(normalise_text("於東都綾国造之"))
    >>> reading.proposals[0].romaji
    'Tōto ni oite Ayakuni kore o tsukuru'
    >>> reading.parts["place"].romaji, reading.parts["name"].romaji
    ('Tōto', 'Ayakuni')

A reading of a name is a proposal, and a signature, however read, is no attribution.
"""

from __future__ import annotations

import heapq
import math
from collections.abc import Collection, Iterator, Sequence
from typing import NamedTuple

from inscribe.forms import NormalText, carved_between
from inscribe.reading.signatures.dates import dated_pieces
from inscribe.reading.signatures.formulas import Arrangement, Dated, arranged
from inscribe.reading.signatures.likelihood import signature_likelihood
from inscribe.reading.signatures.options import KANA_ONLY, Option, Unit
from inscribe.reading.signatures.pieces import is_seal, legend_of
from inscribe.reading.signatures.spans import PartSpan
from inscribe.reading.signatures.split import SignatureDivision, divisions
from inscribe.reading.words import Doubt, Proposal, SignaturePart, Token
from inscribe.terms import SignIndex

__all__ = ["SignatureReading", "read_signature", "signature_likelihood"]

MOST_PROPOSALS = 6
_MOST_OTHERWISE = 2  # proposals from each division but the best
_LONGEST = 160  # a longer text is prose; its divisions are not worth the search
_DEAR_DIVISION = 3.5  # a division this much dearer than the best is no proposal
_DOUBTFUL = 0.5  # a second reading of a name with this share of the first is a doubt


class SignatureReading(NamedTuple):
    """The parts of a signature by key, its readings best first, and what to look at again."""

    parts: dict[str, SignaturePart]
    proposals: tuple[Proposal, ...]
    doubts: tuple[Doubt, ...] = ()


class _SignatureReading(NamedTuple):
    cost: float
    units: tuple[Unit, ...]
    chosen: tuple[Option, ...]
    spans: tuple[PartSpan, ...]
    romaji: str
    divided_otherwise: bool


def read_signature(
    normal: NormalText,
    breaks: Collection[int] = (),
    cuts: Collection[int] = (),
    *,
    ends: bool = False,
) -> SignatureReading:
    """Return the parts and the ranked readings of a signature.

    Args:
        normal: the normalised text; a sign that cannot be read stands as □.
        breaks: offsets in its text at which a column begins, where known; words seldom run
            over a column's end.
        cuts: offsets before which the transcriber left a space.
        ends: whether other passages stand beside it, so that it is a sentence of its own.
    """
    text = normal.text
    if not text or len(text) > _LONGEST:
        return SignatureReading({}, ())
    dates = dated_pieces(text)
    found = divisions(text, breaks, [piece for piece, _ in dates], cuts)
    by_offset = {(piece.first, piece.last): options for piece, options in dates}
    candidates = _candidates(found, by_offset, ends)
    best = candidates[0]
    tokens = _Tokens(normal)
    proposals = tuple(_proposal(c, best, tokens) for c in candidates)
    return SignatureReading(_parts(best, normal), proposals, _doubts(best, normal.origin))


def _candidates(
    found: Sequence[SignatureDivision], dated: Dated, ends: bool
) -> list[_SignatureReading]:
    """Return the cheapest readings over all divisions, each romanised text once."""
    pool: list[_SignatureReading] = []
    for rank, division in enumerate(found):
        dearer = division.cost - found[0].cost
        if dearer <= _DEAR_DIVISION:
            most = _MOST_OTHERWISE if rank else MOST_PROPOSALS
            made = arranged(division.pieces, dated, ends=ends)
            pool += _readings_of(made, dearer, most, rank > 0)
    distinct: dict[str, _SignatureReading] = {}
    for candidate in sorted(pool, key=lambda c: c.cost):
        distinct.setdefault(candidate.romaji, candidate)
    return list(distinct.values())[:MOST_PROPOSALS]


def _readings_of(
    made: Arrangement, base: float, most: int, otherwise: bool
) -> Iterator[_SignatureReading]:
    """Yield the combinations of options with the least cost, best first."""
    units = tuple(made.units)
    spans = tuple(made.spans)
    start = (0,) * len(units)
    queue = [(base, start)]
    seen = {start}
    for _ in range(most):
        if not queue:
            return
        cost, choice = heapq.heappop(queue)
        chosen = tuple([unit.options[i] for unit, i in zip(units, choice, strict=True)])
        yield _SignatureReading(cost, units, chosen, spans, _joined(units, chosen), otherwise)
        for at, unit in enumerate(units):
            following = choice[at] + 1
            if following < len(unit.options):
                options = unit.options
                grown = cost + options[following].cost - options[choice[at]].cost
                changed = (*choice[:at], following, *choice[at + 1 :])
                if changed not in seen:
                    seen.add(changed)
                    heapq.heappush(queue, (grown, changed))


def _joined(units: Sequence[Unit], chosen: Sequence[Option]) -> str:
    text = ""
    for unit, option in zip(units, chosen, strict=True):
        if option.romaji:
            hyphen = unit.hyphen and text and " " not in option.romaji
            text += ("-" if hyphen else " ") + option.romaji
    return text.strip()


def _proposal(candidate: _SignatureReading, best: _SignatureReading, tokens: _Tokens) -> Proposal:
    score = math.exp(best.cost - candidate.cost)
    return Proposal(tokens.of(candidate), candidate.romaji, score, _reasons(candidate, best))


class _Tokens:
    """Units as tokens that know their signs; proposals share most of them."""

    def __init__(self, normal: NormalText) -> None:
        self._normal = normal
        self._known: dict[tuple[int, int], Token] = {}

    def of(self, candidate: _SignatureReading) -> tuple[Token, ...]:
        """Return the tokens of a reading."""
        return tuple(map(self._token, candidate.units, candidate.chosen))

    def _token(self, unit: Unit, option: Option) -> Token:
        """Return the token of a unit read in one way."""
        key = (id(unit), id(option))
        if key not in self._known:
            self._known[key] = Token(
                carved_between(self._normal, unit.first, unit.last),
                unit.text,
                option.kana,
                option.romaji,
                self._normal.origin[unit.first],
                self._normal.origin[unit.last],
                part_of_speech=unit.kind,
                gloss=unit.gloss,
                reason=option.reason,
            )
        return self._known[key]


def _reasons(candidate: _SignatureReading, best: _SignatureReading) -> tuple[str, ...]:
    """Return why a text is read so; for another reading than the best, what sets it apart."""
    if candidate.divided_otherwise:
        pieces = " ".join(unit.text for unit in sorted(candidate.units, key=lambda u: u.first))
        return (f"divided otherwise: {pieces}", *_chosen_otherwise(candidate))
    if candidate is not best:
        return _chosen_otherwise(candidate)
    reasons = [
        f"{unit.text} {option.romaji}: {option.reason}"
        for unit, option in zip(candidate.units, candidate.chosen, strict=True)
        if option.reason and unit.kind not in ("unread", "mark")
    ]
    return tuple(reasons) or (_said_of_words(candidate.units),)


def _said_of_words(units: Sequence[Unit]) -> str:
    """Return what holds of the words of a signature none of which needs a reason."""
    marks = [unit.text for unit in units if unit.kind == "mark"]
    words = len(units) - len(marks) - sum(unit.kind == "unread" for unit in units)
    if words:
        every = "every word" if words + len(marks) == len(units) else "every legible word"
        return f"{every} is a usual one of signatures"
    if marks and len(marks) == len(units):
        seals = all(is_seal(mark) for mark in marks)
        return "a seal alone" if seals else "marks alone: they have no words"
    return "no word can be read"


def _chosen_otherwise(candidate: _SignatureReading) -> tuple[str, ...]:
    return tuple(
        ": ".join(filter(None, (f"{unit.text} {option.romaji}", option.reason)))
        for unit, option in zip(candidate.units, candidate.chosen, strict=True)
        if option is not unit.options[0]
    )


def _parts(best: _SignatureReading, normal: NormalText) -> dict[str, SignaturePart]:
    parts: dict[str, SignaturePart] = {}
    for span in sorted(best.spans, key=lambda s: (s.first, -s.last)):
        key = span.key
        count = 1
        while key in parts:
            count += 1
            key = f"{span.key}_{count}"
        parts[key] = _part(span, best, normal)
    return parts


def _part(span: PartSpan, best: _SignatureReading, normal: NormalText) -> SignaturePart:
    inside = [
        (unit, option)
        for unit, option in zip(best.units, best.chosen, strict=True)
        if span.first <= unit.first and unit.last <= span.last
    ]
    units = [unit for unit, _ in inside]
    chosen = [option for _, option in inside]
    others: tuple[str, ...] = ()
    if len(units) == 1:
        others = tuple(o.romaji for o in units[0].options if o is not chosen[0])
    text = carved_between(normal, span.first, span.last)
    first, last = normal.origin[span.first], normal.origin[span.last]
    if is_seal(text) and (legend := legend_of(text)):
        return _legend(legend, first, last)
    kana = " ".join(option.kana for option in chosen if option.kana)
    return SignaturePart(text, kana, _joined(units, chosen), first, last, others)


def _legend(legend: str, first: SignIndex, last: SignIndex) -> SignaturePart:
    """Return a seal with the ranked readings of what it says."""
    from inscribe.reading.signatures.seals import legend_readings

    readings = legend_readings(legend)
    if not readings:
        return SignaturePart(legend, "", "", first, last)
    best, *others = readings
    return SignaturePart(
        legend, best.kana, best.romaji, first, last, tuple(o.romaji for o in others)
    )


def _said_of_lone_word(unit: Unit) -> str:
    """Return what is doubtful of a name with no other word of a signature beside it."""
    if unit.kind not in ("name", "surname", "art_name", "unlisted_place") or len(unit.text) == 1:
        return ""
    if KANA_ONLY.fullmatch(unit.text):
        return f"{unit.text} may be a name or a word in kana"
    if len(unit.text) > 2 or "□" in unit.text:
        return ""
    return f"{unit.text} may be a name or a subject"


def _doubts(best: _SignatureReading, origin: Sequence[SignIndex]) -> tuple[Doubt, ...]:
    """Return the names whose second reading weighs nearly as much, and what found no place."""
    doubts = []
    if len(best.units) == 1 and (why := _said_of_lone_word(best.units[0])):
        doubts.append(Doubt(origin[best.units[0].first], origin[best.units[0].last], why))
    for unit in best.units:
        first, last = origin[unit.first], origin[unit.last]
        if unit.kind == "other":
            doubts.append(Doubt(first, last, f"{unit.text} has no place in the formula"))
        elif len(unit.options) > 1 and unit.options[1].cost < -math.log(_DOUBTFUL):
            one, two = unit.options[0].romaji, unit.options[1].romaji
            doubts.append(Doubt(first, last, f"{unit.text} may be read {one} or {two}"))
    return tuple(doubts)
