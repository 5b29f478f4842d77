"""The whole collation: alignment, figures, column breaks and space."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import forms
from inscribe.collation.align import Extent, Side, align_extent, side
from inscribe.collation.breaks import breaks
from inscribe.collation.counts import fidelity
from inscribe.collation.model import Collation
from inscribe.signs import Transcription

if TYPE_CHECKING:
    from inscribe.record import Inscription


def collate(
    copy: Transcription,
    source: Transcription,
    measurements: Inscription | None = None,
    *,
    extent: Extent = "auto",
) -> Collation:
    """Return the collation of ``copy`` with ``source``.

    ``measurements`` is the inscription whose plate and columns were measured, for the space
    account. An "excerpt" is held against the part of the source it answers best, a "whole" copy
    against all of it; by itself, the program decides and says so in the notes.
    """
    found = align_extent(prepared(copy), prepared(source), extent)
    differences = [group for group in found.groups if group.kind != "same"]
    account, notes = None, found.notes
    if measurements is not None:
        from inscribe.collation.space import space_account
        from inscribe.record import partly_boxed

        notes += tuple(partly_boxed(measurements)) if measurements.boxes else ()
        account = space_account(copy, source, differences, measurements, found.window)
    return Collation(
        copy,
        source,
        found.groups,
        fidelity(found.groups),
        found.cost,
        found.window,
        breaks(copy, source, found.groups),
        account,
        notes,
        found.work,
    )


def collate_texts(copy: str, source: str) -> Collation:
    """Return the collation of two texts written in the Japanese transcription conventions."""
    from inscribe import notation

    return collate(notation.parse(copy), notation.parse(source))


def prepared(text: Transcription) -> Side:
    """Return ``text`` as the aligner sees it."""
    return side(text, forms.normalise(text))
