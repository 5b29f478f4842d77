"""``inscribe guide``: how the work is done, chapter by chapter."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from inscribe.cli.giving import example, output_options
from inscribe.cli.showing import write_result
from inscribe.guide import CHAPTERS, chapter


@click.command(
    epilog=example(
        "inscribe guide", "inscribe guide first-day", "inscribe guide --man ~/.local/share/man"
    )
)
@click.argument("name", required=False, metavar="[CHAPTER]")
@click.option("--man", "manual", metavar="FOLDER", help="Write manual pages into FOLDER instead.")
@output_options
def command(
    name: str | None, manual: str | None, output: str | None, force: bool, quiet: bool
) -> None:
    """Show a chapter of the guide; without a name, list them.

    On a terminal a chapter is laid out; in a file or a pipe it is Markdown.
    """
    if manual is not None:
        from inscribe.cli.manual import write_pages

        count = write_pages(Path(manual), force=force)
        click.echo(
            f"{count} pages lie in {manual}; read one with\n  man -M {manual} inscribe-read",
            err=True,
        )
        return
    text = chapter(name) if name else _contents()
    if output is None and sys.stdout.isatty():
        _lay_out(text)
    else:
        write_result(text, output, force=force)


def _contents() -> str:
    lines = [f"- `{name}`: {about}" for name, about in CHAPTERS.items()]
    return "\n".join(["# The guide", "", *lines, "", "Show one with `inscribe guide CHAPTER`."])


def _lay_out(text: str) -> None:
    from rich.console import Console
    from rich.markdown import Markdown

    console = Console(width=min(Console().width, 100))
    console.print(Markdown(text))
