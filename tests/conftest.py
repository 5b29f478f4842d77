"""Settings of hypothesis for all tests, and tables of a user's."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from inscribe import tables
from inscribe.descriptions import add_glossary, described

# A busy machine is no error in what is tested.
settings.register_profile("house", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("house")

# Where the tests run in the background, Ctrl-C is ignored by what they start, too.
signal.signal(signal.SIGINT, signal.default_int_handler)


@pytest.fixture
def user_table(tmp_path: Path) -> Iterator[Callable[..., None]]:
    """Return a function that gives the program a user's table: its name, its rows."""
    folder = tmp_path / "glossary"
    folder.mkdir()

    def give(name: str, *rows: str) -> None:
        if folder in tables.folders():
            tables.remove_folder(folder)
        lines = ("\t".join(described(name).columns), *rows)
        (folder / f"{name}.tsv").write_text("\n".join(lines) + "\n", encoding="utf-8")
        add_glossary(folder)

    yield give
    if folder in tables.folders():
        tables.remove_folder(folder)
