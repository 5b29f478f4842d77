"""Every command explains itself: what it does, every option, and an example that is typed so."""

from __future__ import annotations

import shlex
from collections.abc import Iterator

import click
import pytest
from click.testing import CliRunner

from inscribe.cli import cli


def commands(group: click.Group, path: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    context = click.Context(group)
    for name in group.list_commands(context):
        command = group.get_command(context, name)
        assert command is not None
        yield (*path, name)
        if isinstance(command, click.Group):
            yield from commands(command, (*path, name))


COMMANDS = list(commands(cli, ()))


def found(path: tuple[str, ...]) -> click.Command:
    command: click.Command = cli
    for name in path:
        assert isinstance(command, click.Group)
        inner = command.get_command(click.Context(command), name)
        assert inner is not None
        command = inner
    return command


def shown(path: tuple[str, ...]) -> str:
    result = CliRunner().invoke(cli, [*path, "--help"], catch_exceptions=False)
    assert result.exit_code == 0
    return result.output


@pytest.mark.parametrize("path", COMMANDS, ids=" ".join)
def test_its_help_says_what_it_does_and_shows_an_example(path: tuple[str, ...]) -> None:
    text = shown(path)
    assert found(path).help
    examples = text.partition("Example:\n")[2].splitlines()
    assert any(line.strip().startswith(f"inscribe {' '.join(path)}") for line in examples)
    assert "3 a fault of the program" in " ".join(text.split())


@pytest.mark.parametrize("path", COMMANDS, ids=" ".join)
def test_each_option_is_explained(path: tuple[str, ...]) -> None:
    unexplained = [
        option.opts[0]
        for option in found(path).params
        if isinstance(option, click.Option) and not option.help and not option.hidden
    ]
    assert unexplained == []


@pytest.mark.parametrize("path", COMMANDS, ids=" ".join)
def test_the_options_of_its_examples_exist(path: tuple[str, ...]) -> None:
    for line in shown(path).partition("Example:\n")[2].splitlines():
        words = shlex.split(line.partition(" < ")[0].partition(" | ")[0])
        if words[: len(path) + 1] != ["inscribe", *path]:
            continue
        inner = path
        command = found(path)
        while isinstance(command, click.Group):
            inner = (*inner, words[len(inner) + 1])
            command = found(inner)
        known = {option for parameter in command.params for option in parameter.opts} | {"-h"}
        used = {word.partition("=")[0] for word in words[len(inner) + 1 :] if word[:1] == "-"}
        assert used - known - {"-"} == set()


def test_the_commands_are_listed() -> None:
    text = shown(())
    assert all(name in text for (name, *rest) in COMMANDS if not rest)


@pytest.mark.parametrize("shell", ["bash_source", "zsh_source", "fish_source"])
def test_a_shell_can_complete_what_is_typed(shell: str) -> None:
    result = CliRunner().invoke(cli, [], prog_name="inscribe", env={"_INSCRIBE_COMPLETE": shell})
    assert result.exit_code == 0
    assert "inscribe" in result.output
