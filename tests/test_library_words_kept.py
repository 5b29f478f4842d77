"""A source named by its id fixes the copied passage in ``check`` and ``concord`` as its text does.

The verse is the end of Shinkokinshu 38; two signs follow that may be a name or go on with it.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.checking import check_folder
from inscribe.cli import cli
from inscribe.concordance import collection
from inscribe.sources import Library, SourceText

POEM = "峯にわかるゝ横雲の空"
RECORD = """id = "D-1"
kind = "fuchi"

[[inscription]]
place = "back plate"
text = "峯にわかるゝ横雲の空朝霞"
"""


class Places:
    """The same record with its source as text, by id and without one, and the library."""

    def __init__(self, below: Path) -> None:
        self.library = below / "sources.sqlite"
        self.cache = below / "cache"
        self.by_text = self._folder(below / "text", f'text = "{POEM}"')
        self.by_id = self._folder(below / "id", 'id = "shinkokin-38"')
        self.by_none = self._folder(below / "none", "")
        self.put(POEM)

    def _folder(self, folder: Path, source: str) -> Path:
        folder.mkdir()
        said = f"{RECORD}\n[inscription.source]\n{source}\n" if source else RECORD
        (folder / "one.toml").write_text(said, "utf-8")
        return folder

    def put(self, words: str) -> None:
        """Make the library anew with these words."""
        self.library.unlink(missing_ok=True)
        with Library(self.library, create=True) as library:
            library.add([(SourceText("shinkokin-38", (words,)), ())])

    def read(self, folder: Path) -> object:
        """Return the words and the persons that ``concord`` knows of a folder."""
        found = collection(folder, library=self.library, cache=self.cache)
        assert not found.unread
        return [
            (list(map(tuple, each.words)), each.names, each.register) for each in found.documents
        ]

    def found(self, folder: Path) -> list[tuple[str, str]]:
        """Return what ``check`` finds of the reading in a folder."""
        checked = check_folder(folder, self.library, cache=self.cache, keep=True)
        return [(each.code, each.message) for each in checked.findings]


@pytest.fixture
def places(tmp_path: Path) -> Places:
    return Places(tmp_path)


def test_concord_reads_alike_by_text_and_by_id(places: Places) -> None:
    assert places.read(places.by_id) == places.read(places.by_text)
    assert places.read(places.by_id) != places.read(places.by_none)


def test_check_finds_alike_by_text_and_by_id(places: Places) -> None:
    found, wanted = places.found(places.by_id), places.found(places.by_text)
    assert found == wanted


def test_a_changed_text_of_the_library_is_noticed(places: Places) -> None:
    for looked in (places.read, places.found):
        places.put(POEM)
        before = looked(places.by_id)
        places.put("山")  # no text that the copy could be of
        changed = looked(places.by_id)
        places.put(POEM)
        assert looked(places.by_id) == before
        assert changed != before, looked.__name__


def test_index_reads_alike_by_text_and_by_id(places: Places) -> None:
    by_id, by_text, by_none = (
        _indexed(places, folder) for folder in (places.by_id, places.by_text, places.by_none)
    )
    assert by_id == by_text != by_none


def _indexed(places: Places, folder: Path) -> str:
    chosen = ["--of", "persons", "--of", "lines", "--library", str(places.library)]
    options = ["index", str(folder), *chosen, "--no-cache"]
    done = CliRunner().invoke(cli, options)
    assert not done.exit_code
    return done.output
