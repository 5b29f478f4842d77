"""House style: the order of an entry's parts, its labels, brackets, italics and way of dating.

A style is a small TOML file; every key may be left out:

    labels = "en"                  # or "ja"
    italics = true                 # romanised words in italics
    brackets = "「」"              # around inscriptions quoted in running text; "" for none
    dates = "western"              # 1853 (Kaei 6), or "era": Kaei 6 (1853)
    law_note = false               # true for entries that leave the house: a last line on the law
    institution = ""               # whose records these are, for exports (LIDO, TEI)
    address = "https://..."        # where they will be published, for web addresses (IIIF)
    rights = ""                    # under what terms they may be used, a sentence or a URI
    language = "en"                # the language of translations and remarks, a BCP 47 tag
    font = ""                      # of pages and documents, before those usual for Japanese
    paper = "A4"                   # or "A5", "letter"
    days = "iso"                   # 1853-02-08; "words": 8 February 1853; "none": the year alone
    doubts = "list"                # "count": their number, the list folded
    explanations = "en"            # or "ja"; the language of the labels where it is not given
    order = ["carved", "kana", "romaji", "translation"]   # parts left out are not shown

With Japanese labels, the words of ``fittings.tsv`` (kinds, places, hands, executions) are
given in Japanese too, and so are explanations, by the templates of ``explanations.tsv``; what the
record says in other words, and glosses, stay as they are.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any, Literal

from inscribe import files, tables
from inscribe.cautions import caution
from inscribe.errors import InputError, Place, did_you_mean
from inscribe.record import suggested
from inscribe.report.explaining import in_japanese

PARTS = (
    "object",
    "images",
    "place",
    "carved",
    "compared",
    "source_image",
    "drawing",
    "romaji",
    "translation",
    "words",
    "kana",
    "current",
    "passages",
    "alternatives",
    "date",
    "signature",
    "persons",
    "source",
    "differences",
    "apparatus",
    "space",
    "fidelity",
    "readers",
    "doubts",
    "changes",
    "workings",
    "remarks",
    "cautions",
)
MAX_STYLE = 2**20  # bytes
MAX_LINE = 1000
PAPERS = {"A4": (210, 297), "A5": (148, 210), "letter": (216, 279)}  # mm
_CHOICES = {
    "labels": ("en", "ja"),
    "dates": ("western", "era"),
    "days": ("iso", "words", "none"),
    "doubts": ("list", "count"),
    "explanations": ("en", "ja"),
    "paper": tuple(PAPERS),
}
UNPUBLISHED = "https://inscribe.invalid"  # a name that RFC 6761 keeps free: it leads nowhere
_ADDRESS = re.compile(r"https?://[^\s\"<>]+")
_LANGUAGE = re.compile("[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*")


@dataclass(frozen=True, slots=True)
class Style:
    """How an entry is laid out; see the module's text for the meaning of each field.

    >>> Style().paper
    'A4'
    """

    labels: Literal["en", "ja"] = "en"
    italics: bool = True
    brackets: str = "「」"
    dates: Literal["western", "era"] = "western"
    law_note: bool = False
    institution: str = ""
    rights: str = ""
    address: str = UNPUBLISHED
    font: str = ""
    paper: Literal["A4", "A5", "letter"] = "A4"
    days: Literal["iso", "words", "none"] = "iso"
    doubts: Literal["list", "count"] = "list"
    explanations: Literal["", "en", "ja"] = ""
    language: str = "en"
    order: tuple[str, ...] = PARTS

    @property
    def page(self) -> tuple[int, int]:
        """Width and height of the paper in mm."""
        return PAPERS[self.paper]

    def label(self, key: str) -> str:
        """Return the label of a part or field in the language of the style."""
        known = _labels().get(key)
        return known[self.labels == "ja"] if known else key

    def part_label(self, key: str) -> str:
        """Return the label of a part of a signature."""
        known = _labels().get(f"part:{key}")
        return known[self.labels == "ja"] if known else key.replace("_", " ")

    def word(self, field: str, said: str) -> str:
        """Return what a record says of kind, place, hand or execution, in the style's language."""
        if self.labels == "ja":
            for each in suggested(field):
                if each.word == said:
                    return each.japanese
        return said

    def explained(self, text: str) -> str:
        """Return an explanation in the style's language of explanations."""
        return in_japanese(text) if self._is_explained_in_japanese else text

    @property
    def _is_explained_in_japanese(self) -> bool:
        return (self.explanations or self.labels) == "ja"

    def listed(self, *said: str) -> str:
        """Return what is said, one after the other, in the language of the labels."""
        return ("、" if self.labels == "ja" else ", ").join(filter(None, said))

    def joined(self, *clauses: str) -> str:
        """Return clauses one after the other, in the language of the explanations."""
        return self.between.join(filter(None, clauses))

    @property
    def between(self) -> str:
        """What stands between two clauses."""
        return "；" if self._is_explained_in_japanese else "; "

    def bracketed(self, said: str, more: str) -> str:
        """Return what is said with more in brackets behind it."""
        return f"{said}（{more}）" if self.labels == "ja" else f"{said} ({more})"

    def caution(self, key: str) -> str:
        """Return a caution in the language of the style."""
        return caution(key, self.labels)

    def quoted(self, text: str) -> str:
        """Return an inscription as quoted in running text."""
        return f"{self.brackets[:1]}{text}{self.brackets[1:]}"


def load(path: files.StrPath) -> Style:
    """Return the style of a TOML file.

    Raises:
        InputError: the file is not TOML, or a key or value is not one of those above.

    >>> from inscribe import load_style
    >>> load_style("examples/styles/house.toml").labels
    'ja'
    """
    try:
        data = tomllib.loads(files.read_text(Path(path), MAX_STYLE))
    except tomllib.TOMLDecodeError as error:
        raise InputError(f"the style is not TOML ({error})", Place(str(path)), "mend it") from error
    except (ValueError, RecursionError) as error:
        said = "the style is nested too deeply, or has a number of too many digits"
        raise InputError(said, Place(str(path))) from error
    known = {field.name for field in fields(Style)}
    for key, value in data.items():
        if key not in known:
            raise InputError(
                f"there is no style key {key!r}",
                Place(str(path)),
                did_you_mean(key, known) or "use " + ", ".join(sorted(known)),
            )
        if problem := _problem(key, value):
            raise InputError(
                f"the value of {key} does not do", Place(str(path)), f"write {problem}"
            )
    if "order" in data:
        data["order"] = tuple(data["order"])
    return Style(**data)


def _problem(key: str, value: Any) -> str:
    if key in _CHOICES and value not in _CHOICES[key]:
        said = [f'"{choice}"' for choice in _CHOICES[key]]
        return f"{', '.join(said[:-1])} or {said[-1]}"
    if key in ("italics", "law_note") and not isinstance(value, bool):
        return "true or false"
    if key in ("institution", "rights", "font") and not _is_line(value):
        return f"one line of at most {MAX_LINE} characters"
    if key == "address" and not (isinstance(value, str) and _ADDRESS.fullmatch(value)):
        return 'a web address, as "https://museum.example/inscriptions"'
    if key == "language" and not (isinstance(value, str) and _LANGUAGE.fullmatch(value)):
        return 'a language tag, as "en" or "de-CH"'
    if key == "brackets" and not (isinstance(value, str) and len(value) in (0, 2)):
        return "two characters, or none"
    if key == "order":
        return _problem_of_order(value)
    return ""


def _problem_of_order(parts: Any) -> str:
    if not isinstance(parts, list):
        return f"a list of: {', '.join(PARTS)}"
    if unknown := [str(part) for part in parts if part not in PARTS]:
        return "; ".join(
            filter(None, (f"a list of: {', '.join(PARTS)}", did_you_mean(unknown[0], PARTS)))
        )
    if len(set(parts)) < len(parts):
        twice = next(part for part in parts if parts.count(part) > 1)
        return f"a list that names each part once, and {twice} stands in it twice"
    return ""


def _is_line(value: Any) -> bool:
    return isinstance(value, str) and len(value) <= MAX_LINE and "\n" not in value


@tables.cached()
def _labels() -> dict[str, tuple[str, str]]:
    found: dict[str, tuple[str, str]] = {}
    for row in tables.rows("labels"):
        found.setdefault(row["key"], (row["en"], row["ja"]))
    return found
