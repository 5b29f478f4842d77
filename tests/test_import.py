"""An old list becomes records: nothing is lost, nothing of a person's is written over."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import HealthCheck, given, settings, strategies as st
from imported_lists import FAULTS, faulty_list, sound_list

from inscribe.cli import cli
from inscribe.errors import InputError
from inscribe.importing import import_plan, proposed_mapping, read_list, write_plan
from inscribe.importing.lists import list_of_bytes
from inscribe.importing.mapping import ListMapping, MappedTo, loads_mapping, mapping_as_toml
from inscribe.importing.marks import in_conventions
from inscribe.notation import parse
from inscribe.record import load, loads
from inscribe.report.entries import troubles_as_csv
from inscribe.report.entries.table import safe_cell

HEADINGS = ["No.", "種別", "銘文", "備考", "Länge (cm)"]
ROWS = [
    ["A-1", "小柄", "武州住嶺暁作", "箱あり", "9,7"],
    ["A-2", "鐔", "江戸住露岳作", "", "7.6"],
]


def table(rows: Sequence[Sequence[str]], separator: str = ",") -> str:
    held = io.StringIO()
    csv.writer(held, delimiter=separator).writerows([HEADINGS, *rows])
    return held.getvalue()


def run(*arguments: str) -> Result:
    return CliRunner().invoke(
        cli, ["import", *arguments], catch_exceptions=False, standalone_mode=False
    )


def imported(tmp_path: Path, rows: Sequence[Sequence[str]], *more: str) -> Result:
    (tmp_path / "list.csv").write_text(table(rows), "utf-8")
    mapping = tmp_path / "map.toml"
    if not mapping.exists():
        assert run(str(tmp_path / "list.csv"), "--map", str(mapping)).return_value == 0
    to = ("--map", str(mapping), "--to", str(tmp_path / "records"))
    return run(str(tmp_path / "list.csv"), *to, *more)


@pytest.mark.parametrize(
    ("codec", "name"),
    [
        ("utf-8", "UTF-8"), ("utf-8-sig", "UTF-8"), ("cp932", "Shift_JIS"),
        ("utf-16", "UTF-16"), ("utf-16-le", "UTF-16"), ("euc_jp", "EUC-JP"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_encodings_and_separators_are_found(codec: str, name: str, separator: str) -> None:
    text = table([*ROWS * 3], separator).replace("Länge", "長さ")
    found = list_of_bytes(text.encode(codec), "x.csv")
    assert found.encoding == name
    assert found.headings[:3] == ("No.", "種別", "銘文")
    assert [cell for _, cell in found.rows[0].cells] == ROWS[0]


def test_german_lists_of_windows_are_read() -> None:
    found = list_of_bytes("Nr;Länge\n1;größer\n".encode("cp1252"), "x.csv")
    assert (found.encoding, found.headings) == ("Windows-1252", ("Nr", "Länge"))


def test_what_is_no_table_is_told() -> None:
    with pytest.raises(InputError, match="workbook"):
        list_of_bytes(b"PK\x03\x04" + b"0" * 90, "x.csv")
    text = "No,銘\n1,武州住嶺暁作\n".encode().decode("cp932", "ignore")
    with pytest.raises(InputError, match="encoded twice"):
        list_of_bytes(text.encode(), "x.csv")


def test_a_workbook_is_read(tmp_path: Path) -> None:
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.Workbook()
    book.active.title = "notes"
    sheet = book.create_sheet("list")
    for row in (HEADINGS, ["A-1", "小柄", "武州住", None, 9.7], [12, "鐔", "江戸住", "=1+1", 8.0]):
        sheet.append(row)
    book.save(tmp_path / "list.xlsx")
    found = read_list(tmp_path / "list.xlsx")
    assert found.others == ("notes",)
    assert [cell for _, cell in found.rows[0].cells] == ["A-1", "小柄", "武州住", "", "9.7"]
    assert dict(found.rows[1].cells)["No."] == "12"
    assert dict(found.rows[1].cells)["備考"] == "=1+1"  # a formula that was never reckoned


def test_a_cell_merged_over_rows_holds_for_each_of_them(tmp_path: Path) -> None:
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.Workbook()
    sheet = book.active
    rows = [["No.", "kind", "inscription", "drawer"], ["A-1", "tsuba", "霜岳作", "12"]]
    for row in [*rows, ["A-2", "tsuba", "露岳作"], ["A-3", "tsuba", "霜岳作", "13"]]:
        sheet.append(row)
    sheet.merge_cells("D2:D3")
    sheet.merge_cells("F2:G2")
    book.save(tmp_path / "list.xlsx")
    found = read_list(tmp_path / "list.xlsx")
    assert [dict(row.cells)["drawer"] for row in found.rows] == ["12", "12", "13"]


def test_headings_in_three_languages_are_known() -> None:
    head = "Inv.-Nr.,Kind,銘文,Übersetzung,Bemerkungen,幅(mm),引き出し,Signature,Wert"
    mapping = proposed_mapping(list_of_bytes(f"{head}\n1,2,3,4,5,6,7,8,9\n".encode(), "x"))
    assert dict(mapping.columns) == {
        "Inv.-Nr.": MappedTo("id"),
        "Kind": MappedTo("kind"),
        "銘文": MappedTo("inscription.text"),
        "Übersetzung": MappedTo("inscription.translation"),
        "Bemerkungen": MappedTo("remarks"),
        "幅(mm)": MappedTo("measurements.width", "mm"),
        "引き出し": MappedTo("drawer"),
        "Signature": MappedTo("inscription 2.text"),
        "Wert": MappedTo(""),
    }
    assert loads_mapping(mapping_as_toml(mapping, "x")) == mapping


def test_a_list_becomes_records(tmp_path: Path) -> None:
    result = imported(tmp_path, ROWS)
    assert result.return_value == 0, result.output
    first = load(tmp_path / "records" / "A-1.toml")
    assert (first.id, first.kind, first.state) == ("A-1", "kozuka", "drafted")
    assert first.measurements.length == 97.0
    assert first.remarks == "箱あり"
    assert first.inscriptions[0].text == "武州住嶺暁作"
    assert first.imported is not None
    assert first.imported.cells == tuple(zip(HEADINGS, ROWS[0], strict=True))
    assert load(tmp_path / "records" / "A-2.toml").kind == "tsuba"


def test_importing_again_changes_only_what_changed_in_the_list(tmp_path: Path) -> None:
    imported(tmp_path, ROWS)
    first, second = (tmp_path / "records" / f"A-{n}.toml" for n in (1, 2))
    first.write_text("# looked at in spring\n" + first.read_text("utf-8"), "utf-8")
    before = first.stat().st_mtime_ns, second.stat().st_mtime_ns
    assert "2  unchanged" in imported(tmp_path, ROWS).output
    assert (first.stat().st_mtime_ns, second.stat().st_mtime_ns) == before
    moved = [["A-0", "縁", "武州住", "", ""], [*ROWS[0][:3], "箱なし", "9,7"], ROWS[1]]
    result = imported(tmp_path, moved)
    assert "1  new records" in result.output
    assert "1  records brought up to date" in result.output
    assert "1  unchanged" in result.output
    assert load(first).remarks == "箱なし"
    assert first.read_text("utf-8").startswith("# looked at in spring\n")


def test_what_a_person_changed_stays_and_is_told(tmp_path: Path) -> None:
    imported(tmp_path, ROWS)
    first = tmp_path / "records" / "A-1.toml"
    text = first.read_text("utf-8").replace('"武州住嶺暁作"', '"武州住嶺曉作"', 1)
    first.write_text(text, "utf-8")
    changed = [[*ROWS[0][:2], "武州住嶺暁造", "箱なし", "9,7"], ROWS[1]]
    result = imported(tmp_path, changed)
    assert "the list now says “武州住嶺暁造”" in re.sub(r"\s+", " ", result.output)
    now = load(first)
    assert now.inscriptions[0].text == "武州住嶺曉作"  # the person's word
    assert now.remarks == "箱なし"  # the list's, which nobody had changed
    assert now.imported
    assert dict(now.imported.cells)["銘文"] == "武州住嶺暁造"
    again = imported(tmp_path, changed)
    assert "2  unchanged" in again.output


def test_a_record_that_is_not_of_the_list_is_left_alone(tmp_path: Path) -> None:
    folder = tmp_path / "records"
    folder.mkdir()
    own = 'id = "A-1"\nkind = "tsuba"\n[[inscription]]\nplace = "front"\ntext = "花"\n'
    (folder / "mine.toml").write_text(own, "utf-8")
    result = imported(tmp_path, ROWS)
    assert "1  records that were there before" in result.output
    assert (folder / "mine.toml").read_text("utf-8") == own
    assert not (folder / "A-1.toml").exists()


def test_a_row_that_left_the_list_leaves_its_record(tmp_path: Path) -> None:
    imported(tmp_path, ROWS)
    result = imported(tmp_path, ROWS[1:])
    assert "no longer in the list, records kept: A-1" in result.output
    assert (tmp_path / "records" / "A-1.toml").exists()


def test_a_dry_run_writes_nothing(tmp_path: Path) -> None:
    result = imported(tmp_path, ROWS, "--dry-run")
    assert "Nothing was written." in result.output
    assert not (tmp_path / "records").exists()


def test_all_records_are_written_or_none(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    imported(tmp_path, ROWS)
    folder = tmp_path / "records"
    before = {path.name: path.read_text("utf-8") for path in folder.iterdir()}
    changed = [[*row[:3], "changed", row[4]] for row in ROWS] + [["A-3", "縁", "武州住", "", ""]]
    (tmp_path / "list.csv").write_text(table(changed), "utf-8")
    found = read_list(tmp_path / "list.csv")
    plan = import_plan(found, proposed_mapping(found), folder)
    moved: list[str] = []
    real = Path.replace

    def failing(self: Path, target: Path) -> Path:
        moved.append(self.name)
        if len(moved) == 4:
            raise OSError(28, "No space left on device", str(target))
        return real(self, target)

    monkeypatch.setattr(Path, "replace", failing)
    with pytest.raises(InputError, match="no space left"):
        write_plan(plan, folder)
    monkeypatch.undo()
    assert {path.name: path.read_text("utf-8") for path in folder.iterdir()} == before
    write_plan(plan, folder)
    assert load(folder / "A-3.toml").id == "A-3"


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("武州住<br>嶺暁作", "武州住／嶺暁作"),
        ("武州住\n嶺暁作", "武州住／嶺暁作"),
        ("武州住|嶺暁作", "武州住／嶺暁作"),
        ("表//裏", "表」裏"),
        ("嶺暁[花押]", "嶺暁（花押）"),
        ("嶺暁[kao]", "嶺暁（花押）"),
        ("嶺暁[印]", "嶺暁（印）"),
        ("嶺暁(印:山花)", "嶺暁（印「山花」）"),
        ("嶺○作", "嶺□作"),
        ("嶺＊作", "嶺□作"),
        ("嶺(?)作", "嶺(カ)作"),
        ("嶺(sic)作", "嶺(ママ)作"),
        ("武州[...]作", "武州［　　］作"),
        ("武州……作", "武州［　　］作"),
        ("「武州住嶺暁作」", "武州住嶺暁作"),
        ("銘：武州住嶺暁作", "武州住嶺暁作"),
        ("武州住、嶺暁作。", "武州住嶺暁作"),
        ("<b>武州</b>住", "武州住"),
        ("武州住嶺暁作", "武州住嶺暁作"),
        ("は(者)る", "は(者)る"),
        ("花(カ)の［色は］", "花(カ)の［色は］"),
    ],
)
def test_mark_up_as_the_conventions_have_it(before: str, after: str) -> None:
    made, steps = in_conventions(before)
    assert made == after
    assert parse(made).signs
    assert bool(steps) == (before != after)
    assert in_conventions(made) == (made, [])  # once is enough


def test_a_faulty_list_of_300_rows(tmp_path: Path) -> None:
    rows, wrong = faulty_list(300, seed=7)
    assert set(wrong.values()) == set(FAULTS)  # every fault of the list is in it
    (tmp_path / "old.csv").write_bytes(rows)
    mapping = tmp_path / "map.toml"
    assert run(str(tmp_path / "old.csv"), "--map", str(mapping)).return_value == 0
    errors = tmp_path / "errors.csv"
    folder = tmp_path / "records"
    arguments = [str(tmp_path / "old.csv"), "--map", str(mapping), "--to", str(folder)]
    result = run(*arguments, "--errors", str(errors), "--format", "json")
    assert result.return_value == 1
    data = json.loads(result.stdout)
    assert data["encoding"] == "Shift_JIS"
    left_out = {row["row"] for row in data["rows"] if row["what"] == "left out"}
    expected = {row for row, fault in wrong.items() if FAULTS[fault] == "left out"}
    assert left_out == expected
    told = {int(row["row"]) for row in csv.DictReader(io.StringIO(errors.read_text("utf-8")))}
    for row, fault in wrong.items():
        if FAULTS[fault] in ("left out", "told"):
            assert row in told, f"row {row}: {fault}"
    made = [row for row in data["rows"] if row["what"] == "new"]
    assert len(made) == len(list(folder.glob("*.toml"))) == len(data["rows"]) - len(left_out)
    for row in made:
        load(Path(row["file"]))
    again = run(*arguments, "--format", "json")
    assert {row["what"] for row in json.loads(again.stdout)["rows"]} == {"same", "left out"}


def test_a_workbook_becomes_the_records_that_its_csv_does(tmp_path: Path) -> None:
    """The workbook's days and figures are cells of their own kinds; its second run changes none."""
    openpyxl = pytest.importorskip("openpyxl")
    rows = sound_list(40, seed=3)
    folders = {}
    for ending in ("csv", "xlsx"):
        file, mapping = tmp_path / f"list.{ending}", tmp_path / f"map-{ending}.toml"
        if ending == "csv":
            with file.open("w", encoding="utf-8", newline="") as written:
                csv.writer(written).writerows(rows)
        else:
            book = openpyxl.Workbook()
            for row in rows:
                book.active.append(row)
            for number in range(2, len(rows) + 1):
                for column in (5, 6):
                    cell = book.active.cell(number, column)
                    cell.value = float(cell.value)
                day = book.active.cell(number, 11)
                day.value = datetime(*map(int, str(day.value).split("/")))
            book.save(file)
        assert run(str(file), "--map", str(mapping)).return_value == 0
        folders[ending] = tmp_path / ending
        arguments = (str(file), "--map", str(mapping), "--to", str(folders[ending]))
        made = json.loads(run(*arguments, "--format", "json").stdout)
        assert [row["what"] for row in made["rows"]] == ["new"] * 40
        again = json.loads(run(*arguments, "--format", "json").stdout)
        assert [row["what"] for row in again["rows"]] == ["same"] * 40

    def held(ending: str) -> list[object]:
        records = map(load, sorted(folders[ending].glob("*.toml")))
        return [
            (each.id, each.kind, each.drawer, each.measurements, each.remarks,
             [(i.place, i.text, i.readers) for i in each.inscriptions])
            for each in records
        ]  # fmt: skip

    assert held("xlsx") == held("csv")


_OLD_KANA = "".join(map(chr, range(0x1B000, 0x1B170)))  # a table writes them out: エ(古体)
_CELL = st.one_of(
    st.sampled_from(
        ["", "A-1", "小柄", "武州住", "9,7 cm", "無銘", "嶺?作", "=1+1", "花(", "\x0b"]
    ),
    st.text(st.characters(codec="utf-8", exclude_characters=f"\r{_OLD_KANA}"), max_size=12),
)
_KEYS = ["", "id", "kind", "inscription.text", "remarks", "measurements.length", "maker.born",
         "inscription.translation", "inscription.reading.on", "title", "inscription 2.text",
         "measurements", "state", "inscription.source.title"]  # fmt: skip


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    rows=st.lists(st.lists(_CELL, min_size=5, max_size=5), max_size=6),
    keys=st.lists(st.sampled_from(_KEYS), min_size=5, max_size=5),
)
def test_each_cell_is_in_a_record_or_its_row_among_the_troubles(
    rows: list[list[str]], keys: list[str]
) -> None:
    headings = [f"h{number}" for number in range(5)]
    held = io.StringIO()
    csv.writer(held).writerows([headings, *rows])
    found = list_of_bytes(held.getvalue().encode(), "x.csv", heading_row=1, separator=",")
    columns = {heading: MappedTo(key) for heading, key in zip(headings, keys, strict=True)}
    always = {"kind": "tsuba", "inscription.place": "front", "inscription 2.place": "back"}
    plan = import_plan(found, ListMapping(columns, always))
    in_records: dict[int, tuple[str, ...]] = {}
    for outcome in plan.outcomes:
        if outcome.what == "new":
            record = loads(outcome.text)
            assert record.imported
            assert record.imported.row == outcome.row - 1
            in_records[outcome.row] = tuple(cell for _, cell in record.imported.cells)
    troubled = {trouble.row for trouble in plan.troubles if trouble.left_out}
    told = csv.DictReader(io.StringIO(troubles_as_csv(plan), newline=""))
    cells_told = {
        int(each["row"]): [each[f"{heading}:"] for heading in headings]
        for each in reversed(list(told))
        if each["left_out"] == "yes"
    }
    for number, row in enumerate(csv.reader(io.StringIO(held.getvalue(), newline="")), start=1):
        if number > 1 and any(cell.strip() for cell in row):
            assert (number in in_records) != (number in troubled)
            if number in in_records:
                assert list(in_records[number]) == row
            else:
                assert cells_told[number] == list(map(safe_cell, row))


def test_wrong_use_is_told(tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text(table(ROWS), "utf-8")
    bad = tmp_path / "bad.toml"
    for text, said in {
        '[columns]\n"No." = "idd"\n': "did you mean id?",
        '[columns]\n"Nummer" = "id"\n': "the list has no column Nummer",
        "[colums]\n": "a mapping has no colums",
        'encoding = "Klingon"\n[columns]\n"No." = "id"\n': "there is no encoding Klingon",
        "": "names no column",
    }.items():
        bad.write_text(text, "utf-8")
        result = CliRunner().invoke(cli, ["import", str(tmp_path / "list.csv"), "--map", str(bad)])
        shown = f"{result.output} {result.exception} {getattr(result.exception, 'hint', '')}"
        assert said in shown, shown


def invoked(*arguments: str) -> Result:
    return CliRunner().invoke(cli, arguments)


def test_a_tei_document_becomes_records_and_keeps_what_is_there(tmp_path: Path) -> None:
    document, folder = tmp_path / "all.xml", tmp_path / "records"
    invoked("entry", "examples", "--format", "tei", "-o", str(document))
    arguments = ("import", str(document), "--to", str(folder))
    assert "15  new records" in invoked(*arguments).stdout
    record = load(folder / "DEMO-008.toml")
    assert record == load(Path("examples/DEMO-008.toml"))
    changed = folder / "DEMO-003.toml"
    changed.write_text(changed.read_text("utf-8").replace("kozuka", "fuchi"), "utf-8")
    again = CliRunner().invoke(cli, arguments, standalone_mode=False)
    assert (again.return_value, load(changed).kind) == (1, "fuchi")
    assert "DEMO-003: a record of this id is there and says something else" in again.stdout
    assert "14  unchanged" in again.stdout


def test_a_tei_document_is_shown_as_records_without_a_folder(tmp_path: Path) -> None:
    document = tmp_path / "one.xml"
    invoked("entry", "examples/DEMO-008.toml", "--format", "tei", "-o", str(document))
    shown = invoked("import", str(document)).stdout
    assert loads(shown.partition("row 1: new\n")[2]).id == "DEMO-008"
    assert "Nothing was written." in shown


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("one.xml", "--map", "list.toml"), "a TEI document has no columns; leave --map away"),
        (("one.xml",), "there is no edition of an inscription"),
        (("record.toml",), "it is a record, and a list is wanted"),
    ],
)
def test_what_is_no_list_is_said(
    arguments: tuple[str, ...], said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("one.xml").write_text("<lido/>", "utf-8")
    assert said in str(invoked("import", *arguments).exception)
