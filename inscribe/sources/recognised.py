"""An inscription read once more by the source that the library recognises in it.

Where no source is named, but the library has one that what is carved is very probably from, and
has it in kana, the copy is read by that; the reading says which text it was.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe.errors import InputError
from inscribe.reading.verse import READ_BY_SOURCE
from inscribe.sources.copied import copied_part

if TYPE_CHECKING:
    from inscribe.reading import Interpretation
    from inscribe.signs import Transcription
    from inscribe.sources.library import Library
    from inscribe.sources.ranking import Hit

SURE_ENOUGH = 0.9  # probability of a text from which on the inscription is read by it


def read_as_recognised(
    found: Interpretation,
    text: Transcription,
    read: Callable[[str], Interpretation],
    library: Library,
) -> tuple[Interpretation, str]:
    """Return what an inscription says by the source it is from, and that source as it is read by.

    ``found`` is what it says by itself, and is returned with no source where none is sure;
    ``read`` reads it by the words of a source.
    """
    hit = _recognised(found, text, library)
    if hit is None:
        return found, ""
    source = hit.spelled
    by_source = read(source)
    said = f"the library has it: {hit.text.title or hit.text.id} (probability {hit.score:.2f})"
    proposals = tuple(
        replace(each, reasons=(*each.reasons, said))
        if any(why.startswith(READ_BY_SOURCE) for why in each.reasons)
        else each
        for each in by_source.proposals
    )
    return replace(by_source, proposals=proposals), source


def _recognised(found: Interpretation, text: Transcription, library: Library) -> Hit | None:
    """Return the text that an inscription with verse or prose in it is very probably from."""
    from inscribe.sources.ranking import find

    if all(passage.kind not in ("verse", "prose") for passage in found.passages):
        return None
    passages = [(passage.kind, passage.first, passage.last) for passage in found.passages]
    try:
        hits = find(library, copied_part(text, passages), 1)
    except InputError:  # too few signs to look for
        return None
    return next((hit for hit in hits if hit.score >= SURE_ENOUGH), None)
