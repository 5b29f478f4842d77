"""The texts that ``inscribe read`` is asked about, each with what it says."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from inscribe.cli.giving.library import library_if_any
from inscribe.cli.giving.overriding import merged
from inscribe.errors import InputError, InscribeError, NotationError, Place

if TYPE_CHECKING:
    from inscribe.cli.giving.arguments import Given
    from inscribe.reading import Choice, Interpretation
    from inscribe.reading.passages import PassageLike
    from inscribe.reading.words import OverrideLike
    from inscribe.record import Inscription, Record
    from inscribe.signs import Transcription
    from inscribe.sources import Library

_WORN = frozenset("□■")
_RUNNING_TEXT = "。"


class Wished(NamedTuple):
    """What the user wishes of the reading."""

    register: Choice = "auto"
    overrides: tuple[OverrideLike, ...] = ()
    passages: tuple[PassageLike, ...] = ()
    library_file: str | None = None


def interpretations(text: Given, wished: Wished) -> Iterator[Interpretation]:
    """Yield what each inscription says of a text, standard input, a record or a file."""
    with library_if_any(wished.library_file) as library:
        if text.kind == "record":
            yield from _of_record(Path(text.value), wished, library)
            return
        words = _some(text.transcription(), text.place)
        try:
            yield read_literal(words, wished, library)
        except InscribeError as error:
            if text.kind == "file":
                raise error.in_file(text.value) from error
            raise


def read_literal(text: str, wished: Wished, library: Library | None = None) -> Interpretation:
    """Return what a literal text says, with readings of its worn signs where these are likely.

    It is read by its source, where the library knows that.
    """
    from inscribe import reading

    how: dict[str, Any] = {
        "register": wished.register,
        "overrides": wished.overrides,
        "passages": wished.passages,
        "alternatives": True,
    }
    found = reading.read_text(text, **how)
    worn = not _WORN.isdisjoint(text)
    if _RUNNING_TEXT in text or not (worn or library):
        return found
    from inscribe.notation import parse

    return _read_further(found, parse(text), how, library)


def _read_further(
    found: Interpretation,
    text: Transcription,
    how: dict[str, Any],
    library: Library | None,
    words: str = "",
) -> Interpretation:
    """Return what a text says by the source that the library recognises, worn signs restored.

    ``words`` are those of the source that a record names; then no other is looked for.
    """
    from inscribe import reading

    if library and not how.get("source"):
        from inscribe.sources import read_as_recognised

        def by(source: str) -> Interpretation:
            return reading.read(text, **(how | {"source": source}))

        found, how["source"] = read_as_recognised(found, text, by, library)
    if not any(sign.is_worn for sign in text.signs):
        return found
    from inscribe.restoring import with_restored

    return with_restored(
        found, text, lambda filled: reading.read(filled, **how), library, copied=words
    )


def _some(text: str, place: str | None = None) -> str:
    """Return the text, which must not be blank."""
    if not text.strip():
        raise InputError("there is no text to read", Place(place), "write □ for unreadable signs")
    return text


def _of_record(path: Path, wished: Wished, library: Library | None) -> Iterator[Interpretation]:
    from inscribe import record

    loaded = record.load(path)
    if (wished.overrides or wished.passages) and len(loaded.inscriptions) > 1:
        key = "override" if wished.overrides else "passage"
        several = f"the record has several inscriptions, and --{key} does not say which it is for"
        raise InputError(
            several, Place(str(path)), f"write it into the record: [[inscription.{key}]]"
        )
    with record.as_settled(record.settled_beside(path)):
        for inscription in loaded.inscriptions:
            try:
                yield _read_inscription(inscription, loaded, wished, library)
            except NotationError as error:
                raise error.in_file(str(path), None) from error


def _read_inscription(
    inscription: Inscription, loaded: Record, wished: Wished, library: Library | None
) -> Interpretation:
    from inscribe import reading
    from inscribe.sources import spelling_of, text_of

    auto = wished.register == "auto"
    how: dict[str, Any] = {
        "register": inscription.register if auto else wished.register,
        "overrides": merged(wished.overrides, inscription.overrides),
        "between": loaded.between,
        "alternatives": True,
        "passages": merged(wished.passages, inscription.passages),
        "source": spelling_of(inscription.source, library),
    }
    text = inscription.transcription
    found = reading.read(text, **how)
    return _read_further(found, text, how, library, text_of(inscription.source, library))
