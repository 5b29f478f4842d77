"""Records: one TOML file for one object, its inscriptions, their sources and their readings.

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

from inscribe.late import names
from inscribe.record.loader import load, loads, paths_in
from inscribe.record.model import (
    ColumnMeasure,
    Inscription,
    Maker,
    Measurements,
    Override,
    Photograph,
    Plate,
    Reader,
    Record,
    SignBox,
    SourceText,
)

if TYPE_CHECKING:
    from inscribe.record.writer import dump

__all__ = [
    "ColumnMeasure",
    "Inscription",
    "Maker",
    "Measurements",
    "Override",
    "Photograph",
    "Plate",
    "Reader",
    "Record",
    "SignBox",
    "SourceText",
    "dump",
    "load",
    "loads",
    "paths_in",
]

__getattr__ = names(__name__, {"dump": "inscribe.record.writer"})
