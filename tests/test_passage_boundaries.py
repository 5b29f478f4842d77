"""What stands before and after a poem or a signature is a passage of its own kind.

The persons are invented; the verse is Shinkokinshu 38.
"""

from __future__ import annotations

import pytest

from inscribe.reading import read_text

POEM = "春の夜の夢の浮橋とたえして峯にわかるゝ横雲の空"


def divided(text: str) -> list[tuple[str, str]]:
    """Return the kinds and the texts of the passages of a text."""
    return [(passage.kind, passage.text) for passage in read_text(text).passages]


@pytest.mark.parametrize("heading", ["左花の歌", "左冬月の歌", "題しらず", "初春の心を"])
def test_what_announces_a_poem_is_its_heading(heading: str) -> None:
    assert divided(f"{heading}／{POEM}") == [("heading", heading), ("verse", POEM)]


@pytest.mark.parametrize("heading", ["瀟湘八景之内", "右瀟湘八景之内"])
def test_one_of_a_set_of_views_is_a_heading(heading: str) -> None:
    assert divided(f"{heading}／朧谷刻之") == [("heading", heading), ("signature", "朧谷刻之")]


@pytest.mark.parametrize("patron", ["為蕗屋君造之", "為薊野某君造之"])
def test_for_whom_it_was_made_is_a_dedication(patron: str) -> None:
    expected = [("signature", "朧谷刻之"), ("dedication", patron)]
    assert divided(f"朧谷刻之／{patron}") == expected
    assert divided(f"{patron}／朧谷刻之") == expected[::-1]


@pytest.mark.parametrize("date", ["庚午之春日", "文化庚午仲春"])
def test_a_year_of_the_cycle_with_its_season_is_a_date(date: str) -> None:
    assert divided(f"朧谷刻之／{date}") == [("signature", "朧谷刻之"), ("date", date)]


def test_a_saying_with_a_worn_sign_is_still_that_saying() -> None:
    saying, signature = read_text("温□知新／朧谷刻之").passages
    assert (saying.kind, saying.proposals[0].romaji) == ("chinese", "onko chishin")
    assert signature.kind == "signature"


def test_who_composed_and_who_wrote_are_two() -> None:
    found = read_text(f"{POEM}／紀貫之詠／蒼翁書").passages
    assert [(each.kind, each.text, each.role) for each in found[1:]] == [
        ("signature", "紀貫之詠", "composed"),
        ("signature", "蒼翁書", "wrote"),
    ]


@pytest.mark.parametrize("text", ["右京進藤原綾郷作", "右衛門尉綾郷作"])
def test_an_office_that_begins_with_right_is_no_heading(text: str) -> None:
    assert divided(text) == [("signature", text)]
