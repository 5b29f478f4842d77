"""The marks of the Leiden conventions, from memory of the published standard."""

from __future__ import annotations

from inscribe.notation.conventions import GAP, TALL_REPEAT, Bracket, Convention, Note
from inscribe.signs import Certainty, Intervention

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
        ("gap", "[［", GAP),
        ("kao", "(（", r"\(\((?:kao|花押)\)\)|（（花押））"),
        ("seal", "(", r"\(\((?:seal|印)(?:[:：] ?(?P<legend>(?:\\.|[^()\\\n])+))?\)\)"),
        ("note", "(（", r"[(（](?P<note>[?？!！])[)）]"),
        ("repeat", "／", TALL_REPEAT),
        ("face", "|｜", r"\|\||｜｜"),
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
    special=frozenset(
        "〔〕「」｢｣()（）!！?？[]［］<>＜＞⟨⟩〈〉{}｛｝⟦⟧〚〛|｜‖/／.□▢◻■-‐–—―…\\〵＼゛゜"
    ),
)
