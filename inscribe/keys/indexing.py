"""Keys of ``inscribe index`` and ``inscribe concord --translations``."""

from __future__ import annotations

from typing import Annotated, Literal, TypedDict

from inscribe.keys.base import Count, Inscription


class WhereKeys(TypedDict):
    """One inscription to which an index points."""

    object: Annotated[str, "the id of the object"]
    file: Annotated[str, "the record's file"]
    inscription: Inscription
    place: Annotated[str, "where on the object"]


class IndexFormKeys(TypedDict):
    """One form of a heading as it is carved."""

    form: Annotated[str, "as carved"]
    where: Annotated[list[WhereKeys], "the inscriptions that bear it"]


class IndexHeadingKeys(TypedDict):
    """One heading of an index."""

    heading: Annotated[str, "in current forms"]
    romaji: Annotated[str, "how it is read first, in Latin letters"]
    note: Annotated[str, "what is said of it: what a person did, a date's year, a work's author"]
    records: Annotated[Count, "how many records bear it"]
    forms: Annotated[list[IndexFormKeys], "its forms"]


class IndexesKeys(TypedDict):
    """The indexes of a folder of records."""

    records: Annotated[Count, "records looked at"]
    unread: Annotated[list[str], "files that could not be read, and why"]
    indexes: Annotated[
        dict[str, list[IndexHeadingKeys]],
        "persons, places, dates, works, lines (first lines), formulas and hands, as asked for",
    ]
    cautions: Annotated[list[str], "what must be kept in mind, in sentences"]


class TranslationKeys(TypedDict):
    """One translation of a text."""

    translation: Annotated[str, "as the records have it"]
    where: Annotated[list[WhereKeys], "the inscriptions that have it"]


class TranslatedKeys(TypedDict):
    """A text or formula that is translated somewhere."""

    kind: Annotated[Literal["text", "formula"], "whether the text is the same, or the formula"]
    text: Annotated[str, "the text as carved first, or the formula"]
    translations: Annotated[list[TranslationKeys], "its translations"]
    without: Annotated[list[WhereKeys], "the inscriptions that have none"]


class TranslationsKeys(TypedDict):
    """Translations found again in a folder of records."""

    records: Annotated[Count, "records looked at"]
    texts: Annotated[list[TranslatedKeys], "those first of which most have no translation"]
