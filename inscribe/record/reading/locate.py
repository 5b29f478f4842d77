"""Where each key of a TOML file stands; the standard parser does not say.

Only files that the standard parser accepted are scanned, and only when there is a problem to
place, so the scanner may trust their syntax.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

KeyPath = tuple[str | int, ...]

_BLANK = re.compile(r"(?:[ \t\n]|#[^\n]*)*")
_KEY = re.compile(r"""[ \t]*("(?:\\.|[^"\\])*"|'[^']*'|[A-Za-z0-9_-]+)[ \t]*""")
_STRING = re.compile(
    r'"{3}(?:\\.|[^\\])*?"{3,5}|\'{3}.*?\'{3,5}|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'', re.DOTALL
)
_SCALAR = re.compile(r"[^,\]}\n#]*")
_ESCAPE = re.compile(r"\\(?:u([0-9A-Fa-f]{4})|U([0-9A-Fa-f]{8})|(.))")
_LETTERS = {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r"}


@dataclass(frozen=True, slots=True)
class Position:
    """Where a key begins (line and column from 1) and the offset of its value."""

    line: int
    column: int
    value: int


class Locator:
    """The positions of all keys and array items of one valid TOML text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.positions: dict[KeyPath, Position] = {}
        self.arrays: dict[KeyPath, int] = {}
        self.lines = [match.end() for match in re.finditer("\n", text)]
        self._scan()

    def place(self, offset: int) -> tuple[int, int]:
        """Return line and column of an offset, both from 1."""
        from bisect import bisect_right

        index = bisect_right(self.lines, offset)
        return index + 1, offset - (self.lines[index - 1] if index else 0) + 1

    def nearest(self, path: KeyPath) -> Position:
        """Return the position of ``path``, or of the nearest table around it."""
        while path and path not in self.positions:
            path = path[:-1]
        return self.positions.get(path, Position(1, 1, 0))

    def _scan(self) -> None:
        table: KeyPath = ()
        position = self._skip(0)
        while position < len(self.text):
            if self.text[position] == "[":
                table, position = self._header(position)
            else:
                position = self._pair(table, position)
            position = self._skip(position)

    def _skip(self, position: int) -> int:
        blank = _BLANK.match(self.text, position)
        return blank.end() if blank else position

    def _header(self, start: int) -> tuple[KeyPath, int]:
        is_array = self.text.startswith("[[", start)
        parts, end = self._key(start + 1 + is_array)
        path: KeyPath = ()
        for number, part in enumerate(parts, start=1):
            path = (*path, part)
            if is_array and number == len(parts):
                self.arrays[path] = self.arrays.get(path, -1) + 1
            if path in self.arrays:
                path = (*path, self.arrays[path])
            if path not in self.positions:
                self._note(path, start, end)
        self._note(path, start, end)
        if is_array:
            self.positions.setdefault(path[:-1], self.positions[path])
        return path, end + 1 + is_array

    def _key(self, start: int) -> tuple[list[str], int]:
        parts: list[str] = []
        position = start
        while match := _KEY.match(self.text, position):
            parts.append(_plain_key(match[1]))
            position = match.end()
            if self.text[position : position + 1] != ".":
                break
            position += 1
        return parts, position

    def _pair(self, table: KeyPath, start: int) -> int:
        parts, end = self._key(start)
        if not parts:
            return len(self.text)
        value = self._skip(end + 1)
        path = table
        for part in parts:
            path = (*path, part)
            if path not in self.positions:
                self._note(path, start, value)
        return self._value(path, value)

    def _value(self, path: KeyPath, start: int) -> int:
        char = self.text[start : start + 1]
        if char == "[":
            return self._array(path, start)
        if char == "{":
            return self._inline(path, start)
        match = (_STRING if char in "\"'" else _SCALAR).match(self.text, start)
        return match.end() if match else len(self.text)

    def _array(self, path: KeyPath, start: int) -> int:
        position = self._skip(start + 1)
        index = 0
        while self.text[position : position + 1] not in ("]", ""):
            self._note((*path, index), position, position)
            position = self._skip(self._value((*path, index), position))
            if self.text[position : position + 1] == ",":
                position = self._skip(position + 1)
            index += 1
        return position + 1

    def _inline(self, path: KeyPath, start: int) -> int:
        position = self._skip(start + 1)
        while self.text[position : position + 1] not in ("}", ""):
            position = self._skip(self._pair(path, position))
            if self.text[position : position + 1] == ",":
                position = self._skip(position + 1)
        return position + 1

    def _note(self, path: KeyPath, offset: int, value: int) -> None:
        self.positions[path] = Position(*self.place(offset), value)


def _plain_key(written: str) -> str:
    if written.startswith("'"):
        return written[1:-1]
    if written.startswith('"'):
        return _ESCAPE.sub(_unescaped, written[1:-1])
    return written


def _unescaped(match: re.Match[str]) -> str:
    code = match[1] or match[2]
    return chr(int(code, 16)) if code else _LETTERS.get(match[3], match[3])
