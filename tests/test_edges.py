"""The edges of ranges and counts: the last that is in, and the first that is out."""

from __future__ import annotations

import pytest

from inscribe.collation.space.measures import measures_of
from inscribe.dates import resolve
from inscribe.errors import InputError
from inscribe.forms import code_point, related
from inscribe.notation import parse
from inscribe.record import ColumnMeasure, Inscription, Plate
from inscribe.restoring import Seen, restore

# Unicode 15, chapter 3: surrogates are no characters, the last code point is U+10FFFF.
CODE_POINTS = {"U+D7FF": 0xD7FF, "U+E000": 0xE000, "U+10FFFF": 0x10FFFF, "U+8229": 0x8229}
NO_CODE_POINTS = ("U+D800", "U+DBFF", "U+DFFF", "U+110000", "U+", "U+xyz")


@pytest.mark.parametrize("text", CODE_POINTS)
def test_a_code_point_names_its_character(text: str) -> None:
    assert code_point(text) == chr(CODE_POINTS[text])


@pytest.mark.parametrize("text", NO_CODE_POINTS)
def test_what_is_no_code_point_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="no code point"):
        code_point(text)


@pytest.mark.parametrize(("hiragana", "katakana"), ["ぁァ", "あア", "をヲ", "んン", "ゔヴ", "ゖヶ"])
def test_every_kana_is_related_to_the_other_kana(hiragana: str, katakana: str) -> None:
    assert katakana in related(hiragana)


def columns_with(width: float, *places: tuple[float, float]) -> Inscription:
    """Return a plate of 90 mm and columns of five signs at (x, width) in mm, from the right."""
    measured = tuple(ColumnMeasure(5, 55, x, wide) for x, wide in places)
    text = "\n".join("一二三四五" for _ in places)
    return Inscription("back plate", text, plate=Plate(width, 90), columns=measured)


# By reckoning: the free width left of the last column, less the margin at the right, holds so many
# columns at the distance of those carved.
MORE_COLUMNS: list[tuple[float, tuple[tuple[float, float], ...], int]] = [
    (20.0, ((14, 5), (8, 5)), 1),  # 8 - 1 = 7 mm, columns 6 mm apart
    (20.0, ((14, 6), (8, 6)), 1),  # no margin: 8 mm
    (26.0, ((20, 5), (14, 5)), 2),  # 13 mm
    (27.0, ((20, 5), (14, 5)), 2),  # 12 mm
    (28.0, ((20, 5), (14, 5)), 1),  # 11 mm
    (14.0, ((8, 5), (2, 5)), 0),  # 1 mm
    (20.0, ((14, 5), (9, 5), (4, 4)), 0),  # 3 mm, columns 5 mm apart
    (20.0, ((14, 5),), 0),  # one column tells no distance
    (12.0, ((14, 5), (8, 5)), 1),  # wider than the plate: as without a margin
]


@pytest.mark.parametrize(("width", "places", "more"), MORE_COLUMNS)
def test_room_for_further_columns(
    width: float, places: tuple[tuple[float, float], ...], more: int
) -> None:
    inscription = columns_with(width, *places)
    measures = measures_of(inscription.transcription, inscription)
    assert measures is not None
    assert measures.more_columns == more


# The first year of an era is written 元; eras and cycles: CLDR and reckoning (year - 4) mod 60.
FIRST_YEARS = {
    "文化□年甲子": "元",
    "文化□年乙丑": "二",
    "文政□年戊寅": "元",
    "天保□年庚寅": "元",
    "天保□年癸卯": "",  # 天保十四年: one sign is not enough
    "嘉永□年戊申": "元",
    "嘉永□年甲寅": "七",
    "慶応□年乙丑": "元",
}


@pytest.mark.parametrize("text", FIRST_YEARS)
def test_the_number_of_a_worn_year_follows_from_its_cycle(text: str) -> None:
    best = restore(parse(text)).lacunae[0].candidates[0]
    agrees = any("agrees with its sexagenary sign" in each.text for each in best.evidence)
    if FIRST_YEARS[text]:
        assert (best.text, agrees) == (FIRST_YEARS[text], True)
    else:
        assert not agrees


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("嘉政元年", "元年"),
        ("嘉政六年", "六年"),
        ("嘉氷七年", "嘉永七年"),
        ("文北元年", "文化元年"),
    ],
)
def test_an_era_that_never_was_may_be_any_that_had_that_year(text: str, meant: str) -> None:
    found = [each.text for each in resolve(text).explanations]
    assert any(meant in each for each in found), found


SEEN = {
    "looks like 正": ("武州住□国作", Seen(like="正"), 0),
    "shares a part with 正": ("武州住□国作", Seen(like="正"), 1),
    "has 宀": ("武州住□国作", Seen(parts=("宀",)), 0),
    "5 strokes, 4–6 seen": ("武州住□国作", Seen(strokes=(4, 6)), 0),
    "does not look like な": ("世の中に桜の□かりせば", Seen(like="な"), 1),
}


@pytest.mark.parametrize("said", SEEN)
def test_what_is_seen_of_a_sign_is_said_of_its_candidates(said: str) -> None:
    text, seen, rank = SEEN[said]
    candidate = restore(parse(text), seen_of_it=seen).lacunae[0].candidates[rank]
    assert [each.text for each in candidate.evidence if each.kind == "seen"] == [said]
