"""The index: which passages hold which short runs of sounds.

A passage's sounds are cut into *grams*: two neighbouring sounds, three neighbouring sounds, and
two sounds with one of any kind between them (written ``a·b``), which survive a worn sign. Each
gram keeps the numbers of the passages it occurs in, as 32-bit numbers in one blob a segment; a
segment is what one transaction added, and segments of a size are merged when they grow many.
"""

from __future__ import annotations

import math
import sqlite3
from array import array
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import TYPE_CHECKING, TypeAlias

from inscribe.reading.spelling import is_kanji
from inscribe.sources.keys import UNKNOWN, run_together

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    Weights: TypeAlias = npt.NDArray[np.float32]

SKIP = "·"
MOST_OF_A_SIZE = 12  # segments of one size; more are merged into one
SIZES = (5_000, 60_000, 700_000)  # passages at which a segment is of the next size

BUDGET = 4_000_000  # passage numbers looked at for one query at the most
FIRST_LOOK = 50_000  # passage numbers looked at before asking whether one passage stands out
STANDS_OUT = 90.0  # bits that the grams of a passage which stands out must tell, and twice ...
WORTH_A_LOOK = 0.2  # share of the heaviest weight below which a passage is not looked at
ALSO_RAN = 20  # ... those of the passage of this rank

SCHEMA = """
CREATE TABLE IF NOT EXISTS segments(segment INTEGER PRIMARY KEY, passages INTEGER NOT NULL);
CREATE TABLE IF NOT EXISTS grams(
    gram TEXT NOT NULL, segment INTEGER NOT NULL, numbers BLOB NOT NULL,
    PRIMARY KEY(gram, segment)
) WITHOUT ROWID;
"""


def grams_of(sounds: str) -> set[str]:
    """Return the grams of a string of sounds; none runs over an unknown sound.

    >>> sorted(grams_of("はな□の"))
    ['な·の', 'はな']
    """
    pairs = {sounds[i : i + 2] for i in range(len(sounds) - 1)}
    triples = {sounds[i : i + 3] for i in range(len(sounds) - 2)}
    known = {gram for gram in pairs | triples if UNKNOWN not in gram}
    skips = {sounds[i] + SKIP + sounds[i + 2] for i in range(len(sounds) - 2)}
    return known | {gram for gram in skips if UNKNOWN not in gram}


def sign_grams(signs: str) -> set[str]:
    """Return the neighbouring pairs of signs that hold a Chinese character.

    >>> sorted(sign_grams("春の夜"))
    ['の夜', '春の']
    """
    pairs = {signs[i : i + 2] for i in range(len(signs) - 1)}
    return {pair for pair in pairs if is_kanji(pair[0]) or is_kanji(pair[1])}


def write_segment(db: sqlite3.Connection, passages: Iterable[tuple[int, str, str]]) -> None:
    """Add the passages (number, sounds, signs) as one segment; the caller holds the transaction."""
    postings: defaultdict[str, array[int]] = defaultdict(lambda: array("I"))
    count = 0
    for number, sounds, signs in passages:
        count += 1
        for gram in grams_of(run_together(sounds)) | sign_grams(signs):
            postings[gram].append(number)
    if not count:
        return
    cursor = db.execute("INSERT INTO segments(passages) VALUES (?)", (count,))
    segment = cursor.lastrowid
    db.executemany(
        "INSERT INTO grams(gram, segment, numbers) VALUES (?, ?, ?)",
        ((gram, segment, postings[gram].tobytes()) for gram in sorted(postings)),
    )
    _merge_segments(db)


def _merge_segments(db: sqlite3.Connection) -> None:
    """Merge the segments of a size into one when they have grown many, the smallest size first."""
    for fewest, most in pairwise((0, *SIZES)):
        same_size = [
            row[0]
            for row in db.execute(
                "SELECT segment FROM segments WHERE passages >= ? AND passages < ?", (fewest, most)
            )
        ]
        if len(same_size) > MOST_OF_A_SIZE:
            _merge(db, same_size)


def _merge(db: sqlite3.Connection, segments: list[int]) -> None:
    marks = ",".join("?" * len(segments))
    grams = db.execute(
        f"SELECT DISTINCT gram FROM grams WHERE segment IN ({marks})", segments
    ).fetchall()
    merged = db.execute(
        f"INSERT INTO segments(passages) SELECT SUM(passages) FROM segments"
        f" WHERE segment IN ({marks})",
        segments,
    ).lastrowid
    for (gram,) in grams:
        rows = db.execute(
            f"SELECT numbers FROM grams WHERE gram = ? AND segment IN ({marks}) ORDER BY segment",
            (gram, *segments),
        ).fetchall()
        numbers = b"".join(row[0] for row in rows)
        db.execute(
            "INSERT INTO grams(gram, segment, numbers) VALUES (?, ?, ?)", (gram, merged, numbers)
        )
    db.execute(f"DELETE FROM grams WHERE segment IN ({marks})", segments)
    db.execute(f"DELETE FROM segments WHERE segment IN ({marks})", segments)


def passages_sharing(
    db: sqlite3.Connection, passes: Iterable[Iterable[str]], *, most: int
) -> list[tuple[int, float]]:
    """Return up to ``most`` passages (number, weight), those with the heaviest shared grams first.

    A gram weighs the more the rarer it is. The grams of the first pass are looked at first, in each
    pass the rarest first, until one passage stands out or ``BUDGET`` passage numbers are counted.
    """
    import numpy as np

    held = _highest_number(db)
    weights = np.zeros(held + 1, dtype=np.float32)
    counted, looked_at = 0, FIRST_LOOK
    for grams in passes:
        for length, gram in sorted(_lengths(db, grams)):
            if counted and counted + length > BUDGET:
                break
            counted += length
            told = math.log2((held + 1) / length)
            for (blob,) in db.execute("SELECT numbers FROM grams WHERE gram = ?", (gram,)):
                weights[np.frombuffer(blob, dtype=np.uint32)] += told
            if counted > looked_at:
                if _one_stands_out(weights):
                    return _heaviest(weights, most)
                looked_at *= 4
        if _one_stands_out(weights):
            break
    return _heaviest(weights, most)


def _highest_number(db: sqlite3.Connection) -> int:
    """Return the highest number a passage ever had: the index still names those removed."""
    found = db.execute("SELECT seq FROM sqlite_sequence WHERE name = 'passages'").fetchone()
    return int(found[0]) if found else 0


def _heaviest(weights: Weights, most: int) -> list[tuple[int, float]]:
    import numpy as np

    # Most passages share nothing; leaving them out first makes the partition many times quicker.
    some = np.flatnonzero(weights > weights.max() * WORTH_A_LOOK)
    if most < len(some):
        some = some[np.argpartition(weights[some], -most)[-most:]]
    ranked = some[np.argsort(-weights[some], kind="stable")]
    return [(int(number), float(weights[number])) for number in ranked]


def _one_stands_out(weights: Weights) -> bool:
    ranked = _heaviest(weights, ALSO_RAN)
    if not ranked or ranked[0][1] < STANDS_OUT:
        return False
    return len(ranked) < ALSO_RAN or ranked[0][1] > 2 * ranked[-1][1]


def _lengths(db: sqlite3.Connection, grams: Iterable[str]) -> Iterator[tuple[int, str]]:
    """Yield how many passages hold each gram that occurs at all."""
    wanted = list(grams)
    for start in range(0, len(wanted), 500):
        part = wanted[start : start + 500]
        marks = ",".join("?" * len(part))
        for gram, size in db.execute(
            f"SELECT gram, SUM(LENGTH(numbers)) FROM grams WHERE gram IN ({marks}) GROUP BY gram",
            part,
        ):
            yield size // 4, gram
