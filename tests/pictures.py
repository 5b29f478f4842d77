"""Make the pictures of the README from the example collection: ``python tests/pictures.py``.

``terminal.svg`` is what a command prints, ``plate.svg`` the drawing of a plate, ``page.png`` the
page of an entry, ``photographs/DEMO-004-print.png`` an invented print that DEMO-004 is said to copy
(both where Chromium is installed).
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

ROOT = Path(__file__).parent.parent
HERE = ROOT / "examples" / "pictures"
RECORD = HERE.parent / "DEMO-003.toml"
FONTS = "DejaVu Sans Mono, Noto Sans Mono CJK JP, Noto Sans CJK JP, IPAGothic, monospace"
# What stands on the print that DEMO-004 is said to copy.
VERSE = ["見わたせば", "花も紅葉も", "なかりけり", "浦のとまやの", "秋の夕暮"]
LINE, SIGN, MARGIN = 19, 8.4, 16  # pixels


def printed(*arguments: str) -> str:
    """Return what a command prints, at 80 columns."""
    run = subprocess.run(
        [sys.executable, "-m", "inscribe", *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=True,
        cwd=ROOT,
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


def photographed(html: str, target: Path, size: tuple[int, int]) -> None:
    """Take a picture of a page, if a browser is there."""
    browser = shutil.which("chromium") or shutil.which("chromium-browser")
    if browser is None:
        print(f"Chromium is not installed; {target.name} stays as it is", file=sys.stderr)
        return
    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder) / "page.html"
        page.write_text(html, encoding="utf-8")
        options = ["--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars"]
        options += [f"--user-data-dir={folder}/u", "--window-size={},{}".format(*size)]
        options += [f"--screenshot={target}", page.as_uri()]
        subprocess.run([browser, *options], check=True, capture_output=True)


def woodblock(columns: list[str]) -> str:
    """Return a page that looks like a leaf of a printed book: verse above a hut on a bay."""
    signs = [
        f'<text x="{270 - 44 * number}" y="{70 + 17 * (number % 2) + 25 * place}">{sign}</text>'
        for number, column in enumerate(columns)
        for place, sign in enumerate(column)
    ]
    reeds = [
        f'<path d="M{x} 478q{bend} -22 {2 * bend} -46"/>'
        for x, bend in ((36, 3), (44, -2), (52, 5), (61, 2), (232, 4), (241, -3), (250, 6))
    ]
    return (
        '<body style="margin:0"><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 320 500">'
        '<rect width="320" height="500" fill="#e9dfc8"/>'
        '<g fill="none" stroke="#2b2620" stroke-width="1.6" stroke-linecap="round">'
        '<rect x="18" y="18" width="284" height="464" stroke-width="2.4"/>'
        '<path d="M20 402q60 -9 120 0t160 -4M20 420q50 7 110 0t170 3M60 440q40 -6 90 0t110 -2"/>'
        '<path fill="#e9dfc8" d="M104 400v30h64v-30zM84 408l52 -46 54 46zM128 430v-18h16v18"/>'
        '<path d="M104 400l30 -27M114 402l24 -21M168 402l-28 -25M176 400l-36 -31"/>'
        f"{''.join(reeds)}</g>"
        '<g fill="#2b2620" font-family="Noto Serif CJK JP" font-size="23" text-anchor="middle">'
        f"{''.join(signs)}</g></svg>"
    )


def main() -> None:
    """Make the pictures."""
    command = "inscribe read 於東都應需造之"
    shown = printed("read", "於東都應需造之")
    (HERE / "terminal.svg").write_text(terminal(command, shown), encoding="utf-8")
    drawing = printed("collate", str(RECORD), "--format", "svg", "--quiet")
    (HERE / "plate.svg").write_text(drawing, encoding="utf-8")
    html = printed("entry", str(RECORD), "--format", "html")
    photographed(html, HERE / "page.png", (1000, 1060))
    leaf = HERE.parent / "photographs/DEMO-004-print.png"
    photographed(woodblock(VERSE), leaf, (320, 500))


if __name__ == "__main__":
    main()
