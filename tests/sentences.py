"""What is said in words of dates, signs, texts, copies and worn places, asked for by example.

``tests/data/answers/sentences.jsonl`` has what was asked and every sentence of the answer a line:
the program's own, looked over. ``python tests/sentences.py`` writes it anew; a change of it has to
be looked at.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path

from inscribe.collation import collate
from inscribe.dates import compared, resolve
from inscribe.errors import InscribeError
from inscribe.forms import normalise_text
from inscribe.notation import parse
from inscribe.reading import read
from inscribe.reading.suspicious import suspicions
from inscribe.restoring import restore

FILE = Path(__file__).parent / "data/answers/sentences.jsonl"
BETWEEN = "｜"  # between two texts that are held against each other


def of_date(text: str) -> Iterator[str]:
    found = resolve(text)
    yield f"{found.agreement}: {found.why}"
    yield from (each.text for each in found.explanations)
    yield from found.cautions


def of_dates(text: str) -> Iterator[str]:
    *dates, last = text.split(BETWEEN)
    born = int(last) if last.isdigit() else None
    if born is None:
        dates.append(last)
    found = compared([resolve(each) for each in dates], born=born)
    yield found.agreement
    yield from found.statements


def of_signs(text: str) -> Iterator[str]:
    for change in normalise_text(text).changes:
        doubt = ", doubtful" if change.doubtful else ""
        yield f"{change.sign} {change.before}>{change.after} {change.kind}: {change.note}{doubt}"


def of_suspicions(text: str) -> Iterator[str]:
    for found in suspicions(parse(text).signs):
        yield f"{found.sign}-{found.end} {found.kind}: {found.said}"


def of_text(text: str) -> Iterator[str]:
    found = read(parse(text))
    for passage in found.passages:
        yield f"{passage.kind} {passage.text}: {'; '.join(passage.reasons)}"
    for proposal in found.proposals[:2]:
        yield f"{found.register}: {'; '.join(proposal.reasons)}"
    for doubt in found.doubts:
        yield f"{doubt.first}-{doubt.last}: {doubt.why}"


def of_copy(text: str) -> Iterator[str]:
    copy, source = text.split(BETWEEN)
    found = collate(parse(copy), parse(source))
    for group in found.groups:
        if group.why or group.kind != "same":
            yield f"{group.kind} {group.copy.text}/{group.source.text}: {group.why}"
    yield from found.notes


def of_worn(text: str) -> Iterator[str]:
    for lacuna in restore(parse(text)).lacunae:
        yield lacuna.remark
        for candidate in lacuna.candidates[:3]:
            yield f"{candidate.text}: {'; '.join(each.text for each in candidate.evidence)}"


KINDS: dict[str, Callable[[str], Iterator[str]]] = {
    "date": of_date,
    "dates": of_dates,
    "signs": of_signs,
    "suspicions": of_suspicions,
    "text": of_text,
    "copy": of_copy,
    "worn": of_worn,
}
ASKED: dict[str, str] = {
    "date": """天保三年閏正月 嘉永五年三月朔日甲子 天保三年甲丑 天保三年壬巳 永六年癸丑 嘉政六年 天保十八年 文政二十年
        安政三年三月三日甲子 行年七十 同年八月 天保三年癸巳 嘉永六年子 嘉氷六年 天保三年大晦日 慶應五年 嘉永六年二月三十日
        嘉永六年小正月晦日 安政二年十二月三十日 明治六年閏六月 享保元年正月元日 文久四年甲子二月 天保二年未 天保二年羊
        嘉永五年六月冬至 嘉永六年秋三月 天明八年戌甲 平成三年辛未 昭和十五年庚辰 嘉永元年戊甲春 保三年
        天保十三年仲秋十五夜 元治二年乙丑 大正元年八月 慶安三年庚寅五月五日 嘉永六年□月 嘉永□年癸丑 □永六年癸丑
        嘉永□年甲子 嘉永五年三月十三日甲子 嘉永五年三月四日甲子 嘉永五年二月三十一日 天保三年千末 嘉永六年癸丑行年七十三歳""",
    "dates": """嘉永六年行年三十歳｜安政二年行年三十二歳 嘉永六年行年三十歳｜安政二年行年六十歳 嘉永六年｜安政二年 嘉永六年｜嘉永六年八月
        甲寅｜嘉永六年 甲寅仲秋｜天保三年 行年七十歳｜嘉永六年 行年七十歳｜1780 嘉永六年行年三十歳｜1824 嘉永六年行年三十歳｜1800
        甲寅｜乙卯 安政二年｜嘉永六年｜天保三年
        行年七十歳｜行年七十一歳 嘉永六年行年七十歳｜1784""",
    "signs": """國花 〻花 花〻 花々 花ゝ かゞ かゝ がゝ はなゝゝ 春日々々 悲しき〱 しみ〱 ちる〱 あまつかぜ〱 は〱 山川〱 花〲 な゛ か゛ 花゛
        ⿰木黑々 ⿰木黑〱 ゝ花 舩 餘 辨 藝 體 处 の〲 春ゞ かへす〱 葛󠄀 ヿ ゟ 𛂥な 凃 龍龍ゝ 々花 （印「嶺」）
        は々 なゞ わ(王) （印「國」） ⿰木國 发 后 里 花わゞ""",
    "suspicions": """一二三四〇年 〇山 嘉永6年 ABC作 東京ﾆﾃ ㈱作 ⼭水 かっこ らーめん 花押 嶺暁花押 口山ロ 武州住二郎ニ作 卜部ト 玉ｍ作 花？
        りんりん（りん） 夕ベ 力カ 大日本國陸ノ奧 於江尸造之 天保三年千辰 ★作 刻ノ之 工エ
        嶺暁ツ作 嶺ー暁作 大曰本""",
    "text": """春の夜の夢ばかりなる手枕に 花の色は移りにけりないたづらに我が身世にふるながめせしまに 古池や蛙飛びこむ水の音
        夏草や兵どもが夢の跡／芭蕉書 和而不同 露 松風 天下泰平 隅田川之図 為籾山君 候間御座候 御注文にて刻之
        嶺暁（印「山花」） 嘉永六年癸丑仲秋／武州住嶺暁作 應需造之 三郎兵衛 吾心似秋月 雪中梅／年の内に春は来にけり一年を去年とや言はむ今年とや言はむ
        花の色は□りにけりな 武州住□国作 紀某 七十三翁嶺暁 嘉永五有年
        夢想 壽 諸行無常是生滅法 朝露 この道や行く人なしに秋の暮 是を造る 國の春 てふ 夕されば野辺の秋風身にしみて 銀座
        年の内に春は来にけり 福壽 延年 肉合彫
        花の色は［　　］けりな／嶺暁作 為籾山君／嶺暁作之 嘉永□年嶺暁作 藤原嶺暁 紀嶺暁作 みねあき作
        行年七十嶺暁 山水花鳥""",
    "copy": """春の夜の月｜春の夜の夢 うきはし春の夜｜春の夜うきはし 春の夜のゆめ｜春の夜の夢 應需造之｜需に応じて之を造る むめの花｜うめの花
        花ハ｜花は ゃ｜や らうと｜らむと 花花さく｜花さく 花さく｜花花さく 春の［　　］夢｜春の夜の夢 春の□夢｜春の夜の夢
        春の夜の夢｜春の［　　］夢 ちゝの｜ちちの □ゝの｜ちちの 於江戸造之｜江戸に於て之を造る こひしき｜恋しき 思ふ｜おもう 國の花｜国の花
        山の端｜山の葉 たかさこのをのへのさくらさきにけり｜高砂の尾上の桜咲きにけり外山の霞立たずもあらなむ おほかた｜おおかた
        いろはにほへと｜春はあけぼのやうやう白くなりゆく けふ｜きょう 来る春｜春来る 月｜花 春秋｜秋春 春夏秋冬｜夏秋冬春 道のべの｜みちのべの
        春夜｜春の夜 応需｜もとめにおうじて 花鳥風月｜風月花鳥 さめざらまし｜夢としりせばさめざらましを
        花の色は移りにけりな｜年の内に春は来にけり一年を去年とや言はむ今年とや言はむ花の色は移りにけりないたづらに我が身世にふるながめせしまに""",
    "worn": """武州住□国作 世の中に桜の□かりせば 世の中に［　　］なかりせば春の心はのどけからまし 武州住［　　］作 ［　　］の色は
        嘉永□年癸丑 嘉永六年癸□ 於江□造之 應□造之 □□□□□ 天下□平 花の□ 春の夜の夢の□橋とだえして 行年七十□歳 □月吉日
        嘉永□年甲寅 天保三□壬辰 天保三年八月□日 天保三年八月五□ 天保三年壬辰仲□ 天保三年八□ 春の［　　］""",
}


def asked() -> Iterator[tuple[str, str]]:
    for kind, given in ASKED.items():
        yield from ((kind, text) for text in dict.fromkeys(re.split("[ \n]+", given)))


def said(kind: str, given: str) -> list[str]:
    """Return every sentence that is said of what is given, or why it cannot be used."""
    try:
        return [each for each in KINDS[kind](given) if each]
    except InscribeError as error:
        return [str(error)]


def kept() -> list[tuple[str, str, list[str]]]:
    """Return what was asked and said, as it is kept."""
    lines = map(json.loads, FILE.read_text("utf-8").splitlines())
    return [(line["of"], line["given"], line["said"]) for line in lines]


def main() -> None:
    """Write the file."""
    rows = ({"of": kind, "given": text, "said": said(kind, text)} for kind, text in asked())
    lines = (json.dumps(row, ensure_ascii=False) for row in rows)
    FILE.write_text("".join(f"{line}\n" for line in lines), "utf-8")


if __name__ == "__main__":
    main()
