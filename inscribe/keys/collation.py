"""Keys of ``inscribe collate``."""

from __future__ import annotations

from typing import Annotated, Any, NotRequired, TypedDict

from inscribe.keys.base import (
    Column,
    Count,
    Difference,
    End,
    Keyword,
    Mm,
    Share,
    Sign,
    Signs,
    Start,
    Window,
)
from inscribe.terms import GroupKind, Kind, Role, SourceKind, Verdict


class SpanKeys(TypedDict):
    """A stretch of one text."""

    start: Start
    end: End
    text: Annotated[str, "as carved"]


class GroupKeys(TypedDict):
    """A stretch of the copy and the stretch of the source that it answers to."""

    kind: Annotated[GroupKind, "how the two are related"]
    copy: Annotated[SpanKeys, "of the copy"]
    source: Annotated[SpanKeys, "of the source"]
    why: Annotated[str, "why they are related so, or empty"]
    order: NotRequired[Annotated[str, '"Chinese" where one side has the words in Chinese order']]


class PrintedKeys(TypedDict):
    """A difference as an edition prints it; differences in one phrase have one such span."""

    copy: Annotated[SpanKeys, "of the copy, with the word it hangs on"]
    source: Annotated[SpanKeys, "of the source, with the word it hangs on"]


class DifferenceKeys(GroupKeys):
    """A group that is not the same on both sides."""

    printed: Annotated[PrintedKeys, "the same as an edition prints it"]


class LevelKeys(TypedDict):
    """How much of the source the copy keeps, on one level."""

    signs: Annotated[Count, "signs of the source"]
    share: Annotated[Share, "the same as a share of the source"]


class LevelsKeys(TypedDict):
    """How much of the source the copy keeps."""

    as_carved: Annotated[
        LevelKeys | None, "the same signs; null where the source is a modern edition"
    ]
    characters: Annotated[LevelKeys, "the same characters in whatever form"]
    sounds: Annotated[LevelKeys, "the same sounds, however written"]
    words: Annotated[LevelKeys, "the same words, wherever they stand"]


class FidelityKeys(TypedDict):
    """Signs of the source by the kind of group they are in; added counts signs of the copy."""

    signs_in_source: Annotated[Count, "all signs of the source"]
    same: Annotated[Count, "the same sign"]
    form: Annotated[Count, "the same character in another form"]
    kana: Annotated[Count, "the same sound in other kana, voicing or historical spelling"]
    spelling: Annotated[Count, "the same word, kanji for kana or the reverse"]
    replaced: Annotated[Count, "another word"]
    omitted: Annotated[Count, "not in the copy"]
    added: Annotated[Count, "signs of the copy that the source does not have"]
    moved: Annotated[Count, "elsewhere in the copy"]
    unread: Annotated[Count, "cannot be judged: worn in one of the two"]
    levels: Annotated[LevelsKeys, "the same as shares, on four levels"]


class ColumnSpaceKeys(TypedDict):
    """What one column holds."""

    column: Column
    signs: Annotated[Count, "signs in it"]
    length: Annotated[Mm | None, "its length"]
    pitch: Annotated[Mm | None, "mean distance from sign to sign"]
    crowding: Annotated[
        float | None, "the widest column's pitch divided by this one's: above 1 is crowded"
    ]
    trend: Annotated[float | None, "share by which the pitch shrinks from first to second half"]
    free: Annotated[Mm | None, "left below it, the carver's own margin taken off"]


JudgementKeys = TypedDict(
    "JudgementKeys",
    {
        "difference": Difference,
        "verdict": Annotated[
            Verdict,
            "of a difference by which the copy saves signs. forced: space explains it, and the rest"
            " of the text had not fitted from there on at the carver's tightest pitch; eased: space"
            " explains it, though a tighter hand had found room; undecided; unexplained: space does"
            " not explain it; unmeasured",
        ],
        "weight": Annotated[
            float | None,
            Keyword("minimum", 0),
            "odds of want of space against anything else; null where unmeasured",
        ],
        "chance": Annotated[
            Share | None, "the weight as a chance: weight / (1 + weight), prior chance included"
        ],
        "for": Annotated[list[str], "measurements that speak for space, weightiest first"],
        "against": Annotated[list[str], "what speaks against it, weightiest first"],
        "rival": Annotated[str, "another explanation the texts suggest, or empty"],
        "evidence": Annotated[list[str], "for and against together; or what to measure"],
    },
)

JudgementKeys.__doc__ = "What the metal has to do with one difference."


class SpaceKeys(TypedDict):
    """What the metal had room for."""

    capacity: Annotated[Count | None, "signs at the carver's median pitch"]
    need: Annotated[Count, "signs of the source"]
    beside: Annotated[Count, "signs cut for what stands beside the copied text"]
    crowding: Annotated[list[ColumnSpaceKeys], "column by column"]
    median_pitch: Annotated[Mm | None, "the carver's median pitch"]
    capacity_uncrowded: Annotated[Count | None, "signs at the pitch of his widest column"]
    capacity_tightest: Annotated[Count | None, "signs at the pitch of his narrowest column"]
    length_wanted: Annotated[Mm | None, "what the source takes at his median pitch"]
    length_given: Annotated[Mm | None, "what his columns give, from head to foot line"]
    missing: Annotated[Count, "signs saved on the whole plate"]
    verdicts: Annotated[list[JudgementKeys], "of each difference by which signs are saved"]
    wanted: Annotated[list[str], "measurements that would decide what is unmeasured"]


class BreakKeys(TypedDict):
    """The end of a column of the copy."""

    copy: Annotated[Sign, "of the copy: the first one after the end"]
    source: Annotated[Sign, "of the source: the one that answers to it"]
    at_line_end: Annotated[bool, "whether a line of the source ends there too"]


class BesideKeys(TypedDict):
    """A passage that stands beside the copied text."""

    kind: Annotated[Kind, "what it is"]
    signs: Annotated[Signs, "where it stands in the copy"]
    text: Annotated[str, "as carved"]
    role: Annotated[Role | None, "what the person did whom it names"]


class CollationKeys(TypedDict):
    """A copy held against its source. Offsets count signs, ends of columns not counted."""

    groups: Annotated[list[GroupKeys], "in the order of the copy, together all of both texts"]
    fidelity: Annotated[FidelityKeys, "how much of the source stands in the copy"]
    differences: Annotated[list[DifferenceKeys], "the groups that are not the same"]
    space: Annotated[SpaceKeys | None, "what the metal had room for, where the record measures it"]
    window: Annotated[Window, "the part of the source that the copy was held against"]
    breaks: Annotated[list[BreakKeys], "the ends of the copy's columns"]
    beside: Annotated[list[BesideKeys], "what was not copied and stands beside the text"]
    notes: Annotated[list[str], "doubts a reader must be told of"]
    same_text: Annotated[bool, "whether copy and source are one text, however much they differ"]


class WitnessKeys(TypedDict):
    """One of several sources."""

    siglum: Annotated[str, "what the apparatus calls it"]
    title: Annotated[str, "its title"]
    kind: Annotated[SourceKind | None, "what it is, where the record says so"]
    has_text: Annotated[bool, "whether it contains the copy's text at all"]
    differences: Annotated[Count, "places where its wording is not the copy's"]
    shared_alone: Annotated[list[Count], "places where of all it alone has the copy's wording"]
    chance: Annotated[Share | None, "the chance that the copy follows it; null without the text"]


class WitnessReadingKeys(TypedDict):
    """What one source has at a place."""

    siglum: Annotated[str, "the source"]
    source: Annotated[SpanKeys, "its words"]
    agrees: Annotated[bool, "whether they are the copy's wording, however spelled"]


class PlaceKeys(TypedDict):
    """One entry of the apparatus; entries do not overlap."""

    copy: Annotated[SpanKeys, "the copy's words; none where only sources have some"]
    column: Annotated[Column | None, "where it begins; null in an empty copy"]
    sign: Annotated[Sign | None, "the same, counted within the column"]
    after: Annotated[str, "where the copy has none: its words before that place"]
    readings: Annotated[list[WitnessReadingKeys], "of every source that contains the text"]
    printed: Annotated[str, "the entry as an edition prints it"]


class TestimonyKeys(TypedDict):
    """A copy held against several sources."""

    witnesses: Annotated[list[WitnessKeys], "the sources, those that contain the text first"]
    places: Annotated[list[PlaceKeys], "the apparatus, in the order of the copy"]
    follows: Annotated[str | None, "the siglum of the source it follows; null where undecided"]


class SeveralCollationsKeys(TestimonyKeys):
    """A copy held against several sources."""

    collations: Annotated[list[CollationKeys], "with each source, in the order given"]


class CollationAnswerKeys(CollationKeys):
    """A copy held against its source. Offsets count signs, ends of columns not counted."""

    id: NotRequired[Annotated[Any, "of collate --pairs: the id that the pair was given with"]]
