"""How small a handout is set on paper, so that an object takes one sheet of A4.

Nothing on a page without scripts can measure itself: the height that an article takes in print is
reckoned from what it holds, with the sizes of ``handout.css``, in mm.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.report import width as cells
from inscribe.report.entries import (
    Block,
    Columns,
    Drawing,
    Facts,
    GlossedWord,
    Interlinear,
    Lead,
    PictureBlock,
)
from inscribe.report.pages.markup import longest, ratio, tallest
from inscribe.signs import Kind, Sign, transcription

if TYPE_CHECKING:
    from inscribe.report.entries import Inline
    from inscribe.report.pages.sections import Article, Section

ACROSS, DOWN = 180.0, 262.0  # of A4 without its margins
POINT = 0.353
HEAD = 13.0  # a heading with what is around it
OBJECT = (68.0, 52.0)  # a picture of the whole object, with its title
SIDE = 0.45  # of the width, for pictures and drawings at the side
LEAST_BESIDE = 60.0  # text stands beside the columns where there is so much room
SIZES = [size / 100 for size in range(100, 38, -4)]  # as shares; below, nothing can be read


def fit(article: Article) -> float:
    """Return the largest size, as a share of the usual one, at which it takes one sheet."""
    return next(
        (size for size in SIZES if _height(article, ACROSS / size) * size < DOWN), SIZES[-1]
    )


def _height(article: Article, room: float) -> float:
    """Return the height of an article that has ``room`` mm across."""
    pictures = sum(isinstance(block, PictureBlock) for block in article.facts)
    rows = ceil(pictures * OBJECT[0] / room)
    return HEAD + rows * OBJECT[1] + sum(_section(each, room) for each in article.sections)


def _section(section: Section, room: float) -> float:
    wide, high = _beside(section.side, SIDE * room)
    columns = [block for block in section.flow if isinstance(block, Columns)]
    across, down = _columns(columns[0], room) if columns else (0.0, 0.0)
    text = [block for block in section.flow if not isinstance(block, Columns)]
    left = room - across - wide
    if left < LEAST_BESIDE:
        below = sum(_text(block, max(room - wide, LEAST_BESIDE)) for block in text)
        return HEAD + max(high, down + below)
    return HEAD + max(high, down, sum(_text(block, left) for block in text))


def _beside(blocks: Iterable[Block], most: float) -> tuple[float, float]:
    """Return width and height of drawings and pictures, two in a row, ``most`` mm wide at most."""
    wide = high = at = row = 0.0
    held, shown = 0, list(blocks)
    highest = 48.0 if len(shown) > 2 and not _is_source(shown[2]) else 118.0
    for block in shown:
        is_source = _is_source(block)
        share = float(ratio(block.svg)) if isinstance(block, Drawing) else _proportions(block)
        tall = 62.0 if is_source else 118.0 if isinstance(block, Drawing) else 95.0
        tall = min(tall, highest)
        across = max(min(45.0 if is_source else 62.0, tall * share), 20.0)
        if is_source or held == 2:
            high, at, row, held = high + row, 0.0, 0.0, 0
        held += 1
        at, row = at + across + 7, max(row, min(62.0, tall * share) / share + 14)
        wide = min(max(wide, at), most)
    return wide, high + row


def _is_source(block: Block) -> bool:
    return isinstance(block, PictureBlock) and block.of == "source"


def _proportions(block: Block) -> float:
    """Return width by height of a picture: of its part, else of a sheet that stands upright."""
    size: tuple[float, ...] = ()
    if isinstance(block, PictureBlock):
        size = block.image.crop[2:] or block.image.size
    across, down = size or (13.0, 20.0)
    return across / down


def _columns(block: Columns, room: float) -> tuple[float, float]:
    """Return width and height of the columns as carved, or of those beside their source."""
    key = 14.0 if block.key else 0.0
    if block.strips:
        signs = tallest(block.strips)
        size = min(max(11 * POINT, 125 / signs), 20 * POINT)
        across = len(block.strips) * (3.6 * size + 9) + 6
        tall = signs + max(sum(_marks(cell.copy) for cell in strip) for strip in block.strips)
        rows = ceil(across / room)
        return min(across, room), rows * (tall * 1.16 * size + 16) + key
    across = down = 0.0
    for face in block.faces:
        signs = longest(face)
        size = min(max(11 * POINT, 140 / signs), 22 * POINT)
        across += len(face) * 1.75 * size + 9
        tall = max(len(column) + _marks(column) for column in face)
        down = max(down, tall * 1.1 * size + 18)
    return min(across, room), ceil(across / room) * down + key


def _marks(signs: Iterable[Sign]) -> int:
    """Return how many characters more than signs are written: of seals, monograms and gaps."""
    others = [sign for sign in signs if sign.kind is not Kind.CHARACTER]
    return sum(len(notation.render(transcription([[[sign]]]))) - 1 for sign in others)


def _text(block: Block, room: float) -> float:
    """Return the height of a block of text that has ``room`` mm across."""
    if isinstance(block, Lead):
        return 8 + 7.4 * _lines(block.said, 14 * POINT, room)
    if isinstance(block, Facts):
        return sum(2 + 5 * _lines(said, 10 * POINT, room - 26) for _, said in block.rows)
    if isinstance(block, Interlinear):
        return 6 + sum(6 * bool(line.name) + _words(line.words, room) for line in block.lines)
    return 0.0


def _lines(said: Inline, size: float, room: float) -> int:
    """Return on how many lines text of a size stands; a letter is half as wide as a sign."""
    text = "".join(run.text for run in said)
    return max(1, ceil(cells(text) * size * 0.53 / max(room, 20.0)))


def _words(words: Iterable[GlossedWord], room: float) -> float:
    """Return the height of the words of a line with their kana, letters and glosses."""
    high = at = row = 0.0
    for word in words:
        signs = max(cells(word.signs) * 7.5, cells(word.kana) * 3.75) * POINT
        letters, gloss = len(word.romaji) * 1.9, len(word.gloss) * 1.7
        across = min(max(signs, min(letters, 46), min(gloss, 46)), room)
        lines = ceil(signs / room)
        down = 12 * lines + 4.6 * ceil(letters / 46) + 4.2 * ceil(gloss / 42)
        if at and at + across > room:
            high, at, row = high + row + 1.5, 0.0, 0.0
        at, row = at + across + 3.5, max(row, down)
    return high + row
