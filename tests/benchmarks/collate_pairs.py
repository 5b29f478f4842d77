"""Pairs of texts with known differences, derived from public-domain verse by documented changes.

From each poem of ``tests/data/verse_dev.tsv`` a copy is made that is spelled otherwise (the noise)
and, in some, says something else (the real differences, whose places are known).

Noise, none of which is a difference in wording: the copy in kanji and kana against a source in
kana; voicing marks left out; を/お, ひ/い, ふ/う and their like exchanged; む written ん; a
repeated kana written ゝ; kanji in old forms.

Real differences: a noun replaced by another; a particle after a noun replaced, left out or
added; a verb or adjective replaced by another in the same form; a final auxiliary replaced; a
whole phrase left out; two phrases exchanged. (A の left out between two kanji is no difference:
it is read all the same.)
A place is only used where the word stands once in the poem in kanji and once in kana, before a
particle or at the end of a phrase, so that its span is known without asking the program.
"""

from __future__ import annotations

import random
import unicodedata
from dataclasses import dataclass
from pathlib import Path

DATA = Path(__file__).parent.parent / "data" / "verse_dev.tsv"

NOUN_LIST = """
花:はな 春:はる 秋:あき 風:かぜ 月:つき 山:やま 雪:ゆき 露:つゆ 人:ひと 心:こころ 夢:ゆめ 袖:そで
涙:なみだ 霞:かすみ 霧:きり 鶯:うぐひす 鹿:しか 雁:かり 松:まつ 梅:うめ 桜:さくら 萩:はぎ 空:そら
雲:くも 水:みづ 川:かは 海:うみ 浪:なみ 波:なみ 舟:ふね 里:さと 宿:やど 道:みち 野:の 夜:よ 年:とし
色:いろ 声:こゑ 影:かげ 世:よ 身:み 君:きみ 物:もの 我:われ 命:いのち 恋:こひ 衣:ころも 草:くさ
木:き 葉:は 雨:あめ 霜:しも 嵐:あらし 虫:むし 鳥:とり 庭:には 枕:まくら 都:みやこ
"""
NOUNS = dict(pair.split(":") for pair in NOUN_LIST.split())
PARTICLES = ("の", "に", "を", "は", "も", "ぞ", "や", "と")
AUXILIARIES = {
    "らむ": "けむ", "けむ": "らむ", "けり": "なり", "なり": "けり", "かな": "かも", "かも": "かな",
    "ける": "ぬる", "つつ": "けり", "らし": "らむ", "べし": "らむ", "ぬる": "ける",
}  # fmt: skip
VERBS = (  # (kanji, kana) forms that may stand for each other; most share their ending
    (("見れ", "みれ"), ("聞け", "きけ"), ("待て", "まて"), ("思へ", "おもへ")),
    (("見る", "みる"), ("散る", "ちる"), ("降る", "ふる"), ("知る", "しる"), ("残る", "のこる")),
    (("鳴く", "なく"), ("吹く", "ふく"), ("咲く", "さく"), ("行く", "ゆく"), ("置く", "おく")),
    (("思ふ", "おもふ"), ("逢ふ", "あふ"), ("問ふ", "とふ"), ("通ふ", "かよふ")),
    (("散り", "ちり"), ("降り", "ふり"), ("成り", "なり"), ("知り", "しり"), ("残り", "のこり")),
    (("見え", "みえ"), ("消え", "きえ"), ("聞え", "きこえ"), ("越え", "こえ")),
    (("立つ", "たつ"), ("待つ", "まつ")),
    (("立ち", "たち"), ("待ち", "まち"), ("打ち", "うち")),
    (("惜しき", "をしき"), ("悲しき", "かなしき"), ("恋しき", "こひしき"), ("久しき", "ひさしき")),
)
OLD_FORMS = dict(zip("声国恋桜鶏浜発学気広関沢浅", "聲國戀櫻鷄濱發學氣廣關澤淺", strict=True))
EXCHANGES = {"を": "お", "ゑ": "え", "ゐ": "い", "ほ": "を", "へ": "え", "ひ": "い", "ふ": "う"}


@dataclass(frozen=True)
class Change:
    """One real difference: signs of the copy against signs of the source."""

    kind: str
    copy: tuple[int, int]
    source: tuple[int, int]


@dataclass(frozen=True)
class Pair:
    """A copy, its source, what truly differs, and how the pair was made."""

    name: str
    copy: str
    source: str
    changes: tuple[Change, ...]


@dataclass(frozen=True)
class Poem:
    number: int
    text: str  # kanji and kana, phrases divided by ／
    kana: str


def poems() -> list[Poem]:
    found = []
    for line in DATA.read_text(encoding="utf-8").splitlines():
        cells = line.split("\t")
        if line[:1] != "#" and cells[0].isdecimal():
            found.append(Poem(int(cells[0]), cells[2], cells[3]))
    return found


def pairs(seed: int = 20261125) -> list[Pair]:
    """Return the pairs, the same for the same seed: for each poem one faithful copy and, where a
    place can be found, copies with one or two real differences."""
    chance = random.Random(seed)
    made = []
    for poem in poems():
        made.append(_mixed_against_kana(poem, chance, 0))
        made.append(_mixed_against_kana(poem, chance, 1))
        made.append(_kana_against_kana(poem, chance, 1 + chance.randrange(2)))
        made.append(_verbs(poem, chance, in_kana=False))
        made.append(_verbs(poem, chance, in_kana=True))
        made.append(_phrases(poem, chance))
    return [pair for pair in made if pair is not None]


@dataclass
class _Draft:
    """A copy under change: signs with the place each stands for in the source (or None)."""

    copy: list[str]
    source: list[str]
    changes: list[tuple[str, list[int], tuple[int, int]]]


def _spot(text: str, kana: str, chance: random.Random) -> tuple[int, int, str, str] | None:
    """Return the offsets of a noun and its reading that each stand once before a particle."""
    spots = []
    for kanji, reading in NOUNS.items():
        for particle in PARTICLES:
            a, b = kanji + particle, reading + particle
            if text.count(a) == kana.count(b) == 1 and text.count(kanji) == 1:
                before = text[text.index(a) - 1 : text.index(a)]
                if before in ("", "／", *"のにをはもぞやとがつ"):
                    spots.append((text.index(a), kana.index(b), kanji, particle))
    return chance.choice(sorted(spots)) if spots else None


def _verb_edit(
    text: str, kana: str, in_kana: bool, chance: random.Random
) -> tuple[int, int, str, int, int, str] | None:
    """Return the edit that puts another verb for one that stands once in the poem."""
    found = []
    for alike in VERBS:
        for written, spoken in alike:
            if text.count(written) == kana.count(spoken) == 1:
                other = chance.choice([form for form in alike if form[0] != written])
                at = kana.index(spoken) if in_kana else text.index(written)
                old, new = (spoken, other[1]) if in_kana else (written, other[0])
                place = kana.index(spoken)
                found.append((at, len(old), new, place, len(spoken), "replaced"))
    return chance.choice(found) if found else None


def _aux_spot(text: str, kana: str) -> tuple[int, int, str] | None:
    for aux in AUXILIARIES:
        if text.endswith(aux) and kana.endswith(aux):
            return len(text) - len(aux), len(kana) - len(aux), aux
    return None


def _edit(
    copy_word: str,
    source_word: str,
    spot: tuple[int, int, str, str],
    chance: random.Random,
    used: str,
) -> tuple[int, int, str, int, int, str]:
    """Return one change at a noun: copy offset, length, new signs, source offset, length, kind."""
    at, place, kanji, particle = spot
    kind = chance.choice(["noun", "noun", "particle", "omitted", "added"])
    after, behind = at + len(copy_word), place + len(source_word)
    if kind == "omitted" and particle == "の" and copy_word == kanji:
        kind = "particle"
    if kind == "noun":
        other = chance.choice([k for k in NOUNS if NOUNS[k] != NOUNS[kanji] and k not in used])
        new = other if copy_word == kanji else NOUNS[other]
        return at, len(copy_word), new, place, len(source_word), "replaced"
    if kind == "particle":
        new = chance.choice([p for p in PARTICLES if p != particle])
        return after, 1, new, behind, 1, "replaced"
    if kind == "omitted":
        return after, 1, "", behind, 1, "omitted"
    return after + 1, 0, "も" if particle in "にを" else "こそ", behind + 1, 0, "added"


def _mixed_against_kana(poem: Poem, chance: random.Random, differences: int) -> Pair | None:
    """A copy in kanji and kana without voicing marks against the poem wholly in kana."""
    text, kana = poem.text, poem.kana
    edits = []
    if differences:
        spot = _spot(text, kana, chance)
        if spot is None:
            return None
        edits.append(_edit(spot[2], NOUNS[spot[2]], spot, chance, text))
    name = f"{poem.number} kanji and kana against kana"
    return _made(name, text, kana, edits, chance, light=False)


def _kana_against_kana(poem: Poem, chance: random.Random, differences: int) -> Pair | None:
    """Two copies in kana, spelled by two hands."""
    kana = poem.kana
    edits = []
    spot = _spot(poem.text, kana, chance)
    if spot is not None:
        in_kana = (spot[1], spot[1], spot[2], spot[3])
        edits.append(_edit(NOUNS[spot[2]], NOUNS[spot[2]], in_kana, chance, poem.text))
    aux = _aux_spot(poem.text, kana)
    if aux is not None and (differences > 1 or not edits):
        at = aux[1]
        if not edits or edits[0][0] + edits[0][1] < at - 1:
            edits.append((at, 2, AUXILIARIES[aux[2]], at, 2, "replaced"))
    if not edits:
        return None
    return _made(f"{poem.number} kana against kana", kana, kana, edits, chance, light=True)


def _verbs(poem: Poem, chance: random.Random, *, in_kana: bool) -> Pair | None:
    """A verb replaced, in kana on both sides or in kanji against kana."""
    edit = _verb_edit(poem.text, poem.kana, in_kana, chance)
    if edit is None:
        return None
    copy = poem.kana if in_kana else poem.text
    return _made(f"{poem.number} verbs", copy, poem.kana, [edit], chance, light=in_kana)


def _phrases(poem: Poem, chance: random.Random) -> Pair | None:
    """A phrase left out, or two neighbouring phrases exchanged, in kanji and kana on both sides."""
    phrases = poem.text.split("／")
    if len(phrases) != 5:
        return None
    source = "".join(phrases)
    starts = [sum(map(len, phrases[:n])) for n in range(6)]
    at = chance.randrange(1, 4)
    if chance.random() < 0.5:
        edit = (starts[at], len(phrases[at]), "", starts[at], len(phrases[at]), "omitted")
    else:
        two = phrases[at + 1] + phrases[at]
        edit = (starts[at], len(two), two, starts[at], len(two), "moved")
    return _made(f"{poem.number} phrases", source, source, [edit], chance, light=True)


def _made(
    name: str,
    copy: str,
    source: str,
    edits: list[tuple[int, int, str, int, int, str]],
    chance: random.Random,
    *,
    light: bool,
) -> Pair:
    """Return the pair with its edits done, then spelled with noise; spans count signs."""
    changes: list[Change] = []
    out, done = "", 0
    for at, length, new, place, source_length, kind in sorted(edits):
        out += copy[done:at]
        start = len(out.replace("／", ""))
        out += new
        changes.append(Change(kind, (start, start + len(new)), (place, place + source_length)))
        done = at + length
    out += copy[done:]
    return Pair(
        name,
        noisy(out.replace("／", ""), chance, light),
        _voiceless(source, chance),
        tuple(changes),
    )


def _voiceless(text: str, chance: random.Random) -> str:
    if chance.random() < 0.5:
        return text
    return "".join(unicodedata.normalize("NFD", c)[0] if "ぁ" <= c <= "ゖ" else c for c in text)


def noisy(text: str, chance: random.Random, light: bool) -> str:
    """Return ``text`` spelled by another hand, sign for sign."""
    share = 0.15 if light else 0.3
    out = ""
    for at, char in enumerate(text):
        if "ぁ" <= char <= "ゖ":
            char = unicodedata.normalize("NFD", char)[0]
        if char in OLD_FORMS and chance.random() < 0.5:
            char = OLD_FORMS[char]
        elif at and char == "む" and text[at - 1] in "らけな" and chance.random() < 0.5:
            char = "ん"
        elif (
            at
            and char in EXCHANGES
            and chance.random() < share
            and text[at - 1] not in "のはもとにをぞやが"
        ):
            char = EXCHANGES[char]
        elif out and char == out[-1] and "ぁ" <= char <= "ゖ" and chance.random() < share:
            char = "ゝ"
        out += char
    return out
