"""Bytes that are not UTF-8, or only nearly."""

from __future__ import annotations

import gzip

from hostile.cases import DONE, FLOWER, PARTLY, Case, record

_NOT_UTF8 = {
    "shift-jis": (FLOWER.encode("shift_jis"), "it may be Shift_JIS"),
    "euc-jp": (FLOWER.encode("euc_jp"), "not UTF-8"),
    "utf-16": (FLOWER.encode("utf-16"), "it looks like UTF-16"),
    "utf-16-big": (b"\xfe\xff" + FLOWER.encode("utf-16-be"), "it looks like UTF-16"),
    "invalid-bytes": (b"\xe8\x8a\xb1\xff\xfe", "not UTF-8"),
    "cut-short": (FLOWER.encode()[:-1], "not UTF-8"),
    "latin-1": ("café".encode("latin-1"), "not UTF-8"),
    "surrogate-bytes": (b"\xed\xa0\x80", "not UTF-8"),
    "overlong": (b"\xc0\xaf", "not UTF-8"),
    "gzip": (gzip.compress(FLOWER.encode(), mtime=0), "a compressed file, not text"),
    "png": (b"\x89PNG\r\n\x1a\n\x00\x00", "a picture, not text"),
}
_CONTROLS = {
    "iso-2022-jp": (FLOWER.encode("iso2022_jp"), "control character"),
    "utf-16-without-mark": ("ab".encode("utf-16-le"), "control character"),
    "nul": (b"\x00", "control character"),
}
_WAYS = {
    "file": ("read", "a.txt"),
    "collate": ("collate", "a.txt", "b.txt"),
    "source": ("source", "add", "a.txt"),
    "record": ("entry", "a.toml"),
}


def cases() -> list[Case]:
    """Return each bad encoding in each way a text comes in."""
    found = []
    for way, arguments in _WAYS.items():
        bad = _NOT_UTF8 if way in ("record", "source") else _NOT_UTF8 | _CONTROLS
        for name, (data, marked) in bad.items():
            # within a record, the bytes a file begins with are not where they tell what it is
            in_record = way == "record" and name.startswith(("utf-16", "gzip", "png"))
            said = "not UTF-8" if in_record else marked
            files = {"a.txt": data, "a.toml": record().replace(b"X-1", data), "b.txt": b"a"}
            found.append(Case(f"{name}-{way}", arguments, said, files=files))
    return [*found, *_standard_input(), *_harmless()]


def _standard_input() -> list[Case]:
    bad = FLOWER.encode("shift_jis")
    lines = ("read", "--lines", "--format", "jsonl")
    with_a_bad_one = bad + b"\n\xe8\x8a\xb1\n"
    return [
        Case("shift-jis-piped", ("read", "-"), "standard input, line 1, column 1", stdin=bad),
        Case(
            "shift-jis-line", lines, '"line": 1, "error"', PARTLY, stdin=bad + b"\n\xe8\x8a\xb1\n"
        ),
        Case("rest-of-lines", lines, "花", PARTLY, stdin=with_a_bad_one),
        Case("pairs-shift-jis", ("collate", "--pairs", "-"), "not UTF-8", stdin=bad),
        Case("date-shift-jis", ("date", "-"), "not UTF-8", stdin="嘉永".encode("shift_jis")),
        Case("argument-bytes", ("read", "--text", "\udcff\udce8"), "lone surrogate"),
        Case(
            "second-line",
            ("read", "a.txt"),
            "line 2, column 2",
            files={"a.txt": "花\n花".encode() + b"\xff"},
        ),
    ]


def _harmless() -> list[Case]:
    decomposed = "か\u3099".encode()
    return [
        Case(
            "byte-order-mark",
            ("read", "a.txt"),
            "hana",
            DONE,
            {"a.txt": b"\xef\xbb\xbf" + "花".encode()},
        ),
        Case(
            "record-mark", ("entry", "r.toml"), "X-1", DONE, {"r.toml": b"\xef\xbb\xbf" + record()}
        ),
        Case("crlf", ("read", "a.txt"), "as carved", DONE, {"a.txt": "花の\r\n色は\r\n".encode()}),
        Case(
            "old-mac-lines", ("read", "a.txt"), "as carved", DONE, {"a.txt": "花の\r色は".encode()}
        ),
        Case("decomposed", ("read", "a.txt"), "ga", DONE, {"a.txt": decomposed}),
        Case("half-width", ("read", "--text", "ﾊﾅﾉｲﾛ"), "ハナノイロ", DONE),
        Case("compatibility", ("read", "--text", "豈\ufa10"), "塚", DONE),
        Case("rare-plane", ("read", "--text", "𠮷野"), "吉野", DONE),
        Case("variation-selector", ("read", "--text", "葛\U000e0100"), "葛", DONE),
    ]
