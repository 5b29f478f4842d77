"""The stages as functions of bytes, for the fuzzer: each tells whether the input was accepted.

Bytes become text by a table of words: kana, characters, brackets, notes, words of dates, marks,
controls. A first byte of 255 repeats a short text up to 10,000 signs. A broken law raises.
"""

from __future__ import annotations

import tempfile
import xml.etree.ElementTree as ET
from collections.abc import Callable
from functools import partial
from pathlib import Path

from inscribe import dates, forms, notation, reading
from inscribe.collation import collate
from inscribe.entry import entry_of
from inscribe.errors import InscribeError
from inscribe.record import CopiedText, Inscription, Reader, Record, dump, loads
from inscribe.report.entries.annotation import entries_as_annotations
from inscribe.report.entries.as_json import entries_as_json
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.entries.table import entries_as_csv
from inscribe.report.lido.entry import entries_as_lido
from inscribe.report.pages.entry import entries_as_html
from inscribe.report.style import Style
from inscribe.report.tei.entry import entries_as_tei
from inscribe.sources import importers, ranking as find
from inscribe.sources.adding import add_texts
from inscribe.sources.library import Library

Stage = Callable[[bytes], bool]
LONGEST = 10_000
WORDS = [
    *"いろはにほへとちりぬるをわかよたれそつねならむうゐのおくやまけふこえてあさきゆめみしゑひもせす",
    *"アイウエオカキクケコンッャー春夏秋冬花月風雪鳥山川松竹梅夜夢人心世思見来行立居不有無可令使自於應需",
    *"一二三四五六七八九十百千廿卅元年月日歳翁作造之彫刻寫古國東都江府住甲乙丙丁戊子丑寅卯辰巳",
    *["嘉永", "天保", "癸丑", "仲秋", "吉日", "行年", "七十三", "閏", "同年", "之春", "應需"],
    *"□■々ゝゞヽ〱〲〳〵〻／」「（）［］〔〕〈〉⟦⟧{}()<>\\|/.-？！、。・",
    *[
        "（花押）",
        "［　　］",
        "（印「山」）",
        "(カ)",
        "(ママ)",
        "(損)",
        "(衍)",
        "(抹)",
        "は(者)",
        "((kao))",
    ],
    *["か\u3099", "ﾊﾞ", "か゛", "⿰木黑", "⿰木□", "葛\U000e0100", "𛂥", "𠮷", "國", "辨", "\ufa10"],
    *"\n \t\u3000\u200b\u202e\u0000\u001b\u009b\ufeff\ufffd\ue000\ud800='\"%;*-+@&#1a",
    *["<script>", "&amp;", "]]>", "'''", '"""', "\\u0041", "DROP TABLE", "\r\n"],
]


def text_of(data: bytes) -> str:
    """Return the text that the bytes spell; a byte above the table takes two."""
    found, at = [], 1
    while at < len(data):
        number = data[at]
        if number >= 240 and at + 1 < len(data):
            at += 1
            number = 240 + data[at]
        found.append(WORDS[number % len(WORDS)])
        at += 1
    text = "".join(found)
    if data[:1] == b"\xff" and len(data) < 8 and text:
        return text * max(1, LONGEST // len(text))
    return text


def _halves(data: bytes) -> tuple[str, str]:
    middle = len(data) // 2
    return text_of(data[:middle]), text_of(data[middle:])


def lawful(holds: bool, law: str) -> None:
    if not holds:
        raise AssertionError(law)


def notation_stage() -> Stage:
    def stage(data: bytes) -> bool:
        accepted = False
        for convention in notation.CONVENTIONS:
            try:
                t = notation.parse(text_of(data), convention)
            except InscribeError:
                continue
            accepted = True
            for other in notation.CONVENTIONS:
                lawful(notation.parse(notation.render(t, other), other) == t, f"render {other}")
        return accepted

    return stage


def forms_stage() -> Stage:
    def stage(data: bytes) -> bool:
        normal = forms.normalise_text(text_of(data))
        lawful(len(normal.origin) == len(normal.text), "every character has an origin")
        again = forms.normalise_text(normal.text).text
        lawful(again == normal.text, "normalising twice changes nothing")
        return True

    return stage


def reading_stage() -> Stage:
    def stage(data: bytes) -> bool:
        try:
            reading.read_text(text_of(data), ("auto", "verse", "signature", "prose")[data[-1] % 4])
        except InscribeError:
            return False
        return True

    return filled(stage)


def dates_stage() -> Stage:
    def stage(data: bytes) -> bool:
        text = text_of(data)
        for found in dates.find(text):
            lawful(0 <= found.first <= found.last < len(text), "a date lies in its text")
        try:
            dates.resolve(text)
        except InscribeError:
            return False
        return True

    return stage


def collate_stage() -> Stage:
    def stage(data: bytes) -> bool:
        try:
            copy, source = map(notation.parse, _halves(data[: 120 if data[0] < 255 else 20]))
        except InscribeError:
            return False
        if len(copy.signs) > 1500 or len(source.signs) > 1500:
            return False  # long pairs are measured by tests/benchmarks/collate.py
        groups = collate(copy, source).groups
        lawful(sum(g.copy.end - g.copy.start for g in groups) >= len(copy.signs), "tiles the copy")
        return True

    return filled(stage)


def find_stage() -> Stage:
    library = Library(Path(tempfile.mkdtemp(), "l.sqlite"), create=True)
    lines = "".join(f'{{"id": "{n}", "text": "{line}"}}\n' for n, line in enumerate(_poems()))
    texts = list(importers.texts_of(lines, "x", "x", kind="jsonl"))
    add_texts(library, texts, len(texts))

    def stage(data: bytes) -> bool:
        try:
            find.find(library, notation.parse(text_of(data)[:3000]))
        except InscribeError:
            return False
        return True

    return stage


def _poems() -> list[str]:
    return [text_of(bytes((7 * n + k * (n % 11 + 3)) % 120 for k in range(31))) for n in range(300)]


def sources_stage() -> Stage:
    def stage(data: bytes) -> bool:
        kind = ("text", "jsonl", "csv", "toml", "tei")[data[0] % 5]
        text = text_of(data).replace("\ud800", "")  # files are UTF-8
        if kind == "jsonl":
            text = f'{{"id": "a", "text": "{text}"}}' if data[-1] % 2 else text
        elif kind == "tei":
            text = f'<TEI xmlns="http://www.tei-c.org/ns/1.0"><text><p>{text}</p></text></TEI>'
        elif kind == "csv":
            text = "id,text\n" + text
        elif kind == "toml":
            text = f'[[text]]\nid = "a"\ntext = "{text}"'
        try:
            return bool(list(importers.texts_of(text, "x", "x", kind=kind)))
        except InscribeError:
            return False

    return filled(stage)


def record_stage() -> Stage:
    def stage(data: bytes) -> bool:
        one, other = _halves(data)
        quote = ('"', "'", '"""', "'''")[data[0] % 4]
        written = (
            f"id = {quote}{one}{quote}\nkind = 'tsuba'\n{other if data[-1] % 3 == 0 else ''}\n"
            f"[[inscription]]\nplace = 'front'\ntext = {quote}{other}{quote}\n"
        )
        try:
            record = loads(written)
        except InscribeError:
            return False
        lawful(loads(dump(record)) == record, "a record written is the record read")
        return True

    return filled(stage)


FORMATS: tuple[Callable[[list], str], ...] = (  # type: ignore[type-arg]
    entries_as_json,
    entries_as_annotations,
    entries_as_tei,
    entries_as_lido,
    partial(entries_as_html, style=Style()),
    partial(entries_as_csv, style=Style(labels="ja")),
    lambda entries: entry_as_markdown(entries[0], Style(dates="era", italics=False)),
)


def export_stage() -> Stage:
    def stage(data: bytes) -> bool:
        one, other = _halves(data[:100])
        source = CopiedText(text=one or "花", title=other, author=one)
        readers = (Reader(other, text=one, romaji=other, remarks=one),)
        carved = Inscription(
            one, other, source=source, readers=readers, translation=one, remarks=other
        )
        record = Record(one or "a", other or "b", (carved,), one, remarks=other)
        try:
            loads(dump(record))
            entry = entry_of(record)
        except InscribeError:
            return False
        for form in FORMATS:
            made = form([entry])
            if made.startswith("<?xml"):
                ET.fromstring(made)
            lawful("<script" not in made or made[:1] in "{[|#i", "nothing of the data is a tag")
        return True

    return filled(stage)


def filled(stage: Stage) -> Stage:
    return lambda data: stage(data) if len(data) > 2 else False


STAGES: dict[str, Callable[[], Stage]] = {
    "notation": notation_stage,
    "forms": forms_stage,
    "dates": dates_stage,
    "record": record_stage,
    "sources": sources_stage,
    "reading": reading_stage,
    "collate": collate_stage,
    "find": find_stage,
    "export": export_stage,
}
