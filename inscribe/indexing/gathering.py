"""Mentions gathered under their headings, in the order in which one looks them up."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable
from unicodedata import combining, normalize

from inscribe.concordance import Document
from inscribe.indexing.entries import IndexEntry, entries_of
from inscribe.indexing.model import INDEXES, IndexForm, IndexHeading, IndexKind, Where

Mentions = list[tuple[IndexEntry, Where]]


def indexes(
    documents: Iterable[Document], wanted: Iterable[IndexKind] = INDEXES
) -> dict[IndexKind, list[IndexHeading]]:
    """Return the headings of each index that is wanted.

    Headings stand in the order of their reading in Latin letters, of their signs where they have
    none; dates in the order of time.
    """
    kinds = set(wanted)
    gathered: defaultdict[tuple[IndexKind, str], Mentions] = defaultdict(list)
    for document in documents:
        where = Where(document.object, document.file, document.inscription, document.place)
        for entry in entries_of(document):
            if entry.kind in kinds:
                gathered[entry.kind, entry.text].append((entry, where))
    found: dict[IndexKind, list[tuple[str, IndexHeading]]] = {k: [] for k in INDEXES if k in kinds}
    for (kind, _), mentions in gathered.items():
        made = _heading(mentions)
        found[kind].append((mentions[0][0].order or _order(made), made))
    return {
        kind: [each for _, each in sorted(some, key=lambda pair: (pair[0], pair[1].text))]
        for kind, some in found.items()
    }


def index_of(documents: Iterable[Document], kind: IndexKind) -> list[IndexHeading]:
    """Return the headings of one index."""
    return indexes(documents, (kind,))[kind]


def _heading(mentions: Mentions) -> IndexHeading:
    entry = mentions[0][0]
    romaji = Counter(each.romaji for each, _ in mentions if each.romaji)
    notes = dict.fromkeys(each.note for each, _ in mentions if each.note)
    by_form: defaultdict[str, dict[Where, None]] = defaultdict(dict)
    for each, where in mentions:
        by_form[each.form][where] = None
    forms = tuple(IndexForm(text, tuple(where)) for text, where in by_form.items())
    usual = max(romaji, key=lambda said: romaji[said]) if romaji else ""
    return IndexHeading(entry.kind, entry.text, usual, ", ".join(notes), forms)


def _order(heading: IndexHeading) -> str:
    """Return by what a heading is put in order: its letters without marks, small.

    >>> _order(IndexHeading("persons", "應需", "Ōju", "", ()))
    'oju'
    """
    letters = normalize("NFD", heading.romaji or heading.text)
    return "".join(char for char in letters if not combining(char)).casefold()
