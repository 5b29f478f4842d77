"""The whole collation: alignment, groups, figures, column breaks and space."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import forms
from inscribe.collate.fidelity import fidelity
from inscribe.collate.groups import groups, joined
from inscribe.collate.model import Collation, Group
from inscribe.collate.moved import with_moves
from inscribe.collate.search import Search
from inscribe.collate.sides import Side, side
from inscribe.collate.whole_words import widened
from inscribe.collate.word_starts import word_starts
from inscribe.signs import Transcription

if TYPE_CHECKING:
    from inscribe.record import Inscription


def collate(
    copy: Transcription,
    source: Transcription,
    measurements: Inscription | None = None,
    *,
    excerpt: bool = False,
) -> Collation:
    """Return the collation of ``copy`` with ``source``.

    ``measurements`` is the inscription whose plate and columns were measured, for the space
    account. An ``excerpt`` is held against the part of the source it answers best.
    """
    one, other = prepared(copy), prepared(source)
    path = Search(one, other).cheapest(excerpt=excerpt)
    found = _with_whole_words(list(groups(path, one, other)), one, other)
    window = (path.start.j, path.steps[-1].state.j if path.steps else path.start.j)
    return Collation(copy, source, found, fidelity(found), path.cost, window)


def collate_texts(copy: str, source: str) -> Collation:
    """Return the collation of two texts written in the Japanese transcription conventions."""
    from inscribe import notation

    return collate(notation.parse(copy), notation.parse(source))


def _with_whole_words(found: list[Group], copy: Side, source: Side) -> tuple[Group, ...]:
    if any(group.is_substantive for group in found):
        found = widened(found, copy, source, word_starts(copy), word_starts(source))
        found = with_moves(found, copy, source)
    return joined(found, copy, source)


def prepared(text: Transcription) -> Side:
    """Return ``text`` as the aligner sees it."""
    return side(text, forms.normalise(text))
