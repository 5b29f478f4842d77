"""Signs whose meaning hangs on what stands around them: repeat marks, ligatures, voicing marks."""

from __future__ import annotations

from inscribe.forms import repeats, sequences
from inscribe.forms.normal import Change
from inscribe.forms.steps import LIGATURE, REPEAT_MARK, VOICING_MARK, Step, ligatures

KINDS = frozenset((REPEAT_MARK, LIGATURE, VOICING_MARK))


def changes(index: int, step: Step, stands: list[str]) -> list[Change]:
    """Change the sign ``index`` of ``stands`` (all signs before it are changed already).

    Returns the changes made, or none where an earlier sign has taken this one along.
    """
    if stands[index] != step.before:
        return []
    if step.kind == REPEAT_MARK:
        return _repeated(index, step, stands)
    if step.kind == LIGATURE:
        return _parted(index, step, stands)
    return _voiced(index, step, stands)


def _repeated(index: int, step: Step, stands: list[str]) -> list[Change]:
    marks = repeats.marks()
    end = index
    while end < len(stands) and stands[end] in marks:
        end += 1
    before = "".join(stands[max(0, index - repeats.REACH) : index])
    found: list[Change] = []
    for at, expansion in enumerate(repeats.expansions(stands[index:end], before), start=index):
        after, note, doubtful = expansion
        found.append(Change(at, stands[at], after, step.kind, step.table, note, doubtful))
        stands[at] = after
    return found


def _parted(index: int, step: Step, stands: list[str]) -> list[Change]:
    """Write a ligature out in the script of the nearest kana, or else in its usual one."""
    hiragana, katakana = ligatures()[step.before]
    after = step.after
    for distance in range(1, len(stands)):
        near = stands[max(0, index - distance) : index - distance + 1][:1]
        near += stands[index + distance : index + distance + 1]
        scripts = {"ァ" <= sign <= "ヺ" for sign in near if repeats.is_kana(sign)}
        if scripts:
            after = katakana if scripts == {True} else hiragana
            break
    stands[index] = after
    return [Change(index, step.before, after, step.kind, step.table, step.note)]


def _voiced(index: int, step: Step, stands: list[str]) -> list[Change]:
    """Join a voicing mark that stands alone to the kana before it."""
    kana = stands[index - 1] if index else ""
    after = sequences.voiced(kana, step.before)
    if len(kana) != 1 or len(after) != 1:
        return []
    stands[index - 1], stands[index] = after, ""
    note = "written as a sign of its own"
    return [
        Change(index - 1, kana, after, VOICING_MARK, step.table, note),
        Change(index, step.before, "", VOICING_MARK, step.table, note),
    ]
