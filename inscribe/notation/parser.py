"""Text to transcription, in one pass whose time grows with the length of the text."""

from __future__ import annotations

import re
from typing import NamedTuple

from inscribe import tables
from inscribe.encodings import WHAT_TO_DO, read_twice
from inscribe.errors import NotationError, Place
from inscribe.notation.conventions import Bracket, Convention, Note
from inscribe.notation.cutting import (
    DOT_BELOW,
    MAX_DESCRIPTION,
    MAX_MARKS,
    continues,
    end_of_sign,
    excess,
    is_mark,
    is_one_sign,
    refusal,
    segments,
)
from inscribe.notation.notes import NoteRefused, certainty_within, contradiction, named, noted
from inscribe.signs import Certainty, Intervention, Kind, Sign, Transcription, transcription

MAX_CHARACTERS = 200_000

# Letters and figures of any script: no mark of either convention is among them. The halves of a
# tall repeat mark and the half-width voicing marks may belong to their neighbours.
_PLAIN = re.compile(r"[^\W_〳〴〵ﾞﾟ]+")
_SPACES = frozenset("\t \u00a0\u1680\u202f\u205f\u3000").union(map(chr, range(0x2000, 0x200B)))
_UNFIT = "()（）「」｢｣〔〕{}｛｝⟦⟧〚〛"  # marks of one of the conventions, never bare signs
_SIDES = ("表", "裏")  # which some write before the text of each face
_DASHES = "-‐–—―"
_SEPARATORS = "[・、,，]"


class _Open(NamedTuple):
    """A bracket that waits for its end."""

    bracket: Bracket
    offset: int
    signs_before: int


class Parser:
    """Reads one text; make a new one for each."""

    def __init__(self, text: str, convention: Convention, file: str | None) -> None:
        self.text = text
        self.convention = convention
        self.file = file
        self.faces: list[list[list[Sign]]] = [[[]]]
        self.column = self.faces[0][0]
        self.open: list[_Open] = []
        self.count = 0
        self.item_end = -1  # where the last item ended: a note must follow at once
        self.certainty = Certainty.CLEAR  # what the open brackets say
        self.intervention = Intervention.NONE

    def parse(self) -> Transcription:
        """Return the transcription.

        Raises:
            NotationError: the text breaks the convention.
        """
        if len(self.text) > MAX_CHARACTERS:
            limit = f"one inscription may have at most {MAX_CHARACTERS:,} characters"
            raise self._error(NoteRefused(limit, "divide it into several inscriptions"), 0)
        if twice := read_twice(self.text):
            raise self._error(NoteRefused(twice.said, WHAT_TO_DO), twice.offset)
        position = 0
        try:
            while position < len(self.text):
                position = self._plain(position) or self._item(position)
        except NoteRefused as refused:
            raise self._error(refused, position) from None
        if self.open:
            last = self.open[-1]
            message = f"the bracket {self.text[last.offset]} is opened and never closed"
            raise self._error(NoteRefused(message, f"expected {last.bracket.closing}"), last.offset)
        return transcription(self.faces)

    def _plain(self, position: int) -> int:
        """Add the run of ordinary signs that begins here and return its end, or 0."""
        run = _PLAIN.match(self.text, position)
        if run is None:
            return 0
        end = run.end()
        if end < len(self.text) and continues(self.text, end):
            end -= 1
        kind, certainty, intervention = Kind.CHARACTER, self.certainty, self.intervention
        self.column += [
            Sign(char, kind, certainty, intervention) for char in self.text[position:end]
        ]
        self.count += end - position
        self.item_end = end
        return end if end > position else 0

    def _item(self, position: int) -> int:
        """Read whatever begins here and return its end."""
        char = self.text[position]
        convention = self.convention
        if char in convention.triggers and (end := self._pattern(position)):
            return end
        if char in _SPACES:
            return position + 1
        if char == "\n" or char in convention.column_ends:
            return self._end_column(position + 1)
        if char in convention.face_ends:
            return self._end_face(position + 1)
        if char in convention.brackets:
            return self._open_bracket(position)
        if char in convention.closings:
            return self._close_bracket(position)
        if char in convention.marks:
            return self._add("", convention.marks[char], position + 1)
        if char == DOT_BELOW:
            return self._note(Note(char, Certainty.DAMAGED), position, position + 1)
        if char in _DASHES and self.certainty is Certainty.RESTORED:
            return self._dashes(position)
        return self._sign(position)

    def _pattern(self, position: int) -> int:
        """Read what one of the convention's patterns finds here; return its end, or 0."""
        for name, triggers, pattern in self.convention.patterns:
            if self.text[position] not in triggers:
                continue
            found = _compiled(pattern).match(self.text, position)
            if found is None:
                continue
            end = found.end()
            match name:
                case "gap":
                    return self._add("", Certainty.CLEAR, end, Kind.GAP)
                case "kao":
                    return self._add("", Certainty.CLEAR, end, Kind.KAO)
                case "seal":
                    return self._seal(found["legend"] or "", end)
                case "repeat":
                    return self._add(found[0], Certainty.CLEAR, end)
                case "face":
                    return self._end_face(end)
                case _:
                    return self._notes(found["note"], position, end)
        return 0

    def _sign(self, position: int) -> int:
        char = self.text[position]
        start = position + 1 if char == "\\" else position
        if start > position and not self.text[start : start + 1].strip():
            raise NoteRefused("\\ marks no sign", "expected the sign that is carved as it stands")
        if char in _UNFIT and char in self.convention.special:
            raise self._misplaced(position)
        end = end_of_sign(self.text, start)
        text = self.text[start:end]
        if not is_one_sign(text):
            raise _no_sign(text, start - position)
        return self._add(text, Certainty.CLEAR, end)

    def _add(self, text: str, own: Certainty, end: int, kind: Kind = Kind.CHARACTER) -> int:
        certainty = certainty_within(self.certainty, own, kind)
        self.column.append(Sign(text, kind, certainty, self.intervention))
        self.count += 1
        self.item_end = end
        return end

    def _seal(self, written: str, end: int) -> int:
        legend = re.sub(r"\\(.)", r"\1", written)
        if why := next(filter(None, map(refusal, legend)), ""):
            raise NoteRefused(
                f"the seal's legend contains {why}", "expected characters of the legend"
            )
        if too_much := next(filter(None, map(excess, segments(legend))), ""):
            raise NoteRefused(f"in the seal's legend {too_much}", f"expected at most {MAX_MARKS}")
        own = Certainty.CLEAR if legend else Certainty.UNREADABLE
        return self._add(legend, own, end, Kind.SEAL)

    def _notes(self, content: str, start: int, end: int) -> int:
        if content.strip() in _SIDES and self.convention.parents:
            raise NoteRefused(
                f"({content}) names a side", "expected 」 where a face ends, and no names"
            )
        for part in map(str.strip, re.split(_SEPARATORS, content.strip())):
            note = self.convention.notes.get(part)
            if note is None and part and self.convention.parents:
                self._require_item(start)
                self.column[-1] = named(self.column[-1], part, self.convention)
                self.item_end = end
            elif note is None:
                raise NoteRefused(f"the note ({part}) is unknown", self.convention.expected)
            else:
                self._note(note, start, end)
            start = end
        return end

    def _note(self, note: Note, start: int, end: int) -> int:
        self._require_item(start)
        self.column[-1] = noted(self.column[-1], note)
        self.item_end = end
        return end

    def _require_item(self, position: int) -> None:
        if position != self.item_end:
            raise NoteRefused("the note follows no sign", self.convention.expected)

    def _open_bracket(self, position: int) -> int:
        bracket = self.convention.brackets[self.text[position]]
        if any(waiting.bracket is bracket for waiting in self.open):
            message = f"{bracket.opening} is opened again before it is closed"
            raise NoteRefused(message, f"expected {bracket.closing} first")
        if bracket.certainty:
            if self.certainty is not Certainty.CLEAR:
                raise contradiction(self.certainty, bracket.certainty)
            self.certainty = bracket.certainty
        if bracket.intervention:
            if self.intervention is not Intervention.NONE:
                raise contradiction(self.intervention, bracket.intervention)
            self.intervention = bracket.intervention
        self.open.append(_Open(bracket, position, self.count))
        return position + 1

    def _close_bracket(self, position: int) -> int:
        char = self.text[position]
        if not self.open:
            message = f"the bracket {char} was never opened"
            raise NoteRefused(message, f"expected a sign; write \\{char} if the mark is carved")
        last = self.open.pop()
        opening = self.text[last.offset]
        if char not in last.bracket.closings:
            message = f"the bracket {char} does not close {opening}"
            raise NoteRefused(message, f"expected {last.bracket.closing}")
        if self.count == last.signs_before:
            message = f"the brackets {opening}{char} hold no sign"
            raise NoteRefused(message, f"expected the {last.bracket.name} signs between them")
        if last.bracket.certainty:
            self.certainty = Certainty.CLEAR
        if last.bracket.intervention:
            self.intervention = Intervention.NONE
        return position + 1

    def _dashes(self, position: int) -> int:
        end = position
        while end < len(self.text) and self.text[end] in _DASHES + " ":
            end += 1
        return self._add("", Certainty.CLEAR, end, Kind.GAP)

    def _end_column(self, end: int) -> int:
        self.column = []
        self.faces[-1].append(self.column)
        self.item_end = -1
        return end

    def _end_face(self, end: int) -> int:
        self.faces.append([])
        return self._end_column(end)

    def _misplaced(self, position: int) -> NoteRefused:
        char = self.text[position]
        if char in "(（" and not re.match(r"[^\n]*?[)）]", self.text[position : position + 100]):
            return NoteRefused(f"the bracket {char} is opened and never closed", "expected ) or ）")
        if char in "()（）":
            return NoteRefused(f"the bracket {char} does not fit here", self.convention.expected)
        foreign = "{｛}｝⟦⟧〚〛" if self.convention.parents else "〔〕「」｢｣"
        origin = " (it is a mark of the other convention)" if char in foreign else ""
        carved = f"expected a sign; write \\{char} if it is carved"
        return NoteRefused(f"{char} does not fit here{origin}", carved)

    def _error(self, refused: NoteRefused, position: int) -> NotationError:
        offset = position + refused.further
        line = self.text.count("\n", 0, offset) + 1
        column = offset - self.text.rfind("\n", 0, offset)
        return NotationError(refused.message, Place(self.file, line, column), refused.expected)


@tables.cached()
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern)


def _no_sign(text: str, further: int) -> NoteRefused:
    for step, char in enumerate(text):
        if why := refusal(char):
            expected = "expected a sign; write □ for one that cannot be read"
            return NoteRefused(f"the text contains {why}", expected, further + step)
    if too_much := excess(text):
        limit = f"expected at most {MAX_MARKS} marks, or {MAX_DESCRIPTION} in a description"
        return NoteRefused(too_much, limit, further)
    if is_mark(text[0]):
        return NoteRefused("a combining mark stands alone", "expected its sign before it", further)
    parts = "expected two parts after ⿰ or ⿱, three after ⿲ or ⿳"
    return NoteRefused("the description of a character breaks off", parts, further)
