"""A program in a pseudo-terminal, with the screen that a person would see."""

from __future__ import annotations

import os
import re
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path

import pexpect
import pyte

ROOT = Path(__file__).parent.parent
LEFT, RIGHT, UP, HOME, END = "\x1b[D", "\x1b[C", "\x1b[A", "\x1b[H", "\x1b[F"
BACKSPACE, CTRL_C, ENTER = "\x7f", "\x03", "\r"
_KEYS = re.compile(r"\x1b\[.|[^\x00-\x1f\x7f]+|.", re.DOTALL)  # a run of signs is one
_COMPARED = 5  # signs at the end of what was written


class Terminal:
    """``inscribe`` with these arguments; ``screen`` is what stands on the terminal."""

    def __init__(
        self, arguments: Sequence[str], columns: int = 80, rows: int = 40, term: str = "xterm"
    ) -> None:
        environment = {**os.environ, "TERM": term, "PYTHONPATH": str(ROOT), "NO_COLOR": "1"}
        environment.pop("INSCRIBE_LIBRARY", None)
        self.process = pexpect.spawn(
            sys.executable,
            ["-m", "inscribe", *arguments],
            env=environment,
            dimensions=(rows, columns),
            encoding="utf-8",
            timeout=60,
        )
        self.screen = pyte.HistoryScreen(columns, rows, history=500)
        self.stream = pyte.Stream(self.screen)

    def shown(self) -> str:
        """Return the lines on the screen, and those that left it above."""
        gone = [
            "".join(line[at].data for at in range(self.screen.columns))
            for line in self.screen.history.top
        ]
        return "\n".join(line.rstrip() for line in (*gone, *self.screen.display)).rstrip()

    def line(self) -> str:
        """Return the line the cursor is on, wide characters once."""
        return self.screen.display[self.screen.cursor.y].rstrip()

    def read(self, seconds: float) -> None:
        """Take what the program has written, until it is silent for so long."""
        while True:
            try:
                self.stream.feed(self.process.read_nonblocking(4096, timeout=seconds))
            except pexpect.TIMEOUT:
                return
            except pexpect.EOF:
                return

    def wait(self, text: str, seconds: float = 60) -> None:
        """Wait until a text stands on the line of the cursor, as a prompt does."""
        self._until(lambda: text in self.line(), text, seconds)

    def see(self, text: str, seconds: float = 60) -> None:
        """Wait until a text stands anywhere."""
        self._until(lambda: text in self.shown(), text, seconds)

    def _until(self, holds: Callable[[], bool], text: str, seconds: float = 60) -> None:
        end = time.monotonic() + seconds
        while not holds():
            assert time.monotonic() < end, f"{text!r} not seen in:\n{self.shown()}"
            self.read(0.1)

    def type(self, keys: str) -> None:
        """Press keys, each when the program has answered the one before, however slow it is.

        What is written has to stand before the cursor; after any other key something has to look
        different, or the program to have ended.
        """
        for key in _KEYS.findall(keys):
            self._press(key)

    def _press(self, key: str) -> None:
        before = self._seen()

        def is_answered() -> bool:
            if not self.process.isalive():
                return True
            return self._seen() != before and (not key.isprintable() or self._has_written(key))

        self.process.send(key)
        self._until(is_answered, key)

    def _seen(self) -> tuple[str, int, int]:
        return self.shown(), self.screen.cursor.x, self.screen.cursor.y

    def _has_written(self, text: str) -> bool:
        """Whether a text, of which a line may have ended within, stands before the cursor."""
        cursor = self.screen.cursor
        row = self.screen.buffer[cursor.y]
        above = self.screen.display[cursor.y - 1].rstrip() if cursor.y else ""
        here = "".join(row[at].data for at in range(cursor.x))
        return f"{above}{here}".endswith(text[-_COMPARED:])

    def answer(self, prompt: str, keys: str) -> None:
        """Wait for a prompt, type an answer and send it."""
        self.wait(prompt)
        self.type(keys)
        self.type(ENTER)

    def ended(self) -> int:
        """Wait for the end of the program and return its exit status."""
        end = time.monotonic() + 60
        while self.process.isalive():
            assert time.monotonic() < end, f"not ended:\n{self.shown()}"
            self.read(0.1)
        self.read(0.1)
        self.process.close()
        status = self.process.exitstatus
        assert status is not None
        return int(status)
