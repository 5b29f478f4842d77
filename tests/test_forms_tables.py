"""The tables of forms hold together, and a row that cannot be used names its file and line."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from inscribe import forms, tables
from inscribe.errors import TableError
from inscribe.forms import components, numbers, repeats
from inscribe.forms.steps import EVEN_KINDS, JOINING, REPEAT_MARK, VOICING_MARK, steps

COLUMNS = {
    "old_forms": ("form", "current", "list", "note"),
    "variants": ("form", "current", "source", "note"),
    "merged": ("form", "current", "word", "meaning"),
    "related_forms": ("form", "other", "kind", "source"),
    "simplified": ("sign", "meant"),
    "look_alikes": ("signs", "why", "source"),
    "hentaigana": ("sign", "kana", "parent", "name"),
    "manyogana": ("char", "kana", "use", "source"),
    "numbers": ("sign", "value", "kind"),
    "reduplications": ("unit", "doubled", "source"),
    "parts": ("char", "parts", "source"),
    "characters": ("char", "strokes", "on", "kun", "names", "senses", "rank"),
}
ONE_ROW_A_SIGN = ("old_forms", "variants", "merged", "simplified", "numbers", "parts", "characters")


def rows(name: str) -> list[tuple[str, ...]]:
    return [row for row, _ in tables.rows(name, COLUMNS[name])]


@pytest.mark.parametrize("name", ONE_ROW_A_SIGN)
def test_a_sign_stands_in_one_row_and_is_one_character(name: str) -> None:
    signs = [row[0] for row in rows(name)]
    assert len(signs) == len(set(signs))
    assert {len(sign) for sign in signs} == {1}


@pytest.mark.parametrize("name", COLUMNS)
def test_cells_have_no_stray_space(name: str) -> None:
    assert not [row for row in rows(name) if any(cell != cell.strip() for cell in row)]


def test_what_a_sign_becomes_changes_no_further() -> None:
    known = steps()
    for sign, step in known.items():
        if step.kind not in (REPEAT_MARK, VOICING_MARK, JOINING):
            assert not [c for c in step.after if c in known and known[c].after != c], sign


def test_even_kinds_give_one_character() -> None:
    assert all(len(step.after) == 1 for step in steps().values() if step.kind in EVEN_KINDS)


def test_no_editor_has_normalised_the_old_forms() -> None:
    pairs = [(row[0], row[1]) for row in rows("old_forms")]
    assert all(form != current for form, current in pairs)
    compatible = [f for f, c in pairs if unicodedata.normalize("NFC", f) == c]
    assert len(compatible) > 70


def test_merged_forms_are_old_forms_or_variants_of_what_they_name() -> None:
    for form, current, word, _ in rows("merged"):
        if form not in (current, "辮"):  # 辮 is printed as it is
            assert steps()[form].after == current
        assert forms.relation(form, word).is_same_character


def test_sounds_are_single_hiragana() -> None:
    assert {len(row[1]) for row in rows("manyogana")} == {1}
    assert all("ぁ" <= row[1] <= "ゖ" for row in rows("manyogana"))
    for row in rows("hentaigana"):
        assert all(len(kana) == 1 for kana in row[1].split(" "))


def test_look_alikes_are_several_signs_with_a_reason() -> None:
    for signs, why, _ in rows("look_alikes"):
        assert len(set(signs)) == len(signs) > 1
        assert why


def test_every_doubled_word_begins_with_its_unit() -> None:
    for unit, doubled, _ in rows("reduplications"):
        for said in doubled.split(" "):
            assert said.startswith(unit)
            assert len(said) == 2 * len(unit)


@pytest.fixture
def glossary(tmp_path: Path) -> Iterator[Callable[[str, str], None]]:
    def add(name: str, row: str) -> None:
        columns = COLUMNS.get(name, ("mark", "repeats", "voiced", "note"))
        text = "\t".join(columns) + "\n" + row + "\n"
        (tmp_path / f"{name}.tsv").write_text(text, encoding="utf-8")
        tables.add_folder(tmp_path)

    yield add
    tables._user_folders.clear()
    for forget in tables._forgetters:
        forget()


BAD = [
    ("repeat_marks", "々\tkanj\tno\t", repeats.marks),
    ("repeat_marks", "々\tkanji\tperhaps\t", repeats.marks),
    ("numbers", "廿\ttwenty\tplain", numbers.numbers),
    ("parts", "舩\tleft:舟 right\tmine", lambda: components.parts("舩")),
    ("parts", "舩\tleft:舟(\tmine", lambda: components.parts("舩")),
    ("parts", "舩\t)left:舟\tmine", lambda: components.parts("舩")),
    ("characters", "舩\tten\t\t\t\t\t", lambda: forms.character("舩")),
    ("characters", "舩\t10\t\t\t\t\tfirst", lambda: forms.character("舩")),
    ("variants", "舩\t船", lambda: forms.normalise_text("舩")),
]


@pytest.mark.parametrize(("name", "row", "use"), BAD)
def test_a_bad_row_names_its_file_and_line(
    glossary: Callable[[str, str], None], name: str, row: str, use: Callable[[], object]
) -> None:
    glossary(name, row)
    with pytest.raises(TableError, match=f"{name}.tsv, line 2"):
        use()


def test_a_users_rows_win_in_every_table(glossary: Callable[[str, str], None]) -> None:
    glossary("variants", "\u8229\t\u821f\tmine\t")
    glossary("simplified", "花\t華")
    glossary("characters", "舩\t99\tワ\t\t\t\t")
    assert forms.normalise_text("舩").text == "舟"
    assert forms.normalise_text("花").changes[0].kind == "simplified form"
    assert forms.readings("舩").on == ("ワ",)
