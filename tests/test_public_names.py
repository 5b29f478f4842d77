"""The names of the library: each stays what it is, whatever has been imported since."""

from __future__ import annotations

import importlib
import json
import pkgutil
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

import inscribe
from inscribe.cli import cli

EXAMPLES = Path(__file__).parent.parent / "examples"
RECORD = EXAMPLES / "DEMO-003.toml"
COPY, SOURCE = "世の中に桜のなかりせは", "世の中にたえて桜のなかりせば"


@pytest.fixture(scope="module", autouse=True)
def _everything_imported() -> None:
    for found in pkgutil.walk_packages(inscribe.__path__, "inscribe."):
        if not found.name.endswith("__main__"):
            importlib.import_module(found.name)


@pytest.fixture
def library(tmp_path: Path) -> Iterator[inscribe.Library]:
    texts = CliRunner().invoke(
        cli, ["source", "add", "--library", str(tmp_path / "l.sqlite"), str(EXAMPLES / "sources")]
    )
    assert texts.exit_code == 0
    with inscribe.Library(tmp_path / "l.sqlite") as opened:
        yield opened


def collated() -> inscribe.Collation:
    return inscribe.collate_texts(COPY, SOURCE)


def entry() -> inscribe.Entry:
    return inscribe.entry_of(inscribe.load_record(RECORD))


def held() -> inscribe.Collection:
    return inscribe.collection(EXAMPLES, keep=False)


def witnesses(*titles: str) -> list[inscribe.WitnessSource]:
    return [inscribe.WitnessSource(title=title) for title in titles]


def parsed(text: str = COPY) -> inscribe.Transcription:
    return inscribe.parse(text)


def restored() -> inscribe.Restoration:
    return inscribe.restore(parsed("武州□綾国作"))


# Every function of the library with the simplest use of it.
EMPTY = tempfile.mkdtemp()  # a glossary folder that changes nothing
CALLS: dict[str, Callable[[], Any]] = {
    "add_glossary": lambda: inscribe.add_glossary(EMPTY),
    "caution": lambda: inscribe.caution("attribution"),
    "check_folder": lambda: inscribe.check_folder(str(EXAMPLES)),
    "clustered": lambda: inscribe.clustered(held()),
    "collate": lambda: inscribe.collate(parsed(), parsed(SOURCE)),
    "collate_texts": collated,
    "collection": held,
    "compare_dates": lambda: inscribe.compare_dates([inscribe.resolve_date("嘉永六年癸丑")]),
    "concord": lambda: inscribe.concord(held(), "夢"),
    "dates_of_record": lambda: inscribe.dates_of_record(inscribe.load_record(RECORD)),
    "dump_record": lambda: inscribe.dump_record(inscribe.load_record(RECORD)),
    "entries_as_annotations": lambda: inscribe.entries_as_annotations([entry()]),
    "entries_as_csv": lambda: inscribe.entries_as_csv([entry()], inscribe.Style()),
    "entries_as_docx": lambda: bool(inscribe.entries_as_docx([entry()], inscribe.Style())),
    "entries_as_html": lambda: inscribe.entries_as_html([entry()], inscribe.Style()),
    "entries_as_json": lambda: inscribe.entries_as_json([entry()]),
    "entries_as_lido": lambda: inscribe.entries_as_lido([entry()]),
    "entries_as_tei": lambda: inscribe.entries_as_tei([entry()]),
    "entries_in": lambda: inscribe.entries_in(str(RECORD)),
    "entry_as_markdown": lambda: inscribe.entry_as_markdown(entry(), inscribe.Style()),
    "entry_of": entry,
    "find_dates": lambda: inscribe.find_dates("武州住某作嘉永六年癸丑仲秋"),
    "load_record": lambda: inscribe.load_record(RECORD),
    "load_style": lambda: inscribe.load_style(next((EXAMPLES / "styles").glob("*.toml"))),
    "look_up_name": lambda: inscribe.look_up_name("嶺暁"),
    "look_up_sign": lambda: inscribe.look_up_sign("舩"),
    "name_readings": lambda: inscribe.name_readings("嶺暁"),
    "normalise": lambda: inscribe.normalise(parsed("國々")),
    "normalise_text": lambda: inscribe.normalise_text("國々"),
    "parse": parsed,
    "plate_drawing": lambda: inscribe.plate_drawing(inscribe.load_record(RECORD).inscriptions[0]),
    "read": lambda: inscribe.read(parsed()),
    "read_text": lambda: inscribe.read_text("於東都應需造之"),
    "record_schema": inscribe.record_schema,
    "records_of_tei": lambda: inscribe.records_of_tei(inscribe.entries_as_tei([entry()]), "X"),
    "relation": lambda: inscribe.relation("舩", "船"),
    "render": lambda: inscribe.render(parsed(), "leiden"),
    "resolve_date": lambda: inscribe.resolve_date("嘉永六年癸丑仲秋"),
    "restore": restored,
    "schema_of": lambda: inscribe.schema_of("read"),
    "testimony": lambda: inscribe.testimony([collated(), collated()], witnesses("one", "two")),
    "transcription": lambda: inscribe.transcription([[parsed().signs]]),
}
# Every type of the library with a value that is one.
VALUES: dict[str, Callable[[], Any]] = {
    "Candidate": lambda: restored().lacunae[0].candidates[0],
    "Change": lambda: inscribe.normalise_text("國").changes[0],
    "Checked": lambda: inscribe.check_folder(RECORD),
    "Clusters": lambda: inscribe.clustered(held()),
    "Collation": collated,
    "Collection": held,
    "Comparison": lambda: inscribe.compare_dates([inscribe.resolve_date("嘉永六年")]),
    "Concordance": lambda: inscribe.concord(held(), "夢"),
    "DateReading": lambda: inscribe.resolve_date("嘉永六年"),
    "Description": lambda: inscribe.look_up_sign("舩"),
    "Doubt": lambda: inscribe.read_text("□花").doubts[0],
    "Entry": entry,
    "Fidelity": lambda: collated().fidelity,
    "Finding": lambda: inscribe.check_folder(EXAMPLES).findings[0],
    "Group": lambda: collated().groups[0],
    "InputError": lambda: refused(lambda: inscribe.read_text("花", "poem")),
    "InscribeError": lambda: refused(lambda: inscribe.load_record("nowhere.toml")),
    "Inscription": lambda: inscribe.load_record(RECORD).inscriptions[0],
    "InscriptionEntry": lambda: entry().inscriptions[0],
    "Interpretation": lambda: inscribe.read_text("露岳刻之"),
    "Lacuna": lambda: restored().lacunae[0],
    "NameLookUp": lambda: inscribe.look_up_name("嶺暁"),
    "NameReading": lambda: inscribe.name_readings("嶺暁")[0],
    "NormalText": lambda: inscribe.normalise_text("國"),
    "NotationError": lambda: refused(lambda: inscribe.parse("花（")),
    "Occurrence": lambda: inscribe.concord(held(), "夢").hits[0],
    "Passage": lambda: inscribe.read_text("露岳刻之").passages[0],
    "Proposal": lambda: inscribe.read_text("露岳刻之").proposals[0],
    "Record": lambda: inscribe.load_record(RECORD),
    "RecordError": lambda: inscribe.RecordError("it is no TOML"),
    "Restoration": restored,
    "Seen": lambda: inscribe.Seen(parts=("氵",)),
    "Sign": lambda: parsed().signs[0],
    "SignaturePart": lambda: inscribe.read_text("嶺暁作", "signature").signature["verb"],
    "SpaceAccount": lambda: entry().inscriptions[0].collation.space,
    "Style": inscribe.Style,
    "Testimony": lambda: inscribe.testimony([collated()], witnesses("one")),
    "Token": lambda: inscribe.read_text("露岳刻之").proposals[0].tokens[0],
    "Transcription": parsed,
    "WitnessSource": lambda: witnesses("one")[0],
}
WITH_A_LIBRARY = {"Hit", "Library", "SourceText", "add_texts", "find_source"}
LONGEST_REPR = 400  # characters; a style is its settings and is printed whole
KINDS_OF_ERRORS = {"InscribeError", "RecordError"}  # raised with the examples of other names


def refused(call: Callable[[], object]) -> inscribe.InscribeError:
    with pytest.raises(inscribe.InscribeError) as raised:
        call()
    return raised.value


def test_every_name_is_tried_here() -> None:
    assert CALLS.keys() | VALUES.keys() | WITH_A_LIBRARY == set(inscribe.__all__)


@pytest.mark.parametrize("name", sorted(set(inscribe.__all__) - KINDS_OF_ERRORS))
def test_a_name_is_documented_with_an_example_that_runs(name: str) -> None:
    # pytest runs the examples themselves (--doctest-modules)
    assert ">>> " in (getattr(inscribe, name).__doc__ or "")


@pytest.mark.parametrize("name", sorted(VALUES.keys() - {"Style"}))
def test_what_a_notebook_prints_is_short(name: str) -> None:
    assert len(repr(VALUES[name]())) <= LONGEST_REPR


@pytest.mark.parametrize("name", sorted(CALLS))
def test_a_function_can_be_called_twice(name: str) -> None:
    first = CALLS[name]()
    assert callable(getattr(inscribe, name))
    assert CALLS[name]() == first


@pytest.mark.parametrize("name", sorted(VALUES))
def test_a_type_is_that_of_what_the_functions_return(name: str) -> None:
    for _ in range(2):
        assert isinstance(VALUES[name](), getattr(inscribe, name))
    assert getattr(inscribe, name).__doc__


def test_a_library_may_be_open_or_the_path_of_its_file(library: inscribe.Library) -> None:
    hits = inscribe.find_source(library, parsed())
    assert isinstance(hits[0], inscribe.Hit)
    assert isinstance(hits[0].text, inscribe.SourceText)
    assert inscribe.find_source(str(library.path), parsed()) == hits
    for given in (library, library.path, str(library.path)):
        worn = inscribe.restore(parsed("世の中に桜のなか□せは"), given)
        assert worn.sources[0].text == hits[0].text
        assert inscribe.entry_of(inscribe.load_record(RECORD), given).inscriptions
        assert inscribe.check_folder(RECORD, given).records == 1
        assert inscribe.entries_in(RECORD, given)


@pytest.mark.parametrize(
    ("result", "command"),
    [
        (lambda: inscribe.read_text("於東都應需造之"), ["read", "--text", "於東都應需造之"]),
        (collated, ["collate", "--text", COPY, SOURCE]),
        (entry, ["entry", str(RECORD)]),
        (lambda: inscribe.check_folder(EXAMPLES), ["check", str(EXAMPLES)]),
        (lambda: inscribe.look_up_name("嶺暁"), ["name", "嶺暁"]),
        (restored, ["restore", "--text", "武州□綾国作"]),
        (lambda: inscribe.concord(held(), "夢"), ["concord", str(EXAMPLES), "--no-cache", "夢"]),
        (
            lambda: inscribe.clustered(held()),
            ["concord", str(EXAMPLES), "--no-cache", "--clusters"],
        ),
    ],
)
def test_a_result_as_a_dict_is_what_the_command_prints(
    result: Callable[[], Any], command: list[str]
) -> None:
    printed = CliRunner().invoke(cli, [*command, "--format", "json"]).stdout
    assert json.loads(printed) == json.loads(json.dumps(result().to_dict()))


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("DEMO-*.toml")), ids=lambda path: path.stem)
def test_every_example_as_a_dict_is_what_entry_prints(path: Path) -> None:
    printed = CliRunner().invoke(cli, ["entry", str(path), "--format", "json"]).stdout
    ((_, made),) = inscribe.entries_in(path)  # with the names settled in the records beside it
    assert json.loads(printed) == json.loads(json.dumps(made.to_dict()))


@pytest.mark.parametrize("name", ["Collation", "DateReading", "Entry", "Interpretation", "Record"])
def test_what_one_looks_at_is_short_and_a_table(name: str) -> None:
    value = VALUES[name]()
    assert len(repr(value)) < 200
    assert value._repr_html_().startswith("<table>")


def test_a_table_of_a_notebook_obeys_nothing_that_was_carved() -> None:
    shown = inscribe.read_text("花<script>")._repr_html_()
    assert "<script>" not in shown


def test_results_do_not_change() -> None:
    for name in ("Interpretation", "Proposal", "Token", "Passage", "Collation", "DateReading"):
        with pytest.raises((AttributeError, TypeError)):
            VALUES[name]().text = "花"
