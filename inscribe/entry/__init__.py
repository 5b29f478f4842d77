"""The catalogue entry: everything the stages found about one object, gathered once.

Formats (``inscribe.report``) only lay out what stands here.
"""

from inscribe.entry.assemble import entry_of
from inscribe.entry.folder import entries_in, usable_entries
from inscribe.entry.model import Entry, InscriptionEntry

__all__ = ["Entry", "InscriptionEntry", "entries_in", "entry_of", "usable_entries"]
