"""What holding a copy against its source gave: differences, fidelity, space."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from inscribe.notation import written_out
from inscribe.report.entries.blocks import Block, Bullets, Grid, Inline, Run, plain
from inscribe.report.entries.facts import JAPANESE
from inscribe.signs import counted

if TYPE_CHECKING:
    from inscribe.collation import Group
    from inscribe.entry import InscriptionEntry
    from inscribe.report.entries.style import Style

KIND_LABELS = {"kana": "kana_spelling"}  # "kana" is the label of the reading
NOTHING = "–"


def difference_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield a table of the differences, each explained in words."""
    if each.collation is None or not each.collation.differences:
        return
    header = tuple(style.label(key) for key in ("what", "where", "copy", "source", "why"))
    rows = tuple(_difference_row(g, each, style) for g in each.collation.differences)
    yield Grid(style.label("differences"), header, rows)


def _difference_row(group: Group, each: InscriptionEntry, style: Style) -> tuple[Inline, ...]:
    return (
        plain(style.label(KIND_LABELS.get(group.kind, group.kind))),
        plain(place_of(group.copy.start, each, style)),
        plain(written_out(group.copy.text) or NOTHING, JAPANESE),
        plain(written_out(group.source.text) or NOTHING, JAPANESE),
        plain(written_out(group.why)),
    )


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


def fidelity_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield how many of the source's signs the copy keeps, at each level."""
    if each.collation is None:
        return
    levels = each.collation.fidelity
    rows = []
    for key in ("as_carved", "characters", "sounds", "words"):
        count, share = getattr(levels, key)
        of = f"{count} / {levels.signs_in_source}"
        rows.append((plain(style.label(key)), plain(of), plain(f"{share:.0%}")))
    header = tuple(style.label(key) for key in ("level", "count", "share"))
    yield Grid(style.label("fidelity"), header, tuple(rows))


def space_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield what the metal has to do with each difference, and on what evidence."""
    space = each.collation.space if each.collation else None
    if each.collation is None or space is None:
        return
    items: list[Inline] = []
    for judgement in space.judgements:
        group = each.collation.differences[judgement.difference]
        what = style.quoted(written_out(group.source.text or group.copy.text))
        evidence = "; ".join(e for e in judgement.evidence if e not in space.wanted)
        said = ": ".join(filter(None, (style.label(judgement.verdict), evidence)))
        items.append((Run(what, lang=JAPANESE), Run(f" {said}")))
    items += [plain(f"to decide, measure the {wanted}") for wanted in space.wanted]
    if items:
        yield Bullets(style.label("space"), tuple(items))
