"""The tables that scripts make are what their scripts make of their sources now.

Sources: UniDic 2.1.2 (unidic-lite) and, where Debian's packages are installed, KANJIDIC2 and the
data files of Unicode; scripts whose sources are missing are passed over.
"""

from __future__ import annotations

import os
import subprocess
import sys
from importlib import import_module, util
from types import ModuleType

import pytest

from inscribe.descriptions import described, described_tables
from inscribe.tables import PACKAGED

BUILD = PACKAGED / "build"


@pytest.fixture
def build(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """Return the module that runs the scripts."""
    monkeypatch.setattr(sys, "path", [*sys.path])
    spec = util.spec_from_file_location("glossary_build", BUILD / "__main__.py")
    assert spec is not None
    assert spec.loader is not None
    module = util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("seed", ["1", "2"])
def test_the_names_are_what_unidic_gives_whatever_the_order_of_sets(seed: str) -> None:
    scripts = ("manyogana", "name_lists", "name_statistics")
    done = subprocess.run(
        [sys.executable, str(BUILD), "--check", *scripts],
        env={**os.environ, "PYTHONHASHSEED": seed},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "surnames" in done.stdout


def test_a_table_that_differs_is_told_and_left_alone(
    build: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    script, before = import_module("manyogana"), described("manyogana").file.read_bytes()
    assert build.run("manyogana", check=True)
    monkeypatch.setattr(script, "built", lambda: {"manyogana": [("花", "は", "kun", "mine")]})
    assert not build.run("manyogana", check=True)
    assert "manyogana, 1 rows, differs" in capsys.readouterr().out
    assert described("manyogana").file.read_bytes() == before


def test_every_script_is_run_and_every_made_table_has_one(build: ModuleType) -> None:
    named = {table.rebuild for table in described_tables().values()} - {""}
    assert {f"{script}.py" for script in build.ORDER} == named
    scripts = {path.name for path in BUILD.glob("*.py")} - {"__main__.py", "sources.py", "wheel.py"}
    assert scripts == named
