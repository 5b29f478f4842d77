"""Records with keys, types, numbers and paths that cannot be."""

from __future__ import annotations

from hostile.cases import DONE, Case, of_record, record

_TOP = {
    "unknown-key": ("titel = 'x'", "did you mean title?"),
    "number-as-id": ("title = 5", "title is a whole number"),
    "list-as-title": ("title = ['a']", "title is a list"),
    "table-as-title": ("title = {a = 1}", "title is a table"),
    "date-as-title": ("title = 2026-01-01", "title is a date"),
    "boolean": ("remarks = true", "remarks is true or false"),
    "bell-in-title": ('title = "a\\u0007"', "control character (U+0007)"),
    "escape-in-title": ('title = "\\u001b]0;x"', "control character (U+001B)"),
    "c1-in-title": ('title = "\\u009b1m"', "control character (U+009B)"),
    "xml-forbidden": ('title = "\\ufffe"', "control character (U+FFFE)"),
    "bidi-in-title": ('title = "\\u202egnp.exe"', "control character (U+202E)"),
    "line-separator": ('title = "a\\u2028b"', "control character (U+2028)"),
    "surrogate-escape": ('title = "\\ud800"', "not TOML"),
    "two-lines": ('title = "a\\nb"', "more than one line"),
    "long-title": (f'title = "{"a" * 1001}"', "more than 1,000 characters"),
    "long-remarks": (f'remarks = "{"a" * 200_001}"', "more than 200,000 characters"),
    "key-twice": ('title = "a"\ntitle = "b"', "not TOML"),
    "not-toml": ("title = ", "not TOML"),
    "unclosed-text": ('title = "abc', "not TOML"),
    "size-nan": ("[measurements]\nlength = nan", "not a finite number"),
    "size-infinite": ("[measurements]\nlength = inf", "not a finite number"),
    "size-negative": ("[measurements]\nlength = -1", "not a possible size"),
    "size-zero": ("[measurements]\nlength = 0", "more than 0"),
    "size-huge": ("[measurements]\nlength = 1e300", "larger than any fitting"),
    "size-text": ('[measurements]\nlength = "95"', "expected a number of mm"),
    "size-boolean": ("[measurements]\nlength = true", "expected a number of mm"),
    "size-digits": ("[measurements]\nlength = " + "9" * 5000, "too many digits"),
    "maker-unborn": ("[maker]\nborn = 1800\ndied = 1700", "before born"),
    "maker-never": ("[maker]\nborn = 99999", "no year in which"),
    "maker-list": ("maker = []", "not a table"),
    "deep-list": ("x = " + "[" * 50_000, "nested too deeply"),
    "deep-table": ("x = " + "{a=" * 50_000, "nested too deeply"),
    "endless-key": (".".join(["a"] * 20_000) + " = 1", "too many parts"),
    "long-key": ("k" * 10_000 + " = 1", "has no key"),
    "key-with-escape": ('"\\u001b[31m" = 1', "has no key"),
    "key-of-class": ("__class__ = 1", "has no key"),
    "many-unknown": ("\n".join(f"k{n} = 1" for n in range(5000)), "more problems"),
    "too-long": ("#" * 400_001, "limit of 400,000 characters"),
}
_INNER = {
    "convention": ('notation = "klingon"', "expected japanese or leiden"),
    "register": ('register = "song"', "register is"),
    "columns-count": ("[[inscription.column]]\ntop = 1\nbottom = 2\n" * 2, "columns are measured"),
    "column-upside": ("[[inscription.column]]\ntop = 5\nbottom = 2", "ends above its beginning"),
    "column-off": (
        "[inscription.plate]\nwidth = 14\nheight = 9\n[[inscription.column]]\ntop = 1\nbottom = 20",
        "below the plate",
    ),
    "box-nowhere": (
        "[[inscription.box]]\nsign = 99\nx = 1\ny = 1\nwidth = 1\nheight = 1",
        "there is no sign 99",
    ),
    "box-zero": (
        "[[inscription.box]]\nsign = 0\nx = 1\ny = 1\nwidth = 1\nheight = 1",
        "names no sign",
    ),
    "box-huge": (
        "[[inscription.box]]\nsign = 99999999999999999999\nx = 1\ny = 1\nwidth = 1\nheight = 1",
        "names no sign",
    ),
    "override-nowhere": (
        '[[inscription.override]]\nsigns = [9, 9]\nkana = "a"',
        "there is no sign 9",
    ),
    "override-back": ('[[inscription.override]]\nsigns = [3, 1]\nkana = "a"', "before the first"),
    "override-text": ('[[inscription.override]]\nsigns = "1"\nkana = "a"', "signs"),
    "override-twice": (
        '[[inscription.override]]\nsigns = [1, 2]\nkana = "a"\n' * 2,
        "cover the same sign",
    ),
    "reader-nobody": ('[[inscription.reading]]\nby = " "', "by is empty"),
    "reader-day": (
        '[[inscription.reading]]\nby = "a"\non = "2026-02-30"',
        "there is no 2026-02-30",
    ),
    "source-nothing": ("[inscription.source]\ntitle = 'x'", "no words"),
    "source-parent": (
        '[inscription.source]\nfile = "../x.txt"',
        "leads out of the record's folder",
    ),
    "source-deep-parent": ('[inscription.source]\nfile = "a/../../x"', "leads out of the record's"),
    "source-absolute": ('[inscription.source]\nfile = "/etc/passwd"', "leads out of the record's"),
    "source-drive": ("[inscription.source]\nfile = 'C:\\x.txt'", "leads out of the record's"),
    "source-share": ("[inscription.source]\nfile = '\\\\host\\x'", "leads out of the record's"),
    "source-url": ('[inscription.source]\nfile = "file:///etc/passwd"', "the source file"),
    "source-missing": ('[inscription.source]\nfile = "no.txt"', "no such file"),
    "source-folder": ('[inscription.source]\nfile = "."', "not a file"),
    "source-long": (f'[inscription.source]\nfile = "{"a" * 900}"', "cannot be followed"),
    "source-both": ('[inscription.source]\nfile = "r.toml"\ntext = "a"', "both text and file"),
    "nul-in-path": ('[inscription.source]\nfile = "a\\u0000b"', "control character (U+0000)"),
}


def cases() -> list[Case]:
    """Return the records, and the folders they lie in."""
    found = [of_record(f"record-{n}", record(top=t), said) for n, (t, said) in _TOP.items()]
    found += [of_record(f"record-{n}", record(inner=t), said) for n, (t, said) in _INNER.items()]
    return [*found, *_without(), *_links(), *_folders()]


def _without() -> list[Case]:
    lines = record().decode().split("\n")
    found = []
    for key in ("id", "kind", "place", "text"):
        kept = "\n".join(line for line in lines if not line.startswith(key))
        found.append(of_record(f"record-without-{key}", kept.encode(), f"{key} is missing"))
    none = b'id = "a"\nkind = "b"\ninscription = []\n'
    found.append(of_record("record-no-inscription", none, "there is no inscription"))
    table = b'id = "a"\nkind = "b"\n[inscription]\nplace = "c"\ntext = "d"\n'
    found.append(of_record("record-one-bracket", table, "not a list of tables"))
    return found


def _links() -> list[Case]:
    def linked(name: str, to: str, said: str) -> Case:
        files = {"r.toml": record(inner='[inscription.source]\nfile = "s.txt"')}
        return Case(name, ("entry", "r.toml"), said, files=files, links={"s.txt": to})

    return [
        linked("link-out", "/etc/passwd", "a link leads out"),
        linked("link-loop", "s.txt", "cannot be followed"),
        linked("link-nowhere", "no.txt", "no such file"),
        linked("link-device", "/dev/zero", "a link leads out"),
        Case("record-loop", ("entry", "r.toml"), "r.toml", links={"r.toml": "r.toml"}),
        Case("read-loop", ("read", "a"), "there is no such file", links={"a": "b", "b": "a"}),
    ]


def _folders() -> list[Case]:
    good = record()
    twice = {"a.toml": good, "b/c.toml": good}
    return [
        Case("id-twice", ("check", "."), "duplicate-id", 1, twice),
        Case("folder-loop", ("check", "."), "1 record:", DONE, {"a.toml": good}, links={"d": "."}),
        Case("loop-entries", ("entry", "."), "X-1", DONE, {"a.toml": good}, links={"d": "."}),
        Case("link-to-nothing", ("check", "."), "no such file", 1, links={"a.toml": "no"}),
        Case(
            "bad-among-good",
            ("check", "."),
            "2 records: 1 error",
            1,
            {"a.toml": good, "b.toml": b"\xff"},
        ),
        Case("name-of-bytes", ("check", "."), "<U+DCFF>", 1, {"\udcff.toml": b"x"}),
        Case("name-of-escapes", ("check", "."), "<U+001B>", 1, {"\x1b[31m.toml": b"x"}),
        Case(
            "name-in-message", ("entry", "\x1b[31m.toml"), "U+001B", files={"\x1b[31m.toml": b"x"}
        ),
        Case("hidden", ("check", "."), "0 records", DONE, {".a.toml": b"x", ".git/b.toml": b"x"}),
        Case(
            "hidden-entries",
            ("entry", "."),
            "no record",
            files={".a.toml": b"x", ".git/b.toml": b"x"},
        ),
        Case("folder-named-toml", ("check", "."), "0 records", DONE, {"d.toml/x.txt": b"x"}),
        Case("no-folder", ("check", "nowhere"), "no such folder"),
        Case("empty-folder", ("entry", "."), "no record in the folder"),
        Case("folder-as-record", ("read", "d.toml"), "it is a folder", files={"d.toml/x": b""}),
    ]
