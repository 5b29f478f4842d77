"""A concordance for a terminal: each word in its context, the words one below the other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.notation import segments
from inscribe.report import width
from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted

if TYPE_CHECKING:
    from inscribe.concordance import Clusters, Collection, Concordance, Occurrence

CONTEXT = 24  # columns on either side of the word; a Japanese sign takes two
_NEAR = 4 * CONTEXT  # characters among which the signs of the context are
MOST_COUNTS = 12
_MOST_MEMBERS = 20
_IN_LATIN = "no word is read so; a word in a longer one, or read otherwise, is found by its signs"


def concordance_as_text(found: Concordance) -> str:
    """Return the hits in context, then counts by object, date and signature as read."""
    places = [_place(hit) for hit in found.hits]
    columns = max(map(width, places), default=0)
    lines = [_line(hit, place, columns) for hit, place in zip(found.hits, places, strict=True)]
    lines += ["", _summary(found)]
    if found.hits:
        lines += [_counts(by, counted) for by, counted in _tables(found)]
        lines += _persons(found.hits)
        lines += [fitted(caution, 0) for caution in found.cautions]
    elif any(char.isascii() and char.isalpha() for char in found.query):
        lines.append(_IN_LATIN)
    return _written([*lines, *_unread(found.collection)])


def counts_as_text(found: Concordance) -> str:
    """Return the counts alone, one a line."""
    lines = [_summary(found)]
    for by, counted in _tables(found):
        lines += ["", f"by {by}"]
        lines += [f"{count:7}  {value}" for value, count in counted.items()]
    return _written([*lines, *_unread(found.collection)])


def clusters_as_text(found: Clusters) -> str:
    """Return each cluster with its members."""
    lines: list[str] = []
    for number, cluster in enumerate(found.clusters, start=1):
        what = "share a text" if cluster.kind == "text" else "are signed alike"
        lines.append(f"{number}. {len(cluster.members)} inscriptions {what}: {cluster.title}")
        for member in cluster.members[:_MOST_MEMBERS]:
            year = f"  {member.year}" if member.year is not None else ""
            lines.append(f"   {member.object}  {member.place}{year}  {member.carved}")
        if len(cluster.members) > _MOST_MEMBERS:
            lines.append(f"   and {len(cluster.members) - _MOST_MEMBERS} more")
    count, records = len(found.clusters), found.collection.records
    lines.append(f"{notebook.counted(count, 'cluster')} in {notebook.counted(records, 'record')}")
    lines += [fitted(caution, 0) for caution in found.cautions]
    return _written([*lines, *_unread(found.collection)])


def _tables(found: Concordance) -> tuple[tuple[str, dict[str, int]], ...]:
    """Return the counts with what each is by; a name as read is no attribution."""
    counts = found.counts
    return ("object", counts["object"]), ("date", counts["date"]), ("signature", counts["carver"])


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


def _summary(found: Concordance) -> str:
    objects = len({hit.document.object for hit in found.hits})
    records = found.collection.records
    return f"{found.query}: {len(found.hits)} in {objects} of {notebook.counted(records, 'record')}"


def _counts(by: str, found: dict[str, int]) -> str:
    shown = [f"{value} {count}" for value, count in list(found.items())[:MOST_COUNTS]]
    more = len(found) - MOST_COUNTS
    return f"by {by}: " + ", ".join(shown) + (f", and {more} more" if more > 0 else "")


def _unread(held: Collection) -> list[str]:
    if not held.unread:
        return []
    what = "1 record is" if len(held.unread) == 1 else f"{len(held.unread)} records are"
    return [f"{what} left out: what is wrong with them is told by inscribe check"]
