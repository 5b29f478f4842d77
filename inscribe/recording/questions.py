"""The questions, in the order in which one handles an object, and the record they make."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from typing import Protocol

from inscribe import notation
from inscribe.record import (
    ColumnMeasure,
    CopiedText,
    Inscription,
    Measurements,
    Plate,
    Reader,
    Record,
)
from inscribe.recording.checks import (
    Check,
    anything,
    day_problem,
    extent_problem,
    places_on,
    required,
    size_problem,
    words_for,
    yes_problem,
)
from inscribe.recording.measures import extent_of, mm_of, sizes_of
from inscribe.recording.typed import day_of, is_yes, plain
from inscribe.settling import Who, settle, settlement

FACE_ENDS = "」"


class Asker(Protocol):
    """Whoever is asked: puts a question until its answer passes, and shows remarks."""

    @property
    def several_lines(self) -> bool:
        """Whether a text of several lines is asked for line by line, up to an empty one."""

    @property
    def drawer(self) -> bool:
        """Whether it is asked in which drawer the object lies."""

    def ask(
        self,
        key: str,
        question: str,
        check: Check,
        offered: tuple[str, ...] = (),
        default: Callable[[], str] | None = None,
    ) -> str:
        """Return an answer for which ``check`` finds nothing wrong."""

    def column(self, key: str, number: int, before: str) -> tuple[str, tuple[str, ...]]:
        """Return the next column of the inscription, and readings given for it on the spot.

        The column is empty for none, or 」 where a face ends; a reading is as in 嶺曉=みねあき.
        """

    def source(self, key: str, text: str) -> str:
        """Return the id of the text in the library that an inscription is from, if one is found."""


@dataclass(frozen=True, slots=True)
class Interview:
    """Asks for one object; ``stem`` is the name of its file, offered as its id."""

    asker: Asker
    stem: str = ""

    def record(self) -> Record:
        """Return the record made of the answers."""
        ask = self.asker.ask
        identity = ask("id", "object id", required, default=lambda: self.stem)
        kind = ask("kind", "kind of fitting", required, words_for("kind"))
        title = ask("title", "title or subject (may stay empty)", anything)
        drawer = ""
        if self.asker.drawer:
            drawer = plain(ask("drawer", "drawer it lies in (may stay empty)", anything))
        sizes = {name: self._mm(name, f"{name} in mm (may stay empty)") for name in sizes_of(kind)}
        found = [self._inscription(1, kind)]
        while self._yes(f"more.{len(found)}", "another inscription on this object? y/n"):
            found.append(self._inscription(len(found) + 1, kind))
        remarks = ask("remarks", "remarks on the object (may stay empty)", anything)
        made = Record(identity, kind, tuple(found), title, Measurements(**sizes), None, remarks)
        return made._replace(drawer=drawer)

    def _inscription(self, number: int, kind: str) -> Inscription:
        part = f"inscription.{number}"
        ask = self.asker.ask
        place = ask(f"{part}.place", "place of the inscription", required, places_on(kind))
        hand = ask(f"{part}.hand", "hand (may stay empty)", anything, words_for("hand"))
        execution = ask(
            f"{part}.execution", "execution (may stay empty)", anything, words_for("execution")
        )
        text, columns, readings = self._text(part)
        plate, measured = self._measures(part, columns)
        source = ask(
            f"{part}.source",
            "id of the source text (may stay empty)",
            anything,
            default=lambda: self.asker.source(f"{part}.source", text),
        )
        made = Inscription(
            place,
            text,
            hand=hand,
            execution=execution,
            plate=plate,
            columns=measured,
            source=CopiedText(id=source) if source else None,
            translation=self._translation(part),
            readers=self._reader(part),
        )
        return with_readings(made, readings)

    def _text(self, part: str) -> tuple[str, int, tuple[str, ...]]:
        """Return the text, a column a line, the number of its columns, and readings given."""
        lines: list[str] = []
        readings: list[str] = []
        for number in _counted():
            said, given = self.asker.column(
                f"{part}.column.{number}", len(lines) + 1, "\n".join(lines)
            )
            readings += given
            if said == FACE_ENDS and lines:
                lines[-1] += FACE_ENDS
            elif said and said != FACE_ENDS:
                lines.append(said)
            elif lines:
                break
        text = "\n".join(lines).removesuffix(FACE_ENDS)
        return text, len(notation.parse(text).columns), tuple(readings)

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
            extent = extent_of(said)
            if extent is None:
                return
            yield ColumnMeasure(*extent)

    def _translation(self, part: str) -> str:
        lines: list[str] = []
        for number in _counted():
            how = "(may stay empty)" if number == 1 else "(next line; empty when done)"
            key = f"{part}.translation" + (f".{number}" if number > 1 else "")
            said = self.asker.ask(key, f"translation {how}", anything)
            if said:
                lines.append(said)
            if not said or not self.asker.several_lines:
                break
        return "\n".join(lines)

    def _reader(self, part: str) -> tuple[Reader, ...]:
        by = self.asker.ask(f"{part}.reader", "read by (may stay empty)", anything)
        if not by:
            return ()
        on = self.asker.ask(f"{part}.on", "on (2026-03-14 or today, may stay empty)", day_problem)
        return (Reader(by, day_of(on)),)

    def _mm(self, key: str, question: str) -> float | None:
        return mm_of(self.asker.ask(key, question, size_problem))

    def _yes(self, key: str, question: str) -> bool:
        return is_yes(self.asker.ask(key, question, yes_problem))


def _counted() -> Iterator[int]:
    """Yield 1, 2, 3 and so on."""
    from itertools import count

    return count(1)


def with_readings(made: Inscription, readings: tuple[str, ...]) -> Inscription:
    """Return an inscription in which readings that were given on the spot are settled."""
    if not readings:
        return made
    reader = made.readers[0] if made.readers else Reader("")
    who = Who(reader.by, reader.on or date.today(), "")
    sayings = [settlement(each) for each in readings]
    whole = Record("-", "-", (replace(made, readers=()),))
    settled = settle(whole, sayings, who, replace_settled=True)
    return replace(made, overrides=settled.record.inscriptions[0].overrides)
