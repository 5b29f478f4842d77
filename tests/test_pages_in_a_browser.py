"""Pages as a browser lays them out: no overlaps, no scrolling sideways, nothing hidden in print."""

from __future__ import annotations

import html
import json
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from inscribe.cli.entries.printing import printed
from inscribe.entry import entry_of
from inscribe.record import load, loads
from inscribe.report.pages.entry import entries_as_handout, entries_as_html
from inscribe.report.pages.slides import entries_as_slides
from inscribe.report.style import Style

EXAMPLES = Path(__file__).parent.parent / "examples"
BROWSER = shutil.which("chromium") or shutil.which("chromium-browser")
needs_browser = pytest.mark.skipif(BROWSER is None, reason="needs Chromium")
WIDTHS = (320, 390, 720, 1100)

# Long dates, many columns, one long column, three inscriptions.
LONG = """
id = "L-1"
kind = "tsuba"
title = "Long dates"
[[inscription]]
place = "omote"
text = '''
寛政三年歳次辛亥冬十二月二十二日
武州豊島郡江戸神田住
梅原嶺暁作之
行年六十五歳造之
應黒沢露岳需
春の山の
霞の中に
帰る雁
声ばかりして
見えずなりぬる
花の色は
夕の雨に
'''
[[inscription]]
place = "ura"
text = "天保十四年癸卯閏九月二十八日於武州江戸神田橋外以南蛮鉄梅原嶺暁行年六十五歳精鍛造之（花押）"
[[inscription]]
place = "rim"
text = "明治二年己巳十一月二十三日應好造之"
"""

# Runs in a page with the others in frames; what it finds is the page's text.
LOOKS = """
const boxes = (element) => {
  const found = [], walker = element.ownerDocument.createTreeWalker(element, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const range = element.ownerDocument.createRange();
    range.selectNodeContents(walker.currentNode);
    found.push(...[...range.getClientRects()].filter((box) => box.width));
  }
  return found;
};
const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
  && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
addEventListener("load", () => {
  const found = [];
  for (const frame of document.querySelectorAll("iframe")) {
    const page = frame.contentDocument, root = page.documentElement;
    if (root.scrollWidth > root.clientWidth)
      found.push(`${frame.title}: ${root.scrollWidth - root.clientWidth} px too wide`);
    for (const section of page.querySelectorAll("section")) {
      const side = [...section.querySelectorAll(".side figure")];
      const beside = side.map((each) => each.getBoundingClientRect());
      const texts = [...section.children].filter((each) => each.className !== "side");
      if (texts.some((each) => boxes(each).some((a) => beside.some((b) => meet(a, b)))))
        found.push(`${frame.title}: pictures over text`);
      if (beside.some((a, at) => beside.slice(at + 1).some((b) => meet(a, b))))
        found.push(`${frame.title}: pictures over pictures`);
    }
    for (const line of page.querySelectorAll(".interlinear ol")) {
      const words = [...line.children].map((word) => [word.textContent, boxes(word)]);
      words.forEach(([one, its], at) => words.slice(at + 1).forEach(([other, theirs]) => {
        if (its.some((a) => theirs.some((b) => meet(a, b))))
          found.push(`${frame.title}: ${one} over ${other}`);
      }));
    }
  }
  for (const frame of document.querySelectorAll("iframe")) {
    const page = frame.contentDocument;
    const texts = page.createTreeWalker(page.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) for (const word of texts.currentNode.data.matchAll(/[a-zāīūēō]+/gi)) {
      if (texts.currentNode.parentElement.offsetWidth === 1) continue; // for screen readers
      const range = page.createRange();
      range.setStart(texts.currentNode, word.index);
      range.setEnd(texts.currentNode, word.index + word[0].length);
      const lines = new Set([...range.getClientRects()].map((box) => Math.round(box.top)));
      if (lines.size > 1) found.push(`${frame.title}: ${word[0]} is broken over lines`);
    }
  }
  document.body.textContent = `found:${JSON.stringify(found)}:end`;
});
"""


def looked_at(pages: dict[str, str], folder: Path) -> list[str]:
    """Return what is wrong with pages, each shown in all widths."""
    frames = "".join(
        f'<iframe title="{name} at {width}" width="{width}" height="900"'
        f' srcdoc="{html.escape(re.sub("<meta http-equiv[^>]*>", "", page))}"></iframe>'
        for name, page in pages.items()
        for width in WIDTHS
    )
    file = folder / "frames.html"
    file.write_text(
        f'<!DOCTYPE html><meta charset="utf-8"><body><script>{LOOKS}</script>{frames}',
        encoding="utf-8",
    )
    said = in_browser("--dump-dom", folder, file)
    found = re.search(r"found:(.*?):end</body>", said, re.DOTALL)
    assert found, said[:500]
    return list(json.loads(html.unescape(found[1])))


def in_browser(task: str, folder: Path, file: Path) -> str:
    assert BROWSER is not None
    alone = f"--user-data-dir={folder / 'profile'}"
    flags = ("--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", alone)
    command = [BROWSER, *flags, task, file.as_uri()]
    return subprocess.run(command, capture_output=True, text=True, timeout=240).stdout


@needs_browser
def test_words_do_not_overlap_and_no_page_scrolls_sideways(tmp_path: Path) -> None:
    pages = {}
    for entry in (entry_of(load(EXAMPLES / "DEMO-008.toml")), entry_of(loads(LONG))):
        name = entry.record.id
        pages[name] = entries_as_html([entry], Style())
        pages[f"handout of {name}"] = entries_as_handout([entry], Style())
        pages[f"slides of {name}"] = entries_as_slides([entry], Style())
    assert looked_at(pages, tmp_path) == []


@needs_browser
def test_what_overlaps_or_is_too_wide_is_seen(tmp_path: Path) -> None:
    bad = (
        '<div class="interlinear"><ol style="display: flex"><li style="width: 1em">花の色</li>'
        '<li>は</li></ol></div><p style="width: 2000px">-</p>'
    )
    found = looked_at({"bad": bad.replace("花の色", "<nobr>花の色</nobr>")}, tmp_path)
    assert any("over は" in each for each in found)
    assert any("too wide" in each for each in found)


def sheets(page: str) -> int:
    """Return on how many sheets of paper a page is printed."""
    return len(re.findall(rb"/Type /Page\b", printed(page)))


@needs_browser
def test_what_is_folded_on_the_screen_is_open_on_paper() -> None:
    page = entries_as_html([entry_of(load(EXAMPLES / "DEMO-003.toml"))], Style())
    assert "<details>" in page
    tall = '</summary><p style="height: 600mm">-</p>'
    assert sheets(page.replace("</summary>", tall, 1)) >= 3


@needs_browser
@pytest.mark.parametrize("number", [3, 6, 7, 9, 14])
def test_a_plain_object_takes_one_sheet(number: int) -> None:
    entry = entry_of(load(EXAMPLES / f"DEMO-{number:03}.toml"))
    assert sheets(entries_as_html([entry], Style())) == 1


def sheets_of(page: str, *elements: str) -> list[set[bytes]]:
    """Return on which sheets (their numbers in the file) elements of a kind, in turn, begin."""
    found = []
    for number, element in enumerate(elements):
        parts = page.split(element)
        names = [f"at{number}x{at}" for at in range(1, len(parts))]
        named = zip(names, parts[1:], strict=True)
        page = parts[0] + "".join(f'{element} id="{name}"{part}' for name, part in named)
        links = "".join(f'<a href="#{name}">-</a>' for name in names)
        page = page.replace("</body>", f"{links}</body>")
        found.append(names)
    pdf = printed(page)
    places = dict(re.findall(rb"/(at\d+x\d+) \[(\d+) 0 R", pdf))
    return [{places[name.encode()] for name in names} for names in zip(*found, strict=True)]


@needs_browser
def test_an_inscription_is_not_torn_from_its_heading_in_print() -> None:
    verse = "\n".join(["花の色は移りにけりな", "我身世にふる眺めせし間に"] * 3)
    parts = (("omote", verse), ("ura", verse), ("rim", verse), ("seat", "武州住梅原嶺暁作之"))
    record = 'id = "P-1"\nkind = "tsuba"\n' + "".join(
        f"[[inscription]]\nplace = '{place}'\ntext = '''\n{text}'''\n" for place, text in parts
    )
    page = entries_as_html([entry_of(loads(record))], Style())
    found = sheets_of(page, "<h2", '<figure class="carving"')
    assert len(found) == 4
    assert all(len(sheets) == 1 for sheets in found)
    assert len(set.union(*found)) > 1


@needs_browser
def test_several_pictures_do_not_cover_the_text(tmp_path: Path) -> None:
    picture = '[[inscription.image]]\nfile = "DEMO-004.jpg"\ncrop = [70, 125, 210, 1060]\n'
    place = 'id = "P-1"\nkind = "tsuba"\n[[inscription]]\nplace = "omote"\n'
    record = loads(f'{place}text = "武州江戸住梅原嶺暁作之"\n{3 * picture}')
    entry = entry_of(record, folder=EXAMPLES / "photographs")
    assert looked_at({"page": entries_as_html([entry], Style())}, tmp_path) == []


@needs_browser
def test_pictures_of_several_sources_stand_beside_one_another(tmp_path: Path) -> None:
    picture = '[[inscription{of}.image]]\nfile = "DEMO-004.jpg"\ncrop = [70, 125, 210, 1060]\n'
    source = '[[inscription.source]]\nwork = "Leaves"\ntext = "武州江戸住"\n'
    source += 2 * picture.format(of=".source")
    place = 'id = "P-1"\nkind = "tsuba"\n[[inscription]]\nplace = "omote"\n'
    carved = f'{place}text = "武州江戸住梅原嶺暁作之"\n{picture.format(of="")}'
    entry = entry_of(loads(carved + 2 * source), folder=EXAMPLES / "photographs")
    page = entries_as_html([entry], Style())
    assert page.count('class="picture source"') == 4
    assert looked_at({"page": page}, tmp_path) == []


# Runs in a page around slides on a common screen; what it finds is the page's text.
TALL = """
addEventListener("load", () => {
  const slides = [...document.querySelector("iframe").contentDocument.querySelectorAll(".slide")];
  const heights = slides.map((each) => Math.max(each.offsetHeight, each.scrollHeight));
  document.body.textContent = `found:${JSON.stringify(heights)}:end`;
});
"""


@needs_browser
def test_every_slide_fits_on_the_screen(tmp_path: Path) -> None:
    picture = '[[inscription.image]]\nfile = "DEMO-004.jpg"\ncrop = [70, 125, 210, 1060]\n'
    place = 'id = "P-1"\nkind = "tsuba"\n[[inscription]]\nplace = "omote"\n'
    record = loads(f'{place}text = "武州江戸住梅原嶺暁作之"\n{4 * picture}')
    entries = [entry_of(record, folder=EXAMPLES / "photographs"), entry_of(loads(LONG))]
    page = re.sub("<meta http-equiv[^>]*>", "", entries_as_slides(entries, Style()))
    frame = f'<iframe width="1280" height="720" srcdoc="{html.escape(page)}"></iframe>'
    file = tmp_path / "screen.html"
    file.write_text(f'<!DOCTYPE html><meta charset="utf-8"><script>{TALL}</script>{frame}')
    found = re.search(r"found:(\[.*?\]):end", in_browser("--dump-dom", tmp_path, file))
    assert found
    heights = json.loads(found[1])
    assert len(heights) >= 8
    assert max(heights) <= 721
