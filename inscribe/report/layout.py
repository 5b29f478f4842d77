"""An entry laid out in blocks, in the order and the words of a house style."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.notation import written_out
from inscribe.report.blocks import (
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
from inscribe.report.svg.plate import plate_drawing

if TYPE_CHECKING:
    from inscribe.collate.model import Collation, Group
    from inscribe.dates.model import DateReading
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.report.style import Style

JAPANESE = "ja"
ROMANISED = "ja-Latn"
KIND_LABELS = {"kana": "kana_spelling", "form": "form"}


def laid_out(entry: Entry, style: Style) -> tuple[Block, ...]:
    """Return the blocks of an entry."""
    return tuple(_blocks(entry, style))


def _blocks(entry: Entry, style: Style) -> Iterator[Block]:
    record = entry.record
    title = f"{record.id} {record.title}".strip()
    yield Heading(1, title)
    if "object" in style.order:
        yield Facts(tuple(_object_rows(entry, style)))
    for each in entry.inscriptions:
        yield Heading(2, f"{style.label('inscription')}: {each.inscription.place}")
        yield from _inscription_blocks(each, style)
    if "remarks" in style.order and record.remarks:
        yield Facts(((style.label("remarks"), plain(record.remarks.strip())),))
    if "cautions" in style.order:
        yield from (Caution(style.caution(key)) for key in entry.cautions)


def _object_rows(entry: Entry, style: Style) -> Iterator[tuple[str, Inline]]:
    record, sizes = entry.record, entry.record.measurements
    yield style.label("kind"), plain(record.kind)
    measured = [
        f"{style.label(name)} {getattr(sizes, name):g} mm"
        for name in ("length", "width", "height", "thickness", "diameter")
        if getattr(sizes, name) is not None
    ]
    if measured:
        yield style.label("measurements"), plain(", ".join(measured))


def _inscription_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    rows: list[tuple[str, Inline]] = []
    for part in style.order:
        if part in _ROWS:
            rows += _ROWS[part](each, style)
        elif part in _BLOCKS:
            if rows:
                yield Facts(tuple(rows))
                rows = []
            yield from _BLOCKS[part](each, style)
    if rows:
        yield Facts(tuple(rows))


Rows = Iterator[tuple[str, Inline]]


def _place_rows(each: InscriptionEntry, style: Style) -> Rows:
    inscription = each.inscription
    for key in ("hand", "execution"):
        if value := getattr(inscription, key):
            yield style.label(key), plain(value)


def _current_rows(each: InscriptionEntry, style: Style) -> Rows:
    yield style.label("current"), plain(each.interpretation.normalised, JAPANESE)


def _kana_rows(each: InscriptionEntry, style: Style) -> Rows:
    yield style.label("kana"), plain(each.reading.kana, JAPANESE)


def _romaji_rows(each: InscriptionEntry, style: Style) -> Rows:
    text = each.reading.romaji
    yield style.label("romaji"), (Run(text[:1].upper() + text[1:], style.italics, ROMANISED),)


def _alternative_rows(each: InscriptionEntry, style: Style) -> Rows:
    for proposal in each.interpretation.proposals[1:3]:
        reasons = "; ".join(proposal.reasons)
        romaji = Run(proposal.romaji, style.italics, ROMANISED)
        yield style.label("alternatives"), (romaji, Run(f" ({reasons})" if reasons else ""))


def _translation_rows(each: InscriptionEntry, style: Style) -> Rows:
    if each.inscription.translation:
        yield style.label("translation"), plain(each.inscription.translation.strip())


def _date_rows(each: InscriptionEntry, style: Style) -> Rows:
    for date in each.interpretation.dates:
        quoted = Run(style.quoted(date.text), lang=JAPANESE)
        yield style.label("date"), (quoted, Run(f" {date_text(date, style)}"))


def date_text(date: DateReading, style: Style) -> str:
    """Return what a date was resolved to, in the style's way of dating."""
    era = f"{date.era_romaji} {date.year_of_era}" if date.era_romaji and date.year_of_era else ""
    western = str(date.year) if date.year is not None else ""
    if date.first_day and date.last_day:
        days = f"{date.first_day.isoformat()} to {date.last_day.isoformat()}"
        western += f", {days}" if western else days
    first, second = (western, era) if style.dates == "western" else (era, western)
    known = f"{first} ({second})" if first and second else first or second
    return f"{known}: {date.why}" if known and date.why else known or date.why


def _source_rows(each: InscriptionEntry, style: Style) -> Rows:
    source = each.inscription.source
    if source is None:
        return
    named = ", ".join(filter(None, (source.author, source.work, source.number, source.title)))
    yield style.label("source"), plain(named or source.id)
    if each.collation:
        yield style.label("source"), plain("／".join(_source_lines(each.collation)), JAPANESE)
    elif each.missing_source:
        yield style.label("collation"), plain(each.missing_source)


def _source_lines(collation: Collation) -> Iterator[str]:
    for column in collation.source.columns:
        yield "".join(sign.text for sign in column.signs)


def _reader_rows(each: InscriptionEntry, style: Style) -> Rows:
    for reader in each.inscription.readers:
        when = f", {reader.on.isoformat()}" if reader.on else ""
        said = [Run(reader.by + when)]
        if reader.text:
            said.append(Run(f" {style.quoted(reader.text.strip())}", lang=JAPANESE))
        if reader.romaji:
            said += [Run(" "), Run(reader.romaji, style.italics, ROMANISED)]
        if reader.remarks:
            said.append(Run(f" {reader.remarks.strip()}"))
        yield style.label("readers"), tuple(said)


def _remark_rows(each: InscriptionEntry, style: Style) -> Rows:
    if each.inscription.remarks:
        yield style.label("remarks"), plain(each.inscription.remarks.strip())


def _carved_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    t = each.inscription.transcription
    faces = tuple(tuple(column.signs for column in face.columns) for face in t.faces)
    yield Columns(
        faces,
        written_out(notation.render(t)).replace("／", "\n"),
        tuple(_source_lines(each.collation)) if each.collation else (),
        tuple((token.normalised, token.kana) for token in each.reading.tokens),
        plate_drawing(each.inscription, each.collation) if each.inscription.plate else "",
        (style.label("carved"), style.label("source"), style.label("drawing")),
    )


def _signature_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    parts = each.interpretation.signature
    if not parts:
        return
    rows = []
    for key, part in parts.items():
        label = style.label("place_name" if key == "place" else key)
        romaji = (Run(part.romaji, style.italics, ROMANISED),)
        rows.append((plain(label), plain(part.text, JAPANESE), romaji))
    header = (style.label("what"), style.label("carved"), style.label("romaji"))
    yield Grid(style.label("signature"), header, tuple(rows))


def _difference_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    if each.collation is None or not each.collation.differences:
        return
    header = tuple(style.label(key) for key in ("what", "where", "copy", "source", "why"))
    rows = tuple(_difference_row(g, each, style) for g in each.collation.differences)
    yield Grid(style.label("differences"), header, rows)


def _difference_row(group: Group, each: InscriptionEntry, style: Style) -> tuple[Inline, ...]:
    kind = style.label(KIND_LABELS.get(group.kind, group.kind))
    where = place_of(group.copy.start, each, style)
    copy, source = written_out(group.copy.text) or "–", written_out(group.source.text) or "–"
    return (
        plain(kind),
        plain(where),
        plain(copy, JAPANESE),
        plain(source, JAPANESE),
        plain(written_out(group.why)),
    )


def place_of(sign: int, each: InscriptionEntry, style: Style) -> str:
    """Return column and place in the column of a sign of the copy, both counted from 1."""
    for column in each.inscription.transcription.columns:
        if column.signs and column.signs[0].index <= sign <= column.signs[-1].index:
            within = sign - column.signs[0].index + 1
            return f"{style.label('column')} {column.index + 1}, {style.label('sign')} {within}"
    return f"{style.label('column')} {len(each.inscription.transcription.columns)}, end"


def _fidelity_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    if each.collation is None:
        return
    levels = each.collation.fidelity
    rows = []
    for key in ("as_carved", "characters", "sounds", "words"):
        count, share = getattr(levels, key)
        of = f"{count} / {levels.signs_in_source}"
        rows.append((plain(style.label(key)), plain(of), plain(f"{share:.0%}")))
    header = tuple(style.label(key) for key in ("what", "count", "share"))
    yield Grid(style.label("fidelity"), header, tuple(rows))


def _space_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    space = each.collation.space if each.collation else None
    if space is None:
        return
    differences = each.collation.differences if each.collation else ()
    items: list[Inline] = []
    for judgement in space.judgements:
        group = differences[judgement.difference]
        what = style.quoted(group.source.text or group.copy.text)
        evidence = "; ".join(judgement.evidence)
        items.append((Run(what, lang=JAPANESE), Run(f" {judgement.verdict}: {evidence}")))
    items += [plain(wanted) for wanted in space.wanted]
    if items:
        yield Bullets(style.label("space"), tuple(items))


def _doubt_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    doubts = each.interpretation.doubts
    if doubts:
        items = (plain(f"{place_of(d.first, each, style)}: {d.why}") for d in doubts)
        yield Bullets(style.label("doubts"), tuple(items))


def _change_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    changes = each.interpretation.changes
    if changes:
        items: Iterable[Inline] = (
            (
                Run(f"{place_of(c.sign, each, style)}: "),
                Run(f"{written_out(c.before)} → {c.after}", lang=JAPANESE),
                Run(f" ({c.kind})"),
            )
            for c in changes
        )
        yield Bullets(style.label("changes"), tuple(items))


_ROWS: dict[str, Callable[[InscriptionEntry, Style], Rows]] = {
    "place": _place_rows,
    "current": _current_rows,
    "kana": _kana_rows,
    "romaji": _romaji_rows,
    "alternatives": _alternative_rows,
    "translation": _translation_rows,
    "date": _date_rows,
    "source": _source_rows,
    "readers": _reader_rows,
    "remarks": _remark_rows,
}
_BLOCKS: dict[str, Callable[[InscriptionEntry, Style], Iterator[Block]]] = {
    "carved": _carved_blocks,
    "signature": _signature_blocks,
    "differences": _difference_blocks,
    "fidelity": _fidelity_blocks,
    "space": _space_blocks,
    "doubts": _doubt_blocks,
    "changes": _change_blocks,
}
