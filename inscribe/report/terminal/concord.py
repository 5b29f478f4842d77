"""A concordance for a terminal: each word in its context, the words one below the other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from inscribe.notation import segments
from inscribe.report import caution, width
from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted

if TYPE_CHECKING:
    from inscribe.concordance import Cluster, Collection, Occurrence

CONTEXT = 24  # columns on either side of the word; a Japanese sign takes two
_NEAR = 4 * CONTEXT  # characters among which the signs of the context are
MOST_COUNTS = 12
_MOST_MEMBERS = 20
_IN_LATIN = "no word is read so; a word in a longer one, or read otherwise, is found by its signs"
_BY = {"carver": "signature"}  # a name as read, which is no attribution


def concordance_as_text(
    query: str, held: Collection, hits: Sequence[Occurrence], counted: dict[str, dict[str, int]]
) -> str:
    """Return the hits in context, then counts by object, date and signature as read."""
    places = [_place(hit) for hit in hits]
    columns = max(map(width, places), default=0)
    lines = [_line(hit, place, columns) for hit, place in zip(hits, places, strict=True)]
    lines += ["", _summary(query, held, hits)]
    if hits:
        lines += [_counts(by, found) for by, found in counted.items()]
        lines += _persons(hits)
        if any(hit.document.carver or hit.document.persons for hit in hits):
            lines.append(fitted(caution("attribution"), 0))
    elif any(char.isascii() and char.isalpha() for char in query):
        lines.append(_IN_LATIN)
    return _written([*lines, *_unread(held)])


def counts_as_text(
    query: str, held: Collection, hits: Sequence[Occurrence], counted: dict[str, dict[str, int]]
) -> str:
    """Return the counts alone, one a line."""
    lines = [_summary(query, held, hits)]
    for by, found in counted.items():
        lines += ["", f"by {_BY.get(by, by)}"]
        lines += [f"{count:7}  {value}" for value, count in found.items()]
    return _written([*lines, *_unread(held)])


def clusters_as_text(held: Collection, found: Sequence[Cluster]) -> str:
    """Return each cluster with its members."""
    lines: list[str] = []
    for number, cluster in enumerate(found, start=1):
        what = "share a text" if cluster.kind == "text" else "are signed alike"
        lines.append(f"{number}. {len(cluster.members)} inscriptions {what}: {cluster.title}")
        for member in cluster.members[:_MOST_MEMBERS]:
            year = f"  {member.year}" if member.year is not None else ""
            lines.append(f"   {member.object}  {member.place}{year}  {member.carved}")
        if len(cluster.members) > _MOST_MEMBERS:
            lines.append(f"   and {len(cluster.members) - _MOST_MEMBERS} more")
    lines.append(f"{len(found)} cluster{'' if len(found) == 1 else 's'} in {held.records} records")
    if any(cluster.kind == "signature" for cluster in found):
        lines.append(fitted(caution("attribution"), 0))
    return _written([*lines, *_unread(held)])


def _written(lines: Sequence[str]) -> str:
    return "\n".join(printable(line) for line in lines).strip("\n") + "\n"


def _place(hit: Occurrence) -> str:
    year = f" {hit.document.year}" if hit.document.year is not None else ""
    return f"{hit.document.object}{year}"


def _line(hit: Occurrence, place: str, columns: int) -> str:
    before, after = _last_columns(hit.before), _first_columns(hit.after)
    label = place + " " * (columns - width(place))
    how = "" if hit.how in ("same signs", "pattern") else f"  ({hit.how})"
    return f"{label}  {' ' * (CONTEXT - width(before))}{before} 【{hit.match}】 {after}{how}"


def _persons(hits: Sequence[Occurrence]) -> list[str]:
    """Return whom of the user's list the inscriptions may name, each told once for its object."""
    named = (
        f"may name: {hit.document.object} {text}  {why}"
        for hit in hits
        for text, _, why in hit.document.persons
    )
    return [fitted(line, 0) for line in dict.fromkeys(named)]


def _last_columns(text: str) -> str:
    """Return the last whole signs of a text that fit into the context."""
    kept = _fitting(reversed(segments(text[-_NEAR:])))
    return "".join(reversed(kept))


def _first_columns(text: str) -> str:
    """Return the first whole signs of a text that fit into the context."""
    return "".join(_fitting(segments(text[:_NEAR])))


def _fitting(signs: Iterable[str]) -> list[str]:
    kept: list[str] = []
    used = 0
    for sign in signs:
        used += width(sign)
        if used > CONTEXT:
            break
        kept.append(sign)
    return kept


def _summary(query: str, held: Collection, hits: Sequence[Occurrence]) -> str:
    objects = len({hit.document.object for hit in hits})
    return f"{query}: {len(hits)} in {objects} of {held.records} records"


def _counts(by: str, found: dict[str, int]) -> str:
    shown = [f"{value} {count}" for value, count in list(found.items())[:MOST_COUNTS]]
    more = len(found) - MOST_COUNTS
    return f"by {_BY.get(by, by)}: " + ", ".join(shown) + (f", and {more} more" if more > 0 else "")


def _unread(held: Collection) -> list[str]:
    if not held.unread:
        return []
    what = "1 record is" if len(held.unread) == 1 else f"{len(held.unread)} records are"
    return [f"{what} left out: what is wrong with them is told by inscribe check"]
