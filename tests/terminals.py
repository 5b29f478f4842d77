"""A program in a pseudo-terminal, with the screen that a person would see."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Sequence
from pathlib import Path

import pexpect
import pyte

ROOT = Path(__file__).parent.parent
LEFT, RIGHT, UP, HOME, END = "\x1b[D", "\x1b[C", "\x1b[A", "\x1b[H", "\x1b[F"
BACKSPACE, CTRL_C, ENTER = "\x7f", "\x03", "\r"


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

    def read(self, seconds: float = 0.2) -> None:
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

    def _until(self, holds, text: str, seconds: float) -> None:  # type: ignore[no-untyped-def]
        end = time.monotonic() + seconds
        while not holds():
            assert time.monotonic() < end, f"{text!r} not seen in:\n{self.shown()}"
            self.read(0.1)

    def type(self, keys: str) -> None:
        """Press keys."""
        self.process.send(keys)
        self.read()

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
