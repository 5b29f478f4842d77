r"""A mapping proposed from the headings of a list, in English, Japanese or German.

>>> from inscribe.importing.lists import list_of_bytes
>>> text = "登録番号,種別,銘文,長さ(cm),持ち主\nA-1,小柄,武州住,9.7,誰\n"
>>> read = list_of_bytes(text.encode(), "x")
>>> [(heading, *to) for heading, to in proposed_mapping(read).columns.items()][2:]
[('銘文', 'inscription.text', ''), ('長さ(cm)', 'measurements.length', 'cm'), ('持ち主', '', '')]
"""

from __future__ import annotations

import re
from collections import Counter
from unicodedata import normalize

from inscribe import tables
from inscribe.importing.cells import unit_of, usual_word
from inscribe.importing.mapping import (
    MEASURES,
    TARGETS,
    ListMapping,
    MappedTo,
    inscription_of,
    plain_key,
)
from inscribe.importing.model import CatalogueList
from inscribe.record import suggested

NEAR = 88.0  # of 100: how alike a heading must be to one of the table
MOST_WORDS = 40  # words of one key that a mapping lists to be filled in
SEVERAL = frozenset(("remarks", "inscription.remarks", ""))  # keys that several columns may be
NOT_GIVEN = "not given"
_IN_BRACKETS = re.compile(r"[(（\[［].*?[)）\]］]")
_NO_WORD = re.compile(r"[^\w]|_|(?<![a-z])(?:mm|cm)(?![a-z])")


def proposed_mapping(found: CatalogueList) -> ListMapping:
    """Return the mapping that the headings of a list suggest.

    A heading that says nothing known becomes no key; its column is kept with the row.
    """
    columns: dict[str, MappedTo] = {}
    taken: set[str] = set()
    for heading in found.headings:
        key = _free(_key_of(heading), taken)
        taken.add(key)
        sized = key == MEASURES or (key and TARGETS[plain_key(key)].holds == "size")
        columns[heading] = MappedTo(key, unit_of(heading) if sized else "")
    return ListMapping(columns, _always(columns), _words(found, columns))


def _free(key: str, taken: set[str]) -> str:
    """Return a key that no column before has; of a further inscription the next number's."""
    if key in SEVERAL or key not in taken:
        return key
    if inscription_of(key) is None:
        return ""
    rest = key.partition(".")[2]
    return next(
        (free for n in range(2, 10) if (free := f"inscription {n}.{rest}") not in taken), ""
    )


def _always(columns: dict[str, MappedTo]) -> dict[str, str]:
    """Return what must be said of every record and no column says."""
    keys = {to.key for to in columns.values()}
    numbers = sorted({n for key in keys if (n := inscription_of(key)) is not None})
    made = {} if "kind" in keys else {"kind": NOT_GIVEN}
    for number in numbers:
        name = "inscription" if number == 0 else f"inscription {number + 1}"
        made[f"{name}.place"] = NOT_GIVEN
    return {**made, "state": "drafted"} if "state" not in keys else made


def _words(found: CatalogueList, columns: dict[str, MappedTo]) -> dict[str, dict[str, str]]:
    """Return, for each key with usual words, those of the list that are none of them."""
    made: dict[str, dict[str, str]] = {}
    for heading, to in columns.items():
        field = TARGETS.get(plain_key(to.key))
        if field is None or not field.vocabulary or field.vocabulary == "place":
            continue
        usual = {word.word for word in suggested(field.vocabulary)}
        said = Counter(dict(row.cells)[heading].strip() for row in found.rows)
        unknown = [
            w for w, _ in said.most_common() if w and usual_word(field.vocabulary, w) not in usual
        ]
        if unknown:
            made[plain_key(to.key)] = dict.fromkeys(unknown[:MOST_WORDS], "")
    return made


def _key_of(heading: str) -> str:
    """Return the key that a heading names, or an empty one.

    >>> _key_of("Inv.-Nr."), _key_of("Bemerkungen"), _key_of("xyz")
    ('id', 'remarks', '')
    """
    from rapidfuzz import fuzz, process

    known = _known()
    for said in dict.fromkeys((_plain(heading), _plain(_IN_BRACKETS.sub(" ", heading)))):
        if said in known:
            return known[said]
        if len(said) > 3 and (
            near := process.extractOne(said, known.keys(), scorer=fuzz.ratio, score_cutoff=NEAR)
        ):
            return known[near[0]]
    return ""


def _plain(heading: str) -> str:
    """Return a heading without capitals, marks and units: Inv.-Nr. is invnr."""
    return _NO_WORD.sub("", normalize("NFKC", heading).casefold())


@tables.cached()
def _known() -> dict[str, str]:
    return {_plain(row["heading"]): row["key"] for row in tables.rows("import_headings")}
