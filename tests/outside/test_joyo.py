"""The old forms of the Joyo table against two packages made independently of this program.

Sources: joyokanji 1.1.0 (PyPI, Apache licence) and kyujipy 0.6.8 (PyPI, MIT licence), both made
from the Joyo table of 2010; kJoyoKanji and kJinmeiyoKanji of Unihan (Debian package unicode-data).
Every disagreement is listed here with its reason; a new one fails.
"""

from __future__ import annotations

import bz2
import json
from importlib.util import find_spec
from pathlib import Path

import debian
import pytest

from inscribe import tables
from inscribe.forms import normalise_text, relation

UNIHAN = debian.FOLDER / "unicode/Unihan_OtherMappings.txt.bz2"

# Forms that joyokanji lacks. It maps one character to one, so it cannot hold the three of 弁; the
# others are in brackets in the Joyo table (餅 and 亀 since 2010) and kyujipy has them too.
NOT_IN_JOYOKANJI = set("辨瓣辯餠舖龜")
# Forms that kyujipy keeps among its rewritings (kakikae), not among its old forms.
NOT_IN_KYUJIPY = set("辨瓣辯")
# Pairs of kyujipy that normalisation leaves alone: outside the Joyo table the form on the left is
# the one in print (Report on forms outside the Joyo table, 2000), or both are (names).
STANDARD = "the left is the standard printed form"
LEFT_AS_CARVED = {
    "堯尭 檜桧 槇槙 禰祢 禱祷": "both are kanji for names and both are printed",
    "摑掴 簞箪 啞唖 噓嘘 鷗鴎 軀躯 鶯鴬 攪撹 麴麹 鹼鹸 嚙噛 繡繍 蔣蒋": STANDARD,
    "醬醤 搔掻 濾沪 蘆芦 蠟蝋 焰焔 顚顛 醱醗 潑溌 繫繋 瀆涜 儘侭 藪薮 蠅蝿 驒騨 穎頴": STANDARD,
    "彎弯 礦砿 讚讃 巓巔 輛輌 嬀媯 幷并": "neither is in the Joyo table, and both are printed",
}
# Pairs of kyujipy that normalisation brings to another form than kyujipy does.
TAKEN_OTHERWISE = {
    "籠篭": "籠 is in the Joyo table since 2010: 篭 becomes 籠",
    "礦砿": "礦 is read as the variant of 鉱 that KANJIDIC2 makes it",
}


def joyo_rows() -> dict[str, str]:
    rows = [row for row in tables.rows("old_forms") if row["source"] == "Joyo 2010"]
    return {row["written"]: row["current"] for row in rows}


def package_file(package: str, *path: str) -> Path:
    found = find_spec(package)
    if found is None or found.origin is None:
        pytest.skip(f"the package {package} is not installed")
    return Path(found.origin).parent.joinpath(*path)


def of_joyokanji() -> dict[str, str]:
    file = package_file("joyokanji", "config", "kanji.json")
    found: dict[str, str] = json.loads(file.read_text("utf-8"))
    return found


def of_kyujipy() -> dict[str, str]:
    file = package_file("kyujipy", "data", "kyujitai_simplified.cson")
    found = {}
    for line in file.read_text("utf-8").splitlines():
        cells = [cell for cell in line.split('"') if cell.strip(" [],")]
        if line.strip().startswith("[") and len(cells) == 2:
            found[cells[1]] = cells[0]
    return found


def test_joyokanji_agrees() -> None:
    theirs, ours = of_joyokanji(), joyo_rows()
    assert len(theirs) > 350
    assert {form for form in theirs if ours.get(form) != theirs[form]} == set()
    assert set(ours) - set(theirs) == NOT_IN_JOYOKANJI


def test_kyujipy_has_every_old_form() -> None:
    theirs, ours = of_kyujipy(), joyo_rows()
    assert len(theirs) > 400
    assert {form for form in ours if theirs.get(form) != ours[form]} == NOT_IN_KYUJIPY


def test_what_kyujipy_has_beyond_is_normalised_or_explained() -> None:
    left = {pair: why for pairs, why in LEFT_AS_CARVED.items() for pair in pairs.split()}
    for form, current in of_kyujipy().items():
        pair, normal = form + current, normalise_text(form).text
        if pair in TAKEN_OTHERWISE:
            assert normal != current, pair
        elif pair in left:
            assert normal == form, (pair, left[pair])
        else:
            assert normal == current, pair
        assert relation(form, current).is_same_character, pair


def unihan(name: str) -> dict[str, str]:
    if not UNIHAN.exists():
        pytest.skip("the Debian package unicode-data is not installed")
    with bz2.open(UNIHAN, "rt", encoding="utf-8") as lines:
        cells = [line.rstrip("\n").split("\t") for line in lines]
    return {chr(int(c[0][2:], 16)): c[2] for c in cells if len(c) == 3 and c[1] == name}


def test_current_forms_are_joyo_kanji() -> None:
    joyo = unihan("kJoyoKanji")
    assert set(joyo_rows().values()) <= set(joyo)
    # 欠 is an old form's current form and 缺 is none: no old form is itself a Joyo kanji.
    assert not set(joyo_rows()) & {char for char, value in joyo.items() if "U+" not in value}


def test_every_pair_of_the_kanji_for_names_is_related() -> None:
    pairs = {
        form: chr(int(value.partition(":U+")[2], 16))
        for form, value in unihan("kJinmeiyoKanji").items()
        if ":" in value
    }
    assert len(pairs) > 200
    apart = [a + b for a, b in pairs.items() if not relation(a, b).is_same_character]
    assert apart == []
    kept = {a + b for a, b in pairs.items() if normalise_text(a).text != normalise_text(b).text}
    assert kept == {"凜凛", "尭堯", "桧檜", "槙槇", "盃杯", "祢禰", "祷禱"}
