"""What the persons did who are named, by their last verb, or by where their names stand."""

from __future__ import annotations

import re
from collections.abc import Sequence

from inscribe import tables
from inscribe.reading.passages.order import closing_words
from inscribe.reading.passages.stretches import PassageStretch
from inscribe.reading.words import Role, kanji_before_ending, words_of

_PICTURES = ("画", "絵")
_ENDED_IN_KANA = re.compile("[一-龠]{2}[ぁ-ゖァ-ヺ]{1,4}$|[一-龠][ぁ-ゖァ-ヺ]{1,4}$")  # 刻ス
_TEXTS = frozenset({"verse", "prose", "chinese"})
_VERB_AND_NAME = 3
_PEN_NAME = 3  # signs of a name that is no more than a pen name
_RANKS = ("卿", "朝臣", "法師", "上人", "禅師", "親王", "天皇", "大臣", "僧正", "院", "女王")


def with_roles(stretches: Sequence[PassageStretch], text: str) -> tuple[PassageStretch, ...]:
    """Return the stretches, each signing with what its person did."""
    found = []
    for at, stretch in enumerate(stretches):
        role = stretch.role
        if stretch.kind == "dedication":
            role = role or "ordered"
        elif stretch.kind == "signature" and role is None:
            role = _role_of_bare_name(stretches, at, text)
        found.append(stretch._replace(role=role))
    return tuple(found)


def _role_of_bare_name(stretches: Sequence[PassageStretch], at: int, text: str) -> Role:
    here = stretches[at]
    before = stretches[at - 1].kind if at else ""
    after = stretches[at + 1 :]
    name = text[here.first : here.end]
    signed_after = any(each.kind == "signature" for each in after)
    if before == "verse" and (name.endswith(_RANKS) or len(name) <= _PEN_NAME):
        return "composed"
    if before == "verse" and signed_after:
        return "composed"
    if not at and after and after[0].kind == "verse" and len(name) <= _PEN_NAME + 1:
        return "composed"
    if before in _TEXTS and signed_after:
        return "composed" if before == "chinese" else "wrote"
    if before in _TEXTS and len(name) <= _PEN_NAME:
        return "wrote"
    return "carved"


def closing_of(plain: str) -> tuple[Role | None, str]:
    """Return what the last verb says its person did, and the verb where it stands last.

    >>> closing_of("楓溪画"), closing_of("依楓溪画")  # who drew it; a picture that was copied
    (('wrote', '画'), (None, ''))
    """
    if plain[-1:] in _PICTURES and any(word.family == "model" for word in words_of(plain[0])):
        return None, ""
    if (found := _closing_pattern().search(plain)) and found.start():
        return closing_words()[found[1]], found[1]
    if ended := _ENDED_IN_KANA.search(plain):
        for at in (ended.start(), ended.start() + 1):
            verb = plain[at:]
            kanji = kanji_before_ending(verb)
            if kanji in closing_words() and any(word.kind == "verb" for word in words_of(verb)):
                return closing_words()[kanji], verb
    if len(plain) > _VERB_AND_NAME and any(word.kind == "verb" for word in words_of(plain[-2:])):
        return "carved", plain[-2:]  # 監修, 考案
    inside = [word for word in closing_words() if f"{word}之" in plain]
    return (closing_words()[max(inside, key=len)], "") if inside else (None, "")


@tables.cached()
def _closing_pattern() -> re.Pattern[str]:
    words = "|".join(sorted(map(re.escape, closing_words()), key=len, reverse=True))
    return re.compile(f"({words})之?$")
