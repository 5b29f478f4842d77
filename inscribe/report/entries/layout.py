"""An entry laid out in blocks, in the order and the words of a house style."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.notation import printed, written_out
from inscribe.report.drawing import plate_drawing
from inscribe.report.entries import collated, facts
from inscribe.report.entries.blocks import (
    Block,
    Bullets,
    Caution,
    Columns,
    Facts,
    Grid,
    Heading,
    Inline,
    Run,
    plain,
)
from inscribe.report.entries.facts import JAPANESE, ROMANISED, Rows
from inscribe.signs import Certainty, Intervention, Transcription

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.forms import Change
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
    for each in entry.inscriptions:
        place = style.word("place", each.inscription.place)
        yield Heading(2, f"{style.label('inscription')}: {place}")
        yield from _inscription_blocks(each, style)
    if "remarks" in style.order and record.remarks:
        yield Facts(((style.label("remarks"), plain(record.remarks.strip())),))
    if "cautions" in style.order:
        yield from (Caution(style.caution(key)) for key in entry.cautions)
    if style.law_note:
        yield Caution(style.caution("law"))


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
    yield Columns(
        tuple(tuple(column.signs for column in face.columns) for face in t.faces),
        "\n".join(_written_faces(t)),
        tuple(facts.source_lines(each.collation)) if each.collation else (),
        _words_as_carved(each),
        plate_drawing(each.inscription, each.collation) if each.inscription.plate else "",
        (style.label("carved"), style.label("source"), style.label("drawing")),
        "; ".join(_key(t, style)),
    )


def _key(t: Transcription, style: Style) -> Iterator[str]:
    """Yield what each mark of doubt in the columns says."""
    states = {sign.certainty for sign in t.signs}
    for certainty in Certainty:
        if certainty in states and certainty is not Certainty.CLEAR:
            yield style.label(f"mark_{certainty.name.lower()}")
    if any(sign.intervention is Intervention.SUPPLIED for sign in t.signs):
        yield style.label("mark_supplied")


def _written_faces(t: Transcription) -> Iterator[str]:
    """Yield each face in the transcriber's notation, a column a line, 」 at the end of a face."""
    for number, face in enumerate(t.faces, start=1):
        ends = "" if number == len(t.faces) else "」"
        yield notation.print_out(Transcription((face,)), column_end="\n") + ends


def _words_as_carved(each: InscriptionEntry) -> tuple[tuple[str, str], ...]:
    """Return the words with their kana in the order of the metal, not that of reading."""
    tokens = sorted(each.reading.tokens, key=lambda token: token.first)
    return tuple((token.normalised, token.kana) for token in tokens)


def _signature_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    parts = each.interpretation.signature
    if not parts:
        return
    rows = []
    for key, part in parts.items():
        romaji = (Run(part.romaji, style.italics, ROMANISED),)
        rows.append((plain(style.part_label(key)), plain(part.text, JAPANESE), romaji))
    header = (style.label("what"), style.label("carved"), style.label("romaji"))
    yield Grid(style.label("signature"), header, tuple(rows))


def _doubt_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    doubts = each.interpretation.doubts
    if doubts:
        items = (
            plain(f"{collated.stretch_of(d.first, d.last, each, style)}: {d.why}") for d in doubts
        )
        yield Bullets(style.label("doubts"), tuple(items))


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
        yield Bullets(style.label("changes"), tuple(items))


def _before(change: Change, sign: Sign) -> str:
    """Return what stood before a change: the sign itself, or what an earlier change made of it."""
    return printed(sign) if change.before == sign.text else written_out(change.before)


_ROWS: dict[str, Callable[[InscriptionEntry, Style], Rows]] = {
    "place": facts.place_rows,
    "current": facts.current_rows,
    "passages": facts.passage_rows,
    "kana": facts.kana_rows,
    "romaji": facts.romaji_rows,
    "gloss": facts.gloss_rows,
    "alternatives": facts.alternative_rows,
    "translation": facts.translation_rows,
    "date": facts.date_rows,
    "persons": facts.person_rows,
    "source": facts.source_rows,
    "readers": facts.reader_rows,
    "remarks": facts.remark_rows,
}
_BLOCKS: dict[str, Callable[[InscriptionEntry, Style], Iterator[Block]]] = {
    "carved": _carved_blocks,
    "signature": _signature_blocks,
    "differences": collated.difference_blocks,
    "fidelity": collated.fidelity_blocks,
    "space": collated.space_blocks,
    "doubts": _doubt_blocks,
    "changes": _change_blocks,
}
