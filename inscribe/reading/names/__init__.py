"""How a name may be read: a ranked list with reasons, never one reading.

In reading order: ``ranking`` (the way in), ``model`` (one reading), ``lists`` (families and
places), ``people`` (the names of the user's own persons), ``dictionary`` (what a dictionary of
names has beside them), ``families`` (surnames), ``elements`` (how each
character is read in names), ``made`` (names made of them), ``kana`` and ``shapes`` (names half in
kana), ``sounds`` (how two readings join).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.names.dictionary import known as known
    from inscribe.reading.names.elements import (
        Position as Position,
        choices as choices,
        usualness as usualness,
    )
    from inscribe.reading.names.kana import (
        is_signed_with_mixed_name as is_signed_with_mixed_name,
        mixed_name as mixed_name,
    )
    from inscribe.reading.names.lists import (
        place_names as place_names,
        places_of_verse as places_of_verse,
        surnames as surnames,
    )
    from inscribe.reading.names.made import Ending as Ending, ending_of as ending_of
    from inscribe.reading.names.model import (
        MOST as MOST,
        NameKind as NameKind,
        NameReading as NameReading,
    )
    from inscribe.reading.names.people import (
        SORTS as SORTS,
        ListedForm as ListedForm,
        forms_in as forms_in,
    )
    from inscribe.reading.names.ranking import (
        own_names as own_names,
        readings as readings,
    )
    from inscribe.reading.names.settled import (
        settle as settle,
        settled_readings as settled_readings,
        settling as settling,
    )
    from inscribe.reading.names.shapes import (
        half_in_kana as half_in_kana,
        is_kana_name as is_kana_name,
        mixed_name_at as mixed_name_at,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "dictionary": "known",
            "elements": "Position choices usualness",
            "kana": "is_signed_with_mixed_name mixed_name",
            "lists": "place_names places_of_verse surnames",
            "made": "Ending ending_of",
            "model": "MOST NameKind NameReading",
            "people": "ListedForm SORTS forms_in",
            "ranking": "own_names readings",
            "settled": "settle settled_readings settling",
            "shapes": "half_in_kana is_kana_name mixed_name_at",
        },
    )
