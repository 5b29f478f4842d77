"""Transcriptions of every shape, for the property tests of all rooms."""

from __future__ import annotations

from hypothesis import strategies as st

from inscribe.notation.segments import is_one_sign
from inscribe.signs import Certainty, Intervention, Kind, Sign, Transcription, transcription

_ORDINARY = st.sampled_from(list("花の色はうつりにけりなナニ々ゝ〱國𠮷𛂥"))
_ODD = st.one_of(
    st.sampled_from(
        ["葛\U000e0100", "か\u3099", "ﾊﾞ", "か゛", "⿰木黑", "⿱⿰日月皿", "〳〵", "／＼"]
    ),
    st.sampled_from("□■［］…？！[]（）()〔〕〈〉<>{}⟦⟧／/」「|‖.-\\!?カ印〳〵＼゛″"),
)
sign_texts = st.one_of(_ORDINARY, _ODD, st.characters().filter(is_one_sign))
legends = st.text(
    st.one_of(_ORDINARY, st.sampled_from(list("」』）)(\\ 「□：:"))), min_size=1, max_size=4
)


@st.composite
def carved_signs(draw: st.DrawFn) -> Sign:
    kind = draw(st.sampled_from([Kind.CHARACTER] * 5 + list(Kind)))
    if kind is Kind.GAP:
        text, certainties = "", [Certainty.CLEAR, Certainty.STRUCK]
    elif kind is Kind.KAO:
        text, certainties = "", [c for c in Certainty if c is not Certainty.UNREADABLE]
    else:
        text = draw(st.one_of(st.just(""), sign_texts if kind is Kind.CHARACTER else legends))
        certainties = [Certainty.UNREADABLE, Certainty.STRUCK]
        if text:
            certainties = [c for c in Certainty if c is not Certainty.UNREADABLE]
    return Sign(
        text,
        kind,
        draw(st.sampled_from(certainties)),
        draw(st.sampled_from(Intervention)),
        draw(st.booleans()),
    )


transcriptions: st.SearchStrategy[Transcription] = st.lists(
    st.lists(st.lists(carved_signs(), max_size=6), max_size=3), max_size=3
).map(transcription)
