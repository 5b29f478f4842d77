"""Adding many texts: checked first, read on several cores, written batch by batch."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from itertools import islice

from inscribe import workers
from inscribe.errors import InputError, Place
from inscribe.sources.library import Added, Library
from inscribe.sources.passages import SourcePassage, passages_of
from inscribe.sources.texts import SourceText
from inscribe.sources.words import keep, with_row

BATCH = 50_000  # texts a transaction
CHUNK = 500  # texts a worker reads at a time
FEW = 2_000  # below this, starting workers costs more than it saves

TOLD_EVERY = 100  # texts

Read = tuple[tuple[SourceText, str], tuple[SourcePassage, ...]]  # with its words, as kept


def checked(
    texts: Iterable[SourceText], progress: Callable[[int], None] = lambda done: None
) -> int:
    """Return how many texts there are, having looked at every one before any is written.

    ``progress`` hears how many have been looked at.

    Raises:
        InputError: a text cannot be used, or two texts have the same id.
    """
    seen: set[int] = set()
    count = 0
    for text in texts:
        count += 1
        seen.add(hash(text.id))
        if count % TOLD_EVERY == 0:
            progress(count)
        if len(seen) < count:
            raise InputError(
                f"two texts have the id {text.id}",
                Place(),
                'give every text an id of its own; 7 and "7" are one id',
            )
    return count


def add_texts(
    library: Library,
    texts: Iterable[SourceText],
    count: int = 0,
    progress: Callable[[int], None] = lambda done: None,
) -> Added:
    """Add texts to an open library and return what that changed.

    ``count`` is how many there are, as far as known: thousands are read on all cores.
    ``progress`` hears how many are read.

    Raises:
        InputError: a worker was ended from outside; the batches before are in the library.

    >>> import tempfile
    >>> from inscribe import Library, SourceText
    >>> cherries = SourceText("cherries", ("世の中に絶えて桜のなかりせば",))
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     with Library(f"{folder}/library.sqlite", create=True) as library:
    ...         add_texts(library, [cherries]).new
    1
    """
    total = Added()
    read = _heard(_read_all(texts, count), progress)
    for batch in iter(lambda: list(islice(read, BATCH)), []):
        total += library.add([(text, passages) for (text, _), passages in batch])
        keep(library, (with_words for with_words, _ in batch))
    return total


def _heard(read: Iterable[Read], progress: Callable[[int], None]) -> Iterator[Read]:
    for done, each in enumerate(read, start=1):
        yield each
        if done % TOLD_EVERY == 0:
            progress(done)


def _read_all(texts: Iterable[SourceText], count: int) -> Iterator[Read]:
    if count < FEW or workers.count() == 1:
        return map(_read, texts)
    return workers.on_all_cores(_read, texts, CHUNK)


def _read(text: SourceText) -> Read:
    return with_row(text), passages_of(text)
