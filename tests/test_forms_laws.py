"""Laws of normalisation and of the relation, over texts of every kind of sign."""

from __future__ import annotations

from hypothesis import example, given, strategies as st
from strategies import transcriptions

from inscribe import forms
from inscribe.forms import normalise, normalise_text, relation, same_character, signs_of
from inscribe.forms.normal import NormalText
from inscribe.forms.repeats import marks
from inscribe.forms.steps import steps
from inscribe.signs import Transcription

_CHANGING = sorted(steps())
_PIECES = st.one_of(
    st.sampled_from(_CHANGING),
    st.sampled_from(sorted(marks())),
    st.sampled_from(list("\u3099\u309a゛゜ﾞﾟ\u0301\u302c\ufe09\U000e0100〳〵〴／″＼〱〲々ゝヿ㌔ｶ")),
    st.sampled_from(list("花のいろはかきくばパ山川国一□（）「」／＼〳〵゛゜\u3099\u309aヶー \n")),
    st.sampled_from(["葛\U000e0100", "か\u3099", "ﾊﾞ", "⿰木黑", "\ue000", "\U0010ffff"]),
    st.characters(exclude_categories=("Cs",)),
)
texts = st.lists(_PIECES, max_size=12).map("".join)
signs = st.one_of(st.sampled_from([s for s in _CHANGING if len(s) == 1]), st.characters())


def replayed(carved: list[str], normal: NormalText) -> list[str]:
    """Make the recorded changes again, each on the sign it names."""
    stands = list(carved)
    for change in normal.changes:
        assert stands[change.sign] == change.before
        stands[change.sign] = change.after
    return stands


@given(texts)
def test_the_changes_replayed_on_the_carved_signs_give_the_text(text: str) -> None:
    normal = normalise_text(text)
    carved = signs_of(text)
    stands = replayed(carved, normal)
    assert "".join(stands) == normal.text
    assert normal.origin == tuple(i for i, shown in enumerate(stands) for _ in shown)


@given(texts)
def test_what_was_carved_can_be_had_back(text: str) -> None:
    assert forms.carved(normalise_text(text)) == text


@given(texts)
@example("春〳〵\ufe09")
@example("春〳\ufe09〵")
@example("々\U000e0100゛")
@example("ｶ゛\u3099")
@example("は」\u309aゞ")
@example("乡は゛\ufe09〲\u302c")
@example("カヿ゛\u0344")
@example("㌔゛\ufe09")
@example("゛＼゛")
def test_normal_text_is_normal(text: str) -> None:
    once = normalise_text(text).text
    assert normalise_text(once).text == once


@given(texts)
def test_the_same_text_gives_the_same_result(text: str) -> None:
    assert normalise_text(text) == normalise_text(text)


@given(texts)
def test_signs_put_together_are_the_text(text: str) -> None:
    assert "".join(signs_of(text)) == text


@given(transcriptions)
def test_every_sign_of_an_inscription_keeps_its_index(t: Transcription) -> None:
    normal = normalise(t)
    assert len(normal.text) == len(normal.origin)
    assert list(normal.origin) == sorted(normal.origin)
    emptied = {change.sign for change in normal.changes if change.after == ""}
    assert set(normal.origin) | emptied == set(range(len(t.signs)))


@given(signs, signs)
def test_a_relation_runs_both_ways(a: str, b: str) -> None:
    assert relation(a, b) == relation(b, a)


@given(signs, signs)
def test_the_cheap_question_has_the_same_answer(a: str, b: str) -> None:
    assert same_character(a, b) == relation(a, b).is_same_character


@given(signs)
def test_a_sign_is_related_to_what_it_is_changed_into(a: str) -> None:
    assert relation(a, a).kind == "same"
    after = normalise_text(a).text
    if len(after) == 1:
        assert same_character(a, after)


@given(st.sampled_from([s for s in _CHANGING if len(s) == 1]))
def test_every_sign_listed_as_related_is_so(a: str) -> None:
    for other, stated in forms.related(a).items():
        assert stated.kind not in ("same", "unrelated")
        assert relation(other, a).kind == stated.kind
