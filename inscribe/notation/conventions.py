"""What a convention consists of; the two are in ``japanese.py`` and ``leiden.py``, as data.

Sources: the Leiden conventions as published ("Projet d'unification des systèmes de signes
critiques", Chronique d'Égypte 7, 1932; the extensions ``(?)``, ``(!)``, ``((…))`` and ``⟦…⟧`` as in
epigraphic corpora today), from memory; the Japanese marks are common practice of 翻刻, no single
source. Where that practice has several marks for one thing, or none, the choice made here is
listed in ``inscribe.notation``.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.signs import Certainty, Intervention


class Bracket(NamedTuple):
    """What a pair of brackets says of every sign between them."""

    name: str  # as it appears in messages
    opening: str  # as rendered
    closing: str  # as rendered
    closings: str  # every character that closes it
    certainty: Certainty | None = None
    intervention: Intervention | None = None


class Note(NamedTuple):
    """What a note after a sign says of it."""

    text: str  # as rendered
    certainty: Certainty | None = None
    intervention: Intervention | None = None
    sic: bool = False


class Convention(NamedTuple):
    """One way of writing a transcription down."""

    name: str
    brackets: dict[str, Bracket]  # by opening character
    notes: dict[str, Note]  # by content of the note's brackets
    marks: dict[str, Certainty]  # characters that stand for a sign without text
    column_ends: str
    face_ends: str
    # What a trigger may begin, tried in order: its name, the triggers, and what it looks like.
    patterns: tuple[tuple[str, str, str], ...]
    kao: str
    seal: tuple[str, str, str]  # before the legend, after it, and a seal without legend
    legend_ends: str  # characters a legend must escape
    gap: str
    unreadable: str
    column_end: str
    face_end: str
    parents: bool  # whether a kana may be followed by its parent kanji
    expected: str  # what may stand in round brackets, for messages
    triggers: frozenset[str]
    special: frozenset[str]  # signs that need an escape

    @property
    def closings(self) -> str:
        """Every character that closes some bracket."""
        return "".join(bracket.closings for bracket in self.brackets.values())


SPACE = r"[ \t\u3000]"
GAP = rf"[\[［](?:{SPACE}*|{SPACE}*(?:[-‐–—―]{SPACE}*)+|{SPACE}*…+{SPACE}*)[\]］]"
TALL_REPEAT = "／[″゛]?＼"
