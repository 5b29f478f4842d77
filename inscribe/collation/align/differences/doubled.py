"""Passages that one of two texts has twice: written twice by a slip, or once for twice.

Such a difference is a stretch put in, or left out, that stands once more beside itself.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.collation.align.sides import Side
from inscribe.collation.parts import Group, Span

LEAST = 2  # signs; a single sign is doubled by chance
TWICE = "the copy has it twice"
ONCE = "the source has it twice"


def told_doubles(groups: Sequence[Group], copy: Side, source: Side) -> list[Group]:
    """Return ``groups``, each passage that one side has twice with a reason that says so."""
    return [_told(group, copy, source) for group in groups]


def _told(group: Group, copy: Side, source: Side) -> Group:
    if group.kind == "added" and _is_double(group.copy, copy):
        return Group(group.kind, group.copy, group.source, group.why or TWICE)
    if group.kind == "omitted" and _is_double(group.source, source):
        return Group(group.kind, group.copy, group.source, group.why or ONCE)
    return group


def _is_double(part: Span, side: Side) -> bool:
    """Whether a passage and its double, of which ``part`` is as many signs, touch each other."""
    length, norm = len(part), side.norm
    starts = range(max(0, part.start - length), part.start + 1)
    return length >= LEAST and any(
        norm[at : at + length] == norm[at + length : at + 2 * length] for at in starts
    )
