"""Topics before a poem, and what stands alone as what is shown: 早春, 月前雁, 東大寺."""

from __future__ import annotations

import re
from collections.abc import Iterator

from inscribe.reading.names import known, place_names, places_of_verse, surnames
from inscribe.reading.passages.language import is_common_noun
from inscribe.reading.passages.roles import closing_of
from inscribe.reading.passages.titles import begins_formula
from inscribe.reading.spelling import KANA, is_kanji_only
from inscribe.reading.words import words_of

_LONGEST_TOPIC = 6
_TOPIC, _TOPIC_SIGN = 2.0, 0.6
_TOPIC_ALONE = 1.5  # 桜, before a poem on it
_SAID_TO_BE_A_POEM = 1.5  # 春日詠, 春日偶成
_PARTICLES = frozenset("をにのヲニノ")
_LONGEST_PLACE = 4
_LANDSCAPE = frozenset("川山浦野関橋沢峰嶺滝瀧原池島嶋浜崎海江")
_WHERE_OR_WHEN = frozenset("前中上下辺間外後夕朝夜暁")  # inside a topic: 月前雁, 雪中梅
_POEM_WORD = re.compile(
    "(?:詠|吟|作|偶成|偶作|偶感|偶詠|即事|即興|述懐|書懐|有感|口占|口号|雑詠|感懐)$"
)
_SHORTEST_LANDMARK = 3  # signs: 光寺, 大島 may as well be names
OF_A_PLACE = {  # 白河関 Shirakawa no seki
    "浦": "うら",
    "関": "せき",
    "里": "さと",
    "都": "みやこ",
    "渡": "わたり",
    "滝": "たき",
    "浜": "はま",
    "沼": "ぬま",
    "松": "まつ",
}
_CAPITAL = "都"
_ENDS_OF_LANDMARKS = frozenset("寺湖島嶋道")
_DISTRICTS = frozenset("郡区市県")


def ends_of_topics(plain: str) -> Iterator[int]:
    """Yield the offsets at which a topic may end that a sentence in Japanese follows at once."""
    found = KANA.search(plain)
    kanji = found.start() if found else 0
    goes_on = found is not None and found.group() in _PARTICLES
    for end in range(2, min(kanji - goes_on, _LONGEST_TOPIC) + 1):
        if topic_weight(plain[:end]) or place_weight(plain[:end]):
            yield end


def topic_weight(text: str) -> float:
    """Return the log odds that a first column of a few kanji is the topic of what follows.

    >>> topic_weight("早春") > 3, topic_weight("月前雁") > 3, topic_weight("綾国")
    (True, True, 0.0)
    """
    stem = _POEM_WORD.sub("", text)
    if len(stem) > 1 and stem != text and (weight := topic_weight(stem)):
        return weight + _SAID_TO_BE_A_POEM
    if not 2 <= len(text) <= _LONGEST_TOPIC or not is_kanji_only(text) or begins_formula(text):
        return 0.0
    if closing_of(text)[0] == "carved":  # 嶺暁作
        return 0.0
    if is_landmark(text):
        return _TOPIC + _TOPIC_SIGN * len(text)
    usual, words = _common_words(text)
    if usual and words < len(text):
        return _TOPIC + _TOPIC_SIGN * len(text)
    placed = len(text) > 2 and text[1] in _WHERE_OR_WHEN  # 月前雁, 雪中梅
    if placed and _common_words(text[0])[0] and _common_words(text[2:])[0]:
        return _TOPIC + _TOPIC_SIGN * len(text)
    return 0.0


def place_weight(text: str) -> float:
    """Return the log odds that a place, or one sign, before a poem is what the poem is of.

    >>> place_weight("龍田川") > 0, place_weight("須磨") > 0, place_weight("綾国")
    (True, True, 0.0)
    """
    if len(text) == 1 and is_kanji_only(text):
        return _TOPIC_ALONE * is_common_noun(text)
    if not 2 <= len(text) <= _LONGEST_PLACE or not is_kanji_only(text):
        return 0.0
    from inscribe.reading.mecab import unidic_words

    words = unidic_words(text)
    kinds = words[0].part_of_speech if len(words) == 1 and words[0].known else ""
    places = "地名" in kinds or kinds.endswith("姓")  # many families are named after places
    return _TOPIC * (places or (text[-1] in _LANDSCAPE and len(words) < len(text)))


def _common_words(text: str) -> tuple[bool, int]:
    """Return whether a text is made of common words, and of how many."""
    from inscribe.reading.mecab import unidic_words

    words = unidic_words(text)
    return all(w.known and "固有名詞" not in w.part_of_speech for w in words), len(words)


def is_landmark(text: str) -> bool:
    """Whether a text is a temple, lake, island or road, and nothing else: 東大寺, 東海道.

    ENAMDICT has them as places, and no list of families counts anybody so called. So with the
    places that poems sing of, and a shore, gate or village of a place: 竜田川, 白河関.

    >>> is_landmark("東大寺"), is_landmark("小野寺"), is_landmark("大島"), is_landmark("逢坂関")
    (True, False, False, True)
    """
    if len(text) < _SHORTEST_LANDMARK or surnames(text):
        return False
    if text in places_of_verse() or (text[-1] in OF_A_PLACE and _is_place(text)):
        return True
    return text[-1] in _ENDS_OF_LANDMARKS and bool(known(text).place)


def _is_place(text: str) -> bool:
    """Whether a text is a place and what is there: 白河関; 東京都 is no capital of old."""
    head = text[:-1]
    return head in places_of_verse() or (text[-1] != _CAPITAL and bool(place_names(head)))


def is_district(text: str) -> bool:
    """Whether a text is a district, ward, city or prefecture, and nobody's name: 多摩郡.

    >>> is_district("多摩郡"), is_district("綾摩郡"), is_district("古市")
    (True, False, False)
    """
    if len(text) < _SHORTEST_LANDMARK or text[-1] not in _DISTRICTS or surnames(text):
        return False
    return bool(place_names(text[:-1]) or known(text[:-1]).place)


def is_of_words(text: str) -> bool:
    """Whether a text is a place or an age and a word that is nobody's name: 江戸時代.

    >>> is_of_words("江戸時代"), is_of_words("江戸綾国")
    (True, False)
    """
    from inscribe.reading.mecab import unidic_words

    words = unidic_words(text) if is_kanji_only(text) else []
    if len(words) != 2 or not all(word.known for word in words):
        return False
    ahead, word = words
    named = known(word.written)
    own = {*named.surname, *named.given} - {word.kana}
    return (
        "固有名詞" in ahead.part_of_speech
        and word.part_of_speech.startswith("名詞-普通名詞")
        and word.origin == "漢"
        and word.length > 1
        and not own
        and not words_of(word.written)
    )
