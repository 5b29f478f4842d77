"""From a normalised text to the whole interpretation: its passages, each read as what it is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import accumulate
from typing import TYPE_CHECKING, cast, get_args

from inscribe.forms import NormalText, normalise_text, signs_of
from inscribe.reading.inscription.at_once import kind_at_once
from inscribe.reading.inscription.readers import as_passage, read_as, verse_of
from inscribe.reading.inscription.weighing import warned
from inscribe.reading.inscription.wishes import Wishes
from inscribe.reading.words import (
    Doubt,
    InscribedText,
    Interpretation,
    Kind,
    Passage,
    Register,
    Token,
    applying,
    in_order,
    interpretation,
)

if TYPE_CHECKING:
    from inscribe.reading.passages import PassageStretch

__all__ = ["Wishes", "interpreted", "interpreted_columns"]

# The chance of another division from which on it is a doubt; lower where a surname is in no list.
_HOUSES = frozenset("屋")  # of tradesmen, named after anything
_LAST_LATIN = "\u2fff"  # what is after it in a reading was not put into Latin letters
_NEAR, _NEAR_A_RARE_NAME = 0.2, 0.1


def interpreted_columns(columns: list[str], wishes: Wishes) -> Interpretation:
    """Return what signs say that are written one beside the other, by column."""
    plain = "".join(columns) if len(columns) > 1 else columns[0]
    normal = normalise_text(plain)
    single = normal.origin[-1:] == (len(plain) - 1,)  # no sign is of several characters
    carved: Sequence[str] = plain if single else signs_of(plain)
    if len(columns) == 1:
        return interpreted(InscribedText(normal, carved), wishes)
    lengths = [len(column if single else signs_of(column)) for column in columns]
    return interpreted(InscribedText(normal, carved, _breaks(lengths, normal)), wishes)


def _breaks(lengths: list[int], normal: NormalText) -> frozenset[int]:
    """Return the offsets in the normalised text where the later columns begin."""
    begins = set(accumulate(lengths[:-1]))
    if normal.origin[-1:] == (len(normal.text) - 1,):
        return frozenset(begins - {0})
    return frozenset(normal.origin.index(sign) for sign in begins if sign in normal.origin) - {0}


def interpreted(text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what ``text`` says."""
    if not text.normal.text:
        return interpretation(text, "prose", [], (), ())
    overrides, misfits = applying(wishes.overrides, text.carved) if wishes.overrides else ([], [])
    wishes = wishes._replace(overrides=overrides) if wishes.overrides else wishes
    found = _read(text, wishes)
    if not _is_a_poem_alone(found):
        found = _with_dates(found, text, wishes)
        found = replace(found, doubts=(*found.doubts, *_doubts_of_families(found, wishes)))
    if max(found.proposals[0].romaji, default="") > _LAST_LATIN:
        from inscribe.reading.inscription.doubts import with_doubts_of_unread

        found = with_doubts_of_unread(found)
    if wishes.alternatives:
        found = warned(found)
    doubts = (*found.doubts, *misfits)
    if len(doubts) < 2 and not misfits:
        return found
    return replace(found, doubts=in_order(doubts))


def _read(text: InscribedText, wishes: Wishes) -> Interpretation:
    if wishes.passages:
        return _divided(text, wishes)
    if wishes.register in get_args(Register):
        kind = cast("Kind", wishes.register)
        return _whole(kind, text, read_as(kind, text, wishes))
    plain = kind_at_once(text, wishes) if not wishes.source else None
    if plain is None:
        return _divided(text, wishes)
    if plain.verse is not None:
        return _whole(plain.kind, text, verse_of(text, wishes, plain.verse))
    found = _whole(plain.kind, text, read_as(plain.kind, text, wishes))
    return replace(found, doubts=(*found.doubts, *plain.doubts))


def _whole(kind: Kind, text: InscribedText, read: Interpretation) -> Interpretation:
    """Return the interpretation of a text that is one passage."""
    passage = as_passage(kind, text, read)
    if kind == "signature":
        from inscribe.reading.passages import role_of_signing

        passage = replace(passage, role=role_of_signing(text.normal.text))
    return replace(read, passages=(passage,))


def _divided(text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what a text says whose passages must be weighed against each other."""
    from inscribe.reading.inscription.joining import divided_otherwise, joined
    from inscribe.reading.passages import divisions_of, source_extent, spans_settled

    known, misfits = spans_settled(wishes.passages, text)
    copied = source_extent(text, wishes.source) if wishes.source else None
    whole = frozenset((o.first, o.last) for o in wishes.overrides)
    best, *others = divisions_of(text, known, copied, whole)
    made = [_passage(text, stretch, best.chance, wishes) for stretch in best.stretches]
    passages = [passage for passage, _ in made]
    if len(made) == 1:
        found = replace(made[0][1], passages=tuple(passages), changes=text.normal.changes)
    else:
        found = joined(text, passages, [read for _, read in made])
    doubts = [*misfits]
    near = _NEAR_A_RARE_NAME if _names_no_known_family(passages) else _NEAR
    if others and others[0].chance >= near:
        origin = text.normal.origin
        spans = [(origin[s.first], origin[s.end - 1], s.kind) for s in others[0].stretches]
        doubts += divided_otherwise(passages, spans, others[0].chance)
    return replace(found, doubts=(*found.doubts, *doubts))


def _names_no_known_family(passages: Sequence[Passage]) -> bool:
    """Whether a signature has a surname that UniDic lacks, so that it may be something else."""
    from inscribe.reading.names import surnames

    return any(not surnames(family.normalised) for family in _families(passages))


def _families(passages: Sequence[Passage]) -> Iterator[Token]:
    """Yield the surnames of the signatures."""
    for passage in passages:
        if passage.kind == "signature":
            for token in passage.proposals[0].tokens:
                if token.part_of_speech == "surname":
                    yield token


def _doubts_of_families(found: Interpretation, wishes: Wishes) -> Iterator[Doubt]:
    """Yield a doubt for each surname that neither a list nor a reader has.

    Of 228 surnames in the looked halves of tests/data/composed_* seven were so, six of them rightly
    read: the false alarms are 3 in a hundred surnames.
    """
    from inscribe.reading.names import known, own_names, surnames

    settled = [(each.first, each.last) for each in wishes.overrides]
    for family in _families(found.passages):
        name = family.normalised
        listed = surnames(name) or known(name).surname or name in own_names() or "□" in name
        told = any(first <= family.first <= last for first, last in settled)
        if not listed and not told and name[-1] not in _HOUSES and len(name) > 1:
            why = f"{name} is in no list of surnames; it may be something else"
            yield Doubt(family.first, family.last, why)


def _passage(
    text: InscribedText, stretch: PassageStretch, chance: float, wishes: Wishes
) -> tuple[Passage, Interpretation]:
    """Return a stretch as a passage, and its interpretation."""
    from inscribe.reading.passages import part_of

    part = part_of(text, stretch.first, stretch.end)
    first, last = min(part.normal.origin), max(part.normal.origin)
    inside = [o for o in wishes.overrides if first <= o.first and o.last <= last]
    beside = len(part.normal.text) < len(text.normal.text)
    read = read_as(stretch.kind, part, wishes._replace(overrides=inside, among_others=beside))
    passage = as_passage(stretch.kind, part, read)
    return replace(passage, role=stretch.role, chance=chance, reasons=stretch.reasons), read


def _is_a_poem_alone(found: Interpretation) -> bool:
    """Whether there is nothing but a poem that keeps a metre, in which no date stands."""
    best = found.proposals[0]
    alone = found.register == "verse" and len(found.passages) == 1
    return alone and bool(best.phrases) and len(best.reasons) == 1


def _with_dates(found: Interpretation, text: InscribedText, wishes: Wishes) -> Interpretation:
    from inscribe.dates import find

    normal = text.normal
    dates = find(normal.text, wishes.between)
    if not dates:
        return found
    placed = tuple(
        replace(date, first=normal.origin[date.first], last=normal.origin[date.last])
        for date in dates
    )
    if all(date.agreement != "conflict" for date in placed):
        return replace(found, dates=placed)
    from inscribe.reading.inscription.doubts import doubts_of_dates

    return replace(found, dates=placed, doubts=(*doubts_of_dates(placed), *found.doubts))
