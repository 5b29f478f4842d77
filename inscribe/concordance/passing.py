r"""Which records cannot have what is looked for, told from their JSON before it is taken apart.

Of thousands of records a word stands in a few. The JSON that is kept of a record has its text in
current forms, and of each word the sound and the stem as strings of their own; a record that has
neither is passed over. What is let through need not have the word: the search tells.

>>> from inscribe.concordance.finding import query_of
>>> worth = may_have(query_of("ゆめ"))
>>> [worth(json.dumps([text, sound])) for text, sound in (("夢", "ゆめ"), ("花", "はな"))]
[True, False]
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator

from inscribe.concordance.finding import ConcordanceQuery

Dumps = Callable[[str], str]


def may_have(query: ConcordanceQuery, dumps: Dumps = json.dumps) -> Callable[[str], bool] | None:
    """Return what tells of a record's JSON whether ``query`` may be found; None: it cannot tell.

    ``dumps`` gives a string as the JSON has it.
    """
    if query.pattern is not None:
        return None
    looked_for = re.compile("|".join(_strings(query, dumps)))
    return lambda kept: looked_for.search(kept) is not None


def _strings(query: ConcordanceQuery, dumps: Dumps) -> Iterator[str]:
    r"""Yield patterns of which one at least stands in the JSON of an inscription that has it."""

    def inside(said: str) -> str:
        return re.escape(dumps(said)[1:-1])

    if query.signs:
        yield inside(query.signs)
    # What a long vowel adds to a sound (see ``finding``).
    longer = f"(?:{inside('う')}|{inside('お')})*" if query.any_length else ""
    for sound in query.sounds:
        letters = [inside(char) + longer for char in sound]
        # One word of several is a beginning of the sound: る, or るを, or るをと ...
        yield '"' + "(?:".join(letters) + ")?" * (len(letters) - 1) + '"'
    for stem in query.stems:
        yield re.escape(dumps(stem))
