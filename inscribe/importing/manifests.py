"""A manifest of IIIF Presentation 3, made anywhere, as a list of one row and its pictures.

What a manifest says in words becomes the cells of a row, so that a mapping says which key each
becomes, as for any list: ``id``, ``title``, ``remarks`` (its summary), what stands in its metadata
under its own labels, and of each canvas with a transcription ``transcription``, ``translation`` and
``place of inscription`` (the canvas's label). What it paints becomes pictures of the record, at the
address of their image service. Nothing is fetched.

A transcription is an annotation with the motivation ``supplementing`` and a text in Japanese: one
of a canvas as a whole, or else those with a place (``#xywh=``), each a column in the order of the
page; where all are single signs, a column ends where the next sign stands higher. Source: IIIF
Presentation API 3.0, the Web Annotation Data Model; what else a manifest may hold is told.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import unquote, urlsplit

from inscribe import files, strict
from inscribe.errors import InputError, Place
from inscribe.importing.manifest_pictures import ManifestPicture, pictures_of
from inscribe.importing.model import CatalogueList, ImportPlan, ListRow, Trouble
from inscribe.importing.proposing import proposed_mapping
from inscribe.record import dump, iiif_problem, loads, place_of_annotation
from inscribe.scripts import is_written

Json = dict[str, Any]
UNREAD = "［　　］"  # the transcription of an object that nobody has transcribed
_LANGUAGES = ("none", "en", "ja", "@none")  # of labels, the first that is there
_NO_NAME = re.compile(r"manifest(\.json)?|[^.]*\.json|iiif|presentation|v?3", re.IGNORECASE)
_TAGS = re.compile(r"<[^>]*>")


class ForeignManifest(NamedTuple):
    """A manifest as a list of one row; ``pictures`` of each inscription, and what was not taken."""

    list: CatalogueList
    pictures: tuple[ManifestPicture, ...]
    troubles: tuple[Trouble, ...]


class _Text(NamedTuple):
    """A text that an annotation gives, and its place on the canvas, empty for all of it."""

    text: str
    language: str
    place: tuple[float, ...]


def read_manifest(path: Path) -> ForeignManifest:
    """Return a manifest in a file.

    Raises:
        InputError: the file cannot be read, or holds no manifest of Presentation 3.
    """
    try:
        found = strict.json_value(files.read_text(path), Place(str(path)))
    except ValueError as error:
        raise InputError("the file is not JSON", Place(str(path))) from error
    except RecursionError as error:
        raise InputError("the JSON is nested too deeply", Place(str(path))) from error
    if problem := iiif_problem(found):
        raise InputError(problem[0], Place(str(path)), problem[1])
    return _as_list(found, path.name)


def with_pictures(plan: ImportPlan, found: ForeignManifest) -> ImportPlan:
    """Return the plan with the pictures in each new record, and what was not taken told."""
    outcomes = tuple(
        each._replace(text=_pictured(each.text, found.pictures)) if each.what == "new" else each
        for each in plan.outcomes
    )
    return plan._replace(outcomes=outcomes, troubles=(*plan.troubles, *found.troubles))


def _pictured(text: str, pictures: tuple[ManifestPicture, ...]) -> str:
    record = loads(text)
    inscriptions = [
        replace(each, images=tuple(p.image for p in pictures if p.inscription == number))
        for number, each in enumerate(record.inscriptions)
    ]
    left = (p.image for p in pictures if not 0 <= p.inscription < len(inscriptions))
    return dump(record._replace(images=tuple(left), inscriptions=tuple(inscriptions)))


def _as_list(manifest: Json, name: str) -> ForeignManifest:
    row = _ManifestRow()
    row.put("id", _id(str(manifest.get("id", ""))))
    row.put("title", _said(manifest.get("label")))
    row.put("remarks", _said(manifest.get("summary")))
    pictures: list[ManifestPicture] = []
    inscriptions = 0
    for number, canvas in enumerate(strict.objects(manifest.get("items")), start=1):
        label = _said(canvas.get("label"))
        texts = list(_texts(canvas, number, row.troubles))
        transcription = _transcription(texts)
        if transcription:
            row.put("transcription", transcription)
            row.put("place of inscription", label, always=True)
            row.put("translation", _translation(texts), always=True)
        of = inscriptions if transcription else -1
        inscriptions += bool(transcription)
        for told in pictures_of(canvas, number, label, _credit(manifest), of):
            if isinstance(told, ManifestPicture):
                pictures.append(told)
            else:
                row.troubles.append(told)
    for pair in strict.objects(manifest.get("metadata")):
        row.put(_said(pair.get("label")) or "metadata", _said(pair.get("value")))
    for key in ("requiredStatement", "rights", "id"):
        value = manifest.get(key)
        said = value.get("value") if isinstance(value, dict) else value
        row.put(f"manifest {key}", _said(said))
    if not proposed_mapping(row.as_list(name)).headings_of("inscription.text"):
        row.put("transcription", UNREAD)
        said = f"no annotation transcribes it; {UNREAD} stands for what is carved"
        row.troubles.append(Trouble(1, "", "", said, "write what is carved into the record"))
    return ForeignManifest(row.as_list(name), tuple(pictures), tuple(row.troubles))


class _ManifestRow:
    """The one row that a manifest becomes, while it is read."""

    def __init__(self) -> None:
        self.cells: dict[str, str] = {}
        self.troubles: list[Trouble] = []

    def put(self, heading: str, cell: str, *, always: bool = False) -> None:
        """Add a cell, under a heading with a number where there is one of that heading already."""
        free, number = heading, 1
        while free in self.cells:
            number += 1
            free = f"{heading} ({number})"
        if cell or always:
            self.cells[free] = cell

    def as_list(self, name: str) -> CatalogueList:
        """Return it as a list; no row of headings stands above it."""
        rows = (ListRow(1, tuple(self.cells.items())),)
        return CatalogueList(name, tuple(self.cells), rows, encoding="UTF-8", heading_row=0)


def _id(address: str) -> str:
    """Return the part of a manifest's address that names the object.

    >>> _id("https://example.org/iiif/tsuba-17/manifest.json"), _id("https://example.org/17.json")
    ('tsuba-17', '17')
    """
    parts = [unquote(part) for part in urlsplit(address).path.split("/") if part]
    named = [part for part in parts if not _NO_NAME.fullmatch(part)]
    last = parts[-1] if parts else ""
    if last.lower().endswith(".json") and last.lower() != "manifest.json":
        return last[: -len(".json")]
    return named[-1] if named else "manifest"


def _credit(manifest: Json) -> str:
    stated = manifest.get("requiredStatement")
    said = _said(stated.get("value")) if isinstance(stated, dict) else ""
    return "; ".join(filter(None, (said.replace("\n", "; "), _said(manifest.get("rights")))))


def _said(value: Any) -> str:
    """Return a text, or a text by languages: in one of ours, each value in a line of its own."""
    if isinstance(value, str):
        return _plain(value)
    if not isinstance(value, dict):
        return ""
    language = next((key for key in (*_LANGUAGES, *value) if key in value), "")
    values = value.get(language)
    held = values if isinstance(values, list) else [values]
    return "\n".join(_plain(each) for each in held if isinstance(each, str))


def _plain(text: str) -> str:
    """Return a text without the mark-up that the API allows in it."""
    return html.unescape(_TAGS.sub("", text)).strip() if text[:1] == "<" else text.strip()


def _texts(canvas: Json, number: int, troubles: list[Trouble]) -> Iterator[_Text]:
    """Yield the texts that annotations supplement a canvas with; ``troubles`` get the rest."""
    for page in strict.objects(canvas.get("annotations")):
        if "items" not in page:
            said = "the annotations lie in a file of their own, which is not fetched"
            todo = "save it; inscribe measure --boxes takes it, its texts are written by hand"
            troubles.append(Trouble(1, f"canvas {number}", str(page.get("id", "")), said, todo))
        for item in strict.objects(page.get("items")):
            motivations = item.get("motivation")
            if "supplementing" in (motivations if isinstance(motivations, list) else [motivations]):
                yield from _text_of(item)


def _text_of(item: Json) -> Iterator[_Text]:
    bodies = item.get("body")
    sides = place_of_annotation(item) or ()
    for body in bodies if isinstance(bodies, list) else [bodies]:
        if isinstance(body, dict) and isinstance(value := body.get("value"), str):
            language = body.get("language")
            first = language[0] if isinstance(language, list) and language else language
            text = _plain(value)
            yield _Text(text, str(first or _guessed(text)), sides)


def _guessed(text: str) -> str:
    """Return the language of a text that says none, by its script."""
    signs = [sign for sign in text if not sign.isspace()]
    return "ja" if sum(map(is_written, signs)) * 2 > len(signs) else ""


def _transcription(texts: list[_Text]) -> str:
    """Return what the canvas bears, a column a line; nothing where no text says it."""
    said = [each for each in texts if each.language in ("ja", "ja-Jpan", "ja-Hira", "ja-Hani")]
    whole = [each.text for each in said if not each.place]
    if whole or not said:
        return whole[0] if whole else ""
    if any(len(each.text) > 1 for each in said):
        return "\n".join(each.text for each in said)
    lines = said[0].text
    for before, sign in pairwise(said):
        lines += ("\n" if sign.place[1] < before.place[1] else "") + sign.text
    return lines


def _translation(texts: list[_Text]) -> str:
    """Return the first text of the whole canvas in another language than Japanese."""
    others = (t.text for t in texts if not t.place and not t.language.startswith("ja"))
    return next((text for text in others if text), "")
