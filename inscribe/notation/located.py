"""Where in a text each of its signs is written.

>>> extents_of_signs("花の は(者)／□(けカ)［色］")
((0, 1), (1, 2), (3, 7), (8, 13), (14, 15))
"""

from __future__ import annotations

from inscribe.notation.known import convention as _convention
from inscribe.notation.parser import Parser
from inscribe.signs import Transcription


def extents_of_signs(text: str, convention: str = "japanese") -> tuple[tuple[int, int], ...]:
    """Return the offsets in ``text`` where each sign begins and ends, its notes included.

    Brackets around signs belong to none of them.

    Raises:
        NotationError: the text breaks the convention.
    """
    parser = _Located(text, _convention(convention), None)
    parser.parse()
    return tuple(parser.extents)


class _Located(Parser):
    """A parser that keeps the places of what it reads."""

    extents: list[tuple[int, int]]

    def parse(self) -> Transcription:
        self.extents = []
        return super().parse()

    def _plain(self, position: int) -> int:
        end = super()._plain(position)
        self.extents += [(at, at + 1) for at in range(position, end)]
        return end

    def _item(self, position: int) -> int:
        before = self.count
        end = super()._item(position)
        if self.count > before:
            self.extents.append((position, end))
        elif self.extents and self.item_end == end:  # a note on the sign before
            self.extents[-1] = (self.extents[-1][0], end)
        return end
