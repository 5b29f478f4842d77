"""A finding has the line of what it is about, in a record of more inscriptions than one."""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe.checking import check_folder
from inscribe.checking.findings import Finding

RECORD = """id = "A"
kind = "kozuka"
[[inscription]]
place = "front"
text = "武州住嶺暁作"
[[inscription]]
place = "back plate"
text = "はるのよの"
[inscription.source]
text = "はるのよの"
[[inscription.reading]]
by = "A. Reader"
kana = "はるのよの"
romaji = "haru no yo no"
[[inscription.reading]]
by = "B. Reader"
kana = "はるのやの"
romaji = "haru no ya no"
"""


def found_in(folder: Path, code: str) -> list[Finding]:
    return [each for each in check_folder(folder).findings if each.code == code]


def test_what_is_not_measured_is_told_at_the_source(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text(RECORD, "utf-8")
    (found,) = found_in(tmp_path, "unmeasured")
    assert RECORD.splitlines()[(found.line or 0) - 1] == "[inscription.source]"


def test_readers_who_read_otherwise_are_told_with_what_each_reads(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text(RECORD, "utf-8")
    found = found_in(tmp_path, "readers-differ")
    assert {each.message for each in found} == {
        "kana: A. Reader has はるのよの, B. Reader has はるのやの",
        "romaji: A. Reader has haru no yo no, B. Reader has haru no ya no",
    }
    for each in found:
        assert RECORD.splitlines()[(each.line or 0) - 1] == "[[inscription.reading]]"


@pytest.mark.parametrize(
    ("key", "said"),
    [("place", "bakc plate"), ("hand", "runing"), ("execution", "hairlin engraving")],
)
def test_an_unusual_word_of_an_inscription_is_told_at_its_line(
    key: str, said: str, tmp_path: Path
) -> None:
    lines = ['id = "A"', 'kind = "kozuka"', "[[inscription]]", 'text = "嶺暁作"']
    lines += [f'{key} = "{said}"'] + (['place = "front"'] if key != "place" else [])
    (tmp_path / "a.toml").write_text("\n".join(lines) + "\n", "utf-8")
    (found,) = found_in(tmp_path, "unusual-word")
    assert found.line == 5
    assert said in found.message
