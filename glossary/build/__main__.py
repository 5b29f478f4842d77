"""Make the tables that are not kept by hand: ``python glossary/build [--check] [SCRIPT...]``.

The scripts run in their order, for some read what others made. With ``--check`` nothing is
written; each table is compared with what is there, and the exit status is 1 if one differs. Each
script says in its docstring what it needs; one whose sources are missing is told and passed over.
"""

from __future__ import annotations

import argparse
import sys
from importlib import import_module
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parent.parent.parent)]

ORDER = (
    "hentaigana",
    "manyogana",
    "reduplications",
    "related_forms",
    "name_lists",
    "name_statistics",
    "name_signs",
    "name_dictionary",
    "surname_counts",
    "everyday_stems",
    "characters",
    "compounds",
    "glosses",
    "jukujikun",
    "other_writings",
    "later_nouns",
    "prose_usual",
    "proverbs",
    "parts",
    "look_alikes",
    "sign_shapes",
    "misread_formulas",
    "eras",
    "months",
)


def run(script: str, *, check: bool) -> bool:
    """Run a script; return whether all its tables are as they were, or could not be made."""
    from sources import as_text

    from inscribe import tables
    from inscribe.descriptions import described

    try:
        made = import_module(script).built()
    except (ImportError, FileNotFoundError) as missing:
        print(f"{script}: passed over, its sources are missing ({missing})")
        return True
    same = True
    for name, rows in made.items():
        file, text = described(name).file, as_text(name, rows)
        is_new = file.read_text(encoding="utf-8") != text
        if is_new and not check:
            file.write_text(text, encoding="utf-8")
            tables.forget()
        print(f"{script}: {name}, {len(rows)} rows, {'differs' if is_new else 'as it was'}")
        same &= not is_new
    return same


def main() -> int:
    """Run the scripts that are named, or all."""
    options = argparse.ArgumentParser(prog="python glossary/build", description=__doc__)
    options.add_argument("--check", action="store_true", help="compare, write nothing")
    options.add_argument("script", nargs="*", help=f"one of {', '.join(ORDER)}")
    asked = options.parse_args()
    wanted = {name.removesuffix(".py") for name in asked.script} or set(ORDER)
    if unknown := wanted - set(ORDER):
        options.error(f"there is no script {sorted(unknown)[0]}")
    same = [run(script, check=asked.check) for script in ORDER if script in wanted]
    return int(asked.check and not all(same))


if __name__ == "__main__":
    sys.exit(main())
