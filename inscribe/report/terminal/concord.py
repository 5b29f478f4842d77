"""A concordance for a terminal: each word in its context, the words one below the other."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.report.cautions import caution
from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted

if TYPE_CHECKING:
    from inscribe.concordance.clusters import Cluster
    from inscribe.concordance.folder import Collection
    from inscribe.concordance.search import Hit

CONTEXT = 24  # columns on either side of the word; a Japanese sign takes two
MOST_COUNTS = 12
_MOST_MEMBERS = 20
_IN_LATIN = "no word is read so; a word in a longer one, or read otherwise, is found by its signs"
_BY = {"carver": "signature"}  # a name as read, which is no attribution


def concordance_as_text(
    query: str, held: Collection, hits: Sequence[Hit], counted: dict[str, dict[str, int]]
) -> str:
    """Return the hits in context, then counts by object, date and signature as read."""
    places = [_place(hit) for hit in hits]
    width = max((_width(place) for place in places), default=0)
    lines = [_line(hit, place, width) for hit, place in zip(hits, places, strict=True)]
    lines += ["", _summary(query, held, hits)]
    if hits:
        lines += [_counts(by, found) for by, found in counted.items()]
        if any(hit.document.carver for hit in hits):
            lines.append(fitted(caution("attribution"), 0))
    elif any(char.isascii() and char.isalpha() for char in query):
        lines.append(_IN_LATIN)
    return _written([*lines, *_unread(held)])


def counts_as_text(
    query: str, held: Collection, hits: Sequence[Hit], counted: dict[str, dict[str, int]]
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


def _place(hit: Hit) -> str:
    year = f" {hit.document.year}" if hit.document.year is not None else ""
    return f"{hit.document.object}{year}"


def _line(hit: Hit, place: str, width: int) -> str:
    before = _last_columns(hit.before, CONTEXT)
    after = hit.after[:CONTEXT] if _width(hit.after) <= CONTEXT else _first_columns(hit.after)
    label = place + " " * (width - _width(place))
    how = "" if hit.how in ("same signs", "pattern") else f"  ({hit.how})"
    return f"{label}  {' ' * (CONTEXT - _width(before))}{before} 【{hit.match}】 {after}{how}"


def _last_columns(text: str, most: int) -> str:
    while _width(text) > most:
        text = text[1:]
    return text


def _first_columns(text: str) -> str:
    text = text[:CONTEXT]
    while _width(text) > CONTEXT:
        text = text[:-1]
    return text


def _width(text: str) -> int:
    """Return the columns a text takes on a terminal."""
    wide = sum(unicodedata.east_asian_width(char) in "WFA" for char in text)
    return len(text) + wide - sum(unicodedata.combining(char) > 0 for char in text)


def _summary(query: str, held: Collection, hits: Sequence[Hit]) -> str:
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
