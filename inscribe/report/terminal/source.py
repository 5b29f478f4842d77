"""The library and its hits on a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from inscribe.errors import InscribeError
from inscribe.report import width
from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted

if TYPE_CHECKING:
    from inscribe.signs import Transcription
    from inscribe.sources import Hit, SourceText


WIDEST = 32  # signs of Latin width that a column of the listing may take
HARDLY = 0.01  # probability below which a further hit is not shown


def listing(texts: Iterable[SourceText]) -> str:
    """Return one line a text: id, title (where it is not the id), first line, in columns."""
    rows = [[printable(cell) for cell in _cells(text)] for text in texts]
    widths = [min(WIDEST, max((width(row[at]) for row in rows), default=0)) for at in (0, 1)]
    shown = [at for at, wide in enumerate(widths) if wide]
    return "\n".join("  ".join((*(_padded(r[at], widths[at]) for at in shown), r[2])) for r in rows)


def _padded(cell: str, wide: int) -> str:
    return cell + " " * max(0, wide - width(cell))


def _cells(text: SourceText) -> tuple[str, str, str]:
    return text.id, "" if text.title == text.id else text.title, text.lines[0]


def hits_as_text(query: str, transcription: Transcription, hits: Sequence[Hit]) -> str:
    """Return the answer to one query, with the best hit's signs held against the query's."""
    from inscribe.sources import NO_SOURCE

    found = [hit for hit in hits if hit.score >= NO_SOURCE]
    lines = [f"looked for: {' '.join(query.split())}"]
    if found:
        for hit in (
            found[0],
            *(hit for hit in hits if hit is not found[0] and hit.score >= HARDLY),
        ):
            lines += [f"{hit.rank}. {_one_line(hit)}", f"   {hit.why}"]
        lines += _evidence(transcription, found[0])
    else:
        lines.append("no source found")
        lines += [f"  nearest: {_one_line(hit)}" for hit in hits[:2] if hit.score >= HARDLY]
    return "".join(f"{fitted(printable(line), 3)}\n" for line in lines)


def _one_line(hit: Hit) -> str:
    words = "／".join(hit.text.lines[hit.first_line : hit.last_line + 1])
    title = f" {hit.text.title}" if hit.text.title not in ("", hit.text.id) else ""
    return f"{hit.text.id}{title} (probability {hit.score:.2f})  {words[:60]}"


def _evidence(transcription: Transcription, hit: Hit) -> list[str]:
    from inscribe.collation import collate
    from inscribe.notation import parse

    try:
        passage = parse("\n".join(hit.text.lines[hit.first_line : hit.last_line + 1]))
    except InscribeError:  # print that breaks the conventions of transcription
        return []
    found = collate(transcription, passage, extent="excerpt")
    pairs = [(g.copy.text or "–", g.source.text or "–") for g in found.groups]
    return ["   " + "  ".join(one if one == other else f"{one}={other}" for one, other in pairs)]
