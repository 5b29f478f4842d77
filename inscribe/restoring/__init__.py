"""Restoring what cannot be read: ranked candidates with their evidence, never put into a record.

>>> from inscribe import notation
>>> found = restore(notation.parse("武州□綾国作"))
>>> found.lacunae[0].candidates[0].text
'住'
"""

from inscribe.restoring.model import Candidate, Evidence, Lacuna, Restoration
from inscribe.restoring.restore import restore
from inscribe.restoring.seen import Seen

__all__ = ["Candidate", "Evidence", "Lacuna", "Restoration", "Seen", "restore"]
