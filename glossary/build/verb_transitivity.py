"""Which verbs of one kanji are transitive, as EDICT says (Debian: edict)."""

from __future__ import annotations

import re
from pathlib import Path

EDICT = Path("/usr/share/edict/edict")
_ENTRY = re.compile(r"^([\u4e00-\u9fff][\u3041-\u3096]*) \[([\u3041-\u3096]+)\] /(.*)")
_VERB = re.compile(r"\(((?:[a-z0-9-]+,)*v[1245][a-z0-9-]*(?:,[a-z0-9-]+)*)\)")
_BOTH = "両"


def built() -> dict[str, list[tuple[str, str, str]]]:
    """Return the rows of the table."""
    found: dict[tuple[str, str], set[str]] = {}
    for line in EDICT.read_text("euc_jp", errors="ignore").splitlines():
        entry = _ENTRY.match(line.replace("(P)", ""))
        if entry is None:
            continue
        written, kana, senses = entry.groups()
        kinds = {kind for tags in _VERB.findall(senses) for kind in tags.split(",")}
        told = {"他"} if "vt" in kinds else set()
        told |= {"自"} if "vi" in kinds else set()
        if told:
            found.setdefault((written[0], kana), set()).update(told)
    rows = [
        (written, kana, _BOTH if len(told) > 1 else min(told))
        for (written, kana), told in sorted(found.items())
    ]
    return {"verb_transitivity": rows}
