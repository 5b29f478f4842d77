"""The whole collation: alignment, groups, figures, column breaks and space."""

from __future__ import annotations

from inscribe import forms
from inscribe.collate.fidelity import fidelity
from inscribe.collate.groups import groups
from inscribe.collate.model import Collation
from inscribe.collate.search import Search
from inscribe.collate.sides import Side, side
from inscribe.signs import Transcription


def collate(copy: Transcription, source: Transcription) -> Collation:
    """Return the collation of ``copy`` with ``source``."""
    one, other = prepared(copy), prepared(source)
    path = Search(one, other).cheapest()
    found = groups(path, one, other)
    return Collation(copy, source, found, fidelity(found), path.cost, (0, len(other)))


def collate_texts(copy: str, source: str) -> Collation:
    """Return the collation of two texts written in the Japanese transcription conventions."""
    from inscribe import notation

    return collate(notation.parse(copy), notation.parse(source))


def prepared(text: Transcription) -> Side:
    """Return ``text`` as the aligner sees it."""
    return side(text, forms.normalise(text))
