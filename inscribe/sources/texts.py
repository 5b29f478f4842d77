"""A source text as the library keeps it."""

from __future__ import annotations

import hashlib
import json
import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, cast

from inscribe.encodings import WHAT_TO_DO, read_twice
from inscribe.errors import InputError, Place
from inscribe.reading.spelling import is_kana
from inscribe.record import FORBIDDEN

if TYPE_CHECKING:
    from inscribe.keys import SourceTextKeys

MAX_SIGNS = 1_000_000


@dataclass(frozen=True, slots=True)
class SourceText:
    """One text: an id of its own, what it says line by line, and where it comes from.

    ``extra`` holds further fields of the file it was read from, kept as they were.

    >>> SourceText("verse-1", ("世の中に", "たえて桜の")).text.splitlines()
    ['世の中に', 'たえて桜の']
    """

    id: str
    lines: tuple[str, ...]
    title: str = ""
    provenance: str = ""
    licence: str = ""
    extra: tuple[tuple[str, str], ...] = field(default=())

    @property
    def text(self) -> str:
        """The lines joined by line breaks."""
        return "\n".join(self.lines)

    @property
    def spelled(self) -> str:
        """The text in kana, where it is Japanese and its field ``kana`` has it; else as it is.

        >>> SourceText("v", ("鶯の声",), extra=(("kana", "うぐひすのこゑ"),)).spelled
        'うぐひすのこゑ'
        """
        kana = dict(self.extra).get("kana", "")
        return kana if kana and any(map(is_kana, self.text)) else self.text

    @property
    def digest(self) -> bytes:
        """A fingerprint of everything the text holds: equal texts have equal digests."""
        content = json.dumps(
            [self.id, self.lines, self.title, self.provenance, self.licence, self.extra],
            ensure_ascii=False,
        )
        return hashlib.sha256(content.encode("utf-8", "surrogatepass")).digest()[:16]

    def to_dict(self) -> SourceTextKeys:
        """Return it as ``inscribe source add`` reads it: keys that hold nothing are left out."""
        known = {"id": self.id, "text": self.text, "title": self.title}
        known |= {"provenance": self.provenance, "licence": self.licence, **dict(self.extra)}
        return cast("SourceTextKeys", {key: value for key, value in known.items() if value})


def source_text(
    identity: str,
    text: str,
    place: Place,
    *,
    title: str = "",
    provenance: str = "",
    licence: str = "",
    extra: tuple[tuple[str, str], ...] = (),
) -> SourceText:
    """Return a text whose lines end at line breaks and at the mark ``／``.

    Raises:
        InputError: the id or the text is empty, the text is longer than a million signs, it was
            encoded twice, or it holds a control character or half of a character.
    """
    if not identity.strip():
        raise InputError("a text has no id", place, "give every text an id of its own")
    lines = tuple(
        line.strip()
        for part in text.replace("\r\n", "\n").split("\n")
        for line in part.split("／")
        if line.strip()
    )
    if not lines:
        raise InputError(f"the text “{identity}” is empty", place, "remove it or fill it in")
    if len(text) > MAX_SIGNS:
        raise InputError(
            f"the text {identity} is longer than the limit of {MAX_SIGNS} signs",
            place,
            "divide it into chapters",
        )
    if twice := read_twice(text):
        raise InputError(f"{twice.said} (in {identity[:40]!a})", place, WHAT_TO_DO)
    for value in (identity, text, title, provenance, licence, *(v for kv in extra for v in kv)):
        if not value.isprintable() and (found := re.search(FORBIDDEN, value.replace("\r\n", "\n"))):
            code = f"U+{ord(found[0]):04X}"
            raise InputError(
                f"the text {identity[:40]!a} holds {code}, which is no text",
                place,
                "remove it, and save the file as UTF-8",
            )
    return SourceText(identity.strip(), lines, title, provenance, licence, extra)
