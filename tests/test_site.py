"""A site from a folder, handouts, slides, volumes: whole, linked, and safe."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from test_entry import EXAMPLES, example, ran

from inscribe.cli.entries.formats import ENDINGS, format_of
from inscribe.errors import InputError
from inscribe.report.pages.entry import entries_as_handout, entries_as_volume
from inscribe.report.pages.slides import entries_as_slides
from inscribe.report.pages.timeline import DatedPage, timeline
from inscribe.report.style import Style


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("site")
    assert ran(str(EXAMPLES), "-o", f"{folder}/", "--format", "html").exit_code == 0
    return folder


def links(page: Path) -> list[str]:
    return re.findall(r'(?:href|src)="([^"]+)"', page.read_text("utf-8"))


def test_every_link_of_a_site_leads_somewhere(site: Path) -> None:
    seen = 0
    for page in site.rglob("*.html"):
        text = page.read_text("utf-8")
        for link in links(page):
            file, _, fragment = link.partition("#")
            if link.startswith("data:"):
                continue
            assert "://" not in link
            target = (page.parent / file) if file else page
            assert target.is_file(), link
            if fragment:
                there = target.read_text("utf-8") if file else text
                assert f'id="{fragment}"' in there, link
            seen += 1
    assert seen > 100


def test_the_index_names_every_object_and_lists_what_they_say(site: Path) -> None:
    index = (site / "index.html").read_text("utf-8")
    for number in range(1, 16):
        assert f'href="DEMO-{number:03}.html"' in index
    for name in ("objects", "dates", "persons", "places", "works", "lines", "doubts"):
        assert f'<section id="{name}">' in index
    assert '<img src="pictures/4.jpg"' in index
    assert (site / "pictures/4.jpg").stat().st_size > 1000
    assert "not an attribution" in index


def test_objects_that_share_a_name_lead_to_each_other(site: Path) -> None:
    one = (site / "DEMO-008.html").read_text("utf-8")
    assert 'the same name <span lang="ja">Reigyō</span>: <a href="DEMO-010.html">' in one
    assert 'href="index.html"' in one
    assert "the same name" not in (site / "DEMO-006.html").read_text("utf-8")


def test_a_record_called_index_does_not_take_the_place_of_the_index(tmp_path: Path) -> None:
    records = tmp_path / "records"
    (records / "sub").mkdir(parents=True)
    for name, number in (("index.toml", 6), ("sub/a.toml", 7)):
        source = EXAMPLES / f"DEMO-{number:03}.toml"
        (records / name).write_bytes(source.read_bytes())
    assert ran(str(records), "-o", f"{tmp_path}/site/", "--format", "html").exit_code == 0
    made = {str(p.relative_to(tmp_path / "site")) for p in (tmp_path / "site").rglob("*.html")}
    assert made == {"index.html", "index-2.html", "sub/a.html", "volume.html"}
    assert 'href="../index.html"' in (tmp_path / "site/sub/a.html").read_text("utf-8")


def test_a_volume_has_contents_that_lead_to_its_entries() -> None:
    page = entries_as_volume([example(1), example(5)], Style())
    assert re.findall(r'<li><a href="#([^"]+)">', page) == ["r-DEMO-001", "r-DEMO-005"]
    assert page.count("<article id=") == 2
    assert "target-counter(attr(href), page)" in page


def test_a_handout_has_the_reading_and_no_apparatus() -> None:
    page = entries_as_handout([example(1)], Style())
    assert "Word by word" in page
    assert "Kokin wakashu" in page
    for said in ("Differences in writing", "Fidelity", "Space", "Readers", 'href="#'):
        assert said not in page


def test_slides_show_each_difference_in_wording() -> None:
    page = entries_as_slides([example(3)], Style())
    assert page.count('<section class="slide"') == 3
    last = page.split('<section class="slide"')[-1]
    assert "left out" in last
    assert re.sub(r"<[^>]*>", "", "".join(re.findall(r'class="of-source".*?</span>', last))) != ""


def test_the_one_script_of_slides_is_the_one_that_may_run() -> None:
    import base64
    import hashlib

    page = entries_as_slides([example(3)], Style())
    (script,) = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    assert f"script-src 'sha256-{digest}'" in page


def test_a_timeline_has_a_dot_for_each_object() -> None:
    dated = [DatedPage(1824, "A", "a.html"), DatedPage(1824, "B", "b.html")]
    drawn = timeline(dated)
    assert drawn.count("<circle ") == 2
    assert len(set(re.findall(r'cy="([^"]+)"', drawn))) == 2  # one above the other
    assert timeline([]) == ""


@pytest.mark.parametrize(
    ("form", "output", "expected"),
    [
        (None, None, "md"),
        (None, "x.html", "html"),
        (None, "X.CSV", "csv"),
        ("handout", "x.html", "handout"),
        ("tei", "x.xml", "tei"),
        ("html", "site/", "html"),
        ("json", None, "json"),
    ],
)
def test_a_file_is_written_in_the_format_of_its_name(
    form: str | None, output: str | None, expected: str
) -> None:
    assert format_of(form, output) == expected


@pytest.mark.parametrize(
    ("form", "output"), [("docx", "x.html"), ("html", "x.md"), (None, "a.xml")]
)
def test_a_format_that_contradicts_the_name_is_refused(form: str | None, output: str) -> None:
    with pytest.raises(InputError):
        format_of(form, output)


def test_every_format_has_an_ending() -> None:
    assert all(format_of(form, f"x.{ending}") == form for form, ending in ENDINGS.items())


def test_a_table_for_spreadsheets_says_its_encoding(tmp_path: Path) -> None:
    for place in (str(EXAMPLES), str(EXAMPLES / "DEMO-005.toml")):
        out = tmp_path / "x.csv"
        assert ran(place, "-o", str(out), "--force").exit_code == 0
        assert out.read_bytes().startswith(b"\xef\xbb\xbfid,")
        assert ran(place, "--format", "csv").output.startswith("id,")
    assert "1852-09-14,1852-10-12" in out.read_text("utf-8")
    assert "Bushu Edo ju" in out.read_text("utf-8")


def test_hentaigana_are_readable_in_every_format() -> None:
    rare = re.compile("[\U0001b000-\U0001b12f]")
    for form in ENDINGS:
        if form in ("pdf", "docx", "json", "tei"):  # data, or written from what others show
            continue
        said = ran(str(EXAMPLES / "DEMO-013.toml"), "--format", form).output
        assert said
        assert not rare.search(said), (form, rare.findall(said))


def test_manifests_of_several_objects_need_a_folder(tmp_path: Path) -> None:
    assert isinstance(ran(str(EXAMPLES), "--format", "iiif").exception, InputError)
    assert ran(str(EXAMPLES), "--format", "iiif", "-o", f"{tmp_path}/").exit_code == 0
    ids = {json.loads(path.read_text("utf-8"))["id"] for path in tmp_path.iterdir()}
    assert len(ids) == 15


def test_an_object_without_a_title_has_no_gap_before_its_doubts(tmp_path: Path) -> None:
    records = tmp_path / "records"
    records.mkdir()
    place = '[[inscription]]\nplace = "back plate"\ntext = "□(花カ)の色"\n'
    (records / "K-3.toml").write_text(f'id = "K-3"\nkind = "kozuka"\n{place}', "utf-8")
    assert ran(str(records), "-o", f"{tmp_path}/site/", "--format", "html").exit_code == 0
    index = (tmp_path / "site" / "index.html").read_text("utf-8")
    assert '<li><a href="K-3.html">K-3</a>: the sign is doubtful' in index
