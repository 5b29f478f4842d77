"""The page of an entry: it stands alone, its colours can be told apart, its columns are kept."""

from __future__ import annotations

import itertools
import re
from html.parser import HTMLParser
from importlib.resources import files
from pathlib import Path

import pytest

from inscribe.entry import entries_in, entry_of
from inscribe.record import Inscription, load, loads
from inscribe.report.drawing import plate
from inscribe.report.drawing.surfaces import places, surfaces
from inscribe.report.pages.entry import entries_as_handout, entries_as_html, entries_as_volume
from inscribe.report.pages.slides import entries_as_slides
from inscribe.report.style import Style

EXAMPLES = Path(__file__).parent.parent / "examples"
SHEET = (files("inscribe.report.pages") / "page.css").read_text("utf-8")
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


def scheme(number: int) -> dict[str, str]:
    """Return the colours of a scheme by name: 0 is light, 1 dark, 2 print."""
    rules = re.findall(r":root \{(.*?)\}", SHEET, re.DOTALL)
    return dict(re.findall(r"--([a-z]+): (#[0-9a-f]+)", rules[number]))


def test_the_measure_of_contrast_is_that_of_wcag() -> None:
    # Published examples: black on white is 21:1; #767676 is the lightest grey that passes on white.
    assert contrast("#000", "#fff") == pytest.approx(21)
    assert contrast("#767676", "#fff") >= AA > contrast("#777777", "#fff")


@pytest.mark.parametrize("number", [0, 1, 2])
def test_every_text_can_be_told_from_its_ground(number: int) -> None:
    colours = scheme(number)
    inks, grounds = ("ink", "quiet", "accent"), ("paper", "metal", "panel")
    for ink, ground in itertools.product(inks, grounds):
        assert contrast(colours[ink], colours[ground]) >= AA, (ink, ground)


def test_text_is_set_in_colours_of_the_scheme_alone() -> None:
    used = set(re.findall(r"(?<![-\w])color: ([^;}]+)", SHEET))
    assert used <= {"var(--ink)", "var(--quiet)", "var(--accent)"}
    assert set(re.findall(r"background: ([^;}( ]+)", SHEET)) <= {"var", "repeating-linear-gradient"}


def test_every_sign_of_the_drawing_can_be_told_from_its_ground() -> None:
    inks = re.findall(r"(?:text|ghost|label|parent) \{[^}]*fill: (#[0-9a-f]{6})", plate.SHEET)
    grounds = [*re.findall(r"(?:plate|frame) \{ fill: (#[0-9a-f]{3,6})", plate.SHEET), "#fbfaf7"]
    assert len(inks) == 4
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
    assert not {"script", "link", "iframe", "object"} & set(found.tags)
    own = r"href=#r-DEMO-\d+i\d+d\d+|src=data:image/(jpeg|png|gif);base64,[A-Za-z0-9+/=]+"
    assert all(re.fullmatch(own, link) for link in found.links)
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
    metal = page.split('<figure class="carving">')[1].split("</figure>")[0]
    faces = re.findall(r'<div class="face".*?</div>', metal, re.DOTALL)
    columns = [re.findall(r"<p>(.*?)</p>", face) for face in faces]
    return [[shown(each) for each in face] for face in columns]


def shown(markup: str) -> str:
    """Return the words of some markup without what stands above or beside them."""
    return re.sub(r"<rt>.*?</rt>|<rp>.*?</rp>|<sub>.*?</sub>|<[^>]*>", "", markup)


def test_columns_and_faces_stand_as_carved() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-005.toml"))], Style())
    assert carved(page) == [["武州江戸住", "槙原露岳造之（花押）"], ["嘉永五年壬子", "仲秋吉日"]]


def test_words_keep_the_order_of_the_metal_and_tell_that_of_reading() -> None:
    entry = entry_of(load(EXAMPLES / "DEMO-006.toml"))
    page = entries_as_html([entry], Style())
    signs = re.findall(r'<span class="signs" lang="ja">(.*?)</span>', page)
    assert "".join(map(shown, signs)) == entry.inscriptions[0].interpretation.normalised
    turns = {shown(each): re.findall(r"<sub>(\d+)</sub>", each) for each in signs}
    assert turns["東都"] == ["1"]
    assert turns["於"] == ["2"]
    assert turns["汀雨"] == []


def cells(page: str) -> list[tuple[str, str, str]]:
    """Return source, number and copy of each stretch of the columns side by side."""
    found = re.findall(
        r'<span class="of-source" lang="ja">(.*?)</span>\n<span class="mark">(.*?)</span>\n'
        r'<span class="of-copy" lang="ja">(.*?)</span>\n</div>',
        page,
    )
    return [(shown(source), shown(mark), shown(copy)) for source, mark, copy in found]


@pytest.mark.parametrize("number", [1, 2, 3, 4, 12, 13, 15])
def test_copy_and_source_stand_side_by_side_whole(number: int) -> None:
    entry = entry_of(load(EXAMPLES / f"DEMO-{number:03}.toml"))
    held = entry.inscriptions[0].collation
    assert held is not None
    found = cells(entries_as_html([entry], Style()))
    source = "".join(shown(each) for each, _, _ in found)
    assert source == "".join(sign.text for sign in held.source.signs)
    numbers = [int(mark) for _, mark, _ in found if mark]
    assert sorted(set(numbers)) == list(range(1, len(held.differences) + 1))


def test_every_number_in_the_columns_leads_to_its_difference() -> None:
    page = entries_as_html([entry for _, entry in entries_in(EXAMPLES)], Style())
    wanted = re.findall(r'href="#([^"]+)"', page)
    there = re.findall(r'<tr id="([^"]+)"', page)
    assert wanted
    assert set(wanted) == set(there)
    assert len(there) == len(set(there))


def test_a_guard_is_drawn_with_its_opening_and_a_pair_as_two() -> None:
    guard = entries_as_html([entry_of(load(EXAMPLES / "DEMO-005.toml"))], Style())
    assert guard.count('class="opening"') == guard.count("<ellipse ") == 2
    pair = entries_as_html([entry_of(load(EXAMPLES / "DEMO-009.toml"))], Style())
    assert pair.count('class="plate"') == 2
    assert 'class="opening"' not in pair


def test_a_long_list_of_spelling_is_one_sentence_before_its_table() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-013.toml"))], Style())
    assert "<summary>Differences in writing only: 12 (" in page


def test_the_public_line_of_a_date_has_no_workings() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-008.toml"))], Style())
    line = page.split("<dt>Date</dt>")[1].split("</dd>")[0]
    assert "1824" in line
    assert "the date contradicts itself: 1824 / 1825" in line
    assert "began" not in line
    assert "Bunsei 1 began in 1818" in page.split("<summary>How the date was reckoned")[1]


def test_a_label_stands_once_before_all_that_belongs_to_it() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-005.toml"))], Style())
    assert page.count("<dt>Other readings</dt>") == 1
    assert len(re.findall(r"<dt>Other readings</dt><dd>.*?</dd><dd>", page)) == 1


@pytest.mark.parametrize(
    ("kind", "place", "is_guard"),
    [
        ("tsuba", "tang face", True),
        ("tsuba", "omote and ura", True),
        ("Tsuba", "front", True),
        ("鐔", "表裏", True),
        ("鍔", "中心櫃の右", False),
        ("tsuba", "rim", False),
        ("tsuba", "耳", False),
        ("", "切羽台表裏", True),
        ("kozuka", "front and back", False),
    ],
)
def test_a_guard_is_known_by_its_kind(kind: str, place: str, is_guard: bool) -> None:
    text = f'id = "A-1"\nkind = "{kind or "box"}"\n[[inscription]]\nplace = "{place}"\n'
    page = entries_as_html([entry_of(loads(text + 'text = "露岳」造之"\n'))], Style())
    assert page.count('class="opening"') == (2 if is_guard else 0)
    named = "and" in place or "表裏" in place
    assert (">front</text>" in page, ">face 1</text>" in page) == (named, not named)


@pytest.mark.parametrize(
    "text", ["露岳露", "一\n二三四五六七八九十一二\n露\n岳", "嶺\n暁\n作\n之\n花\n押"]
)
def test_no_sign_touches_the_outline_of_a_guard(text: str) -> None:
    inscription = Inscription("seppa-dai, front", text)
    oval = surfaces(inscription)[0]
    for sign in places(inscription):
        for x in (sign.x - sign.size / 2, sign.x + sign.size / 2):
            for y in (sign.y - sign.size / 2, sign.y + sign.size / 2):
                across = (x - oval.left) / oval.width * 2 - 1
                down = y / oval.height * 2 - 1
                assert across**2 + down**2 < 1


def test_fidelity_is_one_line_and_no_table() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-003.toml"))], Style())
    line = page.split("<dt>Fidelity</dt>")[1].split("</dd>")[0]
    assert "signs as carved 20 / 25 (80%)" in line
    assert "words 22 / 25 (88%)" in line


def test_the_picture_of_each_source_is_shown_with_its_name() -> None:
    picture = '[[inscription.source.image]]\nfile = "DEMO-004.jpg"\nshows = "The leaf"\n'
    record = loads(
        'id = "A-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\n'
        'text = "秋の田のかりほの庵"\n'
        '[[inscription.source]]\nwork = "Leaves"\ntext = "秋の田のかりほの庵"\n'
        f'[[inscription.source]]\nwork = "A scroll"\ntext = "秋の田のかり庵の"\n{picture}'
    )
    entry = entry_of(record, folder=EXAMPLES / "photographs")
    for made in (entries_as_html, entries_as_handout, entries_as_slides, entries_as_volume):
        (said,) = re.findall(
            r'<figure class="picture source">.*?<figcaption>(.*?)</figcaption>',
            made([entry], Style()),
            re.DOTALL,
        )
        assert "B: A scroll" in said
