"""Record, read and collate the inscriptions on Japanese sword fittings.

The library does what the commands do. Functions return frozen values; ``to_dict()`` of a result is
what the command prints with ``--format json`` (:func:`schema_of` describes it), and a notebook
shows collations, readings, records, entries and dates as tables. A path may be a string or a
``Path``; ``library`` is an open :class:`Library`, or the path of its file. Whatever is wrong with
what was given is raised as an :class:`InscribeError`, which says where, and what to do. Each name
below is imported when it is first used:

>>> import inscribe
>>> inscribe.read_text("於東都應需造之").proposals[0].romaji
'Tōto ni oite motome ni ōjite kore o tsukuru'
>>> inscribe.resolve_date("嘉永六年癸丑仲秋").year
1853
>>> inscribe.collate_texts("夢の浮橋", "ゆめのうきはし").is_faithful_in_wording
True
>>> inscribe.render(inscribe.parse("花の色□"), "leiden")
'花の色.'
>>> inscribe.look_up_sign("舩").current, inscribe.look_up_name("嶺暁").readings[0].romaji
('船', 'Reigyō')
>>> inscribe.restore(inscribe.parse("武州□綾国作")).lacunae[0].candidates[0].text
'住'
>>> inscribe.read_text("露岳刻之", "poem")
Traceback (most recent call last):
inscribe.errors.InputError: there is no register 'poem'; use one of: auto, verse, signature, prose
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

__version__ = "0.1.0"

if TYPE_CHECKING:
    from inscribe.cautions import caution
    from inscribe.checking import Checked, Finding, check_folder
    from inscribe.collation import (
        Collation,
        Fidelity,
        Group,
        SpaceAccount,
        Testimony,
        WitnessSource,
        collate,
        collate_texts,
        testimony,
    )
    from inscribe.concordance import (
        Clusters,
        Collection,
        Concordance,
        Occurrence,
        clustered,
        collection,
        concord,
    )
    from inscribe.dates import (
        Comparison,
        DateReading,
        compared as compare_dates,
        find as find_dates,
        resolve as resolve_date,
    )
    from inscribe.descriptions import add_glossary
    from inscribe.entry import Entry, InscriptionEntry, entries_in, entry_of
    from inscribe.errors import InputError, InscribeError, NotationError, RecordError
    from inscribe.forms import (
        Change,
        Description,
        NormalText,
        describe as look_up_sign,
        normalise,
        normalise_text,
        relation,
    )
    from inscribe.keys import schema_of
    from inscribe.notation import parse, render
    from inscribe.reading import (
        Doubt,
        Interpretation,
        Passage,
        Proposal,
        SignaturePart,
        Token,
        read,
        read_text,
    )
    from inscribe.reading.names import NameReading, readings as name_readings
    from inscribe.reading.signatures import NameLookUp, look_up as look_up_name
    from inscribe.record import (
        Inscription,
        Record,
        dates_of as dates_of_record,
        dump as dump_record,
        load as load_record,
        record_schema,
        records_of_tei,
    )
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
    from inscribe.restoring import Candidate, Lacuna, Restoration, Seen, restore
    from inscribe.signs import Sign, Transcription, transcription
    from inscribe.sources import Hit, Library, SourceText, add_texts, find as find_source

# Where each name is found; after a colon, what it is called there.
_ROOMS = {
    "inscribe.cautions": "caution",
    "inscribe.checking": "Checked Finding check_folder",
    "inscribe.collation": (
        "Collation Fidelity Group SpaceAccount Testimony WitnessSource collate "
        "collate_texts testimony"
    ),
    "inscribe.concordance": (
        "Clusters Collection Concordance Occurrence clustered collection concord"
    ),
    "inscribe.dates": "Comparison DateReading",
    "inscribe.dates:compared": "compare_dates",
    "inscribe.dates:find": "find_dates",
    "inscribe.dates:resolve": "resolve_date",
    "inscribe.descriptions": "add_glossary",
    "inscribe.entry": "Entry InscriptionEntry entries_in entry_of",
    "inscribe.errors": "InputError InscribeError NotationError RecordError",
    "inscribe.forms": "Change Description NormalText normalise normalise_text relation",
    "inscribe.forms:describe": "look_up_sign",
    "inscribe.keys": "schema_of",
    "inscribe.notation": "parse render",
    "inscribe.reading": "Doubt Interpretation Passage Proposal SignaturePart Token read read_text",
    "inscribe.reading.names": "NameReading",
    "inscribe.reading.names:readings": "name_readings",
    "inscribe.reading.signatures": "NameLookUp",
    "inscribe.reading.signatures:look_up": "look_up_name",
    "inscribe.record": "Inscription Record record_schema records_of_tei",
    "inscribe.record:dates_of": "dates_of_record",
    "inscribe.record:dump": "dump_record",
    "inscribe.record:load": "load_record",
    "inscribe.report": "Style",
    "inscribe.report.drawing": "plate_drawing",
    "inscribe.report.entries": (
        "entries_as_annotations entries_as_csv entries_as_docx entries_as_json entry_as_markdown"
    ),
    "inscribe.report.lido": "entries_as_lido",
    "inscribe.report.pages": "entries_as_html",
    "inscribe.report.tei": "entries_as_tei",
    "inscribe.report:load": "load_style",
    "inscribe.restoring": "Candidate Lacuna Restoration Seen restore",
    "inscribe.signs": "Sign Transcription transcription",
    "inscribe.sources": "Hit Library SourceText add_texts",
    "inscribe.sources:find": "find_source",
}

__all__ = [
    "Candidate",
    "Change",
    "Checked",
    "Clusters",
    "Collation",
    "Collection",
    "Comparison",
    "Concordance",
    "DateReading",
    "Description",
    "Doubt",
    "Entry",
    "Fidelity",
    "Finding",
    "Group",
    "Hit",
    "InputError",
    "InscribeError",
    "Inscription",
    "InscriptionEntry",
    "Interpretation",
    "Lacuna",
    "Library",
    "NameLookUp",
    "NameReading",
    "NormalText",
    "NotationError",
    "Occurrence",
    "Passage",
    "Proposal",
    "Record",
    "RecordError",
    "Restoration",
    "Seen",
    "Sign",
    "SignaturePart",
    "SourceText",
    "SpaceAccount",
    "Style",
    "Testimony",
    "Token",
    "Transcription",
    "WitnessSource",
    "add_glossary",
    "add_texts",
    "caution",
    "check_folder",
    "clustered",
    "collate",
    "collate_texts",
    "collection",
    "compare_dates",
    "concord",
    "dates_of_record",
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
    "look_up_name",
    "look_up_sign",
    "name_readings",
    "normalise",
    "normalise_text",
    "parse",
    "plate_drawing",
    "read",
    "read_text",
    "record_schema",
    "records_of_tei",
    "relation",
    "render",
    "resolve_date",
    "restore",
    "schema_of",
    "testimony",
    "transcription",
]

if not TYPE_CHECKING:
    __getattr__ = late.names(
        __name__, {name: home for home, names in _ROOMS.items() for name in names.split()}
    )


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
