"""How faithful a copy is: counts of signs by kind of group."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Any, cast

from inscribe.collation.parts import Fidelity, Group


def fidelity(groups: Iterable[Group]) -> Fidelity:
    """Return the figures of ``groups``: signs of the source by kind, of the copy for additions."""
    counts: Counter[str] = Counter()
    source = 0
    for group in groups:
        if group.kind == "beside":
            continue
        source += len(group.source)
        counts[group.kind] += len(group.copy) if group.kind == "added" else len(group.source)
    return Fidelity(source, **cast("dict[str, Any]", counts))
