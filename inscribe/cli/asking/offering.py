"""What the library offers while an object is recorded."""

from __future__ import annotations

import click

from inscribe.cli.asking.saying import say

SURE = 0.5  # the probability from which a text of the library is offered
MOST = 3  # texts shown


def likeliest_source(library_file: str | None, text: str) -> str:
    """Return the id of the text an inscription is likely from, or nothing; show what was found."""
    from inscribe.cli.giving import library_path

    path = library_path(library_file)
    if not path.is_file():
        return ""
    from inscribe import notation
    from inscribe.errors import InscribeError
    from inscribe.report.terminal import hits_as_text
    from inscribe.sources import Library, find

    t = notation.parse(text)
    try:
        with Library(path) as library:
            hits = [hit for hit in find(library, t, MOST) if hit.score >= SURE]
    except InscribeError as error:
        say(f"  the library could not be searched: {error}")
        return ""
    if not hits:
        say("  the library has no such text")
        return ""
    click.echo(hits_as_text(text, t, hits), err=True)
    return hits[0].text.id


def is_in_library(library_file: str | None, identity: str) -> bool:
    """Whether the library has a text of an id; where there is no library, that is not asked."""
    from inscribe.cli.giving import library_path

    path = library_path(library_file)
    if not path.is_file():
        return True
    from inscribe.sources import Library

    with Library(path) as library:
        return any(library.texts([identity]))
