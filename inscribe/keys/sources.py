"""Keys of ``inscribe source find`` and ``inscribe source list``; and of lines refused."""

from __future__ import annotations

from typing import Annotated, Any, NotRequired, TypedDict

from inscribe.keys.base import Line, Lines, Rank, Share


class HitKeys(TypedDict):
    """A text that may be the source."""

    rank: Rank
    id: Annotated[str, "the text's id in the library"]
    title: Annotated[str, "its title, or empty"]
    score: Annotated[Share, "how probable it is the source"]
    text: Annotated[str, "the whole text, its lines divided by line breaks"]
    why: Annotated[str, "what speaks for it"]
    lines: Annotated[Lines, "the part that fits"]


class HitsKeys(TypedDict):
    """The answer to one query."""

    query: Annotated[str, "what was looked for"]
    found: Annotated[bool, "whether any text is more likely the source than not"]
    hits: Annotated[list[HitKeys], "the likeliest first"]


class SourceTextKeys(TypedDict):
    """A text of the library, as ``inscribe source add`` reads it."""

    id: Annotated[str, "its id in the library"]
    text: Annotated[str, "what it says, its lines divided by line breaks"]
    title: NotRequired[Annotated[str, "its title"]]
    provenance: NotRequired[Annotated[str, "where it comes from"]]
    licence: NotRequired[Annotated[str, "under what terms it may be used"]]


class RefusedKeys(TypedDict):
    """What stands in place of the answer to a line that cannot be used."""

    line: Annotated[Line, "of what was given"]
    error: Annotated[str, "what is wrong with it"]
    id: NotRequired[Annotated[Any, "of collate --pairs: the id that the pair was given with"]]
