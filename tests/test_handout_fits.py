"""A handout takes one sheet of paper an object, however many inscriptions and pictures it has."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from test_pages_in_a_browser import LONG, needs_browser, sheets

from inscribe.entry import entry_of
from inscribe.record import load, loads
from inscribe.report.pages.entry import entries_as_handout
from inscribe.report.style import Style

EXAMPLES = Path(__file__).parent.parent / "examples"
PICTURE = '[[{of}image]]\nfile = "DEMO-004.jpg"\nshows = "Seen from the front"\n'
COPIED = "秋の田のかりほの庵の苫をあらみ我衣手は露にぬれつつ"


def several(pictures: int, places: dict[str, str], source: str = "") -> str:
    """Return a record with inscriptions by place, each with pictures, and two of the object."""
    made = 'id = "A-1"\nkind = "tsuba"\ntitle = "Of several parts"\n' + 2 * PICTURE.format(of="")
    for place, text in places.items():
        made += f"[[inscription]]\nplace = '{place}'\ntext = '''\n{text}'''\n"
        made += 'translation = "Made by Umehara Mineaki, who lives in Edo, on a lucky day."\n'
        made += pictures * PICTURE.format(of="inscription.")
        made += f'[[inscription.source]]\nwork = "Leaves"\ntext = "{source}"\n' if source else ""
    return made


SIGNED = {
    "front": "武州江戸住\n梅原嶺暁作",
    "back": "文政十二年己丑八月吉日",
    "rim": "（印「山」）",
}
POEMS = {
    "back plate": "秋の田のかりほの\n庵のとまをあらみ\n我ころもては\n露にぬれつゝ",
    "face": "秋の田のかりほの庵の苫を\nあらみ我衣手は露にぬれつつ",
    "butt": "嶺暁（花押）",
}
RECORDS = {
    "long": LONG,
    "signed": several(1, SIGNED),
    "many pictures": several(3, SIGNED),
    "poems": several(0, POEMS, COPIED),
}


def fitted(record: str, folder: Path) -> str:
    shutil.copy(EXAMPLES / "photographs" / "DEMO-004.jpg", folder)
    return entries_as_handout([entry_of(loads(record), folder=folder)], Style())


@needs_browser
@pytest.mark.parametrize("name", RECORDS)
def test_several_inscriptions_and_pictures_take_one_sheet(name: str, tmp_path: Path) -> None:
    assert sheets(fitted(RECORDS[name], tmp_path)) == 1


@needs_browser
@pytest.mark.parametrize("number", [1, 2, 4, 5, 13])
def test_examples_take_one_sheet(number: int) -> None:
    entry = entry_of(load(EXAMPLES / f"DEMO-{number:03}.toml"), folder=EXAMPLES)
    assert sheets(entries_as_handout([entry], Style())) == 1


def test_what_is_small_is_not_made_smaller(tmp_path: Path) -> None:
    small = several(0, {"front": "嶺暁作"}).replace(PICTURE.format(of=""), "")
    assert 'style="--fit' not in fitted(small, tmp_path)
    sizes = [
        float(re.findall(r'style="--fit: ([\d.]+)', fitted(several(n, SIGNED), tmp_path))[0])
        for n in (1, 3)
    ]
    assert 0.4 <= sizes[1] <= sizes[0] < 1
