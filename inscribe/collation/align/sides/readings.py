"""Every way one Chinese character may have been read where it stands in a text.

Collation does not ask how a character is best read but whether it can be read as the other text
spells it; so each dictionary reading is widened to what scribes leave unwritten: the ending of a
verb or adjective (思 for おもふ, おもひ), in its classical and its modern inflection.

>>> {"しり", "ち"} <= {reading.spoken for reading in readings_of("知")[""]}
True
>>> sorted({reading.step for reading in readings_of("知", "り")[""]})  # 知り: native readings only
['inflected', 'kun']
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from inscribe import tables
from inscribe.collation.align.sides import okurigana
from inscribe.collation.align.sides.senses import meanings
from inscribe.forms import Readings, normalise_text, readings as forms_readings
from inscribe.reading import spelling

# The tables of readings, each with the column that has them.
TABLES = {
    "collation_readings": "kana",
    "verse_nouns": "historical",
    "verse_verbs": "historical",
    "verse_adjectives": "historical",
}
# The ending that makes a dictionary form of a verb's or adjective's stem, by its class.
_FINALS = dict(zip("カガサザタダナハバマヤラワア", "くぐすずつづぬふぶむゆるうう", strict=True))
# Kana with which no verb goes on behind its stem before modern times, and the end of the text.
NEVER_ENDING = ("", *"こそとのほも")
LONG_STEM = 2  # kana of a stem that tells a word whatever ending follows
VERB_ENDINGS = {"ク": ".し", "シク": ".しい", "サ変": ".す"}
VERB_ENDINGS |= {
    kind + row: "." + ("る" if kind == "上一" else final)
    for row, final in _FINALS.items()
    for kind in ("四段", "上二", "下二", "上一")
}
VERB_ENDINGS |= {"ラ変": ".る", "ナ変": ".ぬ"}


class Reading(NamedTuple):
    """One way to read the next ``length`` signs: the sound, how plausible, and who says so."""

    length: int
    pattern: str  # letters, see inscribe.reading.spelling.sounds
    step: str  # "kun", "inflected", "cut", "on", "name", "word", ...: a row of the cost table
    spoken: str  # as the source spells it, hiragana
    source: str


# Readings by the letter they may begin with; all of them under "".
ByLetter = Mapping[str, tuple[Reading, ...]]


def by_letter(readings: Iterable[Reading]) -> ByLetter:
    """Return ``readings`` by the letters they may begin with, each sound of a length once."""
    found: dict[str, dict[tuple[int, str], Reading]] = {"": {}}
    for reading in readings:
        key = (reading.length, reading.pattern)
        if key not in found[""]:
            for letter in ("", *spelling.first_letters(reading.pattern)):
                found.setdefault(letter, {})[key] = reading
    return {letter: tuple(once.values()) for letter, once in found.items()}


@tables.cached(16384)
def readings_of(char: str, following: str = "") -> ByLetter:
    """Return the readings of one character by their first letter, the most plausible first.

    ``following`` is the letters of the kana written after it, one or two, if any: what cannot go
    on so is left out.
    """
    return by_letter(
        Reading(1, pattern, step, spoken, source)
        for spoken, step, source in _spoken(char, following)
        for pattern in spelling.patterns(spoken)
    )


def kun_patterns(char: str) -> frozenset[str]:
    """Return the sounds of the native readings of ``char`` in all their parts and forms."""
    spoken = {form for word in _kun(char) for form in okurigana.spoken_forms(word)}
    return frozenset(pattern for form in spoken for pattern in spelling.patterns(form))


@tables.cached(16384)
def goes_on(char: str, following: str) -> bool:
    """Whether a character and the letter of the kana behind it begin a verb or adjective.

    >>> goes_on("散", "る"), goes_on("花", "る")
    (True, False)
    """
    parts = (part for word in _kun(char) for part in okurigana.beginnings(word))
    return any(part.follows and part.goes_on(following) for part in parts)


@tables.cached(16384)
def shared_word(one: str, other: str) -> str:
    """Return a native word that two different characters both write, as 逢 and 会 do, or nothing.

    The same sound is not enough: 松 and 待 are まつ and ま.つ, two words, and 花 and 鼻 have no
    meaning in common.

    >>> shared_word("逢", "会"), shared_word("浪", "波")
    ('あ.う', 'なみ')
    >>> shared_word("松", "待"), shared_word("花", "鼻")
    ('', '')
    """
    words = {_word_key(word): word for word in _kun(one)}
    for word in _kun(other):
        known = words.get(_word_key(word))
        if known and ("." in word or meanings(one) & meanings(other)):
            return known
    return ""


@tables.cached(4096)
def governs(char: str) -> bool:
    """Whether ``char`` may stand before what it governs in Chinese order, as verbs do.

    >>> governs("見"), governs("花")
    (True, False)
    """
    from inscribe.reading.chinese import stands_before

    return any("." in word for word in _kun(char)) or stands_before(char)


def _word_key(word: str) -> tuple[str, str, int]:
    stem, _, ending = word.partition(".")
    classical = {"う": "ふ", "い": "し"}.get(ending, ending)
    pattern = "".join(spelling.patterns(stem)[:1])
    return (pattern, spelling.fold(classical), len(stem))


def _kun(char: str) -> list[str]:
    kun = [reading for reading, _ in table_readings().get(char, ())]
    return [*kun, *(reading.strip("-") for reading in forms_readings(char).kun)]


def _spoken(char: str, following: str) -> Iterator[tuple[str, str, str]]:
    """Yield what ``char`` may be read, how plausible that is, and who says so."""
    known = forms_readings(char)
    kun = list(table_readings().get(char, ()))
    kun += [(reading.strip("-"), "KANJIDIC") for reading in known.kun]
    is_verb = False
    for word, source in kun:
        for part in okurigana.beginnings(word):
            if part.kana and part.goes_on(following):
                is_verb |= bool(part.follows)
                yield part.kana, "kun", source
    for word, source in kun:
        for form in okurigana.inflected(word):
            yield form, "inflected", source
        for part in okurigana.cut_short(word):
            if part.kana and part.goes_on(following):
                yield part.kana, "cut", source
        if _is_bare(word, following):
            yield word.partition(".")[0], "stem", source
    if not is_verb:  # before okurigana a character has its native reading
        yield from _other_readings(known)
    verbs = [word for word, source in kun if source != "KANJIDIC"]  # of its time: 能 is no あたう
    if following[:1] in NEVER_ENDING or not any(following[0] in _endings(word) for word in verbs):
        for kana in kana_written_so().get(char, ()):
            yield kana, "parent", "a kana written as its parent"


def _is_bare(word: str, following: str) -> bool:
    """Whether a word's stem may stand alone: 残 of 残る and 残す, かな of 悲敷 (かな, しき)."""
    if _endings(word):
        return following[:1] in _endings_of_stems().get(word.partition(".")[0], ())
    return word.endswith(".しい") and not following


def _endings(word: str) -> str:
    """Return the letters that may follow the stem of a verb; nothing for an adjective or noun."""
    ending = word.partition(".")[2]
    return okurigana.row_of(ending) if ending else ""


@tables.cached()
def _endings_of_stems() -> dict[str, frozenset[str]]:
    """Return the letters that may follow the stem of a verb in any of the tables' verbs."""
    found: dict[str, set[str]] = {}
    for known in table_readings().values():
        for word, _ in known:
            stem = word.partition(".")[0]
            if len(stem) >= LONG_STEM:
                found.setdefault(stem, set()).update(_endings(word))
    return {stem: frozenset(letters) for stem, letters in found.items()}


@tables.cached()
def kana_written_so() -> dict[str, tuple[str, ...]]:
    """Return the kana that a character is the parent of, as in running text: 止里 for とり.

    >>> kana_written_so()["春"]
    ('す',)
    """
    found: dict[str, dict[str, None]] = {}
    for table in ("kana_parents", "hentaigana"):
        for row in tables.rows(table):
            if row["parent"]:
                kana = map(spelling.hiragana, tables.listed(row["kana"]))
                found.setdefault(normalise_text(row["parent"]).text, {}).update(dict.fromkeys(kana))
    return {parent: tuple(kana) for parent, kana in found.items()}


def _other_readings(known: Readings) -> Iterator[tuple[str, str, str]]:
    for on in map(spelling.hiragana, known.on):
        yield on.strip("-"), "on", "KANJIDIC"
        if on[0] in "かが":
            yield "くわ" + on[1:], "on", "KANJIDIC"
    for name in known.names:
        if not name.endswith("の"):  # 天 あま, not あまの: の is a word of its own
            yield name, "name", "KANJIDIC"


@tables.cached()
def table_readings() -> dict[str, list[tuple[str, str]]]:
    """Return the readings of the glossary's tables by what is written: (reading, table).

    A dot divides the stem of a verb or adjective from its ending: 消 -> き.ゆ.
    """
    found: dict[str, list[tuple[str, str]]] = {}
    for table, column in TABLES.items():
        for row in tables.rows(table):
            reading = row[column] + VERB_ENDINGS.get(row.get("class", ""), "")
            found.setdefault(row["written"], []).append((reading, table))
            if table == "verse_adjectives" and row["written"].endswith("け"):  # 長閑き のどけき
                found.setdefault(row["written"][:-1], []).append((reading, table))
    return found
