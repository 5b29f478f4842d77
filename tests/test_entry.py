"""The entry: what it says in each style, where its cautions stand, and where its files go."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import inscribe
from inscribe.cli import cli
from inscribe.cli.showing import bar
from inscribe.entry import Entry, entries_in, entry_of
from inscribe.errors import InputError
from inscribe.reading.words import MayName
from inscribe.record import CopiedText, Inscription, Record, RecordImage, load, loads
from inscribe.report import style as styles
from inscribe.report.entries.blocks import (
    Bullets,
    Caution,
    Chart,
    Columns,
    Drawing,
    Facts,
    Grid,
    Heading,
    Interlinear,
    Lead,
)
from inscribe.report.entries.layout import laid_out
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.style import PARTS, Style

EXAMPLES = Path(__file__).parent.parent / "examples"
HOUSE = EXAMPLES / "styles" / "house.toml"
JAPANESE = re.compile(r"[\u3005-\u30ff\u4e00-\u9fff]")


def example(number: int) -> Entry:
    return entry_of(load(EXAMPLES / f"DEMO-{number:03}.toml"))


def ran(*arguments: str) -> Result:
    return CliRunner().invoke(cli, ["entry", *arguments])


def labels(entry: Entry, style: Style) -> Iterator[str]:
    for block in laid_out(entry, style):
        if isinstance(block, Facts):
            yield from (label for label, _ in block.rows)
        elif isinstance(block, Grid):
            yield from (
                block.title,
                *block.header,
                *(row[bool(block.numbers)][0].text for row in block.rows),
            )
        elif isinstance(block, Bullets):
            yield block.title
        elif isinstance(block, Columns):
            yield from block.labels
        elif isinstance(block, Lead):
            yield block.label
        elif isinstance(block, Chart | Drawing | Interlinear):
            yield block.title
        elif isinstance(block, Heading) and block.level == 2:
            yield block.text


def part(text: str, place: str = "back plate") -> Entry:
    return entry_of(
        loads(f'id="A"\nkind="kozuka"\n[[inscription]]\nplace="{place}"\ntext="{text}"')
    )


@pytest.mark.parametrize("number", range(1, 16))
def test_every_label_is_given_in_japanese(number: int) -> None:
    assert [
        each for each in labels(example(number), Style(labels="ja")) if not JAPANESE.search(each)
    ] == []


@pytest.mark.parametrize("number", range(1, 16))
def test_no_label_in_english_is_a_key(number: int) -> None:
    found = list(labels(example(number), Style()))
    assert found
    assert [each for each in found if "_" in each or ":" in each.partition(": ")[0]] == []


def test_words_of_the_trade_are_japanese_too() -> None:
    text = entry_as_markdown(example(5), Style(labels="ja"))
    assert all(word in text for word in ("鐔", "切羽台表裏", "楷書", "鏨銘"))


def with_a_person(entry: Entry) -> Entry:
    """Return an entry whose first inscription may name a person of a list."""
    (first,) = entry.inscriptions
    named = MayName(13, 14, "楓畦", "P-1", "Fukei", ("pen name",), ("in your list",), 0.5)
    read = replace(first.interpretation, persons=(named,))
    return replace(entry, inscriptions=(replace(first, interpretation=read),))


@pytest.mark.parametrize("name", PARTS)
def test_a_part_left_out_of_the_order_is_not_shown(name: str) -> None:
    text = "霞たちこのめも春の雪ふれは\n楓畦書"  # no example has two passages
    image = RecordImage(iiif="https://example.org/iiif/1")
    source = CopiedText("霞たちこのめも春の雪ふれは", id="a", images=(image,))
    other = CopiedText("霞たつこのめもはるの雪ふれば花なきさとも花ぞちりける", id="b")
    composed = Inscription("back plate", text, source=source, other_sources=(other,))
    entries = [entry for _, entry in entries_in(EXAMPLES)]
    entries.append(with_a_person(entry_of(Record("T-1", "kozuka", (composed,)))))
    without = Style(order=tuple(each for each in PARTS if each != name))
    full = sum(len(str(laid_out(entry, Style()))) for entry in entries)
    assert sum(len(str(laid_out(entry, without))) for entry in entries) < full


def test_the_order_of_the_parts_is_the_styles() -> None:
    style = Style(order=("romaji", "kana"))
    blocks = laid_out(example(1), style)
    assert [block.label for block in blocks if isinstance(block, Lead)] == ["Romanisation"]
    assert isinstance(blocks[-1], Facts)
    assert [label for label, _ in blocks[-1].rows] == ["Reading"]


@pytest.mark.parametrize("number", [1, 5, 10])
def test_brackets_stand_around_what_is_quoted(number: int) -> None:
    entry = example(number)
    usual = entry_as_markdown(entry, Style())
    assert usual.count("「") == usual.count("」") - usual.count("」  \n") > 0
    assert entry_as_markdown(entry, Style(brackets="«»")) == re.sub(
        "」(?!  \n)", "»", usual.replace("「", "«")
    )
    assert "「" not in entry_as_markdown(entry, Style(brackets=""))


def test_dates_and_italics_follow_the_style() -> None:
    entry = example(5)
    assert "1852, 1852-09-14 – 1852-10-12 (Kaei 5)" in entry_as_markdown(entry, Style())
    plain = entry_as_markdown(entry, Style(dates="era", italics=False))
    assert "Kaei 5 (1852, 1852-09-14 – 1852-10-12)" in plain
    assert not re.search(r"(?<!\*)\*(?!\*)", plain)


def test_the_makers_years_settle_a_date_in_the_entry_too() -> None:
    assert [date.year for date in example(7).inscriptions[0].interpretation.dates] == [1846]


def test_the_example_of_a_style_can_be_used() -> None:
    text = ran(str(EXAMPLES / "DEMO-005.toml"), "--style", str(HOUSE)).output
    assert "- **年紀:** 嘉永五年壬子仲秋吉日 嘉永5年（1852年" in text
    assert "**備考" not in text
    english = ran(str(EXAMPLES / "DEMO-005.toml"), "--style", str(HOUSE), "--labels", "en").output
    assert "- **Date:**" in english


def test_every_key_and_part_of_a_style_is_in_the_help() -> None:
    text = ran("--help").output
    assert all(f"{field} = " in text for field in Style.__dataclass_fields__)
    assert all(re.search(rf"\b{name}\b", text) for name in PARTS)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('labels = "fr"', '"en" or "ja"'),
        ("italics = 1", "true or false"),
        ("law_note = 'no'", "true or false"),
        ('brackets = "("', "two characters"),
        ('dates = "old"', '"western" or "era"'),
        ('order = ["kana", "nothing"]', "a list of"),
        ('order = "kana"', "a list of"),
        ('order = ["date", "kana", "date"]', "each part once, and date stands in it twice"),
        ("colour = 1", "no style key"),
        ("labels = ", "not TOML"),
    ],
)
def test_a_style_that_cannot_be_used_is_refused(tmp_path: Path, text: str, said: str) -> None:
    file = tmp_path / "house.toml"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(InputError, match=said):
        styles.load(file)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("花の色は", ()),
        ("於東都應需造之", ()),  # nobody is named
        ("於東都露岳應需造之", ("attribution",)),
        ("花の［色］は", ("restored",)),
        ("花の〔色〕は", ("restored",)),
        ("花の□は", ("handling",)),
        ("花の色(カ)は", ("handling",)),
        ("花の［　　］", ("handling",)),
        ("露岳□□［作］", ("attribution", "restored", "handling")),
    ],
)
def test_a_caution_stands_where_it_matters(text: str, expected: tuple[str, ...]) -> None:
    assert part(text).cautions == expected


def test_each_caution_stands_once() -> None:
    inscription = '[[inscription]]\nplace="front"\ntext="露岳□作［之］"\nregister="signature"\n'
    entry = entry_of(loads(f'id="A"\nkind="tsuba"\n{inscription * 3}'))
    said = [block.text for block in laid_out(entry, Style()) if isinstance(block, Caution)]
    assert len(said) == len(set(said)) == 3


def test_cautions_go_with_what_is_exported() -> None:
    assert "spurious" in inscribe.entries_as_tei([example(5)])
    assert "spurious" not in inscribe.entries_as_tei([example(1)])
    assert json.loads(inscribe.entries_as_json([example(5)]))["cautions"] == ["attribution"]


def test_the_law_is_named_last_and_only_where_the_style_asks() -> None:
    entry = example(5)
    law = "local law"
    assert law not in entry_as_markdown(entry, Style())
    assert law in entry_as_markdown(entry, Style(law_note=True)).rstrip().splitlines()[-1]


def test_faces_end_their_line_in_markdown() -> None:
    assert "（花押）」  \n> 嘉永五年壬子" in entry_as_markdown(example(5), Style())


def test_gaps_keep_their_width_in_markdown() -> None:
    assert "［　　］" in entry_as_markdown(example(4), Style())


def test_a_folder_goes_to_a_file_for_each_record(tmp_path: Path) -> None:
    assert ran(str(EXAMPLES), "--format", "html", "-o", f"{tmp_path}/pages/").exit_code == 0
    expected = [file.stem for file in sorted(EXAMPLES.glob("*.toml"))]
    made = sorted(file.stem for file in (tmp_path / "pages").glob("*.html"))
    assert made == [*expected, "index", "volume"]


def test_drawings_of_several_inscriptions_need_a_folder(tmp_path: Path) -> None:
    record = str(EXAMPLES / "DEMO-011.toml")
    assert isinstance(ran(record, "--format", "svg").exception, InputError)
    assert ran(record, "--format", "svg", "-o", f"{tmp_path}/").exit_code == 0
    assert sorted(f.name for f in tmp_path.iterdir()) == ["DEMO-011-2.svg", "DEMO-011.svg"]
    assert ran(str(EXAMPLES / "DEMO-001.toml"), "--format", "svg").output.startswith("<svg ")


def test_a_document_needs_a_file() -> None:
    result = ran(str(EXAMPLES / "DEMO-001.toml"), "--format", "docx")
    assert isinstance(result.exception, InputError)


def test_a_folder_without_a_record_is_an_error(tmp_path: Path) -> None:
    assert isinstance(ran(str(tmp_path)).exception, InputError)


def test_many_records_give_the_same_as_few(tmp_path: Path) -> None:
    text = (EXAMPLES / "DEMO-005.toml").read_text(encoding="utf-8")
    for number in range(45):
        copy = text.replace('id = "DEMO-005"', f'id = "A-{number:02}"')
        (tmp_path / f"A-{number:02}.toml").write_text(copy, encoding="utf-8")
    heard: list[tuple[int, int]] = []
    found = entries_in(tmp_path, progress=lambda done, count: heard.append((done, count)))
    assert [entry.record.id for _, entry in found] == [path.stem for path, _ in found]
    assert heard == [(number, 45) for number in range(1, 46)]
    assert laid_out(found[7][1], Style())[1:] == laid_out(example(5), Style())[1:]
    (tmp_path / "B.toml").write_text("id = 1", encoding="utf-8")
    assert "B.toml" in ran(str(tmp_path)).stderr


def test_the_reading_of_a_bad_record_names_it(tmp_path: Path) -> None:
    (tmp_path / "bad.toml").write_text("kind = 1", encoding="utf-8")
    assert "bad.toml" in str(ran(str(tmp_path / "bad.toml")).exception)


def test_json_of_a_folder_is_a_list() -> None:
    answer = json.loads(ran(str(EXAMPLES), "--format", "json").output)
    assert [each["id"] for each in answer] == [f"DEMO-{n:03}" for n in range(1, 16)]


def test_the_library_does_what_the_command_does(tmp_path: Path) -> None:
    record = str(tmp_path / "DEMO-005.toml")
    Path(record).write_bytes((EXAMPLES / "DEMO-005.toml").read_bytes())
    ((_, entry),) = inscribe.entries_in(tmp_path)
    style = inscribe.load_style(HOUSE)
    assert ran(record, "--style", str(HOUSE)).output == inscribe.entry_as_markdown(entry, style)
    for form in ("json", "tei", "lido"):
        made = getattr(inscribe, f"entries_as_{form}")([entry])
        assert ran(record, "--format", form).output.rstrip() == made.rstrip()


def test_a_bar_is_shown_on_a_terminal_once_the_work_takes_a_while(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def work(*, quiet: bool = False) -> str:
        with bar.progress_shown("entries", quiet=quiet) as progress:
            for done in (1, 2):
                progress(done, 2)
        return capsys.readouterr().err

    assert work() == ""  # no terminal
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    assert work() == ""  # done in less than a second
    monkeypatch.setattr(bar, "BAR_AFTER", 0.0)
    assert work(quiet=True) == ""
    assert "entries" in work()
