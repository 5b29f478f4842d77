"""Five invented objects recorded in a terminal as a newcomer would, with the time it took.

    python tests/benchmarks/newcomer.py [--keys 4] [--show]

The script looks at the screen and answers the question that stands there, as somebody does who has
never seen the program: what it does not know it leaves empty. Slips are typed and taken back, a
sign is looked for by its parts, one object is stopped with Ctrl-C and taken up again. Told are
the questions, the keys, the seconds of typing at so many keys a second, and the seconds in which
the program let its user wait (its start included). At the end ``inscribe check`` looks at all five.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))
from terminals import BACKSPACE, CTRL_C, ENTER, LEFT, Terminal

STOP = "STOP"
# What is typed at each question, in the order in which it comes up again; the rest is left empty.
OBJECTS: dict[str, dict[str, list[str]]] = {
    "N-001": {
        "kind of fitting": ["小柄"],
        "title": ["Blossom"],
        "drawer": ["１２"],
        "length": ["97,2"],
        "width in mm": ["四寸八分" + BACKSPACE * 4 + "14.2 mm"],
        "place of": ["裏板"],
        "column": [
            "花の色はうつりにけりなたいらに" + LEFT * 2 + BACKSPACE + "づ",
            "我身世にふる",
            "",
        ],
        "read by": ["T. Vantongeren"],
        "day": ["today"],
        "write it?": ["ｙ"],
    },
    "N-002": {
        "kind of fitting": ["鐔"],
        "height": ["二寸五分"],
        "place of": ["切羽台表", "切羽台裏"],
        "column": ["武州住霜蹊作", "", "天保三年壬辰", ""],
        "another": ["ｙ", "ｎ"],
        "write it?": ["y"],
    },
    "N-003": {
        "kind of fitting": ["縁"],
        "place of": ["天井金"],
        "column": ["霜□軒", STOP, "露岳（花押）", ""],
        "write it?": ["y"],
    },
    "N-004": {
        "kind of fitting": ["目貫"],
        "place of": ["短冊"],
        "column": ["嘉永六年癸丑", "仲秋吉日", ""],
        "write it?": ["y"],
    },
    "N-005": {
        "kind of fitting": ["笄"],
        "length": ["七寸"],
        "place of": ["裏"],
        "column": ["？舟＋公", "忍は徳の本", ""],
        "translation": ["Patience is the root of virtue", ""],
        "write it?": ["y"],
    },
}


class Newcomer:
    """Somebody at the terminal: counts the questions and keys, and the time spent waiting."""

    def __init__(self, folder: Path, keys_a_second: float, show: bool) -> None:
        self.folder, self.pace, self.show = folder, keys_a_second, show
        self.questions = self.keys = self.stops = 0
        self.typing = self.waiting = 0.0

    def record(self, name: str, answers: dict[str, list[str]]) -> Path:
        """Record one object, taking it up again after each stop."""
        path = self.folder / f"{name}.toml"
        left = {prompt: list(typed) for prompt, typed in answers.items()}
        for _ in range(5):
            if self._sitting(path, left) == 0:
                return path
            self.stops += 1
        raise AssertionError(f"{name} was not written")

    def _sitting(self, path: Path, left: dict[str, list[str]]) -> int:
        terminal = Terminal(["new", str(path)])
        asked = ""
        while True:
            began = time.monotonic()
            asked = self._question(terminal, asked)
            self.waiting += time.monotonic() - began
            if not terminal.process.isalive():
                if self.show:
                    print(terminal.shown())
                return terminal.ended()
            self.questions += 1
            typed = next((a.pop(0) for p, a in left.items() if p in asked and a), "")
            self._type(terminal, CTRL_C if typed == STOP else typed + ENTER)

    def _question(self, terminal: Terminal, before: str) -> str:
        """Return the line the cursor waits on, once it is no longer the one just answered."""
        end = time.monotonic() + 120
        while time.monotonic() < end and terminal.process.isalive():
            terminal.read(0.05)
            line = terminal.line()
            if ":" in line and (terminal.screen.cursor.y, line) != self._answered:
                return line
        assert not terminal.process.isalive(), f"no question after {before!r}:\n{terminal.shown()}"
        return ""

    _answered: tuple[int, str] = (-1, "")

    def _type(self, terminal: Terminal, keys: str) -> None:
        terminal.process.send(keys[:-1])
        terminal.read(0.1)
        self._answered = (terminal.screen.cursor.y, terminal.line())
        terminal.process.send(keys[-1])
        self.keys += len(keys.replace(LEFT, "<"))
        self.typing += len(keys.replace(LEFT, "<")) / self.pace


def main() -> None:
    """Record the five, and print what it took."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--keys", type=float, default=4, help="keys a second")
    parser.add_argument("--show", action="store_true", help="print each screen")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as made:
        print("object     questions  stops   keys  typing s  waiting s")
        for name, answers in OBJECTS.items():
            one = Newcomer(Path(made), options.keys, options.show)
            path = one.record(name, answers)
            print(
                f"{name:10}{one.questions:10}{one.stops:7}{one.keys:7}"
                f"{one.typing:10.0f}{one.waiting:11.1f}",
                flush=True,
            )
            if options.show:
                print(path.read_text("utf-8"))
        subprocess.run([sys.executable, "-m", "inscribe", "check", made], check=False)


if __name__ == "__main__":
    main()
