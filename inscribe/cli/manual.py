"""Manual pages, made of the commands' own help and of the guide."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import click

from inscribe import __version__, writing
from inscribe.cli import COMMANDS, cli
from inscribe.guide import CHAPTERS, chapter

_WHOLE = 1000  # characters: no help's first sentence is cut off


def write_pages(folder: Path, *, force: bool) -> int:
    """Write a page for each command (man1) and chapter (man7) below a folder; return how many."""
    pages = {f"man1/{name}.1": page for name, page in _command_pages()}
    pages |= {f"man7/inscribe-{name}.7": _chapter_page(name) for name in CHAPTERS}
    for name, page in pages.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        writing.write_text(path, page, force=force)
    return len(pages)


def _command_pages() -> Iterator[tuple[str, str]]:
    root = click.Context(cli, info_name="inscribe")
    yield "inscribe", _command_page(cli, root)
    for name in COMMANDS:
        command = cli.get_command(root, name)
        assert command is not None
        context = click.Context(command, info_name=name, parent=root)
        yield f"inscribe-{name}", _command_page(command, context)
        if isinstance(command, click.Group):
            for inner, part in command.commands.items():
                below = click.Context(part, info_name=inner, parent=context)
                yield f"inscribe-{name}-{inner}", _command_page(part, below)


def _command_page(command: click.Command, context: click.Context) -> str:
    name = context.command_path.replace(" ", "-")
    options = [
        record for p in command.get_params(context) if (record := p.get_help_record(context))
    ]
    lines = [
        *_head(name, 1, _about(command, context)),
        ".SH SYNOPSIS",
        _roff(context.get_usage()[len("Usage: ") :]),
    ]
    lines += [".SH DESCRIPTION", *_paragraphs(command.help or "")]
    lines += [".SH OPTIONS"]
    for option, about in options:
        lines += [".TP", rf"\fB{_roff(option)}\fR", _roff(" ".join(about.split()))]
    lines += _epilog(command.epilog or "")
    if isinstance(command, click.Group):
        lines += [".SH COMMANDS"]
        for inner in command.list_commands(context):
            found = command.get_command(context, inner)
            assert found is not None
            about = _about(found, click.Context(found, info_name=inner, parent=context))
            lines += [".TP", rf"\fB{name}-{inner}\fR(1)", _roff(about)]
    return "\n".join(lines) + "\n"


def _about(command: click.Command, context: click.Context) -> str:
    """Return in a few words what a command is for, whole."""
    is_listed = context.parent is not None and context.parent.parent is None
    return COMMANDS[str(context.info_name)] if is_listed else command.get_short_help_str(_WHOLE)


def _epilog(text: str) -> Iterator[str]:
    before, _, examples = text.partition("\b\nExample:\n")
    if before.strip():
        yield from (".SH NOTES", ".nf", _roff(before.replace("\b\n", "").strip()), ".fi")
    shown, _, status = examples.partition("\n\n")
    if shown:
        yield from (".SH EXAMPLES", ".nf", _roff(shown), ".fi", *_paragraphs(status))


def _chapter_page(name: str) -> str:
    lines = _head(f"inscribe-{name}", 7, CHAPTERS[name])
    literal = False
    for line in chapter(name).splitlines():
        if line.startswith("```"):
            literal = not literal
            lines += [".PP", ".nf"] if literal else [".fi"]
        elif literal:
            lines.append(_roff(line))
        elif line.startswith("#"):
            lines.append(f".SH {_roff(line.lstrip('# ')).upper()}")
        elif line.startswith("|"):
            cells = [cell.strip() for cell in line.strip("|").split("|")]
            if set("".join(cells)) - set("- "):
                lines += [".TP", _styled(cells[0]), _styled(" ".join(cells[1:]))]
        else:
            lines.append(_styled(re.sub(r"^- ", "* ", line)) if line else ".PP")
    return "\n".join(lines) + "\n"


def _head(name: str, section: int, about: str) -> list[str]:
    return [
        f'.TH "{name.upper()}" {section} "" "inscribe {__version__}"',
        ".SH NAME",
        rf"{name} \- {_roff(about)}",
    ]


def _paragraphs(text: str) -> Iterator[str]:
    for paragraph in text.split("\n\n"):
        if paragraph.strip():
            yield from (".PP", _roff(" ".join(paragraph.replace("\b\n", "").split())))


def _styled(text: str) -> str:
    text = re.sub(r"`([^`]+)`|\*\*([^*]+)\*\*", lambda m: f"\0B{m[1] or m[2]}\0R", text)
    text = re.sub(r"\*([^*]+)\*", "\0I\\1\0R", text)
    return _roff(text).replace("\0", r"\f")


def _roff(text: str) -> str:
    escaped = text.replace("\\", r"\e").replace("-", r"\-")
    return "\n".join(rf"\&{line}" if line[:1] in ".'" else line for line in escaped.split("\n"))
