"""Keys of ``inscribe import``."""

from __future__ import annotations

from typing import Annotated, TypedDict

from inscribe.keys.base import Keyword
from inscribe.terms import RowFate

Row = Annotated[int, Keyword("minimum", 1), "a row of the list, counted from 1 with the headings"]


class ImportedRowKeys(TypedDict):
    """What became of a row."""

    row: Row
    id: Annotated[str, "the object's id, empty where the row has none"]
    what: Annotated[RowFate, "what became of it"]
    file: Annotated[str, "the record's file, empty where there is none"]
    changed: Annotated[list[str], "the keys that were written"]
    told: Annotated[list[str], "what a person changed in the record, and stayed"]
    cells: Annotated[list[list[str]], "heading and cell of a row left out, which no record holds"]


class TroubleKeys(TypedDict):
    """Something that is the matter with a row."""

    row: Row
    heading: Annotated[str, "the column, empty where it is the whole row"]
    cell: Annotated[str, "what stands there"]
    said: Annotated[str, "what is the matter"]
    todo: Annotated[str, "what to do"]
    left_out: Annotated[bool, "whether the row made no record, or changed none"]


class MarkStepKeys(TypedDict):
    """One change of mark-up in a transcription."""

    row: Row
    heading: Annotated[str, "the column"]
    before: Annotated[str, "what stood there"]
    after: Annotated[str, "what stands there in this program's conventions"]
    why: Annotated[str, "the reason"]


class ImportKeys(TypedDict):
    """What an import did."""

    list: Annotated[str, "the list's file"]
    encoding: Annotated[str, "how it is encoded, empty for a workbook"]
    written: Annotated[bool, "whether records were written"]
    rows: Annotated[list[ImportedRowKeys], "what became of each row"]
    troubles: Annotated[list[TroubleKeys], "what is the matter with rows"]
    marks: Annotated[list[MarkStepKeys], "what was changed in the mark-up of transcriptions"]
    gone: Annotated[list[str], "ids of records of the list that stand in it no more"]
