"""An interpretation as plain lines for a terminal, a pipe or a file.

Written without a layout library: it is the first thing seen at the bench and must come at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from inscribe.errors import harmless
from inscribe.notation import written_out
from inscribe.reading.words import CANNOT_BE_READ
from inscribe.report import phrased, width

if TYPE_CHECKING:
    from inscribe.reading.words import (
        Doubt,
        Interpretation,
        Passage,
        Proposal,
        SignaturePart,
        Token,
    )

_LABEL = 14
_IN_KANA = {"verse", "prose", "chinese"}  # passages whose kana are shown too
_NAMES = {"name", "surname", "art_name", "common_name"}  # read as their bearers chose


def reading_as_text(
    interpretation: Interpretation, *, why: bool = False, gloss: bool = False
) -> str:
    """Return what an inscription says, a fact a line.

    With ``why`` every word and its reason follow, with ``gloss`` the words one beside the other:
    signs, kana, Latin letters and meaning.
    """
    from inscribe.report.terminal.wrapping import fitted

    lines = [fitted(printable(line), _LABEL) for line in _lines(interpretation)]
    if gloss:
        lines += ["", *_interlinear(interpretation)]
    if why:
        lines += _reasons(interpretation)
    return "\n".join(lines) + "\n"


def cautions_as_text(found: Sequence[Interpretation]) -> str:
    """Return what a reader of these texts must be told: of signatures, and of signs worn away."""
    from inscribe.cautions import caution
    from inscribe.report.terminal.wrapping import fitted

    keys = []
    if any(each.names_a_person for each in found):
        keys.append("attribution")
    if any(doubt.why == CANNOT_BE_READ for each in found for doubt in each.doubts):
        keys.append("handling")
    return "".join(fitted(_fact("caution", caution(key)), _LABEL) + "\n" for key in keys)


def _lines(interpretation: Interpretation) -> Iterator[str]:
    best, *others = interpretation.proposals
    yield _fact("as carved", interpretation.noted or interpretation.text)
    if interpretation.normalised != interpretation.text:
        yield _fact("current forms", interpretation.normalised)
    if interpretation.modern not in (interpretation.normalised, interpretation.text):
        yield _fact("modern", interpretation.modern)
    if len(interpretation.passages) > 1:
        yield from _passages(interpretation.passages)
        yield _fact("reading", phrased(best, "romaji"))
        yield _fact("register", interpretation.register)
    else:
        yield _fact("kana", phrased(best, "kana"))
        yield _fact("reading", phrased(best, "romaji"))
        yield _fact("register", "; ".join((interpretation.register, *_kind(interpretation))))
        yield from _parts(interpretation.signature)
    if sure := _sure(best):
        yield _fact("chance", sure)
    for named in interpretation.persons:
        yield _fact("may name", f"{named.text}  {named.why} ({named.chance:.2f})")
    for date in interpretation.dates:
        yield _fact("resolved", f"{date.text}  {date.why}")
    for doubt in interpretation.doubts:
        yield _fact("doubt", f"{_where(doubt, best)}: {doubt.why}")
    for proposal in others:
        yield _fact("or", f"{proposal.romaji}  ({'; '.join(proposal.reasons)})")


def _sure(best: Proposal) -> str:
    """Return in a sentence how sure a reading is, and its least sure word."""
    words = best.chances.words
    said = [at for at, token in enumerate(best.tokens) if token.kana]
    if not words:
        return ""
    named = any(token.part_of_speech in _NAMES for token in best.tokens)
    how = "as is usual" if named else "right"  # his own reading is known only of known makers
    whole = f"{best.chance:.0%} that the whole is read {how}"
    if len(words) != len(best.tokens) or len(said) < 2:
        return whole
    least = min(said, key=lambda at: words[at])
    token = best.tokens[least]
    return f"{whole}; least sure is {token.surface} {token.romaji} ({words[least]:.0%})"


def _kind(interpretation: Interpretation) -> Iterator[str]:
    """Yield the kind of the one passage where the register does not name it, then the reasons."""
    for passage in interpretation.passages:
        if passage.kind != interpretation.register:
            yield passage.kind
    yield from interpretation.proposals[0].reasons


def _passages(passages: Sequence[Passage]) -> Iterator[str]:
    """Yield the passages one under the other: what each is, who did what, and how it is read."""
    for passage in passages:
        best = passage.proposals[0]
        did = f"  ({passage.role})" if passage.role else ""
        yield _fact(passage.kind, f"{passage.text}{did}")
        if passage.kind in _IN_KANA:
            yield _fact("  kana", phrased(best, "kana"))
        if best.romaji:
            yield _fact("  reading", phrased(best, "romaji"))
        why = "; ".join(dict.fromkeys((*passage.reasons, *best.reasons)))
        if why:
            yield _fact("  why", why)
        for key, part in (passage.signature or {}).items():
            yield _fact(f"  {key}", f"{part.text}  {part.romaji}".rstrip())


def _parts(parts: Mapping[str, SignaturePart] | None) -> Iterator[str]:
    for key, part in (parts or {}).items():
        yield _fact(key, f"{part.text}  {part.romaji}".rstrip())


def _reasons(interpretation: Interpretation) -> Iterator[str]:
    from inscribe.report.terminal.wrapping import fitted, in_columns

    yield ""
    yield from in_columns([_word_row(token) for token in interpretation.proposals[0].tokens])
    if interpretation.changes:
        yield ""
    for change in interpretation.changes:
        note = f" ({change.note})" if change.note else ""
        step = f"{change.before} -> {change.after}"
        said = _fact(f"sign {change.sign + 1}", f"{step}  {change.kind}, {change.table}{note}")
        yield fitted(printable(said), _LABEL)


def _interlinear(interpretation: Interpretation) -> Iterator[str]:
    """Yield the words side by side, four lines to a row: signs, kana, Latin letters, meaning."""
    from inscribe.glossing import glossed_words
    from inscribe.report.terminal.wrapping import room

    row: list[tuple[str, ...]] = []
    used, columns = 0, room()
    for word in glossed_words(interpretation):
        cells = tuple(map(printable, (word.signs, word.kana, word.romaji, word.gloss)))
        size = max(map(width, cells)) + 2
        if row and used + size > columns:
            yield from (*_side_by_side(row), "")
            row, used = [], 0
        row.append(cells)
        used += size
    yield from _side_by_side(row)


def _side_by_side(words: Sequence[tuple[str, ...]]) -> Iterator[str]:
    sizes = [max(map(width, cells)) + 2 for cells in words]
    for line in zip(*words, strict=True):
        yield "".join(map(_padded, line, sizes)).rstrip()


def _word_row(token: Token) -> tuple[str, ...]:
    from inscribe.reading.words import grammar_of

    grammar = grammar_of(token.part_of_speech, token.lemma)
    remarks = "; ".join(part for part in (token.gloss, token.reason) if part)
    row = (token.surface, token.kana, token.romaji, grammar, remarks)
    return tuple(map(printable, row))


def _where(doubt: Doubt, best: Proposal) -> str:
    """Return the signs by number, and the words they stand in."""
    numbers = (
        f"{doubt.first + 1}"
        if doubt.first == doubt.last
        else (f"{doubt.first + 1}-{doubt.last + 1}")
    )
    within = (t for t in best.tokens if t.first <= doubt.last and doubt.first <= t.last)
    words = "".join(token.surface for token in sorted(within, key=lambda token: token.first))
    return f"sign{'' if doubt.first == doubt.last else 's'} {numbers} {words}".rstrip()


def _fact(label: str, text: str) -> str:
    return _padded(label, _LABEL) + written_out(text)


def _padded(text: str, columns: int) -> str:
    return text + " " * (columns - width(text))


def printable(text: str) -> str:
    """Return one line of a report: nothing a terminal might obey, old kana with their parents."""
    return harmless(written_out(text), lines=False)
