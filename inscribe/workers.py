"""The same work done on many things, on several cores where there are enough of them.

A worker that is ended from outside (by hand, or by the system when memory is short) ends the work
with a sentence; workers whose program is gone end by themselves.
"""

from __future__ import annotations

import os
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from itertools import islice
from typing import TYPE_CHECKING, TypeVar

from inscribe.errors import InputError

if TYPE_CHECKING:
    from concurrent.futures import Future, ProcessPoolExecutor

T = TypeVar("T")
R = TypeVar("R")

FEW = 40  # things below which starting workers costs more than it saves
MOST = 8  # workers
CHUNK = 20  # things handed to a worker at a time
AHEAD = 4  # chunks for each worker that are begun before the first is asked for


def mapped(work: Callable[[T], R], things: Sequence[T]) -> Iterator[R]:
    """Yield ``work`` of each thing, in their order; ``work`` and what it returns are picklable.

    Raises:
        Whatever ``work`` raises, when its turn comes.
        InputError: a worker was ended from outside.
    """
    if len(things) < FEW or count() == 1:
        yield from map(work, things)
    else:
        yield from on_all_cores(work, things, CHUNK)


def count() -> int:
    """Return how many workers are worth starting here."""
    return min(os.cpu_count() or 1, MOST)


def on_all_cores(work: Callable[[T], R], things: Iterable[T], size: int) -> Iterator[R]:
    """Yield ``work`` of each thing in order, always in workers; ``size`` things go at a time.

    The things may come one by one: only a few chunks are taken ahead of what is asked for.

    Raises:
        Whatever ``work`` raises, when its turn comes.
        InputError: a worker was ended from outside.
    """
    from concurrent.futures.process import BrokenProcessPool

    coming = iter(things)
    chunks = iter(lambda: list(islice(coming, size)), [])
    begun: deque[Future[list[R]]] = deque()
    with _pool() as pool:
        try:
            for chunk in chunks:
                begun.append(pool.submit(_each, work, chunk))
                if len(begun) >= count() * AHEAD:
                    yield from begun.popleft().result()
            while begun:
                yield from begun.popleft().result()
        except BrokenProcessPool as error:
            raise InputError(
                "a worker process was ended from outside before its work was done",
                hint="see whether memory is short, and try again",
            ) from error


def _each(work: Callable[[T], R], things: Sequence[T]) -> list[R]:
    return [work(thing) for thing in things]


@contextmanager
def _pool() -> Iterator[ProcessPoolExecutor]:
    """Give workers that leave Ctrl-C to the program that started them, and end them with it."""
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import active_children, get_context

    before = set(active_children())
    context = get_context("fork" if os.name == "posix" else "spawn")
    pool = ProcessPoolExecutor(count(), context, _begin)
    try:
        with _safe_path():
            pool.submit(int)  # starts the workers
        yield pool
    except BaseException:  # nobody waits for what they are at
        for worker in set(active_children()) - before:
            worker.terminate()
        raise
    finally:
        pool.shutdown(cancel_futures=True)


@contextmanager
def _safe_path() -> Iterator[None]:
    """Let Python processes that are started load no module from the current folder."""
    name = "PYTHONSAFEPATH"
    if name in os.environ:
        yield
        return
    os.environ[name] = "1"
    try:
        yield
    finally:
        del os.environ[name]


def _begin() -> None:
    """Set a worker up: it hears no Ctrl-C, and seldom looks for garbage, of which it makes none."""
    import gc
    import signal
    from threading import Thread

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    gc.freeze()
    gc.set_threshold(50_000, 20, 50)
    Thread(target=_end_with_the_program, daemon=True).start()


def _end_with_the_program() -> None:
    """End this worker when the program that started it is gone, whatever it is waiting for."""
    from multiprocessing import parent_process

    program = parent_process()
    if program is not None:
        program.join()
        os._exit(1)
