"""A line of words to a line of Latin letters: word division, capitals and hyphens (ALA-LC).

What the ALA-LC table says of modern Japanese is kept for the classical language: particles stand
apart (hana no iro wa); what bends a verb or adjective is joined to it, so auxiliaries and the
conjunctive particles that follow a verb's form, て ば ど つつ (utsurinikeri, mireba, furitsutsu).
Prefixes, and suffixes of one character, are joined; a place's rank stands after a hyphen. Which
particles are joined is the choice of this program: the table does not treat the old language.

>>> line = [KanaWord("はな", "名詞"), KanaWord("の", "助詞"), KanaWord("うつり", "動詞")]
>>> romanise([*line, KanaWord("に", "助動詞"), KanaWord("けり", "助動詞"), KanaWord("は", "助詞")])
'hana no utsurinikeri wa'
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.spelling.letters import Scheme, hepburn, iso3602

_PARTICLES_AS_SAID = {
    "は": "わ",
    "へ": "え",
    "を": "お",
    "には": "にわ",
    "とは": "とわ",
    "をば": "おば",
}
_MAY_FOLLOW_N = tuple("aiueoyāīūēōâîûêô")  # after ん, kept apart from it by an apostrophe
_DOUBLED = tuple("kgsztdnhbpmyrwfjv")
_LEANING = ("補助記号", "記号", "接尾辞", "助動詞")
_AFTER_WHICH_JOINED = ("動詞", "形容詞", "助動詞")


class KanaWord(NamedTuple):
    """A word to be romanised: current kana spelling and part of speech in UniDic's terms.

    The parts of the part of speech are joined by ``,`` or ``-``; ``kana`` may hold the ``|`` and
    ``ー`` of :mod:`inscribe.reading.spelling.letters`.
    """

    kana: str
    part_of_speech: str = ""


@tables.cached(16384)
def romanise_word(kana: str, part_of_speech: str = "", scheme: Scheme = "hepburn") -> str:
    """Return one word in Latin letters: particles as they are said, proper names with a capital.

    >>> romanise_word("は", "助詞-係助詞"), romanise_word("よしの", "名詞-固有名詞-地名")
    ('wa', 'Yoshino')
    >>> romanise_word("おもう", "動詞-一般")
    'omou'
    """
    verb = part_of_speech.startswith("動詞")
    if scheme == "iso3602":
        letters = iso3602(kana, verb=verb)
    else:
        particle = part_of_speech.startswith("助詞")
        letters = hepburn(_PARTICLES_AS_SAID.get(kana, kana) if particle else kana, verb=verb)
    return capital(letters) if "固有名詞" in part_of_speech else letters


def romanise(
    words: Iterable[KanaWord], *, sentence: bool = False, scheme: Scheme = "hepburn"
) -> str:
    """Return the words as one line, divided as :func:`separator` says.

    With ``sentence``, the line begins with a capital.
    """
    out: list[str] = []
    before: KanaWord | None = None
    for word in words:
        letters = romanise_word(word.kana, word.part_of_speech, scheme)
        if before is not None and letters:
            out.append(separator(before, word, scheme))
        if letters:
            out.append(letters)
            before = word
    line = "".join(out)
    return capital(line) if sentence else line


def separator(before: KanaWord, after: KanaWord, scheme: Scheme = "hepburn") -> str:
    """Return what stands between two words: a space, a hyphen, or nothing where they are joined.

    Joined words may need a letter there: a last っ doubles what follows, an apostrophe keeps ん.

    >>> separator(KanaWord("みれ", "動詞"), KanaWord("ば", "助詞,接続助詞"))
    ''
    >>> separator(KanaWord("おわり", "名詞,固有名詞,地名"), KanaWord("ぐん", "接尾辞,名詞的"))
    '-'
    >>> separator(KanaWord("いっ", "動詞"), KanaWord("た", "助動詞"))
    't'
    """
    division = _division(before, after)
    if division or before.kana[-1:] not in ("っ", "ッ", "ん", "ン"):
        return division
    letters = romanise_word(after.kana, after.part_of_speech, scheme)
    if before.kana[-1] in "んン":
        return "'" if letters[:1] in _MAY_FOLLOW_N else ""
    return "t" if letters.startswith("ch") else letters[:1] if letters[:1] in _DOUBLED else ""


@tables.cached()
def _dividers() -> tuple[frozenset[str], frozenset[str]]:
    """Return the particles joined to what bends, and the suffixes a hyphen divides from a name."""
    kinds: dict[str, set[str]] = {"joined": set(), "hyphen": set()}
    for row in tables.rows("word_division"):
        kinds[row["kind"]].add(row["kana"])
    return frozenset(kinds["joined"]), frozenset(kinds["hyphen"])


_OF_PERSONS = "人名"
_AFTER_PERSONS = frozenset(("さん", "さま", "どの", "くん"))  # 日光山 is one word, Nikkōsan


def _division(before: KanaWord, after: KanaWord) -> str:
    this, previous = after.part_of_speech, before.part_of_speech
    joined, hyphened = _dividers()
    if this.startswith(("補助記号", "記号")) or previous.startswith("接頭辞"):
        return ""
    if this.startswith("接尾辞"):
        named = _OF_PERSONS if after.kana in _AFTER_PERSONS else "固有名詞"
        return "-" if named in previous and after.kana in hyphened else ""
    if this.startswith("助動詞"):
        return "" if _bends(previous, before.kana) else " "
    if this.startswith("助詞") and after.kana in joined and "格助詞" not in this:
        return "" if previous.startswith(_AFTER_WHICH_JOINED) else " "
    if "数詞" in this and "数詞" in previous:
        return ""
    return " "


def stands_apart(word: KanaWord) -> bool:
    """Whether a space stands before a word after every word but a prefix.

    >>> stands_apart(KanaWord("はな", "名詞")), stands_apart(KanaWord("ば", "助詞,接続助詞"))
    (True, False)
    """
    kind = word.part_of_speech
    if kind.startswith(_LEANING) or "数詞" in kind:
        return False
    return not kind.startswith("助詞") or word.kana not in _dividers()[0] or "格助詞" in kind


def _bends(part_of_speech: str, kana: str) -> bool:
    if part_of_speech.startswith(_AFTER_WHICH_JOINED):
        return True
    return part_of_speech.startswith("助詞") and kana in _dividers()[0]


def capital(letters: str) -> str:
    """Return ``letters`` with its first letter a capital (``'`` and brackets are passed over).

    >>> capital("ōsaka"), capital("“aki”")
    ('Ōsaka', '“Aki”')
    """
    for position, letter in enumerate(letters):
        if letter.isalpha():
            return letters[:position] + letter.upper() + letters[position + 1 :]
    return letters
