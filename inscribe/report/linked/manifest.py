"""An entry as a manifest of IIIF Presentation 3: a canvas an inscription, signs as annotations.

Addresses are made from the style's ``address``, under which the files are to be published. A canvas
is the inscription's first picture, or the part of it whose size is known (``painting``); without
one it is the plate at ``PIXELS_PER_MM``, with the signs where they were measured and nothing
painted on it. After these stand the other pictures, of the object and of what was copied, each on a
canvas of its own; one of which no size is known is linked. Source: the IIIF Presentation API 3.0.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from inscribe import notation
from inscribe.record import RecordImage, measured_column
from inscribe.report.entries import date_text
from inscribe.report.linked.painting import Painting, painted, painting_of, whole
from inscribe.signs import Box, Transcription

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.report import Style
    from inscribe.signs import Sign

CONTEXT = "http://iiif.io/api/presentation/3/context.json"
# Whose terms are web addresses that the API allows for rights.
RIGHTS = ("http://creativecommons.org/", "http://rightsstatements.org/")

Json = dict[str, Any]


def entry_as_manifest(entry: Entry, style: Style) -> str:
    """Return the manifest of an entry, as JSON."""
    record = entry.record
    base = f"{style.address.rstrip('/')}/{quote(record.id, safe='')}"
    made: Json = {
        "@context": CONTEXT,
        "id": f"{base}/manifest.json",
        "type": "Manifest",
        "label": {"none": [" ".join(filter(None, (record.id, record.title)))]},
        "metadata": list(_metadata(entry, style)),
        "items": [
            _canvas(entry, each, f"{base}/canvas/{number}", style)
            for number, each in enumerate(entry.inscriptions, start=1)
        ],
    }
    _add_others(made, entry, base, style)
    if record.remarks.strip():
        made["summary"] = {style.language: [record.remarks.strip()]}
    said = [style.institution, *dict.fromkeys(image.credit for image in _images(entry))]
    if credits := list(filter(None, said)):
        label = {style.labels: [style.label("credit")]}
        made["requiredStatement"] = {"label": label, "value": {"none": credits}}
    if style.rights.startswith(RIGHTS):
        made["rights"] = style.rights
    return notation.written_out(json.dumps(made, ensure_ascii=False, indent=2))


def _images(entry: Entry) -> Iterator[RecordImage]:
    for each in entry.inscriptions:
        yield from each.inscription.images[:1]
    for _, image in _others(entry):
        yield image


def _others(entry: Entry) -> Iterator[tuple[str, RecordImage]]:
    """Yield the pictures that are on no inscription's canvas, each behind the label's key."""
    yield from (("image:object", image) for image in entry.record.images)
    for each in entry.inscriptions:
        yield from (("image:inscription", image) for image in each.inscription.images[1:])
        for source in each.inscription.sources:
            yield from (("image:source", image) for image in source.images)


def _add_others(made: Json, entry: Entry, base: str, style: Style) -> None:
    """Add a canvas for each other picture; one that is not known well enough is linked."""
    for key, image in _others(entry):
        said = style.language if image.shows else style.labels
        label = {said: [image.shows or style.label(key)]}
        if shown := painted(image, None, entry.folder, style.address):
            canvas = f"{base}/canvas/{len(made['items']) + 1}"
            made["items"].append(_shown(shown, canvas, label))
        elif image.iiif:
            made.setdefault("rendering", []).append(whole(image) | {"label": label})


def _metadata(entry: Entry, style: Style) -> Iterator[Json]:
    """Yield labels and what stands against them, as a viewer lists them."""

    def pair(key: str, said: str, language: str) -> Json:
        return {"label": {style.labels: [style.label(key)]}, "value": {language: [said]}}

    yield pair("kind", style.word("kind", entry.record.kind), style.labels)
    for each in entry.inscriptions:
        found = each.interpretation
        yield pair("carved", notation.print_out(each.inscription.transcription), "ja")
        if each.reading.romaji:
            yield pair("romaji", each.reading.romaji, "ja-Latn")
        if each.inscription.translation.strip():
            yield pair("translation", each.inscription.translation.strip(), style.language)
        for date in found.dates:
            yield pair("date", f"{date.text} {date_text(date, style)}", style.labels)


def _canvas(entry: Entry, each: InscriptionEntry, canvas: str, style: Style) -> Json:
    inscription = each.inscription
    image = next(iter(inscription.images), None)
    shown = painting_of(image, each, entry.folder, style.address)
    made = _shown(shown, canvas, {style.labels: [style.word("place", inscription.place)]})
    if not shown.body and image and image.iiif:
        label = {style.labels: [style.label("image:inscription")]}
        made["rendering"] = [whole(image) | {"label": label}]
    pages = [
        _page(f"{canvas}/text", list(_texts(each, canvas, style))),
        _page(f"{canvas}/columns", list(_columns(each, canvas, shown))),
        _page(f"{canvas}/signs", list(_signs(inscription.transcription, canvas, shown))),
        _page(f"{canvas}/plate", list(_plate(each, canvas, shown))),
    ]
    made["annotations"] = [page for page in pages if page["items"]]
    return made


def _shown(shown: Painting, canvas: str, label: Json) -> Json:
    """Return a canvas with what is painted on it."""
    size = {"width": shown.width, "height": shown.height}
    made: Json = {"id": canvas, "type": "Canvas", "label": label} | size
    if shown.body:
        painting = {
            "id": f"{canvas}/painting/1",
            "type": "Annotation",
            "motivation": "painting",
            "body": shown.body,
            "target": canvas,
        }
        made["items"] = [_page(f"{canvas}/painting", [painting])]
    return made


def _page(name: str, items: list[Json]) -> Json:
    return {"id": name, "type": "AnnotationPage", "items": items}


def _annotation(name: str, value: str, language: str, target: str) -> Json:
    return {
        "id": name,
        "type": "Annotation",
        "motivation": "supplementing",
        "body": {
            "type": "TextualBody",
            "value": value,
            "language": language,
            "format": "text/plain",
        },
        "target": target,
    }


def _texts(each: InscriptionEntry, canvas: str, style: Style) -> Iterator[Json]:
    """Yield the inscription, its reading and its translation, of the canvas as a whole."""
    said = (
        (notation.print_out(each.inscription.transcription, column_end="\n"), "ja"),
        (each.reading.romaji, "ja-Latn"),
        (each.inscription.translation.strip(), style.language),
    )
    for number, (value, language) in enumerate(said, start=1):
        if value:
            yield _annotation(f"{canvas}/text/{number}", value, language, canvas)


def _columns(each: InscriptionEntry, canvas: str, shown: Painting) -> Iterator[Json]:
    """Yield each column whose place is measured."""
    for column in each.inscription.transcription.columns:
        measured = measured_column(each.inscription, column)
        if measured is None or measured.x is None or measured.width is None:
            continue
        box = Box(measured.x, measured.top, measured.width, measured.length)
        text = notation.print_signs(column.signs)
        if text and (place := shown.place(box)):
            name = f"{canvas}/columns/{column.index + 1}"
            yield _annotation(name, text, "ja", f"{canvas}{place}")


def _signs(t: Transcription, canvas: str, shown: Painting) -> Iterator[Json]:
    """Yield each sign whose place is measured."""
    for sign in t.signs:
        if sign.box and (place := shown.place(sign.box)):
            yield _sign(sign, canvas, place)


def _plate(each: InscriptionEntry, canvas: str, shown: Painting) -> Iterator[Json]:
    """Yield where the plate is in the picture: the places of signs are measured from its corner."""
    plate = each.inscription.plate
    box = Box(0, 0, plate.width, plate.height) if plate and shown.image else None
    if box and (place := shown.place(box)):
        yield _annotation(f"{canvas}/plate/1", "plate", "en", f"{canvas}{place}")


def _sign(sign: Sign, canvas: str, place: str) -> Json:
    name = f"{canvas}/annotation:sign:{sign.index + 1}"  # by which the boxes are read again
    return _annotation(name, notation.print_signs([sign]), "ja", f"{canvas}{place}")
