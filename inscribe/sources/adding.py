"""Adding many texts: checked first, read on several cores, written batch by batch."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import islice

from inscribe.errors import InputError, Place
from inscribe.sources.library import Added, Library
from inscribe.sources.passages import Passage, passages_of
from inscribe.sources.texts import SourceText
from inscribe.workers import pool

BATCH = 50_000  # texts a transaction
CHUNK = 500  # texts a worker reads at a time
FEW = 2_000  # below this, starting workers costs more than it saves

Read = list[tuple[SourceText, tuple[Passage, ...]]]


def checked(texts: Iterable[SourceText]) -> int:
    """Return how many texts there are, having looked at every one before any is written.

    Raises:
        InputError: a text cannot be used, or two texts have the same id.
    """
    seen: set[int] = set()
    count = 0
    for text in texts:
        count += 1
        seen.add(hash(text.id))
        if len(seen) < count:
            raise InputError(
                f"two texts have the id {text.id}", Place(), "give every text an id of its own"
            )
    return count


def add_texts(
    library: Library,
    texts: Iterable[SourceText],
    count: int,
    progress: Callable[[int], None] = lambda done: None,
) -> Added:
    """Add ``count`` texts and return what that changed; ``progress`` hears how many are written."""
    total, done = Added(), 0
    for batch in _batches(_read_all(texts, count), BATCH):
        total += library.add(batch)
        done += len(batch)
        progress(done)
    return total


def _batches(
    chunks: Iterable[Read], size: int
) -> Iterator[Sequence[tuple[SourceText, Sequence[Passage]]]]:
    held: Read = []
    for chunk in chunks:
        held += chunk
        if len(held) >= size:
            yield held
            held = []
    if held:
        yield held


def _read_all(texts: Iterable[SourceText], count: int) -> Iterator[Read]:
    source = iter(texts)
    chunks = iter(lambda: list(islice(source, CHUNK)), [])
    workers = min(os.cpu_count() or 1, 8)
    if count < FEW or workers == 1:
        yield from map(_read_chunk, chunks)
        return
    with pool(workers) as workers_at_hand:
        yield from workers_at_hand.imap(_read_chunk, chunks)


def _read_chunk(texts: list[SourceText]) -> Read:
    return [(text, passages_of(text)) for text in texts]
