"""Current forms that were typed where an older one may be carved: a remark, no suspicion.

>>> from inscribe.notation import parse
>>> old_forms(parse("国の花").signs)
(('国', ('國',)),)
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from inscribe import forms
from inscribe.notation import written_out
from inscribe.signs import Sign


def old_forms(signs: Sequence[Sign]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return each sign in a current form with the old forms that it stands for, each once."""
    legible = dict.fromkeys(sign.text for sign in signs if sign.is_legible)
    return tuple((text, old) for text in legible if (old := tuple(_older(text))))


def _older(text: str) -> Iterator[str]:
    for other, relation in forms.related(text).items():
        if relation.kind == "old form" and forms.normalise_text(other).text == text:
            yield written_out(other)
