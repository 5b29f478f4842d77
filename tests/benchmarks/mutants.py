"""Which small faults the tests notice: ``python tests/benchmarks/mutants.py [--sample N]``.

Needs ``pip install coverage``. One process loads the package and collects the tests; each fault is
put into a fork of it, where the tests that run its line are run, fastest first, until one fails.
Which tests run a line is recorded once (some minutes) and kept. As many faults are drawn of each
subject, by ``--seed``. Printed: what became of them by subject and by kind, and every fault that
was not noticed. A fault that changes nothing anyone can see counts as survived, unless it is listed
with the reason in ``mutating/equal.tsv``: such a one is counted by itself, and never as caught.
Outcomes are kept in the cache folder by what stands in the line, so that a call goes on where it or
another was ended; ``--again`` tries only what was not noticed then.

Faults are put into functions and constants, not into the bodies of classes (0.3 % of the places).

Why not mutmut 3: it passes over every decorated function (here all that reaches a table) and every
constant outside functions, and draws no sample. Why not cosmic-ray 8: it runs one command for every
fault, all tests from the start. The kinds of fault are theirs (``mutating/operators.py``).
"""

from __future__ import annotations

import argparse
import ast
import json
import os
import random
import sys
from collections import Counter
from dataclasses import astuple
from pathlib import Path
from typing import Any

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "tests/outside")]
sys.path.append(str(HERE))

from mutating import session  # noqa: E402
from mutating.chosen import NOT_REACHING, SUBJECTS, TESTS  # noqa: E402
from mutating.faulty import put_in  # noqa: E402
from mutating.operators import Fault, faults, faulty  # noqa: E402
from mutating.order import is_whole, reaching  # noqa: E402
from mutating.reach import Reach, kept_of, record  # noqa: E402
from mutating.trial import Outcome, tried  # noqa: E402

CACHE = Path(os.environ.get("INSCRIBE_CACHE", "~/.cache/inscribe")).expanduser()
BUDGET = 90.0  # seconds of the processor for one fault
NOTICED = ("caught", "endless")


def test_files(*, inside: bool) -> list[str]:
    """Return the files of tests that may notice a fault; ``inside``: not those of outside data."""
    named = [path for name in TESTS for path in sorted(ROOT.glob(f"tests/test_{name}.py"))]
    outside = [
        path
        for path in sorted(ROOT.glob("tests/outside/test_*.py"))
        if not inside and not any(name in path.name for name in NOT_REACHING)
    ]
    rooms = ("collation", "dates", "forms", "reading", "restoring", "checking", "record")
    files = [str(path.relative_to(ROOT)) for path in dict.fromkeys((*named, *outside))]
    return [*files, *(f"inscribe/{room}" for room in rooms)]


def files_of(subject: str) -> list[str]:
    """Return the modules of a subject; those of space are not among those of collation."""
    found = [
        path
        for place in SUBJECTS[subject]
        for path in (
            [ROOT / place] if place.endswith(".py") else sorted((ROOT / place).rglob("*.py"))
        )
    ]
    names = [str(path.relative_to(ROOT)) for path in found]
    return [name for name in names if subject == "space" or "/space/" not in name]


def sample(subject: str, size: int, chance: random.Random) -> list[tuple[str, Fault]]:
    """Draw faults of a subject, every one as likely as any other."""
    every = [(file, fault) for file in files_of(subject) for fault in faults_of(file)]
    return chance.sample(every, min(size, len(every)))


def faults_of(file: str) -> list[Fault]:
    """Return the faults that may be put into a file, but for the bodies of its classes."""
    text = (ROOT / file).read_text("utf-8")
    classes = {
        line
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.ClassDef)
        for line in range(node.lineno, (node.end_lineno or node.lineno) + 1)
    }
    return [f for f in faults(text) if f.function != (0, 0) or f.line not in classes]


def module_of(file: str) -> str:
    """Return the name a file is imported by.

    >>> module_of("inscribe/dates/__init__.py"), module_of("inscribe/forms/alike.py")
    ('inscribe.dates', 'inscribe.forms.alike')
    """
    return file.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


def tally(outcomes: list[Outcome], name: str) -> str:
    """Return one line of the table."""
    states = Counter(outcome.state for outcome in outcomes)
    noticed = sum(states[state] for state in NOTICED)
    told = len(outcomes) - states["equal"]
    counts = "".join(f"{states[state]:>13}" for state in STATES)
    return f"{name:<22}{len(outcomes):>7}{counts}{noticed / max(told, 1):>9.0%}"


STATES = ("caught", "endless", "survived", "not finished", "unreached", "equal")


def asked_for() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--sample", type=int, default=602, help="how many faults")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--subject", action="append", choices=tuple(SUBJECTS))
    parser.add_argument("--budget", type=float, default=BUDGET, help="processor seconds for one")
    parser.add_argument("--jobs", type=int, default=1, help="processes")
    parser.add_argument("--controls", type=int, default=7, help="trials without a fault, first")
    parser.add_argument("--again", action="store_true", help="try again what was not noticed")
    parser.add_argument("--as-recorded", action="store_true", help="record no further tests")
    parser.add_argument("--inside", action="store_true", help="without tests/outside")
    parser.add_argument("--report", action="store_true", help="print what was found, try nothing")
    return parser.parse_args()


def main() -> None:
    asked = asked_for()
    chance = random.Random(asked.seed)
    subjects = asked.subject or list(SUBJECTS)
    size = -(-asked.sample // len(subjects))
    drawn = {subject: sample(subject, size, chance) for subject in subjects}
    listed = [
        (subject, *drawn[subject][n])
        for n in range(size)
        for subject in subjects
        if n < len(drawn[subject])
    ]
    done = CACHE / "mutants.jsonl"
    if not asked.report:
        session.collected(
            test_files(inside=asked.inside), lambda items: _work(items, listed, done, asked)
        )
    report(listed, _known(done, listed), asked.seed)


def _work(
    items: dict[str, list[Any]],
    listed: list[tuple[str, str, Fault]],
    done: Path,
    asked: argparse.Namespace,
) -> None:
    session.ready()
    session.refuse_processes()
    given = {file for _, file, _ in listed}
    reach = _reach(items, given, asked.jobs, as_recorded=asked.as_recorded)
    session.with_examples(session.TRIED)
    tests = {item.nodeid: item for of_file in items.values() for item in of_file}
    known = _known(done, listed)
    noticing: dict[str, Counter[str]] = {}
    for number, found in known.items():
        noticing.setdefault(listed[number][1], Counter())[found.by] += 1

    def outcome(file: str, fault: Fault, tree: ast.Module) -> Outcome:
        def prepare() -> None:
            session.keep_apart(CACHE)
            session.forget(module_of(file))
            module = sys.modules[module_of(file)]
            put_in(module, file, tree, in_function=fault.function != (0, 0))

        counts = noticing.setdefault(file, Counter())
        chosen = [(tests[name], took) for name, took in reaching(reach, file, fault, counts)]
        found = tried(prepare, chosen, session.fails_not, asked.budget)
        counts[found.by] += 1
        return found

    for subject, file, fault in listed[: asked.controls]:
        found = outcome(file, fault, ast.parse((ROOT / file).read_text("utf-8")))
        print(f"without a fault, {subject}, {file}:{fault.line}: {found.state} {found.by} "
              f"({found.tests} of {found.reaching} tests)", flush=True)  # fmt: skip

    wanted = [
        number
        for number in range(len(listed))
        if number not in known or (asked.again and known[number].state not in NOTICED)
    ]

    def some(worker: int) -> None:
        for number in wanted[worker :: asked.jobs]:
            _, file, fault = listed[number]
            tree = faulty((ROOT / file).read_text("utf-8"), fault)
            found = outcome(file, fault, tree)
            with done.open("a", encoding="utf-8") as out:
                out.write(json.dumps([_place(file, fault), astuple(found)]) + "\n")
            if found.state not in NOTICED:
                print(_not_noticed(file, fault, found), flush=True)

    session.in_workers(asked.jobs, some)


def _reach(items: dict[str, list[Any]], faulty: set[str], jobs: int, *, as_recorded: bool) -> Reach:
    """Return which tests reach the modules that get a fault, recording what is not known."""
    folder = CACHE / "reach"
    folder.mkdir(parents=True, exist_ok=True)
    modules = [file for subject in SUBJECTS for file in files_of(subject)]
    unknown = [] if as_recorded else [f for f in items if kept_of(f, folder, faulty) is None]
    unknown.sort(key=lambda file: ("/outside/" in file, not is_whole(file), file))

    def some(worker: int) -> None:
        session.with_examples(session.EXAMPLES)
        for file in unknown[worker::jobs]:
            if os.fork() == 0:
                log = os.open(os.devnull, os.O_WRONLY)
                os.dup2(log, 1)
                session.forget()
                record(file, items[file], modules, folder, session.passes)
                os._exit(0)
            os.wait()

    if unknown:
        print(f"{len(unknown)} files of tests are recorded", flush=True)
        session.in_workers(jobs, some)
    reach = Reach()
    for file in items:
        part = kept_of(file, folder, faulty)
        if part is not None:
            reach.take(part)
    return reach


def _known(path: Path, listed: list[tuple[str, str, Fault]]) -> dict[int, Outcome]:
    """Return the outcomes of the faults that were tried already, in this draw or another."""
    lines = path.read_text("utf-8").splitlines() if path.exists() else []
    found = {tuple(place): Outcome(*outcome) for place, outcome in map(json.loads, lines)}
    places = (_place(file, fault) for _, file, fault in listed)
    return {number: found[place] for number, place in enumerate(places) if place in found}


def _not_noticed(file: str, fault: Fault, outcome: Outcome) -> str:
    return (
        f"{outcome.state} {outcome.tests}/{outcome.reaching} tests: {file}:{fault.line} "
        f"{fault.kind}: {fault.before} -> {fault.shown}"
    )


Named = tuple[str, str, str, str]  # the file, its line, what stands there, the fault


def equal_faults() -> dict[Named, str]:
    """Return the faults that change nothing anyone can see, with the reason of each."""
    lines = (HERE / "mutating/equal.tsv").read_text("utf-8").splitlines()[1:]
    rows = (line.split("\t") for line in lines)
    return {(file, line, before, shown): why for file, line, before, shown, why in rows}


def _place(file: str, fault: Fault) -> Named:
    line = (ROOT / file).read_text("utf-8").splitlines()[fault.line - 1].strip()
    return file, line, fault.before, fault.shown


def report(listed: list[tuple[str, str, Fault]], outcomes: dict[int, Outcome], seed: int) -> None:
    """Print the tables."""
    equal = equal_faults()
    rows = []
    for number, (subject, file, fault) in enumerate(listed):
        if number in outcomes:
            found = outcomes[number]
            if found.state not in NOTICED and _place(file, fault) in equal:
                found = Outcome("equal", "", found.tests, found.reaching, found.seconds)
            rows.append((subject, fault.kind, found))
    head = "".join(f"{state:>13}" for state in STATES)
    print(f"\nseed {seed}\n{'':<22}{'faults':>7}{head}{'noticed':>9}")
    for subject in dict.fromkeys(subject for subject, _, _ in rows):
        print(tally([found for of, _, found in rows if of == subject], subject))
    print(tally([found for _, _, found in rows], "all"))
    for kind in sorted({kind for _, kind, _ in rows}):
        print(tally([found for _, of, found in rows if of == kind], kind))
    seconds = sum(found.seconds for _, _, found in rows)
    print(f"processor: {seconds:.0f} s, {seconds / max(len(rows), 1):.1f} s a fault")


if __name__ == "__main__":
    main()
