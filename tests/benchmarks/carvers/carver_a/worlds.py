"""The workshops he may work in."""

from __future__ import annotations

from typing import NamedTuple


class World(NamedTuple):
    """A workshop. judge: relative error of his eye (None: no draft); paper: strip over plate
    length; hope: how full he dares to plan; floor: smallest sign over the wished one; saves:
    order of savings (k kanji, p particle, o okurigana, r repeat, a author, t title); slips:
    mean number; wording, seal, spread (columns spaced out to the foot): chances; habits: how
    many; bow: bend of columns in mm.
    """

    name: str
    share: float
    judge: float | None
    paper: tuple[float, float]
    top: tuple[float, float]
    foot: tuple[float, float]
    hope: tuple[float, float]
    floor: float
    saves: str
    slips: float
    wording: float
    habits: float
    uneven: float
    seal: float
    spread: float
    bow: float


WORLDS = (
    World(
        "fair_draft",
        3,
        0.05,
        (1, 1),
        (3, 6),
        (3, 6),
        (0.7, 1.4),
        0.86,
        "rkpoat",
        0.25,
        0.02,
        0.5,
        0.05,
        0.1,
        0.8,
        0.2,
    ),
    World(
        "edge_to_edge",
        2,
        0.08,
        (1, 1),
        (0.6, 1.6),
        (0.3, 1.2),
        (0.8, 1.45),
        0.8,
        "kroatp",
        0.4,
        0.02,
        0.4,
        0.08,
        0.05,
        0.6,
        0.3,
    ),
    World(
        "long_strip",
        2,
        0.06,
        (1.04, 1.16),
        (2, 5),
        (1, 4),
        (0.9, 1.4),
        0.84,
        "apkrot",
        0.4,
        0.02,
        0.3,
        0.08,
        0.1,
        0.5,
        0.4,
    ),
    World(
        "no_draft",
        3,
        None,
        (1, 1),
        (1.5, 4),
        (0.5, 3),
        (1.0, 1.9),
        0.7,
        "kpora",
        0.8,
        0.03,
        0.3,
        0.14,
        0.05,
        0.0,
        0.9,
    ),
    World(
        "from_memory",
        2,
        0.15,
        (1, 1),
        (2, 5),
        (2, 7),
        (0.5, 1.3),
        0.85,
        "pkatro",
        2.2,
        0.03,
        0.3,
        0.1,
        0.1,
        0.3,
        0.5,
    ),
    World(
        "printed_book",
        2,
        0.06,
        (1, 1),
        (3, 5),
        (2, 5),
        (0.6, 1.35),
        0.9,
        "tarkop",
        0.3,
        0.2,
        0.3,
        0.06,
        0.1,
        0.6,
        0.2,
    ),
    World(
        "apprentice",
        2,
        0.12,
        (0.98, 1.05),
        (1, 6),
        (1, 6),
        (0.7, 1.4),
        0.78,
        "okrpat",
        1.8,
        0.03,
        0.2,
        0.16,
        0.05,
        0.3,
        0.8,
    ),
    World(
        "scattered",
        1,
        0.2,
        (1, 1),
        (2, 16),
        (2, 14),
        (0.6, 1.2),
        0.8,
        "krtaop",
        0.6,
        0.04,
        1.0,
        0.12,
        0.15,
        0.0,
        1.4,
    ),
    World(
        "seal_forgotten",
        1.5,
        0.07,
        (1, 1),
        (2, 4),
        (2, 4),
        (1.0, 1.3),
        0.75,
        "pokrat",
        0.5,
        0.02,
        0.3,
        0.08,
        1.0,
        0.7,
        0.3,
    ),
    World(
        "old_letters",
        1.5,
        0.04,
        (1, 1),
        (3, 6),
        (2, 5),
        (0.6, 1.25),
        0.88,
        "rtakop",
        0.3,
        0.03,
        2.4,
        0.04,
        0.2,
        0.7,
        0.2,
    ),
)
