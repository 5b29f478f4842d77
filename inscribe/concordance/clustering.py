"""Records that belong together: the same text, or a signature of the same name.

Texts are compared by their sounds, so that spelling, old forms and worn signs do not part them.
A shared name proves nothing about the maker.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import chain
from typing import TYPE_CHECKING, Literal

from inscribe.concordance.documents import Document
from inscribe.sources import UNKNOWN

if TYPE_CHECKING:
    from inscribe.keys import ClusterKeys

SHORTEST = 8  # sounds a text must have to be compared
ALIKE = 0.72  # share of sounds in common, in the same order, from which two texts are one
PART = 0.85  # the same for a text that is a part of another
_GRAM = 3
_COMPARED = 4  # likely clusters compared in full
_SHARED = 3  # runs of sounds two texts must share to be compared


@dataclass(frozen=True, slots=True)
class Cluster:
    """Documents that share a text, or a name in their signatures."""

    kind: Literal["text", "signature"]
    title: str  # the first document's text, or the name
    members: tuple[Document, ...]

    def to_dict(self) -> ClusterKeys:
        """Return it as printed in JSON."""
        members = [member.to_dict() for member in self.members]
        return {"kind": self.kind, "title": self.title, "members": members}


def clusters(documents: Iterable[Document]) -> list[Cluster]:
    """Return every cluster of two objects or more, the largest first."""
    held = list(documents)
    found = [*_shared_texts(held), *_shared_names(held)]
    kept = [each for each in found if len({member.object for member in each.members}) > 1]
    return sorted(kept, key=lambda each: (-len(each.members), each.kind, each.title))


def _shared_names(documents: list[Document]) -> Iterator[Cluster]:
    by_name: defaultdict[str, list[Document]] = defaultdict(list)
    for document in documents:
        for name in document.names:
            if UNKNOWN not in name and name in document.normal:
                by_name[name].append(document)
    for name, members in by_name.items():
        yield Cluster("signature", name, tuple(members))


def _shared_texts(documents: list[Document]) -> Iterator[Cluster]:
    from rapidfuzz.distance import LCSseq

    groups: list[list[Document]] = []
    firsts: list[str] = []  # the sounds of each group's first text
    holding: defaultdict[str, list[int]] = defaultdict(list)
    for document in documents:
        sounds = _sounds(document)
        if document.register == "signature" or len(sounds) < SHORTEST:
            continue
        grams = dict.fromkeys(sounds[i : i + _GRAM] for i in range(len(sounds) - _GRAM + 1))
        shared = Counter(chain.from_iterable(holding.get(gram, ()) for gram in grams))
        for group, count in shared.most_common(_COMPARED):
            common = LCSseq.similarity(sounds, firsts[group])
            shorter, longer = sorted((len(sounds), len(firsts[group])))
            if count >= _SHARED and (common >= ALIKE * longer or common >= PART * shorter):
                groups[group].append(document)
                break
        else:
            for gram in grams:
                holding[gram].append(len(groups))
            groups.append([document])
            firsts.append(sounds)
    for members in groups:
        yield Cluster("text", members[0].carved, tuple(members))


def _sounds(document: Document) -> str:
    return "".join(key for _, _, key, _ in document.words).replace(UNKNOWN, "")
