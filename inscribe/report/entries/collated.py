"""What holding a copy against its source gave: differences, fidelity, space."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe.forms import UNREAD
from inscribe.notation import print_signs, printed, written_out
from inscribe.record import partly_boxed
from inscribe.report import (
    apparatus_lines,
    chance_said,
    common,
    followed,
    place_row,
    plate_said,
    printed_lines,
    reasons_said,
    with_parents,
)
from inscribe.report.drawing import space_chart
from inscribe.report.entries.blocks import Block, Bullets, Chart, Grid, Inline, Run, plain
from inscribe.report.entries.facts import JAPANESE, Rows
from inscribe.signs import Certainty, Intervention, Kind, counted

if TYPE_CHECKING:
    from inscribe.collation import Collation, Group, Judgement, SpaceAccount, Span
    from inscribe.entry import InscriptionEntry
    from inscribe.report import Common, Style
    from inscribe.signs import Sign, Transcription

KIND_LABELS = {"kana": "kana_spelling"}  # "kana" is the label of the reading
NOTHING = "–"


def difference_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield the differences in wording as a table, those in writing only told in one sentence."""
    held = each.collation
    if held is None or not held.differences:
        return
    numbered = list(enumerate(held.differences, start=1))
    wording = [(number, group) for number, group in numbered if group.is_substantive]
    writing = [(number, group) for number, group in numbered if not group.is_substantive]
    if wording:
        yield _difference_grid("differences", wording, held, each, style)
    if lines := printed_lines(held):
        yield Bullets(style.label("printed"), tuple(plain(style.explained(line)) for line in lines))
    if writing:
        kinds = [group.kind for _, group in writing]
        counted_kinds = style.joined(
            *(f"{_kind_label(kind, style)} {kinds.count(kind)}" for kind in dict.fromkeys(kinds))
        )
        grid = _difference_grid("differences_writing", writing, held, each, style)
        said = f"{style.label('differences_writing')}: {len(writing)} ({counted_kinds})"
        yield replace(grid, summary=plain(said), folded=True)


def _difference_grid(
    title: str,
    numbered: list[tuple[int, Group]],
    held: Collation,
    each: InscriptionEntry,
    style: Style,
) -> Grid:
    keys = ["no", "what", "where", "copy", "source", "why"]
    rows = tuple(_difference_row(n, group, held, each, style) for n, group in numbered)
    if not any(group.why for _, group in numbered):
        keys, rows = keys[:-1], tuple(row[:-1] for row in rows)
    header = tuple(map(style.label, keys))
    return Grid(style.label(title), header, rows, numbers=tuple(n for n, _ in numbered))


def _kind_label(kind: str, style: Style) -> str:
    return style.label(KIND_LABELS.get(kind, kind))


def apparatus_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield every place where several sources differ with what each has, and the entries."""
    found = each.testimony
    if found is None:
        return
    label = style.label("apparatus")
    held = each.inscription.transcription
    sigla = [witness.siglum for witness in found.witnesses if witness.has_text]
    if found.places:
        header = (style.label("where"), style.label("copy"), *sigla)
        rows = [map(style.explained, place_row(each, sigla, held)) for each in found.places]
        yield Grid(
            label, header, tuple(tuple(plain(cell, JAPANESE) for cell in row) for row in rows)
        )
        label = style.label("apparatus_entries")
    said = [*apparatus_lines(found, held), followed(found)]
    yield Bullets(label, tuple(plain(style.explained(line)) for line in said))


def _difference_row(
    number: int, group: Group, held: Collation, each: InscriptionEntry, style: Style
) -> tuple[Inline, ...]:
    copied, source = printed_sides(group, held)
    return (
        plain(str(number)),
        plain(_kind_label(group.kind, style)),
        plain(place_of(group.copy.start, each, style)),
        plain(copied or NOTHING, JAPANESE),
        plain(source or NOTHING, JAPANESE),
        plain(style.explained(_why(group, held))),
    )


def printed_sides(group: Group, held: Collation) -> tuple[str, str]:
    """Return what a group has of the copy and of the source, hentaigana with their parents."""
    return printed_spans(group.copy, group.source, held)


def printed_spans(copy: Span, source: Span, held: Collation) -> tuple[str, str]:
    """Return what signs of the copy and of the source say, hentaigana with their parents."""
    return _printed(copy, held.copy), _printed(source, held.source)


def _printed(span: Span, t: Transcription) -> str:
    """Return the signs of a span as an edition prints them."""
    return "".join(
        printed(sign) if sign.text and sign.kind is Kind.CHARACTER else _mark(sign)
        for sign in t.signs[span.start : span.end]
    )


def _mark(sign: Sign) -> str:
    """Return what stands for a sign that is no legible character; doubts are marked elsewhere."""
    if sign.kind is Kind.CHARACTER:
        return UNREAD
    is_blank = sign.kind is Kind.SEAL and not sign.text  # a seal without a legend is unread
    certainty = Certainty.UNREADABLE if is_blank else Certainty.CLEAR
    plain = replace(sign, certainty=certainty, intervention=Intervention.NONE, sic=False, noted="")
    return written_out(print_signs([plain]))


def _why(group: Group, held: Collation) -> str:
    """Return why a group is what it is, each hentaigana with the parent its transcriber wrote."""
    return with_parents(group.why, held.copy, held.source)


def place_of(sign: int, each: InscriptionEntry, style: Style) -> str:
    """Return column and place in the column of a sign of the copy, both counted from 1."""
    t = each.inscription.transcription
    if sign >= len(t.signs):
        return style.label("at_end").replace("{column}", str(len(t.columns)))
    column, within = counted(t, sign)
    said = style.label("at_sign").replace("{sign}", str(within))
    return said.replace("{column}", str(column))


def stretch_of(first: int, last: int, each: InscriptionEntry, style: Style) -> str:
    """Return the place of a run of signs of the copy, counted from 1."""
    if first == last:
        return place_of(first, each, style)
    t = each.inscription.transcription
    (column, start), (last_column, end) = counted(t, first), counted(t, last)
    if column != last_column:
        return f"{place_of(first, each, style)} – {place_of(last, each, style)}"
    said = style.label("at_signs").replace("{sign}", str(start)).replace("{last}", str(end))
    return said.replace("{column}", str(column))


def fidelity_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield how many of the source's signs the copy keeps, at each level."""
    if each.collation is None:
        return
    levels = each.collation.fidelity
    said = []
    for key in ("as_carved", "characters", "sounds", "words"):
        if key == "as_carved" and not levels.by_signs:
            continue
        count, share = getattr(levels, key)
        of = f"{count} / {levels.signs_in_source}"
        said.append(style.bracketed(f"{style.label(key)} {of}", f"{share:.0%}"))
    yield style.label("fidelity"), plain(style.joined(*said))


def space_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield what the metal has to do with each difference: a chart, two sentences, the reasons."""
    held, space = each.collation, each.collation.space if each.collation else None
    if held is None or space is None:
        return
    sentences = [plain(style.explained(said)) for said in (plate_said(space),) if said]
    if space.judgements:
        sentences.append(_verdicts(held, space, style))
    if sentences:
        yield Chart(style.label("space"), space_chart(space, style), tuple(sentences))
    items = [*_reasons(held, space, style)]
    further = [f"to decide, measure the {wanted}" for wanted in space.wanted]
    if each.inscription.boxes:
        further += partly_boxed(each.inscription)
    items += [plain(style.explained(said)) for said in further]
    if items:
        yield Bullets(style.label("space_reasons"), tuple(items), folded=bool(sentences))


def _verdicts(held: Collation, space: SpaceAccount, style: Style) -> Inline:
    """Return the verdict on each difference, in one sentence."""
    said: list[Run] = []
    for judgement in space.judgements:
        chance = style.explained(chance_said(judgement))
        verdict = style.label(judgement.verdict) + (f" ({chance})" if chance else "")
        said += [
            Run(style.between if said else ""),
            Run(f"{style.label('no')} {judgement.difference + 1} "),
            Run(_judged(judgement, held, style), lang=JAPANESE),
            Run(f": {verdict}"),
        ]
    return (*said, Run("."))


def _judged(judgement: Judgement, held: Collation, style: Style) -> str:
    copied, source = printed_sides(held.differences[judgement.difference], held)
    return style.quoted(source or copied)


def _reasons(held: Collation, space: SpaceAccount, style: Style) -> Iterator[Inline]:
    told = common(space)
    if reasons := _sides(told, None, style):
        yield plain(f"{style.explained('all differences')} {reasons}")
    for judgement in space.judgements:
        if reasons := _sides(judgement, told, style):
            yield (Run(_judged(judgement, held, style), lang=JAPANESE), Run(f" {reasons}"))


def _sides(judgement: Judgement | Common, told: Common | None, style: Style) -> str:
    return style.joined(
        *(
            f"{style.explained(side)}: {style.explained(said)}"
            for side, said in reasons_said(judgement, told)
        )
    )
