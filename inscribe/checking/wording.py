"""The same text copied with other words: which of a cluster's copies differ, and where."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe.concordance import Document, clusters

if TYPE_CHECKING:
    from inscribe.collation import Collation

MOST_COLLATED = 400  # pairs of wordings in one folder; some 10 ms each
_WORDS = frozenset({"replaced", "omitted", "added", "moved"})
_WORN = frozenset("□■［］")


def other_words(documents: Sequence[Document]) -> Iterator[tuple[Document, str]]:
    """Yield the inscriptions whose text another has with other words, and what differs.

    Each is held against the wording that most copies have, or else the first. Worn places differ
    from nothing; what is left off at the end is a matter of space and is told only as omitted.
    """
    collated: dict[tuple[str, str], str] = {}
    for cluster in clusters(documents):
        if cluster.kind != "text":
            continue
        usual = _usual([m for m in cluster.members if not _WORN & set(m.normal)] or cluster.members)
        for member in cluster.members:
            pair = (member.normal, usual.normal)
            if member.normal == usual.normal or member.object == usual.object:
                continue
            if pair not in collated:
                if len(collated) >= MOST_COLLATED:
                    continue
                collated[pair] = _differences(*pair)
            if collated[pair]:
                yield member, f"against {usual.object} ({usual.file}): {collated[pair]}"


def _usual(members: Sequence[Document]) -> Document:
    """Return a copy with the wording that most copies have; the first of those that are alike."""
    counted: dict[str, int] = {}
    for member in members:
        counted[member.normal] = counted.get(member.normal, 0) + 1
    return max(members, key=lambda member: counted[member.normal])


def _differences(copy: str, usual: str) -> str:
    from inscribe.collation import collate
    from inscribe.errors import InscribeError
    from inscribe.notation import parse

    try:
        found = collate(parse(copy), parse(usual))
    except InscribeError:
        return ""
    return "; ".join(_said(found))


def _said(found: Collation) -> Iterator[str]:
    for group in found.differences:
        if group.kind in _WORDS:
            mine = group.copy.text or "nothing"
            theirs = group.source.text or "nothing"
            yield f"{mine} here, {theirs} there"
