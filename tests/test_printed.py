"""Differences as an edition prints them: with the word they hang on, several in a phrase as one."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from inscribe.collation import collate_texts


def printed(copy: str, source: str) -> list[tuple[str, str]]:
    found = collate_texts(copy, source).printed
    return [(entry.source.text, entry.copy.text) for entry in found]


@pytest.mark.parametrize(
    ("copy", "source", "expected"),
    [
        (
            "風の音におとろかれぬる",
            "風の音にぞおどろかれぬる",
            [("音にぞ", "音に")],
        ),
        ("風の音にそおとろかれぬる", "風の音におどろかれぬる", [("音に", "音にそ")]),
        (
            "花の色はうつりにけむないたつらに我身よにふるなかめせしまに",
            "花の色はうつりにけりないたづらにわが身世にふるながめせしまに",
            [("うつりにけりな", "うつりにけむな")],
        ),
        ("久方の空に雲なし", "久方の天の空に雲なし", [("天の", "")]),  # a word of its own
        ("春の野に花は咲く", "春の野に咲く", [("", "花は")]),
        ("山里も雪ふりぬ", "山里は雪ふりぬ", [("山里は", "山里も")]),
        ("千里同春", "千里同風", [("風", "春")]),  # no kana hang on a word of Chinese
        ("春眠不覚暁処処聞鳥", "春眠不覚暁処処聞啼鳥", [("啼", "")]),
        ("花を見れは散りにけり", "花を見しかど散りにけり", [("見しかど", "見れは")]),
    ],
)
def test_a_difference_is_shown_with_the_word_it_hangs_on(
    copy: str, source: str, expected: list[tuple[str, str]]
) -> None:
    assert printed(copy, source) == expected


def test_several_differences_in_one_phrase_are_one_entry() -> None:
    result = collate_texts("人の心をしらざりき", "人の心ぞしられける")
    assert sum(group.is_substantive for group in result.groups) >= len(result.printed)
    assert result.printed[0].source.text == "心ぞ"


def test_what_is_the_same_in_wording_is_not_printed() -> None:
    assert printed("夢の浮橋とたえして", "ゆめのうき橋とだえして") == []


def test_every_difference_in_json_has_its_printed_span() -> None:
    answer = collate_texts("風の音におとろかれぬる", "風の音にぞおどろかれぬる").to_dict()
    first = answer["differences"][0]
    assert first["source"]["text"] == "ぞ"
    assert first["printed"]["source"] == {"start": 2, "end": 5, "text": "音にぞ"}
    assert first["printed"]["copy"] == {"start": 2, "end": 4, "text": "音に"}


words = st.sampled_from(["花の", "色は", "うつり", "にけり", "な", "山", "風に", "夢", "ぞ", "、"])
lines = st.lists(words, max_size=7).map("".join)


@settings(max_examples=60, deadline=None)
@given(lines, lines)
def test_every_difference_is_in_one_entry_and_entries_do_not_overlap(
    copy: str, source: str
) -> None:
    result = collate_texts(copy, source)
    substantive = [at for at, group in enumerate(result.groups) if group.is_substantive]
    assert sorted(at for entry in result.printed for at in entry.groups) == substantive
    for entry in result.printed:
        assert copy[entry.copy.start : entry.copy.end] == entry.copy.text
        assert source[entry.source.start : entry.source.end] == entry.source.text
        for at in entry.groups:
            group = result.groups[at]
            assert entry.copy.start <= group.copy.start <= group.copy.end <= entry.copy.end
    for one, other in zip(result.printed, result.printed[1:], strict=False):
        assert one.copy.end <= other.copy.start
