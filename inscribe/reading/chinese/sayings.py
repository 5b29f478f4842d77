"""Sayings that have a customary reading: invocations, mottoes, set phrases, lines of verse.

``glossary/chinese/sayings.tsv`` comes first, then EDICT's set phrases (``compounds.tsv``
there). A text made of several of them, as a couplet is of lines, is read as they are.

>>> known_saying("和而不同")
Saying(written='和而不同', kana='わしてどうぜず', romaji='wa shite dōzezu', gloss='in harmony yet \
not the same', kind='Confucian')
>>> known_saying("白日依山盡黄河入海流").romaji, known_saying("白日依山")
('hakujitsu yama ni yotte tsuki kōga umi ni itte nagaru', None)
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from typing import TypeVar

from inscribe import tables
from inscribe.reading.spelling import hepburn, hiragana

T = TypeVar("T")

COMPOUND = "set phrase"
LOST = "□"
_SHORTEST_PART = 3  # signs; two sayings of two signs make many names
_LINES = (7, 5, 4)  # signs of a line
_LEAST_LEGIBLE = 3  # signs that must be seen of a saying with lost ones
_PARTICLES = {"は": "わ", "を": "お", "へ": "え"}
_PLAIN_NUMBERS = str.maketrans("弌弍弎壱弐参", "一二三一二三")
_KATAKANA = re.compile("[\u30a1-\u30fa]")


@dataclass(frozen=True, slots=True)
class Saying:
    """A saying and how it is usually read.

    ``written`` is the text in current forms; ``kana`` is in current spelling, without spaces;
    ``said`` is
    the reading divided into words;
    ``kind`` is a word such as "invocation", "Zen" or "verse";
    """

    written: str
    kana: str
    romaji: str
    gloss: str
    kind: str
    said: str = field(repr=False)


def known_saying(text: str) -> Saying | None:
    """Return the saying that ``text`` is, all of it, or a row of sayings; None for other texts.

    Args:
        text: kanji without marks, in any character forms; column breaks are left out.
    """
    found = readings_of_saying(text)
    return found[0] if found else None


@tables.cached(4096)
def readings_of_saying(text: str) -> tuple[Saying, ...]:
    """Return the customary readings of a saying, the usual one first; empty for other texts."""
    current = _in_current_forms(text)
    if not current:
        return ()
    found = _whole(current) or _whole(current.translate(_PLAIN_NUMBERS))
    if not found and len(current) > 2 * _SHORTEST_PART:
        found = [joined] if (joined := _joined(_parts(current))) else []
    return tuple(first_of_each(found, lambda saying: saying.romaji))


def first_of_each(items: Iterable[T], key: Callable[[T], str]) -> list[T]:
    """Return the items of which none before has the same key."""
    found: dict[str, T] = {}
    for item in items:
        found.setdefault(key(item), item)
    return list(found.values())


def _whole(text: str) -> list[Saying]:
    """Return the readings of a text that is one saying of the tables."""
    listed = [saying for saying in _beginning(text, 0) if saying.written == text]
    return [*listed, *_compounds(text)]


def worn_sayings(text: str) -> tuple[Saying, ...]:
    """Return the sayings that ``text`` may be whose lost signs are written ``□``.

    >>> [saying.written for saying in worn_sayings("南無観世音□薩")]
    ['南無観世音菩薩']
    """
    current = _in_current_forms(text)
    found = _fitting(current)
    for length in _LINES if LOST in current and not found else ():
        if len(current) > length and len(current) % length == 0:
            starts = range(0, len(current), length)
            lines = [_line_of_couplet(current[at : at + length]) for at in starts]
            joined = _joined(tuple(line for line in lines if line))
            found = [joined] if joined and all(lines) else found
    return tuple(found)


def _line_of_couplet(text: str) -> Saying | None:
    """Return the only saying that a line with lost signs fits, or that one without them is."""
    found = _fitting(text) if LOST in text else _whole(text)
    return found[0] if len(found) == 1 or (found and LOST not in text) else None


def _fitting(text: str) -> list[Saying]:
    """Return the sayings that a text with lost signs fits."""
    if LOST not in text or len(text) - text.count(LOST) < _LEAST_LEGIBLE:
        return []
    pattern = re.compile(re.escape(text).replace(re.escape(LOST), "."))
    found = [_saying(row) for row in tables.rows("sayings") if pattern.fullmatch(row["written"])]
    for row in tables.rows("compounds"):
        if pattern.fullmatch(row["written"]):
            found.append(_set_phrase(row, row["kana"]))
    return first_of_each(found, lambda saying: saying.written)


def _in_current_forms(text: str) -> str:
    """Return a text in current forms, without column breaks and spaces."""
    from inscribe.forms import normalise_text

    return re.sub("[\\s／]", "", normalise_text(text).text)


def _beginning(text: str, start: int) -> list[Saying]:
    """Return the sayings that begin at a sign of ``text``."""
    rows = _rows().about(text[start])
    return [_saying(row) for row in rows if text.startswith(row["written"], start)]


def _parts(text: str) -> tuple[Saying, ...]:
    """Return the sayings that make up ``text``, as few as possible, or none."""
    best: dict[int, tuple[Saying, ...]] = {0: ()}  # by where they end
    for start in range(len(text)):
        if start in best:
            for saying in _beginning(text, start) + _compounds(text[start : start + 4]):
                end = start + len(saying.written)
                longer = (*best[start], saying)
                shorter = end not in best or len(longer) < len(best[end])
                if shorter and len(saying.written) >= _SHORTEST_PART:
                    best[end] = longer
    return best.get(len(text), ())


def _joined(parts: tuple[Saying, ...]) -> Saying | None:
    """Return several sayings as one."""
    if not parts:
        return None
    return replace(
        parts[0],
        written="".join(part.written for part in parts),
        kana="".join(part.kana for part in parts),
        romaji=" ".join(part.romaji for part in parts),
        gloss="; ".join(part.gloss for part in parts),
        said=" ".join(part.said for part in parts),
    )


def _compounds(text: str) -> list[Saying]:
    """Return the readings EDICT has of a set phrase."""
    row = _set_phrases().first_about(text) if text else None
    if row is None:
        return []
    return [_set_phrase(row, each) for each in (row["kana"], *tables.listed(row["also"]))]


def _saying(row: tables.Row) -> Saying:
    return _said(row["written"], row["kana"], row["kind"], row["gloss"])


def _set_phrase(row: tables.Row, reading: str) -> Saying:
    return _said(row["written"], reading, COMPOUND, row["gloss"])


def _said(written: str, reading: str, kind: str, gloss: str) -> Saying:
    kana = hiragana(reading.replace(" ", "").replace("|", ""))
    return Saying(written, kana, romaji_of_reading(reading), gloss, kind, reading)


def romaji_of_reading(reading: str) -> str:
    """Return a reading of the table in Latin letters; words in katakana are proper names.

    >>> romaji_of_reading("ナム ミョウホウ レンゲ キョウ"), romaji_of_reading("とく は こ ならず")
    ('Namu Myōhō Renge Kyō', 'toku wa ko narazu')
    """
    words = []
    for word in reading.split(" "):
        letters = hepburn(_PARTICLES.get(word, word))
        words.append(letters[:1].upper() + letters[1:] if _KATAKANA.match(word) else letters)
    return " ".join(words)


@tables.cached()
def _rows() -> tables.Rows:
    return tables.Rows("sayings")


@tables.cached()
def _set_phrases() -> tables.Search:
    return tables.Search("compounds")
