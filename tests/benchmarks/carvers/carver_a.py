"""A simulated engraver who plans with a brush draft on a paper strip, sometimes well, sometimes badly.

The text passes through four hands: the print it was taken from (wording), the writer's habits, his eye and memory (slips),
and the draft: he judges by eye how much the strip holds, saves signs until he believes it fits, then cuts, and only while
cutting finds out whether strip, seal and metal agree. Lengths in mm: invented or from memory, unmeasured."""

import math
import random
from collections import Counter, defaultdict
from os.path import commonprefix
from typing import NamedTuple, TypedDict

# Words parted by blanks, lines by ／, texts by |; ＃ title line, ＠ author line. Verse before 1600 from
# memory; mottoes and ＠-less verse partly invented.
TEXTS = (
    """
＃春歌 久方 の ひかり のどけき ／ はる の 日 に ／ しづ心 なく ／ 花 の ちる らむ ＠友則 | はな の いろ は ／ うつり に けり な ／ いたづらに ／ 我 身 よ に ふる ／ ながめ せし ま に ＠小町 | ひと は いさ ／ こころ も しらず ／ ふるさと は ／ 花 ぞ むかし の ／ 香 に 匂ひ ける ＠貫之 | おく山 に ／ もみぢ ふみわけ ／ 鳴く 鹿 の ／ こゑ きく とき ぞ ／ あき は かなしき ＠猿丸 | ＃月 あまの原 ／ ふりさけ 見れば ／ 春日 なる ／ 三笠 の 山 に ／ いでし つき かも ＠仲麿 | 田子 の 浦 に ／ うち出でて 見れば ／ 白妙 の ／ 富士 の たかね に ／ ゆき は 降り つつ ＠赤人 | これ や この ／ 行く も かへる も ／ わかれて は ／ しる も しらぬ も ／ 逢坂 の 関 ＠蝉丸 | あまつ かぜ ／ くも の かよひぢ ／ 吹き とぢよ ／ をとめ の すがた ／ しばし とどめむ ＠遍昭 | ちはやぶる ／ 神代 も きかず ／ 竜田 川 ／ からくれなゐ に ／ 水 くくる とは ＠業平 | ＃秋 月 見れば ／ ちぢに もの こそ ／ 悲しけれ ／ わが身 ひとつ の ／ あき に は あらねど ＠千里 | 吹く からに ／ 秋 の 草木 の ／ しをるれば ／ むべ やま 風 を ／ あらし と いふ らむ ＠康秀 |
山里 は ／ ふゆ ぞ さびしさ ／ まさり ける ／ ひと 目 も 草 も ／ 枯れ ぬ と おもへば ＠宗于 | 心あてに ／ 折らば や をらむ ／ はつ しも の ／ おき まどはせる ／ しらぎく の 花 ＠躬恒 | あさぼらけ ／ 有明 の つき と ／ みる までに ／ よしの の 里 に ／ ふれる しらゆき ＠是則 | やま 川 に ／ かぜ の かけたる ／ しがらみ は ／ 流れ も あへぬ ／ もみぢ なり けり ＠列樹 | 誰 を かも ／ しる 人 に せむ ／ 高砂 の ／ まつ も むかし の ／ 友 なら なくに ＠興風 | なつ の 夜 は ／ まだ よひ ながら ／ 明け ぬる を ／ くも の いづこ に ／ つき やどる らむ ＠深養父 | しら つゆ に ／ 風 の ふきしく ／ 秋 の 野 は ／ つらぬき とめぬ ／ 玉 ぞ 散り ける ＠朝康 | 八重 むぐら ／ しげれる やど の ／ さびしき に ／ ひと こそ 見えね ／ 秋 は 来 に けり ＠恵慶 | かぜ を いたみ ／ 岩 うつ なみ の ／ おのれ のみ ／ くだけて もの を ／ 思ふ ころ かな ＠重之 | あらし ふく ／ 三室 の 山 の ／ もみぢ 葉 は ／ たつた の 川 の ／ 錦 なり けり ＠能因 | さびしさ に ／ 宿 を 立ち出でて ／ ながむれば ／ いづこ も 同じ ／ あき の 夕暮 ＠良暹 |
夕 されば ／ 門田 の いなば ／ おとづれて ／ 芦 の まろや に ／ あき かぜ ぞ 吹く ＠経信 | 高砂 の ／ 尾上 の さくら ／ 咲き に けり ／ 外山 の かすみ ／ たたず も あら なむ ＠匡房 | もろともに ／ あはれ と おもへ ／ 山 ざくら ／ はな より ほか に ／ しる ひと も なし ＠行尊 | 淡路 島 ／ かよふ 千鳥 の ／ なく こゑ に ／ いく夜 ね ざめ ぬ ／ 須磨 の 関守 ＠兼昌 | 秋 かぜ に ／ たなびく くも の ／ たえま より ／ もれ 出づる つき の ／ かげ の さやけさ ＠顕輔 | ほととぎす ／ なき つる かた を ／ ながむれば ／ ただ 有明 の ／ 月 ぞ 残れる ＠実定 | なげけ とて ／ つき やは もの を ／ 思はする ／ かこち 顔 なる ／ わが なみだ かな ＠西行 | 村雨 の ／ つゆ も まだ ひぬ ／ まき の 葉 に ／ 霧 立ちのぼる ／ あき の 夕暮 ＠寂蓮 | ねがはく は ／ 花 の もと にて ／ 春 死なむ ／ その 如月 の ／ もち月 の ころ ＠西行 | 心 なき ／ 身 に も あはれ は ／ しられ けり ／ 鴫 立つ 沢 の ／ あき の 夕暮 ＠西行 | 見渡せば ／ はな も もみぢ も ／ なかり けり ／ 浦 の 苫屋 の ／ 秋 の 夕暮 ＠定家 |
駒 とめて ／ そで うちはらふ ／ かげ も なし ／ 佐野 の わたり の ／ ゆき の 夕暮 ＠定家 | ＃恋 おもひ つつ ／ ぬれば や ひと の ／ 見え つらむ ／ ゆめ と しり せば ／ さめざら まし を ＠小町 | ＃春 世の中 に ／ たえて さくら の ／ なかり せば ／ 春 の こころ は ／ のどけから まし ＠業平 | いろいろ の ／ はな の ひも とく ／ 夕暮 に ／ きみ まつ むし の ／ 声 ぞ きこゆる | 見る ひと も ／ なき 山里 の ／ さくら 花 ／ ほか の 散りなむ ／ 後 ぞ さかまし ＠伊勢 | 袖 ひちて ／ むすびし みづ の ／ こほれる を ／ はる 立つ けふ の ／ 風 や とく らむ ＠貫之 | あき 来 ぬ と ／ 目 に は さやかに ／ 見えねども ／ かぜ の おと に ぞ ／ おどろかれ ぬる ＠敏行 | ひと すまぬ ／ 不破 の 関屋 の ／ 板 びさし ／ あれ に し 後 は ／ ただ あき の 風 ＠良経 | 七重 八重 ／ 花 は 咲け ども ／ 山吹 の ／ みの ひとつ だに ／ なき ぞ 悲しき ＠兼明 | ほのぼのと ／ 明石 の 浦 の ／ 朝霧 に ／ 島 がくれ 行く ／ ふね を しぞ おもふ | 世 に ふる も ／ さらに 時雨 の ／ やどり かな ＠宗祇 |
雪 ながら ／ 山もと かすむ ／ 夕 かな ＠宗祇 | つき に 柄 を ／ さし たらば よき ／ 団扇 かな ＠宗鑑 | 落花 枝 に ／ かへる と 見れば ／ 胡蝶 かな ＠守武 | 行く 水 とほく ／ うめ にほふ 里 ＠肖柏 | ＃水 さざなみ の ／ こゑ も ふけ行く ／ 湖 に ／ ふね より つき を ／ 見る こと の よき | さまざま の ／ こと おもひ出す ／ まつ の かげ ／ きみ より ほか の ／ ひと は しらじな | 山山 の ／ ゆき も 消え けり ／ 今日 より は ／ みち ふむ ひと の ／ こゑ ぞ 聞ゆる | しみじみと ／ たび の ころも に ／ つゆ を おく ／ 野 の 末 とほき ／ かね の こゑ かな | 国 の ため ／ 学ぶ こと こそ ／ たのし けれ ／ 桜 の かげ に ／ 万代 を おもふ | よき 刃 は ／ よき 鞘 に 在り ／ よき こころ は ／ よき みち に 在り | 静か なる こと ／ 林 の 如く ／ うごく こと ／ 雷 の 如し |
水 は 方円 の ／ 器 に したがひ ／ ひと は 友 に よる | 剣 を みがく は ／ こころ を みがく こと なり | 千里 の みち も ／ 一歩 より はじまる なり | 花 は さくら ／ ひと は こころ の ／ いろ を 見よ | 竜 は くも に よりて ／ 天 に のぼり ／ ひと は まこと に よりて 立つ | 国 の 宝 は 玉 に あらず ／ ひと の まこと なり | 勝つ こと を しりて ／ 負くる こと を しらざれば ／ 害 その 身 に いたる | 学びて 時 に ／ これ を ならふ ／ また よろこばし から ず や | 明月 来 照 古松 之 間 ／ 清風 自 払 白石 之 上 | 心 静 而 夜 長 ／ 山 高 而 月 小 ／ 酒 尽 而 客 帰 | ＃銘 言 を 慎み ／ 行ひ を つつしみ ／ こころ を つつしむ こと
""".replace("\n", " ")
    .strip()
    .split(" | ")
)
KANJI = dict(
    pair.split(":")
    for pair in (
        "はる:春 なつ:夏 あき:秋 ふゆ:冬 はな:花 つき:月 かぜ:風 やま:山 なみ:波 ゆめ:夢 こころ:心 ひと:人 なみだ:涙 ころも:衣 そで:袖 つゆ:露 しも:霜 ゆき:雪 くも:雲 いろ:色 こゑ:声 みち:道 ふね:舟 まつ:松 さくら:桜 もみぢ:紅葉 むかし:昔 きみ:君 おもひ:思 おもふ:思ふ かすみ:霞 ほととぎす:時鳥 もの:物 とき:時 かな:哉 らむ:覧 なり:也 けり:鳧 よひ:宵 ひかり:光 かた:方 あらし:嵐 たび:旅 みづ:水 うめ:梅 かげ:影 すがた:姿 ふるさと:古里 あはれ:哀 やど:宿 まこと:誠 ころ:頃 ただ:只 おと:音 かね:鐘 しらゆき:白雪 ながむれば:詠れば しる:知る"
    ).split()
)
PRINT = dict(
    pair.split(":")
    for pair in (
        "も:は は:も ぞ:や けり:ける らむ:けり かな:かも に:へ 夕暮:夕ぐれ 吹く:そよぐ 山里:山ざと いづこ:いづく とは:とや 見れば:みれば より:から つつ:ける ながむれば:みわたせば たえて:絶えて しばし:しばらく なき:なく ける:けり 里:山 こと:もの 如し:如く よる:したがふ まし:べき かも:かな"
    ).split()
)
SENSE = dict(
    pair.split(":")
    for pair in (
        "花:桜 はな:さくら 月:影 つき:かげ 風:嵐 かぜ:あらし 山:峰 やま:みね くも:かすみ ひと:われ なみだ:つゆ こころ:おもひ ゆめ:まぼろし こゑ:おと 声:音 みち:ことわり 見る:ながむる 水:波 里:野 夕暮:夕月夜 後:時 思ふ:しのぶ きみ:ひと 身:世 なし:なき 如く:やうに よき:まさる"
    ).split()
)
PARTICLES = frozenset("の は を に も ぞ と や が て 之 而".split())
OLD_KANJI = dict(
    zip("国声来桜万竜恋学風霊静剣関沢払宝円鶴", "國聲來櫻萬龍戀學凮靈靜劔關澤拂寳圓靏")
)
OLD_KANA = {
    "に": "尓",
    "は": "者",
    "の": "能",
    "か": "可",
    "を": "越",
    "け": "希",
    "な": "奈",
    "た": "多",
}
PLAIN = dict(
    zip("がぎぐげござじずぜぞだぢづでどばびぶべぼ", "かきくけこさしすせそたちつてとはひふへほ")
)
BLANK = "　"  # a patch of the draft came off: the place stays, the sign is lost


class Cause(TypedDict):
    """One difference: spans in source and copy (0-based, breaks not counted, -1 for none) and its true cause."""

    first: int
    last: int
    copy_first: int
    copy_last: int
    cause: str


class Plate(TypedDict):
    """A plate as recorded, with the truth about its differences."""

    source: str
    copy: str
    length: float
    width: float
    columns: list[tuple[float, float, float]]
    boxes: list[tuple[float, float, float, float]] | None
    takes_room: list[tuple[int, float, float, str]]
    world: str
    causes: list[Cause]


class World(NamedTuple):
    """A workshop. judge: relative error of his eye (None: no draft); paper: strip over plate length; hope: how full he dares to plan;
    floor: smallest sign over the wished one; saves: order of savings (k kanji, p particle, o okurigana, r repeat, a author, t title);
    slips: mean number; wording, seal, spread (columns spaced out to the foot): chances; habits: how many; bow: bend of columns in mm."""

    name: str
    share: float
    judge: float | None
    paper: tuple[float, float]
    top: tuple[float, float]
    foot: tuple[float, float]
    hope: tuple[float, float]
    floor: float
    saves: str
    slips: float
    wording: float
    habits: float
    uneven: float
    seal: float
    spread: float
    bow: float


WORLDS = (
    World(
        "fair_draft",
        3,
        0.05,
        (1, 1),
        (3, 6),
        (3, 6),
        (0.7, 1.4),
        0.86,
        "rkpoat",
        0.25,
        0.02,
        0.5,
        0.05,
        0.1,
        0.8,
        0.2,
    ),
    World(
        "edge_to_edge",
        2,
        0.08,
        (1, 1),
        (0.6, 1.6),
        (0.3, 1.2),
        (0.8, 1.45),
        0.8,
        "kroatp",
        0.4,
        0.02,
        0.4,
        0.08,
        0.05,
        0.6,
        0.3,
    ),
    World(
        "long_strip",
        2,
        0.06,
        (1.04, 1.16),
        (2, 5),
        (1, 4),
        (0.9, 1.4),
        0.84,
        "apkrot",
        0.4,
        0.02,
        0.3,
        0.08,
        0.1,
        0.5,
        0.4,
    ),
    World(
        "no_draft",
        3,
        None,
        (1, 1),
        (1.5, 4),
        (0.5, 3),
        (1.0, 1.9),
        0.7,
        "kpora",
        0.8,
        0.03,
        0.3,
        0.14,
        0.05,
        0.0,
        0.9,
    ),
    World(
        "from_memory",
        2,
        0.15,
        (1, 1),
        (2, 5),
        (2, 7),
        (0.5, 1.3),
        0.85,
        "pkatro",
        2.2,
        0.03,
        0.3,
        0.1,
        0.1,
        0.3,
        0.5,
    ),
    World(
        "printed_book",
        2,
        0.06,
        (1, 1),
        (3, 5),
        (2, 5),
        (0.6, 1.35),
        0.9,
        "tarkop",
        0.3,
        0.2,
        0.3,
        0.06,
        0.1,
        0.6,
        0.2,
    ),
    World(
        "apprentice",
        2,
        0.12,
        (0.98, 1.05),
        (1, 6),
        (1, 6),
        (0.7, 1.4),
        0.78,
        "okrpat",
        1.8,
        0.03,
        0.2,
        0.16,
        0.05,
        0.3,
        0.8,
    ),
    World(
        "scattered",
        1,
        0.2,
        (1, 1),
        (2, 16),
        (2, 14),
        (0.6, 1.2),
        0.8,
        "krtaop",
        0.6,
        0.04,
        1.0,
        0.12,
        0.15,
        0.0,
        1.4,
    ),
    World(
        "seal_forgotten",
        1.5,
        0.07,
        (1, 1),
        (2, 4),
        (2, 4),
        (1.0, 1.3),
        0.75,
        "pokrat",
        0.5,
        0.02,
        0.3,
        0.08,
        1.0,
        0.7,
        0.3,
    ),
    World(
        "old_letters",
        1.5,
        0.04,
        (1, 1),
        (3, 6),
        (2, 5),
        (0.6, 1.25),
        0.88,
        "rtakop",
        0.3,
        0.03,
        2.4,
        0.04,
        0.2,
        0.7,
        0.2,
    ),
)
Words = list["Word"]
Blocks = tuple[tuple[int, float, float, str], ...]


class Word(NamedTuple):
    """A word of the source (`first`: its first sign, `part`: text, title or author) and what has become of it so far, and why."""

    src: str
    now: str
    first: int
    line: int
    part: str = "text"
    cause: str = ""


class Sheet(NamedTuple):
    """The field of `many` columns: wished sign height `size`, `air` pitch over height, heads and foot line in mm, `breaks` planned first sign of each column."""

    length: float
    width: float
    gap: float
    many: int
    size: float
    air: float
    tops: tuple[float, ...]
    foot: float
    floor: float
    notice: float
    spread: bool
    jitter: tuple[float, ...]
    blocked: Blocks = ()
    breaks: tuple[int, ...] | None = None

    def room(self, column: int, seal: bool = True) -> float:
        """Free mm of a column, less what blocks it if he thinks of it."""
        return (
            self.foot
            - self.tops[column]
            - sum(b - a for c, a, b, _ in self.blocked if c == column and seal)
        )

    def heights(self, signs: str, start: int = 0) -> list[float]:
        """Pitch of the signs in mm: kana lower than kanji, the long repeat mark longer, of the hand's unevenness."""
        shares = (
            1.35 if s == "〱" else 0.62 if s in "ゝ々しつくへのヿ" else 0.8 if is_kana(s) else 1.0
            for s in signs
        )
        return [
            share * self.air * self.size * self.jitter[start + i] for i, share in enumerate(shares)
        ]


class Cut(NamedTuple):
    """A carved sign: column, head, height and width in mm."""

    sign: str
    column: int
    y: float
    height: float
    width: float


def is_kana(sign: str) -> bool:
    """Whether a sign is kana (or a mark among them)."""
    return "ぁ" <= sign <= "ヿ"


def words_of(text: str) -> Words:
    """The words of a text of the list."""
    words, first, line = list[Word](), 0, 0
    for token in text.split():
        part = {"＃": "title", "＠": "author"}.get(token[0], "text")
        line += token == "／" or part == "author"
        if token != "／":
            words.append(Word(bare := token.lstrip("＃＠"), bare, first, line, part))
            first, line = first + len(bare), line + (part == "title")
    return words


def signs_of(words: Words) -> str:
    """All signs of the draft in order, lost patches among them."""
    return "".join(word.now for word in words)


def drafted(words: Words, world: World, rng: random.Random) -> Words:
    """What the print before him read (at times with 詠 added to the name), in the writer's own letters, used wherever they occur, room or no room."""
    kinds = [
        k
        for k in ("kanji", "old", "kana", "plain", "nameless", "repeat")
        if rng.random() < world.habits * 0.25
    ]
    table = (OLD_KANJI if "old" in kinds else {}) | (PLAIN if "plain" in kinds else {})
    table |= dict(rng.sample(sorted(OLD_KANA.items()), 2)) if "kana" in kinds else {}
    always, written = rng.sample(sorted(KANJI), 14) if "kanji" in kinds else [], list[Word]()
    for word in words:
        now = KANJI[word.src] if word.src in always else "".join(table.get(s, s) for s in word.src)
        now = (
            shorter(word, "r") or now
            if "repeat" in kinds
            else ""
            if word.part != "text" and "nameless" in kinds
            else now
        )
        word = word._replace(now=now, cause="habit") if now != word.src else word
        read = word.src in PRINT and rng.random() < world.wording
        written.append(word._replace(now=PRINT[word.src], cause="wording") if read else word)
    added = rng.random() < world.wording and words[-1].part == "author" and written[-1].now
    return written + ([Word("", "詠", -1, -1, "author", "wording")] if added else [])


def slip(words: Words, rng: random.Random, memory: bool) -> Words:
    """One slip of eye, memory or paste; unchanged if the text gives no occasion."""
    kinds = ("skip", "once", "twice", "sense", "sign", "patch", "particle")
    kind = rng.choices(kinds, (2, 2, 2, 7 if memory else 1, 2, 1, 2))[0]
    free = [i for i, w in enumerate(words) if not w.cause and w.part == "text"]
    for i in rng.sample(free, len(free)):
        same = [
            j
            for j in range(i + 2, min(i + 9, len(words)))
            if words[j].src == words[i].src and words[j].part == "text"
        ]
        if kind == "skip" and same:
            return [
                w._replace(now="", cause="slip") if i < j <= same[0] else w
                for j, w in enumerate(words)
            ]
        now = slipped(words[i].src, words[i - 1].now if i else "", kind, rng)
        if now is not None:
            return [w._replace(now=now, cause="slip") if j == i else w for j, w in enumerate(words)]
    return words


def slipped(text: str, before: str, kind: str, rng: random.Random) -> str | None:
    """The word as the slip leaves it, or None when this kind of slip cannot happen to it."""
    at = rng.randrange(len(text))
    if kind == "once":
        double = next(
            (i for i in range(len(text)) if text[i] == (text[i - 1] if i else before[-1:])), None
        )
        return None if double is None else text[:double] + text[double + 1 :]
    if kind == "twice":
        return text + text[-1] if rng.random() < 0.5 else text * 2
    if kind in ("sign", "patch") and len(text) > 1:
        return text[:at] + BLANK * (kind == "patch") + text[at + 1 :]
    return (
        SENSE.get(text)
        if kind == "sense"
        else ""
        if kind == "particle" and text in PARTICLES
        else None
    )


def shorter(word: Word, kind: str) -> str | None:
    """The word saved upon in one way, None if it cannot be; '' if it is dropped."""
    text = word.src
    if kind in "pat":
        gone = (
            text in PARTICLES
            if kind == "p"
            else word.part == {"a": "author", "t": "title"}[kind] and text
        )
        return "" if gone else None
    if kind in "ko":
        ending = len(text) in (2, 3) and text[-2] >= "一" and is_kana(text[-1])
        return KANJI.get(text) if kind == "k" else text[:-1] if ending else None
    if len(text) > 3 and PLAIN.get(text[2], text[2]) + text[3] == text[:2]:
        return text[:2] + "〱" + text[4:]
    double = next((i for i in range(1, len(text)) if text[i] == text[i - 1]), 0)
    mark = "ゝ" if is_kana(text[double : double + 1]) else "々"
    return (
        text[:double] + mark + text[double + 1 :]
        if double
        else {"こと": "ヿ", "より": "ゟ"}.get(text)
    )


def save_once(words: Words, kinds: str, after: int, every: bool) -> Words | None:
    """One saving (or all alike) of the first kind that still offers one, at words from sign `after` on; None if nothing is left to save."""
    starts = [len(signs_of(words[:i])) for i in range(len(words))]
    for kind in kinds:
        found = {
            i: new
            for i, w in enumerate(words)
            if starts[i] >= after
            and w.now
            and (new := shorter(w, kind)) is not None
            and (not w.cause or (w.cause == "habit" and not new))
        }
        if found:
            chosen = list(found) if every else list(found)[len(found) // 2 :][:1]
            return [
                w._replace(now=found[i], cause="space") if i in chosen else w
                for i, w in enumerate(words)
            ]
    return None


def planned(words: Words, sheet: Sheet, world: World, rng: random.Random) -> tuple[Words, Sheet]:
    """The brush draft: savings until he believes it fits, then one size for all and the places of the breaks."""
    if world.judge is None:
        return words, sheet
    eye, soft = rng.gauss(1, world.judge) / rng.uniform(*world.paper), rng.uniform(world.floor, 1.0)
    room = sum(sheet.room(k, world.name != "seal_forgotten") for k in range(sheet.many))
    every, fit = rng.random() < 0.35, room / (sum(sheet.heights(signs_of(words))) * eye)
    while fit < soft and (saved := save_once(words, world.saves, 0, every)):
        words, fit = saved, room / (sum(sheet.heights(signs_of(saved))) * eye)
    sheet = sheet._replace(
        size=sheet.size * min(1.0, max(world.floor, fit)), floor=max(0.75, world.floor)
    )
    return words, sheet._replace(
        breaks=breaks_of(words, sheet, rng.random() < 0.3, world.name != "seal_forgotten")
    )


def breaks_of(words: Words, sheet: Sheet, by_line: bool, seal: bool) -> tuple[int, ...]:
    """First sign of each column: shares of the height by room, at the nearest word or line of the verse."""
    heights, breaks, shares = (
        sheet.heights(signs_of(words)),
        [0],
        [sheet.room(k, seal) for k in range(sheet.many)],
    )
    places = [0] + [
        len(signs_of(words[:i]))
        for i, w in enumerate(words)
        if i and (w.line != words[i - 1].line or not by_line)
    ]
    for k in range(1, sheet.many):
        target = sum(heights) * sum(shares[:k]) / sum(shares)
        breaks.append(max(breaks[-1], min(places, key=lambda p: abs(sum(heights[:p]) - target))))
    return tuple(breaks)


def cut_column(signs: str, start: int, stop: int, sheet: Sheet, k: int, known: bool) -> list[Cut]:
    """The signs start..stop set into column k, as many as it holds; `known`: he sees how many must go in, and squeezes the later ones."""
    heights, y, cuts = sheet.heights(signs[start:stop], start), sheet.tops[k], list[Cut]()
    late, whole = int(sheet.notice * len(heights)), sum(heights)
    tail = sum(heights[late:]) or 1.0
    tight = max(sheet.floor, min(1.0, (sheet.room(k) - whole + tail) / tail)) if known else 1.0
    loose = min(1.4, max(1.0, sheet.room(k) / (whole or 1.0))) if known and sheet.spread else 1.0
    for i, height in enumerate(heights):
        height *= tight if i >= late else 1.0
        y = next(
            (
                b + 0.4
                for c, a, b, _ in sheet.blocked
                if c == k and y < b and y + height / sheet.air > a
            ),
            y,
        )
        if y + height / sheet.air > sheet.foot + 0.4:
            break
        wide = (
            (0.8 if is_kana(signs[start + i]) else 1.0)
            * sheet.size
            * ((1 + tight) / 2 if i >= late else 1.0)
            * sheet.jitter[-1 - start - i]
        )
        cuts.append(Cut(signs[start + i], k, y, height / sheet.air, wide))
        y += height * loose
    return cuts


def carved(words: Words, sheet: Sheet, world: World, rng: random.Random) -> tuple[Words, list[Cut]]:
    """The cutting: in the last column he squeezes, then saves on what is still to come, then gives up the end (a name whole, else sign by sign)."""
    for patience in range(rng.randrange(7), -200, -1):
        signs, cuts, start = signs_of(words), list[Cut](), 0
        for k in range(sheet.many):
            start, last = len(cuts), k == sheet.many - 1
            stop = len(signs) if last or not sheet.breaks else max(start, sheet.breaks[k + 1])
            cuts += cut_column(signs, start, stop, sheet, k, last or sheet.breaks is not None)
        if len(cuts) == len(signs):
            break
        late = start + int(sheet.notice * 0.6 * (len(cuts) - start))
        saved = save_once(words, world.saves, late, False) if patience > 0 else None
        end = max(i for i, w in enumerate(words) if w.now)
        now = (
            ""
            if words[end].part == "author" or words[end].cause not in ("", "space")
            else words[end].now[:-1]
        )
        words = saved or [
            w._replace(now=now, cause="space") if i == end else w
            for i, w in enumerate(words)
            if w.src or i != end
        ]
    return words, cuts


def field(words: Words, world: World, rng: random.Random) -> Sheet:
    """The metal chosen (kozuka, or seppa-dai and fuchi with a middle opening) and ruled: the fewest columns that look roomy enough to him."""
    kozuka = sum(len(w.now) for w in words) > 22 or rng.random() < 0.6
    metal = (
        ((95, 98), (14, 15), 0.0)
        if kozuka
        else rng.choice((((39, 46), (22, 26), 8.0), ((18, 21), (36, 40), 9.0)))
    )
    length, width, gap = rng.uniform(*metal[0]), rng.uniform(*metal[1]), metal[2]
    top, foot = (
        rng.uniform(*margin) * (1.0 if kozuka else length / 96 + 0.12)
        for margin in (world.top, world.foot)
    )
    wish, hope, notice = (
        rng.uniform(3.3, 7.0) * (1 if kozuka else 0.8),
        rng.uniform(*world.hope),
        rng.choice((0.0, rng.uniform(0.2, 0.7))),
    )
    step, scatter = (
        rng.uniform(0, 0.16 if world.name == "scattered" else 0.006) * length,
        world.name == "scattered",
    )
    jitter, air, spread = (
        tuple(max(0.6, rng.gauss(1, world.uneven)) for _ in range(200)),
        rng.uniform(1.05, 1.45),
        rng.random() < world.spread,
    )
    for count in range(1 if kozuka else 2, 6 if kozuka else 9):
        tops = tuple(
            top + abs(rng.gauss(0, step * 0.4)) + step * (k % 2) * scatter for k in range(count)
        )
        sheet = Sheet(
            length,
            width,
            gap,
            count,
            min(wish, (width - gap) / count * 0.9),
            air,
            tops,
            length - foot,
            world.floor,
            notice,
            spread,
            jitter,
        )
        sheet = sheet._replace(blocked=blocked_of(sheet, world, rng))
        if sum(sheet.heights(signs_of(words))) <= hope * sum(
            sheet.room(k, world.name != "seal_forgotten") for k in range(count)
        ):
            break
    return sheet


def blocked_of(sheet: Sheet, world: World, rng: random.Random) -> Blocks:
    """Seal or picture at the foot of the last column; now and then a flaw in the metal."""
    out, last, small = list[tuple[int, float, float, str]](), sheet.many - 1, sheet.length < 90
    if rng.random() < world.seal and not (small and last < 2):
        what = "seal" if small or rng.random() < 0.7 else "picture"
        out = [
            (
                last,
                sheet.foot
                - (5 if small else rng.uniform(6, 12) if what == "seal" else rng.uniform(16, 30)),
                sheet.foot,
                what,
            )
        ]
    at = rng.uniform(20, 55)
    return tuple(
        [(rng.randrange(last + 1), at, at + rng.uniform(3, 7), "damage")]
        * (rng.random() < 0.04 and not small)
        + out
    )


def causes_of(words: Words) -> list[Cause]:
    """Every difference with its spans, cut down to the signs that differ; neighbouring omissions of one cause are one."""
    causes, at = list[Cause](), 0
    for word in words:
        now = word.now.replace(BLANK, "")
        for a, b, c, d in spans(word.src, now):
            here, there = (
                (word.first + a, word.first + b - 1) if b > a else (-1, -1),
                (at + c, at + d - 1) if d > c else (-1, -1),
            )
            old = causes[-1] if causes and causes[-1]["copy_first"] < 0 and there[0] < 0 else None
            if old and old["last"] + 1 == here[0] and old["cause"] == word.cause:
                old["last"] = here[1]
            else:
                causes.append(
                    Cause(
                        first=here[0],
                        last=here[1],
                        copy_first=there[0],
                        copy_last=there[1],
                        cause=word.cause,
                    )
                )
        at += len(now)
    return causes


def spans(old: str, new: str) -> list[tuple[int, int, int, int]]:
    """Half-open spans (old, new) that differ: sign by sign at equal length, else what is left between common ends."""
    if len(old) == len(new):
        edges = [
            i
            for i in range(len(old) + 1)
            if (i > 0 and old[i - 1] != new[i - 1]) != (i < len(old) and old[i] != new[i])
        ]
        return [(a, b, a, b) for a, b in zip(edges[::2], edges[1::2])]
    head = len(commonprefix([old, new]))
    tail = len(commonprefix([old[head:][::-1], new[head:][::-1]]))
    return [(head, len(old) - tail, head, len(new) - tail)]


def plate(rng: random.Random) -> Plate:
    """One plate from text to measured columns; slips happen in the draft or, in four of ten, in the cutting after it was reckoned."""
    world, text = rng.choices(WORLDS, [w.share for w in WORLDS])[0], rng.choice(TEXTS)
    words = words_of(text if rng.random() < 0.6 else text.split("＠")[0].rstrip(" ／"))
    source = "／".join(
        "".join(w.src for w in words if w.line == k) for k in range(words[-1].line + 1)
    )
    words = drafted(words, world, rng)
    sheet, late, count = (
        field(words, world, rng),
        rng.random() < 0.4,
        sum(int(rng.random() < world.slips / 4) for _ in range(4)),
    )
    words, sheet = planned(words, sheet, world, rng) if late else (words, sheet)
    for _ in range(count):
        words = slip(words, rng, world.name == "from_memory" and not late)
    words, sheet = (words, sheet) if late else planned(words, sheet, world, rng)
    words, cuts = carved(words, sheet, world, rng)
    return recorded(source, words, cuts, sheet, world, rng)


def recorded(
    source: str, words: Words, cuts: list[Cut], sheet: Sheet, world: World, rng: random.Random
) -> Plate:
    """The plate as someone with callipers sets it down (error 0.1-0.5 mm, steps of 0.5 or 0.1 mm)."""
    error, step, bow, slant = (
        rng.uniform(0.1, 0.5),
        rng.choice((0.5, 0.1)),
        rng.gauss(0, world.bow),
        rng.gauss(0, world.bow / 2),
    )

    def mm(value: float, share: float = 1.0) -> float:
        return max(0.0, round(round((value + rng.gauss(0, error * share)) / step) * step, 1))

    def left(cut: Cut) -> float:
        down, right = (
            (cut.y + cut.height / 2) / sheet.length,
            (sheet.width - sheet.gap) / sheet.many * (cut.column + 0.5),
        )
        return (
            sheet.width
            - right
            - sheet.gap * (cut.column >= sheet.many / 2)
            + bow * math.sin(math.pi * down)
            + slant * (down - 0.5)
            - cut.width / 2
        )

    shown, used = (
        [c for c in cuts if c.sign != BLANK],
        sorted({c.column for c in cuts if c.sign != BLANK}),
    )
    by_column = [[c for c in shown if c.column == k] for k in used]
    boxes = (
        [(mm(left(c)), mm(c.y), mm(c.width, 0.5), mm(c.height, 0.5)) for c in shown]
        if rng.random() < 0.33
        else None
    )
    return Plate(
        source=source,
        copy="／".join("".join(c.sign for c in col) for col in by_column),
        length=mm(sheet.length),
        width=mm(sheet.width),
        columns=[
            (mm(col[0].y), mm(col[-1].y + col[-1].height), mm(max(c.width for c in col)))
            for col in by_column
        ],
        boxes=boxes,
        takes_room=[
            (used.index(k), mm(a), mm(b), what) for k, a, b, what in sheet.blocked if k in used
        ],
        world=world.name,
        causes=causes_of(words),
    )


def plates(seed: int, count: int) -> list[Plate]:
    """`count` plates, the same for the same seed."""
    rng = random.Random(seed)
    return [plate(rng) for _ in range(count)]


def main() -> None:
    """Three plates and the count of causes by world for 500 plates."""
    table, shortened = defaultdict[str, Counter[str]](Counter), Counter[str]()
    for number, one in enumerate(plates(1, 500)):
        print(one, end="\n\n") if number < 3 else None
        table[one["world"]].update(
            [c["cause"] for c in one["causes"]] + ["plates"] + ["faithful"] * (not one["causes"])
        )
        shortened.update(
            c["cause"]
            for c in one["causes"]
            if c["first"] >= 0
            and (c["copy_first"] < 0 or c["last"] - c["first"] > c["copy_last"] - c["copy_first"])
        )
    for name, counts in sorted(table.items()):
        print(
            f"{name:15}",
            {k: counts[k] for k in ("plates", "faithful", "space", "slip", "wording", "habit")},
        )
    print("omitted or shortened:", dict(shortened))


if __name__ == "__main__":
    main()
