"""The result of normalisation: a text, where each character came from, and every change made.

Input plus recorded changes gives the output, and the output plus changes gives back what was
carved: nothing is folded silently.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Change:
    """One step: at sign ``sign``, ``before`` (as carved) became ``after``, and why."""

    sign: int
    before: str
    after: str
    kind: str  # "old form", "variant", "hentaigana", "compatibility form", "repeat mark", ...
    table: str  # the glossary table that says so
    note: str = ""


@dataclass(frozen=True, slots=True)
class NormalText:
    """A text in current character forms and ordinary kana, spelling otherwise as carved.

    ``origin[i]`` is the index of the sign that ``text[i]`` came from. A sign that cannot be read
    stands as ``□`` and a gap, kao or seal as a character of its own (see ``inscribe.forms``), so
    that later stages can see it.
    """

    text: str
    origin: tuple[int, ...]
    changes: tuple[Change, ...] = ()
