"""The glossary: plain tab-separated tables that hold what the program knows.

A table is a UTF-8 file ``NAME.tsv`` in a folder of its subject: one line of column names, then a
row a line; lines that start with ``#`` are remarks, and the values of a cell that holds several are
separated by ``;``. ``glossary/tables.toml`` says what each table is, and what its cells may hold.
The packaged tables lie in ``glossary/`` and are held to that description by the tests; a user adds
rows in folders of his own (``--glossary FOLDER``), which are checked when they are named
(:mod:`inscribe.descriptions`), come first, and so win over the packaged ones.

In reading order: ``glossary_folders`` (where tables lie; what is kept of them until that changes),
``reading`` (rows), ``large`` (tables of which only what is asked for is taken apart).

>>> from inscribe import tables
>>> [row["value"] for row in tables.rows("numbers") if row["written"] in "廿壱"]
['1', '20']
>>> tables.listed("つくる;さくす"), tables.listed("")
(('つくる', 'さくす'), ())
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.tables.glossary_folders import (
        PACKAGED as PACKAGED,
        add_folder as add_folder,
        cached as cached,
        files as files,
        files_about as files_about,
        folders as folders,
        forget as forget,
        has_own as has_own,
        remove_folder as remove_folder,
        subjects as subjects,
        tables_in as tables_in,
    )
    from inscribe.tables.large import Rows as Rows, Search as Search, Sorted as Sorted
    from inscribe.tables.reading import (
        SEPARATOR as SEPARATOR,
        Row as Row,
        first_cells as first_cells,
        lines_of as lines_of,
        listed as listed,
        rows as rows,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "glossary_folders": (
                "PACKAGED add_folder cached files files_about folders forget has_own "
                "remove_folder subjects tables_in"
            ),
            "large": "Rows Search Sorted",
            "reading": "Row SEPARATOR first_cells lines_of listed rows",
        },
    )
