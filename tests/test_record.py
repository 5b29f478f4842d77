"""Loading a record: what it becomes, and every problem with its line."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from inscribe import record
from inscribe.errors import InputError, ProblemsError, RecordError
from inscribe.signs import Box

HEAD = 'id = "X-1"\nkind = "kozuka"\n'
INSCRIPTION = '[[inscription]]\nplace = "back plate"\n'
PLATE = "plate = { width = 14.0, height = 96.0 }\n"


def problems(text: str, folder: Path | None = None) -> list[tuple[int | None, str]]:
    with pytest.raises(ProblemsError) as caught:
        record.loads(text, "x.toml", folder)
    assert all(error.place.file == "x.toml" for error in caught.value.errors)
    return [(error.place.line, error.message) for error in caught.value.errors]


def test_a_full_record_becomes_its_types() -> None:
    found = record.loads(
        HEAD
        + "[maker]\nborn = 1808\ndied = 1869\n"
        + INSCRIPTION
        + 'text = "花の／色は"\n'
        + PLATE
        + "column = [{ top = 1, bottom = 9.5 }, { top = 2, bottom = 8, x = 1, width = 4 }]\n"
        + "box = [{ sign = 2, x = 1, y = 2, width = 3, height = 4 }]\n"
        + '[inscription.source]\ntext = "花の色は"\n'
        + '[[inscription.reading]]\nby = "R"\non = 2026-02-03\n'
        + '[[inscription.override]]\nsigns = [3, 4]\nkana = "いろは"\nof = "色は"\n'
    )
    (inscription,) = found.inscriptions
    assert found.between == (1818, 1869)
    assert inscription.transcription.text == "花の色は"
    assert inscription.transcription.signs[1].box == Box(1, 2, 3, 4)
    assert inscription.columns[0] == record.ColumnMeasure(1.0, 9.5)
    assert inscription.columns[0].length == 8.5
    assert inscription.source is not None
    assert inscription.source.transcription.text == "花の色は"
    assert inscription.readers == (record.Reader("R", date(2026, 2, 3)),)
    assert inscription.overrides == (record.Override(2, 3, "いろは", "色は"),)


@pytest.mark.parametrize(
    ("maker", "years"),
    [
        ("", None),
        ("active_from = 1830\nactive_to = 1860", (1830, 1860)),
        ("born = 1800\ndied = 1870\nactive_from = 1825", (1825, 1870)),
        ("born = 1800", (1810, 1890)),
        ("died = 1800", None),
    ],
)
def test_the_years_that_narrow_a_sexagenary_year(maker: str, years: tuple[int, int] | None) -> None:
    text = HEAD + (f"[maker]\n{maker}\n" if maker else "") + INSCRIPTION + 'text = "花"\n'
    assert record.loads(text).between == years


WRONG = [
    ('kin = "x"', 3, "no key kin"),
    ("title = 3", 3, "a whole number"),
    ('title = """a\nb"""', 3, "more than one line"),
    ('title = "\\u001b[31m"', 3, "control character (U+001B)"),
    ('title = "\\u202e"', 3, "control character (U+202E)"),
    ('measurements = "big"', 3, "not a table"),
    ("measurements.length = nan", 3, "not a finite"),
    ("measurements.length = inf", 3, "not a finite"),
    ("measurements.length = -1", 3, "not a possible size"),
    ("measurements.length = 0", 3, "not a possible size"),
    ("measurements.length = 1001", 3, "larger than any fitting"),
    (f"measurements.length = 1{'0' * 400}", 3, "larger than any fitting"),
    ("measurements.length = true", 3, "true or false"),
    ('measurements.length = "9"', 3, "a text"),
    ("measurements.weight = 9", 3, "no key weight"),
    ("maker.born = 99", 3, "no year"),
    ("maker.born = 1800.5", 3, "a number"),
    ("maker.born = 1800\nmaker.died = 1700", 4, "died is before born"),
    ("inscription = 3", 3, "not a list"),
    ("inscription = []", 3, "there is no inscription"),
    ("inscription = [3]", 3, "inscription is not a table"),
]


@pytest.mark.parametrize(("lines", "line", "message"), WRONG, ids=[case[0][:30] for case in WRONG])
def test_a_wrong_value_is_named_with_its_line(lines: str, line: int, message: str) -> None:
    end = "" if lines.startswith("inscription") else INSCRIPTION + 'text = "花"\n'
    ((found, said),) = problems(f"{HEAD}{lines}\n{end}")
    assert message in said
    assert found == line


IMPOSSIBLE = [
    ('text = ""', 5, "text is empty"),
    ('text = "／"', 5, "no sign"),
    ('text = "花"\nnotation = "roman"', 6, "notation is"),
    ('text = "花"\nregister = "song"', 6, "register is"),
    ('text = """\n花の\n色(果)は\n"""', 7, "(果)"),
    ("text = '花［'", 5, "never closed"),
    ('text = "花"\n[inscription.plate]\nwidth = 9', 6, "height is missing"),
    (f'text = "花"\n{PLATE}column = [{{top = 9, bottom = 3}}]', 7, "above its beginning"),
    (f'text = "花"\n{PLATE}column = [{{top = 9, bottom = 97}}]', 7, "below the plate"),
    (f'text = "花"\n{PLATE}column = [{{top=0, bottom=9, x=12, width=3}}]', 7, "past the plate"),
    (f'text = "花／の"\n{PLATE}column = [{{top = 0, bottom = 9}}]', 7, "1 column is measured"),
    ('text = "花"\nbox = [{sign=2, x=1, y=1, width=1, height=1}]', 6, "no sign 2"),
    ('text = "花"\nbox = [{sign=0, x=1, y=1, width=1, height=1}]', 6, "names no sign"),
    (f'text = "花"\n{PLATE}box = [{{sign=1, x=13, y=1, width=2, height=1}}]', 7, "past the plate"),
    ('text = "花"\noverride = [{signs = [1, 2], kana = "は"}]', 6, "no sign 2"),
    ('text = "花"\noverride = [{signs = [1], kana = "は"}]', 6, "a list"),
    ('text = "花"\noverride = [{signs = [1, 1], kana = ""}]', 6, "kana is empty"),
    ('text = "花の"\noverride = [{signs = [2, 1], kana = "は"}]', 6, "before the first"),
    ('text = "花"\noverride = [{signs = [1, 1], kana = "は", of = "葉"}]', 6, "made for 葉"),
    (
        'text = "花の"\noverride = [{signs=[1,2], kana="は"},\n {signs=[2,2], kana="は"}]',
        7,
        "same sign",
    ),
    ('text = "花"\nreading = [{on = 2026-01-01}]', 6, "by is missing"),
    ('text = "花"\nreading = [{by = "R", on = "2026-02-30"}]', 6, "there is no 2026-02-30"),
    ('text = "花"\nreading = [{by = "R", text = "花［"}]', 6, "never closed"),
    ('text = "花"\nsource = {}', 6, "no words"),
    ('text = "花"\nsource = {text = "花］"}', 6, "never opened"),
    ('text = "花"\nsource = {text = "花", file = "a.txt"}', 6, "both"),
    ('text = "花"\nsource = {file = "bad.txt"}', 6, "the bracket ］"),
    ('text = "花"\nsource = {file = "empty.txt"}', 6, "no sign"),
    (
        'text = "花"\n[[inscription.box]]\nsign=1\nx=1\ny=1\nwidth=1\nheight=1\n'
        "[[inscription.box]]\nsign=1\nx=1\ny=1\nwidth=1\nheight=1",
        13,
        "two boxes",
    ),
    ('text = "花\\n］"', 5, "never opened"),
    ("text = '''花\n］'''", 6, "never opened"),
]


@pytest.mark.parametrize(
    ("lines", "line", "message"), IMPOSSIBLE, ids=[case[0][:40] for case in IMPOSSIBLE]
)
def test_an_impossible_inscription_is_named_with_its_line(
    lines: str, line: int, message: str, tmp_path: Path
) -> None:
    for name, words in (("a", "花"), ("bad", "花\n］"), ("empty", "\n")):
        (tmp_path / f"{name}.txt").write_text(words, encoding="utf-8")
    ((found, said),) = problems(f"{HEAD}{INSCRIPTION}{lines}\n", tmp_path)
    assert message in said
    assert found == line


def test_a_plate_larger_than_its_object_is_impossible() -> None:
    text = HEAD + "measurements = { length = 95 }\n" + INSCRIPTION + 'text = "花"\n' + PLATE
    assert problems(text) == [(7, "the plate's height is 96 mm, and the object's largest is 95")]


def test_all_problems_are_told_at_once_in_the_order_of_the_file() -> None:
    text = 'kidn = "tsuba"\nid = 3\n' + INSCRIPTION + 'text = "花［"\ntop = 1\n'
    assert [line for line, _ in problems(text)] == [1, 2, 5, 6]


def test_a_slip_of_the_pen_is_guessed() -> None:
    with pytest.raises(ProblemsError) as caught:
        record.loads(HEAD + INSCRIPTION + 'txet = "花"\n')
    (error,) = caught.value.errors  # that text is missing follows
    assert (error.message, error.hint) == ("inscription has no key txet", "did you mean text?")


def test_a_slip_of_the_pen_beside_the_key_itself_is_no_missing_key() -> None:
    assert len(problems(HEAD + INSCRIPTION + 'text = "花"\ntxet = "花"\n')) == 1


def test_a_problem_in_the_text_points_at_its_column() -> None:
    with pytest.raises(ProblemsError) as caught:
        record.loads(HEAD + INSCRIPTION + 'text = "花の］"\n')
    assert caught.value.errors[0].place.column == 11


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ('id = "X"\nkind = "tsuba\n', 2),
        ('id = "X"\nid = "Y"\n', 2),
        ("id = ", 1),
        ("[[inscription]\n", 1),
    ],
)
def test_what_is_not_toml_is_named_with_its_line(text: str, line: int) -> None:
    with pytest.raises(RecordError, match="not TOML") as caught:
        record.loads(text, "x.toml")
    assert (caught.value.place.file, caught.value.place.line) == ("x.toml", line)


def test_a_backslash_between_double_quotation_marks_is_explained() -> None:
    with pytest.raises(RecordError) as caught:
        record.loads(HEAD + INSCRIPTION + 'text = "\\□"\n')
    assert caught.value.place.line == 5
    assert caught.value.hint == "write ''' around a text with \\"
    assert (
        record.loads(HEAD + INSCRIPTION + "text = '\\□'\n").inscriptions[0].transcription.text
        == "□"
    )


def test_a_number_without_end_is_refused() -> None:
    with pytest.raises(RecordError, match="too many digits"):
        record.loads(f"a = 1{'0' * 5000}")


def test_deep_nesting_is_refused() -> None:
    with pytest.raises(RecordError, match="nested too deeply"):
        record.loads(f"a = {'[' * 20000}")


@pytest.mark.parametrize("part", ["a", "1", "'a'", ' "a" '])
def test_a_key_without_end_is_refused(part: str) -> None:
    with pytest.raises(RecordError, match="too many parts"):
        record.loads(f"{'.'.join([part] * 50_000)} = 1")


def test_a_record_beyond_the_limit_is_refused() -> None:
    with pytest.raises(RecordError, match="longer than the limit"):
        record.loads("#" * 400_001)


def _with_source(file: str) -> str:
    return f'{HEAD}{INSCRIPTION}text = "花"\nsource = {{ file = {file!r} }}\n'


def test_a_source_file_is_read_from_the_folder_of_the_record(tmp_path: Path) -> None:
    (tmp_path / "sources").mkdir()
    (tmp_path / "sources" / "a.txt").write_text("花の\n色は\n", encoding="utf-8")
    (tmp_path / "x.toml").write_text(_with_source("sources/a.txt"), encoding="utf-8")
    source = record.load(tmp_path / "x.toml").inscriptions[0].source
    assert source is not None
    assert source.text == "花の\n色は"
    assert len(source.transcription.columns) == 2


@pytest.mark.parametrize(
    "file",
    [
        "../a.txt",
        "sources/../../a.txt",
        "/etc/passwd",
        "C:/a.txt",
        "C:a.txt",
        "..\\a.txt",
        "//server/share/a.txt",
        "link.txt",
        "loop.txt",
        "missing.txt",
        ".",
        "a" * 500,
    ],
)
def test_a_source_file_outside_the_folder_is_refused(file: str, tmp_path: Path) -> None:
    folder = tmp_path / "records"
    folder.mkdir()
    (tmp_path / "a.txt").write_text("花", encoding="utf-8")
    (folder / "link.txt").symlink_to(tmp_path / "a.txt")
    (folder / "loop.txt").symlink_to(folder / "loop.txt")
    ((line, message),) = problems(_with_source(file), folder)
    assert line == 6
    assert "source file" in message


def test_a_missing_record_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError):
        record.load(tmp_path / "none.toml")


def test_the_records_of_a_folder_are_found_in_order(tmp_path: Path) -> None:
    for name in ("b.toml", "a/c.toml", ".hidden/x.toml", "a/.x.toml", "a.txt"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text("", encoding="utf-8")
    (tmp_path / "a" / "up").symlink_to(tmp_path)
    found = record.paths_in(tmp_path)
    assert [str(path.relative_to(tmp_path)) for path in found] == ["b.toml", "a/c.toml"]


def test_a_missing_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no such folder"):
        record.paths_in(tmp_path / "none")


def test_endless_problems_are_cut_short() -> None:
    keys = "".join(f"k{number} = 1\n" for number in range(1000))
    with pytest.raises(ProblemsError) as caught:
        record.loads(keys + HEAD + INSCRIPTION + 'text = "花"\n')
    assert len(caught.value.errors) == 201
    assert caught.value.errors[-1].message == "800 more problems"


def test_many_wide_overrides_take_no_time() -> None:
    overrides = ",".join(['{signs=[1,100000],kana="a",of="花"}'] * 5000)
    text = f'{HEAD}{INSCRIPTION}text = "{"花" * 100_000}"\noverride = [{overrides}]\n'
    assert {message for _, message in problems(text)} == {
        "two overrides cover the same sign",
        "4,800 more problems",
        "the override was made for 花, and signs 1 to 100000 are " + "花" * 20 + "…",
    }


@pytest.mark.parametrize(
    ("version", "said"),
    [
        ("2", "version is 2, and this inscribe knows version 1 of the keys of records"),
        ("0", "version is 0, and this inscribe knows version 1 of the keys of records"),
        ('"1"', "version is a text"),
        ("true", "version is true or false"),
    ],
)
def test_a_record_of_another_version_of_the_keys_is_refused(version: str, said: str) -> None:
    assert problems(f'version = {version}\n{HEAD}{INSCRIPTION}text = "花"\n') == [(1, said)]


def test_the_version_of_the_keys_may_be_said() -> None:
    said = record.loads(f'version = 1\n{HEAD}{INSCRIPTION}text = "花"\n')
    assert said == record.loads(f'{HEAD}{INSCRIPTION}text = "花"\n')


@pytest.mark.parametrize("service", ["2", "3"])
def test_the_version_of_an_image_service_is_written(service: Any) -> None:
    image = record.RecordImage(iiif="https://example.org/a", service=service)
    made = record.Record("A", "kozuka", (record.Inscription("back", "花"),), images=(image,))
    assert record.loads(record.dump(made), "A.toml").images == (image,)
