"""The rules of the house that a machine can keep: one-way imports, short files, sourced tables."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "inscribe"
ALLOWED_AT_TOP = {
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "pyproject.toml",
    "inscribe",
    "tests",
    "examples",
    "glossary",
}

# A room may import itself and the rooms before it.
ORDER = [
    "errors",
    "signs",
    "files",
    "workers",
    "tables",
    "notation",
    "forms",
    "dates",
    "reading",
    "record",
    "collate",
    "measuring",
    "sources",
    "restoring",
    "concordance",
    "entry",
    "checking",
    "recording",
    "report",
    "cli",
]
MODULES = sorted(PACKAGE.rglob("*.py"))
TABLES = sorted((ROOT / "glossary").glob("*.tsv"))


def room_of(module: Path) -> str:
    return module.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imported_rooms(module: Path) -> set[str]:
    rooms: set[str] = set()
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            names = [node.module]
            if node.module == "inscribe":
                names = [f"inscribe.{alias.name}" for alias in node.names]
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        else:
            continue
        rooms |= {n.split(".")[1] for n in names if n.startswith("inscribe.")}
    return rooms


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_imports_run_one_way(module: Path) -> None:
    room = room_of(module)
    if room not in ORDER:
        return
    later = {r for r in imported_rooms(module) if r in ORDER and ORDER.index(r) > ORDER.index(room)}
    assert not later


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_file_is_read_in_one_sitting(module: Path) -> None:
    assert len(module.read_text(encoding="utf-8").splitlines()) <= 400


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_function_is_seen_at_once(module: Path) -> None:
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef) and node.end_lineno:
            assert node.end_lineno - node.lineno < 60, node.name


@pytest.mark.parametrize("table", TABLES, ids=lambda p: p.name)
def test_a_table_names_its_source_and_how_it_is_kept(table: Path) -> None:
    head = [line for line in table.read_text(encoding="utf-8").splitlines()[:30] if line[:1] == "#"]
    text = " ".join(head)
    assert "ource" in text, head
    assert "Rebuild: " in text or "by hand" in text, head
    assert "CC BY-SA" not in text or "Licence: CC BY-SA" in text, head


def test_the_top_level_holds_only_what_the_card_allows() -> None:
    tracked = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if tracked.returncode:
        pytest.skip("not a git checkout")
    top = {line.split("/")[0] for line in tracked.stdout.splitlines()}
    assert {name for name in top if not name.startswith(".")} <= ALLOWED_AT_TOP


def test_the_program_starts_without_heavy_libraries() -> None:
    heavy = ("rich", "pykakasi", "fugashi", "sqlite3", "jinja2", "numpy", "cv2", "PIL", "tomlkit")
    code = f"import sys, inscribe.cli; print([m for m in {heavy} if m in sys.modules])"
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert out.stdout.strip() == "[]"
