"""An inscription as restoring sees it: its text with every worn place, and its language."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from inscribe.errors import InscribeError
from inscribe.forms import NormalText, normalise
from inscribe.restoring import verse
from inscribe.restoring.formula import Possible, Walks
from inscribe.restoring.kinds import kind_name
from inscribe.restoring.model import Evidence
from inscribe.restoring.name_chances import NO_NAMES, UNREAD, Names
from inscribe.restoring.verse import WornPoem
from inscribe.signs import Transcription
from inscribe.sources import letters

if TYPE_CHECKING:
    from inscribe.reading import Choice, Interpretation, PassageLike, Register

_MARKS = re.compile(r"（花押）|（印「[^」]*」）|（印）")
_GAP = re.compile(r"［[^］]*］")
_LONGEST_SIGNATURE = 160  # signs; a longer text is weighed piece by piece around the place
_STRIDE = 80  # signs from one piece to the next
_FILLED = 6  # worn places that are filled while another is weighed
_LOOKED_AT_AGAIN = 60  # signs weighed again once the other worn places are filled
_FUNCTION_WORDS = ("助詞", "助動詞", "接尾辞")
# Odds of a kanji against the kana of a source, fitted on odd-numbered poems: in a word ...
_ODDS_WITHIN = 0.03
_ODDS_OF_FUNCTION = 0.35  # ... or for a word of grammar, by the likeliest reading
_HABIT = 0.22  # power of the carver's habit, of which one poem tells little
_RARER = 1e-9  # chance of a sign that no formula has
_NAMING = frozenset({"name", "art_name", "common_name", "surname", "place", "unlisted_place"})
_SURELY = 0.8  # chance that a word of the formula is worn, from which it makes a signature


@dataclass
class WornInscription:
    """One inscription: its normalised text, its register, and the weights worked out so far."""

    normal: NormalText
    register: Register
    poem: WornPoem | None
    offsets: dict[int, int] = field(default_factory=dict)  # in the poem, of each sign
    names: Names = field(default_factory=dict)  # to be expected in the collection
    gaps: frozenset[int] = frozenset()  # offsets of gaps in the poem
    passages: tuple[tuple[str, int, int], ...] = ()  # their kinds, first and last signs
    _first: dict[int, dict[str, float]] = field(default_factory=dict)
    _walks: dict[int, Walks] = field(default_factory=dict)
    possible: dict[int, dict[str, Possible]] = field(default_factory=dict)

    @property
    def text(self) -> str:
        """The text in current forms."""
        return self.normal.text

    @property
    def voiced(self) -> bool:
        """Whether the text marks voicing."""
        return self.poem.voiced if self.poem else True

    def offset(self, sign: int) -> int:
        """Return where a sign stands in the text."""
        return self.normal.origin.index(sign)

    def length(self, sign: int) -> int:
        """Return how many characters of the text are a sign's."""
        return self.normal.origin.count(sign)

    def missing_morae(self, sign: int) -> int | None:
        """Return how many morae a worn place must have for the metre, where there is one."""
        return self._missing.get(self.offsets[sign]) if self.poem else None

    @cached_property
    def _missing(self) -> dict[int, int]:
        return verse.missing_morae(self.poem) if self.poem else {}

    def weights(self, sign: int, more: Sequence[str] = ()) -> dict[str, float]:
        """Return the logarithms of the weights of the signs that may stand in a worn place.

        ``more`` are further signs to be weighed, seen by the reader.
        """
        if self.poem is None:
            return self._formula_weights(sign, more)
        at = self.offsets[sign]
        found = self._first_weights(at, more)
        if self.poem.text.count(UNREAD) == 1:
            return found
        likely = sorted(found, key=lambda each: -found[each])[:_LOOKED_AT_AGAIN]
        again = verse.weights_at(self._filled(at), at, dict.fromkeys((*likely, *more)))
        least = min(again.values())
        others = {each: weight for each, weight in found.items() if each not in again}
        below = least - max(others.values(), default=0.0)
        return again | {each: weight + below for each, weight in others.items()}

    def _first_weights(self, at: int, more: Sequence[str] = ()) -> dict[str, float]:
        """Return the weights at an offset of the poem, its other worn places left open."""
        assert self.poem is not None
        if more or at not in self._first:
            signs = verse.signs_tried(self.poem)
            self._first[at] = verse.weights_at(self.poem, at, dict.fromkeys((*signs, *more)))
        return self._first[at]

    def _filled(self, at: int) -> WornPoem:
        """Return the poem with the worn places nearest to ``at`` filled by what is likeliest."""
        assert self.poem is not None
        signs = list(self.poem.text)
        others = sorted((abs(other - at), other) for other in self.offsets_unread if other != at)
        for distance, other in others[:_FILLED]:
            if distance <= verse.NEAR or self.poem.metre is not None:
                weights = self._first_weights(other)
                signs[other] = max(weights, key=lambda each: weights[each])
        return WornPoem("".join(signs), self.poem.metre, self.poem.voiced)

    def kanji_odds(self, sign: int, kana: str) -> float:
        """Return how much likelier, by his habit, a carver wrote a kanji than this kana."""
        if self.poem is None:
            return 1.0
        at = self.offsets[sign]
        word, begins = verse.word_with(self.poem, at, kana)
        if begins != at:
            return _ODDS_WITHIN
        if word.part_of_speech.startswith(_FUNCTION_WORDS):
            return _ODDS_OF_FUNCTION
        return self.habit

    @cached_property
    def habit(self) -> float:
        """How much likelier the carver writes a word in kanji than in kana, held within bounds."""
        return verse.kanji_habit(self.poem) ** _HABIT if self.poem else 1.0

    def forms_word(self, sign: int, candidate: str, sounds: str) -> bool:
        """Return whether a candidate is part of a longer word that says a part of ``sounds``.

        So 鳥 may stand where the source has か: in 飛鳥 for あすか.
        """
        if self.poem is None:
            return False
        word, _ = verse.word_with(self.poem, self.offsets[sign], candidate)
        said = letters(word.kana)
        return word.length > 1 and len(said) > 1 and said in sounds

    @cached_property
    def offsets_unread(self) -> list[int]:
        """The offsets of the worn signs of a poem, gaps left out."""
        assert self.poem is not None
        unread = (i for i, char in enumerate(self.poem.text) if char == UNREAD)
        return [offset for offset in unread if offset not in self.gaps]

    def walks(self, at: int) -> tuple[Walks, int]:
        """Return the ways to divide the signature around an offset, and where that begins."""
        first, text = 0, self.text
        if len(text) > _LONGEST_SIGNATURE:
            first = max(0, at // _STRIDE * _STRIDE - _STRIDE // 2)
            text = text[first : first + _LONGEST_SIGNATURE]
        if first not in self._walks:
            self._walks[first] = Walks(text, self.names)
        return self._walks[first], first

    def _formula_weights(self, sign: int, more: Sequence[str]) -> dict[str, float]:
        at = self.offset(sign)
        walks, first = self.walks(at)
        found = walks.signs_at(at - first)
        self.possible[sign] = found
        chances = {each: possible.chance for each, possible in found.items()}
        for each in more:
            chances.setdefault(each, _RARER)
        return {each: math.log(max(chance, 1e-300)) for each, chance in chances.items()}

    def _date(self, sign: int, candidate: str) -> str:
        """Return whether the date that holds the sign agrees with itself once it is filled in."""
        from inscribe import dates

        at = self.offset(sign)
        text = self.text[:at] + candidate + self.text[at + 1 :]
        for date in dates.find(text):
            if date.first <= at <= date.last:
                return date.agreement
        return ""

    def evidence(self, sign: int, candidate: str) -> Iterator[Evidence]:
        """Yield what the language says for a candidate."""
        if self.poem is not None:
            yield from self._evidence_of_verse(sign, candidate)
            return
        possible = self.possible.get(sign, {}).get(candidate)
        if possible is None or not possible.kind:
            yield Evidence("formula", "no formula has it here")
            return
        yield Evidence("formula", f"{kind_name(possible.kind)} {possible.word}")
        if count := self.names.get(possible.word):
            times = "once" if count == 1 else f"{count} times"
            yield Evidence("collection", f"{possible.word} is read {times} in the collection")
        if possible.kind.startswith("date>"):
            agreement = self._date(sign, candidate)
            if agreement in ("agrees", "conflict"):
                verdict = "agrees" if agreement == "agrees" else "does not agree"
                yield Evidence("date", f"the year {verdict} with its sexagenary sign")

    def _evidence_of_verse(self, sign: int, candidate: str) -> Iterator[Evidence]:
        assert self.poem is not None
        heard = verse.heard(self.poem, self.offsets[sign], candidate)
        word = heard.word
        if word.known:
            gloss = f" ({word.gloss})" if word.gloss else ""
            said = word.written if word.kana == word.written else f"{word.written} {word.kana}"
            alone = word.written == candidate
            yield Evidence("lexicon", f"{'the word' if alone else 'in'} {said}{gloss}")
        else:
            yield Evidence("lexicon", "in no word of the dictionary of verse")
        if heard.phrases:
            counts = "-".join(map(str, heard.phrases))
            kept = "kept" if heard.regular else "not kept"
            yield Evidence("metre", f"{counts} morae: the metre is {kept}")


def inscription(
    text: Transcription,
    register: Choice,
    names: Names = NO_NAMES,
    passages: Sequence[PassageLike] = (),
) -> WornInscription:
    """Return an inscription with its worn places unreadable, ready to be weighed."""
    normal = normalise(text)
    if register != "auto" and not passages:
        return in_register(normal, register, names)
    from inscribe import reading

    return of_read(
        normal, reading.read(text, register, alternatives=False, passages=passages), names
    )


def of_read(normal: NormalText, read: Interpretation, names: Names = NO_NAMES) -> WornInscription:
    """Return a text that was read, ready to be weighed in the register it was read in."""
    found = read.register
    if found == "prose" and _signed_once_filled(normal.text, names):
        found = "signature"
    made = in_register(normal, found, names)
    made.passages = tuple((p.kind, p.first, p.last) for p in read.passages)
    return made


def in_register(normal: NormalText, found: Register, names: Names) -> WornInscription:
    """Return a text ready to be weighed in a register."""
    if found == "signature":
        return WornInscription(normal, found, None, names=names)
    plain, offsets, gaps = _poem(normal)
    poem = verse.setting(plain, metrical=found == "verse" and not gaps)
    return WornInscription(normal, found, poem, offsets, gaps=gaps)


def _signed_once_filled(text: str, names: Names) -> bool:
    """Whether a text reads as a signature with its worn signs filled by what a formula has there.

    So 法□嶺暁: with its title worn, a name alone tells nothing of a signature. What is filled in
    must be a word of the formula, for any character may stand in a name.
    """
    from inscribe import reading

    worn = [at for at, sign in enumerate(text) if sign == UNREAD]
    if not 0 < len(worn) <= _FILLED or len(text) > _LONGEST_SIGNATURE:
        return False
    walks, filled = Walks(text, names), list(text)
    for at in worn:
        possible = walks.signs_at(at)
        of_formula = sum(each.chance for each in possible.values() if each.kind not in _NAMING)
        if of_formula < _SURELY:
            return False
        filled[at] = max(possible, key=lambda sign: possible[sign].chance)
    try:
        read = reading.read_text("".join(filled), alternatives=False)
    except InscribeError:  # marks of the transcriber stand in the legend of a seal
        return False
    return read.register == "signature"


def _poem(normal: NormalText) -> tuple[str, dict[int, int], frozenset[int]]:
    """Return the text with one □ for a gap, where each sign stands in it, and where the gaps."""
    plain, position = "", 0
    offsets: dict[int, int] = {}
    gaps = set()
    while position < len(normal.text):
        at, before = len(plain), position
        if gap := _GAP.match(normal.text, position):
            gaps.add(at)
            plain, position = plain + UNREAD, gap.end()
        elif mark := _MARKS.match(normal.text, position):
            position = mark.end()
        else:
            plain, position = plain + normal.text[position], position + 1
        for sign in normal.origin[before:position]:  # gaps side by side are one
            offsets.setdefault(sign, at)
    return plain, offsets, frozenset(gaps)
