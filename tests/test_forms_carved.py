"""Forms that carvers use: each is folded with its source, seeds are said, nothing stays unnamed."""

from __future__ import annotations

from itertools import combinations

import pytest

from inscribe import read_text, tables
from inscribe.forms import normalise_text, relation

# The forms that the issue on the words of real fittings names, and some like them.
FORMS = dict(
    zip(
        "刕㝎㔟㐧㠀𣘺䑓亱圡琱㪽㕝𠔥𫝆崈昻凬逺𡈽﨟莭賎籏鉃𫝑𫝶𫞎𫟘",
        "州定勢第島橋台夜土彫所事兼今崇昂風遠土臘節賤旗鉄勢座橋衛",
        strict=True,
    )
)


@pytest.mark.parametrize(("form", "current"), FORMS.items())
def test_a_form_is_folded_with_its_source(form: str, current: str) -> None:
    found = normalise_text(form)
    assert found.text == current
    assert found.changes[0].note
    assert form not in read_text(f"綾{form}作").proposals[0].romaji


def test_no_pair_of_look_alikes_is_one_character_in_two_forms() -> None:
    pairs = {
        frozenset((row["written"], row[other]))
        for name, other in (
            ("variants", "current"),
            ("old_forms", "current"),
            ("related_forms", "other"),
        )
        for row in tables.rows(name)
    }
    alike = [pair for row in tables.rows("look_alikes") for pair in combinations(row["signs"], 2)]
    assert not [pair for pair in alike if frozenset(pair) in pairs]
    assert relation("冨", "富").kind == "variant"  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("text", "said"),
    [("𑖀", "a"), ("𑖮𑖿𑖨𑖱𑖾", "kirīku"), ("𑖮𑖯𑖽", "kān"), ("𑖎𑖰", "ki")],
)
def test_seed_syllables_are_said_as_in_japan(text: str, said: str) -> None:
    assert read_text(text).proposals[0].romaji.lower() == said


def test_a_seed_syllable_stands_beside_a_signature() -> None:
    found = read_text("𑖮𑖯𑖽綾郷作").proposals[0]
    assert found.romaji == "Kān Ayasato saku"


def test_a_sign_that_stays_as_carved_has_a_doubt_that_names_it() -> None:
    found = read_text("綾𪚥作")
    assert "𪚥" in found.proposals[0].romaji
    assert any("no reading of 𪚥 is known" in doubt.why for doubt in found.doubts)
