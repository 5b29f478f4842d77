"""``inscribe name``: ranked readings of a name."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import (
    example,
    expect_no_files,
    expect_settled_names,
    format_option,
    output_options,
    settled_option,
    words_given,
)
from inscribe.cli.showing import write_result

if TYPE_CHECKING:
    from inscribe.reading.names import NameKind
    from inscribe.reading.signatures import NameLookUp

_KINDS = ("auto", "given", "surname", "art", "common")


@click.command(
    epilog=example(
        "inscribe name 綾郷", "inscribe name --kind art 椋雲斎", "inscribe name 三輪綾國"
    )
)
@click.argument("names", nargs=-1, metavar="[NAME|-]...")
@settled_option
@click.option(
    "--kind",
    type=click.Choice(_KINDS),
    default="auto",
    show_default=True,
    help="given (a made name as 綾郷), art (a studio name as 椋雲斎), common (an everyday name as "
    "清兵衛), surname; auto divides what holds several.",
)
@format_option("text", "json", name="shape")
@output_options
def command(
    names: tuple[str, ...],
    records: str | None,
    kind: NameKind,
    shape: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Rank the readings of a name, each with its reason.

    Which reading a maker used is known only for known makers. Readings you have confirmed come
    first: those of a table names.tsv (written, kana, kind, note) of a glossary folder, and those
    settled in the records named by --records.
    """
    expect_no_files(names, "inscribe read {}")
    expect_settled_names(records)
    from inscribe.reading.signatures import look_up

    words = (part for each in words_given(names) for part in each.split() or [""])
    found = [look_up(name, kind) for name in words]
    write_result(_shown(found, shape), output, force=force)


def _shown(found: list[NameLookUp], shape: str) -> str:
    if shape == "json":
        import json

        plain = [name.to_dict() for name in found]
        return json.dumps(plain[0] if len(plain) == 1 else plain, ensure_ascii=False, indent=2)
    from inscribe.report.terminal import names_as_text

    return names_as_text(found)
