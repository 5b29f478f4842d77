"""The cutting of the columns."""

from __future__ import annotations

import random

from carvers.carver_a.sheets import Cut, Sheet
from carvers.carver_a.words import Words, is_kana, save_once, signs_of
from carvers.carver_a.worlds import World


def cut_column(signs: str, start: int, stop: int, sheet: Sheet, k: int, known: bool) -> list[Cut]:
    """The signs start..stop set into column k, as many as it holds; `known`: he sees how many must
    go in, and squeezes the later ones.
    """
    heights, y, cuts = sheet.heights(signs[start:stop], start), sheet.tops[k], list[Cut]()
    late, whole = int(sheet.notice * len(heights)), sum(heights)
    tail = sum(heights[late:]) or 1.0
    tight = max(sheet.floor, min(1.0, (sheet.room(k) - whole + tail) / tail)) if known else 1.0
    loose = min(1.4, max(1.0, sheet.room(k) / (whole or 1.0))) if known and sheet.spread else 1.0
    for i, height in enumerate(heights):
        height *= tight if i >= late else 1.0
        y = next(
            (
                b + 0.4
                for c, a, b, _ in sheet.blocked
                if c == k and y < b and y + height / sheet.air > a
            ),
            y,
        )
        if y + height / sheet.air > sheet.foot + 0.4:
            break
        wide = (
            (0.8 if is_kana(signs[start + i]) else 1.0)
            * sheet.size
            * ((1 + tight) / 2 if i >= late else 1.0)
            * sheet.jitter[-1 - start - i]
        )
        cuts.append(Cut(signs[start + i], k, y, height / sheet.air, wide))
        y += height * loose
    return cuts


def carved(words: Words, sheet: Sheet, world: World, rng: random.Random) -> tuple[Words, list[Cut]]:
    """The cutting: in the last column he squeezes, then saves on what is still to come, then gives
    up the end (a name whole, else sign by sign).
    """
    for patience in range(rng.randrange(7), -200, -1):
        signs, cuts, start = signs_of(words), list[Cut](), 0
        for k in range(sheet.many):
            start, last = len(cuts), k == sheet.many - 1
            stop = len(signs) if last or not sheet.breaks else max(start, sheet.breaks[k + 1])
            cuts += cut_column(signs, start, stop, sheet, k, last or sheet.breaks is not None)
        if len(cuts) == len(signs):
            break
        late = start + int(sheet.notice * 0.6 * (len(cuts) - start))
        saved = save_once(words, world.saves, late, False) if patience > 0 else None
        end = max(i for i, w in enumerate(words) if w.now)
        now = (
            ""
            if words[end].part == "author" or words[end].cause not in ("", "space")
            else words[end].now[:-1]
        )
        words = saved or [
            w._replace(now=now, cause="space") if i == end else w
            for i, w in enumerate(words)
            if w.src or i != end
        ]
    return words, cuts
