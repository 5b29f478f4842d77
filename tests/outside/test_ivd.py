"""Old forms that are compatibility ideographs, against the Ideographic Variation Database.

Source: the collection Moji_Joho of the IVD (Unicode, UTS 37) as the font IPAmj Mincho maps it
(Debian: fonts-ipamj-mincho, IPA Font License): in its table of variation sequences a registered
sequence of the unified ideograph has the glyph of the compatibility ideograph. The table of old
forms was built from the list of Joyo kanji and Unihan.
"""

from __future__ import annotations

import unicodedata
from functools import cache

import debian
import pytest

from inscribe import tables

# Of another standard (KS X 1001): the collection registers no sequence for their old forms.
NOT_REGISTERED = frozenset("旅連廉蘭遼")


@cache
def font() -> tuple[dict[int, str], dict[str, set[str]]]:
    """Return the glyph of each character, and the bases of the sequences of each glyph."""
    fonts = pytest.importorskip("fontTools.ttLib", reason="fonttools is not installed")
    file = debian.file("fonts/truetype/ipamj/ipamjm.ttf", "fonts-ipamj-mincho")
    table = fonts.TTFont(file, lazy=True)["cmap"]
    (sequences,) = [each.uvsDict for each in table.tables if each.format == 14]
    bases: dict[str, set[str]] = {}
    for listed in sequences.values():
        for base, glyph in listed:
            if glyph:
                bases.setdefault(glyph, set()).add(chr(base))
    return table.getBestCmap(), bases


def compatibility_forms() -> list[tuple[str, str]]:
    return [
        (row["written"], row["current"])
        for row in tables.rows("old_forms")
        if len(row["written"]) == 1 and unicodedata.decomposition(row["written"])
    ]


def test_old_forms_are_registered_variations_of_their_current_forms() -> None:
    glyphs, bases = font()
    held = compatibility_forms()
    assert len(held) > 80
    other = {now for old, now in held if now not in bases.get(glyphs.get(ord(old), ""), ())}
    assert other == NOT_REGISTERED
