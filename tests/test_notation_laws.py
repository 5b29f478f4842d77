"""Laws every transcription and every string must keep."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st
from strategies import sign_texts, transcriptions

from inscribe.errors import NotationError
from inscribe.notation import parse, render
from inscribe.notation.cutting import is_one_sign, segments
from inscribe.signs import Sign, Transcription, transcription

CONVENTIONS = ("japanese", "leiden")
BUSY = st.text(
    st.sampled_from(list("花のは□■［］[]（）()〔〕〈〉<>{}⟦⟧／/」「|.-\\\n 　カマ損印押kao?!゙̣⿰者"))
)


@pytest.mark.parametrize("convention", CONVENTIONS)
@given(t=transcriptions)
def test_what_is_rendered_is_parsed_back(convention: str, t: Transcription) -> None:
    assert parse(render(t, convention), convention) == t


@pytest.mark.parametrize("convention", CONVENTIONS)
@given(t=transcriptions)
def test_columns_may_be_lines(convention: str, t: Transcription) -> None:
    assert parse(render(t, convention, "\n"), convention) == t


@pytest.mark.parametrize("convention", CONVENTIONS)
@given(text=st.one_of(BUSY, st.text(), st.text(st.characters())))
def test_any_string_parses_or_is_refused_with_its_place(convention: str, text: str) -> None:
    refused = None
    try:
        t = parse(text, convention)
    except NotationError as error:
        refused = error
    if refused is None:
        assert parse(render(t, convention), convention) == t
        assert [s.index for s in t.signs] == list(range(len(t.signs)))
    else:
        assert refused.hint
        lines = text.split("\n")
        assert refused.place.line in range(1, len(lines) + 1)
        assert refused.place.column in range(1, max(1, len(lines[refused.place.line - 1])) + 1)


@given(st.text(st.one_of(st.characters(), st.sampled_from("が⿰木〳〵"))))
def test_segments_lose_nothing(text: str) -> None:
    assert "".join(segments(text)) == text


@given(st.lists(sign_texts, min_size=1))
def test_a_text_of_whole_signs_is_cut_at_their_borders(texts: list[str]) -> None:
    if not {"〵", "゛", "゜", "＼"} & set(texts):  # which may belong to the sign before
        assert list(segments("".join(texts))) == texts


@given(st.text(max_size=4))
def test_render_refuses_what_is_not_one_sign(text: str) -> None:
    if text and not is_one_sign(text):
        with pytest.raises(NotationError):
            render(transcription([[[Sign(text)]]]))
