"""One passage read as what it is: each kind has its own reader.

Each reader takes a text whose signs keep the numbers they have in the whole inscription, and
returns an interpretation of it, as if it stood alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from inscribe.forms import NormalText, normalise_text
from inscribe.reading.chinese import MARKS as RETURN_MARKS, has_marks
from inscribe.reading.inscription.as_prose import read_as_prose
from inscribe.reading.inscription.weighing import by_weight
from inscribe.reading.inscription.wishes import Wishes
from inscribe.reading.words import (
    MARK,
    InscribedText,
    Interpretation,
    Kind,
    Passage,
    Proposal,
    Register,
    carved_text,
    doubts_of_forms,
    marks_as_words,
    settled_part,
    settled_proposal,
    settled_signature,
    still_open,
    without_reasons,
    words_around_marks,
)

if TYPE_CHECKING:
    from inscribe.reading.verse import VerseReading

_LINE_ENDS = re.compile(r"[／」\s]")
_NO_METRE_OVER_A_GAP = "a gap leaves the metre open; read word by word"

REGISTER_OF: dict[Kind, Register] = {
    "verse": "verse",
    "prose": "prose",
    "chinese": "prose",
    "heading": "prose",
    "signature": "signature",
    "date": "signature",
    "dedication": "signature",
    "seal": "signature",
}


def read_as(kind: Kind, text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what a text says that is one passage of a kind."""
    if kind == "verse":
        return read_as_verse(text, wishes)
    if kind == "prose":
        return read_as_prose(text, "prose", wishes)
    if kind in ("chinese", "heading", "dedication", "seal"):
        from inscribe.reading.inscription import framed

        found = framed.read_by_frame(kind, text, wishes) if kind != "chinese" else None
        found = framed.read_as_saying(text, wishes) if kind == "chinese" else found
        if found is not None:
            return found
    if REGISTER_OF[kind] == "prose":
        return read_as_prose(text, "prose", wishes)
    return read_as_signature(text, wishes)


def read_as_verse(text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what a poem says."""
    reading, reason = poem(text, wishes)
    return verse_of(text, wishes, reading, reason)


def verse_of(
    text: InscribedText, wishes: Wishes, reading: VerseReading, reason: str = ""
) -> Interpretation:
    """Return the interpretation of a poem that has been read."""
    from inscribe.reading.verse import verse_interpretation

    found = verse_interpretation(text, reading, reason, wishes.alternatives)
    if wishes.overrides and reading.metre is None:
        best = settled_proposal(found.proposals[0], wishes.overrides)
        found = replace(found, proposals=(best,))
    return found


def poem(text: InscribedText, wishes: Wishes) -> tuple[VerseReading, str]:
    """Return the reading of a poem, with marks at its ends put aside while the metre is sought."""
    from inscribe.reading.verse import read_verse

    plain = text.normal.text
    bracketed = "［" in plain or "（" in plain
    marks = [match.span() for match in MARK.finditer(plain)] if bracketed else []
    if not marks and wishes.source:
        from inscribe.reading.verse import read_by_source

        source = normalise_text(_LINE_ENDS.sub("", wishes.source)).text
        if by_source := read_by_source(plain, source, wishes.overrides, text.normal.origin):
            return by_source, _told_by_source(by_source)
    if not marks:
        return read_verse(plain, text.breaks, wishes.overrides, text.normal.origin), ""
    from inscribe.reading.verse import VerseReading, marks_voicing, words_without_metre

    start, end = 0, len(plain)
    while marks and marks[0][0] == start:
        start = marks.pop(0)[1]
    while marks and marks[-1][1] == end:
        end = marks.pop()[0]
    before, after = marks_as_words(plain[:start]), marks_as_words(plain[end:])
    if marks or start == end:
        words_of = partial(words_without_metre, voiced=marks_voicing(plain))
        words = words_around_marks(plain, words_of)
        return VerseReading(words, None), _NO_METRE_OVER_A_GAP
    breaks = frozenset(at - start for at in text.breaks if start < at < end)
    origin = text.normal.origin[start:end]
    core = read_verse(plain[start:end], breaks, wishes.overrides, origin)
    phrases = tuple((count, first + len(before)) for count, first in core.phrases)
    return core._replace(words=[*before, *core.words, *after], phrases=phrases), ""


def _told_by_source(reading: VerseReading) -> str:
    """Return that a poem is read by its source, and where the source does not have its words."""
    from inscribe.reading.verse import READ_BY_SOURCE

    if not reading.own:
        return READ_BY_SOURCE
    return f"{READ_BY_SOURCE}; it lacks {', '.join(reading.own)}, read alone"


def read_as_signature(text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what a text says as a signature.

    A date or a dedication that stands alone is read by the same rules.
    """
    from inscribe.reading.prose import modern_normal
    from inscribe.reading.signatures import read_signature

    normal = _without_return_marks(text.normal)
    reading = read_signature(normal, text.breaks, text.cuts, ends=wishes.among_others)
    if not reading.proposals:
        return read_as_prose(text, "signature", wishes)
    proposals = reading.proposals
    if wishes.overrides:
        settled = [settled_signature(each, wishes.overrides) for each in proposals]
        proposals = distinct(
            [settled[0], *[without_reasons(each, wishes.overrides) for each in settled[1:]]]
        )
    found = Interpretation(
        carved_text(text),
        text.normal.text,
        modern_normal(text.normal, text.carved),
        "signature",
        proposals,
        {key: settled_part(part, wishes.overrides) for key, part in reading.parts.items()},
        (),
        text.normal.changes,
        (*doubts_of_forms(text), *still_open(reading.doubts, wishes.overrides)),
    )
    return by_weight("signature", found)


def distinct(proposals: Iterable[Proposal]) -> tuple[Proposal, ...]:
    """Return proposals without those whose Latin letters a better one has."""
    by_romaji: dict[str, Proposal] = {}
    for proposal in proposals:
        by_romaji.setdefault(proposal.romaji, proposal)
    return tuple(by_romaji.values())


def _without_return_marks(normal: NormalText) -> NormalText:
    if not has_marks(normal.text):
        return normal
    kept = [i for i, sign in enumerate(normal.text) if sign not in RETURN_MARKS]
    text = "".join(normal.text[i] for i in kept)
    return NormalText(text, tuple(normal.origin[i] for i in kept), normal.changes)


def as_passage(kind: Kind, text: InscribedText, read: Interpretation) -> Passage:
    """Return the passage that a text and its interpretation are."""
    origin = text.normal.origin
    first, last = min(origin), max(origin)
    return Passage(
        kind,
        first,
        last,
        "".join(text.carved[first : last + 1]),
        text.normal.text,
        read.proposals,
        signature=read.signature,
    )
