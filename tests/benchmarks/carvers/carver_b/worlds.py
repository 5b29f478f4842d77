"""The kinds of carver."""

from __future__ import annotations

from typing import NamedTuple


class World(NamedTuple):
    """One kind of carver. fill: length wanted over length there is; margin: mm at the head; plan:
    chance to measure by eye before the first cut; look: chance per sign to look ahead, far:
    mean distance in signs; care: how much pressure moves him; drift, jitter: of log size per
    sign; slip, wording, habit: mean number on a plate; small: chance of a seppa-dai or fuchi;
    bend: mm.
    """

    name: str
    share: int
    fill: tuple[float, float]
    margin: tuple[float, float]
    plan: float
    look: float
    far: float
    care: float
    drift: float
    jitter: float
    slip: float
    wording: float
    habit: float
    division: str
    small: float = 0.06
    seal: float = 0.06
    bend: float = 0.2


WORLDS = [
    World(*row)
    for row in (  # in the order of the fields above
        ("ruled", 10, (0.6, 0.95), (3, 6), 1.0, 0.5, 9, 0.6, 0, 0.015, 1.0, 0.25, 0.3, "lines"),
        ("tight-plan", 8, (1.1, 1.5), (1.5, 5), 1.0, 0.4, 8, 0.8, 0, 0.02, 0.8, 0.25, 0.3, "even"),
        ("walker", 11, (0.85, 1.3), (1, 6), 0.0, 0.35, 7, 0.7, 0, 0.06, 0.9, 0.2, 0.3, "run"),
        ("late", 9, (1.0, 1.35), (2, 6), 0.0, 0.8, 4, 1.0, 0.002, 0.03, 0.8, 0.2, 0.3, "run"),
        ("carefree", 9, (0.9, 1.2), (1, 7), 0.0, 0.0, 1, 0.0, 0.003, 0.05, 1.0, 0.2, 0.4, "run"),
        ("shrinking", 7, (0.65, 0.95), (2, 6), 0.0, 0.1, 4, 0.3, -0.02, 0.03, 1.1, 0.2, 0.4, "run"),
        ("swelling", 7, (0.7, 0.95), (1, 5), 0.2, 0.3, 5, 0.6, 0.014, 0.04, 0.9, 0.2, 0.3, "lines"),
        (
            "to-the-edge",
            7,
            (0.9, 1.15),
            (0.2, 0.9),
            0.3,
            0.5,
            6,
            0.8,
            0,
            0.05,
            0.9,
            0.2,
            0.4,
            "even",
            0.06,
            0.06,
            0.8,
        ),
        ("memory", 7, (0.5, 0.9), (2, 8), 0.3, 0.2, 6, 0.5, 0, 0.05, 2.2, 0.4, 0.3, "lines"),
        ("other-print", 6, (0.55, 1.0), (2, 6), 0.6, 0.3, 7, 0.5, 0, 0.03, 0.5, 2.4, 0.2, "lines"),
        (
            "old-hand",
            7,
            (0.55, 1.05),
            (2, 6),
            0.5,
            0.3,
            7,
            0.5,
            0,
            0.05,
            0.6,
            0.2,
            2.4,
            "even",
            0.06,
            0.06,
            0.5,
        ),
        (
            "small-face",
            7,
            (1.0, 1.45),
            (0.5, 2),
            0.35,
            0.5,
            6,
            0.9,
            0,
            0.04,
            0.8,
            0.2,
            0.3,
            "run",
            1.0,
        ),
        (
            "seal-foot",
            7,
            (0.85, 1.15),
            (2, 5),
            0.4,
            0.4,
            6,
            0.7,
            0,
            0.03,
            0.8,
            0.2,
            0.3,
            "lines",
            0.06,
            1.0,
        ),
        ("faithful", 6, (0.5, 0.85), (2, 8), 0.6, 0.3, 6, 0.4, 0, 0.03, 0.0, 0.0, 0.0, "lines"),
    )
]
