"""Records out of the TEI documents that this program writes.

``edition`` (the signs), ``pictures``, ``documents`` (whole records), ``beside`` (what no
element tells), ``unchanged`` (what of it is kept where somebody changed the elements).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.record.tei.beside import add_record as add_record, published as published
    from inscribe.record.tei.documents import records_of_tei as records_of_tei
else:
    __getattr__ = late.door(
        __name__,
        {
            "beside": "add_record published",
            "documents": "records_of_tei",
        },
    )
