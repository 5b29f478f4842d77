"""Files for the library, and queries, that were not made with care or kindness."""

from __future__ import annotations

from hostile.cases import DONE, Case, of_source

_TEI = '<TEI xmlns="http://www.tei-c.org/ns/1.0"><text>{}</text></TEI>'
_ENTITIES = '<!DOCTYPE x [<!ENTITY a "b"><!ENTITY c "&a;&a;">]>' + _TEI.format("<p>&c;</p>")
_LINES = {
    "not-json": (b"{", "not JSON"),
    "a-list": (b"[1]", "must be an object"),
    "no-text": (b'{"id": "a"}', "has no text"),
    "empty-id": (b'{"id": " ", "text": "a"}', "has no id"),
    "empty-text": (b'{"id": "a", "text": "\\n "}', "is empty"),
    "number-text": (b'{"id": "a", "text": 5}', "must be a string"),
    "true-id": (b'{"id": true, "text": "a"}', "must be a string"),
    "nan-id": (b'{"id": NaN, "text": "a"}', "must be a string"),
    "null-id": (b'{"id": null, "text": "a"}', "has no id"),
    "digits": (b'{"id": ' + b"1" * 5000 + b"}", "not JSON"),
    "nested": (b'{"id": ' + b"[" * 100_000, "not JSON"),
    "surrogate": (b'{"id": "a", "text": "\\ud800"}', "U+D800"),
    "surrogate-beside": (b'{"id": "a", "text": "a", "x": "\\udfff"}', "U+DFFF"),
    "escape-text": (b'{"id": "a", "text": "\\u001b[2J"}', "U+001B"),
    "escape-id": (b'{"id": "\\u001b[2J", "text": "a"}', "U+001B"),
    "c1-title": (b'{"id": "a", "text": "a", "title": "\\u009b1m"}', "U+009B"),
    "nul-beside": (b'{"id": "a", "text": "a", "x": "\\u0000"}', "U+0000"),
    "bidi-title": (b'{"id": "a", "text": "a", "title": "\\u202e"}', "U+202E"),
    "id-twice": (b'{"id": "a", "text": "a"}\n{"id": "a", "text": "b"}', "two texts have the id"),
    "long-text": (b'{"id": "a", "text": "' + b"a" * 1_000_001 + b'"}', "limit of 1000000 signs"),
    "third-line": (b'{"id": "a", "text": "a"}\n\n{', "line 3"),
}
_OTHERS = {
    "csv-no-header": ("a.csv", b"", "must name the columns"),
    "csv-other-header": ("a.csv", b"a,b\n1,2\n", "must name the columns"),
    "csv-long-field": ("a.csv", b"id,text\na," + b"x" * 200_000, "cannot be read"),
    "csv-short-row": ("a.csv", b"id,text\na\n", "the row has 1 cell,"),
    "toml-broken": ("a.toml", b"[[text]", "not TOML"),
    "toml-digits": ("a.toml", b"x = " + b"1" * 5000, "too many digits"),
    "toml-deep": ("a.toml", b"x = " + b"[" * 50_000, "nested too deeply"),
    "toml-endless-key": ("a.toml", b".".join([b"a"] * 50_000) + b" = 1", "too many parts"),
    "toml-list": ("a.toml", b"text = [1, 2]", "must be an object"),
    "xml-broken": ("a.xml", b"<TEI>", "not well-formed"),
    "xml-other": ("a.xml", b"<a/>", "no TEI text element"),
    "xml-entities": ("a.xml", _ENTITIES.encode(), "document type"),
    "xml-outside": (
        "a.xml",
        b'<!DOCTYPE a SYSTEM "http://192.0.2.1/x">' + _TEI.encode(),
        "document",
    ),
    "xml-deep": ("a.xml", _TEI.format("<div>" * 5000 + "</div>" * 5000).encode(), "limit of 100"),
    "xml-empty": ("a.xml", _TEI.format("").encode(), "is empty"),
    "xml-c1": ("a.xml", _TEI.format("<p>a&#x9b;1m</p>").encode(), "U+009B"),
    "text-empty": ("a.txt", b" \n", "is empty"),
    "unknown-kind": ("a.docx", b"PK", "kind of file is not known"),
}
_QUERIES = {
    "sql": "花の'; DROP TABLE texts; --",
    "fts": '花の AND 色 OR "は*" NEAR/2 col:花の',
    "wildcards": "花の%_*?",
    "formula": "=HYPERLINK[花の]",
    "html": "花の<img src=x onerror=alert`1`>",
}


def cases() -> list[Case]:
    """Return what is added, what is asked, and where the library lies."""
    found = [of_source(f"jsonl-{n}", "a.jsonl", line, said) for n, (line, said) in _LINES.items()]
    found += [of_source(name, *rest) for name, rest in _OTHERS.items()]
    return [*found, *_accepted(), *_asked(), *_places()]


def _accepted() -> list[Case]:
    sql = b'{"id": "x\'); DROP TABLE texts;--", "text": "\xe8\x8a\xb1", "title": "\\"\' OR 1=1"}'
    page = b'{"id": "<b>", "text": "<script>alert(1)</script>"}'
    encoded = "<?xml version='1.0' encoding='shift_jis'?>" + _TEI.format("<p>花</p>")
    return [
        of_source("sql-id", "a.jsonl", sql, "1 added", DONE),
        of_source("html-id", "a.jsonl", page, "1 added", DONE),
        of_source("windows-lines", "a.jsonl", b'{"id": "a", "text": "a\\r\\nb"}', "1 added", DONE),
        of_source("open-bracket", "a.txt", "花（の［注".encode(), "1 added", DONE),
        of_source("declared-otherwise", "a.xml", encoded.encode(), "1 added", DONE),
        of_source("number-id", "a.jsonl", b'{"id": 7, "text": "a"}', "1 added", DONE),
    ]


def _asked() -> list[Case]:
    find, answer = ("source", "find", "--library", "held.sqlite"), "looked for"
    made = ("held.sqlite-wal", "held.sqlite-shm")
    found = [
        Case(f"query-{n}", (*find, "--text", text), answer, DONE, writes=made)
        for n, text in _QUERIES.items()
    ]
    long = {"a.txt": ("花" * 2001).encode()}
    return [
        *found,
        Case("query-long", (*find, "a.txt"), "limit of 2000 signs", files=long, writes=made),
        Case("query-nothing", (*find, "--text", "□"), "no legible sign", writes=made),
        Case("query-one-sign", (*find, "--text", "花"), "one legible sign", writes=made),
        Case("query-empty", (*find, "--text", ""), "no legible sign", writes=made),
        Case("query-two", (*find, "--text", "a", "b"), "given twice"),
        Case("query-most", (*find, "--most", "99999", "--text", "花"), "--most"),
    ]


def _places() -> list[Case]:
    def at(name: str, place: str, said: str, **more: dict[str, bytes]) -> Case:
        return Case(name, ("source", "list", "--library", place), said, **more)  # type: ignore[arg-type]

    add = ("source", "add", "a.txt", "--library")
    text = {"a.txt": "花".encode()}
    return [
        at("library-missing", "no.sqlite", "no library"),
        at("library-folder", ".", "it is a folder"),
        at(
            "library-text", "a", "cannot be used", files={"a": b"hello, this is no database at all"}
        ),
        at(
            "library-cut", "a", "cannot be used", files={"a": b"SQLite format 3\x00" + b"\x00" * 50}
        ),
        at("library-empty", "a", "cannot be used", files={"a": b""}),
        Case("library-in-file", (*add, "f/l.sqlite"), "cannot be used", files=text | {"f": b""}),
        Case("library-is-folder", (*add, "."), "it is a folder", files=text),
        Case("remove-unknown", ("source", "remove", "x", "--library", "held.sqlite"), "no text x"),
        Case(
            "remove-escape", ("source", "remove", "\x1b[2J", "--library", "held.sqlite"), "U+001B"
        ),
        Case("add-missing", ("source", "add", "no.txt"), "no such file"),
        Case(
            "add-unknown-kind",
            ("source", "add", "a.txt", "--from", "xls"),
            "kind of file",
            files=text,
        ),
    ]
