"""Kana written with their parent kanji, は(者), and the code points they stand for.

Where Unicode encodes several shapes from one parent, the note names the first; a figure names
another: は(者2). A parent of the ordinary kana that has no code point of its own, こ(己), names
the ordinary kana. Of old kana whose parent Unicode does not name, the note says what they are, in
the words of printed editions (common practice, no source): ゐ(小書) is the small ゐ, エ(古体) the
archaic エ, トモ(合字) the ligature.
"""

from __future__ import annotations

import re
import unicodedata

from inscribe import tables
from inscribe.signs import Sign

# All kana that few fonts have: those beyond the basic plane of Unicode.
_SIGNS = re.compile("([\U0001b000-\U0001b16f\U0002a708])([\u3099\u309a]?)")
_SORTS = {"SMALL": "小書", "ARCHAIC": "古体"}  # by a word of its name
_LIGATURE = "合字"
Letters = dict[tuple[str, str], list[str]]


def letter(kana: str, parent: str) -> str | None:
    """Return the sign read ``kana`` that is written from ``parent``, or None if none is known.

    A voicing mark on ``kana`` is kept as a mark of its own.

    >>> letter("は", "者"), letter("に", "尓"), letter("ば", "者"), letter("は", "花")
    ('𛂥', '𛂋', '𛂥゙', None)
    """
    base, marks = _base_and_marks(kana)
    kanji = parent.rstrip("0123456789")
    number = int(parent[len(kanji) :] or 1) if len(parent) <= 2 else 0
    shapes: list[str] = []
    for form in (kanji, *_forms().get(kanji, ())):
        shapes = shapes or _letters().get((base, form), [])
    return shapes[number - 1] + marks if 0 < number <= len(shapes) else None


def parents(kana: str) -> tuple[str, ...]:
    """Return the kanji from which the known signs read ``kana`` are written.

    >>> parents("わ")
    ('倭', '和', '王')
    """
    base = _base_and_marks(kana)[0]
    return tuple(parent for sound, parent in _letters() if sound == base)


def written_out(text: str) -> str:
    r"""Return ``text`` with each hentaigana as its kana and parent kanji, as printed editions do.

    Few fonts have the signs themselves. A voicing mark goes to the kana.

    >>> written_out("色𛂥"), written_out("𛂥\u3099")
    ('色は(者)', 'ば(者)')
    >>> written_out("\U0001b001\U0001b150\U0002a708")
    'え(江)ゐ(小書)トモ(合字)'
    """
    if not _SIGNS.search(text):
        return text
    return _SIGNS.sub(_kana_and_parent, text)


def _kana_and_parent(match: re.Match[str]) -> str:
    sign, mark = match[1], match[2] or ""
    kana, parent = _with_parent().get(sign, (sign, ""))
    voiced = unicodedata.normalize("NFC", kana + mark)
    return f"{voiced}({parent})" if parent else sign + mark


def printed(sign: Sign) -> str:
    """Return a sign's text as an edition prints it: a hentaigana as its kana and parent kanji.

    The parent is the one the transcriber wrote, に(尓); where he wrote the sign itself, the one
    Unicode names, に(爾).
    """
    return sign.noted or written_out(sign.text)


def _base_and_marks(kana: str) -> tuple[str, str]:
    parts = unicodedata.normalize("NFD", kana)
    return parts[:1], parts[1:]


@tables.cached()
def _letters() -> Letters:
    letters: Letters = {}
    for row in tables.rows("hentaigana"):
        for kana in tables.listed(row["kana"]):
            letters.setdefault((kana, _origin(row)), []).append(row["written"])
    for row in tables.rows("kana_parents"):
        letters.setdefault((row["kana"], row["parent"]), [row["kana"]])
    return letters


@tables.cached()
def _forms() -> dict[str, tuple[str, ...]]:
    forms: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("parent_forms"):
        forms[row["written"]] = (*forms.get(row["written"], ()), row["parent"])
    return forms


@tables.cached()
def _with_parent() -> dict[str, tuple[str, str]]:
    shown = {
        row["written"]: (tables.listed(row["kana"])[0], _origin(row))
        for row in tables.rows("hentaigana")
    }
    for row in tables.rows("kana_ligatures"):
        shown[row["written"]] = (row[row["kind"]], _LIGATURE)
    return shown


def _origin(row: tables.Row) -> str:
    """Return the kanji a kana is written from, or of what sort it is where none is known."""
    sort = next((said for word, said in _SORTS.items() if word in row["name"].split()), "")
    return row["parent"] or sort
