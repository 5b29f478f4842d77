"""Numbers with the word that counts, as they are said: 五枚 gomai, 八世 hassei, 三本 sanbon.

>>> counted(8, "せい"), counted(15, "まい"), counted(3, "ほん"), counted(10, "かげつ")
('はっせい', 'じゅうごまい', 'さんぼん', 'じっかげつ')
"""

from __future__ import annotations

_DIGITS = ("", "いち", "に", "さん", "よん", "ご", "ろく", "しち", "はち", "く")
_UNITS = ((1000, "せん"), (100, "ひゃく"), (10, "じゅう"))
_CHANGED = {
    (3, "せん"): "さんぜん",
    (8, "せん"): "はっせん",
    (3, "ひゃく"): "さんびゃく",
    (6, "ひゃく"): "ろっぴゃく",
    (8, "ひゃく"): "はっぴゃく",
}
# Ends of numbers that become っ before a counter that begins with one of the kana.
_SHORTENED = {
    "いち": "かきくけこさしすせそたちつてとはひふへほ",
    "ろく": "かきくけこはひふへほ",
    "はち": "かきくけこさしすせそたちつてとはひふへほ",
    "じゅう": "かきくけこさしすせそたちつてとはひふへほ",
    "ひゃく": "かきくけこはひふへほ",
}
_STEMS = {"じゅう": "じっ"}
_TO_P = dict(zip("はひふへほ", "ぱぴぷぺぽ", strict=True))
_TO_B = dict(zip("はひふへほ", "ばびぶべぼ", strict=True))
_AFTER_N = ("さん", "せん")
_P_AFTER_N = ("ふく", "ふん")  # 三幅 sanpuku
# How counters want four, seven and nine said where it is not よん, しち and く.
_FOUR = {
    "ねん": "よ",
    "じ": "よ",
    "にん": "よ",
    "せい": "し",
    "い": "し",
    "き": "し",
    "とう": "よん",
}
_SEVEN = ("まい", "ほん", "こ", "かげつ", "かしょ", "てん", "さつ", "だん")
_NINE = (
    "まい",
    "ほん",
    "こ",
    "せい",
    "ばん",
    "かしょ",
    "てん",
    "さつ",
    "そう",
    "ふく",
    "く",
    "まく",
    "とう",
    "だん",
)


def said(number: int) -> str:
    """Return a number from 1 to 9999 in kana, as it stands by itself.

    >>> said(35), said(108)
    ('さんじゅうご', 'ひゃくはち')
    """
    kana = ""
    for unit, name in _UNITS:
        digit = number // unit % 10
        if digit:
            plain = (_DIGITS[digit] if digit > 1 else "") + name
            kana += _CHANGED.get((digit, name), plain)
    return kana + _DIGITS[number % 10]


def counted(number: int, counter: str) -> str:
    """Return a number with its counter, sounds changed where they meet."""
    kana = said(number)
    last = _DIGITS[number % 10]
    kana = kana.removesuffix(last) + _last_digit(number % 10, counter)
    for end, before in _SHORTENED.items():
        if kana.endswith(end) and counter[0] in before:
            stem = kana.removesuffix(end) + _STEMS.get(end, f"{end[:-1]}っ")
            return stem + _TO_P.get(counter[0], counter[0]) + counter[1:]
    if kana.endswith(_AFTER_N) and counter.startswith(_P_AFTER_N):
        return kana + _TO_P[counter[0]] + counter[1:]
    if kana.endswith(_AFTER_N) and counter[0] in _TO_B:
        return kana + _TO_B[counter[0]] + counter[1:]
    return kana + counter


def _last_digit(digit: int, counter: str) -> str:
    if digit == 4:
        return _FOUR.get(counter, _DIGITS[4])
    if digit == 7 and counter in _SEVEN:
        return "なな"
    if digit == 9 and counter in _NINE:
        return "きゅう"
    return _DIGITS[digit]
