"""Signs whose meaning hangs on what stands around them: repeat marks, ligatures, voicing marks."""

from __future__ import annotations

from itertools import zip_longest

from inscribe.forms import repeats, sequences
from inscribe.forms.normal import Change
from inscribe.forms.repeats import is_kana
from inscribe.forms.rewriting import Rewriting
from inscribe.forms.steps import LIGATURE, REPEAT_MARK, VOICING_MARK, FormStep, ligatures
from inscribe.terms import SignIndex

KINDS = frozenset((REPEAT_MARK, LIGATURE, VOICING_MARK))
_FAR = 40  # signs looked at on either side of a ligature


def rewrite(rewriting: Rewriting) -> None:
    """Write the signs of these kinds anew, in order, each after everything before it is settled."""
    next_at = 0
    for at in [at for at, step in enumerate(rewriting.steps) if step.kind in KINDS]:
        kind = rewriting.steps[at].kind
        if kind == REPEAT_MARK:
            next_at = _repeat(rewriting, at) if at >= next_at else next_at
        elif kind == LIGATURE:
            _part(rewriting, at)
        else:
            _voice(rewriting, at)


def _repeat(rewriting: Rewriting, first: int) -> int:
    """Expand a run of repeat marks and return the number of the step after it."""
    steps = rewriting.steps
    end = first + 1
    while rewriting.follows_directly(end) and steps[end].kind == REPEAT_MARK:
        end += 1
    run = [step.before for step in steps[first:end]]
    found = repeats.expansions(run, rewriting.before(first, repeats.REACH))
    for at, expansion in enumerate(found, start=first):
        after, note, doubtful = expansion
        rewriting.take(
            at, FormStep(steps[at].before, after, REPEAT_MARK, steps[at].table, note, doubtful)
        )
    return end


def _part(rewriting: Rewriting, at: int) -> None:
    """Write a ligature out in the script of the nearest kana, or else in its usual one."""
    step = rewriting.steps[at]
    hiragana, katakana = ligatures()[step.before]
    if script := _nearest_script(rewriting.before(at, _FAR), rewriting.following(at, _FAR)):
        rewriting.take(at, step._replace(after=katakana if script == "katakana" else hiragana))


def _nearest_script(before: str, after: str) -> str:
    """Return the script of the nearest kana, hiragana where two are as near, or nothing."""
    for near in zip_longest(reversed(before), after, fillvalue=""):
        scripts = {"katakana" if sign >= "ァ" else "hiragana" for sign in near if is_kana(sign)}
        if scripts:
            return min(scripts)
    return ""


def _voice(rewriting: Rewriting, at: int) -> None:
    """Join a voicing mark that is a sign of its own to the kana before it."""
    step, index = rewriting.steps[at], rewriting.starts[at]
    rewriting.replace(at, step.before, [])
    stands = rewriting.sign_before(at)
    if rewriting.follows_directly(at) and at and rewriting.steps[at - 1].kind == REPEAT_MARK:
        voiced = sequences.voiced(stands[:1], step.before[0])
        after = voiced + stands[1:] if len(voiced) == 1 else stands
    else:
        voiced = sequences.voiced(stands[-1:], step.before[0])
        after = stands[:-1] + voiced
        if not is_kana(stands[-1:]) or len(voiced) != 1:
            return
    note = _voicing_note(stands, after)
    doubtful = after == stands and is_kana(stands[:1])
    gone = Change(SignIndex(index), step.before, "", VOICING_MARK, step.table, note, doubtful)
    rewriting.replace(at, "", [gone])
    if after != stands:
        change = Change(SignIndex(index - 1), stands, after, VOICING_MARK, step.table, note)
        rewriting.replace_before(at, after, change)


def _voicing_note(stands: str, after: str) -> str:
    if after != stands:
        return "written as a sign of its own"
    return f"{stands} cannot be voiced" if is_kana(stands[:1]) else "the repetition is said voiced"
