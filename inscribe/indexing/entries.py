"""What of one inscription belongs into which index.

>>> from inscribe.concordance.documents import document_of_text
>>> poem = document_of_text("A", "思ひつつぬればや人の見えつらむ")
>>> [(entry.text, entry.romaji) for entry in entries_of(poem) if entry.kind == "lines"]
[('思ひつつ', 'omoitsutsu')]
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe.concordance import Document, PassageSaid
from inscribe.indexing.model import IndexKind

FIRST_MORAE = 5  # of a poem's first phrase
FIRST_SIGNS = 5  # of a Chinese text's first line
_LENGTHS = dict.fromkeys("aiueo", 1) | dict.fromkeys("āīūēō", 2)  # morae of a vowel
_SMALL = frozenset("ゃゅょぁぃぅぇぉ")


class IndexEntry(NamedTuple):
    """One mention: the heading it belongs to (``text``), and the form that is carved."""

    kind: IndexKind
    text: str
    romaji: str
    note: str
    form: str
    order: str = ""  # by which headings stand in their index, where not by their reading


def entries_of(document: Document) -> Iterator[IndexEntry]:
    """Yield every mention that an inscription makes."""
    said = document.said
    for signing in said.signings:
        if signing.name:
            done = signing.role or "signed"
            yield IndexEntry("persons", signing.name, signing.romaji, done, signing.form)
        if signing.place:
            yield IndexEntry("places", signing.place, signing.place_romaji, "", signing.place)
        if signing.formula:
            yield IndexEntry("formulas", signing.formula, "", "", signing.formula)
    for date in said.dates:
        if date.sure and date.year is not None:
            order = date.day or f"{date.year:04}"
            yield IndexEntry("dates", date.text, "", str(date.year), date.text, order)
    identity, title, author = said.source
    if title or identity:
        yield IndexEntry("works", title or identity, "", author, _first(document))
    for passage in said.passages:
        if passage.kind in ("verse", "chinese"):
            line, romaji = _first_line(document, passage)
            yield IndexEntry("lines", line, romaji, "", line)
    if said.hand:
        yield IndexEntry("hands", said.hand, "", "", said.hand)


def _first(document: Document) -> str:
    """Return the first line of the copied text, or of all."""
    for passage in document.said.passages:
        if passage.kind in ("verse", "chinese", "prose"):
            return _first_line(document, passage)[0]
    return document.carved[:FIRST_SIGNS]


def _first_line(document: Document, passage: PassageSaid) -> tuple[str, str]:
    """Return the first line of a text in current forms, and how it is read."""
    romaji = passage.romaji if passage.kind != "verse" else _first_words(passage.romaji)
    last = min(passage.last, passage.first + FIRST_SIGNS - 1)
    if passage.kind == "verse":
        morae = 0
        for first, end, sounds, _ in document.words:
            if first >= passage.first and morae < FIRST_MORAE and end <= passage.last:
                morae += sum(char not in _SMALL for char in sounds)
                last = end
    signs = [
        char
        for char, sign in zip(document.normal, document.origin, strict=True)
        if passage.first <= sign <= last
    ]
    return "".join(signs), romaji


def _first_words(romaji: str) -> str:
    """Return the words of a poem's first phrase.

    >>> _first_words("omoitsutsu nureba ya hito no"), _first_words("haru no yo no yume")
    ('omoitsutsu', 'haru no yo no')
    """
    kept: list[str] = []
    morae = 0
    for word in romaji.replace(" / ", " ").split():
        if morae >= FIRST_MORAE:
            break
        kept.append(word)
        morae += sum(_LENGTHS.get(letter, 0) for letter in word.lower())
    return " ".join(kept)
