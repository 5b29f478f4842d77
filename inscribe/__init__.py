"""Record, read and collate the inscriptions on Japanese sword fittings.

The library does what the commands do. Each name below is imported when it is first used:

>>> import inscribe
>>> inscribe.read_text("於東都應需造之").proposals[0].romaji
'Tōto ni oite motome ni ōjite kore o tsukuru'
>>> inscribe.resolve_date("嘉永六年癸丑仲秋").year
1853
>>> inscribe.collate_texts("夢の浮橋", "ゆめのうきはし").is_faithful_in_wording
True
>>> inscribe.render(inscribe.parse("花の色□"), "leiden")
'花の色.'
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

__version__ = "0.1.0"

if TYPE_CHECKING:
    from inscribe.checking import check_folder
    from inscribe.collation import collate, collate_texts
    from inscribe.dates import find as find_dates, resolve as resolve_date
    from inscribe.descriptions import add_glossary
    from inscribe.entry import entries_in, entry_of
    from inscribe.errors import InscribeError
    from inscribe.forms import normalise, normalise_text, relation
    from inscribe.notation import parse, render
    from inscribe.reading import read, read_text
    from inscribe.reading.names import readings as name_readings
    from inscribe.record import dump as dump_record, load as load_record, records_of_tei
    from inscribe.report import Style, load as load_style
    from inscribe.report.drawing import plate_drawing
    from inscribe.report.entries import (
        entries_as_annotations,
        entries_as_csv,
        entries_as_docx,
        entries_as_json,
        entry_as_markdown,
    )
    from inscribe.report.lido import entries_as_lido
    from inscribe.report.pages import entries_as_html
    from inscribe.report.tei import entries_as_tei
    from inscribe.sources import Library, find as find_source

_HOMES = {
    "InscribeError": "inscribe.errors",
    "Library": "inscribe.sources.library",
    "Style": "inscribe.report.style",
    "add_glossary": "inscribe.descriptions",
    "check_folder": "inscribe.checking",
    "collate": "inscribe.collation",
    "collate_texts": "inscribe.collation",
    "dump_record": "inscribe.record:dump",
    "entries_as_annotations": "inscribe.report.entries.annotation",
    "entries_as_csv": "inscribe.report.entries.table",
    "entries_as_docx": "inscribe.report.entries.docx",
    "entries_as_html": "inscribe.report.pages.entry",
    "entries_as_json": "inscribe.report.entries.as_json",
    "entries_as_lido": "inscribe.report.lido.entry",
    "entries_as_tei": "inscribe.report.tei.entry",
    "entries_in": "inscribe.entry",
    "entry_as_markdown": "inscribe.report.entries.markdown",
    "entry_of": "inscribe.entry",
    "find_dates": "inscribe.dates:find",
    "find_source": "inscribe.sources.ranking:find",
    "load_record": "inscribe.record:load",
    "load_style": "inscribe.report.style:load",
    "name_readings": "inscribe.reading.names.ranking:readings",
    "normalise": "inscribe.forms",
    "normalise_text": "inscribe.forms",
    "parse": "inscribe.notation",
    "plate_drawing": "inscribe.report.drawing.plate",
    "read": "inscribe.reading",
    "read_text": "inscribe.reading",
    "records_of_tei": "inscribe.record.tei",
    "relation": "inscribe.forms.relations",
    "render": "inscribe.notation",
    "resolve_date": "inscribe.dates:resolve",
}

__all__ = [
    "InscribeError",
    "Library",
    "Style",
    "add_glossary",
    "check_folder",
    "collate",
    "collate_texts",
    "dump_record",
    "entries_as_annotations",
    "entries_as_csv",
    "entries_as_docx",
    "entries_as_html",
    "entries_as_json",
    "entries_as_lido",
    "entries_as_tei",
    "entries_in",
    "entry_as_markdown",
    "entry_of",
    "find_dates",
    "find_source",
    "load_record",
    "load_style",
    "name_readings",
    "normalise",
    "normalise_text",
    "parse",
    "plate_drawing",
    "read",
    "read_text",
    "records_of_tei",
    "relation",
    "render",
    "resolve_date",
]

if not TYPE_CHECKING:
    __getattr__ = late.names(__name__, _HOMES)


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
