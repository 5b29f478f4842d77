"""Translations found again: of the same text, or of a signature of the same formula.

What one cataloguer translated on one object serves for the next; nothing is copied anywhere.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Literal, NamedTuple

from inscribe.concordance import Document, clusters
from inscribe.indexing.model import Where

if TYPE_CHECKING:
    from inscribe.keys import TranslatedKeys


class TranslatedText(NamedTuple):
    """A text or a formula, its translations, and the inscriptions that have none as yet."""

    kind: Literal["text", "formula"]
    text: str
    translations: tuple[tuple[str, tuple[Where, ...]], ...]
    without: tuple[Where, ...]

    def to_dict(self) -> TranslatedKeys:
        """Return it as printed in JSON."""
        return {
            "kind": self.kind,
            "text": self.text,
            "translations": [
                {"translation": words, "where": [each.to_dict() for each in where]}
                for words, where in self.translations
            ],
            "without": [each.to_dict() for each in self.without],
        }


def translated_texts(documents: Sequence[Document]) -> list[TranslatedText]:
    """Return every text and formula that has a translation, those first that serve most.

    Texts are the same as in the clusters of the concordance, whatever their spelling; a text that
    stands on one object alone is given too.
    """
    found = [
        made
        for kind, text, members in (*_texts(documents), *_formulas(documents))
        if (made := _translated(kind, text, members))
    ]
    return sorted(found, key=lambda each: (-len(each.without), each.kind, each.text))


def _texts(
    documents: Sequence[Document],
) -> Iterator[tuple[Literal["text", "formula"], str, Sequence[Document]]]:
    alone = {id(document): document for document in documents if document.register != "signature"}
    for cluster in clusters(documents):
        if cluster.kind == "text":
            for member in cluster.members:
                alone.pop(id(member), None)
            yield "text", cluster.title, cluster.members
    for document in alone.values():
        yield "text", document.carved, (document,)


def _formulas(
    documents: Iterable[Document],
) -> Iterator[tuple[Literal["text", "formula"], str, Sequence[Document]]]:
    by_formula: defaultdict[str, list[Document]] = defaultdict(list)
    for document in documents:
        if document.register == "signature" and len(document.said.signings) == 1:
            by_formula[document.said.signings[0].formula].append(document)
    for formula, members in by_formula.items():
        if formula:
            yield "formula", formula, members


def _translated(
    kind: Literal["text", "formula"], text: str, members: Sequence[Document]
) -> TranslatedText | None:
    by_words: defaultdict[str, list[Where]] = defaultdict(list)
    for each in members:
        where = Where(each.object, each.file, each.inscription, each.place)
        by_words[each.said.translation.strip()].append(where)
    without = tuple(by_words.pop("", ()))
    if not by_words:
        return None
    made = tuple((words, tuple(where)) for words, where in by_words.items())
    return TranslatedText(kind, text, made, without)
