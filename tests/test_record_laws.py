"""Laws every record and every file must keep."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings, strategies as st
from strategies import records

from inscribe import record
from inscribe.errors import InscribeError, ProblemsError
from inscribe.record.reading.locate import KeyPath, Locator

EXAMPLES = sorted((Path(__file__).parent.parent / "examples").glob("*.toml"))
AWKWARD = """\
# a [comment] with "quotes" = 3
"quo\\u0074ed" . 'key' = 1 # [x]
text = '''
[not.a.table]
no = "key"'''''
basic = \"\"\"\\
  # not a comment \\\"\"\"
  x = 1\"\"\"
array = [ # comment ]
  1, "a,b]", [2, 3], {a = 1, b = {c = "}"}},

  4,
]
[ table . "sub]" ]
key = 1979-05-27 07:32:00
[[list]]
a = 1
[[list.inner]]
b = 2
[[list.inner]]
b = 3
[list.inner.deep]
c = 1
[[list]]
[list.one]
d = +1.5e3
"""


@settings(max_examples=60)
@given(records)
def test_what_is_dumped_is_loaded_back(found: record.Record) -> None:
    assert record.loads(record.dump(found)) == found


@given(st.text(st.sampled_from(list("[]{}=\"'.,#\n ab1\\"))))
def test_any_text_loads_or_is_refused(text: str) -> None:
    with pytest.raises(InscribeError):
        record.loads(text)


@settings(max_examples=200)
@given(
    st.sampled_from(EXAMPLES).map(lambda path: path.read_text(encoding="utf-8")),
    st.lists(st.tuples(st.floats(0, 1), st.integers(0, 40), st.text(max_size=4)), max_size=3),
)
def test_a_mangled_record_loads_or_is_refused(
    text: str, cuts: list[tuple[float, int, str]]
) -> None:
    for where, length, inserted in cuts:
        start = int(where * len(text))
        text = text[:start] + inserted + text[start + length :]
    try:
        found = record.loads(text, folder=EXAMPLES[0].parent)
    except ProblemsError as refused:
        lines = [error.place.line for error in refused.errors]
        assert all(line is not None and line <= text.count("\n") + 1 for line in lines)
    except InscribeError:
        pass
    else:
        assert record.loads(record.dump(found), folder=EXAMPLES[0].parent) == found


def _paths(data: Any, path: KeyPath = ()) -> Iterator[KeyPath]:
    items = data.items() if isinstance(data, dict) else enumerate(data)
    for key, value in items:
        yield (*path, key)
        if isinstance(value, dict | list):
            yield from _paths(value, (*path, key))


def _assert_each_key_is_found(text: str) -> None:
    locator = Locator(text)
    lines = text.split("\n")
    for path in _paths(tomllib.loads(text)):
        assert path in locator.positions, path
        position = locator.positions[path]
        rest = lines[position.line - 1][position.column - 1 :]
        key = path[-1]
        assert isinstance(key, int) or key in rest or "\\u0074" in rest, (path, rest)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_each_key_of_an_example_is_found(path: Path) -> None:
    _assert_each_key_is_found(path.read_text(encoding="utf-8"))


def test_each_key_of_an_awkward_file_is_found() -> None:
    _assert_each_key_is_found(AWKWARD)
    positions = Locator(AWKWARD).positions
    assert positions["list", 0, "inner", 1, "deep", "c"].line == 23
    assert positions["list", 1, "one", "d"].line == 26
    assert positions["array", 3, "b", "c"].line == 10


@settings(max_examples=40)
@given(records)
def test_each_key_of_a_dumped_record_is_found(found: record.Record) -> None:
    text = record.dump(found)
    assert set(_paths(tomllib.loads(text))) <= Locator(text).positions.keys()
