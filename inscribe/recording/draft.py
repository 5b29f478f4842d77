"""A record in the making: every answer is kept at once, so that nothing is lost by stopping.

The answers stand in a file beside the record to be, ``NAME.toml.draft``, as JSON in the order they
were given, each with the key of its question; what was typed and not yet given is there too, marked
so. The record itself is written only when all is asked.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from inscribe import files, writing
from inscribe.errors import InputError, Place

_TYPING = "typing"
ALONG = ".kept"  # how the keys end of answers that go with the one before them


@dataclass
class Draft:
    """The answers given so far for the record at ``record``.

    ``base`` are answers that a finished record has already: only others are kept in the file.
    ``asked`` are the keys of this run in the order of the questions, ``given`` those that were
    answered without a question. ``typing`` is a key and what was typed for it.
    """

    record: Path
    answers: dict[str, str] = field(default_factory=dict)
    asked: list[str] = field(default_factory=list)
    given: set[str] = field(default_factory=set)
    typing: tuple[str, str] = ("", "")
    taken_back: str = ""  # the key of the answer that is to be given anew
    taken_up: int = 0  # answers that were read back
    base: dict[str, str] = field(default_factory=dict)

    @property
    def path(self) -> Path:
        """Where the answers are kept until the record is written."""
        return self.record.with_name(self.record.name + ".draft")

    @classmethod
    def of(cls, record: Path) -> Draft:
        """Return the draft for a record, with the answers kept from last time.

        Raises:
            InputError: the draft cannot be read.
        """
        draft = cls(record)
        if draft.path.exists():
            draft.answers, draft.typing = _read(draft.path)
            draft.taken_up = len(draft.answers)
        return draft

    def has(self, key: str, check: Callable[[str], str]) -> bool:
        """Whether there is an answer to a question that passes.

        The draft may have been edited since: an answer kept counts only if nothing is wrong with
        it.
        """
        return key in self.answers and not check(self.answers[key])

    def answer(self, key: str, ask: Callable[[], str], check: Callable[[str], str]) -> str:
        """Return the answer to ``key``: the one that is kept, or a new one."""
        if not self.has(key, check):
            self.keep(key, ask())
        self.asked.append(key)
        return self.answers[key]

    def keep(self, key: str, answer: str) -> None:
        """Keep an answer."""
        self.answers[key] = answer
        self.typing = ("", "")
        self.taken_back = ""
        self._write()

    def keep_typing(self, key: str, typed: str) -> None:
        """Keep what was typed for a question and not yet given."""
        self.typing = (key, typed)
        self._write()

    def typed_for(self, key: str) -> str:
        """Return what was typed for a question before, to go on with."""
        return self.typing[1] if self.typing[0] == key else ""

    def forget(self, key: str) -> None:
        """Forget an answer; its words are ready to be changed when it is asked for again."""
        self.typing = (key, self.answers.pop(key, ""))
        self.taken_back = key
        self.answers.pop(key + ALONG, None)
        self._write()

    def step_back(self) -> bool:
        """Forget the last answer that was asked for and begin again; False where there is none."""
        while self.asked and (self.asked[-1] in self.given or self.asked[-1].endswith(ALONG)):
            self.asked.pop()
        if not self.asked:
            return False
        self.forget(self.asked[-1])
        self.asked.clear()
        return True

    def finish(self, write: Callable[[], None]) -> None:
        """Write the record whole and remove the draft."""
        write()
        self.path.unlink(missing_ok=True)

    def _write(self) -> None:
        changed = (item for item in self.answers.items() if self.base.get(item[0]) != item[1])
        rows: list[list[str]] = [[key, answer] for key, answer in changed]
        if self.typing[1]:
            rows.append([*self.typing, _TYPING])
        if rows or self.path.exists():
            writing.write_text(self.path, json.dumps(rows, ensure_ascii=False), force=True)

    @contextmanager
    def alone(self) -> Iterator[None]:
        """Keep other terminals from working on the same draft.

        Raises:
            InputError: one does already.
        """
        lock = self.record.with_name(f".{self.record.name}.lock")
        lock.touch()
        with writing.held(lock, wait=False) as ours:
            if not ours:
                raise InputError(
                    "this object is being recorded in another terminal",
                    Place(str(self.record)),
                    "go on there, or stop it there first (Ctrl-C keeps its answers)",
                )
            try:
                yield
            finally:
                lock.unlink(missing_ok=True)


def _read(path: Path) -> tuple[dict[str, str], tuple[str, str]]:
    typing = ("", "")
    answers: dict[str, str] = {}
    try:
        for key, value, *mark in json.loads(files.read_text(path)):
            if mark == [_TYPING]:
                typing = (str(key), str(value))
            elif mark:
                raise ValueError("a row says something else of what is typed")
            else:
                answers[str(key)] = str(value)
    except (ValueError, TypeError, RecursionError) as error:
        raise InputError(
            "the draft cannot be read", Place(str(path)), "remove it to begin anew"
        ) from error
    return answers, typing
