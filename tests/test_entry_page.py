"""The page of an entry: it stands alone, its colours can be told apart, its columns are kept."""

from __future__ import annotations

import itertools
import re
from html.parser import HTMLParser
from importlib.resources import files
from pathlib import Path

import pytest

from inscribe.entry import entries_in, entry_of
from inscribe.record import load, loads
from inscribe.report.drawing import plate
from inscribe.report.entries.html import entries_as_html
from inscribe.report.style import Style

EXAMPLES = Path(__file__).parent.parent / "examples"
SHEET = (files("inscribe.report.entries") / "entry.css").read_text("utf-8")
AA = 4.5  # WCAG 2.1, 1.4.3: text of ordinary size


def channel(value: int) -> float:
    """Return the linear part of one channel, as WCAG 2.1 defines relative luminance."""
    share = value / 255
    return share / 12.92 if share <= 0.03928 else ((share + 0.055) / 1.055) ** 2.4


def luminance(colour: str) -> float:
    digits = colour.lstrip("#")
    digits = "".join(2 * digit for digit in digits) if len(digits) == 3 else digits
    red, green, blue = (channel(int(digits[i : i + 2], 16)) for i in (0, 2, 4))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def variable(name: str) -> str:
    found = re.search(rf"--{name}: (#[0-9a-f]+)", SHEET)
    assert found
    return found[1]


def test_the_measure_of_contrast_is_that_of_wcag() -> None:
    # Published examples: black on white is 21:1; #767676 is the lightest grey that passes on white.
    assert contrast("#000", "#fff") == pytest.approx(21)
    assert contrast("#767676", "#fff") >= AA > contrast("#777777", "#fff")


def test_every_text_can_be_told_from_its_ground() -> None:
    inks = {variable("ink"), variable("quiet")}
    grounds = set(re.findall(r"background: (#[0-9a-f]{3,6})", SHEET)) | {variable("metal")}
    used = set(re.findall(r"(?<![-\w])color: ([^;}]+)", SHEET))
    assert used <= {"var(--ink)", "var(--quiet)"}
    for ink, ground in itertools.product(inks, grounds):
        assert contrast(ink, ground) >= AA, (ink, ground)


def test_every_sign_of_the_drawing_can_be_told_from_its_ground() -> None:
    inks = re.findall(r"(?:text|ghost|label) \{[^}]*fill: (#[0-9a-f]{6})", plate.SHEET)
    grounds = [*re.findall(r"(?:plate|frame) \{ fill: (#[0-9a-f]{3,6})", plate.SHEET), "#fbf9f4"]
    assert len(inks) == 3
    assert len(grounds) == 3
    for ink, ground in itertools.product(inks, grounds):
        assert contrast(ink, ground) >= AA, (ink, ground)


class Page(HTMLParser):
    """The tags and the links of a page, and the text of the columns as carved."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.links: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.links += [f"{key}={value}" for key, value in attrs if key in ("src", "href", "action")]
        assert not any(key.startswith("on") for key, _ in attrs)


def test_the_page_fetches_nothing_and_runs_nothing() -> None:
    page = entries_as_html([entry for _, entry in entries_in(EXAMPLES)], Style())
    found = Page(page)
    assert not {"script", "link", "img", "iframe", "object"} & set(found.tags)
    assert found.links == []
    assert "url(" not in page
    assert "@import" not in page
    assert found.tags.count("article") == found.tags.count("h1") == 15


def test_data_is_never_markup() -> None:
    bad = '<script>alert(1)</script>&amp;\\" onload=x'
    record = loads(
        f'id = "{bad}"\nkind = "{bad}"\ntitle = "{bad}"\nremarks = "{bad}"\n'
        f'[[inscription]]\nplace = "{bad}"\ntext = "花"\ntranslation = "{bad}"\n'
        f'[inscription.plate]\nwidth = 14\nheight = 95\n[[inscription.reading]]\nby = "{bad}"\n'
    )
    found = Page(entries_as_html([entry_of(record)], Style()))
    assert "script" not in found.tags


def carved(page: str) -> list[list[str]]:
    """Return the columns of each face as carved, without marks of certainty."""
    metal = page.split('<figure class="metal">')[1].split("</figure>")[0]
    faces = re.findall(r'<div class="face".*?</div>', metal, re.DOTALL)
    columns = [re.findall(r"<p>(.*?)</p>", face) for face in faces]
    return [[re.sub(r"<rt>.*?</rt>|<[^>]*>", "", each) for each in face] for face in columns]


def test_columns_and_faces_stand_as_carved() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-005.toml"))], Style())
    assert carved(page) == [["武州江戸住", "槙原露岳造之（花押）"], ["嘉永五年壬子", "仲秋吉日"]]


def test_words_keep_the_order_of_the_metal_above_their_kana() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-006.toml"))], Style())
    line = page.split('<p class="ruby" lang="ja">')[1].split("</p>")[0]
    words = re.sub(r"<rt>.*?</rt>|<rp>.*?</rp>|<[^>]*>", "", line)
    assert (
        "".join(words.split())
        in entry_of(load(EXAMPLES / "DEMO-006.toml")).inscriptions[0].interpretation.normalised
    )


def test_a_label_stands_once_before_all_that_belongs_to_it() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-005.toml"))], Style())
    assert page.count("<dt>Other readings</dt>") == 1
    assert len(re.findall(r"<dt>Other readings</dt><dd>.*?</dd><dd>", page)) == 1
