"""The signs of Chinese text as words of Japanese: verbs with what they govern, nouns, adverbs.

From ``glossary/chinese/chinese_words.tsv``; a noun that has no row there is read by the native
reading that KANJIDIC2 gives it, else by its Chinese sound.

>>> [(word.stem, word.conjugation, word.particle) for word in words_of("登")]
[('のぼ', '四段-ラ行', 'に')]
>>> noun("磯"), inflected(words_of("登")[0], "て"), inflected(words_of("啼")[0], "て")
('いそ', 'のぼりて', 'ないて')
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables
from inscribe.reading.chinese.compounds import first_sound

NOUN, PLACE, ADVERB, BEFORE_NOUN, AFTER_NOUN = "名詞", "場所", "副詞", "連体詞", "助詞"
TE, IF = "て", "ば"  # forms that link verbs; the second of 不 only (ざれば)
_FORMS = ("未然形", "連用形", "終止形", "連体形", TE, IF)
_OWN: dict[str, tuple[str, ...]] = {  # in the order of _FORMS
    "ズ": ("ざら", "ず", "ず", "ざる", "ずして", "ざれば"),
    "ベシ": ("べから", "べく", "べし", "べき", "べくして"),
    "ナリ": (" なら", " に して", " なり", " なる", " に して"),
    "シム": ("しめ", "しめ", "しむ", "しむる", "しめて"),
    "不変": ("", "", "", "", ""),
}
_ADJECTIVES = ("ク", "シク")
_LAST_OF_VERBS = tuple("うくぐすつぬぶむる")
_AT_START = str.maketrans("ゐゑを", "いえお")  # the other kana keep their sound where a word begins
_BENT = {"カ": "いて", "ガ": "いで", "バ": "んで", "マ": "んで"}  # 啼いて, 飛んで


class SignWord(NamedTuple):
    """One way a sign is said, and what it governs."""

    sign: str
    stem: str
    conjugation: str
    complement: str = ""
    particle: str = ""
    before: str = ""

    @property
    def is_inflected(self) -> bool:
        """Whether it is a verb, an adjective or an auxiliary."""
        return self.conjugation not in (NOUN, PLACE, ADVERB, BEFORE_NOUN, AFTER_NOUN)

    @property
    def describes(self) -> bool:
        """Whether it is an adjective."""
        return self.conjugation in (*_ADJECTIVES, "ナリ")


def words_of(signs: str) -> tuple[SignWord, ...]:
    """Return the ways a sign, or two signs said as one, may be said; the usual one first."""
    return _table().get(signs, ())


def inflected(word: SignWord, form: str) -> str:
    """Return a verb or adjective in one of its forms; ``て`` is the form that links verbs."""
    return word.stem + _ending(word.conjugation, form, starts=not word.stem)


def stands_before(sign: str, particle: str = "") -> bool:
    """Whether a sign stands before what it governs: a verb, an auxiliary, 於 and its like.

    With ``particle``: whether it is said after what it governs with that particle.

    >>> stands_before("可"), stands_before("於"), stands_before("花")
    (True, True, False)
    >>> stands_before("如", "の"), stands_before("見", "の")
    (True, False)
    """
    return any(
        (word.is_inflected or word.conjugation == AFTER_NOUN)
        and (not particle or particle in (word.particle, word.stem[:1]))
        for word in words_of(sign)
    )


@tables.cached(4096)
def spoken_forms(signs: str) -> frozenset[str]:
    """Return the kana of a sign, or of two said as one, in every word and form.

    A stem of one kana is none of them: the お of 処り and 折る is no を.

    >>> sorted(spoken_forms("可"))
    ['べから', 'べき', 'べく', 'べくして', 'べし']
    >>> sorted(spoken_forms("処"))
    ['おら', 'おり', 'おりて', 'おる', 'ところ']
    """
    found: set[str] = set()
    for word in words_of(signs):
        forms = [f for f in _FORMS if f != IF or word.conjugation in _OWN]
        found.update(inflected(word, form) for form in forms if word.is_inflected)
        found.add(word.stem if not word.is_inflected or len(word.stem) > 1 else "")
    return frozenset(kana.replace(" ", "") for kana in found if kana.strip())


@tables.cached()
def noun(sign: str) -> str:
    """Return how a sign is read as a noun of its own: its row, its native reading, its sound."""
    for word in words_of(sign):
        if word.conjugation in (NOUN, PLACE):
            return word.stem
    return native_noun(sign) or first_sound(sign)


@tables.cached()
def native_noun(sign: str) -> str:
    """Return the native reading of a sign that is no verb's or adjective's stem, or nothing."""
    from inscribe.forms import readings

    plain = (kun for kun in readings(sign).kun if "." not in kun and "-" not in kun)
    found = next(plain, "")
    is_verb = any(word.is_inflected for word in words_of(sign))
    return "" if is_verb and found.endswith(_LAST_OF_VERBS) else found


@tables.cached()
def _table() -> dict[str, tuple[SignWord, ...]]:
    found: dict[str, tuple[SignWord, ...]] = {}
    for row in tables.rows("chinese_words"):
        word = SignWord(
            row["written"],
            row["stem"],
            row["class"],
            row["complement"],
            row["particle"],
            row["before"],
        )
        found[word.sign] = (*found.get(word.sign, ()), word)
    return found


@tables.cached()
def _ending(conjugation: str, form: str, *, starts: bool) -> str:
    if own := _OWN.get(conjugation):
        return own[min(_FORMS.index(form), len(own) - 1)]
    if form == TE:
        return _linking(conjugation, starts=starts)
    ending = _endings(conjugation).get(form, ("", ""))[0 if starts else 1]
    return ending.translate(_AT_START) if starts else ending


def _linking(conjugation: str, *, starts: bool) -> str:
    name, _, row = conjugation.partition("-")
    if name == "四段" and row[:1] in _BENT:
        return _BENT[row[:1]]
    conjunctive = _ending(conjugation, "連用形", starts=starts)
    return conjunctive + ("して" if name in _ADJECTIVES else TE)


@tables.cached()
def _endings(conjugation: str) -> dict[str, tuple[str, str]]:
    """Return the endings of a class by form, as written and as said: the general form of each."""
    from inscribe.reading.lexicon import inflections

    voiced = conjugation == "サ行変格-ザ行"  # 生ず
    found: dict[str, tuple[str, str]] = {}
    for each in inflections("サ行変格" if voiced else conjugation):
        form, _, kind = each.form.partition("-")
        general = kind == ("補助" if form == "未然形" and conjugation in _ADJECTIVES else "一般")
        if general:
            said = (
                each.modern.translate(str.maketrans("せしす", "ぜじず")) if voiced else each.modern
            )
            found[form] = (each.written, said)
    return found
