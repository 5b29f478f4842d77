"""Build jukujikun.tsv from EDICT: words whose reading is not made of their signs' readings.

EDICT marks few of them, so they are told by what they are: no reading of the first sign followed
by one of the second gives the word (土筆 つくし, 紫陽花 あじさい). Needs the Debian package edict.
"""

from __future__ import annotations

import re

from compounds import EDICT, cuts
from sources import listed

from inscribe.forms import normalise_text

_ENTRY = re.compile(
    r"(?P<text>[\u3005\u4e00-\u9fff]{2,3}) \[(?P<kana>[\u3041-\u3096]{2,8})\] /(?P<gloss>.*)/"
)
_WORDS = ("(n)", "(n,", "(gikun)", "(adv)", "(adv,")
_NOT_SO = ("(io)", "(iK)", "(oik)")


def entries() -> dict[str, dict[str, None]]:
    """Return the readings of each such word, in current forms."""
    found: dict[str, dict[str, None]] = {}
    for line in EDICT.read_text(encoding="euc_jp", errors="replace").splitlines():
        entry = _ENTRY.match(line)
        if not entry or any(mark in line for mark in _NOT_SO):
            continue
        if not entry["gloss"].startswith(_WORDS):
            continue
        text = normalise_text(entry["text"]).text
        if len(text) == len(entry["text"]) and cuts(text, entry["kana"]) is None:
            found.setdefault(text, {})[entry["kana"]] = None
    return found


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table, in the order of their signs."""
    rows = []
    for text, readings in sorted(entries().items()):
        kana, *others = sorted(readings)
        rows.append((text, kana, listed(others)))
    return {"jukujikun": rows}
