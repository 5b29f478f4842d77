"""What was made of each record of a folder, kept from one run to the next.

Whatever a command makes of a record by itself (what it says, what is the matter with it, its
entry) depends on the record, the program and the tables alone. It is made once, on all cores, and
kept in the cache; a later run makes anew only what changed. In reading order: ``marks`` (what
tells that something has changed), ``store`` (the file in the cache), ``each`` (record by record),
``settled`` (names settled in one record, read so in all).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.keeping.each import Work as Work, each_record as each_record
    from inscribe.keeping.marks import (
        FileMark as FileMark,
        mark_of as mark_of,
        mark_of_all as mark_of_all,
    )
    from inscribe.keeping.settled import names_settled as names_settled
    from inscribe.keeping.store import (
        Kept as Kept,
        KeptValue as KeptValue,
        Store as Store,
        open_store as open_store,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "each": "Work each_record",
            "marks": "FileMark mark_of mark_of_all",
            "settled": "names_settled",
            "store": "Kept KeptValue Store open_store",
        },
    )
