"""Signs and words as HTML; everything that comes from data is escaped."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sized
from itertools import groupby
from operator import itemgetter
from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from inscribe import notation
from inscribe.reading.spelling import is_kanji
from inscribe.signs import Certainty, Intervention, Kind, Sign, transcription

if TYPE_CHECKING:
    from inscribe.report.entries import Inline, SourceSign, Strip

_STATES = {
    Certainty.DAMAGED: "damaged",
    Certainty.DOUBTFUL: "doubtful",
    Certainty.RESTORED: "restored",
    Certainty.STRUCK: "struck",
}
_INTERVENTIONS = {
    Intervention.SUPPLIED: "supplied",
    Intervention.SUPERFLUOUS: "superfluous",
    Intervention.EXPANDED: "supplied",
}


def inline(said: Inline) -> Markup:
    """Return stretches of text with their languages and italics."""
    return Markup("").join(_run(run.text, italic=run.italic, lang=run.lang) for run in said)


def _run(text: str, *, italic: bool, lang: str) -> Markup:
    body = Markup("<br>").join(text.split("\n"))
    mark = Markup(' lang="{}"').format(lang) if lang else Markup("")
    if italic:
        return Markup("<i{}>{}</i>").format(mark, body)
    return Markup("<span{}>{}</span>").format(mark, body) if lang else body


def grouped(rows: tuple[tuple[str, Inline], ...]) -> Iterator[tuple[str, list[Inline]]]:
    """Yield each label once, with all that stands against it."""
    for label, group in groupby(rows, key=itemgetter(0)):
        yield label, [said for _, said in group]


def longest(columns: Iterable[Sized]) -> int:
    """Return the number of signs in the longest column, by which the sheet sizes them."""
    return max(map(len, columns), default=1)


def ratio(svg: str) -> str:
    """Return width divided by height of a drawing.

    >>> ratio('<svg viewBox="0 0 200 800">')
    '0.250'
    """
    found = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    return f"{float(found[1]) / float(found[2]):.3f}" if found else "1"


def tallest(strips: tuple[Strip, ...]) -> int:
    """Return how many signs the longest strip has room for."""
    return max((sum(cell.room for cell in strip) for strip in strips), default=1)


def carved(sign: Sign) -> Markup:
    """Return one carved sign, the transcriber's doubts as classes."""
    if sign.kind is not Kind.CHARACTER or not sign.text:
        return escape(notation.render(transcription([[[sign]]])))
    states = [_STATES.get(sign.certainty, ""), _INTERVENTIONS.get(sign.intervention, "")]
    return _classed(with_parent(sign), " ".join(filter(None, states)))


def source_sign(each: SourceSign) -> Markup:
    """Return one sign of the source, marked where its line ends."""
    shown = with_parent(each.sign) if each.sign.text else carved(each.sign)
    return Markup('<span class="line-end">{}</span>').format(shown) if each.ends_line else shown


def with_parent(sign: Sign) -> Markup:
    """Return a sign; of a hentaigana, which few fonts have, its kana with the parent beside it."""
    shown = notation.printed(sign)
    if shown == sign.text:
        return escape(shown)
    kana, _, parent = shown.partition("(")
    return Markup("<ruby>{}<rt>{}</rt></ruby>").format(kana, parent.rstrip(")"))


# What is no sign in a word: the frame of a seal, brackets and the note of a conjecture. No kana
# stands above them.
_MARKS = re.compile(r"（印「|」）|［|］|〔|〕|〈|〉|\(カ\)")
_OPENED = {"［": "restored", "〔": "supplied", "〈": "supplied"}


def ruby(word: str, kana: str) -> Markup:
    """Return a word with its kana above what is written in kanji.

    >>> str(ruby("思ふ", "おもう"))
    '<ruby>思<rp>(</rp><rt>おも</rt><rp>)</rp></ruby>ふ'
    >>> str(ruby("（印「山」）", "やま"))
    '（印「<ruby>山<rp>(</rp><rt>やま</rt><rp>)</rp></ruby>」）'
    >>> str(ruby("思［ひ］", "おもい"))
    '<ruby>思<rp>(</rp><rt>おも</rt><rp>)</rp></ruby>［ひ］'
    >>> str(ruby("山［桜］", "やまざくら"))
    '<ruby>山<span class="restored">桜</span><rp>(</rp><rt>やまざくら</rt><rp>)</rp></ruby>'
    """
    signs = _MARKS.sub("", word)
    if not any(map(is_kanji, signs)):
        return escape(word)
    kana = "".join(kana.split())
    most = min(len(signs), len(kana)) - 1
    start = _answering(zip(signs, kana, strict=False), most)
    end = _answering(zip(reversed(signs), reversed(kana), strict=False), most - start)
    stop, said = len(signs) - end, kana[start : len(kana) - end]
    marks = [(found.start(), found.end()) for found in _MARKS.finditer(word)]
    at = [n for n in range(len(word)) if not any(first <= n < last for first, last in marks)]
    first, last = at[start], at[stop - 1] + 1
    before, head, after = escape(word[:first]), escape(word[first:last]), escape(word[last:])
    if _MARKS.search(word[first:last]):  # kana above a part that is marked: frames for brackets
        marked = _marked(word)
        before, head, after = (
            Markup("").join(part) for part in (marked[:start], marked[start:stop], marked[stop:])
        )
    shown = Markup("{}<ruby>{}<rp>(</rp><rt>{}</rt><rp>)</rp></ruby>{}")
    return shown.format(before, head, said, after)


def _marked(word: str) -> list[Markup]:
    """Return the signs of a word, those in brackets or noted as conjectures with their class."""
    made: list[Markup] = []
    state = ""
    for found in re.finditer(f"(?:{_MARKS.pattern})|.", word, re.DOTALL):
        if not _MARKS.fullmatch(found[0]):
            made.append(_classed(escape(found[0]), state))
        elif found[0] == "(カ)":
            made[-1] = _classed(made[-1], "doubtful")
        else:
            state = _OPENED.get(found[0], "")
    return made


def _classed(shown: Markup, names: str) -> Markup:
    return Markup('<span class="{}">{}</span>').format(names, shown) if names else shown


# Kana of historical spelling that stand for the sounds of others inside a word.
_SOUNDS = str.maketrans("はひふへほをゐゑ", "わいうえおおいえ")


def _answering(pairs: Iterable[tuple[str, str]], most: int) -> int:
    """Return how many kana of a word, at most ``most``, say what the reading says there."""
    count = 0
    for written, said in pairs:
        if count >= most or said not in (written, written.translate(_SOUNDS)):
            break
        count += 1
    return count
