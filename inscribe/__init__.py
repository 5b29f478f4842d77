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

from importlib import import_module
from typing import TYPE_CHECKING, Any

__version__ = "0.1.0"

if TYPE_CHECKING:
    from inscribe.checking import check_folder
    from inscribe.collate import collate, collate_texts
    from inscribe.dates import find as find_dates
    from inscribe.dates import resolve as resolve_date
    from inscribe.entry import entry_of
    from inscribe.errors import InscribeError
    from inscribe.forms import normalise, normalise_text
    from inscribe.forms.relation import relation
    from inscribe.notation import parse, render
    from inscribe.reading import read, read_text
    from inscribe.reading.names import readings as name_readings
    from inscribe.record import dump as dump_record
    from inscribe.record import load as load_record
    from inscribe.sources.find import find as find_source
    from inscribe.sources.library import Library
    from inscribe.tables import add_folder as add_glossary

_HOMES = {
    "InscribeError": ("inscribe.errors", "InscribeError"),
    "Library": ("inscribe.sources.library", "Library"),
    "add_glossary": ("inscribe.tables", "add_folder"),
    "check_folder": ("inscribe.checking", "check_folder"),
    "collate": ("inscribe.collate", "collate"),
    "collate_texts": ("inscribe.collate", "collate_texts"),
    "dump_record": ("inscribe.record", "dump"),
    "entry_of": ("inscribe.entry", "entry_of"),
    "find_dates": ("inscribe.dates", "find"),
    "find_source": ("inscribe.sources.find", "find"),
    "load_record": ("inscribe.record", "load"),
    "name_readings": ("inscribe.reading.names", "readings"),
    "normalise": ("inscribe.forms", "normalise"),
    "normalise_text": ("inscribe.forms", "normalise_text"),
    "parse": ("inscribe.notation", "parse"),
    "read": ("inscribe.reading", "read"),
    "read_text": ("inscribe.reading", "read_text"),
    "relation": ("inscribe.forms", "relation"),
    "render": ("inscribe.notation", "render"),
    "resolve_date": ("inscribe.dates", "resolve"),
}

__all__ = [
    "InscribeError",
    "Library",
    "add_glossary",
    "check_folder",
    "collate",
    "collate_texts",
    "dump_record",
    "entry_of",
    "find_dates",
    "find_source",
    "load_record",
    "name_readings",
    "normalise",
    "normalise_text",
    "parse",
    "read",
    "read_text",
    "relation",
    "render",
    "resolve_date",
]


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    module, attribute = _HOMES[name]
    return getattr(import_module(module), attribute)
