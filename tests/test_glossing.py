"""A short meaning for each word: classical tables first, then EDICT; grammar in plain words."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, settings, strategies as st

from inscribe import tables
from inscribe.cli import cli
from inscribe.glossing import glossed_words, with_glosses
from inscribe.glossing.dictionary import dictionary_gloss
from inscribe.glossing.words import shortened
from inscribe.reading import read_text
from inscribe.reading.words import grammar_of

NARIHIRA = "世の中にたえて桜のなかりせば春の心はのどけからまし"
KAMO = "行く河の流れは絶えずして、しかももとの水にあらず。"


def glosses(text: str) -> dict[str, str]:
    return {word.signs: word.gloss for word in glossed_words(with_glosses(read_text(text)))}


def test_words_of_a_poem_have_a_meaning() -> None:
    found = glosses(NARIHIRA)
    assert found["桜"] == "cherry"  # of the classical tables, not "cherry tree" of EDICT
    assert found["世の中"].startswith("society")  # only EDICT has it
    assert found["まし"] == "would (if it were)"
    assert not [word for word, gloss in found.items() if gloss[:1] == "["]


def test_words_of_prose_have_a_meaning() -> None:
    found = glosses(KAMO)
    assert found["行く"] == "go"
    assert found["ず"] == "not"
    assert found["流れ"].startswith("flow")
    assert found["もと"].startswith("base")  # 元, and no もと for yeast
    assert len([word for word, gloss in found.items() if gloss[:1] != "["]) >= 14


def test_a_name_has_no_meaning_but_a_sort() -> None:
    assert glosses("祇園精舎の鐘の声")["祇園"] == "[name of a place]"


def test_a_chinese_line_is_glossed_sign_by_sign() -> None:
    (gloss,) = glosses("復照青苔上").values()
    assert gloss.count("-") == 4
    assert "moss" in gloss


@pytest.mark.parametrize(
    ("written", "kana", "part", "gloss"),
    [
        ("河", "かわ", "名詞-普通名詞-一般", "river"),
        ("絶える", "たえ", "動詞-一般", "die out"),
        ("其処", "そこ", "代名詞", "there"),
        ("河", "ほー", "動詞-一般", ""),  # EDICT has no verb of this writing
        ("花", "はなび", "名詞-普通名詞-一般", ""),  # nor this reading of it
        ("", "", "名詞", ""),
    ],
)
def test_the_dictionary_wants_reading_and_sort_to_agree(
    written: str, kana: str, part: str, gloss: str
) -> None:
    assert dictionary_gloss(written, kana, part).partition(",")[0] == gloss


@pytest.mark.parametrize(
    ("part", "lemma", "said"),
    [
        ("助動詞", "ず", "negative"),
        ("助動詞", "た", "past"),
        ("助動詞", "なり-伝聞", "hearsay"),
        ("助詞-係助詞", "は", "particle of emphasis"),
        ("名詞-固有名詞-人名-姓", "鈴木", "name of a person"),
        ("art_name", "", "art name"),
        ("", "", ""),
    ],
)
def test_grammar_is_told_in_plain_words(part: str, lemma: str, said: str) -> None:
    assert grammar_of(part, lemma) == said


def test_no_word_of_a_reading_keeps_a_tag_in_japanese() -> None:
    for text in (NARIHIRA, KAMO, "雪なから山本かすむ夕かな", "武州住露岳作之", "和而不同"):
        for token in read_text(text).proposals[0].tokens:
            said = grammar_of(token.part_of_speech, token.lemma)
            assert not re.search("[぀-ヿ一-鿿-]", said), token


def test_read_shows_an_interlinear_line() -> None:
    arguments = ["read", "--text", NARIHIRA, "--gloss"]
    shown = CliRunner().invoke(cli, arguments, env={"COLUMNS": "60"}).stdout
    block = shown.partition("\n\n")[2].split("\n")
    assert [line.split()[0] for line in block[:4]] == ["世の中", "よのなか", "yononaka", "society;"]
    assert "cherry" in shown
    assert "cherry" not in CliRunner().invoke(cli, arguments[:-1]).stdout


def test_json_has_glosses_and_grammar() -> None:
    arguments = ["read", "--text", KAMO, "--gloss", "--format", "json"]
    first = json.loads(CliRunner().invoke(cli, arguments).stdout)["tokens"][0]
    assert (first["gloss"], first["grammar"]) == ("go", "verb")
    lines = ["read", "--lines", "--gloss", "--format", "jsonl"]
    answer = json.loads(CliRunner().invoke(cli, lines, input=f"{KAMO}\n").stdout)
    assert answer["tokens"][0]["gloss"] == "go"


def test_an_entry_gives_the_words_of_its_text() -> None:
    shown = CliRunner().invoke(cli, ["entry", "examples/DEMO-003.toml"]).stdout
    assert "桜 *sakura* ‘cherry’" in shown
    assert "世の中 *yononaka* ‘society; the world" in shown


def test_the_table_of_glosses_is_searched_and_not_loaded(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(name: str) -> list[tables.Row]:
        raise AssertionError(f"{name} is loaded")

    tables.forget()
    monkeypatch.setattr(tables, "rows", refuse)
    assert dictionary_gloss("硯", "すずり", "名詞-普通名詞-一般") == "inkstone"


@given(st.text("abc ;", max_size=60))
def test_a_short_gloss_begins_the_whole_one(gloss: str) -> None:
    assert gloss.startswith(shortened(gloss))


@settings(max_examples=30, deadline=None)
@given(st.text("春の夜の月は見えずけり花や心静か無し絶えて復照青苔", min_size=1, max_size=12))
def test_glosses_change_nothing_but_glosses(text: str) -> None:
    before = read_text(text)
    after = with_glosses(before)
    assert after.proposals[0].romaji == before.proposals[0].romaji
    pairs = zip(after.proposals[0].tokens, before.proposals[0].tokens, strict=True)
    assert all(replace(new, gloss=old.gloss) == old for new, old in pairs)
    assert replace(after, proposals=before.proposals) == before


@pytest.mark.parametrize(
    ("form", "said"),
    [
        ("csv", "桜 sakura ‘cherry’ | の no ‘of’"),
        ("lido", "桜 sakura ‘cherry’ | の no ‘of’"),
        ("tei", '<gloss xml:lang="en">cherry</gloss>'),
    ],
)
def test_glosses_are_handed_on_to_other_programs(form: str, said: str) -> None:
    result = CliRunner().invoke(cli, ["entry", "examples/DEMO-003.toml", "--format", form])
    assert said in result.output


def test_signs_that_cannot_be_read_have_no_glosses_to_hand_on(tmp_path: Path) -> None:
    record = tmp_path / "A-1.toml"
    record.write_text(
        'id = "A-1"\nkind = "kozuka"\n\n[[inscription]]\nplace = "back plate"\ntext = "□□"\n',
        "utf-8",
    )
    result = CliRunner().invoke(cli, ["entry", str(record), "--format", "tei"])
    assert result.exit_code == 0, result.output
    assert "<gloss" not in result.output


@pytest.mark.parametrize(
    ("text", "meanings"),
    [
        ("竹直松堅", ["bamboo", "straight", "pine", "firm"]),
        ("山高水長", ["mountain", "high", "water", "long"]),
    ],
)
def test_verbs_and_adjectives_of_chinese_have_a_meaning(text: str, meanings: list[str]) -> None:
    words = glossed_words(with_glosses(read_text(text)))
    assert all(one in word.gloss for one, word in zip(meanings, words, strict=True))
