"""Keys of ``inscribe check`` and ``inscribe next``."""

from __future__ import annotations

from typing import Annotated, TypedDict

from inscribe.keys.base import Count, Line
from inscribe.terms import Block, Severity


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
    progress: Annotated[
        dict[str, dict[str, Count]], "records by state, kind and drawer, as far as they say it"
    ]


class TaskKeys(TypedDict):
    """One record that is left to do."""

    record: Annotated[str, "the object's id, or empty where it could not be read"]
    file: Annotated[str, "the record's file"]
    blocked_by: Annotated[Block, "what is in the way, the gravest"]
    why: Annotated[list[str], "what was found"]
    todo: Annotated[str, "what to do"]
    state: Annotated[str, "how far the work on it is"]
    drawer: Annotated[str, "the drawer it lies in"]
    box: Annotated[str, "the box it lies in"]
    with_whom: Annotated[str, "who has it"]


class WorkKeys(TypedDict):
    """What is left to do in a folder of records."""

    left: Annotated[Count, "how many records are left to do"]
    tasks: Annotated[list[TaskKeys], "the first of them"]
