"""Names that a collection reads in two ways: the same signs, other sounds."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from inscribe.checking.findings import Finding, Looked, finding
from inscribe.concordance import NAME
from inscribe.forms import UNREAD, normalise_text

if TYPE_CHECKING:
    from inscribe.reading.words import Interpretation

MOST_NAMED = 5  # other records named in one finding


def names_read(read: Interpretation) -> Iterator[tuple[str, str]]:
    """Yield the names that sign an inscription, in current forms, with their readings."""
    for passage in read.passages:
        for key, part in (passage.signature or {}).items():
            written = normalise_text(part.text).text
            if key in NAME and part.romaji and UNREAD not in written:
                yield written, part.romaji


def read_in_two_ways(looked: Sequence[Looked]) -> Iterator[Finding]:
    """Yield, for each record, its names that other records read otherwise."""
    by_name: defaultdict[str, defaultdict[str, list[_Record]]] = defaultdict(
        lambda: defaultdict(list)
    )
    for each in looked:
        if about := each.about:
            for written, romaji in about.names:
                by_name[written][romaji].append(_Record(str(each.file), about.id))
    for written, ways in by_name.items():
        for romaji, here in ways.items() if len(ways) > 1 else ():
            others = "; ".join(
                f"{other} in {_ids(there)}" for other, there in ways.items() if other != romaji
            )
            for file, identity in here:
                said = f"{written} is read {romaji} here, and {others}"
                yield finding("read-two-ways", file, 1, said, identity)


class _Record(NamedTuple):
    file: str
    id: str


def _ids(records: Sequence[_Record]) -> str:
    ids = [record.id for record in records]
    more = f" and {len(ids) - MOST_NAMED} more" if len(ids) > MOST_NAMED else ""
    return ", ".join(ids[:MOST_NAMED]) + more
