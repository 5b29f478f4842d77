"""Classical conjugation: every form of a verb or adjective from its stem.

The endings are in ``paradigms.tsv``; this module lays them on the verb's row of kana.

>>> [(i.form, i.written, i.modern) for i in inflections("四段-ハ行")][:3]
[('未然形-一般', 'は', 'わ'), ('連用形-一般', 'ひ', 'い'), ('終止形-一般', 'ふ', 'う')]
>>> classical("下一段-カ行", "ウケル"), classical("五段-ワア行", "オモウ")
(('下二段-カ行',), ('四段-ハ行',))
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables

_VOWELS = "AIUEO"
_ROWS = {
    "ア": "あいうえお",
    "カ": "かきくけこ",
    "ガ": "がぎぐげご",
    "サ": "さしすせそ",
    "ザ": "ざじずぜぞ",
    "タ": "たちつてと",
    "ダ": "だぢづでど",
    "ナ": "なにぬねの",
    "ハ": "はひふへほ",
    "バ": "ばびぶべぼ",
    "マ": "まみむめも",
    "ヤ": "やいゆえよ",
    "ラ": "らりるれろ",
    "ワ": "わゐうゑを",
}
_SPOKEN = str.maketrans("はひふへほゐゑをぢづ", "わいうえおいえおじず")
AT_START = str.maketrans("ゐゑをぢづ", "いえおじず")  # は ひ ふ へ ほ keep their sound there
_WHOLE_CLASSES = {"カ行変格": "カ", "サ行変格": "サ", "ナ行変格": "ナ", "ラ行変格": "ラ"}

_CLASSES = {
    "四段": "四段",
    "上一": "上一段",
    "上二": "上二段",
    "下一": "下一段",
    "下二": "下二段",
    "カ変": "カ行変格",
    "サ変": "サ行変格",
    "ナ変": "ナ行変格",
    "ラ変": "ラ行変格",
    "シク": "形容詞-シク",
    "ク": "形容詞-ク",
    "ク接尾": "形容詞-ク",
}


class Inflection(NamedTuple):
    """One form: its name, its ending as written and in current kana, its cost beside the others."""

    form: str
    written: str
    modern: str
    cost: int


@tables.cached()
def _endings() -> dict[str, list[tuple[str, str, int]]]:
    endings: dict[str, list[tuple[str, str, int]]] = {}
    for row in tables.rows("paradigms"):
        ending = (row["form"], row["ending"], int(row["cost"]))
        endings.setdefault(row["class"], []).append(ending)
    return endings


@tables.cached()
def inflections(conjugation: str) -> tuple[Inflection, ...]:
    """Return the forms of a class such as 四段-ハ行 or シク; empty for an unknown class."""
    name, _, row = conjugation.removeprefix("文語").partition("-")
    if name == "形容詞":
        name, row = row, ""
    kana = _ROWS.get(_WHOLE_CLASSES.get(name, row[:1]), "")
    found = []
    endings = _endings()
    for form, ending, cost in [*endings.get(name, ()), *endings.get(f"{name}-{row}", ())]:
        written = "".join(kana[_VOWELS.index(sign)] if sign in _VOWELS else sign for sign in ending)
        first = written[:1].translate(_SPOKEN) if kana else written[:1]
        if form.endswith("促音便"):
            first = "っ"  # 打つて: utte
        found.append(Inflection(form, written, first + written[1:], cost))
    return tuple(found)


@tables.cached()
def classical(conjugation: str, base: str) -> tuple[str, ...]:
    """Return the classical classes a verb of a modern class may have had.

    ``base`` is the dictionary form in katakana. Several are returned where the modern form no
    longer tells (絶える was a verb of the ヤ row, 与える of the ハ row); spelling will tell.
    """
    name, _, row = conjugation.partition("-")
    if name == "五段":
        if row.startswith("ナ"):
            return ("ナ行変格",)
        return ("四段-ハ行",) if row.startswith("ワ") else (f"四段-{row}",)
    if name == "下一段":
        if row.startswith("ア"):
            return ("下二段-ヤ行", "下二段-ハ行", "下二段-ワ行")
        return (f"下二段-{row}",)
    if name == "上一段":
        return _upper_classes(row, base)
    return (name,) if name in _WHOLE_CLASSES else ()


def _upper_classes(row: str, base: str) -> tuple[str, ...]:
    single = len(base) == 2 or base.endswith(("ミル", "ニル"))
    if row.startswith("ア"):
        return ("上一段-ワ行", "上一段-ヤ行") if single else ("上二段-ヤ行", "上二段-ハ行")
    return (f"上一段-{row}",) if single else (f"上二段-{row}",)


def conjugation_named(name: str) -> str:
    """Return the conjugation of a class as the tables name it; empty where there is none.

    >>> conjugation_named("下二ラ"), conjugation_named("シク")
    ('下二段-ラ行', '形容詞-シク')
    """
    kind = _CLASSES.get(name) or _CLASSES.get(name[:2], "")
    return f"{kind}-{name[2:]}行" if kind and name[:2] in _CLASSES and len(name) == 3 else kind
