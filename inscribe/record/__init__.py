"""Records: one TOML file for one object, its inscriptions, their sources and their readings.

``writing/revising.py`` makes a file say what a ``Record`` says, with tomlkit: commands that change
records make a new ``Record`` and hand it there, and ``settling/history.py`` writes it
(``.NAME.toml.history`` beside the record first, then the record; the marks in it tell a change
that was stopped between the two). ``writing/moving.py`` puts signs into a text and moves what
counts signs.

``fields/keys.py`` names every key once (``fields/describing.py``: what is said of one). A new
key: one ``Field`` there, one attribute in ``model/objects.py`` (``model/measured.py`` where it is
in mm), then a law, a case and an example. Signs and columns count from 1 in files and from 0 in
code. ``reading/locate.py`` finds the line of a key, only when there is a problem to place.

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
    from inscribe.record.boxes import (
        iiif_problem as iiif_problem,
        measured_column as measured_column,
        partly_boxed as partly_boxed,
        place_of_annotation as place_of_annotation,
        read_boxes as read_boxes,
        reckoned_column as reckoned_column,
        remarks as remarks,
        with_boxes as with_boxes,
    )
    from inscribe.record.dated import dates_of as dates_of
    from inscribe.record.fields import (
        FORBIDDEN as FORBIDDEN,
        MAX_LINE as MAX_LINE,
        MAX_MM as MAX_MM,
        MAX_TEXT as MAX_TEXT,
        RECORD as RECORD,
        Field as Field,
        RecordTable as RecordTable,
        record_schema as record_schema,
        suggested as suggested,
    )
    from inscribe.record.model import (
        ColumnMeasure as ColumnMeasure,
        CopiedText as CopiedText,
        Decision as Decision,
        Imported as Imported,
        Inscription as Inscription,
        Maker as Maker,
        Measurements as Measurements,
        Obstacle as Obstacle,
        Override as Override,
        Photograph as Photograph,
        Plate as Plate,
        Reader as Reader,
        Record as Record,
        RecordImage as RecordImage,
        SettledPassage as SettledPassage,
        SignBox as SignBox,
        State as State,
    )
    from inscribe.record.reading import (
        ENDLESS_KEY as ENDLESS_KEY,
        Locator as Locator,
        PictureFile as PictureFile,
        SettledName as SettledName,
        Survey as Survey,
        as_settled as as_settled,
        load as load,
        loads as loads,
        paths_in as paths_in,
        picture_file as picture_file,
        settled_beside as settled_beside,
        settled_in as settled_in,
        settled_names as settled_names,
        survey as survey,
    )
    from inscribe.record.tei import (
        add_record as add_record,
        published as published,
        records_of_tei as records_of_tei,
    )
    from inscribe.record.writing import (
        basic_string as basic_string,
        dump as dump,
        mended as mended,
        revised as revised,
        with_measurements as with_measurements,
        with_signs as with_signs,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "boxes": (
                "iiif_problem measured_column partly_boxed place_of_annotation read_boxes "
                "reckoned_column remarks with_boxes"
            ),
            "dated": "dates_of",
            "fields": (
                "FORBIDDEN Field MAX_LINE MAX_MM MAX_TEXT RECORD RecordTable "
                "record_schema suggested"
            ),
            "model": (
                "ColumnMeasure CopiedText Decision Imported Inscription Maker "
                "Measurements Obstacle Override Photograph Plate Reader Record "
                "RecordImage SettledPassage SignBox State"
            ),
            "reading": (
                "ENDLESS_KEY Locator PictureFile SettledName Survey as_settled load "
                "loads paths_in picture_file settled_beside settled_in settled_names "
                "survey"
            ),
            "tei": "add_record published records_of_tei",
            "writing": "basic_string dump mended revised with_measurements with_signs",
        },
    )
