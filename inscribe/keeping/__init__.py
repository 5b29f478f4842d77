"""What was made of each record of a folder, kept from one run to the next.

Whatever a command makes of a record by itself (what it says, what is the matter with it, its
entry) depends on the record, the program and the tables alone. It is made once, on all cores, and
kept in the cache; a later run makes anew only what changed. In reading order: ``marks`` (what
tells that something has changed), ``store`` (the file in the cache), ``each`` (record by record),
``together`` (what was made of all of them), ``settled`` (names settled in one record, read so in
all).

What a command makes of one record by itself (its documents, the findings of a check, its entry in a
format) is made once, on all cores, and kept: ``keeping/each.py`` is a stream over the records of a
folder, in their order, a batch at a time; ``keeping/store.py`` the file in the cache, one SQLite
file a folder. A value is used again while the record's file has the same size and time (or the same
content), the files beside it that it reads are the same, and program, tables and whatever
``Work.of`` names (a style) are, and, where the record names a text by its id, the library. New
per-record work: a ``Work`` with a function from path to plain data. What is made of all records
together (``checking/across.py``: birth years, one object twice, other words) is kept as long as
none of them changes; two wordings that were compared are compared once.

Growth, measured with ``tests/benchmarks/drawers.py`` (20,000 generated records with 28,973 texts,
26,820 of them unlike each other, two idle cores), by the clock, cold, warm and with one record
changed: ``check`` 48.8 s, 1.3 and 10.8 (a thousand wordings are held against each other in each
run) and at most 316 MiB a process; ``index`` 38.2, 1.7 and 4.3, 307 MiB; ``concord`` of a word
36.3, 1.1 and 1.2, 306 MiB; ``entry --format md`` 77.2 (a minute is wanted), 1.4 and 1.6, 401 MiB; a
page each 84.9, 3.4 and 3.5, 411 MiB. Of an entry a poem with a worn sign costs most. In steps of
Python, which no load changes, a record takes 10,700 calls for a check and 15,900 for an entry.
The dictionaries are compiled in processes of their own, of at most
477 MiB. A run stopped by Ctrl-C or killed keeps what it had finished, and the next goes on.
``entry`` is a stream in csv and md as in html, json and lido, and into a folder tei, annotation,
linked, handout and slides. All entries at once are held by docx, pdf, svg, iiif, a site, and
several in one tei, annotation or linked document: of them, a drawer at a time. What else grows is
the memory of what holds all documents (``--clusters``, ``--translations``, the comparison of
records): some 9 KiB an inscription, so that about 35,000 records reach 500 MiB. There the searching
would have to go to where the rows lie: a table of sounds and names beside ``made`` in the same
SQLite file, asked by SQL; a server of its own is not needed before many people write at once, for
the records stay files.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.keeping.each import Work as Work, each_record as each_record
    from inscribe.keeping.marks import (
        FileMark as FileMark,
        library_marks as library_marks,
        made_by as made_by,
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
    from inscribe.keeping.together import (
        made_together as made_together,
        mark_of_every as mark_of_every,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "each": "Work each_record",
            "marks": "FileMark library_marks made_by mark_of mark_of_all",
            "settled": "names_settled",
            "store": "Kept KeptValue Store open_store",
            "together": "made_together mark_of_every",
        },
    )
