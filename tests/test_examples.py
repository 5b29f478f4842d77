"""The invented collection loads, says what it shows, and could exist in metal."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from inscribe import record
from inscribe.record import Record

EXAMPLES = Path(__file__).parent.parent / "examples"
FILES = sorted(EXAMPLES.glob("*.toml"))


@pytest.fixture(params=FILES, ids=lambda path: path.stem)
def path(request: pytest.FixtureRequest) -> Path:
    found: Path = request.param
    return found


def test_there_are_at_least_twelve() -> None:
    assert len(FILES) >= 12


def test_it_loads_under_its_own_number(path: Path) -> None:
    assert record.load(path).id == path.stem


def test_a_comment_says_what_it_shows(path: Path) -> None:
    assert path.read_text(encoding="utf-8").startswith("# Shows ")


def test_it_can_be_written_and_loaded_again(path: Path) -> None:
    loaded = record.load(path)
    assert record.loads(record.dump(loaded), str(path), path.parent) == loaded


def test_signs_stand_as_close_as_carvers_set_them(path: Path) -> None:
    # Check values of domain.md: a sign takes 3 to 6 mm of a column; columns do not overlap.
    for inscription in record.load(path).inscriptions:
        columns = inscription.transcription.columns
        for measure, column in zip(inscription.columns, columns, strict=False):
            assert 3.0 <= measure.length / len(column.signs) <= 6.2
        edges = [(m.x, m.x + m.width) for m in inscription.columns if m.x and m.width]
        for (left, _), (_, right) in pairwise(edges):
            assert right <= left


def test_the_collection_shows_every_kind_of_mark() -> None:
    loaded = [record.load(path) for path in FILES]
    text = "".join(i.text for r in loaded for i in r.inscriptions)
    for mark in (
        "□",
        "■",
        "(カ)",
        "カ)",
        "(損)",
        "［　　］",
        "（花押）",
        "（印）",
        "（印「",
        "」",
        "(者)",
    ):
        assert mark in text, mark
    assert any(len({reader.text for reader in r.inscriptions[0].readers}) == 2 for r in loaded)
    assert any(len(r.inscriptions) > 1 for r in loaded)


def _last_sign_bottom(loaded: Record) -> float:
    box = loaded.inscriptions[0].transcription.signs[-1].box
    assert box is not None
    return box.y + box.height


def test_the_measured_signs_fill_their_column() -> None:
    loaded = record.load(EXAMPLES / "DEMO-002.toml")
    measured = loaded.inscriptions[0].columns[-1]
    assert _last_sign_bottom(loaded) == pytest.approx(measured.bottom, abs=0.1)
