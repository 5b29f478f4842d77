"""The tables of classical verse hold what their headers promise.

The rule from historical to current kana spelling is written here a second time, on purpose: it
checks the tables without the program's own conversion.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from inscribe import tables

STEMS = ("verse_verbs", "verse_adjectives")
WHOLE = ("verse_nouns", "verse_places", "verse_phrases")
TABLES = (*WHOLE, "verse_particles", *STEMS)
CLASSES = {f"四段{row}" for row in "カガサタハバマラ"} | {"ラ変", "カ変", "サ変", "ナ変"}
CLASSES |= {f"上一{row}" for row in "カナハマヤワ"}
CLASSES |= {f"上二{row}" for row in "カガタダハバマヤラ"}
CLASSES |= {f"下二{row}" for row in "アカガサザタダナハバマヤラワ"}
COVERING = {"カ変", "サ変", "下二ア", "下二ハ", "下二ナ"}
COVERED = "来為得経歴寝宿消"  # signs that hold the inflected kana
PARTS_OF_SPEECH = re.compile(
    "名詞,|代名詞|副詞|連体詞|接続詞|感動詞|接頭辞|接尾辞|形状詞|連語,(枕詞|成句)|助詞,|助動詞"
)
KANA = re.compile("[\u3041-\u3096]+")
VOICED = "がぎぐげござじずぜぞだぢづでどばびぶべぼ"
UNVOICED = str.maketrans(VOICED, "かきくけこさしすせそたちつてとはひふへほ")
WITHIN = dict(zip("はひふへほ", "わいうえお", strict=True))
OLD = {"ゐ": "い", "ゑ": "え", "を": "お"}
AU = dict(zip("あかがさたなはばまやらわ", "おこごそとのほぼもよろお", strict=True))
SEEN_APART = {
    # Words whose current spelling no rule gives: sound changes outside the kana reform.
    ("あふひ", "あおい"), ("あふひぐさ", "あおいぐさ"), ("ばせを", "ばしょう"),
    ("しばふ", "しばふ"), ("かけひ", "かけひ"), ("きちかう", "ききょう"), ("まらひと", "まろうど"),
    ("かりうど", "かりゅうど"),
    ("わかうど", "わこうど"), ("まらうと", "まろうど"), ("しをに", "しおん"), ("むま", "うま"),
    ("むめ", "うめ"), ("むべ", "うべ"), ("むもれぎ", "うもれぎ"), ("うなはら", "うなばら"),
    ("あをうなはら", "あおうなばら"), ("とほたふみ", "とおとうみ"), ("たには", "たんば"),
    ("かうぶり", "こうぶり"), ("らつくわ", "らっか"), ("やつこ", "やっこ"), ("もみち", "もみじ"),
    ("りんだう", "りんどう"), ("いう", "ゆう"), ("くわんおん", "かんのん"),
    ("てんわうじ", "てんのうじ"),
}  # fmt: skip


def _rows(name: str) -> list[tuple[str, ...]]:
    return [tuple(row.values()) for row in tables.rows(name)]


@pytest.fixture(scope="module", params=TABLES)
def table(request: pytest.FixtureRequest) -> tuple[str, list[tuple[str, ...]]]:
    return request.param, _rows(request.param)


def current_spellings(kana: str) -> set[str]:
    """Return every current spelling the rules allow, wherever parts of the word may begin."""
    found = {""}
    position = 0
    while position < len(kana):
        found = {done + more for done in found for more in _next(kana, position)}
        position += 1
    return {spelling.replace("\u3000", "") for spelling in found}


def _next(kana: str, position: int) -> Iterator[str]:
    sign, before = kana[position], kana[position - 1] if position else ""
    yield {"ゐ": "い", "ゑ": "え"}.get(sign, sign)
    if sign == "を":
        yield "お"
    if sign in "ぢづ":
        yield "じ" if sign == "ぢ" else "ず"
    if sign in WITHIN and (position or len(kana) == 1):
        yield WITHIN[sign]
    if sign == "む":
        yield "ん"
    if before and sign in "うふ":
        yield "う"


def _contracted(historical: str) -> str:
    """Apply the joining of two vowels (けふ きょう) everywhere; other signs stay."""
    text = historical.replace("くわ", "か").replace("ぐわ", "が")
    for first, joined in AU.items():
        text = re.sub(f"{first}[うふ]", f"{joined}う", text)
    for first, joined in zip("えけげせてねへめれ", "いきぎしちにひみり", strict=True):
        text = re.sub(f"{first}[うふ]", f"{joined}ょう" if first != "え" else "よう", text)
    for first in "きしちにひみりじ":
        text = re.sub(f"{first}[うふ]", f"{first}ゅう", text)
    return text


def _agrees(historical: str, modern: str) -> bool:
    if (historical, modern) in SEEN_APART or modern in current_spellings(historical):
        return True
    large = str.maketrans("ゃゅょっ", "やゆよつ")
    joined = {
        _contracted(historical[:cut]) + historical[cut:] for cut in range(len(historical) + 1)
    }
    joined |= {historical[:cut] + _contracted(historical[cut:]) for cut in range(len(historical))}
    shapes = {spelling for text in joined for spelling in current_spellings(text)}
    return modern.translate(large) in {shape.translate(large) for shape in shapes}


def test_the_rule_knows_right_from_wrong() -> None:
    assert _agrees("けふ", "きょう")
    assert _agrees("あふさか", "おうさか")
    assert _agrees("やまほととぎす", "やまほととぎす")
    assert not _agrees("こゑ", "こゑ")
    assert not _agrees("うらうら", "うろうろ")
    assert not _agrees("ゆめうつつ", "ゆみうつつ")


def test_no_row_is_there_twice(table: tuple[str, list[tuple[str, ...]]]) -> None:
    name, rows = table
    told = rows if name == "verse_particles" else [row[:-1] for row in rows]
    assert len(set(told)) == len(told), [row for row in told if told.count(row) > 1][:5]


def test_kana_columns_are_hiragana(table: tuple[str, list[tuple[str, ...]]]) -> None:
    name, rows = table
    last = 3 if name in WHOLE else 2
    wrong = []
    for row in rows:
        bare = name in STEMS and not row[1] and row[0][-1] in COVERED
        wrong += [row for kana in row[1:last] if not bare and not KANA.fullmatch(kana)]
    assert not wrong


def test_every_row_is_explained(table: tuple[str, list[tuple[str, ...]]]) -> None:
    _, rows = table
    assert not [row for row in rows if not row[-1].strip() or any(c != c.strip() for c in row)]


@pytest.mark.parametrize("name", WHOLE)
def test_current_spelling_follows_from_the_historical_one(name: str) -> None:
    wrong = [row[:3] for row in _rows(name) if not _agrees(row[1], row[2])]
    assert not wrong


@pytest.mark.parametrize("name", [*WHOLE, "verse_particles"])
def test_parts_of_speech_are_unidic_s(name: str) -> None:
    assert not [row for row in tables.rows(name) if not PARTS_OF_SPEECH.match(row["pos"])]


@pytest.mark.parametrize("name", STEMS)
def test_classes_are_those_of_classical_grammar(name: str) -> None:
    allowed = CLASSES if name == "verse_verbs" else {"ク", "シク", "ク接尾"}
    assert not [row for row in _rows(name) if row[2] not in allowed]


@pytest.mark.parametrize("name", TABLES)
def test_kana_kept_in_the_spelling_stand_in_the_reading(name: str) -> None:
    wrong = []
    for row in _rows(name):
        if name in STEMS and row[2] in COVERING and row[0][-1] in COVERED:
            row = (row[0][:-1], *row[1:])
        kept = "".join(re.escape(c) if KANA.fullmatch(c) else ".+?" for c in row[0])
        if row[0] and row[1] and not re.fullmatch(re.sub(r"(\.\+\?)+", ".+?", kept), row[1]):
            wrong.append(row[:2])
    kana_for_kana = {"verse_particles": 60}.get(name, 0)  # らん for らむ, なん for なむ
    assert len(wrong) <= kana_for_kana, wrong[:5]


def test_the_development_poems_scan() -> None:
    poems = _data(Path(__file__).parent / "data" / "verse_dev.tsv")
    assert len(poems) >= 300
    for number, _, text, kana, romaji, hypermetric in poems:
        assert KANA.fullmatch(kana), number
        phrases = text.count("／") + 1
        assert phrases == romaji.count(" / ") + 1, number
        more = len(kana) - {5: 31, 3: 17}[phrases]
        assert (1 <= more <= 3) if hypermetric else more == 0, number
    assert len({kana for _, _, _, kana, _, _ in poems}) == len(poems)


def test_the_manuscript_spellings_are_of_the_same_poems() -> None:
    data = Path(__file__).parent / "data"
    poems = {row[0]: row for row in _data(data / "verse_dev.tsv")}
    copies = _data(data / "verse_kana.tsv")
    assert len(copies) >= 100
    for number, text, kana in copies:
        assert kana == poems[number][3].translate(UNVOICED), number
        assert not set(text) & set(VOICED), number
        assert len(text) <= len(kana)


def _data(path: Path) -> list[list[str]]:
    lines = [line for line in path.read_text(encoding="utf-8").split("\n") if line]
    return [line.split("\t") for line in lines if not line.startswith("#")][1:]
