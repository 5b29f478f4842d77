"""The files that entries of many records become.

``formats`` (which there are, and what makes them), ``printing`` (PDF, by a browser), ``files``
(named before any is written, none of others written over), ``stream`` (written as they are made),
``site``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.cli.entries.files import (
        encoded as encoded,
        file_names as file_names,
        is_written as is_written,
        refuse_others as refuse_others,
        write_file as write_file,
    )
    from inscribe.cli.entries.formats import (
        ENDINGS as ENDINGS,
        documents as documents,
        format_of as format_of,
    )
    from inscribe.cli.entries.site import write_site as write_site
    from inscribe.cli.entries.stream import EntryStream as EntryStream
else:
    __getattr__ = late.door(
        __name__,
        {
            "files": "encoded file_names is_written refuse_others write_file",
            "formats": "ENDINGS documents format_of",
            "site": "write_site",
            "stream": "EntryStream",
        },
    )
