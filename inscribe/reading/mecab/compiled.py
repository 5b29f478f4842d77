"""The words of a dictionary compiled for MeCab, found sign by sign in its own file.

MeCab reads whole texts. Where every sign is tried in one place of a text, what stands beside that
place need not be read again each time: the words over it are looked up here, in the double array
of the file (``unidic`` tells its layout).
"""

from __future__ import annotations

import mmap
import struct
from collections.abc import Iterator
from pathlib import Path

from inscribe.reading.mecab.unidic import HEADER, HEADER_SIZE, TOKEN

_TOKEN = struct.Struct(TOKEN)
NOWHERE = -1  # no word goes on so
_LEADING, _GOING_ON = range(0xE0, 0xF0), range(0x80, 0xC0)  # bytes of a sign in UTF-8

# Its class from the left, its class from the right, (of no use here), its cost, its feature, (0).
CompiledWord = tuple[int, int, int, int, int, int]


class CompiledWords:
    """The words of one file. A place in it is where some signs lead; no signs lead to ``start``."""

    def __init__(self, path: Path) -> None:
        """Open the file of a dictionary that MeCab has compiled.

        Raises:
            OSError, ValueError: it cannot be read, or is empty.
        """
        with path.open("rb") as file:
            self._data = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
        size, tokens = struct.unpack_from(HEADER, self._data)[6:8]
        self._first_token = HEADER_SIZE + size
        self._first_feature = self._first_token + tokens
        self._cells = memoryview(self._data)[HEADER_SIZE : self._first_token].cast("i")
        self._size = len(self._cells)
        self.start = self._cells[0]

    def after(self, place: int, signs: str) -> int:
        """Return the place to which signs lead from a place, or ``NOWHERE``."""
        cells = self._cells
        for byte in signs.encode():
            at = 2 * (place + byte + 1)
            if at >= self._size or cells[at + 1] != place:
                return NOWHERE
            place = cells[at]
        return place

    def signs_after(self, place: int) -> Iterator[tuple[str, int]]:
        """Yield every sign of up to three bytes by which words go on from a place, and to where."""
        cells = self._cells
        ways = [(b"", place)]
        for bytes_ in (_LEADING, _GOING_ON, _GOING_ON):
            ways = [
                (said + bytes([byte]), cells[at])
                for said, reached in ways
                for byte in bytes_
                if (at := 2 * (reached + byte + 1)) < self._size and cells[at + 1] == reached
            ]
        yield from ((said.decode(), reached) for said, reached in ways)

    def words(self, place: int) -> list[CompiledWord]:
        """Return the words that end at a place."""
        end, of = self._cells[2 * place], self._cells[2 * place + 1]
        if of != place or end >= 0:
            return []
        first, count = divmod(-end - 1, 256)
        begins = self._first_token + first * _TOKEN.size
        return list(_TOKEN.iter_unpack(self._data[begins : begins + count * _TOKEN.size]))

    def told(self, feature: int) -> str:
        """Return what the dictionary hands back with a word, by the number of its feature."""
        begins = self._first_feature + feature
        return self._data[begins : self._data.find(b"\0", begins)].decode()
