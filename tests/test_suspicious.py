"""Second looks: nearly every slip is named, and right columns are left alone."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, settings, strategies as st

from inscribe.checking import check_folder
from inscribe.cli import cli
from inscribe.errors import InscribeError
from inscribe.notation import parse
from inscribe.reading import read_text
from inscribe.reading.suspicious import suspicions

DATA = Path(__file__).parent / "data"


def rows(name: str) -> list[list[str]]:
    lines = (DATA / f"{name}.tsv").read_text(encoding="utf-8").splitlines()
    return [line.split("\t") for line in lines if not line.startswith(("#", "set\t"))]


RIGHT = [text for _, _, text in rows("columns_right")]
SLIPS = [(text, slip, meant) for _, _, text, slip, meant in rows("columns_slips")]


def is_named(text: str, slip: str) -> bool:
    """Whether read names the slip: as an error of notation, a suspicion or a date at odds."""
    try:
        found = read_text(text)
    except InscribeError:
        return True
    return any(
        set(slip) & set(found.text[d.first : d.last + 1])
        for d in found.doubts
        if "contradicts itself" in d.why or d in suspicious_doubts(text)
    )


def suspicious_doubts(text: str) -> list[object]:
    from inscribe.reading.inscription.doubts import doubts_of_suspicions

    return list(doubts_of_suspicions(parse(text).signs))


def test_nearly_every_slip_is_named() -> None:
    missed = [text for text, slip, _ in SLIPS if not is_named(text, slip)]
    assert len(missed) <= 0.03 * len(SLIPS), missed


def test_hardly_any_right_column_is_warned() -> None:
    warned = [text for text in RIGHT if suspicions(parse(text).signs)]
    warned += [
        text for text in RIGHT if any("contradicts" in d.why for d in read_text(text).doubts)
    ]
    assert len(warned) <= 3 * len(RIGHT) / 65, warned


def test_a_mark_is_named_with_the_mark_of_the_conventions() -> None:
    marks = [row for row in rows("columns_slips") if row[1] in ("mark", "kana", "kao") and row[4]]
    told = [
        any(meant in " ".join(found.instead) for found in suspicions(parse(text).signs))
        for _, _, text, _, meant in marks
    ]
    assert sum(told) >= 0.95 * len(told)


@pytest.mark.parametrize(
    ("text", "sign", "instead"),
    [
        ("露△岳作", "△", "□"),
        ("露＊岳作", "＊", "□"),
        ("露＿岳作", "＿", "□"),
        ("嶺ハ郎作", "ハ", "八"),
        ("嶺暁 れいぎょう", "れいぎょう", ""),
        ("嶺暁作花押", "花押", "（花押）"),
        ("露…岳作", "…", "［　　］"),
        ("嶺暁㊞", "㊞", "（印）"),
        ("武州往嶺暁作", "往", "住"),
        ("江戸二於テ嶺暁作ル", "二", "ニ"),
        ("花の色八うつりにけりな", "八", "は"),
        ("武州住Reigyo作", "Reigyo", ""),
        ("嶺⼋郎作", "⼋", "八"),
        ("露〇作", "〇", "□"),
    ],
)
def test_read_check_and_new_say_the_same(
    text: str, sign: str, instead: str, tmp_path: Path
) -> None:
    (found,) = suspicions(parse(text).signs)
    assert (found.text, " ".join(found.instead)) == (sign, instead)
    said = f"{sign}: {found.said}"
    run = CliRunner().invoke(cli, ["read", "--text", text, "--format", "json"])
    doubts = json.loads(run.stdout)["doubts"]
    assert {"signs": [found.sign, found.end], "why": said} in doubts
    (tmp_path / "a.toml").write_text(
        'id = "A"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\n'
        f'text = "{text}"\n[[inscription.reading]]\nby = "A. Reader"\n',
        encoding="utf-8",
    )
    findings = check_folder(tmp_path).findings
    messages = [each.message for each in findings if each.code == "suspicious"]
    assert len(messages) == 1
    assert found.said in messages[0]


@pytest.mark.parametrize(
    "text",
    [
        "江戸ニ於テ鷺汀作ル",  # a particle of the formula
        "明治三〇年一月",  # a figure among figures
        "行年六十八歳嶺暁",
        "戊戌仲秋",  # a pair of the cycle
        "元禄三庚午年",  # an era, and a pair that agrees
        "花ノ色ハ移リニケリナ",
        "六ヶ月",
        "露△(ママ)岳作",  # looked at, and so carved
        "八重葎茂れる宿の",
        "佐渡相川住本間利道作",
        "圷松年鐫之",
    ],
)
def test_what_the_text_explains_is_left_alone(text: str) -> None:
    assert suspicions(parse(text).signs) == ()


@pytest.mark.parametrize(("text", "slip"), [("江戸住法僑嶺暁作", "僑"), ("天保三年千辰", "千")])
def test_a_slip_beside_usual_parts_is_named(text: str, slip: str) -> None:
    assert [found.text for found in suspicions(parse(text).signs)] == [slip]


def test_running_text_keeps_its_punctuation() -> None:
    assert not [d for d in read_text("「さうか。」と言つた。").doubts if "punctuation" in d.why]
    assert [d for d in read_text("嶺△郎作。").doubts if "△" in d.why]


@given(st.text("嶺暁作△＊ハニー一二八花押れいぎょう〇年x＿。□［　　］", max_size=12))
@settings(max_examples=60, deadline=None)
def test_every_suspicion_points_to_its_signs_and_none_to_another(text: str) -> None:
    try:
        signs = parse(text).signs
    except InscribeError:
        return
    seen: set[int] = set()
    for found in suspicions(signs):
        there = range(found.sign, found.end + 1)
        assert found.text == "".join(signs[at].text for at in there)
        assert seen.isdisjoint(there)
        seen.update(there)
