"""A kana that looks like a kanji is doubted where the text has no other kana to explain it."""

from __future__ import annotations

import pytest

from inscribe.reading import read_text


def doubted(text: str) -> list[tuple[int, str]]:
    doubts = read_text(text).to_dict()["doubts"]
    return [(each["signs"][0], each["why"]) for each in doubts if "looks like" in each["why"]]


@pytest.mark.parametrize(
    ("text", "sign", "perhaps"), [("天保ニ年嶺暁作", 2, "二"), ("武州住嶺暁エ", 5, "工")]
)
def test_a_kana_alone_among_kanji_is_doubted(text: str, sign: int, perhaps: str) -> None:
    ((at, why),) = doubted(text)
    assert at == sign
    assert why.endswith(f"a kana that looks like a kanji; perhaps {perhaps}")


@pytest.mark.parametrize("text", ["天保ニ年嶺暁作ル", "武州ノ住嶺暁エ"])
def test_beside_other_kana_it_may_well_be_one(text: str) -> None:
    assert doubted(text) == []
