"""Documents that are no transcription: told as what they are, wherever a text is taken."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe import files
from inscribe.cli import cli
from inscribe.errors import InputError

TEI = '<TEI xmlns="http://www.tei-c.org/ns/1.0"><text><body><p>花の色</p></body></text></TEI>'


def zipped() -> bytes:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as archive:
        archive.writestr("word/document.xml", "花")
    return held.getvalue()


DOCUMENTS = {
    "tei": (TEI.encode(), "XML or HTML"),
    "xml": (b'<?xml version="1.0"?>\n' + TEI.encode(), "XML or HTML"),
    "html": ("<!DOCTYPE html>\n<p>花の色".encode(), "XML or HTML"),
    "fragment": ("\n  <p class='x'>花の色</p>".encode(), "XML or HTML"),
    "svg": (b"<svg width='3'/>", "XML or HTML"),
    "pdf": (b"%PDF-1.4\n1 0 obj\n<<>>\nendobj\n%%EOF\n", "a PDF file"),
    "zip": (zipped(), "a ZIP archive"),
    "small zip": (b"PK\x03\x04" + b"\x00" * 30, "a ZIP archive"),
    "rtf": (b"{\\rtf1 x}", "an RTF document"),
    "picture": (b"\x89PNG\r\n", "a picture"),
    "json": ('{"text": "花"}'.encode(), "JSON"),
    "json lines": ('{"text": "花"}\n{"text": "花"}\n'.encode(), "JSON"),
    "list": ('[\n{"text": "花"}]'.encode(), "JSON"),
    "record": ('id = "x"\n[[inscription]]\ntext = "花"\n'.encode(), "a record"),
}
COMMANDS = {
    "read": ["read"],
    "restore": ["restore"],
    "source find": ["source", "find", "--library"],
    "collate": ["collate"],
}


def run(command: str, argument: str, tmp_path: Path, given: bytes = b"") -> Result:
    library = [str(tmp_path / "l.sqlite")] if command == "source find" else []
    source = [str(tmp_path / "source.txt")] if command == "collate" else []
    (tmp_path / "source.txt").write_text("花", "utf-8")
    (tmp_path / "s.jsonl").write_text('{"id": "s", "text": "はな"}', "utf-8")
    if library:
        runner = CliRunner()
        added = runner.invoke(
            cli, ["source", "add", str(tmp_path / "s.jsonl"), "--library", *library]
        )
        assert added.exit_code == 0
    return CliRunner().invoke(cli, [*COMMANDS[command], *library, argument, *source], input=given)


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("kind", ["xml", "pdf", "zip", "json"])
@pytest.mark.parametrize("piped", [True, False])
def test_a_document_is_no_text(command: str, kind: str, piped: bool, tmp_path: Path) -> None:
    data, said = DOCUMENTS[kind]
    path = tmp_path / "given.txt"
    path.write_bytes(data)
    result = run(command, "-" if piped else str(path), tmp_path, data if piped else b"")
    assert isinstance(result.exception, InputError)
    assert said in result.exception.message
    assert result.exception.place.file == ("standard input" if piped else str(path))


@pytest.mark.parametrize("kind", DOCUMENTS)
def test_every_kind_is_told(kind: str) -> None:
    data, said = DOCUMENTS[kind]
    with pytest.raises(InputError, match=said):
        files.transcribed(files.decode(data, "x"), "x")


@pytest.mark.parametrize("text", ["[3]", "[abc]花", "<ほ>花", "<a>花", "{花}", "[]", "［花］", ""])
def test_a_transcription_is_a_text(text: str) -> None:
    assert files.transcribed(text, "x") == text


def test_a_source_text_is_no_document_either(tmp_path: Path) -> None:
    path = tmp_path / "given.txt"
    path.write_text(TEI, "utf-8")
    arguments = ["source", "add", str(path), "--library", str(tmp_path / "l.sqlite")]
    result = CliRunner().invoke(cli, arguments)
    assert isinstance(result.exception, InputError)
    assert "XML or HTML" in result.exception.message


def test_lines_of_a_document_are_refused_one_by_one() -> None:
    given = '{"text": "花"}\n花\n<p>花</p>\n'
    result = CliRunner().invoke(cli, ["read", "--lines", "--format", "jsonl"], input=given)
    assert ["error" in line for line in result.stdout.splitlines()] == [True, False, True]
