"""The words of classical verse, drawn from the installed UniDic and from the glossary.

UniDic knows modern Japanese; verse before 1900 has its own words and its own grammar. So the
native words of UniDic are kept with their costs, its verbs and adjectives are conjugated again
in the classical way, words of Chinese origin are made less likely, words that verse never has
(modern particles, loan words, personal names) are left out, and the glossary is added.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from inscribe.reading import unidic
from inscribe.reading.entries import Entry
from inscribe.reading.paradigms import classical, inflections
from inscribe.reading.romanise import hiragana

_LEFT_OUT_FORMS = re.compile("意志推量形|融合|撥音便|促音便|ザンス|ザマス|ンス")
_MODERN = re.compile("五段|下一段|上一段|サ行変格|カ行変格|形容詞|無変化型|助動詞")
_NOT_IN_VERSE = re.compile("[ッーパピプペポァィゥェォ]")
_ORIGIN_COST = {"和": 0, "混": 1500, "漢": 3500, "固": 2500}
_POS_COST = {"感動詞": 2500, "接尾辞": 1500, "接頭辞": 1000, "接続詞": 1500, "連体詞": 500}


def wanted_class(row: tuple[str, ...]) -> bool:
    """Whether words of this class of UniDic are used, as they are or conjugated anew."""
    pos, _, third, _, conjugation, form, *_, origin = row
    if pos in ("記号", "補助記号", "空白", "助詞", "助動詞") or origin not in _ORIGIN_COST:
        return False
    if origin == "固":
        return third == "地名"
    if conjugation.startswith("文語"):
        return not _LEFT_OUT_FORMS.search(f"{form} {conjugation}")
    if pos in ("動詞", "形容詞"):
        return form == "連用形-一般" and origin != "漢"
    return not _MODERN.match(conjugation)


class ClassIndex:
    """Finds the connection class for a part of speech, conjugation and form."""

    def __init__(self, classes: unidic.Classes) -> None:
        self._found: dict[tuple[str, ...], int] = {}
        for number, row in enumerate(classes.rows):
            if row[8] in ("和", "固"):
                self._found.setdefault((*row[:6], row[6]), number)

    def number(self, pos: str, conjugation: str, form: str, written: str = "*") -> int | None:
        """Return the class of a word, the class of its very spelling where UniDic has one."""
        parts = (pos.split("-") + ["*"] * 4)[:4]
        for spelling in (written, "*"):
            found = self._found.get((*parts, conjugation, form, spelling))
            if found is not None:
                return found
        return None


def unidic_entries(words: Iterable[unidic.Word], index: ClassIndex) -> Iterator[Entry]:
    """Yield entries of verse from UniDic's words."""
    for word in words:
        fields = word.fields
        pos = fields[0]
        conjugation = fields[4]
        if fields[12] != "漢" and _NOT_IN_VERSE.search(fields[19]):
            continue
        if pos in ("動詞", "形容詞") and not conjugation.startswith("文語"):
            yield from _conjugated(word, index)
            continue
        extra = _ORIGIN_COST[fields[12]] + _POS_COST.get(pos, 0)
        yield Entry(
            word.surface,
            word.connection,
            word.cost + extra,
            hiragana(fields[19]),
            "-".join(part for part in fields[:4] if part != "*"),
            conjugation,
            fields[5],
            fields[7],
            fields[12],
        )


def _conjugated(word: unidic.Word, index: ClassIndex) -> Iterator[Entry]:
    fields = word.fields
    base, base_kana = fields[10], hiragana(fields[20])
    if fields[0] == "形容詞":
        yield from _adjective(word, base, base_kana, index)
        return
    if fields[6][-1:] != fields[20][-1:] or fields[6][-2:-1] not in fields[20][-2:]:
        return  # the potential of another verb (書ける beside 書く), unknown to classical grammar
    for conjugation in classical(fields[4], fields[20]):
        cut = 1 if fields[4].startswith("五段") else 2
        if base[-1:] != base_kana[-1:]:
            continue
        swallowed = base[-cut:] != base_kana[-cut:]  # 寝る: the kanji holds the ending's first kana
        stem = base[: len(base) - (1 if swallowed else cut)]
        kana = base_kana[: len(base_kana) - cut]
        for entry in conjugate(
            "" if swallowed else stem,
            kana,
            conjugation,
            word.cost,
            fields[1],
            fields[7],
            fields[12],
            index,
        ):
            yield entry._replace(written=stem + entry.written[1:]) if swallowed else entry


def _adjective(word: unidic.Word, base: str, base_kana: str, index: ClassIndex) -> Iterator[Entry]:
    if not base.endswith("い"):
        return
    fields = word.fields
    stem, kana = base[:-1], base_kana[:-1]
    conjugation = "文語形容詞-ク"
    if kana.endswith("し") and len(kana) > 1:
        if not stem.endswith("し"):
            return
        conjugation, stem, kana = "文語形容詞-シク", stem[:-1], kana[:-1]
    yield from conjugate(
        stem, kana, conjugation, word.cost, fields[1], fields[7], fields[12], index
    )


def conjugate(
    stem: str,
    kana: str,
    conjugation: str,
    cost: int,
    kind: str,
    lemma: str,
    origin: str,
    index: ClassIndex,
    gloss: str = "",
) -> Iterator[Entry]:
    """Yield every form of a verb or adjective from its written stem and the stem's kana."""
    adjective = "形容詞" in conjugation
    pos = f"形容詞-{kind}" if adjective else f"動詞-{kind}"
    full = conjugation if conjugation.startswith("文語") else f"文語{conjugation}"
    for form, written, modern, more in inflections(conjugation):
        number, said_pos = _class_of(index, pos, full, form)
        if number is None or not stem + written:
            continue
        yield Entry(
            stem + written,
            number,
            cost + more + _ORIGIN_COST.get(origin, 0),
            kana + modern,
            said_pos,
            full,
            form,
            lemma,
            origin,
            gloss,
        )


_STANDS_FOR = {"ミ語法": "名詞-普通名詞-副詞可能", "サ語法": "名詞-普通名詞-一般"}


def _class_of(index: ClassIndex, pos: str, conjugation: str, form: str) -> tuple[int | None, str]:
    if form in _STANDS_FOR:
        return index.number(_STANDS_FOR[form], "*", "*"), _STANDS_FOR[form]
    row = conjugation.partition("-")[2]
    fallbacks = [(pos, conjugation, form), (pos.split("-")[0] + "-一般", conjugation, form)]
    if form == "ク語法":
        fallbacks += [("名詞-普通名詞-一般", "*", "*")]
    if row:  # a row of kana UniDic has no such class for: the class of the ラ row behaves alike
        fallbacks.append((pos.split("-")[0] + "-一般", conjugation.replace(row, "ラ行"), form))
    fallbacks.append((pos.split("-")[0] + "-一般", "文語形容詞-ク", form))
    for candidate in fallbacks:
        if (number := index.number(*candidate)) is not None:
            return number, pos
    return None, pos
