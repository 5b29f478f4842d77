"""Words that are printed alike today stay apart wherever two texts are held together."""

from __future__ import annotations

from inscribe import collation, notation


def kinds(copy: str, source: str) -> list[str]:
    found = collation.collate(notation.parse(copy), notation.parse(source))
    return [group.kind for group in found.groups if group.kind != "same"]


def test_another_word_is_no_other_form() -> None:
    assert kinds("花のいろこの辯をきく", "花のいろこの辨をきく") == ["replaced"]


def test_the_form_printed_today_answers_each_of_the_words() -> None:
    for word in "辯辨瓣":
        assert kinds("花のいろこの弁をきく", f"花のいろこの{word}をきく") == ["form"]
