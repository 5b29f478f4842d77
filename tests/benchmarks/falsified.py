"""Whether a false cell in a table of facts is noticed: ``python tests/benchmarks/falsified.py``.

``--cells`` cells (200) of the tables of facts are falsified one at a time, drawn by ``--seed``: a
table, one of its columns of facts, a row. A number is one more; a sign or kana is exchanged for one
of another row of that column; a letter for another. Then the tests of ``tests/outside`` that hold
the table are run, on a copy of the glossary that has the false cell; nothing in the repository is
touched. Printed: noticed of how many, by table, and every cell that was not noticed.

Not falsified, for they state no fact or nobody publishes it: weights, costs, English glosses,
notes, kinds and sorts (this program's own divisions).
"""

from __future__ import annotations

import argparse
import os
import random
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "tests/outside")]

import debian  # noqa: E402
import edrdg  # noqa: E402
import pytest  # noqa: E402

GLOSSARY = ROOT / "glossary"
READ = ("written", "kana")
# The columns of facts of each table, and the tests that hold it.
FACTS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "dates/eras": (
        ("written", "kana", "romaji", "year", "month", "day", "last_year"),
        ("test_edrdg", "test_dates_cldr"),
    ),
    "dates/month_names": (
        ("written", "month", "kana", "romaji"),
        ("test_edrdg", "test_months_by_parts"),
    ),
    "dates/day_words": (("written", "kana", "romaji"), ("test_edrdg",)),
    "dates/festivals": (
        ("written", "month", "day", "kana", "romaji"),
        ("test_edrdg", "test_months_by_parts"),
    ),
    "dates/solar_terms": (
        ("written", "earliest", "latest", "kana", "romaji"),
        ("test_edrdg", "test_facts_beside"),
    ),
    "dates/date_words": (("written", "kana", "romaji"), ("test_edrdg",)),
    "dates/cycle": (
        ("value", "written", "kun", "kun_romaji", "on_romaji"),
        ("test_edrdg", "test_dates_packages"),
    ),
    "dates/months": (
        ("new_year", "leap", "lengths"),
        ("test_dates_packages", "test_dates_published"),
    ),
    "forms/numbers": (("written", "value"), ("test_readings", "test_numbers")),
    "forms/characters": (("strokes", "on", "kun", "names"), ("test_readings",)),
    "forms/old_forms": (("written", "current"), ("test_joyo", "test_variants", "test_ivd")),
    "forms/variants": (("written", "current"), ("test_variants",)),
    "forms/related_forms": (("written", "other"), ("test_variants",)),
    "kana/hentaigana": (("written", "kana", "parent"), ("test_kana_of_unicode",)),
    "kana/kana_ligatures": (
        ("hiragana", "katakana"),
        ("test_kana_of_unicode", "test_facts_beside"),
    ),
    "kana/parent_forms": (("written", "parent"), ("test_parent_forms",)),
    "kana/romanisation": (
        ("kana", "hepburn", "iso"),
        ("test_romanization_tables", "test_facts_beside"),
    ),
    "signatures/provinces": (("written", "kana", "province"), ("test_edrdg", "test_places")),
    "signatures/cities": (READ, ("test_edrdg", "test_places")),
    "signatures/titles": (READ, ("test_edrdg",)),
    "signatures/techniques": (READ, ("test_edrdg",)),
    "signatures/subjects": (READ, ("test_edrdg",)),
    "signatures/works": (READ, ("test_edrdg",)),
    "names/surnames": (("names",), ("test_edrdg",)),
    "names/place_names": (("names",), ("test_edrdg",)),
}
Cell = tuple[str, int, str]


def rows_of(table: str) -> list[dict[str, str]]:
    """Return the rows of a table by its path in the glossary."""
    head, *lines = (GLOSSARY / f"{table}.tsv").read_text("utf-8").splitlines()
    columns = head.split("\t")
    return [dict(zip(columns, line.split("\t"), strict=True)) for line in lines if line[:1] != "#"]


def drawn(chance: random.Random) -> Cell:
    """Draw a table, a column of facts of it, and a row that says something there."""
    table = chance.choice(list(FACTS))
    column = chance.choice(FACTS[table][0])
    return table, chance.choice([n for n, row in enumerate(rows_of(table)) if row[column]]), column


def false(cell: Cell, chance: random.Random) -> str:
    """Return what a false cell says: one number more, or one sign from another row."""
    table, place, column = cell
    rows = rows_of(table)
    value = rows[place][column]
    if value.isdigit():
        return str(int(value) + 1)
    others = "".join(row[column] for row in chance.sample(rows, min(len(rows), 30)))
    figures = "=" not in value  # in a list of names they are weights
    usable = [
        n for n, sign in enumerate(value) if sign.isalnum() and (figures or not sign.isdigit())
    ]
    for _ in range(1000):
        at = chance.choice(usable)
        new = chance.choice(others)
        if new.lower() != value[at].lower() and _is_like(new, value[at]):
            return value[:at] + new + value[at + 1 :]
    raise LookupError(f"nothing to falsify in {cell}")


def drawn_false(chance: random.Random) -> tuple[Cell, str]:
    """Draw a cell and what it shall say; another where nothing can be exchanged."""
    while True:
        cell = drawn(chance)
        try:
            return cell, false(cell, chance)
        except LookupError:
            continue


def _is_like(one: str, other: str) -> bool:
    """Whether two signs are of one kind: figures, Latin letters, kana of a kind, the rest."""

    def kind(sign: str) -> str:
        if "぀" <= sign <= "ヿ":
            return "hiragana" if sign < "゠" else "katakana"
        return "figure" if sign.isdigit() else "letter" if sign < "Ā" else "sign"

    return one.isalnum() and kind(one) == kind(other)


def copy_with(cell: Cell, value: str, folder: Path) -> Path:
    """Return a glossary of links to this one, but for the table that has the false cell."""
    table, place, column = cell
    made = folder / "glossary"
    for path in GLOSSARY.rglob("*"):
        here = made / path.relative_to(GLOSSARY)
        if path.is_dir():
            here.mkdir(parents=True, exist_ok=True)
        elif path != GLOSSARY / f"{table}.tsv":
            here.parent.mkdir(parents=True, exist_ok=True)
            here.symlink_to(path)
    rows = rows_of(table)
    rows[place][column] = value
    lines = ["\t".join(rows[0]), *("\t".join(row.values()) for row in rows)]
    (made / f"{table}.tsv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    return made


def noticed(cell: Cell, value: str) -> bool:
    """Whether a test fails where a cell says ``value``; run in a process of its own."""
    folder = Path(tempfile.mkdtemp())
    glossary = copy_with(cell, value, folder)
    child = os.fork()
    if child == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.dup2(null, 2)
        from inscribe.tables import glossary_folders  # before any other part of the package

        glossary_folders.PACKAGED = glossary
        files = [f"{ROOT}/tests/outside/{name}.py" for name in FACTS[cell[0]][1]]
        options = ["-o", "addopts=", "-x", "-q", "-p", "no:xdist", "-p", "no:cacheprovider"]
        # of the tests that have a case for each table, only this table's
        cases = f"not dictionaries and not latin or {cell[0].partition('/')[2]}"
        os._exit(int(pytest.main([*options, "-k", cases, *files])))
    _, status = os.waitpid(child, 0)
    shutil.rmtree(folder)
    return os.waitstatus_to_exitcode(status) != 0


def main() -> None:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--cells", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--no-controls", action="store_true", help="no tables without a false cell")
    parser.add_argument("--table", action="append", help="only these tables")
    asked = parser.parse_args()
    for name in [name for name in FACTS if asked.table and name not in asked.table]:
        del FACTS[name]
    debian.file("edict/edict", "edict")
    edrdg.words(""), edrdg.names(""), edrdg.readings_of_signs()
    os.chdir(ROOT)
    chance = random.Random(asked.seed)
    tried, found = Counter[str](), Counter[str]()
    for table in () if asked.no_controls else FACTS:  # what nobody falsified has to pass
        place = next(n for n, row in enumerate(rows_of(table)) if row[FACTS[table][0][0]])
        cell = table, place, FACTS[table][0][0]
        if noticed(cell, rows_of(table)[place][cell[2]]):
            print(f"{table}: its tests fail without a false cell", flush=True)
    for _ in range(asked.cells):
        cell, value = drawn_false(chance)
        tried[cell[0]] += 1
        if noticed(cell, value):
            found[cell[0]] += 1
        else:
            row = rows_of(cell[0])[cell[1]]
            print(f"not noticed: {cell[0]}, {next(iter(row.values()))}, {cell[2]}: {row[cell[2]]} "
                  f"-> {value}", flush=True)  # fmt: skip
        if tried.total() % 20 == 0:
            print(f"{found.total()} of {tried.total()} so far", flush=True)
    for table, count in sorted(tried.items()):
        print(f"{table:<28}{found[table]:>5} of {count}")
    print(f"seed {asked.seed}: {found.total()} of {tried.total()} noticed")


if __name__ == "__main__":
    main()
