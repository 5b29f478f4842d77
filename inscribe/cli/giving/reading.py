"""The texts that ``inscribe read`` is asked about, each with what it says."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from inscribe.cli.giving.library import library_path
from inscribe.cli.giving.overriding import merged
from inscribe.errors import InputError, InscribeError, NotationError, Place

if TYPE_CHECKING:
    from inscribe.cli.giving.arguments import Given
    from inscribe.reading import Choice, Interpretation
    from inscribe.reading.passages import PassageLike
    from inscribe.reading.words import OverrideLike
    from inscribe.record import CopiedText, Inscription, Record

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
    if text.kind == "record":
        yield from _of_record(Path(text.value), wished)
        return
    words = _some(text.transcription(), text.place)
    try:
        yield read_literal(words, wished)
    except InscribeError as error:
        if text.kind == "file":
            raise error.in_file(text.value) from error
        raise


def read_literal(text: str, wished: Wished) -> Interpretation:
    """Return what a literal text says, with readings of its worn signs where these are likely."""
    from inscribe import reading

    how: dict[str, Any] = {
        "register": wished.register,
        "overrides": wished.overrides,
        "passages": wished.passages,
        "alternatives": True,
    }
    found = reading.read_text(text, **how)
    if _WORN.isdisjoint(text) or _RUNNING_TEXT in text:
        return found
    from inscribe.notation import parse
    from inscribe.restoring import with_restored

    return with_restored(found, parse(text), lambda filled: reading.read(filled, **how))


def _some(text: str, place: str | None = None) -> str:
    """Return the text, which must not be blank."""
    if not text.strip():
        raise InputError("there is no text to read", Place(place), "write □ for unreadable signs")
    return text


def _of_record(path: Path, wished: Wished) -> Iterator[Interpretation]:
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
                yield _read_inscription(inscription, loaded, wished)
            except NotationError as error:
                raise error.in_file(str(path), None) from error


def _read_inscription(inscription: Inscription, loaded: Record, wished: Wished) -> Interpretation:
    from inscribe import reading

    auto = wished.register == "auto"
    how: dict[str, Any] = {
        "register": inscription.register if auto else wished.register,
        "overrides": merged(wished.overrides, inscription.overrides),
        "between": loaded.between,
        "alternatives": True,
        "passages": merged(wished.passages, inscription.passages),
        "source": _copied_words(inscription.source, wished.library_file),
    }
    text = inscription.transcription
    found = reading.read(text, **how)
    if not any(sign.is_worn for sign in text.signs):
        return found
    from inscribe.restoring import with_restored

    return with_restored(
        found, text, lambda filled: reading.read(filled, **how), copied=how["source"]
    )


def _copied_words(source: CopiedText | None, library_file: str | None) -> str:
    """Return the words of a record's source; the library is for those it names by id alone."""
    if source is None or source.text:
        return source.text if source else ""
    from inscribe.sources import text_of

    return text_of(source, library_path(library_file))
