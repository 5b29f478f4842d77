"""Which small faults the tests notice: ``python tests/benchmarks/mutants.py [--sample N]``.

Needs ``pip install coverage``. ``--record`` first runs the tests once (some minutes) and keeps
which test runs which line; then each fault of a sample is put into one module, and the tests that
run its line are run, fastest first, until one fails. As many faults are drawn of each subject, by
``--seed``. Printed: caught and survived by subject and by kind, and every fault that survived. One
that changes nothing anyone can see counts as survived too; so does one whose tests took too long.
Outcomes are kept in the cache folder: the same call goes on where it was ended.

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
from collections.abc import Iterator
from dataclasses import astuple
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(ROOT)]
sys.path.append(str(HERE))

from mutating.operators import Fault, faults, faulty  # noqa: E402
from mutating.reach import Reach, record  # noqa: E402
from mutating.trial import Outcome, ready, tried  # noqa: E402

READING = ("inscription", "passages", "signatures", "suspicious", "verse")
SUBJECTS = {
    "collation": ("inscribe/collation",),
    "space": ("inscribe/collation/space",),
    "dates": ("inscribe/dates",),
    "reading": tuple(f"inscribe/reading/{room}" for room in READING),
    "restoring": ("inscribe/restoring",),
    "forms": ("inscribe/forms",),
    "checks": ("inscribe/checking", "inscribe/record/reading/checks.py"),
}
TESTS = (
    "boxes", "broken_records", "check", "check_across", "chinese*", "collate_*", "dates_*",
    "division", "entry", "entry_passages", "*_answers", "forms_*", "given", "historical", "index",
    "iso3602", "kanbun", "line_ends", "lines_end", "manuscript_spelling", "merged_words", "metre",
    "modern", "names", "notation*", "old_spellings", "other_documents", "output_schemas",
    "overriding",
    "passages*", "persons", "printed", "prose", "reading*", "record*", "restore*", "romanise",
    "sayings", "second_opinion", "settle*", "sign*", "space*", "sources_probability", "suspicious",
    "surroundings", "tei", "verse_*", "witnesses", "word_groups",
)  # fmt: skip
NOT_REACHING = ("entry_tei", "entry_lido", "entry_web", "entry_formats", "glossary_build")
CACHE = Path(os.environ.get("INSCRIBE_CACHE", "~/.cache/inscribe")).expanduser()
SLOW = ("tests/test_entry.py", "tests/test_tei.py")  # their tests show every part at once
ANSWERS = "_answers.py"
LONG = 10.0  # seconds of a test that is not tried
BUDGET = 30.0  # seconds of the processor for one fault
NEAR = 20  # tests of a line; with fewer, those of its function are run too


def test_files() -> list[str]:
    """Return the files of tests that may notice a fault."""
    named = [path for name in TESTS for path in sorted(ROOT.glob(f"tests/test_{name}.py"))]
    outside = [
        path
        for path in sorted(ROOT.glob("tests/outside/test_*.py"))
        if not any(name in path.name for name in NOT_REACHING)
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
    every = [
        (file, fault)
        for file in files_of(subject)
        for fault in faults((ROOT / file).read_text("utf-8"))
    ]
    return chance.sample(every, min(size, len(every)))


def reaching(reach: Reach, file: str, fault: Fault) -> list[str]:
    """Return the tests that run the line of a fault, in the order in which they are tried.

    Tests of whole answers come first; those that run the line itself come before those that run its
    function; of each file of tests one, the fastest, then of each file another: so that tests of
    many kinds are tried early.
    """
    line = reach.of(file, range(fault.line, fault.line + 1))
    near: set[int] = set()
    if fault.function == (0, 0):
        near = {test for lines in _naming(file, fault.name) for test in reach.of(*lines)}
    elif len(line) < NEAR:
        near = reach.of(file, range(fault.function[0] + 1, fault.function[1] + 1))
    whole = {test for test in line | near if ANSWERS in reach.tests[test]}
    ordered = (
        *_mixed(reach, whole),
        *_mixed(reach, line - whole),
        *_mixed(reach, near - line - whole),
    )
    return [reach.tests[test] for test in ordered]


def _mixed(reach: Reach, tests: set[int]) -> list[int]:
    """Return tests so that every file has its turn, the fastest of each first."""
    turns = Counter[str]()
    placed = []
    for test in sorted(tests, key=lambda test: reach.seconds[test]):
        of_file = reach.tests[test].partition("::")[0]
        if of_file not in SLOW and reach.seconds[test] < LONG:
            turns[of_file] += 1
            placed.append((turns[of_file], reach.seconds[test], test))
    return [test for _, _, test in sorted(placed)]


def _naming(file: str, name: str) -> Iterator[tuple[str, range]]:
    """Yield the lines of functions that name a constant or class, in the whole package."""
    for path in [file, *(str(p.relative_to(ROOT)) for p in (ROOT / "inscribe").rglob("*.py"))]:
        text = (ROOT / path).read_text("utf-8")
        if name.partition(".")[0] in text:
            for node in ast.walk(ast.parse(text)):
                if isinstance(node, ast.FunctionDef):
                    names = {n.id for n in ast.walk(node) if isinstance(n, ast.Name)}
                    if name in names:
                        yield path, range(node.lineno + 1, (node.end_lineno or node.lineno) + 1)


def module_of(file: str) -> str:
    """Return the name a file is imported by.

    >>> module_of("inscribe/dates/__init__.py"), module_of("inscribe/forms/alike.py")
    ('inscribe.dates', 'inscribe.forms.alike')
    """
    return file.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


def tally(rows: list[tuple[str, Fault, Outcome]], name: str) -> str:
    """Return one line of the table."""
    states = Counter(outcome.state for _, _, outcome in rows)
    caught = states["caught"] + states["hung"]
    return (
        f"{name:<24}{len(rows):>6}{caught:>8}{states['hung']:>6}{states['survived']:>10}"
        f"{states['unreached']:>11}{caught / max(len(rows), 1):>8.0%}"
    )


def main() -> None:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--sample", type=int, default=602, help="how many faults")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--subject", action="append", choices=tuple(SUBJECTS))
    parser.add_argument("--budget", type=float, default=BUDGET, help="processor seconds for one")
    parser.add_argument("--record", action="store_true", help="record which tests reach what")
    parser.add_argument("--jobs", type=int, default=1, help="processes")
    parser.add_argument("--controls", type=int, default=7, help="trials without a fault, first")
    asked = parser.parse_args()
    sys.dont_write_bytecode, sys.pycache_prefix = False, str(CACHE / "compiled")
    kept = CACHE / "reach.json"
    if asked.record or not kept.exists():
        if os.fork() == 0:  # this process is not to import the package
            record(test_files(), ["inscribe"], kept)
            os._exit(0)
        os.wait()
    reach = Reach.read(kept)
    chance = random.Random(asked.seed)
    subjects = asked.subject or list(SUBJECTS)
    size = -(-asked.sample // len(subjects))
    drawn = {subject: sample(subject, size, chance) for subject in subjects}
    ready()
    for subject in subjects[: asked.controls]:
        file, fault = drawn[subject][0]
        whole = ast.parse((ROOT / file).read_text("utf-8"))
        outcome = tried(module_of(file), whole, reaching(reach, file, fault), asked.budget)
        print(f"without a fault, {file}:{fault.line}: {outcome.state} {outcome.by}", flush=True)
    listed = [(subject, *drawn[subject][n]) for n in range(size) for subject in subjects]
    done = CACHE / f"mutants-{asked.seed}-{asked.sample}-{'-'.join(subjects)}.jsonl"
    workers = [
        _fork(listed, worker, asked.jobs, reach, done, asked.budget) for worker in range(asked.jobs)
    ]
    for worker in workers:
        os.waitpid(worker, 0)
    outcomes = _read(done)
    rows: dict[str, list[tuple[str, Fault, Outcome]]] = {subject: [] for subject in subjects}
    for number, (subject, file, fault) in enumerate(listed):
        if number in outcomes:
            rows[subject].append((file, fault, outcomes[number]))
    report(rows, asked.seed)


def _read(path: Path) -> dict[int, Outcome]:
    lines = path.read_text("utf-8").splitlines() if path.exists() else []
    found = (json.loads(line) for line in lines)
    return {each["number"]: Outcome(*each["outcome"]) for each in found}


def _fork(
    listed: list[tuple[str, str, Fault]],
    worker: int,
    jobs: int,
    reach: Reach,
    done: Path,
    budget: float,
) -> int:
    """Start a process that tries every so-many-th fault, and writes down each outcome at once."""
    child = os.fork()
    if child:
        return child
    known = _read(done)
    for number in range(worker, len(listed), jobs):
        if number in known:
            continue
        _, file, fault = listed[number]
        tree = faulty((ROOT / file).read_text("utf-8"), fault)
        outcome = tried(module_of(file), tree, reaching(reach, file, fault), budget)
        with done.open("a", encoding="utf-8") as out:
            out.write(json.dumps({"number": number, "outcome": astuple(outcome)}) + "\n")
        if outcome.state in ("survived", "unreached"):
            print(_survivor(file, fault, outcome), flush=True)
    os._exit(0)


def _survivor(file: str, fault: Fault, outcome: Outcome) -> str:
    return (
        f"{outcome.state} {outcome.tests} tests: {file}:{fault.line} {fault.kind}: "
        f"{fault.before} -> {fault.shown}"
    )


def report(rows: dict[str, list[tuple[str, Fault, Outcome]]], seed: int) -> None:
    """Print the tables."""
    every = [row for found in rows.values() for row in found]
    head = f"{'':<24}{'faults':>6}{'caught':>8}{'hung':>6}{'survived':>10}{'unreached':>11}{'':>8}"
    print(f"\nseed {seed}\n{head}")
    for subject, found in rows.items():
        print(tally(found, subject))
    print(tally(every, "all"))
    for kind in sorted({fault.kind for _, fault, _ in every}):
        print(tally([row for row in every if row[1].kind == kind], kind))
    seconds = sum(outcome.seconds for _, _, outcome in every)
    print(f"processor: {seconds:.0f} s, {seconds / max(len(every), 1):.1f} s a fault")


if __name__ == "__main__":
    main()
