"""The concordance over 10,000 invented records: cold, with a warm index, and with one changed.

    python tests/benchmarks/concord.py [--records 10000] [--folder KEEP]
    python tests/benchmarks/concord.py --texts 80000   (concord --in-library instead)

Every figure is the time of a whole command, the interpreter's start included, in a process of its
own, by the clock and by the processors. The records are made: names, places, dates and verse are
put together from invented pieces.
"""

from __future__ import annotations

import argparse
import os
import random
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

PLACES = ("武州住", "江戸住", "於東都", "長州萩住", "水府住", "加州金沢住", "雲州松江住", "")
FIRST = "晴澄種郷霜露帆嶺渓翠汀杳凪槙楓霞滝苔"
LAST = "親暁蹊岳影洲舟汀畔峯栖翠嶂渚篁潭"
VERBS = ("作", "造之", "彫之", "刻", "作之", "（花押）", "製", "")
DATES = (
    "嘉永五年壬子仲秋",
    "文政七年甲申三月日",
    "天保三年八月吉日",
    "安政二年乙卯",
    "",
    "",
    "",
    "",
)
VERSE = (
    ("夕されば", "山里の", "露深き", "あけぼのは", "霧はれて", "舟寄する", "春の野に", "月影の"),
    ("苔むす庭に", "松風さむし", "花ぞ散りける", "鹿の声する", "雪ふりつもる", "霞たなびく"),
    ("旅ごろも", "草枕", "ひとり寝の", "鐘の音に", "夢のうち", "面影も"),
    ("袖もぬれつつ", "かへる雁がね", "有明の月", "道もたえつつ", "浦の波風", "里の夕暮"),
    ("人を待つかな", "こころなりけり", "秋は来にけり", "夜ぞふけにける", "行く方もなし"),
)  # fmt: skip


def record(number: int, rng: random.Random) -> str:
    """Return an invented record: a signature, and on some a poem with a worn sign."""
    name = rng.choice(FIRST) + rng.choice(LAST)
    signature = rng.choice(PLACES) + name + rng.choice(VERBS) + rng.choice(DATES)
    parts = [
        f'id = "MADE-{number:05}"\nkind = "{rng.choice(("kozuka", "tsuba", "fuchi"))}"\n',
        f'[[inscription]]\nplace = "front"\ntext = "{signature}"\n',
    ]
    if rng.random() < 0.4:
        verse = list("".join(rng.choice(phrases) for phrases in VERSE))
        if rng.random() < 0.3:
            verse[rng.randrange(len(verse))] = "□"
        text = "".join(verse)
        parts.append(f'[[inscription]]\nplace = "back"\nregister = "verse"\ntext = "{text}"\n')
    return "\n".join(parts)


def make(folder: Path, count: int) -> None:
    """Write ``count`` records, a hundred a folder."""
    rng = random.Random(11)
    for number in range(count):
        place = folder / f"{number // 100:03}"
        place.mkdir(parents=True, exist_ok=True)
        (place / f"MADE-{number:05}.toml").write_text(record(number, rng), encoding="utf-8")


def processor_seconds() -> float:
    """Return the processor time of all commands run so far: on a busy machine, the truer figure."""
    spent = resource.getrusage(resource.RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime


def timed(name: str, arguments: list[str], cache: Path) -> None:
    """Run one command and print what it took and said last."""
    environment = {**os.environ, "XDG_CACHE_HOME": str(cache)}
    environment.pop("INSCRIBE_CACHE", None)
    start, used = time.perf_counter(), processor_seconds()
    done = subprocess.run(
        [sys.executable, "-m", "inscribe", "concord", *arguments],
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    took, used = time.perf_counter() - start, processor_seconds() - used
    lines = (done.stdout or done.stderr).strip().split("\n")
    said = next((line for line in lines if "records" in line), lines[-1])
    largest = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss // 1024  # of all so far
    figures = f"{took:7.2f} s {used:7.2f} s of processor  at most {largest:5} MiB"
    print(f"{name:34} {figures}   {said[:50]}", flush=True)


def cache_with_dictionaries(made: Path) -> Path:
    """Return an empty cache but for the compiled dictionaries, which are no part of this."""
    usual = Path.home() / ".cache/inscribe"
    shared, cache = Path(os.environ.get("INSCRIBE_CACHE", usual)), made / "cache"
    (cache / "inscribe").mkdir(parents=True)
    for each in shared.iterdir() if shared.is_dir() else ():
        if not each.name.startswith("kept-"):
            (cache / "inscribe" / each.name).symlink_to(each)
    return cache


def of_library(texts: int, made: Path) -> None:
    """Print the figures of the concordance of a library of so many invented poems."""
    import json

    rng = random.Random(12)
    lines = (
        json.dumps({"id": f"made-{n}", "text": "／".join(rng.choice(part) for part in VERSE)})
        for n in range(texts)
    )
    listed, library = made / "texts.jsonl", made / "l.sqlite"
    cache = cache_with_dictionaries(made)
    listed.write_text("\n".join(lines) + "\n", "utf-8")
    command = [sys.executable, "-m", "inscribe", "source", "add", "--library", str(library)]
    subprocess.run([*command, str(listed)], check=True, capture_output=True)
    asked = ["--in-library", "--library", str(library), "--counts"]
    timed("library, cold", [*asked, "夢"], cache)
    timed("library, warm", [*asked, "夢"], cache)
    timed("library, warm, by sound", [*asked, "yume"], cache)
    timed("library, warm, pattern", [*asked, "--pattern", "[春秋]の[野夜]"], cache)
    timed("library, warm, in every text", [*asked, "の"], cache)
    one = made / "one.jsonl"
    one.write_text('{"id": "further", "text": "夢の世に"}\n', "utf-8")
    subprocess.run([*command, str(one)], check=True, capture_output=True)
    timed("library, one text added", [*asked, "夢"], cache)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--texts", type=int, help="texts of a library, instead of records")
    parser.add_argument("--records", type=int, default=10_000)
    parser.add_argument("--folder", type=Path)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as made:
        if options.texts:
            of_library(options.texts, Path(made))
            return
        folder = options.folder or Path(made) / "records"
        if not folder.exists():
            make(folder, options.records)
        cache = cache_with_dictionaries(Path(made))
        path = str(folder)
        timed("cold", [path, "夢"], cache)
        timed("warm", [path, "夢"], cache)
        timed("warm, by sound", [path, "yume", "--counts"], cache)
        timed("warm, pattern", [path, "--pattern", "[春秋]の.", "--counts"], cache)
        changed = next(folder.rglob("*.toml"))
        changed.write_text(changed.read_text("utf-8") + "\n# changed\n", "utf-8")
        timed("warm, one record changed", [path, "夢"], cache)
        timed("warm, clusters", [path, "--clusters"], cache)


if __name__ == "__main__":
    main()
