"""The hand-kept provinces and towns against the place names of UniDic.

Source: unidic-lite 1.0.8 (UniDic 2.1.2, BSD licence), place names, as place_names.tsv has
them. Every disagreement is listed here and explained; a new one fails the test.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.names import known
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

# Written: (reading here, why it is kept against the places of ENAMDICT, name_dictionary.tsv).
KEPT_BESIDE_ENAMDICT = {
    "東江": ("とうこう", "Edo, in the Chinese manner; ENAMDICT has a place of Okinawa"),
    "西京": ("さいきょう", "Kyoto, of Meiji; ENAMDICT has a ward of today"),
    "西都": ("せいと", "Kyoto; ENAMDICT has a town of Hyuga"),
    "北庄": ("きたのしょう", "Fukui of old, with no as UniDic has it"),
    "下原": ("したはら", "in Musashi; ENAMDICT has places elsewhere"),
    "荘内": ("しょうない", "Shonai in Dewa, as 庄内; ENAMDICT has a place elsewhere"),
    "角田川": ("すみだがわ", "the river of Edo, as verse writes it; ENAMDICT has another"),
    "隅田": ("すみだ", "the river of Edo, as UniDic has it; ENAMDICT has a place in Kii"),
    "若州": ("じゃくしゅう", "Wakasa's short name, by sound; ENAMDICT has a place of today"),
    "向州": ("こうしゅう", "Hyuga's short name, by sound; ENAMDICT has a place of today"),
    "東濃": ("とうのう", "the east of Mino, by sound, as UniDic has it"),
    "北奥": ("ほくおう", "the north of Mutsu, by sound, as UniDic has it"),
}
# In the Chinese manner, or old names: in neither dictionary, by sound from memory.
CITIES_OF_NEITHER = frozenset(
    {"東都", "武江", "武都", "武府", "東府", "武城", "東叡山", "京", "京師"}
    | {"帝都", "皇京", "洛", "洛中", "洛下", "洛外", "洛西", "洛南", "平安城"}
    | {"浪", "摂陽", "浪城", "泉府", "赤間関", "雲藩", "熊府", "鹿府", "麑府"}
    | {"麑城", "尾府", "南都", "金府", "仙府", "仙城", "日本", "大日本", "大日本国"}
    | {"本朝", "日域", "皇国", "忍ヶ岡", "上京区", "下京区", "中京区", "左京区", "右京区"}
)


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


def test_places_agree_with_enamdict() -> None:
    differing = {
        written: kana.replace("|", "")
        for written, kana in hand_kept()
        if (listed := [each.replace("|", "") for each in known(written).place])
        and kana.replace("|", "") not in listed
    }
    differing.pop("上野")  # ENAMDICT spells the province こうづけ
    assert differing == {written: kana for written, (kana, _) in KEPT_BESIDE_ENAMDICT.items()}


def test_cities_that_neither_dictionary_has_are_known() -> None:
    cities = (row["written"] for row in tables.rows("cities"))
    assert {c for c in cities if not known(c).place and not place_names(c)} == CITIES_OF_NEITHER
