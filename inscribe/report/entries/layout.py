"""An entry laid out in blocks, in the order and the words of a house style."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.notation import printed, written_out
from inscribe.report import signatures
from inscribe.report.drawing import on_guard, plate_drawing
from inscribe.report.entries import collated, facts, glossed
from inscribe.report.entries.blocks import (
    Block,
    Bullets,
    Caution,
    Columns,
    Drawing,
    Facts,
    Grid,
    Heading,
    Inline,
    PictureBlock,
    Run,
    plain,
)
from inscribe.report.entries.facts import JAPANESE, ROMANISED, Rows
from inscribe.report.entries.strips import strips
from inscribe.signs import Certainty, Intervention, Kind, Transcription

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.forms import Change
    from inscribe.record import RecordImage
    from inscribe.report import Style
    from inscribe.signs import Sign


def laid_out(entry: Entry, style: Style) -> tuple[Block, ...]:
    """Return the blocks of an entry."""
    return tuple(_blocks(entry, style))


def _blocks(entry: Entry, style: Style) -> Iterator[Block]:
    record = entry.record
    title = f"{record.id} {record.title}".strip()
    yield Heading(1, title)
    if "object" in style.order:
        yield Facts(tuple(facts.object_rows(entry, style)))
    if "images" in style.order:
        title = " ".join(filter(None, (record.title, style.word("kind", record.kind))))
        yield from _pictures(record.images, entry, "object", title, style)
    for each in entry.inscriptions:
        place = style.word("place", each.inscription.place)
        yield Heading(2, f"{style.label('inscription')}: {place}")
        if "images" in style.order:
            yield from _pictures(each.inscription.images, entry, "inscription", place, style)
        yield from _inscription_blocks(each, style)
        if "source_image" in style.order:
            yield from _source_pictures(each, entry, style)
    if "remarks" in style.order and record.remarks:
        yield Facts(((style.label("remarks"), plain(record.remarks.strip())),))
    if "cautions" in style.order:
        yield from (Caution(style.caution(key)) for key in entry.cautions)
    if style.law_note:
        yield Caution(style.caution("law"))


def _pictures(
    images: tuple[RecordImage, ...], entry: Entry, of: str, shows: str, style: Style
) -> Iterator[PictureBlock]:
    """Yield pictures; what they show is told in the record's words, else by ``shows``."""
    for image in images:
        title = style.label(f"image:{of}")
        yield PictureBlock(title, image, entry.folder, written_out(image.shows or shows), of)


def _source_pictures(each: InscriptionEntry, entry: Entry, style: Style) -> Iterator[Block]:
    """Yield the pictures of each source; of several each is captioned with its siglum and name."""
    sources = each.inscription.sources
    for at, source in enumerate(sources):
        named = source.title or source.work
        told = ": ".join(filter(None, (each.siglum_of(at), named))) if len(sources) > 1 else ""
        shows = named or style.label("source")
        for block in _pictures(source.images, entry, "source", shows, style):
            yield replace(block, title=f"{block.title} {told}".strip())


def _inscription_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    rows: list[tuple[str, Inline]] = []
    for part in style.order:
        if part in _ROWS:
            rows += _ROWS[part](each, style)
        elif part in _BLOCKS:
            blocks = list(_BLOCKS[part](each, style))
            if rows and blocks:
                yield Facts(tuple(rows))
                rows = []
            yield from blocks
    if rows:
        yield Facts(tuple(rows))


def _carved_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    t = each.inscription.transcription
    held = each.collation if "compared" in style.order else None
    beside = strips(held) if held else ()
    yield Columns(
        tuple(tuple(column.signs for column in face.columns) for face in t.faces),
        "\n".join(_written_faces(t)),
        beside,
        (style.label("carved"), style.label("source")),
        "; ".join(_key(t, style, is_compared=bool(beside))),
        style.label("mark_written") if beside else "",
    )


def _key(t: Transcription, style: Style, *, is_compared: bool) -> Iterator[str]:
    """Yield what each mark in the columns says."""
    states = {sign.certainty for sign in t.signs if not _is_mark_unread(sign)}
    for certainty in Certainty:
        if certainty in states and certainty is not Certainty.CLEAR:
            yield style.label(f"mark_{certainty.name.lower()}")
    if any(sign.intervention is Intervention.SUPPLIED for sign in t.signs):
        yield style.label("mark_supplied")
    if is_compared:
        yield style.label("mark_compared")


def _is_mark_unread(sign: Sign) -> bool:
    """Whether a seal or a gap stands there without a word, which is no □."""
    return sign.certainty is Certainty.UNREADABLE and sign.kind is not Kind.CHARACTER


def _written_faces(t: Transcription) -> Iterator[str]:
    """Yield each face in the transcriber's notation, a column a line, 」 at the end of a face."""
    for number, face in enumerate(t.faces, start=1):
        ends = "" if number == len(t.faces) else "」"
        yield notation.print_out(Transcription((face,)), column_end="\n") + ends


def _drawing_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield the drawing where it shows more than the columns: a plate, a guard, several faces."""
    inscription = each.inscription
    has_faces = len(inscription.transcription.faces) > 1
    if inscription.plate or has_faces or on_guard(inscription, each.kind):
        title = style.label("drawing" if inscription.plate else "sketch")
        draw = partial(plate_drawing, inscription, each.collation, style, each.kind)
        yield Drawing(title, draw)


def _signature_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    signings = list(signatures(each.interpretation))
    header = (style.label("what"), style.label("carved"), style.label("romaji"))
    for role, parts in signings:
        rows = []
        for key, part in parts.items():
            romaji = (Run(part.romaji, style.italics, ROMANISED),)
            rows.append((plain(style.part_label(key)), plain(part.text, JAPANESE), romaji))
        whose = f" ({style.label(f'role:{role}')})" if role and len(signings) > 1 else ""
        yield Grid(style.label("signature") + whose, header, tuple(rows))


def _doubt_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    doubts = each.interpretation.doubts
    if doubts:
        items = (
            plain(f"{collated.stretch_of(d.first, d.last, each, style)}: {style.explained(d.why)}")
            for d in doubts
        )
        yield Bullets(style.label("doubts"), tuple(items), folded=style.doubts == "count")


def _change_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    changes = each.interpretation.changes
    if changes:
        signs = each.inscription.transcription.signs
        items: Iterable[Inline] = (
            (
                Run(f"{collated.place_of(c.sign, each, style)}: "),
                Run(f"{_before(c, signs[c.sign])} → {c.after}", lang=JAPANESE),
                Run(f" ({style.label(f'form:{c.kind}')})"),
            )
            for c in changes
        )
        yield Bullets(style.label("changes"), tuple(items), folded=len(changes) > FEW)


FEW = 3  # items of a list that are shown unfolded


def _before(change: Change, sign: Sign) -> str:
    """Return what stood before a change: the sign itself, or what an earlier change made of it."""
    return printed(sign) if change.before == sign.text else written_out(change.before)


def _working_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    items = tuple(facts.date_workings(each, style))
    if items:
        yield Bullets(style.label("workings"), items, folded=True)


_ROWS: dict[str, Callable[[InscriptionEntry, Style], Rows]] = {
    "place": facts.place_rows,
    "current": facts.current_rows,
    "passages": facts.passage_rows,
    "kana": facts.kana_rows,
    "alternatives": facts.alternative_rows,
    "date": facts.date_rows,
    "persons": facts.person_rows,
    "source": facts.source_rows,
    "fidelity": collated.fidelity_rows,
    "readers": facts.reader_rows,
    "remarks": facts.remark_rows,
}
_BLOCKS: dict[str, Callable[[InscriptionEntry, Style], Iterator[Block]]] = {
    "carved": _carved_blocks,
    "drawing": _drawing_blocks,
    "words": glossed.interlinear_blocks,
    "romaji": facts.romaji_blocks,
    "translation": facts.translation_blocks,
    "signature": _signature_blocks,
    "differences": collated.difference_blocks,
    "apparatus": collated.apparatus_blocks,
    "space": collated.space_blocks,
    "doubts": _doubt_blocks,
    "changes": _change_blocks,
    "workings": _working_blocks,
}
