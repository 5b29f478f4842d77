"""What stands in the cells of other people's lists: names with their kana, years, roles.

>>> forms_of_cell("雨蛙庵（ウアアン）、雨庵")
['雨蛙庵=うああん', '雨庵']
>>> year_of_cell("c. 1712"), year_of_cell("正徳二年"), year_of_cell("1712?")
('about 1712', '1712', 'about 1712')
>>> life_of_cell("1712–1780"), life_of_cell("?-1780"), life_of_cell("d. 1780")
(('1712', '1780'), ('', '1780'), ('', '1780'))
"""

from __future__ import annotations

import re
import unicodedata

from inscribe import tables
from inscribe.reading.spelling import hiragana

_BETWEEN_NAMES = re.compile(r"[;；,，、/／|\n・]+|\s{2,}")
_NAME = re.compile(
    r"(?P<written>[^\s;=!-.:<-~（）［］〔〕【】＝]+)\s*(?:[=＝\s]\s*(?P<after>[ぁ-ゖァ-ヺー]+)"
    r"|[(（\[［〔【](?P<within>[ぁ-ゖァ-ヺー]+(?: [ぁ-ゖァ-ヺー]+)*)[)）\]］〕】])?"
)
_KANA = re.compile("[ぁ-ゖァ-ヺー]+([ |][ぁ-ゖァ-ヺー]+)*")
_WORD = re.compile("[^\\s;!-.:<-~]+")
_ABOUT = re.compile(
    r"(?i)^(?:about|around|approximately|circa|ca\.?|c\.?|um|vers|頃|約)\s*(?=[0-9])"
)
_AFTER = re.compile(r"(?:年?\s*(?:\?|？|頃|ごろ|か))$")
_YEAR = re.compile("[0-9]{3,4}")
_JAPANESE = re.compile("[一-鿿]")
_DASH = re.compile(r"\s*(?:[-–—―〜～~]|\bto\b|\bbis\b)\s*")
_BORN = re.compile(r"(?i)^(?:born|b\.|\*|geb\.)\s*")
_DIED = re.compile(r"(?i)^(?:died|d\.|†|gest\.)\s*")
_NOT_KNOWN = frozenset({"", "?", "？", "unknown", "不明", "未詳", "不詳"})


def plain(cell: str) -> str:
    """Return a cell without space around it, its digits and Latin letters of half width."""
    return "".join(
        unicodedata.normalize("NFKC", char) if "！" <= char <= "～" else char for char in cell
    ).strip()


def with_hyphens(cell: str) -> str:
    """Return years as ``people.tsv`` has them: a plain hyphen between, digits of half width."""
    return _DASH.sub("-", plain(cell))


def forms_of_cell(cell: str) -> list[str] | None:
    """Return the names of a cell as ``people.tsv`` has them; None where there is anything else."""
    found: list[str] = []
    for item in filter(None, (part.strip() for part in _BETWEEN_NAMES.split(cell))):
        match = _NAME.fullmatch(item)
        if match is None or not _WORD.fullmatch(match["written"]):
            return None
        kana = hiragana(match["after"] or match["within"] or "")
        found.append(f"{match['written']}={kana}" if kana else match["written"])
    return found


def with_kana(forms: list[str], cell: str) -> list[str] | None:
    """Return names with the kana of a cell beside them, one for each name that has none.

    None where the cell does not say as many readings as there are names without one.
    """
    said = [hiragana(part.strip()) for part in _BETWEEN_NAMES.split(cell) if part.strip()]
    bare = [form for form in forms if "=" not in form]
    if len(said) != len(bare) or not all(map(_KANA.fullmatch, said)):
        return None
    given = dict(zip(bare, said, strict=True))
    return [form if "=" in form else f"{form}={given[form]}" for form in forms]


def words_of_cell(cell: str) -> list[str] | None:
    """Return the places or titles of a cell; None where something else stands there."""
    found = [part.strip() for part in _BETWEEN_NAMES.split(cell) if part.strip()]
    return found if all(map(_WORD.fullmatch, found)) else None


def year_of_cell(cell: str) -> str | None:
    """Return a year as ``people.tsv`` has it, empty for none; None where it cannot be told."""
    text = plain(cell)
    if text.lower() in _NOT_KNOWN:
        return ""
    bare = _AFTER.sub("", _ABOUT.sub("", text)).strip().removesuffix("年")
    about = "about " if bare != text.removesuffix("年") else ""
    if _YEAR.fullmatch(bare):
        return about + bare
    if not _JAPANESE.search(bare):
        return None
    from inscribe.dates import resolve
    from inscribe.errors import InscribeError

    try:
        found = resolve(_AFTER.sub("", text) or text)
    except InscribeError:
        return None
    return f"{about}{found.year}" if found.year is not None and found.era else None


def span_of_cell(cell: str) -> str | None:
    """Return years of activity as ``people.tsv`` has them; None where they cannot be told."""
    parts = [year_of_cell(part) for part in _DASH.split(plain(cell))]
    if len(parts) > 2 or None in parts:
        return None
    return "-".join(filter(None, parts))


def life_of_cell(cell: str) -> tuple[str, str] | None:
    """Return years of birth and death that stand in one cell; None where they cannot be told."""
    text = plain(cell)
    if text.lower() in _NOT_KNOWN:
        return "", ""
    parts = _DASH.split(text)
    if len(parts) == 1:
        died, born = _DIED.sub("", text), _BORN.sub("", text)
        pair = ("", died) if died != text else (born, "") if born != text else None
        if pair is None:
            return None
        parts = list(pair)
    years = [year_of_cell(_DIED.sub("", _BORN.sub("", part))) for part in parts]
    if len(years) != 2 or years[0] is None or years[1] is None:
        return None
    return years[0], years[1]


def role_of_cell(cell: str) -> list[str] | None:
    """Return what a person does with inscriptions, of words for it; None where one is unknown."""
    known = {row["written"]: row["role"] for row in tables.rows("people_roles")}
    words = [part.strip().lower() for part in _BETWEEN_NAMES.split(cell) if part.strip()]
    found = [known.get(word) for word in words]
    return list(dict.fromkeys(role for role in found if role)) if all(found) else None
