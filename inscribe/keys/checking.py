"""Keys of ``inscribe check``."""

from __future__ import annotations

from typing import Annotated, TypedDict

from inscribe.keys.base import Count, Line
from inscribe.terms import Severity


class FindingKeys(TypedDict):
    """One problem."""

    severity: Annotated[Severity, "how grave it is"]
    code: Annotated[str, "what kind of problem, a word that never changes"]
    record: Annotated[str, "the object's id, or empty where it could not be read"]
    file: Annotated[str, "the record's file"]
    line: Annotated[Line | None, "where the problem lies, where that is known"]
    message: Annotated[str, "what is the matter"]
    todo: Annotated[str, "what to do"]


class CheckKeys(TypedDict):
    """What was found in a folder of records."""

    records: Annotated[Count, "records looked at"]
    findings: Annotated[list[FindingKeys], "by file and line"]
    counts: Annotated[dict[str, Count], "findings by severity"]
