"""The tables of forms hold together, and a user's rows win."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable

from inscribe import forms, tables
from inscribe.forms.steps import EVEN_KINDS, JOINING, REPEAT_MARK, VOICING_MARK, steps


def rows(name: str) -> list[tuple[str, ...]]:
    return [tuple(row.values()) for row in tables.rows(name)]


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
        assert all(len(kana) == 1 for kana in tables.listed(row[1]))


def test_look_alikes_are_several_signs_with_a_reason() -> None:
    for signs, why, _ in rows("look_alikes"):
        assert len(set(signs)) == len(signs) > 1
        assert why


def test_every_doubled_word_begins_with_its_unit() -> None:
    for unit, doubled, _ in rows("reduplications"):
        for said in tables.listed(doubled):
            assert said.startswith(unit)
            assert len(said) == 2 * len(unit)


def test_a_users_rows_win_in_every_table(user_table: Callable[..., None]) -> None:
    user_table("variants", "\u8229\t\u821f\tmine\t")
    user_table("simplified", "花\t華")
    user_table("characters", "舩\t99\tワ\t\t\t\t")
    assert forms.normalise_text("舩").text == "舟"
    assert forms.normalise_text("花").changes[0].kind == "simplified form"
    assert forms.readings("舩").on == ("ワ",)
