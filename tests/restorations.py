"""What is restored where a source helps, and how it is read: written by ``python`` with this file.

Each line of ``tests/data/answers/restored.jsonl`` is a worn text, the words its record names as its
source (or nothing) and what is said: for each place the first candidates with their chance in
hundredths and their evidence, then the readings with what was restored told apart. The library
holds ``TEXTS``. Look at what changes before it is kept.
"""

from __future__ import annotations

import json
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from inscribe import notation, reading
from inscribe.reading import SignaturePart
from inscribe.restoring import restore, with_restored
from inscribe.sources import Library, SourceText, add_texts

FILE = Path(__file__).parent / "data/answers/restored.jsonl"
SHOWN = 3  # candidates of a place

# Poems of the Kokinshu, the Shinkokinshu and the Hyakunin isshu, from memory.
CHERRIES = "世の中にたえてさくらのなかりせば／春の心はのどけからまし"
SUMMER = "春すぎて夏来にけらし白妙の／衣ほすてふ天の香具山"
COLOUR = "花の色は移りにけりないたづらに／わが身世にふるながめせしまに"
TEXTS = (
    SourceText("c-53", tuple(CHERRIES.split("／")), "Cherries", extra=(
        ("kana", "よのなかにたえてさくらのなかりせばはるのこころはのどけからまし"),)),
    SourceText("s-175", tuple(SUMMER.split("／"))),
    SourceText("c-113", (
        "花の色は", "移りにけりな", "いたづらに", "わが身世にふる", "ながめせしまに")),
    SourceText("c-17", ("春日野はけふはな焼きそ", "若草の妻もこもれり", "我もこもれり"), extra=(
        ("kana", "かすがのはけふはなやきそわかくさのつまもこもれりわれもこもれり"),)),
    SourceText("a-1", ("（「山」）里は冬ぞさびしさまさりける", "人目も草もかれぬと思へば")),
)  # fmt: skip
WORN = (
    ("世の中に絶えて□のなかりせば春の心はのどけからまし", ""),
    ("世の中に絶えて桜のなかりせ□春の□はのどけからまし", ""),
    ("よのなかにたえてさく□のなかりせははるのこころは", ""),
    ("世の中に絶えて［　　］のなかりせば春の心はのどけからまし", ""),
    ("世の中に絶えて桜のなかりせば春の心［　　］", ""),
    ("春過て□来にけらし白妙の衣ほすてふ天の香具山", ""),
    ("春過ぎて夏来にけらし白□の衣ほすてふ天の香□山", ""),
    ("春過ぎて夏来に□□□白妙の衣ほすてふ", ""),
    ("春すぎて夏来にけらし白妙の衣かわく□天の香具山", ""),
    ("花の色は移りにけりないた□らに我身世にふる", ""),
    ("花の色は［　　］けりないたづらにわが身世にふる", ""),
    ("春日野は今日□な焼きそ若草の妻もこもれり", ""),
    ("春日野はけふはなやきそわか□の妻もこもれり我もこもれり", ""),
    ("□里は冬ぞさびしさまさりける人目も草もかれぬと思へば", ""),
    ("山里は冬ぞさびしさま□りける人目も草も枯れぬと思へば", ""),
    ("夢と□りせばさめざらましを", "夢と知りせば覚めざらましを"),
    ("夢としりせ□さめざらましを", "ゆめとしりせはさめさらましを"),
    ("夢とし□せばさめざ□ましを", "夢と知りせば\n覚めざらましを"),
    ("思ひ□に夢としりせば", "おもひねに夢と知りせば"),
    ("もみ□葉の流れてとまる", "紅葉ばの流れてとまる"),
    ("□葉の流れてとまる", "もみぢ葉の流れてとまる"),
    ("紅□の流れてとまる", "もみぢばのながれてとまる"),
    ("住吉の□に生ふてふ忘れ草", "住吉の岸に生ふてふ忘れ草"),
    ("住吉の岸に生ふて□忘れ草", "墨江の岸に生ふてふ忘草"),
    ("山路を踏□鳴鹿の声", "山路を踏み分け鳴く鹿の声"),
    ("色□の花", "色々の花"),
    ("時□鳥の声", "ほととぎすの声"),
    ("時□の声", "ほととぎすの声"),
    ("梅□露岳作之", "梅花露岳作之"),
    ("行□五十八歳作之", ""),
    ("行年五十□歳霜村作", ""),
    ("嘉永元戊□年", ""),
    ("嘉永□年癸丑八月日", ""),
    ("天保三年壬□仲秋", ""),
    ("□永六年癸丑仲秋吉日", ""),
    ("応□澹堂彫之", ""),
    ("應需□岳作之", ""),
    ("武州□露岳作之", ""),
    ("武□住露岳作之", ""),
    ("於江□露岳造之", ""),
    ("江府住露岳□之（花押）", ""),
    ("武州住［　　］作", ""),
    ("嘉永六年癸丑［　　］露岳作", ""),
    ("［　　］嶺暁作", ""),
    ("竹林七□之図", ""),
    ("竹□七賢之図／霜村作之", ""),
    ("夢の世に□とも知らで／武州□露岳作", "夢の世に夢とも知らで"),
    ("世の中に絶えて桜のなかりせば／春の心は［　　］／露岳作", CHERRIES),
    ("秋□夜の月［　　］むしの声", ""),
    ("秋の夜の月の［　　］にむしの声するはかなくもあるかな", ""),
    ("千秋□歳", ""),
    ("一□不乱", ""),
)  # fmt: skip


def library_in(folder: Path) -> Path:
    """Make the library of ``TEXTS`` in a folder and return its file."""
    file = folder / "texts.sqlite"
    with Library(file, create=True) as library:
        add_texts(library, TEXTS)
    return file


def answer(text: str, copied: str, library: Path) -> dict[str, Any]:
    """Return what is said of one worn text."""
    parsed = notation.parse(text)
    found = restore(parsed, library, copied=copied, most=SHOWN)
    places = [
        {"sign": place.sign, "kind": place.kind, "missing": place.missing, "remark": place.remark,
         "candidates": [_candidate(each) for each in place.candidates]}
        for place in found.lacunae
    ]  # fmt: skip
    with Library(library) as held:
        read = with_restored(reading.read(parsed), parsed, reading.read, held, copied=copied)
    return {
        "sources": [hit.text.id or hit.text.title for hit in found.sources],
        "places": places,
        "readings": [_reading(each) for each in read.proposals[:3]],
        "signature": _signature(read.signature),
        "passages": [
            [each.text, each.normalised, each.proposals[0].romaji if each.proposals else "",
             _signature(each.signature)]
            for each in read.passages
        ],
        "doubts": [[each.first, each.last] for each in read.doubts],
    }  # fmt: skip


def _candidate(each: Any) -> list[Any]:
    return [each.text, round(each.probability, 2), [[e.kind, e.text] for e in each.evidence]]


def _reading(each: Any) -> dict[str, Any]:
    words = [
        " ".join(filter(None, (w.surface, w.normalised, w.kana, w.romaji, w.modern)))
        for w in each.tokens
    ]
    said = next((reason for reason in each.reasons if "restored" in reason), "")
    return {"romaji": each.romaji, "words": words, "chance": round(each.chance, 2), "why": said}


def _signature(parts: dict[str, SignaturePart] | None) -> dict[str, list[str]]:
    return {key: [part.text, part.kana, part.romaji] for key, part in (parts or {}).items()}


def answers() -> Iterator[dict[str, Any]]:
    """Yield every text with what is said of it now."""
    with tempfile.TemporaryDirectory() as folder:
        library = library_in(Path(folder))
        for text, copied in WORN:
            yield {"text": text, "copied": copied, "answer": answer(text, copied, library)}


if __name__ == "__main__":
    lines = (json.dumps(each, ensure_ascii=False) for each in answers())
    FILE.write_text("\n".join(lines) + "\n", "utf-8")
