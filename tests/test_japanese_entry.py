"""An entry with Japanese labels: every sentence that the program says is Japanese."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path

import pytest
import sentences
from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.dates import DateReading, find, resolve
from inscribe.entry import Entry, entry_of
from inscribe.record import Record, load, loads
from inscribe.report.entries.blocks import GlossedWord, PictureBlock, Run
from inscribe.report.entries.layout import laid_out
from inscribe.report.explaining import in_japanese
from inscribe.report.style import Style

EXAMPLES = sorted((Path(__file__).parent.parent / "examples").glob("*.toml"))
JAPANESE = Style(labels="ja", days="words")
# Words by which one knows an English sentence; none is a word of Japanese in Latin letters.
ENGLISH = re.compile(
    r"\b(the|is|of|an|in|for|and|or|too|read|may|be|not|by|with|signs?|first|last|from|than|that|it"
    r"|this|has|have|was|were|are|usual|also|open|left|written|stands|column|years?|months?|days?"
    r"|January|May|September|source|copy|text|which|there|each|its|at|as|om|col)\b"
)


def test_english_is_known_when_it_is_seen() -> None:
    assert ENGLISH.search("嶺暁 may be read みね")
    assert not ENGLISH.search("「壬子」 Kaei gonen no toshi mizunoe-ne: はこのようにも読める")


def told(value: object) -> Iterator[str]:
    """Yield every text of blocks that is not marked as another language, glosses left out."""
    if isinstance(value, Run):
        yield "" if value.lang == "ja-Latn" else value.text
    elif isinstance(value, str):
        yield re.sub("<style>.*?</style>|<[^>]*>", "|", value, flags=re.DOTALL)
    elif isinstance(value, tuple):
        for each in value:
            yield from told(each)
    elif is_dataclass(value) and not isinstance(value, type):
        if isinstance(value, GlossedWord | PictureBlock):  # a dictionary's, a record's own words
            return
        for field in fields(value):
            if field.name != "lang":
                yield from told(getattr(value, field.name))


def own_words(record: Record) -> set[str]:
    """Return what the record says in its own words, which stay as they are."""
    held = {record.title, record.remarks}
    for each in record.inscriptions:
        held |= {each.translation, each.remarks}
        held |= {reader.by for reader in each.readers} | {r.remarks for r in each.readers}
        for source in each.sources:
            held |= {source.title, source.author, source.work, source.number, source.id}
    return {said.strip() for said in held if said.strip()}


def english_in(entry: Entry) -> list[str]:
    own = sorted(own_words(entry.record), key=len, reverse=True)
    found = []
    for said in told(laid_out(entry, JAPANESE)):
        for words in own:
            said = said.replace(words, "")
        if ENGLISH.search(said):
            found.append(said[:200])
    return found


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_no_sentence_of_an_example_stays_english(path: Path) -> None:
    assert english_in(entry_of(load(path), folder=path.parent)) == []


APPARATUS = """
id = "J-1"
kind = "kozuka"
[[inscription]]
place = "back plate"
text = '''
思ひつ〻ぬれはや人の見えつらむ
ゆめとしりせはさめさらましを
'''
box = [{ sign = 2, x = 1, y = 2, width = 4, height = 5 }]
[[inscription.source]]
siglum = "A"
kind = "print"
title = "甲本"
text = "思ひつつぬれはや人の見えつらんゆめとしりなはさめさらましを"
[[inscription.source]]
siglum = "B"
kind = "manuscript"
title = "乙本"
text = "おもひつつぬれはや人のみえつらむ夢としりせはさめさらまし"
[[inscription]]
place = "face"
text = "嘉永六年甲寅仲春吉日嶺暁作之"
[inscription.source]
id = "nothing-of-this-name"
"""


def test_no_sentence_of_an_apparatus_or_of_what_is_to_be_measured_stays_english() -> None:
    assert english_in(entry_of(loads(APPARATUS))) == []


@pytest.mark.parametrize("height", [60, 80, 95.4, 150])
@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("世の中に桜のなかりせは春の", "心はの"),
        ("世の中に桜なかりせは春の心は", "のとけから"),
        ("世中に絶て桜のなかりせは春の心", "のとけからまし"),
        ("世の中にたえて花のなかりせは", "春の心はのとけ"),
        ("世の中にたえて桜のなかりせはのとけからまし", ""),
        ("たえて桜のなかりせは", "春の心はのとけからまし"),
    ],
)
def test_what_is_said_of_space_has_its_japanese(first: str, second: str, height: float) -> None:
    columns = [
        f"[[inscription.column]]\ntop = 4\nbottom = {bottom}\nx = {x}\nwidth = 5\n"
        for x, bottom in ((8, height - 3), (1, height - 3 - 20 * (len(second) < 5)))[
            : 1 + bool(second)
        ]
    ]
    record = (
        f'id = "S"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\ntext = """\n{first}\n'
        f'{second}\n"""\n[inscription.plate]\nwidth = 14\nheight = {height}\n{"".join(columns)}'
        '[inscription.source]\ntext = "世の中にたえて桜のなかりせば\\n春の心はのどけからまし"\n'
    )
    entry = entry_of(loads(record))
    held = entry.inscriptions[0].collation
    assert held is not None
    assert held.space is not None
    assert english_in(entry) == []


@pytest.mark.parametrize(
    ("kind", "given", "said"),
    [row for row in sentences.kept() if row[0] in ("date", "text", "copy", "worn")],
)
def test_what_is_said_of_a_text_has_its_japanese(kind: str, given: str, said: list[str]) -> None:
    left = []
    for sentence in said:
        if re.search("expected|the note|held against|is lost here", sentence):
            continue  # messages, which no entry prints
        whole = re.sub(_GIVEN.get(kind, ""), "", sentence, count=1)
        for clause in re.split(r"; (?![^(]*\))", whole):
            if ENGLISH.search(japanese := in_japanese(clause)):
                left.append((clause, japanese))
    assert left == []


# What stands before a sentence in what was asked: an agreement, a passage, a group, a candidate.
_GIVEN = {
    "date": "^(agrees|conflict|unchecked): ",
    "text": r"^[a-z]+ .*?: |^\d+-\d+: |^[a-z]+: ",
    "copy": "^[a-z]+ .*?/.*?: ",
    "worn": "^.{1,4}?: ",
}


def test_the_index_of_a_site_is_japanese(tmp_path: Path) -> None:
    style = tmp_path / "ja.toml"
    style.write_text('labels = "ja"\n', "utf-8")
    asked = ["entry", str(EXAMPLES[0].parent), "--format", "html", "--style", str(style)]
    done = CliRunner().invoke(cli, [*asked, "-o", f"{tmp_path}/site/", "--quiet"])
    assert done.exit_code in (0, 1), done.output
    page = (tmp_path / "site/index.html").read_text("utf-8").partition("<body")[2]
    for path in EXAMPLES:
        for words in own_words(load(path)):
            page = page.replace(words, "")
    lines = re.sub("<[^>]*>", "\n", re.sub('<i lang="ja-Latn">.*?</i>', "", page)).splitlines()
    assert [line for line in lines if ENGLISH.search(line)] == []
    assert "〔名〕" in page


def test_an_era_is_named_in_japanese() -> None:
    said = in_japanese("Bunsei 1 began in 1818, so Bunsei 7 is 1824; 1824 is not 乙酉 but 甲申")
    assert said == "文政元年は1818年なので、文政7年は1824年に当たる；1824年は乙酉でなく甲申である"


DATES = [
    "嘉永六年癸丑",
    "嘉永六年甲寅",
    "嘉永九年",
    "壬子",
    "寅年",
    "嘉永□年",
    "□永六年",
    "安政二年閏三月",
    "安政三年閏月",
    "安政二年十三月",
    "安政二年二月三十一日",
    "嘉永六年秋二月",
    "安政二年重陽三月",
    "安政二年乙卯如月",
    "安政二年二月晦日",
    "白鳳二年",
    "建武五年",
    "甲丑",
    "同年三月",
    "嘉水六年",
    "安政〇年",
    "安政二年二月五日甲子",
    "安政二年十二月廿五日",
    "明治元年正月",
    "慶応四年十月",
    "安永元年一月",
    "明和九年十二月",
    "明治六年閏六月",
    "皇紀二千六百年",
    "天保二年丙辰",
    "延元六年",
    "大正十六年",
]
AGES = ["行年六十有一翁", "行年六十二歳", "七十余歳", "満六十歳"]


def sentences_of(date: DateReading) -> list[str]:
    return [date.why, *date.suggestions, *(e.text for e in date.explanations), *date.cautions]


@pytest.mark.parametrize("date", DATES)
def test_what_is_said_of_a_date_and_an_age_has_its_japanese(date: str) -> None:
    found = [resolve(date)]
    for age in AGES:
        found += [resolve(date + age), *find(f"{date}／露岳作／{age}"), *find(age)]
    left = {
        (clause, japanese)
        for each in found
        for sentence in sentences_of(each)
        for clause in re.split(r"; (?![^(]*\))", sentence)
        if re.search("[a-z]{2}", japanese := in_japanese(clause))
    }
    assert left == set()


def test_a_signing_with_its_age_apart_is_told_in_japanese() -> None:
    text = "天保十二年歳次辛丑秋八月廿有五日\\n武州住露岳\\n行年七十三歳謹彫之"
    made = f'id = "A"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\ntext = "{text}"\n'
    assert english_in(entry_of(loads(made))) == []
