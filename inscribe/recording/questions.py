"""The questions, in the order in which one handles an object, and the record they make."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Protocol

from inscribe import notation
from inscribe.errors import InscribeError
from inscribe.record import (
    MAX_MM,
    ColumnMeasure,
    CopiedText,
    Inscription,
    Measurements,
    Plate,
    Reader,
    Record,
    suggested,
)

Check = Callable[[str], str]  # what is wrong with an answer, or nothing
SIZES = ("length", "width", "height", "thickness", "diameter")
FACE_ENDS = "」"


class Asker(Protocol):
    """Whoever is asked: puts a question until its answer passes, and shows remarks."""

    def ask(self, key: str, question: str, check: Check, offered: tuple[str, ...] = ()) -> str:
        """Return an answer for which ``check`` finds nothing wrong."""

    def column(self, key: str, number: int, before: str) -> str:
        """Return the next column of the inscription, empty for none, or 」 where a face ends."""


@dataclass(frozen=True, slots=True)
class Interview:
    """Asks for one object."""

    asker: Asker

    def record(self) -> Record:
        """Return the record made of the answers."""
        identity = self.asker.ask("id", "object id", required)
        kind = self.asker.ask("kind", "kind of fitting", required, _words("kind"))
        title = self.asker.ask("title", "title or subject (may stay empty)", anything)
        sizes = {name: self._mm(name, f"{name} in mm (may stay empty)") for name in SIZES}
        found = [self._inscription(1)]
        while self._yes(f"more.{len(found)}", "another inscription on this object? y/n"):
            found.append(self._inscription(len(found) + 1))
        remarks = self.asker.ask("remarks", "remarks on the object (may stay empty)", anything)
        return Record(identity, kind, tuple(found), title, Measurements(**sizes), None, remarks)

    def _inscription(self, number: int) -> Inscription:
        part = f"inscription.{number}"
        place = self.asker.ask(
            f"{part}.place", "place of the inscription", required, _words("place")
        )
        hand = self.asker.ask(f"{part}.hand", "hand (may stay empty)", anything, _words("hand"))
        execution = self.asker.ask(
            f"{part}.execution", "execution (may stay empty)", anything, _words("execution")
        )
        text, columns = self._text(part)
        plate, measured = self._measures(part, columns)
        source = self.asker.ask(
            f"{part}.source", "id of the source text (may stay empty)", anything
        )
        translation = self.asker.ask(
            f"{part}.translation", "translation (may stay empty)", anything
        )
        return Inscription(
            place,
            text,
            hand=hand,
            execution=execution,
            plate=plate,
            columns=measured,
            source=CopiedText(id=source) if source else None,
            readers=self._reader(part),
            translation=translation,
        )

    def _text(self, part: str) -> tuple[str, int]:
        """Return the text, a column a line, and the number of its columns."""
        lines: list[str] = []
        while True:
            said = self.asker.column(
                f"{part}.column.{len(lines) + 1}", len(lines) + 1, "\n".join(lines)
            )
            if said == FACE_ENDS and lines:
                lines[-1] += FACE_ENDS
            elif said:
                lines.append(said)
            elif lines:
                text = "\n".join(lines).removesuffix(FACE_ENDS)
                return text, len(notation.parse(text).columns)

    def _measures(self, part: str, columns: int) -> tuple[Plate | None, tuple[ColumnMeasure, ...]]:
        width = self._mm(f"{part}.plate.width", "width of the plate in mm (may stay empty)")
        if width is None:
            return None, ()
        height = self._mm(
            f"{part}.plate.height", "height of the plate in mm (if empty, no plate is kept)"
        )
        if height is None:
            return None, ()
        measured = tuple(self._column_measures(part, columns, height))
        return Plate(width, height), measured if len(measured) == columns else ()

    def _column_measures(self, part: str, columns: int, height: float) -> Iterator[ColumnMeasure]:
        for number in range(1, columns + 1):
            said = self.asker.ask(
                f"{part}.measure.{number}",
                f"column {number}: top and bottom in mm from the upper edge (may stay empty)",
                lambda answer: extent_problem(answer, height),
            )
            if not said:
                return
            top, bottom = map(float, said.split())
            yield ColumnMeasure(top, bottom)

    def _reader(self, part: str) -> tuple[Reader, ...]:
        by = self.asker.ask(f"{part}.reader", "read by (may stay empty)", anything)
        if not by:
            return ()
        on = self.asker.ask(f"{part}.on", "on (YYYY-MM-DD, may stay empty)", day_problem)
        return (Reader(by, date.fromisoformat(on) if on else None),)

    def _mm(self, key: str, question: str) -> float | None:
        said = self.asker.ask(key, question, size_problem)
        return float(said) if said else None

    def _yes(self, key: str, question: str) -> bool:
        return self.asker.ask(key, question, yes_problem) in ("y", "yes")


def _words(field: str) -> tuple[str, ...]:
    return tuple(word.word for word in suggested(field))


def anything(answer: str) -> str:
    """Find nothing wrong, unless the answer holds what no record may."""
    return "" if answer.isprintable() else "it holds an invisible character"


def required(answer: str) -> str:
    """Find an empty answer wrong."""
    return anything(answer) if answer else "an answer is needed"


def size_problem(answer: str) -> str:
    """Find wrong what is no size in mm.

    >>> size_problem("14.5"), size_problem("-3")
    ('', 'it must lie between 0 and 1000 mm')
    >>> size_problem("14,5")
    'a number of millimetres is expected, such as 14.5 (a point, no comma)'
    """
    if not answer:
        return ""
    try:
        size = float(answer)
    except ValueError:
        return "a number of millimetres is expected, such as 14.5 (a point, no comma)"
    return "" if 0 < size <= MAX_MM else f"it must lie between 0 and {MAX_MM:g} mm"


def extent_problem(answer: str, height: float) -> str:
    """Find wrong what is no top and bottom on a plate of this height."""
    parts = answer.split()
    if not parts:
        return ""
    try:
        top, bottom = map(float, parts)
    except ValueError:
        return "two numbers are expected, such as: 5.0 89.5"
    return (
        "" if 0 <= top < bottom <= height else f"they must lie on the plate, from 0 to {height:g}"
    )


def day_problem(answer: str) -> str:
    """Find wrong what is no day."""
    try:
        if answer:
            date.fromisoformat(answer)
    except ValueError:
        return "a day is expected, such as 2026-03-14"
    return ""


def yes_problem(answer: str) -> str:
    """Find wrong what is neither yes nor no."""
    return "" if answer in ("y", "yes", "n", "no", "") else "y or n is expected"


def column_problem(column: str) -> str:
    """Find wrong what breaks the transcription conventions, and say how."""
    try:
        notation.parse(column)
    except InscribeError as error:
        return str(error)
    return ""
