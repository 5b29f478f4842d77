"""A simulated carver as a physicist sees him: sign sizes walk at random, decisions come from looking ahead a random way.

The graver goes down the plate stroke by stroke. The log of the sign size is a random walk with drift and a weak pull home. Now and
then the carver looks ahead an exponentially distributed number of signs; only when the end (of column or text) lies within that view
does he feel pressure, and then he squeezes, shortens or drops. Some never look. Callipers then measure with an offset, a scale
error, scatter, favourite digits and rare blunders. Lengths are mm; a size is the column advance of a sign of weight 1.
Verse before 1600 typed from memory; entries without a poet are invented. The orthographic tables are from memory too.
"""

from __future__ import annotations

import math
import unicodedata
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from os.path import commonprefix
from random import Random
from typing import NamedTuple, TypedDict

TEXTS = """小町|花の色は／うつりにけりな／いたづらに／わが身世にふる／ながめせしまに 猿丸大夫|奥山に／紅葉ふみわけ／鳴く鹿の／声きく時ぞ／秋はかなしき 赤人|田子の浦に／うち出でて見れば／白妙の／富士の高嶺に／雪は降りつつ 人麿|あしびきの／山鳥の尾の／しだり尾の／ながながし夜を／ひとりかも寝む 仲麿|天の原／ふりさけ見れば／春日なる／三笠の山に／出でし月かも 喜撰法師|わが庵は／都のたつみ／しかぞすむ／世をうぢ山と／人はいふなり 蝉丸|これやこの／行くも帰るも／別れては／知るも知らぬも／逢坂の関 持統天皇|春過ぎて／夏来にけらし／白妙の／衣ほすてふ／天の香具山 行平|立ち別れ／いなばの山の／峰に生ふる／まつとし聞かば／今帰り来む
業平|ちはやぶる／神代も聞かず／竜田川／からくれなゐに／水くくるとは 康秀|吹くからに／秋の草木の／しをるれば／むべ山風を／嵐といふらむ 千里|月見れば／ちぢに物こそ／悲しけれ／わが身ひとつの／秋にはあらねど 友則|久方の／光のどけき／春の日に／しづ心なく／花の散るらむ 貫之|人はいさ／心も知らず／ふるさとは／花ぞ昔の／香ににほひける 躬恒|心あてに／折らばや折らむ／初霜の／おきまどはせる／白菊の花 是則|朝ぼらけ／有明の月と／見るまでに／吉野の里に／ふれる白雪 列樹|山川に／風のかけたる／しがらみは／流れもあへぬ／紅葉なりけり 興風|誰をかも／知る人にせむ／高砂の／松も昔の／友ならなくに
深養父|夏の夜は／まだ宵ながら／明けぬるを／雲のいづこに／月宿るらむ 朝康|白露に／風の吹きしく／秋の野は／つらぬきとめぬ／玉ぞ散りける 恵慶法師|八重むぐら／しげれる宿の／さびしきに／人こそ見えね／秋は来にけり 能因法師|嵐吹く／三室の山の／もみぢ葉は／竜田の川の／錦なりけり 良暹法師|さびしさに／宿を立ち出でて／ながむれば／いづくも同じ／秋の夕暮 経信|夕されば／門田の稲葉／おとづれて／蘆のまろやに／秋風ぞ吹く 匡房|高砂の／尾の上の桜／咲きにけり／外山の霞／たたずもあらなむ 兼昌|淡路島／かよふ千鳥の／鳴く声に／幾夜寝覚めぬ／須磨の関守 顕輔|秋風に／たなびく雲の／絶え間より／もれ出づる月の／影のさやけさ
実定|ほととぎす／鳴きつる方を／ながむれば／ただ有明の／月ぞ残れる 俊成|世の中よ／道こそなけれ／思ひ入る／山の奥にも／鹿ぞ鳴くなる 西行|嘆けとて／月やは物を／思はする／かこち顔なる／わが涙かな 寂蓮|村雨の／露もまだひぬ／槙の葉に／霧立ちのぼる／秋の夕暮 定家|来ぬ人を／まつほの浦の／夕なぎに／焼くや藻塩の／身もこがれつつ 西行|願はくは／花の下にて／春死なむ／そのきさらぎの／望月のころ 西行|心なき／身にもあはれは／知られけり／鴫立つ沢の／秋の夕暮 定家|見わたせば／花も紅葉も／なかりけり／浦の苫屋の／秋の夕暮 業平|世の中に／たえて桜の／なかりせば／春の心は／のどけからまし
敏行|秋来ぬと／目にはさやかに／見えねども／風の音にぞ／おどろかれぬる 小野小町|思ひつつ／寝ればや人の／見えつらむ／夢と知りせば／さめざらましを 貫之|袖ひちて／むすびし水の／こほれるを／春立つけふの／風やとくらむ 素性法師|見わたせば／柳桜を／こきまぜて／都ぞ春の／錦なりける 題不知|春霞／立てるやいづこ／みよしのの／吉野の山に／雪は降りつつ 題不知|五月待つ／花橘の／香をかげば／昔の人の／袖の香ぞする 志貴皇子|石走る／垂水の上の／さわらびの／もえ出づる春に／なりにけるかも 額田王|君待つと／わが恋ひをれば／わが宿の／すだれ動かし／秋の風吹く 人麿|東の／野にかぎろひの／立つ見えて／かへり見すれば／月かたぶきぬ
赤人|若の浦に／潮満ち来れば／潟をなみ／葦辺をさして／鶴鳴き渡る 家持|春の園／紅にほふ／桃の花／下照る道に／出で立つをとめ 旅人|わが園に／梅の花散る／ひさかたの／天より雪の／流れ来るかも 実朝|箱根路を／わが越え来れば／伊豆の海や／沖の小島に／波の寄る見ゆ 実朝|大海の／磯もとどろに／寄する波／われてくだけて／さけて散るかも 西行|吉野山／こぞのしをりの／道かへて／まだ見ぬ方の／花をたづねむ 道真|東風吹かば／にほひおこせよ／梅の花／主なしとて／春を忘るな 式子内親王|山深み／春とも知らぬ／松の戸に／たえだえかかる／雪の玉水 良経|うちしめり／あやめぞかをる／ほととぎす／鳴くや五月の／雨の夕暮
後鳥羽院|見わたせば／山もと霞む／水無瀬川／夕べは秋と／なに思ひけむ 和泉式部|物思へば／沢の蛍も／わが身より／あくがれ出づる／玉かとぞ見る 孟浩然|春眠不覚暁／処処聞啼鳥／夜来風雨声／花落知多少 王之渙|白日依山尽／黄河入海流／欲窮千里目／更上一層楼 柳宗元|千山鳥飛絶／万径人蹤滅／孤舟簑笠翁／独釣寒江雪 孫子|其疾如風／其徐如林／侵掠如火／不動如山 |刃をみがく／ことは心を／みがくこと／さびたることを／人は知るべし |夜ごと夜ごと／月は水より／出づるとも／水より深き／ことは語らじ |人のこと／いふより己が／ことを見よ／かがみのちりは／人のちりより
|つるぎより／ことばはかろし／されどまた／ことばは人を／たつるつるぎよ |はるかぜや／つるぎのさやに／はなひとつ |こほろぎの／こゑほそりゆく／さやのうち |ゆめのよに／ゆめみるひとの／ゆめさめて／はなはちれども／つきはのこれり |みづのうへに／うつるこころの／つきかげは／くむともくめど／つきぬなりけり |まつかぜの／こゑききながら／ながきよの／ゆめよりさめて／あきをしるかな""".split()

Box = tuple[float, float, float, float]  # x, y, width, height
Block = tuple[int, float, float, str]  # column, from, to, what
Pairs = list[tuple[str, str]]


def pairs(table: str) -> Pairs:
    """Rows of a table typed as `from>to from>to`."""
    return [(a, b) for a, _, b in (row.partition(">") for row in table.split())]


SHORTER = pairs("""ゆめ>夢 こと>ヿ より>ゟ はな>花 つき>月 こころ>心 ひと>人 みづ>水 こゑ>声 わが>我 たづね>尋 ながめ>眺 ながむ>眺 いづこ>何処
ひとり>独 ひとつ>一 かなし>悲 いふ>云 さと>里 もみぢ>紅葉 たつみ>巽 ながき>長 つるぎ>剣 かぜ>風 あき>秋 はる>春 まつ>松 みよしの>み吉野 けふ>今日
なり>也 かな>哉 ころ>頃 うち>内 うへ>上 さやか>清 にほ>匂 うつり>移 しる>知 ほととぎす>郭公 ちり>塵 ながら>乍 みがく>磨 とも>共 あはれ>哀 さびし>淋""")
OLDER = pairs(
    "花>華 声>聲 恋>戀 来>來 竜>龍 桜>櫻 涙>泪 峰>峯 嵐>嵐 夜>夜 帰>歸 覚>覺 処>處 紅葉>黄葉 剣>劔 尽>盡 万>萬 独>獨 残>殘 松>枩 島>嶋 時>旹 桃>桃 霞>霞"
)
UNVOICED = pairs(
    "が>か ぎ>き ぐ>く げ>け ご>こ ざ>さ じ>し ず>す ぜ>せ ぞ>そ だ>た ぢ>ち づ>つ で>て ど>と び>ひ ぶ>ふ べ>へ ば>は ぼ>ほ"
)
ENDINGS = pairs("らむ>らん けむ>けん なむ>なん せむ>せん やう>よふ ゐ>い ゑ>え")
SENSE = pairs("""山>峰 峰>嶺 月>影 風>嵐 嵐>風 花>桜 桜>花 里>村 宿>庵 庵>宿 海>浦 人>君 君>人 ころ>とき 時>頃 夕暮>夕べ 紅葉>木の葉 鳴く>なく声 見れば>見えて 雪>霜
露>霜 夢>うつつ 心>思ひ ながむれば>見わたせば 見わたせば>ながむれば 水>波 昔>いにしへ 都>京 波>浪 深>高 聞>見 知>見 かなし>さびし さびし>かなし 秋>冬 ちり>くもり 雲>霞""")
VARIANTS = pairs("""けり>ける ける>けり にけり>にけれ かも>かな かな>かも つつ>ける らむ>けむ を>に に>へ は>も ぞ>も も>は の>が が>の て>で ふり>降れる に>の うち出>打出 の山>の峰
白妙の>真白にぞ 見れば>見えば し>き ど>ども ね>ぬ なれ>なり や>も と>に こそ>ぞ 思ひ>おもひ わが>君が 不>未 如>似 知>識 ことば>言の葉""")
SIMILAR = pairs(
    "ぬ>ね ね>れ れ>ね る>ろ は>ほ ほ>は さ>き き>さ ち>ら ら>ち わ>れ く>し し>く め>ぬ い>り う>ら け>は 大>犬 人>入 日>目 千>干 末>未 己>巳 鳥>烏 見>貝 白>自 水>氷"
)
HENTAI = [
    (s, unicodedata.lookup(f"HENTAIGANA LETTER {n}"))
    for s, n in zip(
        "はにのをかすたきるれなも",
        "HA-1 NI-1 NO-1 WO-2 KA-2 SU-2 TA-1 KI-2 RU-2 RE-2 NA-2 MO-1".split(),
    )
]


class Cause(TypedDict):
    """One true difference: spans in source and copy (0-based, breaks not counted, -1/-1 for none) and why it came about."""

    first: int
    last: int
    copy_first: int
    copy_last: int
    cause: str


class Plate(TypedDict):
    """One carved plate as recorded, with the truth about it."""

    source: str
    copy: str
    length: float
    width: float
    columns: list[tuple[float, float, float]]
    boxes: list[Box] | None
    takes_room: list[Block]
    world: str
    causes: list[Cause]


class World(NamedTuple):
    """One kind of carver. fill: length wanted over length there is; margin: mm at the head; plan: chance to measure by eye before the first
    cut; look: chance per sign to look ahead, far: mean distance in signs; care: how much pressure moves him; drift, jitter: of log size per
    sign; slip, wording, habit: mean number on a plate; small: chance of a seppa-dai or fuchi; bend: mm."""

    name: str
    share: int
    fill: tuple[float, float]
    margin: tuple[float, float]
    plan: float
    look: float
    far: float
    care: float
    drift: float
    jitter: float
    slip: float
    wording: float
    habit: float
    division: str
    small: float = 0.06
    seal: float = 0.06
    bend: float = 0.2


WORLDS = [
    World(*row)
    for row in (  # in the order of the fields above
        ("ruled", 10, (0.6, 0.95), (3, 6), 1.0, 0.5, 9, 0.6, 0, 0.015, 1.0, 0.25, 0.3, "lines"),
        ("tight-plan", 8, (1.1, 1.5), (1.5, 5), 1.0, 0.4, 8, 0.8, 0, 0.02, 0.8, 0.25, 0.3, "even"),
        ("walker", 11, (0.85, 1.3), (1, 6), 0.0, 0.35, 7, 0.7, 0, 0.06, 0.9, 0.2, 0.3, "run"),
        ("late", 9, (1.0, 1.35), (2, 6), 0.0, 0.8, 4, 1.0, 0.002, 0.03, 0.8, 0.2, 0.3, "run"),
        ("carefree", 9, (0.9, 1.2), (1, 7), 0.0, 0.0, 1, 0.0, 0.003, 0.05, 1.0, 0.2, 0.4, "run"),
        ("shrinking", 7, (0.65, 0.95), (2, 6), 0.0, 0.1, 4, 0.3, -0.02, 0.03, 1.1, 0.2, 0.4, "run"),
        ("swelling", 7, (0.7, 0.95), (1, 5), 0.2, 0.3, 5, 0.6, 0.014, 0.04, 0.9, 0.2, 0.3, "lines"),
        (
            "to-the-edge",
            7,
            (0.9, 1.15),
            (0.2, 0.9),
            0.3,
            0.5,
            6,
            0.8,
            0,
            0.05,
            0.9,
            0.2,
            0.4,
            "even",
            0.06,
            0.06,
            0.8,
        ),
        ("memory", 7, (0.5, 0.9), (2, 8), 0.3, 0.2, 6, 0.5, 0, 0.05, 2.2, 0.4, 0.3, "lines"),
        ("other-print", 6, (0.55, 1.0), (2, 6), 0.6, 0.3, 7, 0.5, 0, 0.03, 0.5, 2.4, 0.2, "lines"),
        (
            "old-hand",
            7,
            (0.55, 1.05),
            (2, 6),
            0.5,
            0.3,
            7,
            0.5,
            0,
            0.05,
            0.6,
            0.2,
            2.4,
            "even",
            0.06,
            0.06,
            0.5,
        ),
        (
            "small-face",
            7,
            (1.0, 1.45),
            (0.5, 2),
            0.35,
            0.5,
            6,
            0.9,
            0,
            0.04,
            0.8,
            0.2,
            0.3,
            "run",
            1.0,
        ),
        (
            "seal-foot",
            7,
            (0.85, 1.15),
            (2, 5),
            0.4,
            0.4,
            6,
            0.7,
            0,
            0.03,
            0.8,
            0.2,
            0.3,
            "lines",
            0.06,
            1.0,
        ),
        ("faithful", 6, (0.5, 0.85), (2, 8), 0.6, 0.3, 6, 0.4, 0, 0.03, 0.0, 0.0, 0.0, "lines"),
    )
]


class Text(NamedTuple):
    """A source: its signs, where its lines start, and the span of its title or author line, if any."""

    signs: str
    starts: tuple[int, ...]
    name: tuple[int, int] | None


class Edit(NamedTuple):
    """Source signs first..last become `put`; last = first - 1 puts something in before `first`."""

    first: int
    last: int
    put: str
    cause: str


def is_kanji(sign: str) -> bool:
    """Whether the sign is a Han character."""
    return "一" <= sign <= "鿿"


def weight(sign: str) -> float:
    """Length a sign takes along the column, 1 for a middling one."""
    for signs, value in (
        ("ゝ々ヿ一", 0.5),
        ("〱", 1.4),
        ("のへくしてつりふいとゟ", 0.78),
        ("山人月日川上下大千万心夕水小中之也", 0.88),
    ):
        if sign in signs:
            return value
    return 1.12 if is_kanji(sign) else 0.94


def need(signs: str) -> float:
    """Length the signs take together, in sizes."""
    return sum(map(weight, signs))


def choose_text(rng: Random) -> Text:
    """A source text, about half of them with a title or author line, some in older print."""
    name, _, poem = rng.choice(TEXTS).partition("|")
    poem = poem.replace("つつ", "つゝ") if rng.random() < 0.25 else poem
    for new, old in OLDER if rng.random() < 0.2 else []:
        poem = poem.replace(new, old)
    lines = poem.split("／")
    place = (
        None
        if not name or rng.random() < 0.5
        else 0
        if name == "題不知" or rng.random() < 0.35
        else len(lines)
    )
    if place is not None:
        lines.insert(place, name)
    starts = [sum(map(len, lines[:k])) for k in range(len(lines))]
    return Text(
        "".join(lines),
        tuple(starts),
        None if place is None else (starts[place], starts[place] + len(name) - 1),
    )


def changed(text: Text, table: Pairs, cause: str) -> list[Edit]:
    """Every place where a row of the table applies within one line of the verse, cut down to the signs that really differ."""
    found, named = list[Edit](), range(text.name[0], text.name[1] + 1) if text.name else range(0)
    for old, new in table:
        for i in range(len(text.signs) - len(old) + 1):
            broken = any(i < s < i + len(old) for s in text.starts) or i in named
            if old != new and not broken and text.signs.startswith(old, i):
                head = len(commonprefix([old, new]))
                tail = len(
                    commonprefix(
                        [
                            old[: head - 1 if head else None : -1],
                            new[: head - 1 if head else None : -1],
                        ]
                    )
                )
                found.append(
                    Edit(i + head, i + len(old) - tail - 1, new[head : len(new) - tail], cause)
                )
    return found


def closes(text: Text, i: int) -> bool:
    """Whether a word seems to end with sign i: the line ends, or a kanji follows."""
    return i + 1 == len(text.signs) or i + 1 in text.starts or is_kanji(text.signs[i + 1])


def small_words(text: Text, cause: str) -> list[Edit]:
    """Particles and okurigana one could leave out (guessed from their neighbours)."""
    s, found = text.signs, list[Edit]()
    for i in range(1, len(s)):
        fits = (
            is_kanji(s[i - 1])
            and s[i] in "はもぞとるりれきくけしむふひみえちつ"
            or s[i] in "のをに"
            and s[i - 1] not in "もこそか"
        )
        named = text.name and text.name[0] <= i <= text.name[1]
        found += (
            [Edit(i, i, "", cause)]
            if fits and closes(text, i) and i not in text.starts and not named
            else []
        )
    return found


def repeats(text: Text, cause: str) -> list[Edit]:
    """Repeated signs within a line that a repeat mark could stand for."""
    s, found = text.signs, list[Edit]()
    for i in range(1, len(s)):
        if s[i] == s[i - 1] and i not in text.starts and s[i] not in "ゝのに":
            found.append(Edit(i, i, "々" if is_kanji(s[i]) else "ゝ", cause))
        if (
            i > 1
            and len(s[i : i + 2]) == 2
            and s[i : i + 2] == s[i - 2 : i]
            and not {i - 1, i, i + 1} & set(text.starts)
        ):
            found.append(Edit(i, i + 1, "〱", cause))
    return found


def savers(text: Text) -> list[Edit]:
    """All that would save room."""
    lighter = [(old, new) for new, old in OLDER if len(new) == 1]
    name = [Edit(*text.name, "", "space")] * 3 if text.name else []
    return (
        changed(text, SHORTER + lighter, "space")
        + small_words(text, "space")
        + repeats(text, "space")
        + name
    )


def skips(text: Text) -> list[Edit]:
    """Leaps of the eye from a sign or word to the same one further on, longer likenesses counted more often."""
    s, found = text.signs, list[Edit]()
    for k, i in ((k, i) for k in (1, 2, 2, 3) for i in range(len(s) - k)):
        j = s.find(s[i : i + k], i + k + 1, i + 14)
        found += (
            [Edit(i + k, j + k - 1, "", "slip")]
            if j > 0 and (k > 1 or is_kanji(s[i]) or i + 1 in text.starts)
            else []
        )
    return found


def slips(rng: Random, text: Text) -> list[Edit]:
    """Slips of one kind, picked at random among the kinds this text allows."""
    s = text.signs
    doubles = [
        Edit(i, i + k - 1, "", "slip")
        for k in (1, 2)
        for i in range(k, len(s) - k + 1)
        if s[i - k : i] == s[i : i + k]
    ]
    twice = [
        Edit(i, i - 1, s[i - k : i], "slip")
        for k in (1, 1, 2)
        for i in range(k, len(s))
        if i in text.starts or k == 1
    ]
    forgotten = [Edit(i, i, "", "slip") for i in range(1, len(s))]
    kinds = (
        [skips(text)] * 2
        + [doubles] * 2
        + [twice]
        + [forgotten] * 2
        + [small_words(text, "slip")] * 2
    )
    return rng.choice(
        [
            kind
            for kind in kinds
            + [changed(text, SENSE, "slip")] * 2
            + [changed(text, SIMILAR, "slip")]
            if kind
        ]
    )


def wordings(rng: Random, text: Text) -> list[Edit]:
    """What a differing print may have had; single kana differ only where a word ends."""
    extra = [
        Edit(i, i - 1, rng.choice("のはもぞ"), "wording")
        for i in text.starts[1:]
        if is_kanji(text.signs[i - 1])
    ]
    kana = [(new, old) for old, new in SHORTER if is_kanji(new[0])]
    other = [e for e in changed(text, VARIANTS, "wording") if closes(text, e.last)]
    kinds = [other] * 4 + [
        small_words(text, "wording"),
        extra,
        changed(text, SHORTER, "wording"),
        changed(text, kana, "wording"),
    ]
    return rng.choice([kind for kind in kinds if kind] or [[]])


def habits(rng: Random, text: Text) -> list[Edit]:
    """One habit, carried through the whole text."""
    if text.name and rng.random() < 0.12:
        return [Edit(*text.name, "", "habit")]
    kana = [(new, old) for old, new in SHORTER if is_kanji(new[0])]
    table = rng.choice([HENTAI, OLDER, SHORTER, SHORTER, SHORTER[1:3], ENDINGS, UNVOICED, kana])
    found = repeats(text, "habit") if rng.random() < 0.15 else changed(text, table, "habit")
    if table is not UNVOICED and len(found) > 2:
        kept = {e.put for e in rng.sample(found, 2)}
        found = [e for e in found if e.put in kept]
    return sorted(found, key=lambda e: e.first)


def clear(edit: Edit, others: list[Edit]) -> bool:
    """Whether an edit neither overlaps nor touches another; single signs changed into single signs may touch."""
    gaps = [
        0 if all(e.first == e.last and len(e.put) == 1 for e in (edit, o)) else 1 for o in others
    ]
    return not any(
        edit.first <= o.last + gap and o.first <= edit.last + gap for o, gap in zip(others, gaps)
    )


def unforced(rng: Random, world: World, text: Text) -> list[Edit]:
    """Differences that have nothing to do with room."""
    done: list[Edit] = []
    for mean, kind in ((world.wording, wordings), (world.slip, slips), (world.habit, habits)):
        for _ in range(sum(rng.random() < mean / 5 for _ in range(5))):
            options = kind(rng, text)
            for e in options if kind is habits else rng.sample(options, min(1, len(options))):
                done += [e] if clear(e, done) else []
    return done


def planned(rng: Random, text: Text, fill: float, done: list[Edit]) -> tuple[list[Edit], float]:
    """What he drops before the first cut, and by what factor he makes the signs smaller."""
    seen = fill * rng.lognormvariate(0, 0.06)
    shrink = max(1.0, min(seen, rng.uniform(1.05, 1.45)))
    lack, drops = need(text.signs) * (1 - shrink / seen), list[Edit]()
    for e in rng.sample(options := savers(text), len(options)):
        saved = need(text.signs[e.first : e.last + 1]) - need(e.put)
        if lack > 0.3 and saved > 0 and clear(e, done + drops):
            drops, lack = drops + [e], lack - saved
    return drops, shrink


@dataclass
class Bench:
    """One carver at work. hard: last mm he cuts in the last column; targets: source positions where he means to begin columns 1, 2, ...;
    floor: least log squeeze; walk, squeeze: log size by chance and by will;
    cuts: sign, column, y, ink height."""

    rng: Random
    world: World
    text: Text
    length: float
    pitch: float
    columns: int
    top: float
    foot: float
    hard: float
    size: float
    targets: list[int]
    blocks: list[Block]
    todo: list[Edit]
    floor: float
    col: int = 0
    y: float = 0.0
    walk: float = 0.0
    squeeze: float = 0.0
    cuts: list[tuple[str, int, float, float]] = field(default_factory=list)
    done: list[Edit] = field(default_factory=list)
    causes: list[Cause] = field(default_factory=list)

    def run(self) -> None:
        """Carves the text until its end or the end of the metal."""
        self.y, i, s = self.start(), 0, self.text.signs
        while i < len(s):
            if (
                self.cuts
                and self.cuts[-1][1] == self.col < len(self.targets)
                and i >= self.targets[self.col]
            ):
                self.col, self.y = self.col + 1, self.start()
            before = len(self.cuts)
            edit = next((e for e in self.todo if e.first == i), None) or self.look(i)
            if not self.cut(edit.put if edit else s[i]):
                edit = Edit(i, len(s) - 1, "", "space")
            if edit:
                self.log(edit, before)
            i = edit.last + 1 if edit else i + 1

    def start(self) -> float:
        """The head of a column, never quite on the line."""
        return max(0.1, self.rng.gauss(self.top, 0.1 + self.world.jitter * 6))

    def log(self, edit: Edit, before: int) -> None:
        """Writes down a difference."""
        self.todo = [e for e in self.todo if e != edit]
        self.done.append(edit)
        a, b = (edit.first, edit.last) if edit.last >= edit.first else (-1, -1)
        c, d = (before, len(self.cuts) - 1) if len(self.cuts) > before else (-1, -1)
        self.causes.append(Cause(first=a, last=b, copy_first=c, copy_last=d, cause=edit.cause))

    def look(self, i: int) -> Edit | None:
        """Looks ahead a random way; squeezes, and perhaps shortens what comes next."""
        rng, care, end = self.rng, self.world.care, len(self.text.signs)
        seen = (
            i + 1 + int(rng.expovariate(1 / self.world.far))
            if rng.random() < self.world.look
            else 0
        )
        goal = end if seen >= end or self.col >= len(self.targets) else self.targets[self.col]
        if not i < goal <= seen:
            return None
        pressure = (
            need(self.text.signs[i:goal])
            * self.now()
            * rng.lognormvariate(0, 0.08)
            / max(0.5, self.room(goal == end))
        )
        self.squeeze = max(self.floor, min(0.1, self.squeeze - 0.5 * care * math.log(pressure)))
        if goal < end or pressure < 1.02 or rng.random() > care * (0.3 + 2.5 * (pressure - 1)):
            return None
        options = [e for e in savers(self.text) if e.first == i and clear(e, self.todo + self.done)]
        return rng.choice(options) if options else None

    def now(self) -> float:
        """The present size of a middling sign."""
        return max(1.3, self.size * math.exp(max(-0.5, min(0.45, self.walk)) + self.squeeze))

    def limit(self, col: int) -> float:
        """Where a column has to stop."""
        return self.hard if col >= self.columns - 1 else self.length - self.foot

    def room(self, to_end: bool) -> float:
        """Length left, in this column or in all."""
        last = self.columns - 1 if to_end else self.col
        total = (
            self.limit(self.col) - self.y + (last - self.col) * (self.length - self.foot - self.top)
        )
        left = [
            (a if c > self.col else max(a, self.y), b)
            for c, a, b, _ in self.blocks
            if self.col <= c <= last
        ]
        return total - sum(max(0.0, b - a) for a, b in left)

    def slot(self, height: float) -> tuple[int, float] | None:
        """The next place where a sign of that height goes."""
        col, y = self.col, self.y
        while col < self.columns:
            for c, a, b, _ in self.blocks:
                y = b + 0.4 if c == col and y < b and y + height > a else y
            if y + height <= self.limit(col):
                return col, y
            col, y = col + 1, self.start()
        return None

    def cut(self, put: str) -> bool:
        """Cuts signs, or none of them when the metal ends."""
        count, col, y = len(self.cuts), self.col, self.y
        for sign in put:
            step = self.step(sign)
            spot = self.slot(step * 0.9) or (self.slot(step * 0.68) if self.world.care else None)
            if spot is None:
                self.cuts, self.col, self.y = self.cuts[:count], col, y
                return False
            ink = min(step * 0.88, self.limit(spot[0]) - spot[1])
            self.cuts.append((sign, *spot, ink))
            self.col, self.y = spot[0], spot[1] + ink + step * 0.12
        return True

    def step(self, sign: str) -> float:
        """One step of the walk, then the sign stroke by stroke: each stroke errs on its own, so rich signs err less."""
        jitter, strokes = self.world.jitter, 8 if is_kanji(sign) else 3
        self.walk += self.world.drift + self.rng.gauss(0, jitter) - 0.05 * self.walk
        errs = sum(self.rng.gauss(0, 0.02 + 3 * jitter) for _ in range(strokes)) / strokes
        return self.now() * weight(sign) * max(0.6, 1 + errs)


def reader(
    rng: Random, scatter: float, offset: float, step: float, heap: float
) -> Callable[..., float]:
    """A measuring person: scatter, offset from the worn edge, least step, liking for half mm; one reading in 150 is a mm wrong."""
    scale = rng.gauss(1, 0.002)

    def read(mm: float, low: float = 0.0, high: float = 200.0, edge: bool = True) -> float:
        value = (
            mm * scale
            + offset * edge
            + rng.gauss(0, scatter)
            + rng.choice([-1, 1]) * (rng.random() < 1 / 150)
        )
        unit = 0.5 if rng.random() < heap else step
        return round(max(low, min(high, round(value / unit) * unit)), 1)

    return read


def layout(
    rng: Random, world: World, width: float, body: float, total: float, fill: float
) -> tuple[int, float, float]:
    """Number of columns, their pitch and the size of a sign: roughly square signs at the fill wanted."""
    usable = width - rng.uniform(0.6, 3.0)
    options = [(n, usable / n, fill * n * body / total) for n in range(1, 7)]
    return rng.choices(
        options,
        [math.exp(-((math.log(size / pitch) / 0.6) ** 2) / 2) + 1e-9 for _, pitch, size in options],
    )[0]


def turns(text: Text, count: int, division: str) -> list[int]:
    """Source positions at which he means to begin columns 1, 2, ..."""
    if division == "run":
        return []
    total, marks = (
        need(text.signs),
        text.starts[1:] if division == "lines" else range(1, len(text.signs)),
    )
    return sorted(
        {
            min(marks, key=lambda m: abs(need(text.signs[:m]) - total * k / count))
            for k in range(1, count)
        }
    )


def obstacles(rng: Random, world: World, length: float, columns: int) -> list[Block]:
    """What stood, or was to stand, on the plate: a seal or picture at the last foot, now and then an old flaw."""
    found, foot, start = list[Block](), length - rng.uniform(0.5, 3), rng.uniform(0.2, 0.7) * length
    if rng.random() < world.seal:
        found.append(
            (
                columns - 1,
                foot - length * rng.uniform(0.07, 0.18),
                foot,
                rng.choice(["seal", "seal", "picture"]),
            )
        )
    if rng.random() < 0.05:
        found.append(
            (rng.randrange(columns), start, start + length * rng.uniform(0.03, 0.07), "damage")
        )
    return found


def carve(rng: Random, world: World) -> tuple[Bench, float]:
    """Lets one carver work; returns the bench as he left it and the width of the plate."""
    text, small = choose_text(rng), rng.random() < world.small
    length, width = (
        (rng.uniform(28, 42), rng.uniform(9, 14))
        if small
        else (rng.uniform(95, 98), rng.uniform(14, 15))
    )
    top, fill = rng.uniform(*world.margin) * (0.4 if small else 1), rng.uniform(*world.fill)
    foot = top if world.plan > 0.5 or rng.random() < 0.3 else max(0.3, rng.uniform(0.2, 1.3) * top)
    count, pitch, size = layout(rng, world, width, length - top - foot, need(text.signs), fill)
    blocks, edits, shrink = obstacles(rng, world, length, count), unforced(rng, world, text), 1.0
    if rng.random() < world.plan:
        lost = sum(b - a for _, a, b, _ in blocks) / (count * (length - top - foot))
        drops, shrink = planned(rng, text, fill / (1 - lost), edits)
        edits += drops
    hard = length - (foot if world.care and rng.random() < 0.4 else 0.3)
    targets, floor = turns(text, count, world.division), -rng.uniform(0.1, 0.55)
    bench = Bench(
        rng,
        world,
        text,
        length,
        pitch,
        count,
        top,
        foot,
        hard,
        size / shrink,
        targets,
        blocks,
        edits,
        floor,
    )
    bench.run()
    return bench, width


def inks(bench: Bench, width: float) -> list[Box]:
    """True boxes of the signs: x from the left edge, y from the head edge, width, height; a column may bend."""
    rng, found, right = bench.rng, list[Box](), bench.rng.uniform(0.3, 0.6)
    bends = [rng.gauss(0, bench.world.bend) for _ in range(bench.columns)]
    for sign, col, y, height in bench.cuts:
        wide = (
            min(0.92 * bench.pitch, bench.size * 1.05)
            * rng.gauss(0.9, 0.05)
            * (0.7 if sign in "ゝ〱ヿしく" else 1)
        )
        centre = (
            width
            - right
            - bench.pitch * (col + 0.5)
            + bends[col] * math.sin(math.pi * y / bench.length)
        )
        found.append((max(0.1, centre - wide / 2), y, wide, height))
    return found


def recorded(bench: Bench, width: float) -> Plate:
    """The plate as somebody measured it; worse tools are noted to half a millimetre more often, boxes come from a photograph."""
    rng, marks, text, columns = (
        bench.rng,
        inks(bench, width),
        bench.text,
        list[tuple[float, float, float]](),
    )
    scatter, used = rng.uniform(0.08, 0.4), sorted({cut[1] for cut in bench.cuts})
    read = reader(
        rng,
        scatter,
        rng.gauss(0, 0.15),
        0.5 if rng.random() < scatter + 0.1 else 0.1,
        rng.choice([0, 0, 0.3]),
    )
    fine, length, edges = (
        reader(rng, scatter * 0.6, 0, 0.1, 0),
        read(bench.length, edge=False),
        [*text.starts, len(text.signs)],
    )
    for own in ([m for m, cut in zip(marks, bench.cuts) if cut[1] == col] for col in used):
        top, broad = (
            read(own[0][1]),
            max(x + w for x, _, w, _ in own) - min(x for x, _, _, _ in own),
        )
        columns.append(
            (top, read(own[-1][1] + own[-1][3], top + 0.5, length), read(broad, 0.5, edge=False))
        )
    return Plate(
        source="／".join(text.signs[a:b] for a, b in zip(edges, edges[1:])),
        copy="／".join("".join(cut[0] for cut in bench.cuts if cut[1] == col) for col in used),
        length=length,
        width=read(width, edge=False),
        columns=columns,
        world=bench.world.name,
        causes=bench.causes,
        boxes=[(fine(x), fine(y), fine(w, 0.3), fine(h, 0.3)) for x, y, w, h in marks]
        if rng.random() < 0.34
        else None,
        takes_room=[
            (used.index(c), read(a), read(b, 0, length), what)
            for c, a, b, what in bench.blocks
            if c in used
        ],
    )


def plates(seed: int, count: int) -> list[Plate]:
    """`count` plates, the same for the same seed."""
    hands = (Random(f"walk {seed} {k}") for k in range(count))
    return [
        recorded(*carve(rng, rng.choices(WORLDS, [w.share for w in WORLDS])[0])) for rng in hands
    ]


def check(plate: Plate) -> None:
    """Raises unless the causes, applied to the source in order, give the copy, and each of them changes something."""
    source, copy, made, i = (
        plate["source"].replace("／", ""),
        plate["copy"].replace("／", ""),
        "",
        0,
    )
    for c in plate["causes"]:
        goes = c["first"] if c["first"] >= 0 else i + c["copy_first"] - len(made)
        old, new = (
            source[goes : c["last"] + 1] if c["first"] >= 0 else "",
            copy[max(c["copy_first"], 0) : c["copy_last"] + 1],
        )
        made += source[i:goes]
        if goes < i or old == new or (new and c["copy_first"] != len(made)):
            raise AssertionError(plate)
        made, i = made + new, goes + len(old)
    if made + source[i:] != copy:
        raise AssertionError(plate)


def main() -> None:
    """Prints three plates, then causes by world for 500 checked plates."""
    for plate in plates(1, 3):
        print(*(f"{key}: {value}" for key, value in plate.items()), "", sep="\n")
    shorter, table = Counter[str](), {w.name: Counter[str]() for w in WORLDS}
    for plate in plates(2, 500):
        check(plate)
        table[plate["world"]].update(
            [c["cause"] for c in plate["causes"]]
            + ["plates"]
            + ["faithful"] * (not plate["causes"])
        )
        shorter.update(
            c["cause"]
            for c in plate["causes"]
            if c["last"] - c["first"] > c["copy_last"] - c["copy_first"]
            or c["first"] >= 0 > c["copy_first"]
        )
    for name, row in table.items():
        print(
            f"{name:12}",
            *(
                f"{key} {row[key]:4}"
                for key in ("plates", "faithful", "space", "slip", "wording", "habit")
            ),
        )
    print(
        "omitted or shortened, by cause:",
        dict(shorter),
        f"space {shorter['space'] / sum(shorter.values()):.0%}",
    )


if __name__ == "__main__":
    main()
