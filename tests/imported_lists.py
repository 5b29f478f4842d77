"""An invented catalogue list with every fault one meets in old lists, for tests and benchmarks.

Names, numbers and texts are made from pieces; nothing is from a real list.
"""

from __future__ import annotations

import csv
import io
import random

HEADINGS = [
    "登録番号", "種別", "銘文", "銘の位置", "長さ(cm)", "幅(cm)", "備考", "訳文", "引き出し",
    "釈読者", "釈読日", "評価額", "旧番号",
]  # fmt: skip
PLACES = ("武州住", "江戸住", "於東都", "長州萩住", "水府住", "")
FIRST, LAST = "霜霞嶺渓翠汀杳凪槙楓", "蹊岳影洲舟畔栖嶂渚篁"
VERBS = ("作", "造之", "彫之", "刻", "作之")
KINDS = ("小柄", "鐔", "縁", "頭", "目貫", "笄")

# What a row with each fault is to be: left out; told (a cell is not understood, the record is
# made); or mended without a word (ok).
FAULTS = {
    "no number": "left out",
    "number twice": "left out",
    "no kind": "left out",
    "unsigned": "left out",
    "no text": "left out",
    "bracket left open": "left out",
    "control character": "left out",
    "bytes of no encoding": "left out",
    "size is words": "told",
    "day that is none": "told",
    "day in words": "told",
    "size with comma": "ok",
    "size in sun": "ok",
    "full-width figures": "ok",
    "line break in the cell": "ok",
    "web mark-up": "ok",
    "circle for a worn sign": "ok",
    "kao in other brackets": "ok",
    "dots for a gap": "ok",
    "unknown kind": "ok",
    "spaces around": "ok",
    "too few cells": "ok",
    "too many cells": "told beyond",
    "number for a file name": "ok",
    "formula": "ok",
    "quotation marks": "ok",
    "day of a spreadsheet": "ok",
    "capitals of a number": "ok",
}


def _row(number: int, rng: random.Random) -> list[str]:
    name = rng.choice(FIRST) + rng.choice(LAST)
    return [
        f"Z-{number:04}",
        rng.choice(KINDS),
        f"{rng.choice(PLACES)}{name}{rng.choice(VERBS)}",
        rng.choice(("裏板", "表", "切羽台表")),
        f"{rng.uniform(6, 9.8):.2f}",
        f"{rng.uniform(1.2, 1.6):.2f}",
        rng.choice(("", "箱あり", "錆あり")),
        "",
        str(rng.randrange(1, 12)),
        "Ｈ・クイスト",
        f"19{rng.randrange(60, 99)}/{rng.randrange(1, 13)}/{rng.randrange(1, 28)}",
        rng.choice(("", "120,000", "80,000")),
        f"旧{number}",
    ]


def _spoilt(row: list[str], fault: str, before: list[list[str]]) -> list[str]:
    """Return a row with a fault."""
    at, value = {
        "no number": (0, ""),
        "number twice": (0, before[0][0] if before else row[0]),
        "no kind": (1, ""),
        "unsigned": (2, "無銘"),
        "no text": (2, ""),
        "bracket left open": (2, row[2] + "［花"),
        "control character": (6, "a\x0bb"),
        "bytes of no encoding": (6, "@@BYTES@@"),
        "size is words": (4, "大きい"),
        "day that is none": (10, "1980/13/45"),
        "day in words": (10, "昭和のころ"),
        "size with comma": (4, "9,71"),
        "size in sun": (4, "3寸2分"),
        "full-width figures": (4, "９．７"),
        "line break in the cell": (2, row[2][:2] + "\n" + row[2][2:]),
        "web mark-up": (2, row[2][:2] + "<br/>" + row[2][2:]),
        "circle for a worn sign": (2, "○" + row[2][1:]),
        "kao in other brackets": (2, row[2] + "[花押]"),
        "dots for a gap": (2, row[2] + "……"),
        "unknown kind": (1, "提物"),
        "spaces around": (2, f"  {row[2]}　"),
        "too few cells": (12, ""),
        "too many cells": (12, row[12]),
        "number for a file name": (0, row[0] + "/a:b"),
        "formula": (6, "=SUM(A1)"),
        "quotation marks": (6, '彼は"よし"と'),
        "day of a spreadsheet": (10, "1975-03-05"),
        "capitals of a number": (0, before[1][0].lower() if len(before) > 1 else row[0]),
    }[fault]
    made = [*row]
    made[at] = value
    if fault == "too few cells":
        return made[:9]
    return [*made, "beyond the headings"] if fault == "too many cells" else made


def sound_list(count: int, seed: int) -> list[list[str]]:
    """Return the headings and so many rows without a fault."""
    rng = random.Random(seed)
    return [HEADINGS, *(_row(number, rng) for number in range(count))]


def faulty_list(count: int, seed: int) -> tuple[bytes, dict[int, str]]:
    """Return a list of so many rows as Shift_JIS, and the fault of each row that has one.

    Rows are counted from 1 with the headings; one in three has a fault, each fault at least once.
    """
    rng = random.Random(seed)
    rows = [_row(number, rng) for number in range(count)]
    places = rng.sample(range(5, count), max(count // 3, len(FAULTS)))
    wrong = {}
    for number, place in enumerate(sorted(places)):
        fault = list(FAULTS)[number % len(FAULTS)]
        if fault == "capitals of a number" and number >= len(FAULTS):
            fault = "formula"
        rows[place] = _spoilt(rows[place], fault, rows[:5])
        wrong[place + 2] = fault
    held = io.StringIO()
    csv.writer(held).writerows([HEADINGS, *rows])
    data = held.getvalue().encode("cp932")
    return data.replace(b"@@BYTES@@", b"\x85\x20\xa0\xfd\xff"), wrong
