"""The marks of Japanese document transcription (翻刻): common practice, no single source."""

from __future__ import annotations

from inscribe.notation.conventions import GAP, TALL_REPEAT, Bracket, Convention, Note
from inscribe.signs import Certainty, Intervention

_LEGEND = r"[「『｢](?P<legend>(?:\\.|[^」』｣\\\n])+)[」』｣]"

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
    column_ends="／/|｜",
    face_ends="」｣",
    patterns=(
        ("gap", "[［", GAP),
        ("kao", "(（", r"[(（]花押[)）]"),
        ("seal", "(（", rf"[(（]印(?:{_LEGEND})?[)）]"),
        ("repeat", "／", TALL_REPEAT),
        ("note", "(（", r"[(（](?P<note>[^()（）\n]{1,20})[)）]"),
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
    special=frozenset("()（）{}｛｝⟦⟧〚〛|｜[]［］〔〕〈〉<>＜＞／/「」｢｣□▢◻■-‐–—―…\\〵＼゛゜"),
)
