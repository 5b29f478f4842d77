"""The hand-kept provinces and towns against the place names of UniDic.

Source: unidic-lite 1.0.8 (UniDic 2.1.2, BSD licence), place names, as place_names.tsv has
them. Every disagreement is listed here and explained; a new one fails the test.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.names.lists import place_names

# Written: (reading here, why it is kept against UniDic).
EXPLAINED = {
    "江州": ("ごうしゅう", "Omi's short name; UniDic has a Chinese city"),
    "上毛": ("じょうもう", "Kozuke in the Chinese manner; UniDic has a town of Buzen"),
    "江都": ("こうと", "as makers are quoted; UniDic takes it for a writing of Edo"),
    "平安": ("へいあん", "Kyoto; UniDic has a Korean province"),
    "西京": ("さいきょう", "Kyoto; UniDic has a town of today"),
    "西都": ("せいと", "Kyoto; UniDic has a town of Hyuga"),
    "府内": ("ふない", "the castle town of Bungo"),
    "下原": ("したはら", "in Musashi; UniDic has places elsewhere"),
}


def hand_kept() -> Iterator[tuple[str, str]]:
    for name in ("provinces", "cities"):
        for row in tables.rows(name):
            yield row["written"], row["kana"]


def test_places_agree_with_unidic() -> None:
    compared = 0
    differing = {}
    for written, kana in hand_kept():
        listed = [reading.replace("|", "") for reading, _ in place_names(written)]
        compared += bool(listed)
        if listed and kana not in listed:
            differing[written] = kana
    assert compared > 200
    assert differing == {written: kana for written, (kana, _) in EXPLAINED.items()}
