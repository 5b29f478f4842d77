"""A copy held against its source: what answers what, how faithful it is, what space explains.

The room has the name of its function, and Python binds ``inscribe.collate`` to the room as soon as
anything in it is imported. So the room may be called, and ``inscribe.collate(copy, source)`` works
before and after.

>>> import inscribe
>>> copy, source = inscribe.parse("夢の浮橋"), inscribe.parse("ゆめのうきはし")
>>> [inscribe.collate(copy, source).is_faithful_in_wording for _ in range(2)]
[True, True]
"""

from __future__ import annotations

import sys
from types import ModuleType
from typing import Any

from inscribe.collate.collation import collate, collate_texts
from inscribe.collate.model import Collation, Fidelity, Group, SpaceAccount, Span

__all__ = ["Collation", "Fidelity", "Group", "SpaceAccount", "Span", "collate", "collate_texts"]


class _Room(ModuleType):
    """A module that does what its function does."""

    def __call__(self, *args: Any, **kwargs: Any) -> Collation:
        return collate(*args, **kwargs)


sys.modules[__name__].__class__ = _Room
