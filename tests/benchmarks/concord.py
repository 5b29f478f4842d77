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
import sqlite3
import subprocess
import sys
import tempfile
import time
from pathlib import Path

PLACES = ("武州住", "江戸住", "於東都", "長州萩住", "水府住", "加州金沢住", "雲州松江住", "")
FIRST = "晴澄種郷霜露帆嶺渓翠汀杳凪槙楓霞滝苔暉芦萱鷺朧蓼磯楡籬笹"
LAST = "親暁蹊岳影洲舟汀畔峯栖翠嶂渚篁潭郷峰澗麓榛蔭梢皐"
FAMILIES = ("霜村", "朧谷", "鷺坂", "蓼磯", "楡原", "籬下", "露岡", "苔沢", "澗田", "榛田")
ENDINGS = ("軒", "斎", "堂", "亭")
VERBS = ("作", "造之", "彫之", "刻", "作之", "（花押）", "製", "鐫之", "刀", "")
ERAS = (("享保", 1716, 20), ("宝暦", 1751, 13), ("安永", 1772, 9), ("寛政", 1789, 12))
ERAS += (("文化", 1804, 14), ("文政", 1818, 12), ("天保", 1830, 14), ("嘉永", 1848, 6))
NUMBERS = "元二三四五六七八九"
STEMS, BRANCHES = "甲乙丙丁戊己庚辛壬癸", "子丑寅卯辰巳午未申酉戌亥"
MONTHS = ("仲秋", "孟春", "三月日", "八月吉日", "二月", "晩夏", "")
VERSE = (
    ("夕されば", "山里の", "露深き", "あけぼのは", "霧はれて", "舟寄する", "春の野に", "月影の",
     "時雨ふる", "ほのぼのと", "谷川の", "うち渡す", "秋風に", "雲間より", "小夜ふけて",
     "真木の戸に"),
    ("苔むす庭に", "松風さむし", "花ぞ散りける", "鹿の声する", "雪ふりつもる", "霞たなびく",
     "千鳥鳴くなり", "虫の音しげき", "ほたる飛びかふ", "若菜つみつつ", "木の葉みだるる",
     "波のよるよる"),
    ("旅ごろも", "草枕", "ひとり寝の", "鐘の音に", "夢のうち", "面影も", "かり衣", "いはし水",
     "朝まだき", "山のはに", "いにしへの", "みよし野の"),
    ("袖もぬれつつ", "かへる雁がね", "有明の月", "道もたえつつ", "浦の波風", "里の夕暮",
     "灯火のかげ", "宿の梅が枝", "沖つ白波", "峰のまつ風", "岸の藤波", "軒の玉水"),
    ("人を待つかな", "こころなりけり", "秋は来にけり", "夜ぞふけにける", "行く方もなし",
     "千代もへぬべし", "ものをこそおもへ", "めづらしきかな", "ちぎりおきけむ", "しのばるるかな"),
)  # fmt: skip
WELL_KNOWN = 60  # poems that carvers took again and again
ANEW = 0.8  # of the poems are of one object only
SAYINGS = ("温故知新", "千秋万歳", "花鳥風月", "一心不乱", "寿福")


def record(number: int, rng: random.Random) -> str:
    """Return an invented record: a signature, on some a date, a poem or a saying, worn signs.

    Of 20,000 records two in five have a poem; of their texts nine in ten are each another.
    """
    parts = [
        f'id = "MADE-{number:05}"\nkind = "{rng.choice(("kozuka", "tsuba", "fuchi"))}"\n',
        f'[[inscription]]\nplace = "front"\ntext = "{signature(rng)}"\n',
    ]
    drawn = rng.random()
    if drawn < 0.4:
        verse = list(poem(rng))
        if rng.random() < 0.3:
            verse[rng.randrange(len(verse))] = "□"
        half = len(verse) // 2 if rng.random() < 0.5 else len(verse)
        text = "\\n".join(filter(None, ("".join(verse[:half]), "".join(verse[half:]))))
        parts.append(f'[[inscription]]\nplace = "back"\nregister = "verse"\ntext = "{text}"\n')
    elif drawn < 0.45:
        parts.append(f'[[inscription]]\nplace = "back"\ntext = "{rng.choice(SAYINGS)}"\n')
    return "\n".join(parts)


def signature(rng: random.Random) -> str:
    """Return who made it, where and when, as carvers put it."""
    name = rng.choice(FIRST) + rng.choice(LAST)
    drawn = rng.random()
    if drawn < 0.3:
        name = rng.choice(FAMILIES) + name
    elif drawn < 0.5:
        name = rng.choice(FIRST) + rng.choice(FIRST) * (drawn < 0.4) + rng.choice(ENDINGS) + name
    signed = rng.choice(PLACES) + name + rng.choice(VERBS)
    return f"{signed}\\n{date(rng)}" if rng.random() < 0.5 else signed


def date(rng: random.Random) -> str:
    """Return a day, month or year of an era; the cycle agrees but for one in fifty."""
    era, first, years = rng.choice(ERAS)
    number = rng.randrange(1, min(years, len(NUMBERS)) + 1)
    year = first + number - 1 - 4 + (rng.random() < 0.02)
    cycle = STEMS[year % 10] + BRANCHES[year % 12] if rng.random() < 0.6 else ""
    return f"{era}{NUMBERS[number - 1]}年{cycle}{rng.choice(MONTHS)}"


def poem(rng: random.Random) -> str:
    """Return an invented poem; one in five is among the well known, of which some are changed."""
    if rng.random() < ANEW:
        return "".join(map(rng.choice, VERSE))
    known = random.Random(rng.randrange(WELL_KNOWN))
    phrases = [known.choice(some) for some in VERSE]
    if rng.random() < 0.1:
        at = rng.randrange(len(phrases))
        phrases[at] = rng.choice(VERSE[at])
    return "".join(phrases)


def make(folder: Path, count: int) -> None:
    """Write ``count`` records, a hundred a folder."""
    rng = random.Random(11)
    for number in range(count):
        place = folder / f"{number // 100:03}"
        place.mkdir(parents=True, exist_ok=True)
        (place / f"MADE-{number:05}.toml").write_text(record(number, rng), encoding="utf-8")


def timed(name: str, arguments: list[str], cache: Path, *command: str) -> None:
    """Run one command and print what it took, all its processes together, and said last."""
    environment = {**os.environ, "XDG_CACHE_HOME": str(cache)}
    environment.pop("INSCRIBE_CACHE", None)
    start = time.perf_counter()
    with tempfile.TemporaryFile("w+") as said:
        process = subprocess.Popen(
            [sys.executable, "-m", "inscribe", *(command or ("concord",)), *arguments],
            env=environment,
            stdout=said,
            stderr=said,
        )
        _, _, spent = os.wait4(process.pid, 0)
        took, used = time.perf_counter() - start, spent.ru_utime + spent.ru_stime
        said.seek(0)
        lines = said.read().strip().split("\n")
    last = next((line for line in lines if "records" in line), lines[-1])
    figures = f"{took:7.2f} s {used:7.2f} s of processor  at most {spent.ru_maxrss // 1024:5} MiB"
    print(f"{name:34} {figures}   {last[:50]}", flush=True)


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
        json.dumps({"id": f"made-{n}", "text": "／".join(map(rng.choice, VERSE))})
        for n in range(texts)
    )
    listed, library = made / "texts.jsonl", made / "l.sqlite"
    cache = cache_with_dictionaries(made)
    listed.write_text("\n".join(lines) + "\n", "utf-8")
    command = [sys.executable, "-m", "inscribe", "source", "add", "--library", str(library)]
    added = [str(listed), "--library", str(library)]
    timed("the texts added", added, cache, "source", "add")
    print(f"{'':34} {library.stat().st_size / 2**20:.0f} MiB of library", flush=True)
    asked = ["--in-library", "--library", str(library), "--counts"]
    timed("library, first use", [*asked, "夢"], cache)
    timed("library, second use", [*asked, "夢"], cache)
    timed("library, by sound", [*asked, "yume"], cache)
    timed("library, pattern", [*asked, "--pattern", "[春秋]の[野夜]"], cache)
    timed("library, in every text", [*asked, "の"], cache)
    one = made / "one.jsonl"
    one.write_text('{"id": "further", "text": "夢の世に"}\n', "utf-8")
    subprocess.run([*command, str(one)], check=True, capture_output=True)
    timed("library, one text added", [*asked, "夢"], cache)
    with sqlite3.connect(library) as opened:
        opened.execute("DELETE FROM words")
    timed("library of an older version", [*asked, "夢"], cache)


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
