"""Wrong options, impossible arguments, places where nothing can be written, and tables of rows."""

from __future__ import annotations

from hostile.cases import DONE, Case, record

_ARGUMENTS = {
    "no-command-known": (("frobnicate",), "there is no command"),
    "command-escape": (("\x1b[31m",), "there is no command <U+001B>"),
    "option-escape": (("read", "--\x1b]0;x\x07"), "there is no option --<U+001B>"),
    "choice-escape": (("read", "--format", "\x1b[31m"), "takes no \\x1b[31m; use one of text"),
    "nothing-to-read": (("read",), "there is no text to read"),
    "two-to-read": (("read", "a", "--text", "b"), "given twice"),
    "missing-file": (("read", "nowhere.txt"), "there is no such file"),
    "long-name": (("read", "a" * 5000), "there is no such file"),
    "long-glossary": (("--glossary", "a" * 5000, "read", "--text", "花"), "file name too long"),
    "concord-bytes": (("concord", ".", "\udcff"), "half of a character (U+DCFF)"),
    "no-glossary": (("--glossary", "nowhere", "read", "--text", "花"), "no such glossary"),
    "convention": (("collate", "--text", "花", "花", "--notation", "\x1b"), "no convention"),
    "one-to-collate": (("collate", "--text", "花"), "a copy and a source"),
    "two-from-pipe": (("collate", "-", "-"), "only one text"),
    "no-date": (("date", "花"), "no date or age"),
    "date-empty": (("date", ""), "no date"),
    "date-escape": (("date", "\x1b[2J"), "no date"),
    "date-digits": (("date", "1" * 10_000), "no date"),
    "date-back": (("date", "癸丑", "--between", "1900", "1700"), "no range of years"),
    "date-huge": (("date", "癸丑", "--between", "1", "9" * 5000), "is not a valid"),
    "date-nan": (("date", "癸丑", "--between", "nan", "1900"), "is not a valid"),
    "no-sign": (("sign", " "), "no sign to look up"),
    "no-code-point": (("sign", "U+110000"), "no code point"),
    "surrogate-point": (("sign", "U+D800"), "no code point"),
    "endless-point": (("sign", "U+" + "F" * 5000), "no code point"),
    "strokes": (("sign", "--strokes", "9-3"), "no number of strokes"),
    "strokes-huge": (("sign", "--strokes", "9" * 5000), "no number of strokes"),
    "strokes-wide": (("sign", "--strokes", "１１"), "no number of strokes"),
    "reading-latin": (("sign", "--reading", "abc"), "is not kana"),
    "no-parts": (("sign", "--parts", "+"), "names no part"),
    "limit": (("sign", "--strokes", "3", "--limit", "-1"), "--limit"),
    "name-empty": (("name", " "), "1 to 20 characters"),
    "name-long": (("name", "花" * 5000), "1 to 20 characters"),
    "no-schema": (("schema", "../x"), "there is no ../x; use one of record"),
    "docx-nowhere": (("entry", "r.toml", "--format", "docx"), "goes to a file"),
    "new-not-toml": (("new", "a.txt"), "a record is a .toml file"),
    "new-nowhere": (("new", "no/where/a.toml"), "no such folder"),
    "new-existing": (("new", "r.toml"), "exists already"),
}
_STYLES = {
    "broken": (b"x =", "not TOML"),
    "digits": (b"x = " + b"1" * 5000, "too many digits"),
    "deep": (b"x = " + b"[" * 50_000, "nested too deeply"),
    "unknown": (b"colour = 'red'", "no style key"),
    "unknown-escape": (b'"\\u001b[2J" = 1', "no style key"),
    "labels": (b"labels = []", "the value of labels does not do"),
    "order": (b"order = [[]]", "the value of order does not do"),
    "brackets": (b"brackets = 'abc'", "the value of brackets does not do"),
    "large": (b"#" * (2**20 + 1), "limit of 1 MiB"),
    "bytes": (b"\xff", "not UTF-8"),
}
_DRAFTS = {
    "not-json": b"{",
    "numbers": b"[1, 2]",
    "unknown-mark": b'[["place", "front", "typed"]]',
    "deep": b"[" * 100_000,
    "digits": b"1" * 5000,
    "bytes": b"\xff",
}


def cases() -> list[Case]:
    """Return them, each with a good record at hand."""
    good = {"r.toml": record()}
    found = [Case(n, arguments, said, files=good) for n, (arguments, said) in _ARGUMENTS.items()]
    for name, (content, said) in _STYLES.items():
        arguments = ("entry", "r.toml", "--style", "s")
        found.append(Case(f"style-{name}", arguments, said, files={**good, "s": content}))
    for name, content in _DRAFTS.items():
        said = "not UTF-8" if name == "bytes" else "draft cannot be read"
        found.append(
            Case(f"draft-{name}", ("new", "n.toml"), said, files={"n.toml.draft": content})
        )
    return [*found, *_outputs(), *_glossaries()]


def _outputs() -> list[Case]:
    read = ("read", "--text", "花", "-o")
    held = {"held": b"precious"}
    return [
        Case("output-exists", (*read, "held"), "exists already", files=held),
        Case("output-folder", (*read, "d"), "it is a folder", files={"d/x": b""}),
        Case("output-folder-forced", (*read, "d", "--force"), "it is a folder", files={"d/x": b""}),
        Case("output-device", (*read, "/dev/null", "--force"), "it is a device"),
        Case("output-nowhere", (*read, "no/a"), "no such file"),
        Case("output-in-file", (*read, "held/a"), "not a directory", files=held),
        Case("output-long", (*read, "a" * 300), "file name too long"),
        Case("output-empty", (*read, ""), "-o is empty"),
        Case("output-sealed", (*read, "/proc/a"), "/proc/a"),
        Case(
            "entry-exists",
            ("entry", "r.toml", "--format", "md", "-o", "r.toml"),
            "exists already",
            files={"r.toml": record()},
        ),
        Case("output-loop", (*read, "a"), "file exists", links={"a": "a"}),
        Case("output-forced", (*read, "held", "--force"), "", DONE, files=held, writes=("held",)),
    ]


def _glossaries() -> list[Case]:
    def table(name: str, content: bytes, said: str) -> Case:
        arguments = ("--glossary", "g", "date", "嘉永六年")
        return Case(f"table-{name}", arguments, said, files={"g/eras.tsv": content})

    return [
        table("header", b"a\tb\n", "has no column"),
        table("bytes", b"\xff\n", "not UTF-8"),
        table("cells", b"\x00", "has no column"),
    ]
