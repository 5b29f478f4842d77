"""The rules of the house that a machine can keep: one-way imports, short files, sourced tables."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from importlib import import_module
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

# A room may import itself and the rooms before it, and only through their doors (``__init__``).
ORDER = [
    "late",
    "scripts",
    "errors",
    "encodings",
    "remarks",
    "signs",
    "files",
    "writing",
    "pictures",
    "strict",
    "workers",
    "tables",
    "notebook",
    "settings",
    "terms",
    "keys",
    "cautions",
    "descriptions",
    "notation",
    "forms",
    "dates.model",
    "dates.calendar",
    "dates.written",
    "dates.meaning",
    "dates",
    "reading.spelling",
    "reading.words",
    "reading.mecab",
    "reading.prose",
    "reading.lexicon",
    "reading.verse",
    "reading.chinese",
    "reading.names",
    "reading.signatures",
    "reading.suspicious",
    "reading.passages",
    "reading.inscription",
    "reading",
    "glossing",
    "record.model",
    "record.fields",
    "record.reading",
    "record.boxes",
    "record.writing",
    "record.tei",
    "record",
    "persons",
    "collation.accounts",
    "collation.parts",
    "collation.model",
    "collation.align.sides",
    "collation.align.searching",
    "collation.align.long_texts",
    "collation.align.differences",
    "collation.align",
    "collation.space",
    "collation",
    "measuring",
    "keeping",
    "sources",
    "restoring",
    "concordance",
    "indexing",
    "entry",
    "checking",
    "settling",
    "importing",
    "recording",
    "report",
    "report.drawing",
    "report.entries",
    "report.pages",
    "report.tei",
    "report.lido",
    "report.linked",
    "report.collations",
    "report.terminal",
    "report.indexes",
    "report.measured",
    "credits",
    "guide",
    "cli.showing",
    "cli.giving",
    "cli.asking",
    "cli.entries",
    "cli",
]
# Inner rooms that share the types of the room around them.
SHARED = {"dates.model", "collation.accounts", "collation.parts", "collation.model"}
MODULES = sorted(PACKAGE.rglob("*.py"))
NO_ROOMS = (PACKAGE, PACKAGE / "cli")
DOORS = [m for m in MODULES if m.name == "__init__.py" and m.parent not in NO_ROOMS]


def dotted(module: Path) -> str:
    """Return the name of a module below the package; the door of a room is the room."""
    parts = module.relative_to(PACKAGE).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def room_of(name: str) -> str:
    """Return the innermost room of the order that a dotted name lies in, or nothing."""
    while name and name not in ORDER:
        name = name.rpartition(".")[0]
    return name


def imported_modules(module: Path) -> set[str]:
    """Return what a module imports of the package, inside functions too, as dotted names."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            for alias in node.names:
                whole = f"{node.module}.{alias.name}".removeprefix("inscribe.")
                is_module = (PACKAGE / whole.replace(".", "/")).with_suffix(".py").exists()
                is_room = (PACKAGE / whole.replace(".", "/")).is_dir()
                name = node.module if not (is_module or is_room) else f"inscribe.{whole}"
                found |= {name} if name.startswith("inscribe.") else set()
        elif isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names if alias.name.startswith("inscribe.")}
    return {name.removeprefix("inscribe.") for name in found}


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_every_module_is_in_a_room_of_the_order(module: Path) -> None:
    assert dotted(module) in ("", "__main__") or room_of(dotted(module))


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_imports_run_one_way(module: Path) -> None:
    name = dotted(module)
    if name in ("", "__main__"):
        return
    place = ORDER.index(room_of(name))
    is_door = module.name == "__init__.py"
    later = {
        other
        for other in imported_modules(module)
        if room_of(other) and ORDER.index(room_of(other)) > place
    }
    assert not {o for o in later if not (is_door and o.startswith(f"{name}."))}


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_rooms_are_entered_by_their_doors(module: Path) -> None:
    name = dotted(module)
    own = name if module.name == "__init__.py" else name.rpartition(".")[0]
    for other in imported_modules(module):
        home = other.rpartition(".")[0]
        is_door = (PACKAGE / other.replace(".", "/")).is_dir()
        assert is_door or home in ("", own) or other in SHARED, f"{name} imports {other}"


@pytest.mark.parametrize("door", DOORS, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_door_gives_what_it_names(door: Path) -> None:
    text = door.read_text(encoding="utf-8")
    named = {
        (alias.asname or alias.name)
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.ImportFrom)
        and (node.module or "").startswith(f"inscribe.{dotted(door)}.")
        for alias in node.names
    }
    room = import_module(f"inscribe.{dotted(door)}")
    assert ast.get_docstring(ast.parse(text))
    for name in named:
        assert not (door.parent / f"{name}.py").exists(), f"{name} is a file of the room too"
        assert getattr(room, name) is getattr(room, name)


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_file_is_read_in_one_sitting(module: Path) -> None:
    assert len(module.read_text(encoding="utf-8").splitlines()) <= 300


@pytest.mark.parametrize("module", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_function_is_seen_at_once(module: Path) -> None:
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef) and node.end_lineno:
            assert node.end_lineno - node.lineno < 60, node.name


def test_no_two_classes_have_one_name() -> None:
    homes: dict[str, list[str]] = {}
    for module in MODULES:
        for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef):
                homes.setdefault(node.name, []).append(dotted(module))
    assert {name: where for name, where in homes.items() if len(where) > 1} == {}


def test_no_modules_import_one_another_in_a_circle() -> None:
    """Imports inside functions count; a name from a door counts for the file it comes from."""
    files = {f"inscribe.{dotted(m)}".rstrip("."): m for m in MODULES}
    trees = {name: ast.parse(module.read_text(encoding="utf-8")) for name, module in files.items()}
    doors = {
        (room, alias.asname or alias.name): node.module
        for room, tree in trees.items()
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(f"{room}.")
        for alias in node.names
    }
    needed = {
        name: {home_of(*each, doors, files) for each in names_used(tree)} - {name, ""}
        for name, tree in trees.items()
        if files[name].name != "__init__.py"
    }
    waiting = {name: homes & needed.keys() for name, homes in needed.items()}
    while done := {name for name, homes in waiting.items() if not homes}:
        waiting = {name: homes - done for name, homes in waiting.items() if name not in done}
    assert not waiting, f"these are in a circle, or need one that is: {sorted(waiting)}"


def names_used(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Yield the names of the package that a module uses when it runs, each with its module."""
    for_types = {
        id(inner)
        for node in ast.walk(tree)
        if isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING"
        for inner in ast.walk(ast.Module(node.body, []))
    }
    rooms: dict[str, str] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and id(node) not in for_types:
            for alias in node.names if (node.module or "").startswith("inscribe") else ():
                rooms[alias.asname or alias.name] = f"{node.module}.{alias.name}"
                yield node.module or "", alias.name
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
            room = rooms.get(node.value.id, "")
            yield room, node.attr if room else ""


def home_of(
    module: str, name: str, doors: dict[tuple[str, str], str], files: dict[str, Path]
) -> str:
    """Return the module that a name comes from, behind whatever doors."""
    while (module, name) in doors:
        module = doors[module, name]
    return f"{module}.{name}" if f"{module}.{name}" in files else module


def test_the_top_level_holds_only_what_the_card_allows() -> None:
    tracked = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if tracked.returncode:
        pytest.skip("not a git checkout")
    top = {line.split("/")[0] for line in tracked.stdout.splitlines()}
    assert {name for name in top if not name.startswith(".")} <= ALLOWED_AT_TOP


def test_the_program_starts_without_heavy_libraries() -> None:
    heavy = ["rich", "pykakasi", "fugashi", "sqlite3", "jinja2", "numpy", "cv2", "PIL", "tomlkit"]
    heavy += ["prompt_toolkit"]
    code = f"import sys, inscribe.cli; print([m for m in {heavy} if m in sys.modules])"
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert out.stdout.strip() == "[]"
