"""Entries for other machines on the web: IIIF manifests, and linked data of the collection.

In reading order: ``manifest`` (IIIF Presentation 3), ``crm`` (JSON-LD in terms of the CIDOC CRM).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.linked.crm import entries_as_linked as entries_as_linked
    from inscribe.report.linked.manifest import entry_as_manifest as entry_as_manifest
else:
    __getattr__ = late.door(
        __name__,
        {
            "crm": "entries_as_linked",
            "manifest": "entry_as_manifest",
        },
    )
