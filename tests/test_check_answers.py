"""A whole collection checked, each finding looked at: code, place, message and what to do.

``tests/data/answers/checks.json`` holds the records, one for each thing that may be wrong, and the
findings as ``inscribe check --format json`` prints them, without the doubts of the reader (they are
of its own tests). A change of a finding has to be looked at, and then written there.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from inscribe.checking import check_folder
from inscribe.errors import InscribeError
from inscribe.record import loads

DATA = json.loads((Path(__file__).parent / "data/answers/checks.json").read_text("utf-8"))
READER = "reading"


@pytest.fixture(scope="module")
def checked(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    folder = tmp_path_factory.mktemp("collection")
    for name, text in DATA["records"].items():
        (folder / f"{name}.toml").write_text(text, "utf-8")
    said = json.dumps(check_folder(folder).to_dict(), ensure_ascii=False)
    answer: dict[str, Any] = json.loads(said.replace(f"{folder}/", ""))
    return answer


@pytest.mark.parametrize("name", DATA["records"])
def test_all_that_is_found_in_a_record(checked: dict[str, Any], name: str) -> None:
    def of_record(answer: dict[str, Any]) -> list[dict[str, Any]]:
        found = [f for f in answer["findings"] if f["file"] == f"{name}.toml"]
        return [f for f in found if f["code"] != READER]

    assert of_record(checked) == of_record(DATA["answer"])


def test_what_is_counted(checked: dict[str, Any]) -> None:
    for key in ("records", "progress"):
        assert checked[key] == DATA["answer"][key]
    for severity in ("error", "contradiction"):
        assert checked["counts"][severity] == DATA["answer"]["counts"][severity]


MAKER = 'id = "A"\nkind = "tsuba"\n[maker]\n{}\n[[inscription]]\nplace = "front"\ntext = "嶺暁"\n'


@pytest.mark.parametrize(
    ("years", "said"),
    [
        ("born = 1780\ndied = 1779", "died is before born"),
        ("born = 1780\ndied = 1780", ""),
        ("active_from = 1800\nactive_to = 1799", "active_to is before active_from"),
        ("active_from = 1800\nactive_to = 1800", ""),
        ("born = 1820\nactive_to = 1819", "active_to is before born"),
        ("born = 1820\nactive_to = 1820", ""),
    ],
)
def test_a_life_has_its_order(years: str, said: str) -> None:
    if said:
        with pytest.raises(InscribeError, match=said):
            loads(MAKER.format(years))
    else:
        assert loads(MAKER.format(years)).maker is not None
