"""What stands beside a copied text: set aside before the copy is held against its source."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe import notation
from inscribe.cli import cli
from inscribe.collation import collate, collate_texts
from inscribe.collation.space.measures import measures_of
from inscribe.record import Inscription, SettledPassage, load

SOURCE = "霞たちこのめもはるの雪ふれば\n花なきさとも花ぞちりける"  # Kokinshu 9, from memory
POEM = "霞たちこのめも春の雪ふれは\n花なきさとも花そちりける"
HEADING, WRITER, CARVER = "雪中早梅", "楓畦書", "鷺坂苗道刻之（花押）"
WHOLE = "\n".join((HEADING, POEM, WRITER, CARVER))


def run(*arguments: str, stdin: str | None = None) -> Result:
    return CliRunner().invoke(cli, ["collate", *arguments], input=stdin)


def record(folder: Path, text: str) -> Path:
    """Return a record of a plate of 14 x 96 mm, its columns written with 6 mm a sign."""
    path = folder / "T-1.toml"
    columns = "".join(
        f"[[inscription.column]]\ntop = 5.0\nbottom = {5 + 6 * len(line)}.0\n"
        for line in text.replace("（花押）", "押").split("\n")
    )
    plate = f"[inscription.plate]\nwidth = 14.0\nheight = 96.0\n{columns}"
    path.write_text(
        f'id = "T-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\n'
        f'text = """\n{text}\n"""\n{plate}[inscription.source]\nid = "s"\n'
        f'text = """\n{SOURCE}\n"""\n',
        encoding="utf-8",
    )
    return path


def said(copy: str, source: str) -> list[tuple[str, str, str | None]]:
    return [(b.kind, b.text, b.role) for b in collate_texts(copy, source).beside]


def test_a_faithful_poem_with_heading_writer_and_carver_is_faithful(tmp_path: Path) -> None:
    path = record(tmp_path, WHOLE)
    result = run(str(path), "--strict")
    assert result.exit_code == 0, result.output
    flat = " ".join(result.stdout.split())
    assert "The copy has the words of the source." in flat
    assert (
        f"Stands beside the copied text: heading {HEADING}; signature {WRITER} (wrote);"
        f" signature {CARVER} (carved)." in flat
    )
    assert "added" not in flat


def test_json_says_what_stands_beside_and_counts_signs_of_the_whole_copy(tmp_path: Path) -> None:
    result = run(str(record(tmp_path, WHOLE)), "--format", "json")
    found = json.loads(result.stdout)
    assert found["beside"] == [
        {"kind": "heading", "signs": [0, 3], "text": HEADING, "role": None},
        {"kind": "signature", "signs": [29, 31], "text": WRITER, "role": "wrote"},
        {"kind": "signature", "signs": [32, 38], "text": CARVER, "role": "carved"},
    ]
    spring = next(group for group in found["differences"] if group["copy"]["text"] == "春")
    assert spring["copy"]["start"] == 11  # four signs of the heading and seven of the poem before
    ends = [group["copy"]["end"] for group in found["groups"]]
    assert [group["copy"]["start"] for group in found["groups"]] == [0, *ends[:-1]]
    assert found["fidelity"]["added"] == 0
    assert [each["copy"] for each in found["breaks"]] == [17]  # the one end inside the poem
    assert found["space"]["beside"] == 14
    assert [column["signs"] for column in found["space"]["crowding"]] == [4, 13, 12, 3, 7]


def test_a_real_difference_is_still_one(tmp_path: Path) -> None:
    result = run(str(record(tmp_path, WHOLE.replace("さとも", "やまも"))), "--strict")
    assert result.exit_code == 1
    assert "replaced" in result.stdout


def test_markdown_says_it_too(tmp_path: Path) -> None:
    result = run(str(record(tmp_path, WHOLE)), "--format", "md")
    assert f"Stands beside the copied text: heading {HEADING}" in result.stdout
    assert "The text wants 26 signs, and what stands beside it 14" in " ".join(
        result.stdout.split()
    )


def test_what_stands_below_the_poem_takes_room(tmp_path: Path) -> None:
    inscription = load(record(tmp_path, WHOLE)).inscriptions[0]
    t = inscription.transcription
    free, taken = measures_of(t, inscription), measures_of(t, inscription, after=10)
    assert free is not None
    assert taken is not None
    assert free.room_after(2, 12) - taken.room_after(2, 12) == pytest.approx(10 * 6.0)


@pytest.mark.parametrize(
    ("copy", "source", "carver"),
    [
        ("夢かうつゝか寝てかさめてか／朧谷刻之", "ゆめかうつつかねてかさめてか", "朧谷刻之"),
        ("明月松間照／清泉石上流／朧谷鐫之", "明月松間照清泉石上流", "朧谷鐫之"),
    ],
)
def test_bare_texts_are_divided_where_that_is_sure(copy: str, source: str, carver: str) -> None:
    assert said(copy, source) == [("signature", carver, "carved")]
    assert collate_texts(copy, source).is_faithful_in_wording


def test_what_the_source_has_too_was_copied() -> None:
    """A signature, and a heading, that stand in the source are held against it."""
    copy = "明月松間照／清泉石上流／朧谷鐫之"
    assert said(copy, "明月松間照清泉石上流朧谷鐫之") == []
    assert said(copy, "明月松間照清泉石上流朧谷鐫") == []
    assert not collate_texts(copy, "明月松間照清泉石上流朧谷鐫").is_faithful_in_wording


def test_an_addition_to_the_words_is_no_signature() -> None:
    found = collate_texts("霞たちこのめも春の雪ふれは／花なきさと", "霞たちこのめもはるの雪ふれば")
    assert found.beside == ()
    assert not found.is_faithful_in_wording


def test_a_signature_alone_is_held_against_the_source() -> None:
    assert said("朧谷刻之", "霞たちこのめもはるの雪ふれば") == []


def test_a_plate_of_nothing_but_a_kao_can_be_held_against_a_source(tmp_path: Path) -> None:
    result = run(str(record(tmp_path, "（花押）")), "--format", "json")
    assert json.loads(result.stdout)["beside"] == []


def test_an_excerpt_with_a_signature_is_an_excerpt() -> None:
    source = "明月松間照清泉石上流" + "空山新雨後天気晩来秋" + "竹喧帰浣女蓮動下漁舟"
    found = collate_texts("清泉石上流／朧谷鐫之", source)
    assert found.window == (5, 10)
    assert found.is_faithful_in_wording


def test_what_a_person_settled_stands() -> None:
    """A word that may be either is set aside because a reader said that it is a signature."""
    text = "霞たちこのめも春の雪ふれは／花なきさとも花そちりける／露"
    source = notation.parse(SOURCE)
    inscription = Inscription("back", text.replace("／", "\n"))
    length = len(inscription.transcription.signs)
    settled = SettledPassage(length - 1, length - 1, "signature", "wrote", "露")
    told = Inscription("back", text.replace("／", "\n"), passages=(settled,))
    beside = collate(told.transcription, source, told).beside
    assert [(b.kind, b.first, b.role) for b in beside] == [("signature", length - 1, "wrote")]
