"""What a person decides goes into the records: with who and when, and so that it can be undone.

In reading order: ``saying`` (浅霧軒=あさぎりけん), ``applying`` (into a record), ``offers`` (what
the program proposed, taken by number), ``history`` (changes, and the last taken back), ``many``
(the same in many records), ``merging`` (two transcriptions of one object).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.settling.applying import (
        Settled as Settled,
        Who as Who,
        places_of as places_of,
        settle as settle,
    )
    from inscribe.settling.history import (
        PastChange as PastChange,
        change as change,
        history_of as history_of,
        is_as_left as is_as_left,
        last_change as last_change,
        new_batch as new_batch,
        past_changes as past_changes,
        undo as undo,
    )
    from inscribe.settling.many import (
        Revision as Revision,
        chosen as chosen,
        revision as revision,
    )
    from inscribe.settling.merging import (
        ComparedPlace as ComparedPlace,
        MergeChoice as MergeChoice,
        Merging as Merging,
        compared as compared,
        merged as merged,
        mergings as mergings,
        pairs_of as pairs_of,
        surer_of as surer_of,
        told_otherwise as told_otherwise,
        written_in as written_in,
    )
    from inscribe.settling.offers import (
        reading_taken as reading_taken,
        restoration_taken as restoration_taken,
        source_taken as source_taken,
    )
    from inscribe.settling.saying import (
        Settlement as Settlement,
        is_said as is_said,
        settlement as settlement,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "applying": "Settled Who places_of settle",
            "history": (
                "PastChange change history_of is_as_left last_change new_batch past_changes undo"
            ),
            "many": "Revision chosen revision",
            "merging": (
                "ComparedPlace MergeChoice Merging compared merged mergings pairs_of "
                "surer_of told_otherwise written_in"
            ),
            "offers": "reading_taken restoration_taken source_taken",
            "saying": "Settlement is_said settlement",
        },
    )
