"""What a record file may say: one description that feeds the loader, the writer and the schema."""

from __future__ import annotations

from typing import get_args

from inscribe.record import model
from inscribe.record.fields.describing import Field, RecordTable
from inscribe.record.fields.pictures import IMAGES, PHOTOGRAPH
from inscribe.terms import Kind, Role, SourceKind

NOTATION = Field(
    "notation", "line", "the convention the text is written in", choices=("japanese", "leiden")
)
REMARKS = Field("remarks", "text", "anything else")
WHO = (
    Field("by", "line", "who says so"),
    Field("on", "date", "the day it was said"),
    Field("reason", "line", "why"),
)

MEASUREMENTS = RecordTable(
    "measurements",
    "the object's own measurements in mm",
    (
        Field("length", "size", "greatest length in mm"),
        Field("width", "size", "width in mm"),
        Field("height", "size", "height in mm"),
        Field("thickness", "size", "thickness in mm"),
        Field("diameter", "size", "diameter in mm"),
    ),
    model.Measurements,
)
MAKER = RecordTable(
    "maker",
    "whom the signature names and when that person lived; not an attribution",
    (
        Field("name", "line", "the name as catalogued"),
        Field("born", "year", "year of birth"),
        Field("died", "year", "year of death"),
        Field("active_from", "year", "first year of known work"),
        Field("active_to", "year", "last year of known work"),
        REMARKS,
    ),
    model.Maker,
)
PLATE: RecordTable = RecordTable(
    "plate",
    "the surface that bears the inscription, upright as it is read",
    (
        Field("width", "size", "width in mm", required=True),
        Field("height", "size", "height in mm, along the columns", required=True),
        Field("tolerance", "offset", "by how many mm measured lengths may err; 0.5 if not given"),
    ),
    model.Plate,
)
COLUMN: RecordTable = RecordTable(
    "column",
    "one column of writing, in mm from the plate's top left corner; columns in reading order",
    (
        Field("top", "offset", "where the writing begins", required=True),
        Field("bottom", "size", "where the writing ends", required=True),
        Field("x", "offset", "the column's left edge"),
        Field("width", "size", "the column's width"),
    ),
    model.ColumnMeasure,
)
BOX: RecordTable = RecordTable(
    "box",
    "the place of one sign, in mm from the plate's top left corner",
    (
        Field("sign", "sign", "the sign's number, from 1", required=True),
        Field("x", "offset", "its left edge", required=True),
        Field("y", "offset", "its top", required=True),
        Field("width", "size", "its width", required=True),
        Field("height", "size", "its height", required=True),
    ),
    model.SignBox,
)
TAKES_ROOM = RecordTable(
    "takes_room",
    "what takes room in a column beside the writing, in mm from the plate's upper edge",
    (
        Field("column", "column", "the column's number, from 1", required=True),
        Field("from", "offset", "where it begins", required=True, attribute="start"),
        Field("to", "size", "where it ends", required=True, attribute="end"),
        Field("what", "line", "what it is: a seal, a picture, damage"),
    ),
    model.Obstacle,
)
SOURCE = RecordTable(
    "source",
    "the text that was copied: give text, or file, or id; several are [[inscription.source]] each",
    (
        Field("text", "text", "its words; each line is a line of the source"),
        Field("id", "line", "its id in the library of source texts"),
        Field("file", "line", "a text file, its path relative to the record's folder"),
        NOTATION,
        Field("title", "line", "its title"),
        Field("author", "line", "its author"),
        Field("work", "line", "the work or anthology it stands in"),
        Field("number", "line", "its number or place in the work"),
        Field("siglum", "line", "the letter it is called by in an apparatus"),
        Field(
            "kind",
            "line",
            "what it is; the signs of a modern edition are its editor's",
            choices=get_args(SourceKind),
            defaults=False,
        ),
        REMARKS,
        IMAGES,
        *WHO,
    ),
    model.CopiedText,
)
READING = RecordTable(
    "reading",
    "what one reader made of the inscription, and when",
    (
        Field("by", "line", "the reader", required=True),
        Field("on", "date", "the day of the reading"),
        Field("text", "text", "the reader's own transcription, where it differs"),
        Field("kana", "text", "the reading in kana"),
        Field("romaji", "text", "the reading in Latin letters"),
        REMARKS,
    ),
    model.Reader,
)
OVERRIDE = RecordTable(
    "override",
    "how signs are to be read, whatever the program proposes",
    (
        Field("signs", "signs", "the first and last sign, counted from 1", required=True),
        Field("kana", "line", "how they are read", required=True),
        Field("of", "line", "the signs' text when the override was made"),
        Field("kind", "line", "a word, or a name", choices=("word", "name")),
        *WHO,
    ),
    model.Override,
)
PASSAGE = RecordTable(
    "passage",
    "signs that are one passage, whatever the program proposes",
    (
        Field("signs", "signs", "the first and last sign, counted from 1", required=True),
        Field(
            "kind",
            "line",
            "what it is",
            required=True,
            choices=get_args(Kind),
            defaults=False,
        ),
        Field(
            "role",
            "line",
            "what the person did whom it names",
            choices=get_args(Role),
            defaults=False,
        ),
        Field("of", "line", "the signs' text when the passage was settled"),
        *WHO,
    ),
    model.SettledPassage,
)
DECISION = RecordTable(
    "decision",
    "what a person decided to have stand in the text, and what else was read there",
    (
        Field("signs", "signs", "the first and last sign, counted from 1", required=True),
        Field("chosen", "line", "what stands there since"),
        Field("instead_of", "line", "what else was read, or stood there before"),
        Field(
            "how",
            "line",
            "a worn sign restored, or two transcriptions merged",
            choices=("restored", "merged"),
        ),
        *WHO,
    ),
    model.Decision,
)
INSCRIPTION = RecordTable(
    "inscription",
    "one inscription on the object",
    (
        Field("place", "line", "where on the object", required=True, vocabulary="place"),
        Field("hand", "line", "the script", vocabulary="hand"),
        Field("execution", "line", "how it was cut", vocabulary="execution"),
        NOTATION,
        Field("text", "text", "the inscription as carved; each line is a column", required=True),
        Field(
            "register",
            "line",
            "what kind of text it is",
            choices=("auto", "verse", "signature", "prose"),
        ),
        Field("translation", "text", "the cataloguer's own translation"),
        REMARKS,
        Field("plate", "table", PLATE.about, table=PLATE),
        Field("column", "tables", COLUMN.about, table=COLUMN, attribute="columns"),
        Field("box", "tables", BOX.about, table=BOX, attribute="boxes"),
        Field("photograph", "tables", PHOTOGRAPH.about, table=PHOTOGRAPH, attribute="photographs"),
        IMAGES,
        Field("takes_room", "tables", TAKES_ROOM.about, table=TAKES_ROOM),
        Field("source", "sources", SOURCE.about, table=SOURCE),
        Field("reading", "tables", READING.about, table=READING, attribute="readers"),
        Field("override", "tables", OVERRIDE.about, table=OVERRIDE, attribute="overrides"),
        Field("passage", "tables", PASSAGE.about, table=PASSAGE, attribute="passages"),
        Field("decision", "tables", DECISION.about, table=DECISION, attribute="decisions"),
    ),
    model.Inscription,
)
IMPORTED = RecordTable(
    "imported",
    "the row of an older list that the record was made from; inscribe import compares it",
    (
        Field("list", "line", "the list's file name", required=True, attribute="source_list"),
        Field("row", "sign", "the row, counted from 1 with the headings"),
        Field("cells", "cells", "every cell of the row as it stood, each with its heading"),
    ),
    model.Imported,
)
RECORD = RecordTable(
    "record",
    "one object of a collection",
    (
        Field("id", "line", "the object's number in the collection", required=True),
        Field("kind", "line", "the kind of fitting", required=True, vocabulary="kind"),
        Field("title", "line", "a short name of the object"),
        Field(
            "state",
            "line",
            "how far the work on it is",
            choices=get_args(model.State),
            defaults=False,
        ),
        Field("drawer", "line", "the drawer it lies in"),
        Field("box", "line", "the box it lies in, in the drawer or elsewhere"),
        Field("with_whom", "line", "who has it at present"),
        REMARKS,
        Field("measurements", "table", MEASUREMENTS.about, table=MEASUREMENTS),
        Field("maker", "table", MAKER.about, table=MAKER),
        IMAGES,
        Field(
            "inscription",
            "tables",
            INSCRIPTION.about,
            required=True,
            table=INSCRIPTION,
            attribute="inscriptions",
        ),
        Field("imported", "table", IMPORTED.about, table=IMPORTED),
        Field("version", "version", "the version of these keys, 1 where it is not said"),
    ),
    model.Record,
)
