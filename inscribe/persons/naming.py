"""Where an inscription bears a name of the user's list, in any form of its signs.

Names are looked for in the passages in which persons are named (signatures, dedications, headings,
seals); a poem, or prose, may itself be nothing but a name. Signs are compared in current forms, so
that 嶺曉 is 嶺暁, and a sign that cannot be read may be any.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from inscribe import tables
from inscribe.persons.listing import people
from inscribe.persons.model import ListedPerson
from inscribe.reading.names import ListedForm
from inscribe.reading.spelling import hiragana
from inscribe.reading.words import Passage, Token

_OF_TEXT = frozenset({"verse", "prose", "chinese"})
_UNREAD = "□"
_LONGEST = 12  # signs of a name
_LEAST_IN_PART = 2  # signs of a name that may be a part of a longer word
_BETWEEN = 3  # signs that may stand between two names of one person, as a title does
NAMES = frozenset({"surname", "clan", "common_name", "art_name", "name"})  # sorts of tokens

Kept = tuple[ListedPerson, ListedForm]


class SignOfWord(NamedTuple):
    """A character in current forms, the sign it came from, and what word it is of."""

    text: str
    first: int
    last: int
    begins: bool
    ends: bool
    sort: str  # of its word


class Naming(NamedTuple):
    """A stretch of a passage that is written as names of one person are.

    ``how`` are keys of the table of evidence: of the forms, and of how well they fit.
    """

    person: ListedPerson
    passage: Passage
    first: int  # offsets in the signs of the passage, both included
    last: int
    forms: tuple[ListedForm, ...]
    how: tuple[str, ...]


def signs_of_passage(passage: Passage) -> list[SignOfWord]:
    """Return the characters of a passage as read first, in the order of the metal."""
    found: list[SignOfWord] = []
    for token in sorted(passage.proposals[0].tokens, key=lambda token: token.first):
        found += _signs_of(token)
    return found


def _signs_of(token: Token) -> Iterator[SignOfWord]:
    text = hiragana(token.normalised)
    one_by_one = len(text) == token.last - token.first + 1
    for at, char in enumerate(text):
        first, last = (token.first + at,) * 2 if one_by_one else (token.first, token.last)
        yield SignOfWord(char, first, last, at == 0, at == len(text) - 1, token.part_of_speech)


def namings(passage: Passage, signs: Sequence[SignOfWord]) -> list[Naming]:
    """Return the stretches of a passage that persons of the list are named by."""
    by_person: dict[str, list[Naming]] = {}
    for found in _forms_at(passage, signs):
        by_person.setdefault(found.person.id, []).append(found)
    joined = [n for some in by_person.values() for n in _joined(some)]
    return [each for each in joined if not _is_of_another(each, signs)]


def _forms_at(passage: Passage, signs: Sequence[SignOfWord]) -> Iterator[Naming]:
    """Yield each form of the list that stands in a passage."""
    text = "".join(sign.text for sign in signs)
    for first in range(len(text)):
        for end in range(first + 1, min(first + _LONGEST, len(text)) + 1):
            if passage.kind in _OF_TEXT and end - first < len(text):
                continue
            fits = signs[first].begins and signs[end - 1].ends
            if not fits and end - first < _LEAST_IN_PART:
                continue
            how = () if fits else ("part-form",)
            for person, form, unread in _listed_as(text[first:end]):
                keys = (*how, *(("unread-form",) if unread else ()))
                yield Naming(person, passage, first, end - 1, (form,), (form.kind, *keys))


def _listed_as(text: str) -> Iterator[tuple[ListedPerson, ListedForm, bool]]:
    """Yield whom a text names as it is written, and whether a sign of it cannot be read."""
    unread = text.count(_UNREAD)
    if not unread:
        for person, form in _by_form().get(text, ()):
            yield person, form, False
    elif unread == 1 and len(text) > 1:
        before, _, after = text.partition(_UNREAD)
        for written, kept in _by_form().items():
            if len(written) == len(text) and written.startswith(before) and written.endswith(after):
                for person, form in kept:
                    yield person, form, True


@tables.cached()
def _by_form() -> dict[str, tuple[Kept, ...]]:
    found: dict[str, list[Kept]] = {}
    for person in people().values():
        for form in person.forms:
            found.setdefault(hiragana(form.written), []).append((person, form))
    return {written: tuple(kept) for written, kept in found.items()}


def _joined(found: Iterable[Naming]) -> list[Naming]:
    """Return the names of one person with those joined that stand side by side.

    Of names that lie one in the other the longer is kept.
    """
    made: list[Naming] = []
    for each in sorted(found, key=lambda n: (n.first, -n.last, len(n.how))):
        before = made[-1] if made else None
        if before and each.last <= before.last:
            continue
        if before and before.last < each.first <= before.last + 1 + _BETWEEN:
            forms, how = (*before.forms, *each.forms), (*before.how, *each.how)
            made[-1] = before._replace(last=each.last, forms=forms, how=how)
        else:
            made.append(each)
    return made


def _is_of_another(found: Naming, signs: Sequence[SignOfWord]) -> bool:
    """Whether a surname alone has another's name after it: 田中綾国 names no 田中露岳."""
    if any(form.kind != "surname" for form in found.forms):
        return False
    return found.last + 1 < len(signs) and signs[found.last + 1].sort in NAMES


def other_surname(found: Naming, signs: Sequence[SignOfWord]) -> str:
    """Return the surname before a name that is none of the person's; nothing if there is none."""
    own = {form.written for form in found.person.forms if form.kind == "surname"}
    end = found.first
    if not own or not end or signs[end - 1].sort != "surname":
        return ""
    first = end - 1
    while first and signs[first - 1].sort == "surname" and not signs[first].begins:
        first -= 1
    text = "".join(sign.text for sign in signs[first:end])
    return "" if text in own else text
