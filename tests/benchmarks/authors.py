"""Who wrote the texts of a benchmark, and whether their rows were looked at or only measured."""

from __future__ import annotations

# By the beginning of a set's name.
AUTHORS = {
    "Hyakunin": "13th century; readings collected by others",
    "development": "first author, who wrote the tables",
    "fresh": "first author, after the tables",
    "manuscript spelling": "first author",
    "signatures_f_": "sixth author, invented",
    "signatures_f,": "sixth author, invented",
    "signatures_fresh": "first author, invented after the tables",
    "signatures": "first author, invented",
    "haiku_m": "thirteenth author (M), before 1600 or invented",
    "waka_m": "thirteenth author (M), before 1600 or invented",
    "kyoka_m": "thirteenth author (M), invented",
    "endings_m": "thirteenth author (M), invented",
    "prose_m": "thirteenth author (M), invented",
    "haiku_n": "fourteenth author (N), invented",
    "waka_n": "fourteenth author (N), before 1600 or invented",
    "kyoka_n": "fourteenth author (N), invented",
    "endings_n": "fourteenth author (N), before 1600 or invented",
    "prose_n": "fourteenth author (N), invented",
    "haiku": "second author, before 1600 or invented",
    "plate words": "second author, invented",
    "formulas, ": "second author, invented",
    "formulas_look": "second author, invented",
    "formulas_measure": "second author, invented",
    "formulas_d": "fourth author, invented",
    "formulas_f": "sixth author, invented",
    "formulas_g": "seventh author (G), invented",
    "formulas_h": "eighth author (H), invented",
    "formulas_j": "tenth author (J), invented",
    "formulas_l": "twelfth author (L), invented",
    "formulas_n": "fourteenth author (N), invented",
    "prose_c": "third author, invented",
    "prose_d": "fourth author, invented",
    "endings_d": "fourth author, invented",
    "spans_d": "fourth author, his own apparatus",
    "usual": "others; shared list",
    "composed_a": "second author (A), invented, saw neither tables nor program",
    "composed_b": "another second author (B), invented, saw neither tables nor program",
    "composed_d": "fourth author (D), invented, saw neither tables nor program",
    "composed_e": "fifth author (E), invented, saw neither tables nor program",
    "composed_f": "sixth author (F), invented, saw neither tables nor program",
    "composed_g": "seventh author (G), invented, saw neither tables nor program",
    "composed_h": "eighth author (H), invented, saw neither tables nor program",
    "composed_i": "ninth author (I), invented, saw neither tables nor program",
    "composed_j": "tenth author (J), invented, saw neither tables nor program",
    "composed_k": "eleventh author (K), invented, saw neither tables nor program",
    "composed_n": "fourteenth author (N), invented, saw neither tables nor program",
    "composed_inscriptions": "others; shared list",
    "worn_n": "fourteenth author (N), before 1600 or invented",
    "worn_m": "thirteenth author (M), before 1600 or invented",
    "worn_l": "twelfth author (L), invented",
    "worn": "a later author, invented",
    "modern": "first author",
    "chinese": "first author, from customary readings",
    "verse_dev": "first author, who wrote the tables",
    "verse_fresh": "first author, after the tables",
}
LATER = "a later author, invented"  # sets that came after this table was made
LOOKED = ("odd", "look", "usual")


def author(name: str) -> str:
    """Return who wrote a set.

    >>> author("prose_c, look")
    'third author, invented'
    """
    return next((said for begin, said in AUTHORS.items() if name.startswith(begin)), LATER)


def how(name: str) -> str:
    """Return whether a set was looked at.

    >>> how("haiku, measure"), how("development, odd, no voicing marks")
    ('measured', 'looked at')
    """
    return "looked at" if any(word in name for word in LOOKED) else "measured"


def told(name: str) -> str:
    """Return the line that a benchmark prints of a set before its figures.

    >>> told("prose_c_measure")
    'prose_c_measure: by third author, invented; measured'
    """
    return f"{name}: by {author(name)}; {how(name)}"
