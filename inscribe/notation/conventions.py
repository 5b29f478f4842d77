"""The two conventions as data: which mark says what.

Sources: the Leiden conventions as published (B. A. van Groningen, "Projet d'unification des
systèmes de signes critiques", Chronique d'Égypte 7, 1932; the extensions ``(?)``, ``(!)``,
``((…))`` and ``⟦…⟧`` as in epigraphic corpora today), from memory; the Japanese marks are common
practice of 翻刻, no single source. Where that practice has several marks for one thing, or none,
the choice made here is listed in ``inscribe.notation``.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from inscribe.signs import Certainty, Intervention


@dataclass(frozen=True, slots=True)
class Bracket:
    """What a pair of brackets says of every sign between them."""

    name: str  # as it appears in messages
    opening: str  # as rendered
    closing: str  # as rendered
    closings: str  # every character that closes it
    certainty: Certainty | None = None
    intervention: Intervention | None = None


@dataclass(frozen=True, slots=True)
class Note:
    """What a note after a sign says of it."""

    text: str  # as rendered
    certainty: Certainty | None = None
    intervention: Intervention | None = None
    sic: bool = False


@dataclass(frozen=True, slots=True)
class Convention:
    """One way of writing a transcription down."""

    name: str
    brackets: dict[str, Bracket]  # by opening character
    notes: dict[str, Note]  # by content of the note's brackets
    marks: dict[str, Certainty]  # characters that stand for a sign without text
    column_ends: str
    face_ends: str
    patterns: tuple[tuple[str, re.Pattern[str]], ...]  # what a trigger may begin, tried in order
    kao: str
    seal: tuple[str, str, str]  # before the legend, after it, and a seal without legend
    legend_ends: str  # characters a legend must escape
    gap: str
    unreadable: str
    column_end: str
    face_end: str
    parents: bool  # whether a kana may be followed by its parent kanji
    expected: str  # what may stand in round brackets, for messages
    triggers: frozenset[str] = field(default=frozenset())
    special: frozenset[str] = field(default=frozenset())  # signs that need an escape

    @property
    def closings(self) -> str:
        """Every character that closes some bracket."""
        return "".join(bracket.closings for bracket in self.brackets.values())


_SPACE = r"[ \t\u3000]"
_LEGEND_JAPANESE = r"[「『｢](?P<legend>(?:\\.|[^」』｣\\\n])+)[」』｣]"
_GAP = rf"[\[［](?:{_SPACE}*|{_SPACE}*(?:[-‐–—―]{_SPACE}*)+|{_SPACE}*…+{_SPACE}*)[\]］]"

_TALL_REPEAT = re.compile("／[″゛]?＼")

_RESTORED = Bracket("restored", "［", "］", "]］", certainty=Certainty.RESTORED)
_SUPPLIED = Bracket("supplied", "〔", "〕", "〕", intervention=Intervention.SUPPLIED)
_EXPANDED = Bracket("expanded", "〈", "〉", "〉>＞", intervention=Intervention.EXPANDED)

_DOUBTFUL = Note("(カ)", certainty=Certainty.DOUBTFUL)
_DAMAGED = Note("(損)", certainty=Certainty.DAMAGED)
_STRUCK = Note("(抹)", certainty=Certainty.STRUCK)
_SUPERFLUOUS = Note("(衍)", intervention=Intervention.SUPERFLUOUS)
_SIC = Note("(ママ)", sic=True)

JAPANESE = Convention(
    name="japanese",
    brackets={
        **dict.fromkeys("[［", _RESTORED),
        "〔": _SUPPLIED,
        **dict.fromkeys("〈<＜", _EXPANDED),
    },
    notes={
        **dict.fromkeys(("カ", "ヵ", "ｶ", "か", "?", "？"), _DOUBTFUL),
        **dict.fromkeys(("損", "破損"), _DAMAGED),
        **dict.fromkeys(("抹", "抹消"), _STRUCK),
        **dict.fromkeys(("衍", "衍字"), _SUPERFLUOUS),
        **dict.fromkeys(("ママ", "ﾏﾏ", "まま"), _SIC),
    },
    marks={
        **dict.fromkeys("□▢◻", Certainty.UNREADABLE),
        "■": Certainty.STRUCK,
    },
    column_ends="／/",
    face_ends="」｣",
    patterns=(
        ("gap", re.compile(_GAP)),
        ("kao", re.compile(r"[(（]花押[)）]")),
        ("seal", re.compile(rf"[(（]印(?:{_LEGEND_JAPANESE})?[)）]")),
        ("repeat", _TALL_REPEAT),
        ("note", re.compile(r"[(（](?P<note>[^()（）\n]{1,20})[)）]")),
    ),
    kao="（花押）",
    seal=("（印「", "」）", "（印）"),
    legend_ends="」』｣\\",
    gap="［　　］",
    unreadable="□",
    column_end="／",
    face_end="」",
    parents=True,
    expected=(
        "expected (カ) doubtful, (ママ) sic, (損) damaged, (抹) struck out or (衍) superfluous "
        "after a sign, a kana's parent kanji after a kana, or （花押）, （印）, （印「…」）"
    ),
    triggers=frozenset("[［(（／"),
    special=frozenset("()（）[]［］〔〕〈〉<>＜＞／/「」｢｣□▢◻■-‐–—―…\\〵＼゛゜"),
)

LEIDEN = Convention(
    name="leiden",
    brackets={
        **dict.fromkeys("[［", Bracket("restored", "[", "]", "]］", Certainty.RESTORED)),
        **dict.fromkeys("⟦〚", Bracket("struck out", "⟦", "⟧", "⟧〛", Certainty.STRUCK)),
        **dict.fromkeys(
            "<＜⟨〈",
            Bracket("supplied", "<", ">", ">＞⟩〉", intervention=Intervention.SUPPLIED),
        ),
        **dict.fromkeys(
            "{｛", Bracket("superfluous", "{", "}", "}｝", intervention=Intervention.SUPERFLUOUS)
        ),
        **dict.fromkeys(
            "(（", Bracket("expanded", "(", ")", ")）", intervention=Intervention.EXPANDED)
        ),
    },
    notes={
        **dict.fromkeys("?？", Note("(?)", certainty=Certainty.DOUBTFUL)),
        **dict.fromkeys("!！", Note("(!)", sic=True)),
    },
    marks={
        **dict.fromkeys(".□▢◻", Certainty.UNREADABLE),
        "■": Certainty.STRUCK,
    },
    column_ends="|｜/／",
    face_ends="‖",
    patterns=(
        ("gap", re.compile(_GAP)),
        ("kao", re.compile(r"\(\((?:kao|花押)\)\)|（（花押））")),
        ("seal", re.compile(r"\(\((?:seal|印)(?:[:：] ?(?P<legend>(?:\\.|[^()\\\n])+))?\)\)")),
        ("note", re.compile(r"[(（](?P<note>[?？!！])[)）]")),
        ("repeat", _TALL_REPEAT),
        ("face", re.compile(r"\|\||｜｜")),
    ),
    kao="((kao))",
    seal=("((seal: ", "))", "((seal))"),
    legend_ends="()\\",
    gap="[---]",
    unreadable=".",
    column_end="|",
    face_end="||",
    parents=False,
    expected="expected (?) doubtful or (!) sic after a sign, (abc), ((kao)), ((seal: legend))",
    triggers=frozenset("[［(（|｜／"),
    special=frozenset("()（）!！?？[]［］<>＜＞⟨⟩〈〉{}｛｝⟦⟧〚〛|｜‖/／.□▢◻■-‐–—―…\\〵＼゛゜"),
)

CONVENTIONS = {convention.name: convention for convention in (JAPANESE, LEIDEN)}
