"""What a person says is so: 浅霧軒=あさぎりけん, 4-5=みねあき, 29-34=signature:carved.

>>> settlement("浅霧軒=あさぎりけん")
Settlement(written='浅霧軒', signs=None, kana='あさぎりけん', is_name=False, kind=None, role=None)
>>> settlement("29-34=signature:carved")[1:]
((28, 33), '', False, 'signature', 'carved')
"""

from __future__ import annotations

import re
import unicodedata
from typing import NamedTuple, cast, get_args

from inscribe.errors import InputError
from inscribe.reading.words import Kind, Role

_SIGNS = re.compile(r"(\d{1,6})(?:-(\d{1,6}))?", re.ASCII)
_KANA = re.compile(r"[ぁ-ゖゝゞァ-ヺー]+")
_PASSAGE = re.compile(r"([a-z]+)(?::([a-z]+))?")
_HINT = "as in: 浅霧軒=あさぎりけん, 4-5=みねあき or 29-34=signature:carved"


class Settlement(NamedTuple):
    """Signs, by what is written or by number (from 0), and how they are read or what they are."""

    written: str
    signs: tuple[int, int] | None
    kana: str = ""
    is_name: bool = False
    kind: Kind | None = None
    role: Role | None = None

    @property
    def shown(self) -> str:
        """What is said, without the signs."""
        if self.kind is None:
            return self.kana
        return f"{self.kind}:{self.role}" if self.role else self.kind


def is_said(argument: str) -> bool:
    """Whether an argument of a command says something, and is no path."""
    return "=" in unicodedata.normalize("NFKC", argument)


def settlement(argument: str, *, names: bool = False) -> Settlement:
    """Return what an argument says; with ``names`` what it gives a reading for is a name.

    Raises:
        InputError: it cannot be understood.
    """
    written, _, value = argument.replace("＝", "=").partition("=")
    written, value = written.strip(), unicodedata.normalize("NFKC", value.strip())
    signs = _signs(unicodedata.normalize("NFKC", written))
    if not written or not value:
        raise InputError(f"{argument} does not say which signs are what", hint=_HINT)
    is_name = names or value.startswith("name:")
    kana = re.sub(r"[\s・]", "", value.removeprefix("name:"))
    if _KANA.fullmatch(kana):
        return Settlement(written, signs, kana, is_name)
    if found := _PASSAGE.fullmatch(value):
        return Settlement(written, signs, "", False, _kind(found[1]), _role(found[2]))
    hint = f"give kana, or what the passage is: {', '.join(get_args(Kind))}"
    raise InputError(f"{value} is neither a reading in kana nor a kind of passage", hint=hint)


def _signs(written: str) -> tuple[int, int] | None:
    found = _SIGNS.fullmatch(written)
    if found is None:
        return None
    first, last = int(found[1]), int(found[2] or found[1])
    if not 1 <= first <= last:
        raise InputError(f"{written} names no signs", hint=_HINT)
    return first - 1, last - 1


def _kind(given: str) -> Kind:
    if given not in get_args(Kind):
        hint = f"give kana, or one of {', '.join(get_args(Kind))}"
        raise InputError(f"{given} is no kind of passage", hint=hint)
    return cast("Kind", given)


def _role(given: str | None) -> Role | None:
    if given is not None and given not in get_args(Role):
        hint = f"use one of {', '.join(get_args(Role))}"
        raise InputError(f"{given} does not say what the person did", hint=hint)
    return cast("Role | None", given)
