"""A transcription of an old list, in whatever mark-up, as the conventions have it.

Nothing is changed silently: every step is told. What stays odd is left as it is, for ``check`` to
tell of.

>>> text, steps = in_conventions("武州住<br>嶺暁?作(花押)")
>>> text
'武州住／嶺暁□作(花押)'
>>> [(step.before, step.after) for step in steps]
[('<br>', '／'), ('?', '□')]
"""

from __future__ import annotations

import re
from typing import NamedTuple
from unicodedata import normalize

from inscribe import tables
from inscribe.errors import NotationError
from inscribe.notation import parse


class Step(NamedTuple):
    """One change: what stood there, what stands there now, and why."""

    before: str
    after: str
    why: str


def in_conventions(text: str) -> tuple[str, list[Step]]:
    """Return a transcription in this program's conventions, and what was changed.

    Leiden is recognised where the text parses as it and not as Japanese convention, and is then
    written in the Japanese convention.
    """
    made, steps = _rewritten(text.strip())
    if not _parses(made) and _is_leiden(text):
        from inscribe.notation import render

        made = render(parse(text, "leiden"), "japanese")
        return made, [Step(text, made, "Leiden, written in the Japanese convention")]
    return made, steps


def _rewritten(text: str) -> tuple[str, list[Step]]:
    steps: list[Step] = []
    for pattern, after, why in _rules():

        def changed(match: re.Match[str], after: str = after, why: str = why) -> str:
            made = match.expand(after)
            if made != match[0]:
                steps.append(Step(match[0], made, why))
            return made

        text = pattern.sub(changed, text)
    return text, steps


def _parses(text: str) -> bool:
    try:
        return bool(parse(text).signs)
    except NotationError:
        return False


def _is_leiden(text: str) -> bool:
    try:
        return bool(parse(text, "leiden").signs)
    except NotationError:
        return False


def says_nothing(text: str) -> str:
    """Return why a cell has no transcription, as one says so in lists, or nothing.

    >>> says_nothing("無銘"), says_nothing("unsigned"), says_nothing("武州住")
    ('unsigned', 'unsigned', '')
    """
    said = normalize("NFKC", text).strip(" .()[]").casefold()
    return _unsigned().get(said, "")


@tables.cached()
def _unsigned() -> dict[str, str]:
    rows = tables.rows("import_marks")
    return {row["written"]: "unsigned" for row in rows if row["kind"] == "unsigned"}


@tables.cached()
def _rules() -> list[tuple[re.Pattern[str], str, str]]:
    """Return the rewriting rules in their order: those of the table, then single marks."""
    rows = [row for row in tables.rows("import_marks") if row["kind"] != "unsigned"]
    made = [
        (
            re.compile(row["written"] if row["kind"] == "pattern" else re.escape(row["written"])),
            row["meant"] if row["kind"] == "pattern" else row["meant"].replace("\\", "\\\\"),
            row["note"],
        )
        for row in rows
    ]
    for row in tables.rows("outside_marks"):
        if row["meant"] in ("□", "■"):
            either = f"[{re.escape(row['marks'])}]"
            made.append((re.compile(either), row["meant"], row["note"]))
    return made
