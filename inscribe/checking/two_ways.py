"""Names that a collection reads in two ways: the same signs, other sounds."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

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
    by_name: defaultdict[str, defaultdict[str, list[Looked]]] = defaultdict(
        lambda: defaultdict(list)
    )
    for each in looked:
        for written, romaji in each.about.names if each.about else ():
            by_name[written][romaji].append(each)
    for written, ways in by_name.items():
        for romaji, here in ways.items() if len(ways) > 1 else ():
            others = "; ".join(
                f"{other} in {_ids(there)}" for other, there in ways.items() if other != romaji
            )
            for each in here:
                said = f"{written} is read {romaji} here, and {others}"
                of = each.about.id if each.about else ""
                yield finding("read-two-ways", str(each.file), 1, said, of)


def _ids(looked: Sequence[Looked]) -> str:
    ids = [each.about.id for each in looked if each.about]
    more = f" and {len(ids) - MOST_NAMED} more" if len(ids) > MOST_NAMED else ""
    return ", ".join(ids[:MOST_NAMED]) + more
