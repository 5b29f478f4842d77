"""What is printed as JSON: every key of it, described once, and the JSON Schemas made from that.

The contract with scripts. A key is a line of a typed dict here, one file for each command or room
(``base`` has what several hold), and a value in the ``to_dict`` of the type that it is printed
from; mypy refuses one without the other. ``schemas`` makes the schemas.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.keys.checking import (
        CheckKeys as CheckKeys,
        FindingKeys as FindingKeys,
        TaskKeys as TaskKeys,
        WorkKeys as WorkKeys,
    )
    from inscribe.keys.collation import (
        BesideKeys as BesideKeys,
        BreakKeys as BreakKeys,
        CollationAnswerKeys as CollationAnswerKeys,
        CollationKeys as CollationKeys,
        ColumnSpaceKeys as ColumnSpaceKeys,
        DifferenceKeys as DifferenceKeys,
        FidelityKeys as FidelityKeys,
        GroupKeys as GroupKeys,
        JudgementKeys as JudgementKeys,
        LevelKeys as LevelKeys,
        LevelsKeys as LevelsKeys,
        PlaceKeys as PlaceKeys,
        PrintedKeys as PrintedKeys,
        SeveralCollationsKeys as SeveralCollationsKeys,
        SpaceKeys as SpaceKeys,
        SpanKeys as SpanKeys,
        TestimonyKeys as TestimonyKeys,
        WitnessKeys as WitnessKeys,
        WitnessReadingKeys as WitnessReadingKeys,
    )
    from inscribe.keys.concordance import (
        ClusterKeys as ClusterKeys,
        ClustersKeys as ClustersKeys,
        ConcordanceKeys as ConcordanceKeys,
        CountsKeys as CountsKeys,
        DocumentKeys as DocumentKeys,
        MayNameShortKeys as MayNameShortKeys,
        OccurrenceKeys as OccurrenceKeys,
        PersonNamedKeys as PersonNamedKeys,
    )
    from inscribe.keys.dates import (
        AgeKeys as AgeKeys,
        CandidateYearKeys as CandidateYearKeys,
        DateAnswerKeys as DateAnswerKeys,
        DateKeys as DateKeys,
        DatesKeys as DatesKeys,
        EraYearKeys as EraYearKeys,
        ExplanationKeys as ExplanationKeys,
    )
    from inscribe.keys.entry import (
        EntryKeys as EntryKeys,
        InscriptionEntryKeys as InscriptionEntryKeys,
        ReaderKeys as ReaderKeys,
        SizesKeys as SizesKeys,
        SourceNamedKeys as SourceNamedKeys,
    )
    from inscribe.keys.forms import (
        ChangeKeys as ChangeKeys,
        FormKeys as FormKeys,
        MergedKeys as MergedKeys,
        PartKeys as PartKeys,
        RelationKeys as RelationKeys,
        RepeatKeys as RepeatKeys,
        SignKeys as SignKeys,
    )
    from inscribe.keys.importing import (
        ImportedRowKeys as ImportedRowKeys,
        ImportKeys as ImportKeys,
        MarkStepKeys as MarkStepKeys,
        TroubleKeys as TroubleKeys,
    )
    from inscribe.keys.indexing import (
        IndexesKeys as IndexesKeys,
        IndexFormKeys as IndexFormKeys,
        IndexHeadingKeys as IndexHeadingKeys,
        TranslatedKeys as TranslatedKeys,
        TranslationsKeys as TranslationsKeys,
        WhereKeys as WhereKeys,
    )
    from inscribe.keys.measuring import (
        MeasuredColumnKeys as MeasuredColumnKeys,
        MeasuredKeys as MeasuredKeys,
        MeasuredSignKeys as MeasuredSignKeys,
        PlateKeys as PlateKeys,
    )
    from inscribe.keys.merging import (
        MergeInscriptionKeys as MergeInscriptionKeys,
        MergeKeys as MergeKeys,
        MergePlaceKeys as MergePlaceKeys,
        MergeSideKeys as MergeSideKeys,
    )
    from inscribe.keys.reading import (
        AlternativeKeys as AlternativeKeys,
        DoubtKeys as DoubtKeys,
        MayNameKeys as MayNameKeys,
        NameKeys as NameKeys,
        NameReadingKeys as NameReadingKeys,
        PassageKeys as PassageKeys,
        ReadingKeys as ReadingKeys,
        SignaturePartKeys as SignaturePartKeys,
        TokenKeys as TokenKeys,
    )
    from inscribe.keys.restoring import (
        CandidateKeys as CandidateKeys,
        EvidenceKeys as EvidenceKeys,
        LacunaKeys as LacunaKeys,
        RestorationKeys as RestorationKeys,
        SourceLikelyKeys as SourceLikelyKeys,
    )
    from inscribe.keys.schemas import (
        COUNTS_SIGNS as COUNTS_SIGNS,
        OUTPUTS as OUTPUTS,
        Schema as Schema,
        schema_of as schema_of,
    )
    from inscribe.keys.sources import (
        HitKeys as HitKeys,
        HitsKeys as HitsKeys,
        RefusedKeys as RefusedKeys,
        SourceTextKeys as SourceTextKeys,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "checking": "CheckKeys FindingKeys TaskKeys WorkKeys",
            "collation": (
                "BesideKeys BreakKeys CollationAnswerKeys CollationKeys ColumnSpaceKeys "
                "DifferenceKeys FidelityKeys GroupKeys JudgementKeys LevelKeys LevelsKeys "
                "PlaceKeys PrintedKeys SeveralCollationsKeys SpaceKeys SpanKeys TestimonyKeys "
                "WitnessKeys WitnessReadingKeys"
            ),
            "concordance": (
                "ClusterKeys ClustersKeys ConcordanceKeys CountsKeys DocumentKeys "
                "MayNameShortKeys OccurrenceKeys PersonNamedKeys"
            ),
            "dates": (
                "AgeKeys CandidateYearKeys DateAnswerKeys DateKeys DatesKeys EraYearKeys "
                "ExplanationKeys"
            ),
            "entry": "EntryKeys InscriptionEntryKeys ReaderKeys SizesKeys SourceNamedKeys",
            "forms": "ChangeKeys FormKeys MergedKeys PartKeys RelationKeys RepeatKeys SignKeys",
            "measuring": "MeasuredColumnKeys MeasuredKeys MeasuredSignKeys PlateKeys",
            "merging": "MergeInscriptionKeys MergeKeys MergePlaceKeys MergeSideKeys",
            "reading": (
                "AlternativeKeys DoubtKeys MayNameKeys NameKeys NameReadingKeys PassageKeys "
                "ReadingKeys SignaturePartKeys TokenKeys"
            ),
            "restoring": "CandidateKeys EvidenceKeys LacunaKeys RestorationKeys SourceLikelyKeys",
            "importing": "ImportKeys ImportedRowKeys MarkStepKeys TroubleKeys",
            "indexing": (
                "IndexFormKeys IndexHeadingKeys IndexesKeys TranslatedKeys TranslationsKeys "
                "WhereKeys"
            ),
            "schemas": "COUNTS_SIGNS OUTPUTS Schema schema_of",
            "sources": "HitKeys HitsKeys RefusedKeys SourceTextKeys",
        },
    )
