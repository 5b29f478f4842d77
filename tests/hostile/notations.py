"""Transcriptions that break the conventions, or that nobody would carve."""

from __future__ import annotations

from hostile.cases import DONE, PARTLY, Case, of_record, record

_BAD = {
    "opened": ("花［の", "opened and never closed"),
    "closed": ("花］の", "never opened"),
    "crossed": ("［花〔の］〕", "does not close"),
    "twice": ("［花［の］］", "opened again"),
    "empty-brackets": ("花〔〕", "hold no sign"),
    "round-opened": ("花（の", "opened and never closed"),
    "unknown-note": ("花(何々何々)", "花"),
    "note-first": ("(カ)花", "follows no sign"),
    "lost-note": ("(ママ)", "follows no sign"),
    "western": ("⟦花⟧", "other convention"),
    "braces": ("{花}", "other convention"),
    "description-cut": ("⿰木", "⿰"),
    "description-endless": ("⿰" * 500 + "木", "⿰"),
    "zero-width": ("花\u200bの［", "invisible"),
    "joiner": ("花\u200d［", "invisible"),
    "bidi-override": ("花\u202eの［", "U+202E"),
    "bidi-isolate": ("花\u2066の［", "U+2066"),
    "private-use": ("\ue000［", "private-use"),
    "replacement": ("花\ufffd［", "damaged file"),
    "noncharacter": ("花\uffff［", "U+FFFF"),
    "language-tag": ("花\U000e0041［", "invisible"),
    "escape": ("花\x1b[31m", "U+001B"),
    "bell": ("花\x07（", "U+0007"),
    "c1-control": ("花\x9b1m［", "U+009B"),
    "form-feed": ("花\x0c［", "U+000C"),
    "backslash-alone": ("花\\", "marks no sign"),
    "seal-controls": ("（印「\x1b」）", "U+001B"),
    "mark-first": ("\u3099［花］", "stands alone"),
    "side-named": ("(表)花(裏)の", "names a side"),
    "prose-surrogate": ("花。\udc80", "lone surrogate"),
    "prose-private-use": ("(抹))なつ竹\ue000〳辰吉日。", "private-use"),
    "prose-control": ("\x1b;需。や{け心冬ヽ\x00", "U+001B"),
    "combining-heap": ("の花" + "\u0301" * 8000, "a sign carries 8,000 marks; line 1, column 2"),
    "voicing-heap": ("か" + "゛" * 9, "a sign carries 9 marks"),
    "prose-heap": (
        "花を見る。\n山か" + "\u0301" * 8000 + "と。",
        "marks; line 2, column 2",
    ),
    "selector-heap": ("春〳〵" + "\ufe09" * 100, "marks"),
    "combining-heap-noted": ("□(花" + "\u0301" * 1000 + "カ)", "column"),
    "seal-heap": ("（印「花" + "\u0301" * 1000 + "」）", "legend"),
    "description-heap": ("⿰木" + "\u0301" * 1000 + "黑", "description"),
    "deep-brackets": ("［" * 5000, "opened again"),
}
_HARMLESS = {
    "spaces-only-marks": ("□□□", "□"),
    "gap-only": ("［　　］", "register"),
    "kao-only": ("（花押）", "register"),
    "repeat-first": ("々", "々"),
    "repeat-run": ("々" * 500, "々"),
    "html": ("<script>alert`1`</script>", "script"),
    "formula": ("=cmd|' /C calc'!A0", "cmd"),
    "sql": ("'; DROP TABLE texts; --", "DROP"),
    "emoji": ("👨花", "花"),
    "arabic": ("مرحبا", "م"),
    "as-many-marks-as-may-be": ("花" + "\u0301" * 8, "花"),
    "digits": ("1" * 5000, "1"),
    "format-string": ("%s%n%x", "%s"),
    "star-glob": ("*?~$HOME`id`", "*"),
}


def cases() -> list[Case]:
    """Return them as arguments, as records, and as lines among good ones."""
    found = [
        Case(f"text-{name}", ("read", "--text", text), said) for name, (text, said) in _BAD.items()
    ]
    found += [
        Case(f"text-{name}", ("read", "--text", text), said, DONE)
        for name, (text, said) in _HARMLESS.items()
    ]
    for name in ("opened", "closed", "note-first", "western", "description-cut"):
        text, said = _BAD[name]
        content = record().replace("花の色は".encode(), text.encode())
        found.append(of_record(f"record-{name}", content, said))
    return [*found, *_sizes(), *_pairs()]


def _sizes() -> list[Case]:
    long = {"a.txt": ("花" * 3_400_000).encode()}
    marked = {"a.txt": ("［花］" * 80_000).encode()}
    lines = ("read", "--lines", "--format", "jsonl", "a.txt")
    return [
        Case("ten-megabytes", ("read", "a.txt"), "limit of 20,000 signs", files=long),
        Case("ten-megabyte-line", lines, "limit of 20,000 signs", PARTLY, long),
        Case("long-marked", ("read", "a.txt"), "limit", files=marked),
        Case("collate-long", ("collate", "a.txt", "a.txt"), "200,000 characters", files=long),
        Case(
            "find-long", ("collate", "a.txt", "a.txt"), "limit", files={"a.txt": b"a" * (2**26 + 1)}
        ),
        Case("endless", ("read", "/dev/zero"), "limit of 64 MiB"),
        Case("endless-line", ("read", "--lines", "/dev/zero"), "limit of 64 MiB"),
        Case("endless-record", ("collate", "/dev/zero", "/dev/zero"), "limit of 64 MiB"),
        Case("empty-file", ("read", "a.txt"), "no text to read", files={"a.txt": b""}),
        Case("empty-record", ("entry", "a.toml"), "is missing", files={"a.toml": b""}),
        Case("empty-pipe", ("read", "-"), "no text to read"),
        Case("blank-text", ("read", "--text", " \t\u3000"), "no text to read"),
    ]


def _pairs() -> list[Case]:
    bad = {
        "not-json": (b"{", "not JSON"),
        "a-list": (b"[1]", "not a JSON object"),
        "no-source": (b'{"copy": "a"}', "'source' is missing"),
        "a-number": (b'{"copy": 1, "source": "a"}', "'copy' is missing or not a text"),
        "not-a-number": (b'{"copy": NaN, "source": "a"}', "'copy' is missing or not a text"),
        "surrogate": (b'{"copy": "\\ud800", "source": "a"}', "half of a character"),
        "many-digits": (b'{"copy": ' + b"1" * 5000 + b"}", "not JSON"),
        "nested": (b"[" * 100_000, "not JSON"),
        "escape": (b'{"copy": "\\u001b[2J", "source": "a"}', "U+001B"),
    }
    arguments = ("collate", "--pairs", "-", "--format", "jsonl")
    return [
        Case(f"pair-{name}", arguments, said, 1, stdin=line) for name, (line, said) in bad.items()
    ]
