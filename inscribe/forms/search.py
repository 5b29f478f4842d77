"""Find characters one cannot type: by their parts, a reading, the number of strokes.

>>> found(parts=["舟", "公"])
('舩',)
>>> found(reading="ふね", strokes=(10, 10))
('舩',)
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.forms import characters
from inscribe.forms.characters import Readings
from inscribe.forms.components import built_of
from inscribe.forms.relations import related
from inscribe.forms.steps import COMPATIBILITY, OLD_FORM, VARIANT, steps


def found(
    parts: Sequence[str] = (), reading: str = "", strokes: tuple[int, int] | None = None
) -> tuple[str, ...]:
    """Return the characters that meet every condition given, the likeliest first.

    ``strokes`` are the fewest and the most. Old and variant forms are found as the forms they
    are: by their own parts and strokes, and by the readings of their current form.

    Raises:
        TableError: a glossary table cannot be used.
    """
    answers: list[tuple[str, ...]] = []
    if parts:
        answers.append(built_of(parts, {part: _forms(part) for part in parts}))
    if reading:
        answers.append(_read_so(reading))
    if strokes:
        answers.append(characters.with_strokes(*strokes))
    if not answers:
        return ()
    first, *others = answers
    kept = [set(answer) for answer in others]
    return tuple(char for char in first if all(char in answer for answer in kept))


def _forms(part: str) -> set[str]:
    """Return the other forms in which a part may stand: 壽 for 寿."""
    kinds = (OLD_FORM, VARIANT, COMPATIBILITY)
    return {other for other, relation in related(part).items() if relation.kind in kinds}


def _read_so(reading: str) -> tuple[str, ...]:
    """Return hentaigana of that sound, kanji of that reading, then their forms without readings."""
    kanji = characters.with_reading(reading)
    known = set(kanji)
    forms = [
        form
        for form, step in steps().items()
        if step.after in known and form not in known
        if characters.character(form).readings == Readings()
    ]
    return (*characters.hentaigana_for(reading), *kanji, *forms)
