"""Text in kanji alone, without return marks: plain sounds where words would be guessed."""

from __future__ import annotations

import pytest

from inscribe.reading import read_text


@pytest.mark.parametrize(
    ("text", "usual", "by_sound"),
    [  # Wang Wei, 8th century; Meng Haoran, 8th century; Tao Yuanming, 5th century
        (
            "行到水窮處坐看雲起時",
            "yukite wa itaru mizu no kiwamaru tokoro za shite wa miru kumo no okoru toki",
            "kō tō sui kyū sho za kan un ki ji",
        ),
        (
            "春眠不覺曉處處聞啼鳥",
            "shunmin akatsuki o oboezu shosho teichō o kiku",
            "shun min fu kaku gyō sho sho bun tei chō",
        ),
        (
            "採菊東籬下悠然見南山",
            "kiku o toru tōri no moto yūzen to shite nanzan o miru",
            "sai kiku tō ri ka yū zen ken nan zan",  # as the word nanzan is said
        ),
    ],
)
def test_chinese_verse_is_read_as_it_usually_is_or_by_its_sounds(
    text: str, usual: str, by_sound: str
) -> None:
    found = read_text(text)
    assert found.register == "prose"
    assert [proposal.romaji for proposal in found.proposals][:2] == [usual, by_sound]
    by_signs = found.proposals[1].tokens
    assert [token.normalised for token in by_signs] == list(found.normalised)


def test_no_name_of_a_person_is_made_up() -> None:
    romaji = read_text("行到水窮處坐看雲起時").proposals[0].romaji
    assert romaji == romaji.lower()


def test_compounds_everybody_knows_are_read_as_words() -> None:
    found = read_text("花鳥風月山水")
    assert found.proposals[0].romaji == "kachō fūgetsu sansui"
    assert any("in the order written" in doubt.why for doubt in found.doubts)


def test_return_marks_still_put_words_in_order() -> None:
    assert read_text("読㆑書").proposals[0].reasons == ("in the order of the return marks",)


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("未㆑知㆑生", "imada sei o shirazu"),
        ("将㆑至", "masani itaran to su"),
        ("莫㆑如㆑和", "wa ni shiku wa nashi"),
        ("不㆑如㆓一見㆒", "ikken ni shikazu"),
        ("不如一見", "ikken ni shikazu"),
    ],
)
def test_words_said_twice_and_likenings_are_said_in_order(text: str, romaji: str) -> None:
    found = read_text(text)
    assert found.proposals[0].romaji == romaji
    assert [passage.kind for passage in found.passages] == ["chinese"]


def test_blessings_are_no_names() -> None:
    found = read_text("家内安全商売繁盛")
    assert found.register == "prose"
    assert found.proposals[0].romaji == "kanai anzen shōbai hanjō"
