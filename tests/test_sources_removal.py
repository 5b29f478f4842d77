"""What is left in a library is still found when texts are removed from it."""

from __future__ import annotations

from pathlib import Path

from inscribe.notation import parse
from inscribe.sources import adding
from inscribe.sources.library import Library
from inscribe.sources.ranking import find
from inscribe.sources.texts import SourceText


def test_what_is_left_is_found_when_the_last_texts_are_removed(tmp_path: Path) -> None:
    with Library(tmp_path / "l.sqlite", create=True) as held:
        adding.add_texts(held, [SourceText("kept", ("はなのいろはうつりにけりな",))], 1)
        later = [SourceText(f"t{n}", ("はなのいろ" + "あかさたなはま"[n] * 4,)) for n in range(7)]
        adding.add_texts(held, later, 7)
        held.remove([text.id for text in later])
        assert [hit.text.id for hit in find(held, parse("花の色はうつりにけりな"))] == ["kept"]
