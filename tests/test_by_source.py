"""A copy is read by its source's kana, also where the wording of the two differs."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe import notation, reading
from inscribe.cli import cli
from inscribe.reading.verse import read_by_source
from inscribe.restoring import restore
from inscribe.sources import Library, SourceText, add_texts

# Kokinshu 191, and what it may look like on a plate.
KANA = "しらくもにはねうちかはしとぶかりのかずさへみゆるあきのよのつき"
PRINTED = "白雲に羽うちかはし飛ぶ雁の数さへ見ゆる秋の夜の月"
COPIED = "白雲に羽打交し飛雁の数さへ見ゆる秋夜の月"
BY_SOURCE = "read as the source spells it in kana"


def read(copy: str, source: str, **how: object) -> reading.Proposal:
    return reading.read(notation.parse(copy), source=source, **how).proposals[0]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("copy", "said", "own"),
    [
        (COPIED, "shirakumo ni hane uchikawashi tobu kari no", ""),
        (
            "白雲に羽打交し飛雁の数さへ見ゆる秋夜の空",
            "tobu kari no kazu sae miyuru aki no yo no sora",
            "空",
        ),
        ("白雲に羽打交し啼雁の影さへ見ゆる秋夜の月", "naku kari no kage sae miyuru", "啼, 影"),
        ("白雲に羽打交し飛雁の秋夜の月", "tobu kari no aki no yo no tsuki", ""),  # less
        ("飛雁の数さへ見ゆる", "tobu kari no kazu sae miyuru", ""),  # a part
        ("白雲に羽打交し飛雁の／秋夜の月／露岳刻之", "tobu kari no aki no yo no tsuki Rogaku", ""),
        ("白雲に羽打交し飛雁の数□へ見ゆる秋夜の月", "tobu kari no kazu… e miyuru", ""),
        ("白雲に羽打交し飛雁の数さへ見ゆる秋夜の□", "miyuru aki no yo no…", ""),
    ],
)
def test_what_agrees_is_read_by_the_source(copy: str, said: str, own: str) -> None:
    best = read(copy, KANA)
    assert said in best.romaji
    why = next(why for why in best.reasons if why.startswith(BY_SOURCE))
    assert why == BY_SOURCE + (f"; it lacks {own}, read alone" if own else "")


def test_words_the_source_lacks_are_less_sure() -> None:
    best = read("白雲に羽打交し飛雁の数さへ見ゆる秋夜の空", KANA)
    sure = {token.surface: chance for token, chance in best.words_weighed()}
    assert sure["空"] < sure["飛"] == 0.97
    reasons = {token.surface: token.reason for token in best.tokens}
    assert reasons["飛"] == "as the source spells it" != reasons["空"]


def test_a_source_without_voicing_marks_leaves_the_voicing_open() -> None:
    unmarked = KANA.replace("ぶ", "ふ").replace("ず", "す")
    assert "tobu kari no kazu sae" in read(COPIED, unmarked).romaji


def test_a_source_that_is_no_source_tells_nothing() -> None:
    poem = "春過て夏来にけらし白妙の衣ほすてふ天の香具山"
    best = read(poem, KANA)
    assert best.romaji == reading.read_text(poem).proposals[0].romaji
    assert not any(why.startswith(BY_SOURCE) for why in best.reasons)
    printed = read(COPIED, PRINTED.replace("かはし", "交し"))  # 雁 is in kanji there too
    assert not any(why.startswith(BY_SOURCE) for why in printed.reasons)


def test_a_settled_word_goes_before_the_source() -> None:
    from inscribe.record import Override

    best = read(COPIED, KANA, overrides=[Override(7, 7, "とび")])
    assert best.tokens[4].kana == "とび"
    assert "shirakumo ni hane uchikawashi" in best.romaji


@pytest.fixture
def library(tmp_path: Path) -> Path:
    """A library with one poem, its kana beside it."""
    path = tmp_path / "library.sqlite"
    text = SourceText("k191", (PRINTED,), "Kokinshu 191", extra=(("kana", KANA),))
    with Library(path, create=True) as made:
        add_texts(made, [text])
    return path


def run(*arguments: object) -> dict[str, object]:
    result = CliRunner().invoke(cli, ["read", "--format", "json", *map(str, arguments)])
    assert result.exit_code == 0, result.output
    found: dict[str, object] = json.loads(result.stdout)
    return found


def test_the_source_that_the_library_recognises_is_read_by(library: Path) -> None:
    copy = "白雲に羽打交し飛雁の秋夜の月"
    found = run("--text", copy, "--library", library)
    assert "hane uchikawashi tobu kari" in str(found["romaji"])
    assert any("Kokinshu 191 (probability" in why for why in found["reasons"])  # type: ignore[attr-defined]
    assert "higan" in str(run("--text", copy)["romaji"])


def test_the_kana_that_the_library_keeps_is_read_by(library: Path, tmp_path: Path) -> None:
    record = tmp_path / "A-1.toml"
    record.write_text(
        'id = "A-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\n'
        f'text = "{COPIED}"\n[inscription.source]\nid = "k191"\n',
        "utf-8",
    )
    assert "hane uchikawashi tobu kari" in str(run(record, "--library", library)["romaji"])


def test_worn_signs_are_restored_by_the_kana_of_the_source(library: Path) -> None:
    copy = "しら雲にはねうちかはしとふか□のかすさへみゆる秋の夜の月"
    with Library(library) as held:
        best = restore(notation.parse(copy), held).lacunae[0].candidates[0]
    assert best.text == "り"
    assert "has り here" in best.evidence[0].text


def test_a_form_of_a_character_that_verse_never_writes_is_read_by_the_source_too() -> None:
    found = read_by_source("夕暮に嗁虫の声", "ゆふぐれになくむしのこゑ")
    assert found is not None
    assert [word.kana for word in found.words][2] == "なく"
    assert "".join(word.written for word in found.words) == "夕暮に嗁虫の声"
