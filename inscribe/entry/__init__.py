"""The catalogue entry: everything the stages found about one object, gathered once.

Formats (``inscribe.report``) only lay out what stands here.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.entry.assemble import entry_of as entry_of
    from inscribe.entry.folder import (
        Made as Made,
        entries_in as entries_in,
        usable_entries as usable_entries,
    )
    from inscribe.entry.model import Entry as Entry, InscriptionEntry as InscriptionEntry
else:
    __getattr__ = late.door(
        __name__,
        {
            "assemble": "entry_of",
            "folder": "Made entries_in usable_entries",
            "model": "Entry InscriptionEntry",
        },
    )
