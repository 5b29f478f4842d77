"""Entries as JSON: the record's facts beside what the stages found."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inscribe.entry import Entry


def entries_as_json(entries: Sequence[Entry]) -> str:
    """Return one object, or a list of them where there are several entries.

    >>> import json
    >>> from inscribe import entry_of, load_record
    >>> json.loads(entries_as_json([entry_of(load_record("examples/DEMO-003.toml"))]))["id"]
    'DEMO-003'
    """
    made = [entry.to_dict() for entry in entries]
    return json.dumps(made[0] if len(made) == 1 else made, ensure_ascii=False, indent=2)
