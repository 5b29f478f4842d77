"""What speaks for Chinese: known sayings, lines of four, five or seven signs, its grammar."""

from __future__ import annotations

from inscribe import tables
from inscribe.reading.chinese import has_marks, without_marks
from inscribe.reading.passages.order import closing_words, ranks
from inscribe.reading.passages.sayings import is_known_saying, is_parallel, known_lengths
from inscribe.reading.passages.titles import begins_formula
from inscribe.reading.spelling import is_kanji_only
from inscribe.reading.words import MARK

_SAYING = 5.0
_SAYING_SIGN = 2.2
_SHORT_SAYING = {1: 1.0, 2: 4.0, 3: 8.0}
_LONG_SAYING = 4
_COMMON_SIGN, _RARE_SIGN = 0.7, -0.8
_COMMON = 2500  # signs that are commonest in print
_POEMS = {10: 3.0, 14: 3.0, 20: 4.0, 28: 4.0, 40: 3.0, 56: 3.0}  # five or seven signs a line
_LINES = {4: -3.0, 5: -2.0, 7: -1.5, 8: -1.2, 12: -1.5, 16: -1.0}
_NO_LINES = -6.0
_IN_COLUMNS, _OUT_OF_COLUMNS = 1.5, 1.5  # columns that end where lines end, or nowhere there
_GRAMMAR = frozenset("不無有在如而者所可欲何未莫乎哉兮亦則非勿自是以於")
_GRAMMAR_SIGN, _GRAMMAR_MOST = 0.7, 2.8
_COMPOUND_SIGN = 0.35
_COMPOUNDS_ALONE = 3.0
_UNKNOWN_LINE = 1.5
_WORN = 0.7
_RETURN_MARKS = 6.0  # who writes them marks the order in which Chinese is said
_LEAST, _LEAST_SAID = 3, 2  # signs; with return marks, or after 勿
_FORBIDDING = ("勿", "莫")
_LIKE_A_SIGNING = 3.5
_FORMULAS = (
    *("県", "町", "郡"),
    *("行年", "住", "謹", "入道", "衛門", "応需"),
    *("門人", "末孫", "之流", "之内", "地鉄", "地金", "彫物"),
    *("氏需", "氏好", "君需", "君好", "之需"),
)
_PARALLEL = 6.0
_PICTURED = frozenset("図画絵意風")
_LONGEST = 56
_COUPLET = 10  # signs: two lines of five, or the signings of two persons


def chinese_weight(text: str, breaks: frozenset[int]) -> tuple[float, str]:
    """Return the log odds that a stretch is Chinese, and the reason; 0 where it is none.

    >>> chinese_weight("林間煖酒焼紅葉石上題詩掃緑苔", frozenset())[0] > 8
    True
    """
    plain = without_marks(MARK.sub("", text))
    if is_known_saying(plain):
        known = _SAYING + _SAYING_SIGN * len(plain)
        return _SHORT_SAYING.get(len(plain), known), "a saying that is known"
    legible = plain.replace("□", "")
    least = _LEAST_SAID if has_marks(text) or plain[:1] in _FORBIDDING else _LEAST
    if not least <= len(plain) <= _LONGEST or not is_kanji_only(legible):
        return 0.0, ""
    weight = _of_known_lines(plain) or _of_saying_continued(plain)
    weight = weight or _of_signs(plain) + _of_lines(plain, breaks)
    weight += min(_GRAMMAR_MOST, _GRAMMAR_SIGN * sum(sign in _GRAMMAR for sign in plain))
    compounded = _in_compounds(plain)
    weight += _COMPOUND_SIGN * compounded + _COMPOUNDS_ALONE * (compounded == len(plain))
    weight += _RETURN_MARKS * has_marks(text) + _PARALLEL * is_parallel(plain)
    weight -= _WORN * (len(plain) - len(legible)) + _LIKE_A_SIGNING * _formulas_in(plain, breaks)
    return weight, "kanji alone, in lines of Chinese"


def _of_signs(plain: str) -> float:
    return sum(_of_sign(sign) for sign in plain if sign != "□")


def _of_known_lines(plain: str) -> float:
    """Return what the signs of a poem weigh some of whose lines are known; 0 where none is."""
    for line in (5, 7) if len(plain) in _POEMS else ():
        if len(plain) % line == 0:
            lines = [plain[at : at + line] for at in range(0, len(plain), line)]
            known = [each for each in lines if is_known_saying(each)]
            if known:
                others = [each for each in lines if each not in known]
                weight = _SAYING + _SAYING_SIGN * line * len(known)
                return weight + sum(map(_of_signs, others)) - _UNKNOWN_LINE * len(others)
    return 0.0


def _of_saying_continued(plain: str) -> float:
    """Return what a known saying weighs after which Chinese goes on: 百戦百勝不如一忍; else 0."""
    known = max(known_lengths(plain, 0), default=0)
    rest = plain[known:]
    if known < _LONG_SAYING or _GRAMMAR.isdisjoint(rest):
        return 0.0
    return _SAYING + _SAYING_SIGN * known + _of_signs(rest) - _UNKNOWN_LINE


@tables.cached(2048)
def _of_sign(sign: str) -> float:
    """Return what a sign of Chinese verse weighs by how common it is in print."""
    row = _characters().first_about(sign)
    is_common = row is not None and row["rank"] and int(row["rank"]) <= _COMMON
    return _COMMON_SIGN if is_common else _RARE_SIGN


@tables.cached()
def _characters() -> tables.Search:
    return tables.Search("characters")


def _of_lines(plain: str, breaks: frozenset[int]) -> float:
    if weight := _POEMS.get(len(plain)):
        line = 7 if len(plain) % 7 == 0 else 5
        at_lines = breaks and all(at % line == 0 for at in breaks)
        if at_lines or not breaks:
            return weight + _IN_COLUMNS * bool(at_lines)
        return weight - _OUT_OF_COLUMNS * all(at % line for at in breaks)
    weight = _LINES.get(len(plain), _NO_LINES)
    if len(plain) in (8, 16) and breaks and all(at % 2 == 0 for at in breaks):
        weight += _IN_COLUMNS
    return weight


def _formulas_in(plain: str, breaks: frozenset[int]) -> int:
    """Return how many words of signings there are."""
    words = tuple(closing_words())
    ends = {*breaks, len(plain)}
    if len(plain) == _COUPLET and plain[: _COUPLET // 2].endswith(words):
        ends.add(_COUPLET // 2)  # 釘宮鞆永作鵜殿磯棟彫
    closed = sum(plain[:end].removesuffix("之").endswith(words) for end in ends)
    closed += any(rank in plain for rank in ranks())
    inside = sum(len(word) == 1 and f"{word}之" in plain for word in words) if "之" in plain else 0
    formula = begins_formula(plain) and plain[-1] in _PICTURED  # 依某画, 模某図, 依某筆意
    return closed + inside + formula + sum(word in plain for word in _FORMULAS)


def _in_compounds(plain: str) -> int:
    """Return how many signs stand in compounds of Chinese origin that the dictionary has."""
    from inscribe.reading.mecab import unidic_words

    return sum(
        word.length
        for word in unidic_words(plain)
        if word.length > 1
        and word.known
        and word.origin == "漢"
        and "人名" not in word.part_of_speech
    )
