"""One fault tried: a fork of the process that has collected the tests runs those that reach it.

When is a fault noticed by the time that a test takes? A test that has used twenty times the
processor time it takes without the fault, and ``ENDLESS`` seconds more, is ended: "endless", and it
counts as noticed, for no suite ends with it. Processor time is that of the trial alone, so a busy
machine does not make a test endless. Where the tests that reach a fault are too many for the
budget, those run have passed and the rest are not known: "not finished", which counts as survived.
"""

from __future__ import annotations

import os
import resource
import signal
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

ENDLESS = 10.0  # seconds of the processor ...
TIMES = 20  # ... and as often what a test takes
MEMORY = 16 << 30  # bytes of address space that a trial may have

Run = Callable[[Any, Any], bool]  # a test, and the one that follows it


@dataclass(frozen=True)
class Outcome:
    """What became of a trial.

    Attributes:
        state: "caught", "endless", "survived", "not finished", "unreached" (no test runs it).
        by: the test that noticed it, or why the faulty module could not be put in.
        tests: how many tests were run, of how many that reach it.
        reaching: how many tests reach it.
        seconds: seconds of the processor.
    """

    state: str
    by: str
    tests: int
    reaching: int
    seconds: float


def tried(
    prepare: Callable[[], None], tests: Sequence[tuple[Any, float]], run: Run, budget: float
) -> Outcome:
    """Try a fault on tests (each with its seconds), at most ``budget`` seconds of the processor."""
    if not tests:
        return Outcome("unreached", "", 0, 0, 0.0)
    reading, writing = os.pipe()
    began = _children_seconds()
    child = os.fork()
    if child == 0:
        os.close(reading)
        _child(prepare, tests, run, budget, writing)
    os.close(writing)
    with os.fdopen(reading, "r") as pipe:
        said = pipe.read().split("\n")
    _, status = os.waitpid(child, 0)
    seconds = _children_seconds() - began
    ran, last = len(said) - 1, said[-1]
    at = tests[min(max(ran - 1, 0), len(tests) - 1)][0].nodeid
    if os.WIFSIGNALED(status):
        number = os.WTERMSIG(status)
        state = "endless" if number in (signal.SIGPROF, signal.SIGALRM) else "caught"
        return Outcome(state, f"{at} (signal {number})", ran, len(tests), seconds)
    states = {"f": "caught", "s": "survived", "t": "not finished", "i": "caught"}
    state = states.get(last[:1], "caught")
    by = last[1:] if last[:1] == "i" else at if state == "caught" else ""
    return Outcome(state, by, ran, len(tests), seconds)


def _children_seconds() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def _child(
    prepare: Callable[[], None],
    tests: Sequence[tuple[Any, float]],
    run: Run,
    budget: float,
    pipe: int,
) -> None:
    """Run the tests in this process, say what became of them, and end it."""
    log = os.open(os.devnull, os.O_WRONLY)
    os.dup2(log, 1)
    os.dup2(log, 2)
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    signal.signal(signal.SIGPROF, signal.SIG_DFL)
    signal.signal(signal.SIGALRM, signal.SIG_DFL)
    end = "s"
    try:
        signal.setitimer(signal.ITIMER_PROF, ENDLESS)
        prepare()
        began = time.process_time()
        following = [*(test for test, _ in tests[1:]), None]
        for (test, seconds), after in zip(tests, following, strict=True):
            if time.process_time() - began > budget:
                end = "t"
                break
            os.write(pipe, b"\n")
            signal.setitimer(signal.ITIMER_PROF, ENDLESS + TIMES * seconds)
            signal.alarm(60 * int(ENDLESS + seconds))  # what waits for ever
            if not run(test, after):
                end = "f"
                break
    except BaseException as error:  # whatever a fault brings about is what is asked for
        end = f"i{type(error).__name__}: {error}".replace("\n", " ")
    os.write(pipe, end.encode())
    os._exit(0)
