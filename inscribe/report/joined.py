r"""One document made of documents of one entry each, a piece at a time, so that none is kept.

What formats put around their entries is cut away from each and put around all.

>>> list(joined_entries("md", iter(["# A\n", "# B\n"]), 2))
['# A\n', '\n# B\n']
>>> "".join(joined_entries("json", iter(['{"id": 1}', '{"id": 2}']), 2))
'[\n  {"id": 1},\n  {"id": 2}\n]'
>>> list(joined_entries("json", iter(['{"id": 1}']), 2))
['{"id": 1}']
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from textwrap import indent
from typing import NamedTuple

_TITLE = re.compile(r"<title>[^<]*</title>")
_WRAP = re.compile(r"<lido:lidoWrap[^>]*>")


class CutDocument(NamedTuple):
    """A document cut into what stands before its entry, the entry, and what stands after it."""

    head: str
    body: str
    foot: str
    between: str = ""


def joined_entries(form: str, documents: Iterator[str], count: int) -> Iterator[str]:
    """Yield the pieces of one document that holds all entries.

    A single entry is handed on as it is.

    Args:
        form: one of ``JOINED``.
        documents: the documents, each of one entry.
        count: how many entries there are, for the title of a page.
    """
    first = next(documents, None)
    if first is None:
        return
    second = next(documents, None)
    if second is None:
        yield first
        return
    cut = JOINED[form]
    found = cut(first, count)
    yield found.head + found.body
    yield found.between + cut(second, count).body
    for document in documents:
        yield found.between + cut(document, count).body
    if found.foot:
        yield found.foot


def _markdown(document: str, _count: int) -> CutDocument:
    return CutDocument("", document, "", "\n")


def _json(document: str, _count: int) -> CutDocument:
    return CutDocument("[\n", indent(document.rstrip("\n"), "  "), "\n]", ",\n")


def _csv(document: str, _count: int) -> CutDocument:
    head, end, rows = document.partition("\r\n")
    return CutDocument(head + end, rows, "")


def _html(document: str, count: int) -> CutDocument:
    start, end = document.index("<main>\n") + len("<main>\n"), document.rindex("</main>")
    head = _TITLE.sub(f"<title>{count} objects</title>", document[:start], count=1)
    return CutDocument(head, document[start:end], document[end:])


def _lido(document: str, _count: int) -> CutDocument:
    wrap = _WRAP.search(document)
    assert wrap is not None
    end = document.rindex("</lido:lidoWrap>")
    return CutDocument(document[: wrap.end()], document[wrap.end() : end], document[end:])


JOINED: dict[str, Callable[[str, int], CutDocument]] = {
    "md": _markdown,
    "json": _json,
    "csv": _csv,
    "html": _html,
    "lido": _lido,
}
