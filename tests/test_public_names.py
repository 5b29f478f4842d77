"""The names of the library: each stays what it is, whatever has been imported since."""

from __future__ import annotations

import subprocess
import sys

EVERYTHING = """
import importlib, pkgutil, types, inscribe
before = {name: getattr(inscribe, name) for name in inscribe.__all__}
for found in pkgutil.walk_packages(inscribe.__path__, "inscribe."):
    if not found.name.endswith("__main__"):
        importlib.import_module(found.name)
for name, value in before.items():
    now = getattr(inscribe, name)
    assert callable(now), f"{name} has become {now}"
    assert now is value or isinstance(now, types.ModuleType), name
"""
TWICE = """
import inscribe
copy, source = inscribe.parse("夢の浮橋"), inscribe.parse("ゆめのうきはし")
first = inscribe.collate(copy, source)
assert inscribe.collate(copy, source) == first
import inscribe.collation
assert inscribe.collate(copy, source) == first
from inscribe.collation import collate
assert collate(copy, source) == first
"""


def run(code: str) -> None:
    found = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False, encoding="utf-8"
    )
    assert found.returncode == 0, found.stderr


def test_collate_can_be_called_again() -> None:
    run(TWICE)


def test_every_public_name_can_still_be_called_when_all_modules_are_imported() -> None:
    run(EVERYTHING)
