"""The passages of an inscription, each weighed as what it is: a poem, and the names below it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe.forms import NormalText
from inscribe.restoring.inscription import WornInscription, in_register
from inscribe.restoring.name_chances import NO_NAMES, Names

if TYPE_CHECKING:
    from inscribe.reading import Register

_REGISTERS: dict[str, Register] = {
    "verse": "verse",
    "prose": "prose",
    "chinese": "prose",
    "heading": "prose",
}


def by_passage(whole: WornInscription, names: Names = NO_NAMES) -> dict[int, WornInscription]:
    """Return, for each sign, the passage it stands in as an inscription of its own.

    A worn sign of a signature below a poem is weighed as a signature's, the poem's as a poem's.
    Nothing where there is one passage only.
    """
    found: dict[int, WornInscription] = {}
    for kind, first, last in whole.passages if len(whole.passages) > 1 else ():
        part = _part(whole.normal, first, last)
        own = in_register(part, _REGISTERS.get(kind, "signature"), names)
        found |= dict.fromkeys(part.origin, own)
    return found


def _part(normal: NormalText, first: int, last: int) -> NormalText:
    inside = [at for at, sign in enumerate(normal.origin) if first <= sign <= last]
    text = "".join(normal.text[at] for at in inside)
    changes = tuple(change for change in normal.changes if first <= change.sign <= last)
    return NormalText(text, tuple(normal.origin[at] for at in inside), changes)
