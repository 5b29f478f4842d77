"""Words of a record that are not the usual ones: slips of the hand, or a word of the writer's own.

>>> unusual("hand", "runing"), unusual("hand", "regular and kana")
('hand “runing” is no usual word; perhaps running', '')
"""

from __future__ import annotations

import re

from inscribe.record import suggested

_JOINS = re.compile(r"\s*(?:,| and | with |/|;)\s*")
_FREE = ("place",)  # anything may be said there; only what looks like a slip is remarked on


def unusual(field: str, said: str) -> str:
    """Return what is unusual about a word of a record, nothing where it is a usual one."""
    usual = [word.word for word in suggested(field)]
    parts = [said, *_JOINS.split(said)]
    if not usual or said.lower() in usual or all(part.lower() in usual for part in parts[1:]):
        return ""
    from difflib import get_close_matches

    near = get_close_matches(said.lower(), usual, n=1, cutoff=0.75)
    if not near and field in _FREE:
        return ""
    perhaps = f"perhaps {near[0]}" if near else f"usual are {', '.join(usual)}"
    return f"{field} “{said}” is no usual word; {perhaps}"
