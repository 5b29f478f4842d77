"""What no element of a TEI document tells, kept beside elements that somebody changed.

A reader's own text and remarks stay with the reader; who named a source, with a source of the same
words and title; what was settled of signs, with those signs where they stand now, if each still
says the same. What was said of the whole metal (photographs, what takes room) stays where every
column has as many signs as before: it counts them. Where an inscription was added or taken out, the
others are known again by their places and signs.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import SequenceMatcher
from typing import TypeVar

from inscribe import notation
from inscribe.record.model import (
    CopiedText,
    Decision,
    Inscription,
    Override,
    Plate,
    Reader,
    SettledPassage,
)
from inscribe.signs import Transcription

Spanning = TypeVar("Spanning", Override, SettledPassage, Decision)


_ALIKE = 0.5  # the share of signs by which an inscription is known again


def partners(
    told: Sequence[Inscription], kept: Sequence[Inscription]
) -> tuple[Inscription | None, ...]:
    """Return for each inscription that the elements tell the kept one it is, or None for a new one.

    As many as there were are the same ones in the same order.
    """
    if len(told) == len(kept):
        return tuple(kept)
    alike = sorted(
        ((_likeness(a, b), -i, -j) for i, a in enumerate(told) for j, b in enumerate(kept)),
        reverse=True,
    )
    found: dict[int, int] = {}
    for (_, share), i, j in alike:
        if share >= _ALIKE and -i not in found and -j not in found.values():
            found[-i] = -j
    return tuple(kept[found[i]] if i in found else None for i in range(len(told)))


def _likeness(one: Inscription, other: Inscription) -> tuple[float, float]:
    """Return how like two inscriptions are, their place counted too, and the share of signs."""
    first, second = (
        [(sign.text, sign.kind) for sign in each.transcription.signs] for each in (one, other)
    )
    share = SequenceMatcher(None, first, second, autojunk=False).ratio()
    return share + (one.place == other.place), share


def with_untold(told: Inscription, kept: Inscription) -> Inscription:
    """Return the inscription that the elements tell, with what only the record beside them has."""
    before, after = kept.transcription, told.transcription
    moved = _moved(before, after)
    same_room = [len(c.signs) for c in before.columns] == [len(c.signs) for c in after.columns]
    sources = tuple(_sources(told.sources, kept.sources))
    return replace(
        told,
        text=_text(told, kept),
        plate=_plate(told.plate, kept.plate),
        notation=kept.notation,
        readers=tuple(_readers(told.readers, kept.readers)),
        source=sources[0] if sources else None,
        other_sources=sources[1:],
        overrides=_spans(kept.overrides, moved),
        passages=_spans(kept.passages, moved),
        decisions=_spans(kept.decisions, moved),
        photographs=kept.photographs if same_room else (),
        takes_room=kept.takes_room if same_room else (),
    )


def _plate(told: Plate | None, kept: Plate | None) -> Plate | None:
    """Return the plate, with the tolerance of one of the same size: no element tells it."""
    return kept if told and kept and told[:2] == kept[:2] else told


def _text(told: Inscription, kept: Inscription) -> str:
    """Return the text in the record's own notation, in which its readers wrote theirs too."""
    if _bare(told) == _bare(kept):
        return kept.text
    if kept.notation == told.notation:
        return told.text
    return notation.render(_bare(told), kept.notation, "\n")


def _bare(inscription: Inscription) -> Transcription:
    """Return the signs without their boxes."""
    return replace(inscription, boxes=()).transcription


def _moved(before: Transcription, after: Transcription) -> Mapping[int, int]:
    """Return where each sign that still says the same stands now."""
    old, new = (
        [(sign.text, sign.kind, sign.is_legible) for sign in t.signs] for t in (before, after)
    )
    if len(old) == len(new):
        return {at: at for at, sign in enumerate(old) if sign == new[at]}
    blocks = SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks()
    return {block.a + n: block.b + n for block in blocks for n in range(block.size)}


def _spans(spans: Sequence[Spanning], moved: Mapping[int, int]) -> tuple[Spanning, ...]:
    """Return what was settled of signs that all say the same and still stand together."""
    found = []
    for span in spans:
        places = [moved.get(at) for at in range(span.first, span.last + 1)]
        start = places[0]
        if start is not None and places == list(range(start, start + len(places))):
            found.append(span._replace(first=start, last=start + len(places) - 1))
    return tuple(found)


def _readers(told: Sequence[Reader], kept: Sequence[Reader]) -> Iterator[Reader]:
    left = list(kept)
    for reader in told:
        same = next((each for each in left if (each.by, each.on) == (reader.by, reader.on)), None)
        if same:
            left.remove(same)
        yield same or reader


def _sources(told: Sequence[CopiedText], kept: Sequence[CopiedText]) -> Iterator[CopiedText]:
    left = list(kept)
    for source in told:
        same = next((each for each in left if _named(each) == _named(source)), None)
        if same is None:
            yield source
            continue
        left.remove(same)
        yield replace(
            source,
            text=same.text,
            notation=same.notation,
            file=same.file,
            by=same.by,
            on=same.on,
            reason=same.reason,
        )


def _named(source: CopiedText) -> tuple[object, ...]:
    """Return by what a source is known again: its words and its name."""
    return source.transcription, source.id, source.title, source.author, source.work, source.number
