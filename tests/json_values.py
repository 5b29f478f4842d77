"""Every key of the published schemas with a value that an example prints.

``tests/data/answers/json_values.tsv`` has a row for each key of each object: the example, where in
its answer the key stands, and the value (for a list, how many; for an object, its keys). The values
are the program's own, looked over; ``python tests/json_values.py`` writes the table anew, and a
change of it has to be looked at.
"""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.keys import OUTPUTS

ROOT = Path(__file__).parent.parent
TABLE = ROOT / "tests/data/answers/json_values.tsv"
LIST = ROOT / "tests/data/people/list"
Row = tuple[str, str, str, str, str]  # object, key, example, path, value
POEM = "春過て夏来にけらし白妙の衣ほすてふ天の香具山"
WITH_A_POET = "春の夜の夢ばかりなる手枕にかひなくたゝむ名こそをしけれ／雨蛙庵"
TWO = """id = "X"
kind = "kozuka"
measurements = { diameter = 70.0 }
[[inscription]]
place = "back plate"
text = "見渡せは花も紅葉もなかりけり／浦のとまやの秋の夕暮菰江書鯉沼穂足彫之"
"""
SEVERAL = "".join(
    f'[[inscription.source]]\ntext = "{text}"\n' for text in ("見渡せば花も", "見渡せば月も")
)
EXAMPLES = {
    "read 4": "read read {examples}/DEMO-004.toml",
    "read poem": f"read read --text {POEM}／露岳刻之",
    "read aged": "read read --text 嘉永六年甲寅行年七十三歳露岳",
    "read cycle": "read read --text 甲寅仲秋國",
    "read day": "read read --text 天保三年壬辰閏十一月三日甲子露岳",
    "read season": "read read --text 嘉永六年秋七月露岳",
    "read animal": "read read --text 寅年仲秋露岳",
    "read worn": "read read --text □花",
    "read gloss": f"read read --gloss --text {POEM}",
    "read listed": f"read --glossary {{list}} read --text {WITH_A_POET}",
    **{f"collate {n}": f"collate collate {{examples}}/DEMO-00{n}.toml" for n in range(1, 5)},
    "collate turned": "collate collate --text 應需造之 需に応じて之を造る",
    "collate signed": "collate collate --text 夢の浮橋露岳刻之 夢の浮橋",
    "collate words": "collate collate --text 春の夜の月のうきはし 春の夜の夢のうきはしとたえして",
    "collate moved": "collate collate --text うきはし春の夜の夢の 春の夜の夢のうきはし",
    "collate followed": "collate-several collate --text 風の声に 風の音に 風の声に",
    "collate several": "collate-several collate --text 風の音に 風の音にぞ 風の声に",
    "find": "source-find source find --library {library} --text 世の中に桜のなかりせは",
    "list": "source-list source list --library {library}",
    "date": "date date 甲寅",
    "date whole": "date date 天保三年壬辰閏十一月三日",
    "date conflict": "date date 嘉永六年甲寅仲秋",
    "date two": "date date 天保三年／嘉永五年",
    "date season": "date date 嘉永六年秋七月朔日甲子行年七十三",
    "date animal": "date date 寅年",
    "dates": "dates date 嘉永六年行年七十 甲寅行年七十一",
    "merge": "merge merge {examples}/DEMO-010.toml {examples}/DEMO-008.toml",
    **{f"sign {sign}": f"sign sign {sign}" for sign in "舩𛂥々ゞ処弁三裡"},
    "name": "name name 露岳",
    "check": "check check {examples}",
    **{f"entry {n}": f"entry entry {{examples}}/DEMO-{n:03}.toml" for n in range(1, 16)},
    "entry two": "entry entry {made}/x.toml",
    "entry several": "entry entry {made}/several.toml",
    "entry listed": "entry --glossary {list} entry {people}",
    "restore": "restore restore --text 武州住□国作",
    "restore column": "restore restore --text 武州住／□国作",
    "restore gap": "restore restore --text 世の中に［　　］なかりせば春の心はのどけからまし",
    "restore found": "restore restore --library {library} --text 世の中に桜の□かりせば",
    "restore poem": "restore restore --text 世の中に桜の□かりせば",
    "concord": "concord concord {examples} --no-cache 夢",
    "concord two": "concord concord {made} --no-cache 花",
    "concord listed": "concord --glossary {list} concord {listed} --no-cache 春",
    "concord dated": "concord concord {examples} --no-cache 年",
    "clusters": "concord-clusters concord {examples} --no-cache --clusters",
    "translations": "concord-translations concord {examples} --no-cache --translations",
    "next": "next next {examples}",
    "index": "index index {examples} --no-cache",
    "import": "import import {made}/x.csv --map {made}/map",
    "measure": "measure measure {made}/p.png --record {made}/m.toml",
}


class Workplace:
    """A folder with what the examples need, and their answers, each made when first asked for."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._answers: dict[str, Any] = {}
        (folder / "x.toml").write_text(TWO, "utf-8")
        (folder / "several.toml").write_text(TWO + SEVERAL, "utf-8")
        (folder / "x.csv").write_text("No,Inscription,Box\n1,武州[住]◯作,3\n,花,\n", "utf-8")
        self._places = {
            "examples": str(ROOT / "examples"),
            "library": str(folder / "l.sqlite"),
            "list": str(LIST),
            "people": str(sorted((LIST.parent / "records").glob("*.toml"))[0]),
            "listed": str(LIST.parent / "records"),
            "made": str(folder),
        }

    def answer(self, example: str) -> Any:
        """Return what an example prints."""
        if example not in self._answers:
            self._prepare(example)
            _, *arguments = EXAMPLES[example].split(" ")
            said = [part.format(**self._places) for part in arguments]
            printed = self._run([*said, "--format", "json"])
            text = printed.replace(str(self.folder), "MADE").replace(str(ROOT), "ROOT")
            self._answers[example] = json.loads(text)
        return self._answers[example]

    def _run(self, arguments: list[str]) -> str:
        result = CliRunner().invoke(cli, arguments, catch_exceptions=False)
        assert result.exit_code in (0, 1), result.output
        if arguments[0] == "--glossary":
            from inscribe import tables

            tables.remove_folder(LIST)
        return result.stdout

    def _prepare(self, example: str) -> None:
        library = self._places["library"]
        if "{library}" in EXAMPLES[example] and not Path(library).exists():
            self._run(["source", "add", "--library", library, str(ROOT / "examples/sources")])
        if example == "import" and not (self.folder / "map").exists():
            self._run(["import", f"{self.folder}/x.csv", "--map", f"{self.folder}/map"])
        if example == "measure":
            from drawn_plates import HEIGHT, TEXT, WIDTH, photographed
            from PIL import Image

            Image.fromarray(photographed().pixels).save(self.folder / "p.png")
            plate = f"[inscription.plate]\nwidth = {WIDTH}\nheight = {HEIGHT}\n"
            text = TEXT.replace("\n", "／")
            head = f'id = "M"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "{text}"\n'
            (self.folder / "m.toml").write_text(head + plate, "utf-8")


def shown(value: Any) -> Any:
    """Return what is kept of a value: of a list how many, of an object its keys."""
    if isinstance(value, dict):
        return sorted(value)
    return len(value) if isinstance(value, list) else value


def tells(value: Any) -> bool:
    """Whether a value tells more than that there is nothing."""
    return value not in (None, "", [], {}, False, 0)


def keys_of(
    value: Any, inner: Any, objects: dict[str, Any], name: str, path: tuple[str | int, ...] = ()
) -> Iterator[tuple[str, str, tuple[str | int, ...], Any]]:
    """Yield the keys of a printed value: the object, the key, where it stands, and its value."""
    if "$ref" in inner:
        name = inner["$ref"].rpartition("/")[2]
        inner = objects[name]
    if "anyOf" in inner:
        if value is not None:
            yield from keys_of(value, inner["anyOf"][0], objects, name, path)
    elif isinstance(value, list):
        for at, each in enumerate(value):
            yield from keys_of(each, inner["items"], objects, name, (*path, at))
    elif isinstance(value, dict):
        known, other = inner.get("properties", {}), inner.get("additionalProperties")
        for key, each in value.items():
            if key in known:
                yield name, key, (*path, key), each
            if isinstance(each, dict | list) and (known.get(key) or other):
                yield from keys_of(each, known.get(key, other), objects, name, (*path, key))


def _each_key(
    answer: Any, published: Any, what: str
) -> Iterator[tuple[str, str, tuple[str | int, ...], Any]]:
    """Yield the keys of an answer; a schema describes each of what is printed as a list."""
    objects = published.get("$defs", {})
    if isinstance(answer, list) and "items" not in published:
        for number, each in enumerate(answer):
            yield from keys_of(each, published, objects, what, (number,))
    else:
        yield from keys_of(answer, published, objects, what)


def schema(what: str) -> Any:
    return json.loads(CliRunner().invoke(cli, ["schema", what]).stdout)


def promised() -> set[tuple[str, str]]:
    """Return every key of every schema, with the object it belongs to."""
    found = set()
    for what in OUTPUTS:
        published = schema(what)
        for name, each in {what: published, **published.get("$defs", {})}.items():
            found |= {(name, key) for key in each["properties"]}
    return found


def rows() -> list[Row]:
    """Return the table as it stands."""
    lines = TABLE.read_text("utf-8").splitlines()[1:]
    return [tuple(line.split("\t")) for line in lines]  # type: ignore[misc]


def at(answer: Any, path: str) -> Any:
    """Return what stands at a place of an answer."""
    for step in json.loads(path):
        answer = answer[step]
    return answer


def main() -> None:
    """Write the table: for each key the first value that tells something."""
    os.chdir(ROOT)
    found: dict[tuple[str, str], Row] = {}
    silent: dict[tuple[str, str], Row] = {}
    with tempfile.TemporaryDirectory() as folder:
        place = Workplace(Path(folder))
        for example, command in EXAMPLES.items():
            what = command.partition(" ")[0]
            published = schema(what)
            answer = place.answer(example)
            for name, key, path, value in _each_key(answer, published, what):
                kept = json.dumps(shown(value), ensure_ascii=False)
                row = (name, key, example, json.dumps(path, ensure_ascii=False), kept)
                into = found if tells(value) else silent
                into.setdefault((name, key), row)
    lines = [found.get(key) or silent.get(key) for key in sorted(promised())]
    head = "object\tkey\texample\tpath\tvalue"
    TABLE.write_text(
        "\n".join([head, *("\t".join(each) for each in lines if each)]) + "\n", "utf-8"
    )
    missing = sorted(promised() - found.keys() - silent.keys())
    print(f"{len(found)} keys with a value; only empty: {sorted(silent.keys() - found.keys())}")
    print(f"in no example: {missing}")


if __name__ == "__main__":
    main()
