"""``inscribe concord``: every place where a word occurs, in any form or spelling, in context."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from inscribe.cli.giving import (
    COUNTING,
    STANDARD_INPUT,
    example,
    format_option,
    is_piped,
    library_option,
    library_path,
    output_options,
    read_standard_input,
)
from inscribe.cli.showing import progress_shown, status_of, write_result
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.concordance import Clusters, Collection, ConcordanceQuery, Order

_ORDERS = ("after", "before", "match", "object", "date")


@click.command(
    epilog=COUNTING
    + example(
        "inscribe concord examples 夢",
        "inscribe concord examples yume --sort date --format csv -o yume.csv",
        "inscribe concord examples --pattern '[春秋]の.'",
        "inscribe concord examples --clusters",
    )
)
@click.argument("folder", required=False, metavar="[FOLDER|RECORD]")
@click.argument("word", required=False, metavar="[WORD|-]")
@click.option("--pattern", metavar="REGEX", help="A regular expression over current forms.")
@click.option("--exact", is_flag=True, help="The same characters in any form, not the sound.")
@click.option("--in-library", is_flag=True, help="Look in the library of source texts instead.")
@click.option(
    "--sort", "order", type=click.Choice(_ORDERS), default="after", show_default=True,
    help="By what follows, what precedes, the word, the object or the date.",
)  # fmt: skip
@click.option("--counts", "only_counts", is_flag=True, help="Only the counts.")
@click.option("--clusters", is_flag=True, help="Records that share a text or a signature.")
@click.option("--translations", is_flag=True,
    help="Texts and formulas that have a translation, and who has none.")  # fmt: skip
@click.option("--no-cache", is_flag=True, help="Read every record anew and keep nothing.")
@library_option("The library for --in-library, and of sources named by id")
@format_option("text", "json", "csv")
@output_options
def command(
    folder: str | None,
    word: str | None,
    pattern: str | None,
    exact: bool,
    in_library: bool,
    order: Order,
    only_counts: bool,
    clusters: bool,
    translations: bool,
    no_cache: bool,
    library_file: str | None,
    form: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> int:
    """Find every place where WORD occurs in a folder of records, in any form and spelling.

    WORD in kanji finds its other forms and words of the same reading; in kana or Latin letters it
    finds what sounds so; the dictionary form of a verb or adjective finds every form of it. Dates
    and carvers are given as read; a signature is no attribution. Records that cannot be read are
    left out and named, with exit status 1.
    """
    if in_library and word is None:
        folder, word = None, folder
    named = pattern is not None or clusters or translations
    if word == STANDARD_INPUT or (word is None and not named and is_piped()):
        word = read_standard_input().strip() or None
    wanted = sum((word is not None, pattern is not None, clusters, translations))
    if wanted != 1:
        raise InputError(
            "give a word, --pattern, --clusters or --translations", hint="as in: FOLDER 夢"
        )
    if not in_library and folder is None:
        raise InputError("give a folder of records", hint="or --in-library")
    if word is not None and folder and not Path(folder).exists() and Path(word).is_dir():
        raise InputError(
            f"there is no folder {folder}, but {word} is one",
            hint=f"the folder comes first: inscribe concord {word} {folder}",
        )
    asked = _query(word, pattern, exact)
    with progress_shown("records", quiet=quiet) as progress:
        if clusters:
            shared = _clusters(folder, library_file, no_cache, progress)
            held = shared.collection
        else:
            held = _collection(folder, library_file, no_cache, progress, asked)
    if clusters:
        result = _clusters_shown(shared, form)
    elif translations:
        result = _translations(held, form)
    else:
        result = _found(held, asked, order, only_counts, form)
    write_result(result, output, force=force)
    return status_of(held.unread)


def _query(word: str | None, pattern: str | None, exact: bool) -> ConcordanceQuery | None:
    from inscribe.concordance import query_of

    if pattern is not None:
        return query_of(pattern, pattern=True)
    return query_of(word, exact=exact) if word is not None else None


def _collection(
    folder: str | None,
    library_file: str | None,
    no_cache: bool,
    progress: Any,
    asked: ConcordanceQuery | None,
) -> Collection:
    from inscribe.concordance import collection, library_collection

    if folder is None:
        file = library_path(library_file)
        return library_collection(file, progress, query=asked, keep=not no_cache)
    library = library_path(library_file)
    return collection(Path(folder), progress, query=asked, library=library, keep=not no_cache)


def _found(held: Collection, query: Any, order: Order, only_counts: bool, form: str) -> str:
    from dataclasses import replace

    from inscribe.concordance import concord

    found = concord(held, query, order)
    if form == "json":
        shown = replace(found, hits=()) if only_counts else found
        return json.dumps(shown.to_dict(), ensure_ascii=False, indent=2)
    if form == "csv":
        from inscribe.report.entries import counts_as_csv, hits_as_csv

        return counts_as_csv(found.counts) if only_counts else hits_as_csv(found.hits)
    from inscribe.report.terminal import concordance_as_text, counts_as_text

    return counts_as_text(found) if only_counts else concordance_as_text(found)


def _translations(held: Collection, form: str) -> str:
    from inscribe.indexing import translated_texts
    from inscribe.report import indexes

    found = translated_texts(held.documents)
    if form == "json":
        made = indexes.translations_as_json(found, held.records)
        return json.dumps(made, ensure_ascii=False, indent=2)
    if form == "csv":
        return indexes.translations_as_csv(found)
    return indexes.translations_as_text(found)


def _clusters(
    folder: str | None, library_file: str | None, no_cache: bool, progress: Any
) -> Clusters:
    from inscribe.concordance import clustered, clusters_of_folder

    if folder is None:
        return clustered(_collection(folder, library_file, no_cache, progress, None))
    library = library_path(library_file)
    return clusters_of_folder(folder, progress, library=library, keep=not no_cache)


def _clusters_shown(found: Clusters, form: str) -> str:
    if form == "json":
        return json.dumps(found.to_dict(), ensure_ascii=False, indent=2)
    if form == "csv":
        from inscribe.report.entries import clusters_as_csv

        return clusters_as_csv(found)
    from inscribe.report.terminal import clusters_as_text

    return clusters_as_text(found)
