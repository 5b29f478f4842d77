"""Records that name several sources, some of which cannot be had: what is known of the others."""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe.checking import check_folder
from inscribe.entry import InscriptionEntry, entry_of
from inscribe.record import loads
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.style import Style
from inscribe.report.tei import entries_as_tei

HEAD = 'id = "A"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "花の色はうつりに"\n'
SOURCES = {
    "first": '[[inscription.source]]\nsiglum = "P"\ntext = "花の色もうつりに"\n',
    "second": '[[inscription.source]]\nsiglum = "Q"\ntext = "花の色はかはりに"\n',
    "nowhere": '[[inscription.source]]\nsiglum = "N"\nid = "nowhere-1"\n',
}


def entry(*names: str) -> InscriptionEntry:
    """Return the inscription of a record that names these sources, in this order."""
    return entry_of(loads(HEAD + "".join(SOURCES[name] for name in names))).inscriptions[0]


@pytest.mark.parametrize(
    "names", [("first", "second", "nowhere"), ("nowhere", "first", "second")], ids=" ".join
)
def test_a_source_that_is_nowhere_leaves_the_apparatus_of_the_others(
    names: tuple[str, ...],
) -> None:
    found = entry(*names)
    assert found.testimony
    assert [witness.siglum for witness in found.testimony.as_given] == ["P", "Q"]
    assert found.held_against == tuple(names.index(name) for name in ("first", "second"))
    assert found.collation_with(names.index("nowhere")) is None
    second = found.collation_with(names.index("second"))
    assert second
    assert [each.source.text for each in second.differences] == ["かはり"]
    assert "nowhere-1" in found.missing_source


def test_a_first_source_that_is_nowhere_leaves_the_second() -> None:
    found = entry("nowhere", "first")
    assert found.collation
    assert [each.source.text for each in found.collation.differences] == ["も"]
    assert found.testimony is None


def test_every_format_says_what_is_missing_and_what_the_others_have() -> None:
    made = entry_of(loads(HEAD + SOURCES["nowhere"] + SOURCES["first"] + SOURCES["second"]))
    text, tei = entry_as_markdown(made, Style()), entries_as_tei([made], Style())
    assert "nowhere-1" in text
    assert "花の色もうつりに" in text
    assert tei.count("<rdg") == 2
    assert all(f'source="#r-A_i1-source-{number}"' in tei for number in (2, 3))


def test_check_looks_at_every_source(tmp_path: Path) -> None:
    image = '[[inscription.source.image]]\nfile = "gone.png"\n'
    sources = SOURCES["first"] + SOURCES["nowhere"] + image
    (tmp_path / "a.toml").write_text(HEAD + sources, "utf-8")
    lines = (HEAD + sources).split("\n")
    found = {each.code: each for each in check_folder(tmp_path).findings}
    assert "nowhere-1" in found["source-missing"].message
    assert found["source-missing"].line in (
        lines.index('siglum = "N"'),
        lines.index('siglum = "N"') + 1,
    )
    assert "gone.png" in found["image-missing"].message


@pytest.mark.parametrize(("kind", "said"), [("", "untitled"), ("print", "print")])
def test_a_source_without_author_or_work_is_not_a_bare_letter(kind: str, said: str) -> None:
    named = '[[inscription.source]]\nwork = "A leaf"\ntext = "花の色"\n'
    bare = f'[[inscription.source]]\ntext = "花の色"\n{f"kind = {kind!r}" if kind else ""}\n'
    made = 'id = "U"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "花の色"\n'
    assert f"B: {said}\n" in entry_as_markdown(entry_of(loads(made + named + bare)), Style())
