"""What an entry as TEI says of its signs, and that it comes back the same."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st
from strategies import records, transcriptions

from inscribe import notation
from inscribe.entry import entry_of
from inscribe.errors import InputError, InscribeError
from inscribe.notation import parse
from inscribe.record import (
    CopiedText,
    Inscription,
    Reader,
    Record,
    RecordImage,
    load,
    loads,
    published,
)
from inscribe.record.tei.documents import records_of_tei
from inscribe.record.tei.edition import transcription_of
from inscribe.report.style import Style
from inscribe.report.tei.edition import Marks, NamedStretch, add_edition
from inscribe.report.tei.entry import entries_as_tei
from inscribe.signs import Box, Sign, Transcription, boxed, transcription

EXAMPLES = Path(__file__).parent.parent / "examples"
FILES = sorted(EXAMPLES.glob("*.toml"))
T = "{http://www.tei-c.org/ns/1.0}"
ID = "{http://www.w3.org/XML/1998/namespace}id"
LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"


def exported(number: int, style: Style | None = None) -> ET.Element:
    entry = entry_of(load(EXAMPLES / f"DEMO-{number:03}.toml"))
    return ET.fromstring(entries_as_tei([entry], style))


def of_text(text: str, **more: object) -> ET.Element:
    made = Record("A", "kozuka", (Inscription("back plate", text, **more),))  # type: ignore[arg-type]
    return ET.fromstring(entries_as_tei([entry_of(made)]))


def elements_of(records: list[Record]) -> str:
    """Return the document of records without the records that stand beside its elements."""
    text = entries_as_tei([entry_of(record) for record in records])
    bare, found = re.subn("<xenoData.*?</xenoData>", "", text, flags=re.DOTALL)
    assert found == len(records)
    return bare


def edition(root: ET.Element) -> ET.Element:
    found = root.find(f".//{T}div[@type='edition']/{T}div/{T}ab")
    assert found is not None
    return found


@given(transcriptions)
def test_an_edition_reads_back_as_the_same_transcription(t: Transcription) -> None:
    block = ET.Element("ab")
    add_edition(block, t, Marks("x"))
    again = ET.fromstring(ET.tostring(block, encoding="unicode"))
    for element in again.iter():
        element.tag = T + element.tag
    found = transcription_of(again)
    assert found == t
    assert [sign.noted for sign in found.signs] == [sign.noted for sign in t.signs]


@st.composite
def marked(draw: st.DrawFn) -> tuple[Transcription, Marks]:
    """Return a transcription with names, anchors, current forms and noted parents all over it."""
    t = draw(transcriptions.filter(lambda t: bool(t.signs)))
    indexes = st.integers(0, len(t.signs) - 1)
    pairs = draw(st.lists(st.tuples(indexes, indexes), max_size=3))
    stretches = tuple(NamedStretch(min(p), max(p), "persName", {"role": "signer"}) for p in pairs)
    regular = dict.fromkeys(draw(st.lists(indexes, max_size=3)), "花")
    starts, ends = (frozenset(draw(st.lists(indexes, max_size=3))) for _ in range(2))
    return t, Marks("x", regular, stretches, starts, ends)


@given(marked())
def test_names_anchors_and_current_forms_change_no_sign(made: tuple[Transcription, Marks]) -> None:
    t, marks = made
    block = ET.Element("ab")
    add_edition(block, t, marks)
    for element in block.iter():
        element.tag = T + element.tag
    assert transcription_of(block) == t


_PIXELS = st.integers(0, 9000).map(float)
_ONE_LINE = st.text("abc 花の-", max_size=8).map(str.strip)
_PICTURES = st.lists(
    st.sampled_from(["p/plate one.jpg", "花.png"]).map(RecordImage)
    | st.builds(
        RecordImage,
        file=st.just(""),
        iiif=st.sampled_from(["https://example.org/iiif/p-1", "https://example.org/a%20b"]),
        shows=_ONE_LINE,
        credit=_ONE_LINE,
        scale=st.none() | st.floats(0.1, 200),
        crop=st.just(()) | st.tuples(_PIXELS, _PIXELS, _PIXELS, _PIXELS),
        corner=st.just(()) | st.tuples(_PIXELS, _PIXELS),
        service=st.sampled_from(["", "2", "3"]),
        size=st.just(()) | st.tuples(*[st.integers(1, 9000).map(float)] * 2),
    ),
    max_size=3,
).map(tuple)


@st.composite
def _carved_kana(draw: st.DrawFn) -> Transcription:
    """Return a transcription with old kana, as signs and noted with their parents."""
    t = draw(transcriptions.filter(lambda t: bool(t.signs)))
    kana = st.characters(min_codepoint=0x1B002, max_codepoint=0x1B11E).map(Sign)
    noted = st.sampled_from(["は(者)", "に(尓)", "わ(王)", "し(志)", "か(可)"]).map(
        lambda s: parse(s).signs[0]
    )
    new = iter(draw(st.lists(kana | noted, min_size=1, max_size=6)))
    faces = [[list(column.signs) for column in face.columns] for face in t.faces]
    for sign in new:
        column = draw(st.sampled_from([c for face in faces for c in face]))
        column.insert(draw(st.integers(0, len(column))), sign)
    return transcription(faces)


@settings(max_examples=40, deadline=None)
@given(records, _PICTURES, st.lists(_PICTURES, min_size=4, max_size=4))
def test_pictures_come_back(
    made: Record, of_object: tuple[RecordImage, ...], others: list[tuple[RecordImage, ...]]
) -> None:
    carved = tuple(
        replace(
            each,
            images=others[at % 4],
            source=replace(each.source, images=others[(at + 1) % 4]) if each.source else None,
        )
        for at, each in enumerate(made.inscriptions)
    )
    made = made._replace(images=of_object, inscriptions=carved)
    (again,) = records_of_tei(elements_of([made]), "x.xml")
    assert again.images == made.images
    for found, given_one in zip(again.inscriptions, made.inscriptions, strict=True):
        assert found.images == given_one.images
        assert [each.images for each in found.sources] == [
            each.images for each in given_one.sources
        ]


@settings(max_examples=40, deadline=None)
@given(st.lists(records, min_size=1, max_size=2))
def test_a_document_reads_back_as_the_records_it_was_made_of(made: list[Record]) -> None:
    again = records_of_tei(elements_of(made), "x.xml")
    assert len(again) == len(made)
    for found, record in zip(again, made, strict=True):
        assert (found.id, found.kind, found.title) == (record.id, record.kind, record.title)
        assert found.measurements == record.measurements
        for one, other in zip(found.inscriptions, record.inscriptions, strict=True):
            assert without_boxes(one) == without_boxes(other)
            assert [box.sign for box in one.boxes] == sorted(box.sign for box in other.boxes)
            for mine, given_box in zip(one.boxes, sorted(other.boxes), strict=True):
                assert mine == pytest.approx(given_box, abs=1e-6)
            assert (one.place, one.hand, one.execution) == (
                other.place,
                other.hand,
                other.execution,
            )
            assert (one.register, one.plate) == (other.register, other.plate)
            assert [reader.by for reader in one.readers] == [reader.by for reader in other.readers]


@settings(max_examples=40, deadline=None)
@given(records)
def test_a_record_and_its_file_come_back_the_same(made: Record) -> None:
    first = entries_as_tei([entry_of(made)])
    (again,) = records_of_tei(first, "x.xml")
    assert again == published(made)
    assert [_noted(each) for each in again.inscriptions] == [
        _noted(each) for each in made.inscriptions
    ]
    assert entries_as_tei([entry_of(again)]) == first


def _noted(inscription: Inscription) -> list[str]:
    return [sign.noted for sign in inscription.transcription.signs]


@settings(max_examples=60, deadline=None)
@given(_carved_kana(), st.sampled_from(notation.CONVENTIONS))
def test_every_sign_comes_back_as_it_was_noted_from_the_elements_alone(
    t: Transcription, convention: str
) -> None:
    text = notation.write_out(t) if convention == "japanese" else notation.render(t, convention)
    source = CopiedText(text, notation=convention)  # type: ignore[arg-type]
    made = Inscription("back", text, convention, source=source)  # type: ignore[arg-type]
    (again,) = records_of_tei(elements_of([Record("A", "kozuka", (made,))]), "x.xml")
    (found,) = again.inscriptions
    for one, other in ((found, made), *zip(found.sources, made.sources, strict=True)):
        assert one.transcription == other.transcription  # the signs themselves
        assert [s.noted for s in one.transcription.signs] == [
            s.noted for s in other.transcription.signs
        ]


def test_what_somebody_changed_in_the_document_wins() -> None:
    record = load(EXAMPLES / "DEMO-015.toml")
    text = entries_as_tei([entry_of(record)])
    changed = text.replace("<objectType>kozuka<", "<objectType>kogai<")
    (again,) = records_of_tei(changed, "x.xml")
    assert again.kind == "kogai"
    assert again.inscriptions[0].overrides == record.inscriptions[0].overrides
    assert again.inscriptions[0].overrides
    (other,) = records_of_tei(text.replace("/>む<", "/>み<", 1), "x.xml")
    assert other.inscriptions[0].text == "雪なから山もと\n霞み夕かな"
    assert other.inscriptions[0].overrides == record.inscriptions[0].overrides  # of 夕
    head, of_record, elements = text.partition("</xenoData>")
    (other,) = records_of_tei(head + of_record + elements.replace("夕", "朝"), "x.xml")
    assert other.inscriptions[0].overrides == ()


def test_what_no_element_tells_is_kept_where_its_signs_are_unchanged() -> None:
    record = load(EXAMPLES / "DEMO-005.toml")
    (carved,) = record.inscriptions
    reader = carved.readers[0]._replace(remarks="by lamplight", kana="むさし")
    source = CopiedText("花", title="A print", by="T. Amberley", reason="the same hand")
    record = record._replace(inscriptions=(replace(carved, readers=(reader,), source=source),))
    text = entries_as_tei([entry_of(record)])

    def read(old: str, new: str) -> Inscription:
        head, edition, rest = text.partition('<div type="edition"')
        assert edition
        assert old in rest
        (again,) = records_of_tei(head + edition + rest.replace(old, new, 1), "x.xml")
        return again.inscriptions[0]

    for old, new, moved in (("武", "文", 0), ("武", "武文", 1), ("吉", "良", 0)):
        found = read(old, new)
        (override,) = found.overrides
        assert new in found.text
        assert override == carved.overrides[0]._replace(first=5 + moved, last=6 + moved)
        assert found.readers == (reader,)
        assert found.source == source
    assert read("槙", "柏").overrides == ()
    captioned = read("seppa-dai, front and back</head>", "seppa-dai</head>")
    assert captioned == replace(record.inscriptions[0], place="seppa-dai")


def test_a_changed_text_stays_in_the_notation_of_its_readers() -> None:
    readers = (Reader("T. Amberley", text="花|色"),)
    made = Inscription("back", "花|色", "leiden", readers=readers)
    text = entries_as_tei([entry_of(Record("A", "kozuka", (made,)))])
    head, edition, rest = text.partition('<div type="edition"')
    (again,) = records_of_tei(head + edition + rest.replace("色", "香", 1), "x.xml")
    (found,) = again.inscriptions
    assert (found.notation, found.readers) == ("leiden", readers)
    assert found.transcription == parse("花|香", "leiden")


def test_what_is_of_the_house_stays_there() -> None:
    record = load(EXAMPLES / "DEMO-003.toml")
    kept = record._replace(drawer="D-77", box="B-88", with_whom="W-99", state="reviewed")
    text = entries_as_tei([entry_of(kept)])
    assert not [said for said in ("D-77", "B-88", "W-99", "reviewed") if said in text]
    (again,) = records_of_tei(text, "x.xml")
    assert again == published(record)
    assert (again.drawer, again.with_whom) == ("", "")


def test_a_record_beside_the_elements_that_is_none_is_refused() -> None:
    text = entries_as_tei([entry_of(load(EXAMPLES / "DEMO-003.toml"))])
    with pytest.raises(InscribeError):
        records_of_tei(text.replace('id = "DEMO-003"', "id = "), "x.xml")


def without_boxes(inscription: Inscription) -> Transcription:
    return parse(inscription.text, inscription.notation)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_an_example_comes_back_and_goes_out_the_same(path: Path) -> None:
    (whole,) = records_of_tei(entries_as_tei([entry_of(load(path))]), path.name)
    assert whole == published(load(path))
    (again,) = records_of_tei(elements_of([load(path)]), path.name)
    for one, other in zip(again.inscriptions, load(path).inscriptions, strict=True):
        assert one.transcription == other.transcription
        assert one.translation.strip() == other.translation.strip()
        if one.source and other.source and one.source.text:
            assert one.source.transcription == other.source.transcription


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("花", "no edition"),
        ("<TEI/>", "no edition"),
        ("<!DOCTYPE x><TEI/>", "document type"),
        ("<a" + "><a" * 200, "not well-formed"),
        ("<a>" * 200 + "</a>" * 200, "nested deeper"),
    ],
)
def test_what_is_no_document_of_this_program_is_refused(text: str, said: str) -> None:
    with pytest.raises(InputError, match="not well-formed" if text == "花" else said):
        records_of_tei(text, "x.xml")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("<gap ", '<supplied reason="lost"><gap reason="lost" /></supplied><gap '),
        ("<width>14.2</width>", "<width>wide</width>"),
        ('when="2026-04-11"', 'when="soon"'),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_else(old: str, new: str) -> None:
    text = entries_as_tei([entry_of(load(EXAMPLES / "DEMO-004.toml"))])
    assert old in text
    with pytest.raises(InputError, match="cannot be"):
        records_of_tei(text.replace(old, new, 1), "x.xml")


def test_the_apparatus_stands_at_the_sign() -> None:
    root = exported(3)
    app = root.find(f".//{T}app[@type='omitted']")
    assert app is not None
    assert app.get("from") == app.get("to")
    anchors = {element.get(ID): element for element in root.iter(f"{T}anchor")}
    place = anchors[(app.get("from") or "").removeprefix("#")]
    before = "".join(edition(root).itertext()).partition("桜")[0]
    assert before == "世の中に"
    assert (place.tail or "").startswith("桜")
    reading = app.find(f"{T}rdg")
    assert reading is not None
    assert reading.text == "たえて"
    book = root.find(f".//{T}bibl")
    assert book is not None
    assert reading.get("source") == f"#{book.get(ID)}"
    assert "".join(book.itertext()).startswith("Ariwara no Narihira")


def test_the_lemma_is_what_stands_between_the_anchors() -> None:
    root = exported(1)
    for app in root.iter(f"{T}app"):
        first, last = ((app.get(key) or "").removeprefix("#") for key in ("from", "to"))
        assert int(first.rpartition("-s")[2]) <= int(last.rpartition("-e")[2])
    block = edition(root)
    lemma = root.findall(f".//{T}lem")[0].text or ""
    assert lemma[0] in "".join(block.itertext())


def test_names_are_attested_and_dates_enclosed() -> None:
    block = edition(exported(5))
    people = [
        ("".join(e.itertext()), e.get("subtype"), e.get("role")) for e in block.iter(f"{T}persName")
    ]
    assert people == [("槙原", "surname", "signer"), ("露岳", "name", "signer")]
    assert ["".join(e.itertext()) for e in block.iter(f"{T}placeName")] == ["武州江戸"]
    (dated,) = block.iter(f"{T}date")
    assert (dated.get("notBefore"), dated.get("notAfter")) == ("1852-09-14", "1852-10-12")


def test_the_header_says_when_by_whom_and_with_what_legend() -> None:
    root = exported(4, Style(institution="Sōsonkan", rights="CC0", language="de"))
    said = ["".join(item.itertext()) for item in root.iter(f"{T}item")]
    assert any(item.startswith("□") for item in said)
    assert any(item.startswith("花(損)") for item in said)
    assert not any(item.startswith("（花押）") for item in said)
    assert [e.text for e in root.iter(f"{T}authority")] == ["Sōsonkan"]
    assert [e.text for e in root.iter(f"{T}repository")] == ["Sōsonkan"]
    assert [e.get("when") for e in root.iter(f"{T}resp")] == ["2026-04-11"]
    (origin,) = exported(5).iter(f"{T}origDate")
    assert (origin.text, origin.get("notBefore")) == ("嘉永五年壬子仲秋吉日", "1852-09-14")
    assert exported(5).find(f".//{T}handNote/{T}term") is not None


def test_a_date_that_contradicts_itself_is_of_low_certainty() -> None:
    assert [e.get("cert") for e in exported(8).iter(f"{T}origDate")] == ["low"]


def test_words_have_their_kana_as_ruby() -> None:
    words = [(r[0].text, r[1].text) for r in exported(1).iter(f"{T}ruby")]
    assert ("夢", "ゆめ") in words


def test_measured_signs_have_zones_and_point_to_them() -> None:
    root = exported(2)
    zones = {zone.get(ID): zone for zone in root.iter(f"{T}zone") if zone.get("type") == "sign"}
    signs = [seg for seg in edition(root).iter(f"{T}seg") if seg.get("facs")]
    assert len(zones) == len(signs) == 19
    first = zones[(signs[0].get("facs") or "").removeprefix("#")]
    assert [first.get(key) for key in ("ulx", "uly", "lrx", "lry")] == ["0.9", "4", "3.9", "9.6"]
    surface = root.find(f"{T}facsimile/{T}surface")
    assert surface is not None
    assert (surface.get("lrx"), surface.get("lry")) == ("14.6", "96.2")


def test_length_is_no_height() -> None:
    sizes = exported(1).find(f".//{T}dimensions[@type='object']")
    assert sizes is not None
    assert [(size.tag.removeprefix(T), size.get("type"), size.text) for size in sizes] == [
        ("dim", "length", "97"),
        ("width", None, "14.5"),
        ("depth", None, "5.2"),
    ]


def test_signs_that_would_run_together_stand_apart() -> None:
    t = parse(r"か\゛〳\〵".replace("〳", "\\〳"))
    block = ET.Element("ab")
    add_edition(block, t, Marks("x"))
    assert len(t.signs) == 4
    assert [seg.text for seg in block.iter("seg")] == ["゛", "〵"]


def test_a_boxed_sign_keeps_its_box() -> None:
    t = boxed(parse("花の"), {1: Box(1, 2, 3, 4)})
    block = ET.Element("ab")
    add_edition(block, t, Marks("x"))
    for element in block.iter():
        element.tag = T + element.tag
    assert transcription_of(block, {"x-z2": Box(1, 2, 3, 4)}) == t


def test_an_old_form_stands_beside_the_current_one_without_more() -> None:
    block = edition(of_text("國の花"))
    (choice,) = block.iter(f"{T}choice")
    assert [child.text for child in choice] == ["國", "国"]
    assert list(block.iter(f"{T}seg")) == []


def test_a_noted_parent_comes_back() -> None:
    made = Record("A", "kozuka", (Inscription("back plate", "に(尓)し(之)𛂋を(惡)"),))
    (again,) = records_of_tei(entries_as_tei([entry_of(made)]), "x.xml")
    assert again.inscriptions[0].text == "に(尓)し(之)𛂋を(惡)"


def test_three_signs_that_would_make_one_repeat_mark_stand_apart() -> None:
    t = parse(r"\／\゛\＼")
    block = ET.Element("ab")
    add_edition(block, t, Marks("x"))
    for element in block.iter():
        element.tag = T + element.tag
    assert [sign.text for sign in transcription_of(block).signs] == ["／", "゛", "＼"]


def test_a_name_ends_with_its_last_sign() -> None:
    block = ET.Element("ab")
    add_edition(block, parse("露岳／造"), Marks("x", {}, (NamedStretch(0, 1, "persName", {}),)))
    assert [child.tag for child in block] == ["lb", "persName", "lb"]
    assert [child.tag for child in block[1]] == []


def test_each_passage_is_a_block_with_its_kind_and_role_and_reads_back() -> None:
    text = "霞たちこのめも春の雪ふれは\n花なきさとも花そちりける楓畦書\n鷺坂苗道刻之（花押）"
    made = Record("T-1", "kozuka", (Inscription("back plate", text),))
    document = entries_as_tei([entry_of(made)])
    division = ET.fromstring(document).find(f".//{T}div[@type='edition']/{T}div")
    assert division is not None
    blocks = [(ab.get("type"), ab.get("subtype")) for ab in division.findall(f"{T}ab")]
    assert blocks == [("verse", None), ("signature", "wrote"), ("signature", "carved")]
    texts = ["".join(ab.itertext()) for ab in division.findall(f"{T}ab")]
    assert texts[1] == "楓畦書"  # inside a column: no line begins there
    (again,) = records_of_tei(document, "x.xml")
    assert again.inscriptions[0].transcription == made.inscriptions[0].transcription


def test_an_old_form_of_kana_is_told_with_its_parent() -> None:
    record = loads(
        'id = "H-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\ntext = "𛂞の花"\n'
    )
    legend = entries_as_tei([entry_of(record)], Style()).partition("</encodingDesc>")[0]
    assert "𛂞 is は(八)" in legend
    assert "の(" not in legend


def _edited(record: Record, *changes: tuple[str, str]) -> Record:
    """Return the record that a document is read back as after somebody changed its elements."""
    document = entries_as_tei([entry_of(record)])
    for pattern, new in changes:
        document, count = re.subn(pattern, new, document, count=1, flags=re.DOTALL)
        assert count == 1, pattern
    (back,) = records_of_tei(document, "x.xml")
    return back


@pytest.mark.parametrize(
    ("text", "old", "new", "said"),
    [
        ("花□色", 'quantity="1"', 'quantity="3"', "花□□□色"),
        ("花［　　］色", 'extent="unknown"', 'quantity="2"', "花□□色"),
        ("花□色", 'quantity="1"', 'extent="unknown"', "花［　　］色"),
        ("花□色", 'quantity="1" unit="character"', 'quantity="2" unit="line"', "花［　　］色"),
        ("花□色", 'quantity="1"', 'atLeast="1" atMost="3"', "花［　　］色"),
        ("花■色", 'quantity="1"', 'quantity="2"', "花■■色"),
    ],
)
def test_a_gap_has_as_many_signs_as_somebody_says(text: str, old: str, new: str, said: str) -> None:
    record = loads(f'id="A"\nkind="kozuka"\n[[inscription]]\nplace="back plate"\ntext="{text}"')
    back = _edited(record, (re.escape(old), new))
    assert back.inscriptions[0].transcription == parse(said)


@pytest.mark.parametrize("count", ["0", "-1", "99999999999", "two"])
def test_a_gap_of_an_impossible_length_is_refused(count: str) -> None:
    record = loads('id="A"\nkind="kozuka"\n[[inscription]]\nplace="back plate"\ntext="花□色"')
    with pytest.raises(InputError, match="says what cannot be"):
        _edited(record, ('quantity="1"', f'quantity="{count}"'))


THREE = """
id = "A"
kind = "tsuba"
[[inscription]]
place = "front"
text = "武州住露岳作"
[[inscription.override]]
signs = [4, 5]
kana = "ろがく"
by = "T. Amberley"
[[inscription]]
place = "back"
text = "嘉永六年吉日"
[[inscription]]
place = "rim"
text = "花の色は"
[inscription.plate]
width = 5
height = 60
tolerance = 0.9
[[inscription.reading]]
by = "H. Quist"
text = "花の色は"
remarks = "Clear."
"""


def test_what_no_element_tells_stays_where_an_inscription_was_taken_out() -> None:
    record = loads(THREE)
    taken_out = r'<div type="textpart"[^>]*n="2"[^>]*>\s*<head>back</head>.*?</div>'
    back = _edited(record, (taken_out, ""))
    assert [each.place for each in back.inscriptions] == ["front", "rim"]
    assert back.inscriptions[0].overrides == record.inscriptions[0].overrides
    assert back.inscriptions[1].readers == record.inscriptions[2].readers
    assert back.inscriptions[1].plate == record.inscriptions[2].plate


def test_what_no_element_tells_stays_where_an_inscription_was_added() -> None:
    record = loads(THREE)
    added = r'<div type="textpart" n="9"><head>seal</head><ab>露岳</ab></div>\1'
    back = _edited(record, (r'(<div type="textpart"[^>]*>\s*<head>front</head>)', added))
    assert [each.place for each in back.inscriptions] == ["seal", "front", "back", "rim"]
    assert back.inscriptions[0].overrides == ()
    assert back.inscriptions[1].overrides == record.inscriptions[0].overrides
    assert back.inscriptions[3].readers == record.inscriptions[2].readers


def test_the_tolerance_of_a_plate_stays_where_something_else_was_changed() -> None:
    record = loads(THREE)
    back = _edited(record, ("<head>back</head>", "<head>reverse</head>"))
    assert back.inscriptions[1].place == "reverse"
    assert back.inscriptions[2].plate == record.inscriptions[2].plate
