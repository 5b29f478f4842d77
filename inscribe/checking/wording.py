"""The same text copied with other words: which of a cluster's copies differ, and where.

What two wordings say against each other takes some hundredths of a second to find out, and is kept
from one run to the next (``Compared``), so that a collection to which a record is added is not
compared anew.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.concordance import Document, clusters
from inscribe.workers import mapped

if TYPE_CHECKING:
    from inscribe.collation.align import Side

MOST_COMPARED = 1000  # pairs of wordings that one run compares; the next goes on
_WORDS = frozenset({"replaced", "omitted", "added", "moved"})
_COPIED = frozenset({"verse", "chinese", "prose"})
_WORN = frozenset("□■［］")
_BETWEEN = "\t"

Compared = dict[str, str]  # two wordings, a tab between them, and what differs


def other_words(documents: Sequence[Document], known: Compared) -> Iterator[tuple[Document, str]]:
    """Yield the inscriptions whose text another has with other words, and what differs.

    Each is held against the wording that most copies have, or else the first. Worn places differ
    from nothing. ``known`` is what earlier runs compared; what this one does is added to it, and
    what no record asks for any more is taken out.
    """
    asked = list(_pairs(documents))
    wanted = dict.fromkeys(pair for _, _, pair in asked)
    for pair in [pair for pair in known if pair not in wanted]:
        del known[pair]
    new = [pair for pair in wanted if pair not in known][:MOST_COMPARED]
    known.update(zip(new, mapped(_differences, new), strict=True))
    left = sum(pair not in known for pair in wanted)
    for document, usual, pair in asked:
        if known.get(pair):
            yield document, f"against {usual.object} ({usual.file}): {known[pair]}"
        elif pair not in known and left:
            yield document, f"{left} wordings are not compared yet; check again to go on"
            left = 0


def _pairs(documents: Sequence[Document]) -> Iterator[tuple[Document, Document, str]]:
    """Yield each copy with the one it is held against, and both wordings."""
    for cluster in clusters(documents):
        if cluster.kind != "text":
            continue
        usual = _usual([m for m in cluster.members if not _WORN & set(m.normal)] or cluster.members)
        words = _copied(usual)
        for member in cluster.members:
            if member.object != usual.object and _sounds(member) != _sounds(usual):
                yield member, usual, f"{_copied(member)}{_BETWEEN}{words}"


def _usual(members: Sequence[Document]) -> Document:
    """Return a copy with the wording that most copies have; the first of those that are alike."""
    counted: dict[str, int] = {}
    for member in members:
        counted[member.normal] = counted.get(member.normal, 0) + 1
    return max(members, key=lambda member: counted[member.normal])


def _sounds(document: Document) -> str:
    return "".join(sounds for _, _, sounds, _ in document.words)


def _copied(document: Document) -> str:
    """Return the copied text in current forms, without who signed and when."""
    whole = [p for p in document.said.passages if p.kind in _COPIED]
    if not whole:
        return document.normal
    signs = {sign for p in whole for sign in range(p.first, p.last + 1)}
    pairs = zip(document.normal, document.origin, strict=True)
    return "".join(char for char, sign in pairs if sign in signs)


def _differences(pair: str) -> str:
    """Return where two wordings differ, in words; nothing where only the writing does."""
    from inscribe.collation.align import align_extent
    from inscribe.errors import InscribeError

    copy, _, usual = pair.partition(_BETWEEN)
    try:
        groups = align_extent(_side(copy), _side(usual), "auto").groups
    except InscribeError:
        return ""
    return "; ".join(
        f"{group.copy.text or 'nothing'} here, {group.source.text or 'nothing'} there"
        for group in groups
        if group.kind in _WORDS
    )


@tables.cached(64)
def _side(text: str) -> Side:
    from inscribe.collation.align import side
    from inscribe.forms import normalise
    from inscribe.notation import parse

    parsed = parse(text)
    return side(parsed, normalise(parsed))
