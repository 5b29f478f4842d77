"""Checking a folder of records: errors, contradictions, and the doubts that are left as work."""

from inscribe.checking.findings import Finding, Severity
from inscribe.checking.folder import check_folder

__all__ = ["Finding", "Severity", "check_folder"]
