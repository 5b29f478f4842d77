"""Results as small tables of HTML, as notebooks show them (``_repr_html_``).

>>> facts({"as carved": "露岳<", "": "not shown"})
'<table><tr><th>as carved</th><td>露岳&lt;</td></tr></table>'
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

LONGEST = 24  # characters of a text in the short form of a result


def facts(said: Mapping[str, str]) -> str:
    """Return labels and what stands for each, a row each; where one is empty, none."""
    rows = (_row([(label, "th"), (text, "td")]) for label, text in said.items() if label and text)
    return f"<table>{''.join(rows)}</table>"


def grid(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Return a table with a line of headings."""
    lines = [_row([(each, "th") for each in head])]
    lines += [_row([(each, "td") for each in row]) for row in rows]
    return f"<table>{''.join(lines)}</table>"


def short(text: str) -> str:
    """Return the beginning of a text in quotes, for the short form of a result.

    >>> short("世の中にたえて桜のなかりせば春の心はのどけからまし")
    "'世の中にたえて桜のなかりせば春の心はのどけから…'"
    """
    return repr(text if len(text) <= LONGEST else text[: LONGEST - 1] + "…")


def counted(count: int, noun: str) -> str:
    """Return a number of things in words, for the short form of a result.

    >>> counted(1, "record"), counted(15, "record")
    ('1 record', '15 records')
    """
    return f"{count} {noun}" + "s" * (count != 1)


def _row(cells: Iterable[tuple[str, str]]) -> str:
    from html import escape

    return f"<tr>{''.join(f'<{tag}>{escape(text)}</{tag}>' for text, tag in cells)}</tr>"
