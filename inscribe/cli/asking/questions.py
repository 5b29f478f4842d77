"""The questions of ``inscribe new`` on the terminal, their answers kept in the draft."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import TYPE_CHECKING

import click

from inscribe.cli.asking.offering import is_in_library, likeliest_source
from inscribe.cli.asking.prompting import LineReader, TypingStopped
from inscribe.cli.asking.saying import say, show_column, show_found
from inscribe.recording import (
    FACE_ENDS,
    column_problem,
    converted,
    is_yes,
    is_yes_or_no,
    plain,
    reading_problem,
    usual_word,
)

if TYPE_CHECKING:
    from inscribe.record import Record
    from inscribe.recording import Check, Draft, Interview, Memory

BACK = "<"
NOTHING = "-"
_LONG = re.compile(r"\b(title|remarks|translation|column)\b")  # what is put right as it stands


class OneBackError(Exception):
    """The last answer is to be given anew."""


@dataclass
class Prompter:
    """Asks on the terminal, and keeps every answer in the draft.

    ``live``: a person types, to whom defaults are offered and the answers are shown at the end.
    """

    draft: Draft
    memory: Memory
    lines: LineReader
    live: bool
    library_file: str | None = None
    cautioned: bool = False
    labels: dict[str, str] = field(default_factory=dict)  # of the questions, by key

    @property
    def several_lines(self) -> bool:
        """Whether a text of several lines is asked for line by line."""
        return self.live

    @property
    def drawer(self) -> bool:
        """Whether it is asked in which drawer an object lies."""
        return self.live or "drawer" in self.memory.session or "drawer" in self.draft.answers

    def ask(
        self,
        key: str,
        question: str,
        check: Check,
        offered: tuple[str, ...] = (),
        default: Callable[[], str] | None = None,
    ) -> str:
        """Return an answer that passes: kept, given once for all, or asked for."""
        self.labels[key] = question.partition(" (")[0]
        name = key.rpartition(".")[2]
        said_once = self.memory.session.get(name)
        if said_once and key not in self.draft.answers and not self.draft.typed_for(key):
            self.draft.keep(key, said_once)
            self.draft.given.add(key)

        def asked() -> str:
            if offered:
                say(f"  usual: {'; '.join(offered)}")
            said = self._asked(key, question, check, offered, self._default(key, default, offered))
            if offered and said and said not in offered:
                say("  none of the usual words; it is kept as you wrote it")
            if name == "source" and said and not is_in_library(self.library_file, said):
                say("  the library has no text of this id; it is kept as you wrote it")
            return said

        return self.draft.answer(key, asked, check)

    def _default(
        self, key: str, default: Callable[[], str] | None, offered: tuple[str, ...]
    ) -> str:
        """Return what an empty answer stands for.

        The last object's place is none for a fitting of another kind that has no such place.
        """
        name = key.rpartition(".")[2]
        if default is not None and (self.live or name == "id"):
            return default()
        if not self.live:
            return ""
        if name == "on":
            return "today"
        remembered = self.memory.last.get(key, "")
        other_kind = self.draft.answers.get("kind") != self.memory.last.get("kind")
        return "" if name == "place" and other_kind and remembered not in offered else remembered

    def column(self, key: str, number: int, before: str) -> tuple[str, tuple[str, ...]]:
        """Return a column that was shown and kept, and readings given for it."""
        if number == 1 and not self.draft.has(key, column_or_end_problem):
            say(f"  columns from right to left; Enter alone when done, {FACE_ENDS} ends a face")
        question = f"column {number}" + (" (rightmost)" if number == 1 else "")
        self.labels[key] = f"column {number}"
        while True:
            said = self.draft.answer(
                key,
                lambda: self._asked(key, question, column_or_end_problem),
                column_or_end_problem,
            )
            if said in ("", FACE_ENDS):
                return said, ()
            try:
                ask = partial(self._kept, f"{key}.kept", said, before)
                kept = self.draft.answer(f"{key}.kept", ask, _kept_problem)
            except OneBackError:
                kept = "n"
            if not kept.startswith("n"):
                return said, tuple(kept.split()[1:])
            self.draft.forget(key)
            del self.draft.asked[self.draft.asked.index(key) :]

    def _kept(self, key: str, column: str, before: str) -> str:
        """Return "y" and the readings that were put right, or "n" for a column to be written anew.

        The readings are kept as one answer, so that stopping in between loses none.
        """
        *readings, begun = self.draft.typed_for(key).split("\n")
        self._caution(column)
        while True:
            show_column(column, before, readings)
            before_it = "".join(f"{each}\n" for each in readings)
            check = reading_or_yes_problem
            said = self._asked(key, self._keep_it, check, begun=begun, before_it=before_it)
            begun = ""
            if "=" not in plain(said):
                return " ".join(("y", *readings)) if not said or is_yes(said) else "n"
            given = said.replace("＝", "=").replace(" ", "")
            if problem := reading_problem(given, column):
                say(f"  {problem}")
                continue
            readings = [*readings, _named(given, column, before)]
            self.draft.keep_typing(key, "".join(f"{each}\n" for each in readings))

    @property
    def _keep_it(self) -> str:
        if not self.live:
            return "keep it? y/n (empty = y)"
        return "keep it? Enter = yes, n = write it anew, 嶺曉=みねあき = it is read so"

    def source(self, key: str, text: str) -> str:
        """Return the id of the likeliest text of the library, and show what was found."""
        return likeliest_source(self.library_file, text)

    def _asked(
        self,
        key: str,
        question: str,
        check: Check,
        offered: Sequence[str] = (),
        default: str = "",
        begun: str | None = None,
        before_it: str = "",
    ) -> str:
        """Return a line that passes; ``begun`` stands on it, and is kept after ``before_it``."""
        typed = self.draft.typed_for(key) if begun is None else begun
        is_long = bool(_LONG.search(key))
        if key == self.draft.taken_back and not is_long:
            default, typed = typed or default, ""  # a short answer is typed anew, or taken again
        shown = f"{question} [{default}]" if default else question
        while True:
            try:
                said = self.lines.line(shown, typed, offered).strip()
            except TypingStopped as stopped:
                again = default if key == self.draft.taken_back else ""
                self.draft.keep_typing(key, before_it + (stopped.typed or again))
                raise click.Abort from stopped
            typed = ""
            short = plain(said)
            if short == BACK:
                raise OneBackError
            if short.startswith("?"):
                show_found(short[1:])
                continue
            if self.live and short == NOTHING:
                said = ""
            elif default and not short:
                said = default
            said = self._usual(key, said) if offered else said
            if problem := check(said):
                say(f"  {problem}")
                typed = said if self.live and is_long else ""
                continue
            if check.__name__ == "size_problem" and (size := converted(said)):
                say(f"  {said} = {size}")
            return said

    def _usual(self, key: str, said: str) -> str:
        """Return the word that records use, and say so where another was typed."""
        usual = usual_word(key.rpartition(".")[2], said)
        if usual != said:
            say(f"  {said} = {usual}")
        return usual

    def _caution(self, column: str) -> None:
        """Say once how a worn sign may be read, when the first is met."""
        from inscribe import notation

        if not self.cautioned and any(sign.is_worn for sign in notation.parse(column).signs):
            from inscribe.cautions import caution

            self.cautioned = True
            say(f"  {caution('handling')}")

    def last_look(self) -> bool:
        """Show all answers; whether they are to be written, or one was taken back to be changed."""
        shown = [key for key in self.draft.asked if not key.endswith(".kept")]
        say("all answers:", indent=0)
        for number, key in enumerate(shown, start=1):
            answer = self.draft.answers[key]
            if answer == FACE_ENDS:
                answer = "the face ends"
            size = converted(answer) if key.rpartition(".")[2] in _SIZES else ""
            readings = self.draft.answers.get(f"{key}.kept", "").split()[1:]
            more = f" ({size})" if size else f" ({', '.join(readings)})" if readings else ""
            say(f"  {number:>2}  {self.labels.get(key, key)}: {answer or '-'}{more}", indent=8)
        while True:
            try:
                said = plain(self.lines.line("write it? Enter = yes, a number changes that answer"))
            except TypingStopped as stopped:
                raise click.Abort from stopped
            if said == BACK:
                raise OneBackError
            if not said or is_yes(said):
                return True
            if said.isdecimal() and 1 <= int(said) <= len(shown):
                self.draft.forget(shown[int(said) - 1])
                return False
            say(f"  a number from 1 to {len(shown)} is expected, or Enter")


_SIZES = ("length", "width", "height", "thickness", "diameter")


def _named(given: str, column: str, before: str) -> str:
    """Return a reading, marked as one of a name where the signs were read as a name."""
    from inscribe.recording import is_name_at

    written, _, kana = given.partition("=")
    if kana.startswith("name:") or not is_name_at(written, column, before):
        return given
    return f"{written}=name:{kana}"


def column_or_end_problem(answer: str) -> str:
    """Find wrong what is neither a column, nor nothing, nor the end of a face."""
    return "" if answer in ("", FACE_ENDS) else column_problem(answer)


def reading_or_yes_problem(answer: str) -> str:
    """Find wrong what is neither yes or no nor a reading put right."""
    return "" if "=" in plain(answer) or is_yes_or_no(answer) else "y or n is expected"


def _kept_problem(answer: str) -> str:
    return "" if answer[:1] == "y" else "to be kept or not"


def answered(interview: Interview, prompter: Prompter) -> Record:
    """Return the record made of the answers, some of which may be taken back on the way."""
    while True:
        prompter.draft.asked.clear()
        try:
            record = interview.record()
            if not prompter.live or prompter.last_look():
                return record
        except OneBackError:
            if not prompter.draft.step_back():
                say("  this is the first question")
