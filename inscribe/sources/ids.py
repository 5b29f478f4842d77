"""Ids of texts, typed from memory: which of a library's may be meant.

>>> nearest_id("kokinsh-053", ["kokinshu-053", "kokinshu-169"])
'kokinshu-053'
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from pathlib import Path

from inscribe.errors import InputError, Place

CLOSE = 80.0  # of 100: how alike an id must be to be meant
MOST_IDS = 200_000  # of a library that are looked through for one that is nearly so


def folded(identity: str) -> str:
    """Return an id without what is easily typed otherwise: capitals, width, composed letters."""
    return unicodedata.normalize("NFKC", identity).casefold().strip()


def nearest_id(identity: str, ids: Sequence[str]) -> str:
    """Return the one of the ids that is most like another, if any is near, else nothing."""
    from rapidfuzz import fuzz, process

    found = process.extractOne(
        identity, ids[:MOST_IDS], scorer=fuzz.ratio, processor=folded, score_cutoff=CLOSE
    )
    return str(found[0]) if found else ""


def no_text(identity: str, ids: Sequence[str], library: Path) -> InputError:
    """Return the error that a library has no text of an id, with the id that may be meant."""
    meant = nearest_id(identity, ids)
    hint = f"did you mean {meant}?" if meant else "see: inscribe source list"
    return InputError(f"there is no text {identity} in the library", Place(str(library)), hint)
