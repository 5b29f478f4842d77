"""Checking a folder of records: errors, contradictions, and the doubts that are left as work."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.checking.findings import (
        SEVERITIES as SEVERITIES,
        Checked as Checked,
        Finding as Finding,
        Severity as Severity,
    )
    from inscribe.checking.folder import check_folder as check_folder
else:
    __getattr__ = late.door(
        __name__,
        {
            "findings": "Checked Finding SEVERITIES Severity",
            "folder": "check_folder",
        },
    )
