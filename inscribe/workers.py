"""The same work done on many things, on several cores where there are enough of them."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from multiprocessing.pool import Pool

T = TypeVar("T")
R = TypeVar("R")

FEW = 40  # things below which starting workers costs more than it saves
MOST = 8  # workers


def mapped(work: Callable[[T], R], things: Sequence[T]) -> Iterator[R]:
    """Yield ``work`` of each thing, in their order; ``work`` and what it returns are picklable.

    Raises:
        Whatever ``work`` raises, when its turn comes.
    """
    workers = min(os.cpu_count() or 1, MOST)
    if len(things) < FEW or workers == 1:
        yield from map(work, things)
        return
    with pool(workers) as workers_at_hand:
        yield from workers_at_hand.imap(work, things, chunksize=20)


def pool(workers: int) -> Pool:
    """Return a pool of processes that leave Ctrl-C to the process that started them."""
    from multiprocessing import get_context

    context = get_context("fork" if os.name == "posix" else "spawn")
    return context.Pool(workers, _begin)


def _begin() -> None:
    """Set a worker up: it hears no Ctrl-C, and seldom looks for garbage, of which it makes none."""
    import gc
    import signal

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    gc.freeze()
    gc.set_threshold(50_000, 20, 50)
