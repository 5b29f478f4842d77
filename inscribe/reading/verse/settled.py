"""Readings a person has settled, put into the lattice of a poem."""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.verse.lattice import Node
from inscribe.reading.words import OverrideLike, ReadWord, part_of_speech, span_of, why_settled


def settled_nodes(
    nodes: list[Node], overrides: Sequence[OverrideLike], origin: Sequence[int], text: str
) -> list[Node]:
    """Return MeCab's lattice with each settled word in place of all that overlap it."""
    for override in overrides:
        start, end = span_of(override, origin)
        like = [node for node in nodes if (node.start, node.end) == (start, end)]
        model = next((n.piece for n in like if n.piece.kana == override.kana), None)
        nodes = [node for node in nodes if node.end <= start or node.start >= end]
        piece = model or ReadWord(
            text[start:end],
            override.kana,
            like[0].piece.part_of_speech if like else part_of_speech(override),
            connection=like[0].piece.connection if like else 0,
            cost=0,
            note=why_settled(override),
        )
        nodes.append(Node(start, end, piece))
    return sorted(nodes, key=lambda node: (node.start, node.end))
