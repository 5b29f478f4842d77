"""Transcriptions of every shape, for the property tests of all rooms."""

from __future__ import annotations

from hypothesis import strategies as st

from inscribe import notation, record
from inscribe.notation.cutting import is_one_sign
from inscribe.reading.chinese.marks import MARKS
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

_LINE = st.text(
    st.characters(
        codec="utf-8",
        exclude_categories=("Cc", "Cs", "Zl", "Zp"),
        exclude_characters="\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\ufffe\uffff"
        + "".join(map(chr, range(0xFDD0, 0xFDF0))),
    ),
    max_size=20,
)
_SAID = _LINE.filter(str.strip)
_TEXT = st.lists(_LINE | st.sampled_from(["'''", '"""', "\\", "a\tb"]), max_size=4).map(
    lambda lines: "\n".join(lines).rstrip("\n")
)
_MM = st.floats(0.1, 999, allow_nan=False)
_YEARS = st.none() | st.integers(1600, 1700)
_LATER = st.none() | st.integers(1701, 1900)
# A return mark that has no place is an error of the text, told when it is read.
_CARVED = transcriptions.filter(
    lambda t: bool(t.signs) and not any(sign.text in MARKS for sign in t.signs)
)


@st.composite
def _column_measures(draw: st.DrawFn, t: Transcription) -> tuple[record.ColumnMeasure, ...]:
    def measure() -> record.ColumnMeasure:
        top = draw(st.floats(0, 400))
        extra = draw(st.none() | st.floats(0, 100))
        return record.ColumnMeasure(
            top, draw(st.floats(450, 999)), extra, draw(st.none() | st.floats(0.5, 100))
        )

    return tuple(measure() for _ in t.columns) if draw(st.booleans()) else ()


@st.composite
def _overrides(draw: st.DrawFn, t: Transcription) -> tuple[record.Override, ...]:
    found = []
    start = 0
    while start < len(t.signs) and draw(st.booleans()):
        last = draw(st.integers(start, len(t.signs) - 1))
        covered = "".join(sign.text for sign in t.signs[start : last + 1] if sign.is_legible)
        of = draw(st.sampled_from(["", covered])) if "\n" not in covered else ""
        kind = draw(st.sampled_from(["word", "name"]))
        found.append(record.Override(start, last, draw(_SAID), of, kind, draw(_LINE), draw(_LINE)))
        start = last + 1
    return tuple(found)


_sources = st.one_of(
    st.builds(
        record.CopiedText,
        text=_CARVED.map(lambda t: notation.render(t, "leiden", "\n")),
        id=_LINE,
        notation=st.just("leiden"),
        title=_LINE,
        author=_LINE,
        work=_LINE,
        number=_LINE,
        remarks=_TEXT,
    ),
    st.builds(record.CopiedText, id=_LINE.filter(bool)),
)
_readers = st.builds(
    record.Reader,
    by=_SAID,
    on=st.none() | st.dates(),
    text=st.just("") | _CARVED.map(notation.render),
    kana=_TEXT,
    romaji=_TEXT,
    remarks=_TEXT,
)


_photographs = st.builds(
    record.Photograph,
    picture=_SAID,
    by=_SAID,
    on=st.none() | st.dates(),
    face=st.none() | st.integers(0, 3),
    corners=st.just(()) | st.tuples(*[st.floats(-999, 99_999)] * 8),
    scale=st.none() | _MM,
    barrel=st.none() | st.floats(-1, 1),
    cuts=_LINE,
    drawn=_LINE,
    remarks=_TEXT,
)


@st.composite
def _inscriptions(draw: st.DrawFn) -> record.Inscription:
    t = draw(_CARVED)
    numbers = draw(st.lists(st.integers(0, len(t.signs) - 1), unique=True, max_size=3))
    source = draw(st.none() | _sources)
    return record.Inscription(
        place=draw(_SAID),
        text=notation.render(t, "japanese", draw(st.sampled_from([None, "\n"]))),
        hand=draw(_LINE),
        execution=draw(_LINE),
        register=draw(st.sampled_from(["auto", "verse", "signature", "prose"])),
        plate=draw(st.none() | st.just(record.Plate(1000.0, 1000.0))),
        columns=draw(_column_measures(t)),
        boxes=tuple(record.SignBox(n, draw(_MM) / 3, draw(_MM) / 3, 2.5, 3.0) for n in numbers),
        photographs=tuple(draw(st.lists(_photographs, max_size=2))),
        source=source,
        other_sources=tuple(draw(st.lists(_sources, max_size=2))) if source else (),
        readers=tuple(draw(st.lists(_readers, max_size=2))),
        overrides=draw(_overrides(t)),
        translation=draw(_TEXT),
        remarks=draw(_TEXT),
    )


records: st.SearchStrategy[record.Record] = st.builds(
    record.Record,
    id=_SAID,
    kind=_SAID,
    inscriptions=st.lists(_inscriptions(), min_size=1, max_size=2).map(tuple),
    title=_LINE,
    measurements=st.builds(
        record.Measurements,
        length=st.just(1000.0),
        width=st.none() | _MM,
        height=st.none() | _MM,
        thickness=st.none() | _MM,
        diameter=st.none() | _MM,
    ),
    maker=st.none()
    | st.builds(
        record.Maker,
        name=_SAID,
        born=_YEARS,
        died=_LATER,
        active_from=_YEARS,
        active_to=_LATER,
        remarks=_TEXT,
    ),
    remarks=_TEXT,
    images=st.just(()),  # tests/test_pictures.py has those
    state=st.sampled_from(["", "drafted", "read", "reviewed", "published"]),
    drawer=_LINE,
    box=_LINE,
    with_whom=_LINE,
    imported=st.none()
    | st.builds(
        record.Imported,
        source_list=_SAID,
        row=st.none() | st.integers(0, 5000),
        cells=st.lists(st.tuples(_TEXT, _TEXT | _LINE.map(lambda x: x + "\n")), max_size=4).map(
            tuple
        ),
    ),
)


def pictured() -> record.Record:
    """Return a record with pictures of the object, of an inscription and of its source."""
    image = record.RecordImage(
        "p/plate one.jpg",
        "https://example.org/iiif/p-1",
        "a heron",
        "made up, CC0",
        10.5,
        (1.0, 2.0, 30.0, 40.0),
        (3.0, 4.0),
    )
    source = record.CopiedText("花の色", images=(record.RecordImage("print.png"), image))
    box = record.SignBox(0, 1, 2, 3, 4)
    carved = record.Inscription("back", "花の色", source=source, images=(image,), boxes=(box,))
    return record.Record("A", "kozuka", (carved,), images=(image,))
