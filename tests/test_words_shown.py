"""The words of the interlinear line with their kana, and sources named by what is known of them."""

from __future__ import annotations

import re

import pytest

from inscribe.entry import entry_of
from inscribe.record import loads
from inscribe.report.pages.entry import entries_as_html
from inscribe.report.pages.markup import ruby
from inscribe.report.style import Style


def words_of(text: str) -> list[str]:
    """Return the words of the interlinear line of an inscription as the page shows them."""
    made = f"id = 'A-1'\nkind = 'kozuka'\n[[inscription]]\nplace = 'back'\ntext = '{text}'\n"
    page = entries_as_html([entry_of(loads(made + "register = 'verse'\n"))], Style())
    return re.findall(r'<span class="signs" lang="ja">(.*?)</span> ', page)


def test_a_conjecture_is_marked_among_the_words_of_the_reading() -> None:
    words = words_of("秋の□(暮カ)の□(色カ)かな")
    assert [word for word in words if "暮" in word] == [
        "<ruby>暮<rp>(</rp><rt>くれ</rt><rp>)</rp></ruby>(カ)"
    ]
    assert next(word for word in words if "色" in word).endswith("</ruby>(カ)")


@pytest.mark.parametrize(
    ("word", "kana", "shown"),
    [
        ("思［ひ］", "おもひ", "<ruby>思<rp>(</rp><rt>おも</rt><rp>)</rp></ruby>［ひ］"),
        ("［思］ひ", "おもい", "［<ruby>思<rp>(</rp><rt>おも</rt><rp>)</rp></ruby>］ひ"),
        ("暮(カ)", "くれ", "<ruby>暮<rp>(</rp><rt>くれ</rt><rp>)</rp></ruby>(カ)"),
        ("〔花〕", "はな", "〔<ruby>花<rp>(</rp><rt>はな</rt><rp>)</rp></ruby>〕"),
    ],
)
def test_no_kana_stands_above_a_bracket(word: str, kana: str, shown: str) -> None:
    assert str(ruby(word, kana)) == shown


@pytest.mark.parametrize(
    ("word", "base"),
    [
        ("山［桜］", '山<span class="restored">桜</span>'),
        ("［山］桜", '<span class="restored">山</span>桜'),
        ("夕暮(カ)", "夕暮"),
        ("夕(カ)暮", '<span class="doubtful">夕</span>暮'),
        ("山〔桜し〕", '山<span class="supplied">桜</span>'),
    ],
)
def test_what_is_marked_within_what_has_kana_is_framed(word: str, base: str) -> None:
    made = str(ruby(word, "ことばし"))
    assert made.split("<ruby>")[1].split("<rp>")[0] == base


@pytest.mark.parametrize(
    ("named", "said"),
    [
        ('kind = "manuscript"', "B: manuscript"),
        ('work = "Leaves"', "B: Leaves"),
        ("", "B: untitled"),
    ],
)
def test_a_source_without_author_or_title_is_named_by_what_is_known(named: str, said: str) -> None:
    source = f'[[inscription.source]]\ntext = "花の色"\nsiglum = "B"\n{named}\n'
    text = 'id = "A-1"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "花の色"\n'
    other = '[[inscription.source]]\ntext = "花の色は"\nsiglum = "C"\n'
    page = entries_as_html([entry_of(loads(text + source + other))], Style())
    assert f"<dt>Source text</dt><dd>{said}</dd>" in page
