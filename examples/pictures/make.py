"""Make the pictures of the README from the example collection.

``terminal.svg`` is what a command prints, ``plate.svg`` the drawing of a plate, ``page.png`` the
page of an entry (where Chromium is installed).
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import unicodedata
from html import escape
from pathlib import Path

HERE = Path(__file__).parent
RECORD = HERE.parent / "DEMO-003.toml"
FONTS = "DejaVu Sans Mono, Noto Sans Mono CJK JP, Noto Sans CJK JP, IPAGothic, monospace"
LINE, SIGN, MARGIN = 19, 8.4, 16  # pixels


def printed(*arguments: str) -> str:
    """Return what a command prints, at 80 columns."""
    run = subprocess.run(
        [sys.executable, "-m", "inscribe", *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=True,
        cwd=HERE.parent.parent,
        env={**os.environ, "COLUMNS": "80", "NO_COLOR": "1"},
    )
    return run.stdout


def placed(line: str) -> list[tuple[int, str]]:
    """Return the words of a line and the cells they begin in; a Japanese sign takes two."""
    found: list[tuple[int, str]] = []
    cell = 0
    for sign in line:
        wide = unicodedata.east_asian_width(sign) in "WF"
        goes_on = found and found[-1][1][-1:] != " " and not wide
        if goes_on and sign != " " and unicodedata.east_asian_width(found[-1][1][-1]) not in "WF":
            found[-1] = (found[-1][0], found[-1][1] + sign)
        elif sign != " ":
            found.append((cell, sign))
        else:
            found.append((cell, " "))
        cell += 2 if wide else 1
    return [(cell, word) for cell, word in found if word != " "]


def terminal(command: str, text: str) -> str:
    """Return a picture of a command and what it printed."""
    lines = [f"$ {command}", *text.rstrip().split("\n")]
    rows = [
        f'<text x="{MARGIN + cell * SIGN:.0f}" y="{MARGIN + LINE * row}">{escape(word)}</text>'
        for row, line in enumerate(lines, start=1)
        for cell, word in placed(line)
    ]
    width, height = round(2 * MARGIN + 80 * SIGN), 2 * MARGIN + LINE * (len(lines) + 1)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}">'
        f'<title>{escape(command)}</title><rect width="100%" height="100%" fill="#1d2021" rx="6"/>'
        f'<g fill="#ece5d5" font-family="{FONTS}" font-size="14">' + "".join(rows) + "</g></svg>\n"
    )


def page(target: Path) -> None:
    """Take a picture of the page of an entry, if a browser is there."""
    browser = shutil.which("chromium") or shutil.which("chromium-browser")
    if browser is None:
        print("Chromium is not installed; page.png stays as it is", file=sys.stderr)
        return
    with tempfile.TemporaryDirectory() as folder:
        html = Path(folder) / "page.html"
        html.write_text(printed("entry", str(RECORD), "--format", "html"), encoding="utf-8")
        options = ["--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars"]
        options += [f"--user-data-dir={folder}/u", "--window-size=1000,1060"]
        options += [f"--screenshot={target}", html.as_uri()]
        subprocess.run([browser, *options], check=True, capture_output=True)


def main() -> None:
    """Make the three pictures."""
    command = "inscribe read 於東都應需造之"
    shown = printed("read", "於東都應需造之")
    (HERE / "terminal.svg").write_text(terminal(command, shown), encoding="utf-8")
    drawing = printed("collate", str(RECORD), "--format", "svg", "--quiet")
    (HERE / "plate.svg").write_text(drawing, encoding="utf-8")
    page(HERE / "page.png")


if __name__ == "__main__":
    main()
