"""What a record file may say: one description for loader, writer and schema.

``describing`` (how a key is described), ``keys`` (every key, once), ``values`` (a value held
against its field), ``vocabulary`` (suggested words), ``schema`` (the JSON Schema).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.record.fields.describing import (
        MAX_LINE as MAX_LINE,
        MAX_MM as MAX_MM,
        MAX_TEXT as MAX_TEXT,
        Field as Field,
        RecordTable as RecordTable,
    )
    from inscribe.record.fields.keys import (
        BOX as BOX,
        COLUMN as COLUMN,
        PLATE as PLATE,
        RECORD as RECORD,
    )
    from inscribe.record.fields.pictures import PHOTOGRAPH as PHOTOGRAPH
    from inscribe.record.fields.schema import record_schema as record_schema
    from inscribe.record.fields.values import (
        FORBIDDEN as FORBIDDEN,
        ValueRefused as ValueRefused,
        checked as checked,
    )
    from inscribe.record.fields.vocabulary import suggested as suggested
else:
    __getattr__ = late.door(
        __name__,
        {
            "describing": "Field MAX_LINE MAX_MM MAX_TEXT RecordTable",
            "keys": "BOX COLUMN PLATE RECORD",
            "pictures": "PHOTOGRAPH",
            "schema": "record_schema",
            "values": "FORBIDDEN ValueRefused checked",
            "vocabulary": "suggested",
        },
    )
