"""What each mark of the two conventions says.

Leiden cases follow the conventions as published (van Groningen 1932 and the additions of later
epigraphic corpora), from memory; Japanese cases are common practice of 翻刻, no single source.
"""

from __future__ import annotations

import pytest

from inscribe.errors import InputError, NotationError
from inscribe.forms import normalise
from inscribe.notation import MAX_CHARACTERS, parse, print_out, render
from inscribe.signs import Certainty, Intervention, Kind, Sign, transcription

C, V, K = Certainty, Intervention, Kind


def first(text: str, convention: str = "japanese") -> Sign:
    return parse(text, convention).signs[0]


JAPANESE = [
    ("花", Sign("花")),
    ("□", Sign("", certainty=C.UNREADABLE)),
    ("■", Sign("", certainty=C.STRUCK)),
    ("花(抹)", Sign("花", certainty=C.STRUCK)),
    ("■(花)", Sign("花", certainty=C.STRUCK)),
    ("花(損)", Sign("花", certainty=C.DAMAGED)),
    ("花\u0323", Sign("花", certainty=C.DAMAGED)),
    ("花(カ)", Sign("花", certainty=C.DOUBTFUL)),
    ("花（カ）", Sign("花", certainty=C.DOUBTFUL)),
    ("花(ｶ)", Sign("花", certainty=C.DOUBTFUL)),
    ("花(か)", Sign("花", certainty=C.DOUBTFUL)),
    ("花(?)", Sign("花", certainty=C.DOUBTFUL)),
    ("□(花カ)", Sign("花", certainty=C.DOUBTFUL)),
    ("□(花)", Sign("花", certainty=C.RESTORED)),
    ("花(ママ)", Sign("花", sic=True)),
    ("花（ママ）", Sign("花", sic=True)),
    ("花(カ)(ママ)", Sign("花", certainty=C.DOUBTFUL, sic=True)),
    ("花(カ・ママ)", Sign("花", certainty=C.DOUBTFUL, sic=True)),
    ("［花］", Sign("花", certainty=C.RESTORED)),
    ("[花]", Sign("花", certainty=C.RESTORED)),
    ("〔花〕", Sign("花", intervention=V.SUPPLIED)),
    ("花(衍)", Sign("花", intervention=V.SUPERFLUOUS)),
    ("〈花〉", Sign("花", intervention=V.EXPANDED)),
    ("<花>", Sign("花", intervention=V.EXPANDED)),
    ("〔［花］〕", Sign("花", certainty=C.RESTORED, intervention=V.SUPPLIED)),
    ("［〔花〕］", Sign("花", certainty=C.RESTORED, intervention=V.SUPPLIED)),
    ("［□］", Sign("", certainty=C.UNREADABLE)),
    ("［　　］", Sign("", K.GAP)),
    ("［ ］", Sign("", K.GAP)),
    ("[]", Sign("", K.GAP)),
    ("[  ]", Sign("", K.GAP)),
    ("[---]", Sign("", K.GAP)),
    ("［…］", Sign("", K.GAP)),
    ("［　］(抹)", Sign("", K.GAP, C.STRUCK)),
    ("（花押）", Sign("", K.KAO)),
    ("(花押)", Sign("", K.KAO)),
    ("（花押）(カ)", Sign("", K.KAO, C.DOUBTFUL)),
    ("（印）", Sign("", K.SEAL, C.UNREADABLE)),
    ("(印)", Sign("", K.SEAL, C.UNREADABLE)),
    ("（印「水月」）", Sign("水月", K.SEAL)),
    ("(印「水月」)", Sign("水月", K.SEAL)),
    ("（印『水月』）", Sign("水月", K.SEAL)),
    ("（印「水□」）(カ)", Sign("水□", K.SEAL, C.DOUBTFUL)),
    ("は(者)", Sign("𛂥")),
    ("は（者）", Sign("𛂥")),
    ("は(者2)", Sign("𛂦")),
    ("は(者カ)", Sign("𛂥", certainty=C.DOUBTFUL)),
    ("は(者)(ママ)", Sign("𛂥", sic=True)),
    ("ば(者)", Sign("𛂥\u3099")),
    ("わ(王)", Sign("𛄋")),
    ("に(尓)", Sign("𛂋")),
    ("こ(己)", Sign("こ")),
    ("葛\U000e0100", Sign("葛\U000e0100")),
    ("か\u3099", Sign("か\u3099")),
    ("か゛", Sign("か゛")),
    ("ﾊﾞ", Sign("ﾊﾞ")),
    ("𠮷", Sign("𠮷")),
    ("⿰木黑", Sign("⿰木黑")),
    ("⿱⿰日月皿(カ)", Sign("⿱⿰日月皿", certainty=C.DOUBTFUL)),
    ("⿰木□", Sign("⿰木□")),
    ("〳〵", Sign("〳〵")),
    ("／＼", Sign("／＼")),
    (r"\□", Sign("□")),
    (r"\（", Sign("（")),
    ("\\\\", Sign("\\")),
]
LEIDEN = [
    ("花\u0323", Sign("花", certainty=C.DAMAGED)),
    ("[花]", Sign("花", certainty=C.RESTORED)),
    ("［花］", Sign("花", certainty=C.RESTORED)),
    ("[---]", Sign("", K.GAP)),
    ("[- - -]", Sign("", K.GAP)),
    ("[ ]", Sign("", K.GAP)),
    ("[.]", Sign("", certainty=C.UNREADABLE)),
    (".", Sign("", certainty=C.UNREADABLE)),
    ("□", Sign("", certainty=C.UNREADABLE)),
    ("(花)", Sign("花", intervention=V.EXPANDED)),
    ("<花>", Sign("花", intervention=V.SUPPLIED)),
    ("⟨花⟩", Sign("花", intervention=V.SUPPLIED)),
    ("{花}", Sign("花", intervention=V.SUPERFLUOUS)),
    ("⟦花⟧", Sign("花", certainty=C.STRUCK)),
    ("⟦.⟧", Sign("", certainty=C.STRUCK)),
    ("■", Sign("", certainty=C.STRUCK)),
    ("花(?)", Sign("花", certainty=C.DOUBTFUL)),
    ("花(!)", Sign("花", sic=True)),
    ("((kao))", Sign("", K.KAO)),
    ("((花押))", Sign("", K.KAO)),
    ("((seal))", Sign("", K.SEAL, C.UNREADABLE)),
    ("((seal: 水月))", Sign("水月", K.SEAL)),
    ("{[花]}", Sign("花", certainty=C.RESTORED, intervention=V.SUPERFLUOUS)),
]


@pytest.mark.parametrize(("text", "sign"), JAPANESE, ids=[text for text, _ in JAPANESE])
def test_a_japanese_mark(text: str, sign: Sign) -> None:
    assert parse(text) == transcription([[[sign]]])


@pytest.mark.parametrize(("text", "sign"), LEIDEN, ids=[text for text, _ in LEIDEN])
def test_a_leiden_mark(text: str, sign: Sign) -> None:
    assert parse(text, "leiden") == transcription([[[sign]]])


@pytest.mark.parametrize(
    ("text", "columns"),
    [
        ("花の／色は", ["花の", "色は"]),
        ("花の/色は", ["花の", "色は"]),
        ("花の|色は", ["花の", "色は"]),
        ("花の\n色は\n", ["花の", "色は"]),
        ("\n\n花の／\n色は／", ["花の", "色は"]),
        ("花の 色　は", ["花の色は"]),
        ("", []),
        ("\n／ 」", []),
    ],
)
def test_columns(text: str, columns: list[str]) -> None:
    t = parse(text)
    assert ["".join(sign.text for sign in column.signs) for column in t.columns] == columns


def test_faces_of_both_conventions() -> None:
    for text, convention in (("武州住」造之", "japanese"), ("武州住||造之", "leiden")):
        t = parse(text, convention)
        assert [len(face.columns) for face in t.faces] == [1, 1]
        assert [sign.column for sign in t.signs] == [0, 0, 0, 1, 1]


def test_a_bracket_may_run_over_a_column() -> None:
    t = parse("花［の／色］は")
    assert [s.certainty for s in t.signs] == [C.CLEAR, C.RESTORED, C.RESTORED, C.CLEAR]
    assert render(t) == "花［の］／［色］は"


def test_a_gap_may_share_the_brackets_of_what_is_restored() -> None:
    for text, convention in (("［花 - - -］", "japanese"), ("[花 ---]", "leiden")):
        t = parse(text, convention)
        assert t == transcription([[[Sign("花", certainty=C.RESTORED), Sign("", K.GAP)]]])
    assert parse("［花［　　］］") == t


def test_signs_that_share_a_bracket_are_rendered_in_one() -> None:
    assert render(parse("[花][の]〔色〕〔は〕")) == "［花の］〔色は〕"
    assert render(parse("[花の][---]", "leiden"), "leiden") == "[花の][---]"


def test_the_same_transcription_in_both_conventions() -> None:
    t = parse("花(損)の［色］は□■（花押）（印「水」）〈之〉\n造(ママ)］［"[:-2])
    assert parse(render(t, "leiden"), "leiden") == t
    expected = "花\u0323の[色]は.⟦.⟧((kao))((seal: 水))(之)|造(!)"
    assert render(t, "leiden") == expected


ERRORS = [
    ("花の\n色［は", 2, 2, "never closed"),
    ("花の］", 1, 3, "never opened"),
    ("［花〕", 1, 3, "does not close"),
    ("花〔〕", 1, 3, "hold no sign"),
    ("［花［の］］", 1, 3, "opened again"),
    ("花(果)", 1, 2, "unknown"),
    ("は(花)", 1, 2, "no は written from 花"),
    ("(カ)", 1, 1, "follows no sign"),
    ("花\n(カ)", 2, 1, "follows no sign"),
    ("花(カ", 1, 2, "never closed"),
    ("（表）武州住（裏）造之", 1, 1, "names a side"),
    ("花(カ・)", 1, 2, "unknown"),
    ("〔花(衍)〕", 1, 3, "at once"),
    ("■(花カ)", 1, 2, "at once"),
    ("花)", 1, 2, "does not fit"),
    ("「花", 1, 1, "does not fit"),
    ("{花}", 1, 1, "does not fit"),
    ("花(カ)(損)", 1, 5, "at once"),
    ("［花(カ)］", 1, 3, "at once"),
    ("〔〈花〉〕", 1, 2, "at once"),
    ("［　］(カ)", 1, 4, "gap"),
    ("［■］", 1, 2, "at once"),
    ("花\x1b[31m", 1, 2, "U+001B"),
    ("花\u200bの", 1, 2, "U+200B"),
    ("花\u202eの", 1, 2, "U+202E"),
    ("花\ud800", 1, 2, "lone surrogate"),
    ("花\ue000", 1, 2, "private-use"),
    ("花\ufffd", 1, 2, "damaged file"),
    ("\u3099か", 1, 1, "combining mark"),
    ("⿰木", 1, 1, "breaks off"),
    ("⿰木／黒", 1, 1, "breaks off"),
    ("花\\", 1, 2, "marks no sign"),
    ("花\\\n", 1, 2, "marks no sign"),
    ("（印「\x1b」）", 1, 1, "legend"),
]


@pytest.mark.parametrize(
    ("text", "line", "column", "why"), ERRORS, ids=[repr(e[0]) for e in ERRORS]
)
def test_an_error_says_where_and_what_was_expected(
    text: str, line: int, column: int, why: str
) -> None:
    with pytest.raises(NotationError, match=why.replace("+", r"\+")) as caught:
        parse(text, file="plate.txt")
    place = caught.value.place
    assert (place.file, place.line, place.column) == ("plate.txt", line, column)
    assert caught.value.hint


@pytest.mark.parametrize("text", ["花(\x1b[2J)", "は(\x9b)", "花(\u202e)", "花\x07"])
def test_an_error_never_carries_a_control_character(text: str) -> None:
    with pytest.raises(NotationError) as caught:
        parse(text)
    assert all(char.isprintable() or char == "\u3000" for char in str(caught.value))


def test_the_parents_of_a_kana_are_named_when_another_is_written() -> None:
    with pytest.raises(NotationError) as caught:
        parse("わ(花)")
    assert "倭、和、王" in caught.value.hint


def test_marks_of_the_other_convention_are_no_signs() -> None:
    for text in ("〔花〕", "武州住」造之"):
        with pytest.raises(NotationError, match="does not fit"):
            parse(text, "leiden")


def test_leiden_leaves_parents_to_the_code_points() -> None:
    assert first("𛂥", "leiden") == first("は(者)")


def test_an_unknown_convention_is_refused() -> None:
    with pytest.raises(InputError, match="no convention"):
        parse("花", "roman")
    with pytest.raises(InputError, match="no convention"):
        render(parse("花"), "roman")


def test_a_text_beyond_the_limit_is_refused() -> None:
    with pytest.raises(NotationError, match="200,000"):
        parse("花" * (MAX_CHARACTERS + 1))


@pytest.mark.parametrize(
    ("kind", "certainty", "text"),
    [
        (K.CHARACTER, C.CLEAR, ""),
        (K.CHARACTER, C.UNREADABLE, "花"),
        (K.GAP, C.CLEAR, "花"),
        (K.GAP, C.DAMAGED, ""),
        (K.KAO, C.UNREADABLE, ""),
        (K.SEAL, C.CLEAR, ""),
    ],
)
def test_a_sign_that_contradicts_itself_cannot_be_made(
    kind: Kind, certainty: Certainty, text: str
) -> None:
    with pytest.raises(ValueError, match="no "):
        Sign(text, kind, certainty)


NOTED = ["に(尓)", "し(志)", "こ(己)", "を(惡)", "ば(者)", "う(宇2)", "お(於)に(尓)(カ)［に(爾)］"]


@pytest.mark.parametrize("text", NOTED)
def test_a_parent_is_printed_as_the_transcriber_wrote_it(text: str) -> None:
    read = parse(text)
    assert print_out(read) == text
    assert parse(print_out(read)) == read
    assert read == parse(render(read))


def test_a_hentaigana_that_was_typed_is_printed_with_the_parent_of_unicode() -> None:
    assert print_out(parse("𛂋𛂥\u3099")) == "に(爾)ば(者)"


@pytest.mark.parametrize(("text", "kana"), [("を(惡)", "を"), ("あ(惡)", "あ"), ("に(尓)", "に")])
def test_a_noted_kana_is_read_as_noted(text: str, kana: str) -> None:
    normal = normalise(parse(text))
    assert normal.text == kana
    assert [change.doubtful for change in normal.changes] == [False]
