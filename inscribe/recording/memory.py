"""What is said once for all objects of a folder, and the answers for the last of them.

They stand in ``.inscribe-new.json`` in the folder of the records.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from inscribe import files, writing
from inscribe.errors import InputError

SESSION = ("reader", "on", "hand", "execution", "place", "drawer")  # what can be said once
REPEATED = ("kind", *SESSION)  # what is likely the same for the next object
_NAME = ".inscribe-new.json"


@dataclass
class Memory:
    """``session`` are answers that are not asked for, ``last`` those offered again, by key."""

    folder: Path
    session: dict[str, str] = field(default_factory=dict)
    last: dict[str, str] = field(default_factory=dict)

    @classmethod
    def of(cls, folder: Path) -> Memory:
        """Return what is remembered in a folder; nothing where that cannot be read."""
        try:
            held = json.loads(files.read_text(folder / _NAME))
            return cls(folder, *({str(k): str(v) for k, v in held[p].items()} for p in _PARTS))
        except (InputError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
            return cls(folder)

    def say_once(self, said: Mapping[str, str | None]) -> None:
        """Take what is said for all objects from now on; an empty answer is to be asked again."""
        for key, answer in said.items():
            if answer:
                self.session[key] = answer
            elif answer is not None:
                self.session.pop(key, None)
        if any(answer is not None for answer in said.values()):
            self._write()

    def remember(self, answers: Mapping[str, str]) -> None:
        """Remember what the next object is likely to have too."""
        self.last = {
            key: answer for key, answer in answers.items() if key.rpartition(".")[2] in REPEATED
        }
        self._write()

    def _write(self) -> None:
        held = {"session": self.session, "last": self.last}
        writing.write_text(self.folder / _NAME, json.dumps(held, ensure_ascii=False), force=True)


_PARTS = ("session", "last")
