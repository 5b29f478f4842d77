"""Readings in which what was restored is told apart from what is read, in kana and in letters.

A reading of the filled text is shown twice: with brackets around what stands in a worn place
(``[gyō]nen``), and, for what can be read alone, with three points there.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import replace

from inscribe.forms import UNREAD
from inscribe.reading.words import Proposal, SignaturePart, Token
from inscribe.restoring.sign_shares import kana_of_signs, letters_of_signs

Mark = Callable[[str], str]

POINTS = "…"


def in_brackets(said: str) -> str:
    """Return what is said in brackets, the space or hyphen before it outside.

    >>> in_brackets(" no toshi"), in_brackets("-saru")
    (' [no toshi]', '-[saru]')
    """
    bare = said.lstrip(" -'")
    return f"{said[: len(said) - len(bare)]}[{bare}]"


def left_open(said: str) -> str:
    """Return three points for what is said, the space or hyphen before it kept."""
    return said[: len(said) - len(said.lstrip(" -'"))] + POINTS


def marked_proposal(
    proposal: Proposal, worn: Collection[int], carved: Sequence[str], mark: Mark
) -> Proposal:
    """Return a reading of a filled text with ``mark`` put on what the worn signs say.

    ``carved`` are the signs as they stand on the object, by index.
    """
    tokens: list[Token] = []
    romaji, position = proposal.romaji, 0
    for token in proposal.tokens:
        new = _marked_token(token, worn, carved, mark)
        tokens.append(new)
        at = romaji.lower().find(token.romaji.lower(), position) if token.romaji else -1
        if at < 0:
            continue
        end = at + len(token.romaji)
        said = romaji[at:end] if new.romaji == token.romaji else new.romaji
        romaji = romaji[:at] + said + romaji[end:]
        position = at + len(said)
    return replace(proposal, tokens=tuple(tokens), romaji=romaji)


def marked_part(
    part: SignaturePart, worn: Collection[int], carved: Sequence[str], mark: Mark
) -> SignaturePart:
    """Return a part of a signature with ``mark`` put on what its worn signs say."""
    if not any(part.first <= sign <= part.last for sign in worn):
        return part
    text = "".join(carved[part.first : part.last + 1])
    kana, romaji = _marked(part.text, part.kana, part.romaji, part.first, worn, mark)
    return part._replace(text=text, kana=kana, romaji=romaji, alternatives=())


def _marked_token(token: Token, worn: Collection[int], carved: Sequence[str], mark: Mark) -> Token:
    if not any(token.first <= sign <= token.last for sign in worn):
        return token
    kana, romaji = _marked(token.normalised, token.kana, token.romaji, token.first, worn, mark)
    surface = "".join(carved[token.first : token.last + 1])
    normalised = left_unread(token.normalised, surface, token.first, worn)
    return replace(
        token, surface=surface, normalised=normalised, kana=kana, romaji=romaji, modern="", gloss=""
    )


def left_unread(normalised: str, surface: str, first: int, worn: Collection[int]) -> str:
    """Return signs in current forms, □ for the worn ones; as carved where they do not answer.

    >>> left_unread("紅葉", "□葉", 7, {7}), left_unread("色々", "色□々", 7, {8})
    ('□葉', '色□々')
    """
    if len(normalised) != len(surface):
        return surface
    return "".join(UNREAD if first + at in worn else sign for at, sign in enumerate(normalised))


def _marked(
    signs: str, kana: str, romaji: str, first: int, worn: Collection[int], mark: Mark
) -> tuple[str, str]:
    """Return kana and letters, marked where they are a worn sign's; the words of it if in doubt."""
    if len(signs) == 1:
        return mark(kana), mark(romaji)
    parts = kana_of_signs(signs, kana)
    here = [first + at in worn for at in range(len(parts))]
    letters = letters_of_signs(romaji, parts)
    if letters:
        return _joined(parts, here, mark), _joined(letters, here, mark)
    return _joined(parts, here, mark), _words_marked(parts, here, romaji, mark)


def _words_marked(parts: Sequence[str], worn: Sequence[bool], romaji: str, mark: Mark) -> str:
    """Return letters with each word marked in which a worn sign is; all of them if in doubt."""
    words = romaji.split(" ")
    number, spaced = [], 0
    for part in parts:
        number.append(spaced + (part != part.lstrip()))
        spaced += part.count(" ")
    if not parts or spaced + 1 != len(words):
        return mark(romaji)
    marked = {at for at, here in zip(number, worn, strict=True) if here}
    return " ".join(mark(word) if at in marked else word for at, word in enumerate(words))


def _joined(parts: Sequence[str], worn: Sequence[bool], mark: Mark) -> str:
    return "".join(
        mark(part) if here and part else part for part, here in zip(parts, worn, strict=True)
    )
