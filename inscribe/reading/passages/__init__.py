"""Division: which stretches of an inscription are passages, and of what kind each is.

In reading order: ``dividing`` (the way in: the best division and the next), ``at_once`` (texts
that are plainly one passage), ``stretches`` (what is weighed), ``cuts`` (where passages may meet),
then what speaks for each kind: ``language`` and ``poems`` (verse and prose), ``proverbs``,
``lines`` (Chinese), ``titles`` and ``topics`` (headings), ``signings`` (signatures; ``not_signed``
what is no part of one, ``persons_named`` whether there are two), ``days`` (dates, dedications),
``surely`` (columns that need no weighing), and ``order`` (which kind follows which), ``roles``
(what a person named did), ``known`` (what a person has settled, and the extent of a source that is
copied).

``inscription/at_once.py`` tells what is plainly one passage; everything else ``passages/``
divides: ``cuts.py`` (where passages may meet, and the price), a weight for each stretch as each
kind on one scale (natural log odds against a plain background: ``poems``, ``lines``, ``titles``,
``days``, ``signings``), ``passage_order.tsv`` (which kind follows which), and ``dividing.py``
(dynamic programming; a near second is a doubt). Constants were set on the ``look`` halves of
tests/data/composed_*. What a person settled (``[[inscription.passage]]``, ``--passage``) and a
source that is copied come in by ``known.py``. ``inscription/readers.py`` then reads each passage
as its kind, ``joining.py`` puts them together. Headings and dedications: ``passage_frames.tsv``;
verbs that tell who did what: ``passage_roles.tsv``; poets beside their poems: ``poets.tsv``,
``poets_ranks.tsv``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.passages.days import is_date as is_date
    from inscribe.reading.passages.dividing import (
        PassageDivision as PassageDivision,
        divisions_of as divisions_of,
    )
    from inscribe.reading.passages.known import (
        PassageLike as PassageLike,
        source_extent as source_extent,
        spans_settled as spans_settled,
    )
    from inscribe.reading.passages.not_signed import (
        begins_in_chinese as begins_in_chinese,
        is_dedication as is_dedication,
    )
    from inscribe.reading.passages.proverbs import proverb_words as proverb_words
    from inscribe.reading.passages.sayings import is_known_saying as is_known_saying
    from inscribe.reading.passages.signings import (
        role_of_signing as role_of_signing,
    )
    from inscribe.reading.passages.stretches import (
        KnownPassage as KnownPassage,
        PassageStretch as PassageStretch,
        part_of as part_of,
    )
    from inscribe.reading.passages.surely import (
        is_surely_signed as is_surely_signed,
        names_one as names_one,
    )
    from inscribe.reading.passages.titles import (
        Frame as Frame,
        frame_of as frame_of,
        framed_weight as framed_weight,
        is_work as is_work,
        set_headings as set_headings,
    )
    from inscribe.reading.passages.topics import (
        OF_A_PLACE as OF_A_PLACE,
        is_district as is_district,
        is_landmark as is_landmark,
        is_of_words as is_of_words,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "days": "is_date",
            "dividing": "PassageDivision divisions_of",
            "known": "PassageLike source_extent spans_settled",
            "not_signed": "begins_in_chinese is_dedication",
            "proverbs": "proverb_words",
            "sayings": "is_known_saying",
            "signings": "role_of_signing",
            "stretches": "KnownPassage PassageStretch part_of",
            "surely": "is_surely_signed names_one",
            "topics": "OF_A_PLACE is_district is_landmark is_of_words",
            "titles": "Frame frame_of framed_weight is_work set_headings",
        },
    )
