"""The whole collation: alignment, figures, column breaks and space."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe import forms
from inscribe.collation.align import Extent, Side, align_extent, side
from inscribe.collation.beside import carved, copied_extent, standing_beside, with_beside
from inscribe.collation.breaks import breaks
from inscribe.collation.counts import fidelity
from inscribe.collation.model import NO_DIFFERENCE, Collation
from inscribe.collation.printed import as_printed
from inscribe.signs import Transcription

if TYPE_CHECKING:
    from inscribe.record import Inscription
    from inscribe.terms import SourceKind


@contextmanager
def _no_search_for_rings() -> Iterator[None]:
    """Keep Python from looking for objects that refer to each other: a collation has none.

    In long texts that is a third of the time.
    """
    looked = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if looked:
            gc.enable()


@_no_search_for_rings()
def collate(
    copy: Transcription,
    source: Transcription,
    measurements: Inscription | None = None,
    *,
    extent: Extent = "auto",
    kind: SourceKind | None = None,
) -> Collation:
    """Return the collation of ``copy`` with ``source``.

    ``measurements`` is the inscription whose plate and columns were measured, for the space
    account. An "excerpt" is held against the part of the source it answers best, a "whole" copy
    against all of it; by itself, the program decides and says so in the notes. What stands beside
    the copied text (who wrote, who carved) is set aside first. ``kind`` is what the source is:
    against a modern edition the share of signs as carved says nothing.

    >>> from inscribe import parse
    >>> found = collate(parse("世の中に桜のなかりせは"), parse("世の中にたえて桜のなかりせば"))
    >>> found.fidelity.omitted, found.fidelity.signs_in_source
    (3, 14)
    """
    ours, theirs = prepared(copy), prepared(source)
    found = align_extent(ours, theirs, extent)
    groups, beside = found.groups, standing_beside(copy, source, found.groups, measurements)
    first, end = 0, len(ours)
    if beside:
        first, end = copied_extent(beside, len(ours))
        found = align_extent(ours.part(first, end), theirs, extent)
        groups, beside = with_beside(found.groups, beside, (first, end), ours.raw)
    differences = [group for group in groups if group.kind not in NO_DIFFERENCE]
    account, notes = None, found.notes
    if measurements is not None:
        from inscribe.collation.space import space_account
        from inscribe.record import partly_boxed

        notes += tuple(partly_boxed(measurements)) if measurements.boxes else ()
        after = carved(copy, (each for each in beside if each.first >= end))
        account = space_account(copy, source, differences, measurements, found.window, after)
        if account is not None:
            account = replace(account, beside=carved(copy, beside))
    return Collation(
        copy,
        source,
        groups,
        replace(fidelity(groups), by_signs=kind != "modern edition"),
        found.cost,
        found.window,
        breaks(copy, source, groups),
        account,
        notes,
        found.work,
        beside,
        as_printed,
    )


@_no_search_for_rings()
def collate_texts(copy: str, source: str) -> Collation:
    """Return the collation of two texts written in the Japanese transcription conventions.

    >>> collate_texts("花の色は", "はなのいろは").differences[0].kind
    'spelling'
    """
    from inscribe import notation

    return collate(notation.parse(copy), notation.parse(source))


def prepared(text: Transcription) -> Side:
    """Return ``text`` as the aligner sees it."""
    return side(text, forms.normalise(text))
