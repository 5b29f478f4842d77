"""A record in the making: every answer is kept at once, so that nothing is lost by stopping.

The answers stand in a file beside the record to be, ``NAME.toml.draft``, as JSON in the order they
were given; the record itself is written only when all is asked.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from inscribe import files
from inscribe.errors import InputError, Place

Answers = list[tuple[str, str]]


@dataclass
class Draft:
    """The answers given so far for the record at ``record``."""

    record: Path
    answers: Answers = field(default_factory=list)
    taken_up: int = 0  # answers that were read back and not yet used again

    @property
    def path(self) -> Path:
        """Where the answers are kept until the record is written."""
        return self.record.with_name(self.record.name + ".draft")

    @classmethod
    def of(cls, record: Path) -> Draft:
        """Return the draft for a record to be, with the answers kept from last time.

        Raises:
            InputError: the record exists already, or the draft cannot be read.
        """
        if record.exists():
            raise InputError("the record exists already", Place(str(record)), "choose another name")
        draft = cls(record)
        if draft.path.exists():
            draft.answers = _read(draft.path)
            draft.taken_up = len(draft.answers)
        return draft

    def answer(self, key: str, ask: Callable[[], str], check: Callable[[str], str]) -> str:
        """Return the answer to ``key``: the one kept from last time, or a new one.

        The draft may have been edited since: an answer kept counts only if ``check`` finds nothing
        wrong with it.
        """
        used = len(self.answers) - self.taken_up
        if self.taken_up and self.answers[used][0] == key and not check(self.answers[used][1]):
            self.taken_up -= 1
            return self.answers[used][1]
        if self.taken_up:  # the questions have taken another turn: what is left no longer fits
            del self.answers[used:]
            self.taken_up = 0
        given = ask()
        self.answers.append((key, given))
        self._keep()
        return given

    def _keep(self) -> None:
        files.write_text(self.path, json.dumps(self.answers, ensure_ascii=False), force=True)

    def step_back(self) -> bool:
        """Forget the last answer and have the others ready again; False where there is none."""
        if not self.answers:
            return False
        self.answers.pop()
        self.taken_up = len(self.answers)
        self._keep()
        return True

    def finish(self, record: str) -> None:
        """Write the record whole and remove the draft."""
        files.write_text(self.record, record)
        self.path.unlink(missing_ok=True)


def _read(path: Path) -> Answers:
    try:
        data = json.loads(files.read_text(path))
        return [(str(key), str(value)) for key, value in data]
    except (ValueError, TypeError, RecursionError) as error:
        raise InputError(
            "the draft cannot be read", Place(str(path)), "remove it to begin anew"
        ) from error
