"""What stands by a text and is no part of it: bare names, dates, seals, titles of books."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.notation import parse
from inscribe.reading import read, read_text


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


POEM = "ひさかたの光のとけき春の日に／しつ心なく花のちるらむ"
SOURCE = "久方の光のどけき春の日に／しづ心なく花のちるらむ"  # Ki no Tomonori, 10th century


@pytest.mark.parametrize(
    ("before", "after", "beside"),
    [
        ("右桜の詠／", "／朧谷刻之", ["heading", "signature"]),
        ("桜／", "／友則／朧谷", ["heading", "signature", "signature"]),
        ("", "／朧谷", ["signature"]),
        ("", "／和而不同／朧谷刻之", ["chinese", "signature"]),
    ],
)
def test_a_faithful_copy_has_no_difference_whatever_stands_beside(
    before: str, after: str, beside: list[str], tmp_path: Path
) -> None:
    (tmp_path / "s.txt").write_text(SOURCE, "utf-8")
    record = tmp_path / "X-1.toml"
    text = f"{before}{POEM}{after}".replace("／", "\n")
    record.write_text(
        f'id = "X-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\nregister = "verse"\n'
        f'text = """\n{text}\n"""\n[[inscription.source]]\nfile = "s.txt"\n',
        "utf-8",
    )
    run = CliRunner().invoke(cli, ["collate", str(record), "--strict", "--format", "json"])
    assert run.exit_code == 0
    found = json.loads(run.stdout)
    assert [each["kind"] for each in found["beside"]] == beside


def test_what_is_lost_at_the_end_of_a_copy_is_the_copys() -> None:
    t = parse("ひさかたの光のとけき春の日に／しつ心なく花の［　　］／霞汀翁書")
    found = read(t, source=SOURCE.replace("／", ""))
    assert [passage.text for passage in found.passages][1] == "霞汀翁書"


def test_a_kao_ends_what_one_person_signed() -> None:
    assert kinds("鷺坂苗道（花押）／萩灘刻之") == ["signature", "signature"]
    assert kinds("鷺坂苗道（花押）嘉永二年") == ["signature"]


@pytest.mark.parametrize("text", ["磯」棟", "松」濤", "楡」陰"])
def test_a_name_of_one_sign_on_each_face_is_one(text: str) -> None:
    assert kinds(text) == ["signature"]


def test_what_stands_beside_a_poem_is_told_in_a_table_and_in_lido(tmp_path: Path) -> None:
    record = tmp_path / "X-2.toml"
    text = f"{POEM}／霜亭書／朧谷刻之".replace("／", "\n")
    record.write_text(
        'id = "X-2"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\n'
        f'text = """\n{text}\n"""\n',
        "utf-8",
    )
    for form in ("csv", "lido"):
        run = CliRunner().invoke(cli, ["entry", str(record), "--format", form])
        assert "Signature (wrote): 霜亭書 Sōtei sho | Signature (carved): 朧谷刻之" in run.stdout


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("永為家宝", "nagaku kahō to nasu"),
        ("以為什宝露岳作之", "motte jūhō to nasu Rogaku kore o tsukuru"),
        ("為家宝伝子孫", "kahō to shite shison ni tsutau"),
        ("永為子孫宝", "nagaku shison no takara to nasu"),
        ("奉納熱田神宮宝前", "Atsuta Jingū hōzen ni hōnō su"),
    ],
)
def test_wishes_for_an_heirloom_and_gifts_before_an_altar_are_no_names(
    text: str, said: str
) -> None:
    assert read_text(text).proposals[0].romaji == said
