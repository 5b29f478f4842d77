"""Restoring an inscription of a record, with all that the record says of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inscribe.restoring.worn import restore
from inscribe.sources import words_of

if TYPE_CHECKING:
    from inscribe.reading import Choice
    from inscribe.record import Inscription
    from inscribe.restoring.model import Restoration
    from inscribe.sources import Library


def restore_inscription(
    each: Inscription,
    library: Library | None = None,
    *,
    register: Choice = "auto",
    **wishes: Any,
) -> Restoration:
    """Return the worn places of a recorded inscription, as :func:`restore` proposes them.

    The record's register, its settled passages and the source that it names are used; signs are
    counted in the whole inscription.

    Args:
        each: the inscription; it is never changed.
        library: source texts to look in, and for the source that is named by its id.
        register: what the person says now; "auto" leaves it to the record.
        wishes: all else that :func:`restore` takes.

    Raises:
        InputError: as :func:`restore` does, or the library has no text of that id.

    >>> from inscribe.record import Inscription
    >>> found = restore_inscription(Inscription("back", "嘉永□年癸丑"))
    >>> found.lacunae[0].candidates[0].text
    '六'
    """
    words = words_of(each.source, library) if each.source else None
    return restore(
        each.transcription,
        library,
        register=each.register if register == "auto" else register,
        passages=each.passages,
        copied=words.text if words else "",
        **wishes,
    )
