"""How a transcription is written, as the documentation of the notation has it."""

from __future__ import annotations

import re
from inspect import cleandoc

from inscribe import notation
from inscribe.report.terminal.wrapping import room, wrapped

_CODE = re.compile("``(.+?)``( *)")


def conventions_as_text() -> str:
    """Return the table of conventions, and what there is to say of it."""
    _title, intro, table, remarks, *_ = cleandoc(notation.__doc__ or "").split("\n\n")
    return "\n\n".join((_in_lines(intro), _plain_table(table), _in_lines(remarks)))


def _in_lines(paragraph: str) -> str:
    return wrapped(_CODE.sub(r"\1\2", paragraph.replace("\n", " ")), room(), 0)


def _plain_table(table: str) -> str:
    """Return the table without marks of code, its columns still under one another."""
    plain = _CODE.sub(lambda m: m[1] + (f"{m[2]}    " if len(m[2]) > 1 else m[2]), table)
    return "\n".join(line.rstrip().replace("=", "─") for line in plain.split("\n"))
