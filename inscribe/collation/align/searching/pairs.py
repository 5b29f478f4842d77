"""Two signs held against each other: the same, another form, another spelling, or neither."""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables
from inscribe.collation.align.sides import Side, kun_patterns
from inscribe.reading import spelling

REPEAT_MARKS = frozenset("々〻ゝゞヽヾ〱〲〳〴〵")
LABIAL = "まみむめもはへ"  # うめ, むめ; うばたま, むばたま; うべ, むべ


class Match(NamedTuple):
    """How one sign answers one other: the row of the cost table, and the reason in words."""

    step: str
    why: str = ""


SAME = Match("same")


def match(copy: Side, i: int, source: Side, j: int) -> Match | None:
    """Return how sign ``i`` of the copy answers sign ``j`` of the source, None if it does not."""
    if copy.sort[i] != source.sort[j]:
        return None
    if copy.raw[i] == source.raw[j] and copy.norm[i] == source.norm[j] != "":
        return SAME
    found = _match(copy.sort[i], copy.raw[i], copy.norm[i], source.raw[j], source.norm[j])
    if found is None and copy.letters[i] + source.letters[j] in ("うむ", "むう"):
        return _initial_mu(copy, i, source, j) or _medial_mu(copy, i, source, j)
    return found


@tables.cached(65536)
def _match(sort: str, raw: str, norm: str, other_raw: str, other_norm: str) -> Match | None:
    if norm == other_norm:
        return _written_otherwise(raw, other_raw, norm) if norm else None
    if sort == "kana" and len(norm) == len(other_norm) == 1:
        return _kana(norm, other_norm)
    if sort == "kanji":
        return _related(norm, other_norm)
    return None


def _written_otherwise(one: str, other: str, norm: str) -> Match | None:
    if one == other:
        return SAME
    if _are_merged_words(one, other):
        return None
    marks = [char for char in (one, other) if char in REPEAT_MARKS]
    if marks:
        return Match("repeat", f"the repeat mark {marks[0]} stands for {norm}")
    return Match("form", f"{one} and {other} are forms of {norm}")


@tables.cached(4096)
def _are_merged_words(one: str, other: str) -> bool:
    """Whether two forms are different words that are printed alike today (辨, 辯: 弁)."""
    from inscribe import forms

    relation = forms.relation(one, other)
    return relation.table == "merged" and not relation.is_same_character


def _related(one: str, other: str) -> Match | None:
    from inscribe import forms

    relation = forms.relation(one, other)
    if not relation.is_same_character:
        return None
    return Match("form", f"{one} and {other}: {relation.kind}")


def _kana(one: str, other: str) -> Match | None:
    a, b = spelling.voiceless(one), spelling.voiceless(other)
    if a == b:
        if spelling.hiragana(one) == spelling.hiragana(other):
            return Match("small", f"{one} is {other} in the other kana")
        return Match("voicing", f"{one} and {other} differ in the voicing mark")
    if a.translate(spelling.SMALL) == b.translate(spelling.SMALL):
        return Match("small", f"{one} is {other} in another size")
    if spelling.exchanged(spelling.letter(one), spelling.letter(other)):
        return Match("spelling_pair", f"{one} and {other} are spellings of one sound")
    return None


def _initial_mu(copy: Side, i: int, source: Side, j: int) -> Match | None:
    if _next(copy, i) in LABIAL and _next(source, j) in LABIAL:
        why = f"{copy.norm[i]} and {source.norm[j]} sound alike before {source.norm[j + 1]}"
        return Match("initial_mu", why)
    return None


def _medial_mu(copy: Side, i: int, source: Side, j: int) -> Match | None:
    """う written for the む of らむ, けむ, なむ and of verbs, after the same kana."""
    before = copy.letters[i - 1] if i else ""
    if before and j and before == source.letters[j - 1] and before not in spelling.ROWS[2]:
        return Match("medial_mu", f"{copy.norm[i]} and {source.norm[j]} were both said for む")
    return None


def _next(side: Side, at: int) -> str:
    return (side.letters[at + 1] if at + 1 < len(side) else "") or "-"


@tables.cached(4096)
def tails(char: str) -> tuple[str, ...]:
    """Return what one writing of ``char`` may spell out and another leave unwritten: 思: ふ, ひ."""
    ways = kun_patterns(char)
    longer = {p[len(q) :] for p in ways for q in ways if len(p) > len(q) and p.startswith(q)}
    return tuple(sorted(longer))


def spelled_out(side: Side, at: int, text: str) -> int:
    """Return where ``text`` ends if several signs from ``at`` spell it out, else 0."""
    end, written = at, ""
    while end < len(side.norm) and len(written) < len(text):
        written += side.norm[end]
        end += 1
    alike = written == text or (
        len(written) == len(text)
        and all(map(spelling.is_kana, written + text))
        and spelling.fold(written) == spelling.fold(text)
    )
    return end if alike and end - at > 1 else 0
