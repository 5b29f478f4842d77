"""Text to transcription, in one pass whose time grows with the length of the text."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from inscribe.errors import NotationError, Place
from inscribe.notation import hentaigana
from inscribe.notation.conventions import Bracket, Convention, Note
from inscribe.notation.segments import DOT_BELOW, end_of_sign, is_mark, is_one_sign, refusal
from inscribe.signs import Certainty, Intervention, Kind, Sign, Transcription, transcription

MAX_CHARACTERS = 200_000

# Kana, repeat marks and kanji that are no mark of either convention, one character each.
_PLAIN = re.compile(
    "[々〆〇〱〲〻ぁ-ゖゝ-ヺー-ヿ\u3400-\u4dbf\u4e00-\u9fff\uf900-\ufaff"
    "\U0001b000-\U0001b11f\U00020000-\U0003fffd]+"
)
_SPACES = frozenset(" \t\u3000\u00a0")
_SEPARATORS = re.compile("[・、,，]")


@dataclass(frozen=True, slots=True)
class _Open:
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
            raise NotationError(limit, Place(self.file), "divide it into several inscriptions")
        position = 0
        while position < len(self.text):
            position = self._plain(position) or self._item(position)
        if self.open:
            last = self.open[-1]
            raise self._error(
                f"the bracket {self.text[last.offset]} is opened and never closed",
                last.offset,
                f"expected {last.bracket.closing}",
            )
        return transcription(self.faces)

    def _plain(self, position: int) -> int:
        """Add the run of ordinary signs that begins here and return its end, or 0."""
        run = _PLAIN.match(self.text, position)
        if run is None:
            return 0
        end = run.end()
        if end < len(self.text) and is_mark(self.text[end]):
            end -= 1
        certainty, intervention = self.certainty, self.intervention
        self.column += [
            Sign(char, Kind.CHARACTER, certainty, intervention) for char in self.text[position:end]
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
            return self._end_column(position)
        if char in convention.face_ends:
            return self._end_face(position + 1)
        if char in convention.brackets:
            return self._open_bracket(position)
        if char in convention.closings:
            return self._close_bracket(position)
        if char in convention.marks:
            return self._add("", convention.marks[char], position, position + 1)
        if char == DOT_BELOW:
            return self._note([Note(char, Certainty.DAMAGED)], position, position + 1)
        if self._is_dash_in_bracket(char):
            return self._dashes(position)
        return self._sign(position)

    def _sign(self, position: int) -> int:
        start = position
        if self.text[position] == "\\":
            start += 1
            if start == len(self.text):
                raise self._error("the text ends with \\", position, "expected the sign it marks")
        elif self.text[position] in self.convention.special:
            raise self._misplaced(position)
        end = end_of_sign(self.text, start)
        text = self.text[start:end]
        if not is_one_sign(text):
            raise self._no_sign(text, start)
        return self._add(text, Certainty.CLEAR, position, end)

    def _add(
        self, text: str, own: Certainty, start: int, end: int, kind: Kind = Kind.CHARACTER
    ) -> int:
        certainty = self._combined(own, kind, start)
        self.column.append(Sign(text, kind, certainty, self.intervention))
        self.count += 1
        self.item_end = end
        return end

    def _combined(self, own: Certainty, kind: Kind, start: int) -> Certainty:
        """Return what a sign's own mark and the brackets around it say together."""
        outer = self.certainty
        if own is outer or outer is Certainty.CLEAR:
            return own
        if kind is Kind.GAP and outer is Certainty.RESTORED:
            return Certainty.CLEAR
        if own is Certainty.CLEAR:
            return outer
        if own is Certainty.UNREADABLE:
            return Certainty.STRUCK if outer is Certainty.STRUCK else own
        raise self._two_degrees(outer, own, start)

    def _pattern(self, position: int) -> int:
        for name, pattern in self.convention.patterns:
            found = pattern.match(self.text, position)
            if found is None:
                continue
            if name == "gap":
                return self._add("", Certainty.CLEAR, position, found.end(), Kind.GAP)
            if name == "kao":
                return self._add("", Certainty.CLEAR, position, found.end(), Kind.KAO)
            if name == "face":
                return self._end_face(found.end())
            if name == "seal":
                return self._seal(found["legend"], position, found.end())
            return self._notes(found["note"], position, found.end())
        return 0

    def _seal(self, legend: str | None, start: int, end: int) -> int:
        text = re.sub(r"\\(.)", r"\1", legend or "")
        if why := next(filter(None, map(refusal, text)), ""):
            raise self._error(f"the seal's legend contains {why}", start, "remove it")
        own = Certainty.CLEAR if text else Certainty.UNREADABLE
        return self._add(text, own, start, end, Kind.SEAL)

    def _notes(self, content: str, start: int, end: int) -> int:
        self._require_item(start)
        notes: list[Note] = []
        for part in _SEPARATORS.split(content.strip()):
            known = self.convention.notes.get(part.strip())
            if known is not None:
                notes.append(known)
            elif self.convention.parents:
                notes += self._reading_or_parent(part.strip(), start)
            else:
                raise self._error(f"the note ({part}) is unknown", start, self.convention.expected)
        return self._note(notes, start, end)

    def _reading_or_parent(self, part: str, start: int) -> list[Note]:
        """Apply a note that names a character; return the doubt it expresses, if any."""
        doubtful = next(
            (
                note
                for key, note in self.convention.notes.items()
                if part[1:] == key and note.certainty is Certainty.DOUBTFUL
            ),
            None,
        )
        named = part[:1] if doubtful else part
        sign = self.column[-1]
        if sign.kind is Kind.CHARACTER and not sign.text and is_one_sign(named):
            certainty = (
                Certainty.RESTORED if sign.certainty is Certainty.UNREADABLE else sign.certainty
            )
            if doubtful and certainty is Certainty.RESTORED:
                certainty, doubtful = Certainty.DOUBTFUL, None
            self.column[-1] = replace(sign, text=named, certainty=certainty)
        else:
            letter = hentaigana.letter(sign.text, named)
            if letter is None:
                raise self._unknown_note(sign, part, start)
            self.column[-1] = replace(sign, text=letter)
        return [doubtful] if doubtful else []

    def _note(self, notes: list[Note], start: int, end: int) -> int:
        self._require_item(start)
        for note in notes:
            self.column[-1] = self._noted(self.column[-1], note, start)
        self.item_end = end
        return end

    def _noted(self, sign: Sign, note: Note, start: int) -> Sign:
        if note.certainty and sign.certainty is not note.certainty:
            free = sign.certainty is Certainty.CLEAR
            struck = note.certainty is Certainty.STRUCK and sign.certainty is Certainty.UNREADABLE
            if not free and not struck:
                raise self._two_degrees(sign.certainty, note.certainty, start)
            if sign.kind is Kind.GAP and note.certainty is not Certainty.STRUCK:
                raise self._error(
                    f"a gap cannot be {note.certainty.value}", start, "remove the note"
                )
            sign = replace(sign, certainty=note.certainty)
        if note.intervention and sign.intervention is not note.intervention:
            if sign.intervention is not Intervention.NONE:
                raise self._two_interventions(sign.intervention, note.intervention, start)
            sign = replace(sign, intervention=note.intervention)
        return replace(sign, sic=True) if note.sic else sign

    def _open_bracket(self, position: int) -> int:
        if self.text[position] in "(（" and self.convention.parents:
            raise self._error("the round bracket does not fit", position, self.convention.expected)
        bracket = self.convention.brackets[self.text[position]]
        if bracket.certainty:
            if self.certainty is not Certainty.CLEAR:
                raise self._two_degrees(self.certainty, bracket.certainty, position)
            self.certainty = bracket.certainty
        if bracket.intervention:
            if self.intervention is not Intervention.NONE:
                raise self._two_interventions(self.intervention, bracket.intervention, position)
            self.intervention = bracket.intervention
        self.open.append(_Open(bracket, position, self.count))
        return position + 1

    def _close_bracket(self, position: int) -> int:
        char = self.text[position]
        if not self.open:
            raise self._error(
                f"the bracket {char} was never opened",
                position,
                f"remove it, or write \\{char} for a carved one",
            )
        last = self.open.pop()
        if char not in last.bracket.closings:
            raise self._error(
                f"the bracket {char} does not fit {self.text[last.offset]}",
                position,
                f"expected {last.bracket.closing}",
            )
        if self.count == last.signs_before:
            raise self._error(
                "the brackets hold no sign",
                last.offset,
                f"expected the {last.bracket.name} signs between them",
            )
        if last.bracket.certainty:
            self.certainty = Certainty.CLEAR
        if last.bracket.intervention:
            self.intervention = Intervention.NONE
        return position + 1

    def _is_dash_in_bracket(self, char: str) -> bool:
        return char in "-‐–—―" and self.certainty is Certainty.RESTORED

    def _dashes(self, position: int) -> int:
        end = position
        while end < len(self.text) and self.text[end] in "-‐–—― ":
            end += 1
        return self._add("", Certainty.CLEAR, position, end, Kind.GAP)

    def _end_column(self, position: int) -> int:
        self.column = []
        self.faces[-1].append(self.column)
        self.item_end = -1
        return position + 1

    def _end_face(self, end: int) -> int:
        self.faces.append([])
        self._end_column(end)
        return end

    def _require_item(self, position: int) -> None:
        if position != self.item_end:
            raise self._error(
                "a note must follow its sign at once", position, self.convention.expected
            )

    def _error(self, message: str, offset: int, hint: str) -> NotationError:
        line = self.text.count("\n", 0, offset) + 1
        column = offset - (self.text.rfind("\n", 0, offset) + 1) + 1
        return NotationError(message, Place(self.file, line, column), hint)

    def _two_degrees(self, one: Certainty, other: Certainty, offset: int) -> NotationError:
        return self._error(
            f"the sign is marked {one.value} and {other.value} at once",
            offset,
            "expected one of them",
        )

    def _two_interventions(
        self, one: Intervention, other: Intervention, offset: int
    ) -> NotationError:
        return self._error(
            f"the sign is marked {one.value} and {other.value} at once",
            offset,
            "expected one of them",
        )

    def _misplaced(self, position: int) -> NotationError:
        char = self.text[position]
        return self._error(f"{char} does not fit here", position, f"write \\{char} if it is carved")

    def _unknown_note(self, sign: Sign, part: str, start: int) -> NotationError:
        parents = hentaigana.parents(sign.text)
        if parents:
            return self._error(
                f"no kana {sign.text} written from {part} is known",
                start,
                f"its parents are {'、'.join(parents)}",
            )
        return self._error(f"the note ({part}) is unknown", start, self.convention.expected)

    def _no_sign(self, text: str, offset: int) -> NotationError:
        for step, char in enumerate(text):
            if why := refusal(char):
                return self._error(
                    f"the text contains {why}",
                    offset + step,
                    "remove it; write □ for a sign that cannot be read",
                )
        if is_mark(text[0]):
            return self._error(
                "a combining mark stands without a sign before it",
                offset,
                "expected its sign first",
            )
        if text.isspace():
            return self._error("\\ stands before a space", offset, "expected the sign it marks")
        return self._error(
            "the description of a character breaks off",
            offset,
            "expected two parts after ⿰ or ⿱, three after ⿲ or ⿳",
        )
