"""A copy held against its source: what answers what, how faithful it is, what space explains."""

from __future__ import annotations

from inscribe.collate.collation import collate, collate_texts
from inscribe.collate.model import Collation, Fidelity, Group, SpaceAccount, Span

__all__ = ["Collation", "Fidelity", "Group", "SpaceAccount", "Span", "collate", "collate_texts"]
