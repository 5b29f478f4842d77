"""What script a sign is of, and one sort of kana for the other: answered once, asked everywhere."""

from __future__ import annotations

_TO_HIRAGANA = {code: code - 0x60 for code in range(0x30A1, 0x30F7)}  # ヷ to ヺ have none
_TO_KATAKANA = {code: code + 0x60 for code in range(0x3041, 0x3097)}


def is_kana(sign: str) -> bool:
    """Whether ``sign`` is one hiragana or katakana letter, or the mark of a long vowel."""
    return "ぁ" <= sign <= "ゖ" or "ァ" <= sign <= "ヺ" or sign == "ー"


def is_kanji(sign: str) -> bool:
    """Whether ``sign`` is one Chinese character (compatibility and supplementary ones too)."""
    return "\u3400" <= sign <= "\u9fff" or "\uf900" <= sign <= "\ufaff" or sign >= "\U00020000"


def is_written(sign: str) -> bool:
    """Whether it is kana, kanji, a mark of repetition, or stands for what cannot be read."""
    return (
        sign in "□■"
        or "\u3005" <= sign <= "\u30ff"
        or "\u3400" <= sign <= "\u9fff"
        or "\uf900" <= sign <= "\ufaff"
        or "\U0001b000" <= sign <= "\U0003ffff"  # hentaigana, rare kanji
    )


def hiragana(text: str) -> str:
    """Return ``text`` with its katakana as hiragana; ``ー`` stays.

    >>> hiragana("ヤマザキ・ビール")
    'やまざき・びーる'
    """
    return text.translate(_TO_HIRAGANA)


def katakana(text: str) -> str:
    """Return ``text`` with its hiragana as katakana.

    >>> katakana("たへ也")
    'タヘ也'
    """
    return text.translate(_TO_KATAKANA)
