"""What he copies and how it may be written; ``tables.txt`` has a table a line.

Verse before 1600 typed from memory; entries without a poet are invented. The tables of
spellings are from memory too.
"""

from __future__ import annotations

import unicodedata
from pathlib import Path

_FILE = Path(__file__).with_name("tables.txt")
TABLES = dict(line.split("\t") for line in _FILE.read_text("utf-8").splitlines())

Pairs = list[tuple[str, str]]


def pairs(table: str) -> Pairs:
    """Rows of a table typed as `from>to from>to`."""
    return [(a, b) for a, _, b in (row.partition(">") for row in table.split())]


TEXTS = TABLES["TEXTS"].split()

SHORTER = pairs(TABLES["SHORTER"])

OLDER = pairs(TABLES["OLDER"])

UNVOICED = pairs(TABLES["UNVOICED"])

ENDINGS = pairs("らむ>らん けむ>けん なむ>なん せむ>せん やう>よふ ゐ>い ゑ>え")

SENSE = pairs(TABLES["SENSE"])

VARIANTS = pairs(TABLES["VARIANTS"])

SIMILAR = pairs(TABLES["SIMILAR"])

HENTAI = [
    (s, unicodedata.lookup(f"HENTAIGANA LETTER {n}"))
    for s, n in zip(
        "はにのをかすたきるれなも",
        [
            "HA-1",
            "NI-1",
            "NO-1",
            "WO-2",
            "KA-2",
            "SU-2",
            "TA-1",
            "KI-2",
            "RU-2",
            "RE-2",
            "NA-2",
            "MO-1",
        ],
        strict=False,
    )
]


def is_kanji(sign: str) -> bool:
    """Whether the sign is a Han character."""
    return "一" <= sign <= "鿿"


def weight(sign: str) -> float:
    """Length a sign takes along the column, 1 for a middling one."""
    for signs, value in (
        ("ゝ々ヿ一", 0.5),
        ("〱", 1.4),
        ("のへくしてつりふいとゟ", 0.78),
        ("山人月日川上下大千万心夕水小中之也", 0.88),
    ):
        if sign in signs:
            return value
    return 1.12 if is_kanji(sign) else 0.94


def need(signs: str) -> float:
    """Length the signs take together, in sizes."""
    return sum(map(weight, signs))
