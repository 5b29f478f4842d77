"""The circumstances under which he works."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class World:
    """How he works: sizes in mm, errors and chances as shares.

    ``fill`` is how much of the columns the text would take at his own size, drawn evenly;
    ``plan`` how he looks ahead ("none", "eye", "strict"), ``eye`` by what share he misjudges;
    ``uneven`` the spread of his signs' lengths; ``ragged`` by how many mm his columns end unevenly.
    """

    fill: tuple[float, float] = (0.6, 1.5)
    plan: str = "eye"
    eye: float = 0.08
    squeeze: float = 0.84  # the smallest share of his size he writes in
    uneven: float = 0.05
    ragged: float = 0.8
    margins: tuple[float, float] = (1.5, 5.0)
    equal: bool = False  # the same margin above and below
    callipers: float = 0.3
    print_differs: float = 0.03  # of a word
    slips: float = 0.012  # of a word
    skips: float = 0.25  # of a word that comes again, that his eye goes on from it
    forgets: float = 0.0  # of a word: another of the same sense, or none
    habit: float = 0.1  # of a word, that he writes it short as he always does
    seal: float = 0.0
    boxes: float = 0.4
    title: float = 0.15
    cuts: float = 0.5  # that he stops at the foot, rather than crowd and shorten to the end


WORLDS = {
    "fair": World(),
    "equal margins": World(equal=True, margins=(2.0, 4.5)),
    "other print": World(print_differs=0.1, slips=0.004, fill=(0.8, 1.4)),
    "other print, roomy": World(print_differs=0.09, slips=0.004, fill=(0.5, 1.15)),
    "uneven hand": World(uneven=0.2, ragged=3.0, slips=0.02),
    "tight plan": World(plan="strict", eye=0.05, fill=(0.95, 1.5), slips=0.03, cuts=0.1),
    "careful plan": World(plan="strict", eye=0.02, fill=(0.85, 1.3), slips=0.02, ragged=0.3),
    "no plan": World(plan="none", cuts=0.7),
    "bad eye": World(eye=0.22),
    "seal at the foot": World(seal=0.8),
    "from memory": World(forgets=0.06, fill=(0.6, 1.3)),
    "worn metal": World(callipers=0.6, boxes=0.1),
    "short by habit": World(habit=0.4),
    "never crowds": World(squeeze=1.0, uneven=0.03, ragged=0.3, slips=0.02),
}
