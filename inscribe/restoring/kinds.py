"""What to call the classes of words of a signature, where evidence is told."""

from __future__ import annotations

_KINDS = {
    "date>era": "era",
    "date>era_year": "year",
    "date>full_year": "year",
    "date>year_number": "number of a year",
    "date>year": "word for year",
    "date>cycle": "sexagenary year",
    "date>year_cycle": "sexagenary year",
    "date>branch": "animal year",
    "date>year_branch": "animal year",
    "date>month_number": "number of a month",
    "date>month": "word for month",
    "date>month_name": "name of a month",
    "date>season": "season",
    "date>season_month": "season before its month",
    "date>day_number": "number of a day",
    "date>day": "word for day",
    "date>auspicious": "word for an auspicious day",
    "age>before": "word before an age",
    "age>number": "age",
    "age>after": "word after an age",
    "age>bare_number": "age",
    "age>old": "word after an age",
    "patron>whole": "commission",
    "patron>of": "particle",
    "unlisted_place": "place",
}


def kind_name(kind: str) -> str:
    """Return what to call a class of words.

    >>> kind_name("date>era"), kind_name("opener:place")
    ('era', 'opener')
    """
    return _KINDS.get(kind, kind.rpartition(">")[2].partition(":")[0].replace("_", " "))
