"""What the persons did who are named without a verb, by where their names stand."""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.passages.stretches import PassageStretch
from inscribe.reading.words import Role

_TEXTS = frozenset({"verse", "prose", "chinese"})
_PEN_NAME = 3  # signs of a name that is no more than a pen name
_RANKS = ("卿", "朝臣", "法師", "上人", "禅師", "親王", "天皇", "大臣", "僧正", "院", "女王")


def with_roles(stretches: Sequence[PassageStretch], text: str) -> tuple[PassageStretch, ...]:
    """Return the stretches, each signing with what its person did."""
    found = []
    for at, stretch in enumerate(stretches):
        role = stretch.role
        if stretch.kind == "dedication":
            role = role or "ordered"
        elif stretch.kind == "signature" and role is None:
            role = _role_of_bare_name(stretches, at, text)
        found.append(stretch._replace(role=role))
    return tuple(found)


def _role_of_bare_name(stretches: Sequence[PassageStretch], at: int, text: str) -> Role:
    here = stretches[at]
    before = stretches[at - 1].kind if at else ""
    after = stretches[at + 1 :]
    name = text[here.first : here.end]
    signed_after = any(each.kind == "signature" for each in after)
    if before == "verse" and (name.endswith(_RANKS) or len(name) <= _PEN_NAME):
        return "composed"
    if before == "verse" and signed_after:
        return "composed"
    if not at and after and after[0].kind == "verse" and len(name) <= _PEN_NAME + 1:
        return "composed"
    if before in _TEXTS and signed_after:
        return "composed" if before == "chinese" else "wrote"
    if before in _TEXTS and len(name) <= _PEN_NAME:
        return "wrote"
    return "carved"
