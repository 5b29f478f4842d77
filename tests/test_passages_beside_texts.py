"""What stands by a text and is no part of it: bare names, dates, seals, titles of books."""

from __future__ import annotations

import pytest

from inscribe.reading import read_text


def kinds(text: str) -> list[str]:
    return [passage.kind for passage in read_text(text).passages]


@pytest.mark.parametrize("name", ["朧谷", "浅霧", "苔石", "露岳", "鞆方"])
@pytest.mark.parametrize(
    ("above", "kind"),
    [("和而不同", "chinese"), ("山吹図", "heading"), ("竹林七賢之内", "heading")],
)
def test_a_bare_name_under_a_text_is_a_signature(above: str, kind: str, name: str) -> None:
    assert kinds(f"{above}／{name}") == [kind, "signature"]


@pytest.mark.parametrize("text", ["安政二年乙卯仲秋", "嘉永三年二月吉日", "丙辰", "明治元年"])
def test_a_date_alone_is_a_date(text: str) -> None:
    assert kinds(text) == ["date"]


def test_a_seal_alone_is_a_seal_with_its_legend() -> None:
    found = read_text("（印「露岳」）")
    assert [passage.kind for passage in found.passages] == ["seal"]
    assert found.passages[0].romaji == "Rogaku"


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("寿老人図／露岳画／鞆方彫之", "Jurōjin no zu Rogaku ga Tomokata kore o horu"),
        ("源氏／夕顔之巻／鞆方", "Genji Yūgao no maki Tomokata"),
        ("論語曰／徳不孤必有隣／棟盛作", "Rongo ni iwaku toku wa ko narazu kanarazu tonari ari"),
        ("此一枚者依御好鞆方造之", "kono ichimai wa okonomi ni yorite Tomokata kore o tsukuru"),
        ("御腰物金具師／萩谷鞆方", "onkoshimono kanagushi Hagiya Tomokata"),
    ],
)
def test_titles_pictures_and_what_is_spoken_of(text: str, romaji: str) -> None:
    assert read_text(text).proposals[0].romaji.startswith(romaji)


def test_one_esteemed_and_the_maker_are_two_persons() -> None:
    assert kinds("綾輝公／柿沼定直謹彫") == ["signature", "signature"]


def test_a_word_of_years_is_no_era() -> None:
    assert kinds("創業五十年記念　鞆方") == ["chinese", "signature"]
