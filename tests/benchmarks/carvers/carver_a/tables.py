"""What he copies and how it may be written; ``tables.txt`` has a table a line.

In texts, words are parted by blanks, lines by ／, texts by |; ＃ is a title, ＠ an author. Verse
before 1600 from memory; mottoes, and verse without an author, are partly invented.
"""

from __future__ import annotations

from pathlib import Path

_FILE = Path(__file__).with_name("tables.txt")
TABLES = dict(line.split("\t") for line in _FILE.read_text("utf-8").splitlines())

TEXTS = TABLES["TEXTS"].replace("\n", " ").strip().split(" | ")

KANJI = dict(pair.split(":") for pair in (TABLES["KANJI"]).split())

PRINT = dict(pair.split(":") for pair in (TABLES["PRINT"]).split())

SENSE = dict(pair.split(":") for pair in (TABLES["SENSE"]).split())

PARTICLES = frozenset(["の", "は", "を", "に", "も", "ぞ", "と", "や", "が", "て", "之", "而"])

OLD_KANJI = dict(
    zip(
        "国声来桜万竜恋学風霊静剣関沢払宝円鶴", "國聲來櫻萬龍戀學凮靈靜劔關澤拂寳圓靏", strict=False
    )
)

OLD_KANA = {
    "に": "尓",
    "は": "者",
    "の": "能",
    "か": "可",
    "を": "越",
    "け": "希",
    "な": "奈",
    "た": "多",
}

PLAIN = dict(
    zip(
        "がぎぐげござじずぜぞだぢづでどばびぶべぼ",
        "かきくけこさしすせそたちつてとはひふへほ",
        strict=False,
    )
)

BLANK = "　"  # a patch of the draft came off: the place stays, the sign is lost
