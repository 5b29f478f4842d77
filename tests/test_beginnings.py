"""Every beginning and end of a usual inscription can be read: nothing asks beyond the text."""

from __future__ import annotations

import pytest

from inscribe.notation import parse
from inscribe.reading import read

WHOLE = (
    "武州住嶺暁作之",
    "應籾山氏需嶺暁造之",
    "為籾山君嶺暁刻",
    "為鞍掛家重宝",
    "於江戸神田露岳斎嶺暁彫之",
    "嘉永五年壬子仲秋吉日",
    "行年七十三翁法橋嶺暁（花押）",
    "倣雪舟図依好和泉守某鐫",
    "右春の歌／嶺暁書",
    "奉納諏訪大明神願主籾山某",
    "世の中に絶えて桜のなかりせば",
    "和而不同／露岳",
)


@pytest.mark.parametrize("text", WHOLE)
def test_every_stretch_of_an_inscription_can_be_read(text: str) -> None:
    signs = text.replace("（花押）", "@").replace("／", "")
    stretches = {signs[:end] for end in range(1, len(signs) + 1)}
    stretches |= {signs[start:] for start in range(len(signs))}
    for stretch in stretches:
        written = stretch.replace("@", "（花押）")
        found = read(parse(written))
        assert found.proposals, written
        covered = sum(each.last - each.first + 1 for each in found.passages)
        assert covered == len(stretch), written
