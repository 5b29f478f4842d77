"""``inscribe new``: ask for an object and its inscription, and write a record."""

from __future__ import annotations

from contextlib import ExitStack
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import conventions_option, example, library_option
from inscribe.errors import InputError, Place, ProblemsError

if TYPE_CHECKING:
    from inscribe.cli.asking import Prompter
    from inscribe.record import Record
    from inscribe.recording import Draft, Memory

INTERRUPTED = 130  # exit status, as shells have it


@click.command(
    epilog=example(
        "inscribe new records/A-0412.toml",
        "inscribe new records/A-0413.toml --reader 'A. Reader' --day today --drawer 12",
        "inscribe new --again records/A-0412.toml",
    )
)
@click.argument("path", metavar="RECORD")
@click.option("--again", is_flag=True, help="Open a finished record again and change its answers.")
@click.option("--reader", metavar="NAME", help="Who reads; from now on not asked in this folder.")
@click.option("--day", metavar="DAY", help="The day of the reading (today is kept as today).")
@click.option("--place", metavar="PLACE", help="The place of the inscription, said once.")
@click.option("--hand", metavar="HAND", help="The hand, said once.")
@click.option("--execution", metavar="WORDS", help="The execution, said once.")
@click.option("--drawer", metavar="DRAWER", help="The drawer, said once.")
@library_option("The library in which the text is looked for")
@conventions_option
def command(
    path: str,
    again: bool,
    reader: str | None,
    day: str | None,
    place: str | None,
    hand: str | None,
    execution: str | None,
    drawer: str | None,
    library_file: str | None,
) -> None:
    """Ask for an object and its inscriptions as one handles it, and write the record.

    Columns are asked for from right to left; after each, its reading is shown and signs that
    deserve a second look are named. A sign that cannot be typed is looked for with ?, by its parts,
    reading or strokes; < takes the last answer back. Every answer is kept at once: stop with
    Ctrl-C, and the same command takes up where you stopped.

    What is said once (--reader, --day, --place, --hand, --execution, --drawer) holds for all
    objects of the folder until it is said anew; --hand "" lets it be asked for again.
    """
    from inscribe.recording import Draft, Memory

    target = Path(path)
    if target.suffix != ".toml":
        raise InputError("a record is a .toml file", Place(path), "name it so")
    if again and not target.is_file():
        raise InputError("there is no such record", Place(path), "without --again it is made")
    if target.exists() and not again:
        hint = "choose another name, or open it again with --again"
        raise InputError("the record exists already", Place(path), hint)
    _make_folder(target.parent)
    memory = Memory.of(target.parent)
    said = {"reader": reader, "on": _day(day), "place": place, "hand": hand}
    memory.say_once({**said, "execution": execution, "drawer": drawer})
    with ExitStack() as held:
        draft = Draft.of(target)
        held.enter_context(draft.alone())
        (_change if again else _record)(draft, memory, library_file)


def _day(given: str | None) -> str | None:
    from inscribe.recording import day_problem, plain

    if given and (problem := day_problem(given)):
        raise InputError(f"--day {given}: {problem}")
    return plain(given) if given else given


def _record(draft: Draft, memory: Memory, library_file: str | None) -> None:
    """Ask for a new record, and write it."""
    from inscribe import writing
    from inscribe.cli.asking import is_live
    from inscribe.record import dump, loads

    path = draft.record
    record = _asked(draft, memory, library_file, path.stem)
    text = dump(record)
    try:
        loads(text, str(path), path.parent)
    except ProblemsError as problems:
        said = "; ".join(problem.message for problem in problems.errors)
        hint = f"the answers are kept: correct {draft.path} and give the same command again"
        raise InputError(f"the answers contradict each other: {said}", hint=hint) from problems
    draft.finish(lambda: writing.write_text(path, text))
    if is_live():
        memory.remember(draft.answers)
    click.echo(f"written: {path}; check it with: inscribe check {path}", err=True)


def _change(draft: Draft, memory: Memory, library_file: str | None) -> None:
    """Ask for what is to be changed of a finished record, and write it; undo takes it back."""
    from inscribe import files
    from inscribe.record import loads, revised
    from inscribe.recording import Memory, answers_of, with_changes
    from inscribe.settling import change, new_batch

    path = draft.record
    before = files.read_text(path)
    record = loads(before, str(path), path.parent)
    answers = answers_of(record)
    draft.base = answers
    draft.answers = {**answers, **draft.answers}
    after = _asked(draft, Memory(memory.folder), library_file, record.id)
    changed = with_changes(record, _made(answers, draft), after)
    text = revised(before, str(path), changed)

    def write() -> None:
        if text != before:
            change(path, before, text, what="answers changed", by="", batch=new_batch())

    draft.finish(write)
    said = f"written: {path}; take it back: inscribe undo {path}"
    click.echo(said if text != before else f"unchanged: {path}", err=True)
    if lost := len(record.inscriptions[0].overrides) - len(changed.inscriptions[0].overrides):
        click.echo(f"readings settled of signs that are others now, left out: {lost}", err=True)


def _made(answers: dict[str, str], draft: Draft) -> Record:
    """Return the record that answers make, of which none is missing."""
    from inscribe.cli.asking import PlainLines, Prompter
    from inscribe.recording import Draft, Interview, Memory

    still = Draft(draft.record, dict(answers))
    nobody = Prompter(still, Memory(draft.record.parent), PlainLines(), live=True)
    return Interview(nobody).record()


def _asked(draft: Draft, memory: Memory, library_file: str | None, stem: str) -> Record:
    """Return the record made of the answers of whoever sits at the terminal."""
    from inscribe.cli.asking import Prompter, answered, is_live, line_reader
    from inscribe.recording import Interview

    prompter = Prompter(draft, memory, line_reader(), is_live(), library_file)
    _greet(prompter)
    try:
        return answered(Interview(prompter, stem), prompter)
    except (click.Abort, KeyboardInterrupt) as error:
        count = len(draft.answers)
        kept = f"; {count} answers are kept in {draft.path}" if draft.path.exists() else ""
        click.echo(f"\nstopped, no record was written{kept}", err=True)
        raise click.exceptions.Exit(INTERRUPTED) from error


def _greet(prompter: Prompter) -> None:
    from inscribe.cli.asking import BACK, HELP, NOTHING, say

    draft, session = prompter.draft, prompter.memory.session
    if draft.taken_up or draft.typing[1]:
        click.echo(f"taken up again after {draft.taken_up} answers", err=True)
    say(f"a sign that cannot be typed: {HELP}", indent=0)
    say(f"one answer back: {BACK}; stop and keep the answers: Ctrl-C", indent=0)
    if not prompter.live:
        return
    say(f"[in brackets]: what Enter takes; {NOTHING} for nothing", indent=0)
    if session:
        shown = (f"{_NAMES.get(key, key)} {_shown(value)}" for key, value in session.items())
        say(f"said once for this folder: {'; '.join(shown)}", indent=0)
    else:
        say("said once for all objects: --reader, --day, --place, --hand, --drawer", indent=0)


_NAMES = {"on": "day"}


def _shown(answer: str) -> str:
    return f"{answer} ({date.today()})" if answer == "today" else answer


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
    click.echo(f"made the folder {folder}", err=True)
