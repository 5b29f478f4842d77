"""Records: one TOML file for one object, its inscriptions, their sources and their readings.

``record/revising.py`` makes a file say what a ``Record`` says, with tomlkit: commands that change
records make a new ``Record`` and hand it there, and ``settling/history.py`` writes it
(``.NAME.toml.history`` beside the record first, then the record; the marks in it tell a change
that was stopped between the two). ``record/moving.py`` puts signs into a text and moves what
counts signs.

``record/fields.py`` names every key once (``describing.py``: what is said of one). A new key: one
``Field`` there, one attribute in ``model.py`` (``measured.py`` where it is in mm), then a law, a
case and an example. Signs and columns count from 1 in files and from 0 in code. ``locate.py`` finds
the line of a key, only when there is a problem to place.

>>> from inscribe.record import loads
>>> record = loads('''
... id = "DEMO-000"
... kind = "tsuba"
... [[inscription]]
... place = "front, right of the opening"
... text = "武州住"
... ''')
>>> record.inscriptions[0].transcription.text
'武州住'
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.record.amending import with_measurements as with_measurements
    from inscribe.record.boxed_columns import (
        measured_column as measured_column,
        partly_boxed as partly_boxed,
        reckoned_column as reckoned_column,
    )
    from inscribe.record.boxes import (
        read_boxes as read_boxes,
        remarks as remarks,
        with_boxes as with_boxes,
    )
    from inscribe.record.dated import dates_of as dates_of
    from inscribe.record.describing import (
        MAX_LINE as MAX_LINE,
        MAX_MM as MAX_MM,
        MAX_TEXT as MAX_TEXT,
        Field as Field,
        RecordTable as RecordTable,
    )
    from inscribe.record.fields import RECORD as RECORD
    from inscribe.record.inside import PictureFile as PictureFile, picture_file as picture_file
    from inscribe.record.loader import (
        ENDLESS_KEY as ENDLESS_KEY,
        load as load,
        loads as loads,
        paths_in as paths_in,
    )
    from inscribe.record.locate import Locator as Locator
    from inscribe.record.measured import (
        ColumnMeasure as ColumnMeasure,
        Measurements as Measurements,
        Obstacle as Obstacle,
        Photograph as Photograph,
        Plate as Plate,
        SignBox as SignBox,
    )
    from inscribe.record.model import (
        CopiedText as CopiedText,
        Decision as Decision,
        Imported as Imported,
        Inscription as Inscription,
        Maker as Maker,
        Override as Override,
        Reader as Reader,
        Record as Record,
        RecordImage as RecordImage,
        SettledPassage as SettledPassage,
        State as State,
    )
    from inscribe.record.moving import mended as mended, with_signs as with_signs
    from inscribe.record.revising import revised as revised
    from inscribe.record.schema import record_schema as record_schema
    from inscribe.record.settled import (
        SettledName as SettledName,
        as_settled as as_settled,
        settled_beside as settled_beside,
        settled_in as settled_in,
        settled_names as settled_names,
    )
    from inscribe.record.surveying import Survey as Survey, survey as survey
    from inscribe.record.tei import records_of_tei as records_of_tei
    from inscribe.record.values import FORBIDDEN as FORBIDDEN
    from inscribe.record.vocabulary import suggested as suggested
    from inscribe.record.writer import basic_string as basic_string, dump as dump
else:
    __getattr__ = late.door(
        __name__,
        {
            "amending": "with_measurements",
            "boxed_columns": "measured_column partly_boxed reckoned_column",
            "boxes": "read_boxes remarks with_boxes",
            "dated": "dates_of",
            "describing": "Field MAX_LINE MAX_MM MAX_TEXT RecordTable",
            "fields": "RECORD",
            "inside": "PictureFile picture_file",
            "loader": "ENDLESS_KEY load loads paths_in",
            "locate": "Locator",
            "measured": "ColumnMeasure Measurements Obstacle Photograph Plate SignBox",
            "model": (
                "CopiedText Decision Imported Inscription Maker Override Reader Record "
                "RecordImage SettledPassage State"
            ),
            "moving": "mended with_signs",
            "revising": "revised",
            "schema": "record_schema",
            "settled": "SettledName as_settled settled_beside settled_in settled_names",
            "surveying": "Survey survey",
            "tei": "records_of_tei",
            "values": "FORBIDDEN",
            "vocabulary": "suggested",
            "writer": "basic_string dump",
        },
    )
