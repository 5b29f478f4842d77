"""``inscribe new``: ask for an object and its inscription, and write a record."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.common import conventions_option, example
from inscribe.errors import InputError, Place, ProblemsError

if TYPE_CHECKING:
    from inscribe.record import Record
    from inscribe.recording import Check, Draft, Interview

INTERRUPTED = 130  # exit status, as shells have it
SHOWN = 20  # characters of a search
MOST_DIGITS = 3  # of a number of strokes
BACK = "<"
HELP = "?舟+公 (by parts), ?ふね (by reading), ?11 (by strokes)"


@click.command(epilog=example("inscribe new records/A-0412.toml"))
@click.argument("path", metavar="RECORD")
@conventions_option
def command(path: str) -> None:
    """Ask for an object and its inscriptions as one handles it, and write the record.

    Columns are asked for from right to left; after each, its reading is shown and signs that
    deserve a second look are named. A sign that cannot be typed is looked for with ?, by its parts,
    reading or strokes; < takes the last answer back. Every answer is kept at once: stop with
    Ctrl-C, and the same command takes up where you stopped.
    """
    from inscribe.record import dump, loads
    from inscribe.recording import Draft, Interview

    target = Path(path)
    if target.suffix != ".toml":
        raise InputError("a record is a .toml file", Place(path), "name it so")
    _make_folder(target.parent)
    if isinstance(sys.stdin, TextIOWrapper):  # bytes that are no text are asked for again
        sys.stdin.reconfigure(errors="surrogateescape")
    draft = Draft.of(target)
    if draft.taken_up:
        click.echo(f"taken up again after {draft.taken_up} answers", err=True)
    _say(f"a sign that cannot be typed: {HELP}", indent=0)
    _say(f"one answer back: {BACK}; stop and keep the answers: Ctrl-C", indent=0)
    try:
        record = _answered(Interview(_Prompt(draft)), draft)
    except (click.Abort, KeyboardInterrupt) as error:
        kept = f"; {len(draft.answers)} answers are kept in {draft.path}" if draft.answers else ""
        click.echo(f"\nstopped, no record was written{kept}", err=True)
        raise click.exceptions.Exit(INTERRUPTED) from error
    text = dump(record)
    try:
        loads(text, path, target.parent)
    except ProblemsError as problems:
        said = "; ".join(problem.message for problem in problems.errors)
        hint = f"the answers are kept: correct {draft.path} and give the same command again"
        raise InputError(f"the answers contradict each other: {said}", hint=hint) from problems
    draft.finish(text)
    click.echo(f"written: {path}; check it with: inscribe check {path}", err=True)


class _OneBackError(Exception):
    """The last answer is to be given anew."""


def _answered(interview: Interview, draft: Draft) -> Record:
    """Return the record made of the answers, some of which may be taken back on the way."""
    while True:
        try:
            return interview.record()
        except _OneBackError:
            if not draft.step_back():
                _say("  this is the first question")


@dataclass
class _Prompt:
    """Asks on the terminal, and keeps every answer in the draft."""

    draft: Draft
    cautioned: bool = False

    def ask(self, key: str, question: str, check: Check, offered: tuple[str, ...] = ()) -> str:
        if offered and not self.draft.taken_up:
            _say(f"  usual: {'; '.join(offered)}")
        return self.draft.answer(key, lambda: self._offered_asked(question, check, offered), check)

    def column(self, key: str, number: int, before: str) -> str:
        from inscribe.recording import FACE_ENDS

        question = f"column {number} (empty when done, {FACE_ENDS} where a face ends)"
        return self.draft.answer(
            key, lambda: self._column_asked(question, before), _column_or_end_problem
        )

    def _offered_asked(self, question: str, check: Check, offered: tuple[str, ...]) -> str:
        said = self._asked(question, check)
        if offered and said and said not in offered:
            _say("  none of the usual words; it is kept as you wrote it")
        return said

    def _asked(self, question: str, check: Check) -> str:
        while True:
            said = str(click.prompt(question, default="", show_default=False, err=True)).strip()
            if said == BACK:
                raise _OneBackError
            if said.startswith("?"):
                _show_found(said[1:])
            elif problem := check(said):
                _say(f"  {problem}")
            else:
                return said

    def _column_asked(self, question: str, before: str) -> str:
        from inscribe.recording import FACE_ENDS, column_problem

        while True:
            said = self._asked(question, column_problem)
            if said in ("", FACE_ENDS):
                return said
            _show_column(said, before)
            self._caution(said)
            if self._kept():
                return said

    def _kept(self) -> bool:
        """Whether the column just shown is kept; a step back from here is to write it anew."""
        try:
            return self._asked("keep it? y/n (empty = y)", _yes_or_no) in ("", "y", "yes")
        except _OneBackError:
            return False

    def _caution(self, column: str) -> None:
        """Say once how a worn sign may be read, when the first is met."""
        from inscribe import notation

        if not self.cautioned and any(sign.is_worn for sign in notation.parse(column).signs):
            from inscribe.cautions import caution

            self.cautioned = True
            _say(f"  {caution('handling')}")


def _say(text: str, indent: int = 4) -> None:
    """Say something on the terminal, broken between words to fit it."""
    from inscribe.report.terminal import room, wrapped

    click.echo(wrapped(text, room(), indent), err=True)


def _make_folder(folder: Path) -> None:
    """Make the folder for records if only it is missing, and say so.

    Raises:
        InputError: more is missing than the folder itself, or it cannot be made.
    """
    if folder.is_dir():
        return
    try:
        folder.mkdir()
    except OSError as error:
        raise InputError(
            "there is no such folder", Place(str(folder)), "make it first, or correct the name"
        ) from error
    _say(f"made the folder {folder}")


def _column_or_end_problem(answer: str) -> str:
    from inscribe.recording import FACE_ENDS, column_problem

    return "" if answer in ("", FACE_ENDS) else column_problem(answer)


def _yes_or_no(answer: str) -> str:
    from inscribe.recording import yes_problem

    return yes_problem(answer)


def _show_column(column: str, before: str) -> None:
    """Show what the text reads so far, and the signs of the column that deserve a second look."""
    from inscribe import notation, reading
    from inscribe.reading.suspicious import suspicions
    from inscribe.recording import old_forms

    read = reading.read_text(f"{before}\n{column}" if before else column)
    best = read.proposals[0]
    _say(f"  reads: {best.kana}")
    _say(f"         {best.romaji}", indent=9)
    signs = notation.parse(column).signs
    by_reason: dict[str, list[str]] = {}
    for found in suspicions(signs):
        instead = f" ({' '.join(found.instead)})" if found.instead else ""
        by_reason.setdefault(found.why, []).append(f"sign {found.sign + 1} {found.text}{instead}")
    for why, places in by_reason.items():
        _say(f"  look again, {why}: {', '.join(places)}")
    for date in read.dates:
        if date.agreement == "conflict":
            way_out = f"; perhaps {date.suggestions[0]}" if date.suggestions else ""
            _say(f"  look again, {date.text}: {date.why}{way_out}")
    if older := old_forms(signs):
        listed = ", ".join(f"{text} ({' '.join(old)})" for text, old in older)
        _say(f"  older forms, if one is carved: {listed}")


def _show_found(wanted: str) -> None:
    """Show the characters with this reading, number of strokes, or these parts."""
    from inscribe.forms import describe, found
    from inscribe.reading.spelling import is_kana
    from inscribe.report.terminal import list_as_text

    words = wanted.replace("＋", "+").replace(" ", "")
    if not words.strip("?"):
        _say(f"  look for a sign with {HELP}")
        return
    if words.isdecimal() and len(words) <= MOST_DIGITS:
        signs = found(strokes=(int(words), int(words)))
    elif words and all(map(is_kana, words)):
        signs = found(reading=words)
    else:
        signs = found(parts=[part for part in words.split("+") if part])
    shown = [describe(sign) for sign in signs[:SHOWN]]
    click.echo(list_as_text(shown, len(signs) - len(shown)) if shown else "  none found", err=True)
