"""What is said where copies of one text, or records of one object, stand in a folder."""

from __future__ import annotations

from pathlib import Path

from inscribe.checking import check_folder
from inscribe.checking.findings import Finding

POEM = "春過ぎて夏来にけらし白妙の衣ほすてふ天の香具山"
SIZES = "[measurements]\nlength = 97.1\nwidth = 14.2"


def write(folder: Path, **texts: str) -> None:
    for name, text in texts.items():
        head, _, carved = text.rpartition("|")
        (folder / f"{name}.toml").write_text(
            f'id = "{name.upper()}"\nkind = "kozuka"\n{head}\n'
            f'[[inscription]]\nplace = "back plate"\ntext = "{carved}"\n',
            "utf-8",
        )


def found_in(folder: Path, code: str) -> list[Finding]:
    return [each for each in check_folder(folder, None).findings if each.code == code]


def test_who_signed_a_poem_is_no_other_wording_of_it(tmp_path: Path) -> None:
    other = POEM.replace("夏来にけらし", "夏来にけるか")
    write(tmp_path, a=POEM + "／嶺暁刻", b=other + "／澄影作之", d=POEM)
    (found,) = found_in(tmp_path, "other-words")
    assert found.record == "B"
    assert not set("嶺暁刻澄影作") & set(found.message)


def test_two_records_of_one_object_name_each_other(tmp_path: Path) -> None:
    write(tmp_path, a=f"{SIZES}|武州住嶺暁作", b=f"{SIZES}|武州住嶺暁作")
    found = {each.record: each.message for each in found_in(tmp_path, "same-object")}
    assert found == {
        "A": f"B ({tmp_path / 'b.toml'}) has the same texts and measurements",
        "B": f"A ({tmp_path / 'a.toml'}) has the same texts and measurements",
    }
