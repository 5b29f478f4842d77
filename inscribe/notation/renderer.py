"""Transcription to text."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from inscribe.errors import NotationError
from inscribe.notation.conventions import Bracket, Convention
from inscribe.notation.cutting import DOT_BELOW, is_one_sign, refusal
from inscribe.signs import Certainty, Intervention, Kind, Sign, Transcription

_Meaning = Certainty | Intervention


class Renderer:
    """Writes transcriptions in one convention."""

    def __init__(
        self,
        convention: Convention,
        column_end: str | None = None,
        shown: Callable[[Sign], str] | None = None,
    ) -> None:
        """``shown`` returns what is written for a character where that is not the sign itself."""
        self.convention = convention
        self.shown = shown
        self.column_end = convention.column_end if column_end is None else column_end
        self.brackets: dict[_Meaning, Bracket] = {}
        for bracket in convention.brackets.values():
            meaning = bracket.certainty or bracket.intervention
            if meaning:
                self.brackets[meaning] = bracket
        self.notes: dict[_Meaning, str] = {Certainty.DAMAGED: DOT_BELOW}
        for note in convention.notes.values():
            noted = note.certainty or note.intervention
            if noted:
                self.notes[noted] = note.text
        self.sic = next(note.text for note in convention.notes.values() if note.sic)
        self.struck = next(
            (mark for mark, meaning in convention.marks.items() if meaning is Certainty.STRUCK), ""
        )

    def transcription(self, t: Transcription) -> str:
        """Return the whole transcription."""
        return self.convention.face_end.join(
            self.column_end.join("".join(self.signs(column.signs)) for column in face.columns)
            for face in t.faces
        )

    def signs(self, signs: Sequence[Sign]) -> Iterator[str]:
        """Yield the pieces that write ``signs`` one after another, brackets closed at the end."""
        open_now: tuple[Bracket, ...] = ()
        for sign in signs:
            wanted = self._brackets(sign)
            if wanted != open_now:
                yield from (bracket.closing for bracket in reversed(open_now))
                yield from (bracket.opening for bracket in wanted)
                open_now = wanted
            yield self._bare(sign)
            yield from self._notes(sign)
        yield from (bracket.closing for bracket in reversed(open_now))

    def _brackets(self, sign: Sign) -> tuple[Bracket, ...]:
        meanings = (sign.intervention, sign.certainty)
        return tuple(self.brackets[m] for m in meanings if m in self.brackets)

    def _notes(self, sign: Sign) -> Iterator[str]:
        in_mark = sign.kind is Kind.CHARACTER and not sign.text
        for meaning in (sign.certainty, sign.intervention):
            if meaning in self.notes and meaning not in self.brackets:
                if meaning is sign.certainty and in_mark:
                    continue
                yield self.notes[meaning]
        if sign.sic:
            yield self.sic

    def _bare(self, sign: Sign) -> str:
        convention = self.convention
        if sign.kind is Kind.GAP:
            return convention.gap
        if sign.kind is Kind.KAO:
            return convention.kao
        if sign.kind is Kind.SEAL:
            return self._seal(sign.text)
        if sign.text:
            return self._character(sign)
        in_bracket = sign.certainty in self.brackets
        struck = sign.certainty is Certainty.STRUCK and not in_bracket
        return self.struck if struck else convention.unreadable

    def _character(self, sign: Sign) -> str:
        text = sign.text
        if not is_one_sign(text):
            raise NotationError(
                f"{text!r} is not one sign", hint="give each sign a Sign of its own"
            )
        if self.shown and (shown := self.shown(sign)) and shown != text:
            return shown
        return f"\\{text}" if text[0] in self.convention.special else text

    def _seal(self, legend: str) -> str:
        before, after, illegible = self.convention.seal
        if not legend:
            return illegible
        if why := next(filter(None, map(refusal, legend)), ""):
            raise NotationError(f"the legend {legend!r} contains {why}")
        ends = self.convention.legend_ends
        return before + "".join(f"\\{c}" if c in ends else c for c in legend) + after
