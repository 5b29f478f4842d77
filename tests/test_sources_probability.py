"""How probable a text is to be the source: little to go by makes it little."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from test_sources import cli, text

from inscribe.notation import parse
from inscribe.sources import adding, importers
from inscribe.sources.library import Library
from inscribe.sources.ranking import NO_SOURCE, find
from inscribe.sources.texts import SourceText


@pytest.mark.parametrize("query", ["春", "月", "□春［　　］", "haru"])
def test_one_legible_sign_is_too_little(tmp_path: Path, query: str) -> None:
    result = cli("find", "--text", query, "--library", str(examples(tmp_path)))
    assert (result.returncode == 2) == (query != "haru")
    assert "1. " not in result.stdout


def examples(folder: Path) -> Path:
    """Return a library of the sources of the examples and a list of signatures."""
    made = folder / "examples.sqlite"
    signatures = text("signatures", *Path("examples/signatures.txt").read_text("utf-8").split("\n"))
    poems = [each for path in sorted(Path("examples/sources").iterdir()) for each in of(path)]
    with Library(made, create=True) as held:
        adding.add_texts(held, [signatures, *poems], len(poems) + 1)
    return made


def of(path: Path) -> list[SourceText]:
    return list(importers.texts_in(path))


@pytest.mark.parametrize(
    "query",
    ["文政七年乙酉三月日嶺曉作之", "嘉永五年壬子仲秋吉日帆影", "夢の", "なつき", "世の", "春の"],
)
def test_few_signs_or_a_small_share_of_sounds_find_no_source(tmp_path: Path, query: str) -> None:
    with Library(examples(tmp_path)) as held:
        assert all(hit.score < NO_SOURCE for hit in find(held, parse(query)))


def test_no_source_found_is_an_answer_in_json_too(tmp_path: Path) -> None:
    library = str(examples(tmp_path))
    result = cli("find", "--text", "いろはにほへと", "--library", library, "--format", "json")
    assert json.loads(result.stdout)["found"] is False


@pytest.mark.parametrize("query", ["春の", "心の", "春の夜の", "世の中に", "人の心を", "ぬる"])
def test_probabilities_of_texts_that_differ_add_up_to_one_at_most(
    tmp_path: Path, query: str
) -> None:
    with Library(examples(tmp_path)) as held:
        assert sum(hit.score for hit in find(held, parse(query), 100)) <= 1.000001


def test_texts_with_the_same_words_share_the_query_alike(tmp_path: Path) -> None:
    words = "花の色は移りにけりないたづらに我が身世にふるながめせしまに"
    with Library(tmp_path / "held", create=True) as held:
        adding.add_texts(held, [text("one", words), text("other", words)], 2)
        scores = [hit.score for hit in find(held, parse(words))]
    assert len(scores) == 2
    assert scores[0] == scores[1] > NO_SOURCE


def test_many_texts_that_fit_equally_leave_each_its_part(tmp_path: Path) -> None:
    line = "夢のうちにも"
    ends = ("花ぞちりける", "雁なきわたる", "ほととぎすかな", "霜ぞおきける")
    with Library(tmp_path / "held", create=True) as held:
        adding.add_texts(held, [text(end, f"{line}／{end}") for end in ends], len(ends))
        scores = [hit.score for hit in find(held, parse(line), 10)]
    assert 0 < sum(scores) <= 1.000001
    assert max(scores) < NO_SOURCE
