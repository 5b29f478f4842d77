"""Classes of spellings and slips, each tried on words drawn from the tables or built by rule.

A class is a way of writing (〳〵 for a word said twice, a kana written as its parent character) or
of erring (the eye skips, a passage is doubled). No case is told to the program: the words come
from tables that the aligner knows from elsewhere, the frames from here.
"""

from __future__ import annotations

import itertools
import unicodedata
from functools import cache

import pytest

from inscribe import forms, tables
from inscribe.collation import Collation, collate_texts
from inscribe.reading import spelling


def is_faithful(copy: str, source: str) -> bool:
    return collate_texts(copy, source).is_faithful_in_wording


def differing(result: Collation) -> list[tuple[str, str, str]]:
    return [(g.kind, g.copy.text, g.source.text) for g in result.groups if g.is_substantive]


@cache
def nouns(length: int, kana: int) -> list[tuple[str, str]]:
    """Return nouns of verse: as written with so many kanji, and their kana (historical)."""
    rows = tables.rows("verse_nouns")
    return [
        (row["written"], row["historical"])
        for row in rows
        if len(row["written"]) == length
        and all(map(spelling.is_kanji, row["written"]))
        and len(row["historical"]) == kana
    ][::7]


@cache
def parents() -> list[tuple[str, str]]:
    """Return every kana and each character it is written with, as Unicode's hentaigana have it."""
    rows = tables.rows("hentaigana")
    found = {
        (row["parent"], kana)
        for row in rows
        if row["parent"]
        for kana in tables.listed(row["kana"])
    }
    return sorted(pair for pair in found if pair[1] <= "ん")


# --- repeat marks over three kana and more


@pytest.mark.parametrize("mark", ["〳〵", "〱"])
@pytest.mark.parametrize("frame", ["{}といふ", "花を見つ{}とて", "けさの雨に{}よ"])
@pytest.mark.parametrize("kana", [3, 4, 5])
def test_a_mark_repeats_a_word_of_any_length(kana: int, frame: str, mark: str) -> None:
    words = nouns(1 if kana == 3 else 2, kana)[:12]
    assert len(words) > 5
    wrong = []
    for written, spoken in words:
        for once, twice in (
            (spoken, spoken * 2),
            (written, spoken * 2),
            (written, written * 2),
            (spoken, written * 2),
            (spoken, written + spoken),
            (written, spoken + written),
        ):
            copy, source = frame.format(once + mark), frame.format(twice)
            wrong += [(copy, source)] * (not is_faithful(copy, source))
            wrong += [(source, copy)] * (not is_faithful(source, copy))
    assert wrong == []


@pytest.mark.parametrize(
    ("copy", "source"),
    [
        ("花にこゝろ〳〵の", "花にこころごころの"),
        ("けふもおもひ〳〵に", "けふも思ひおもいに"),
        ("うつろふ〳〵花", "うつろううつろう花"),
        ("いはほ〳〵の苔", "いわおいわおの苔"),
        ("けふ〳〵と待", "きょうきょうと待つ"),
        ("鳴や郭公〳〵とて", "なくやほとゝぎすほととぎすとて"),
        ("春や時鳥々々とて", "春やほとゝきす〳〵とて"),
    ],
)
def test_a_mark_together_with_another_spelling(copy: str, source: str) -> None:
    assert is_faithful(copy, source)
    assert is_faithful(source, copy)


@pytest.mark.parametrize(
    ("copy", "source"),
    [("花にこころ〳〵の", "花にこころかはりの"), ("けさほととぎす〳〵", "けさほととぎすうぐひす")],
)
def test_a_mark_repeats_nothing_else(copy: str, source: str) -> None:
    assert not is_faithful(copy, source)


# --- の left unwritten


def has_no(written: str) -> bool:
    """Whether a word ends in の by itself: 此 (この)."""
    rows = tables.rows("collation_readings")
    known = {row["kana"] for row in rows if row["written"] == written}
    return any(kana.endswith("の") for kana in known | set(forms.readings(written).kun))


@pytest.mark.parametrize("after", ["ちる", "いろは", "さかりに", "うきはし"])
def test_no_before_kana_is_left_out(after: str) -> None:
    """Between two kanji の may be read unwritten; before kana it is missing."""
    wrong = []
    for kana in (2, 3):
        plain = (word for word in nouns(1, kana) if not has_no(word[0]))
        for written, spoken in itertools.islice(plain, 25):
            for source in (f"{written}の{after}", f"{spoken}の{after}"):
                result = collate_texts(f"{written}{after}", source)
                if differing(result) != [("omitted", "", "の")]:
                    wrong.append((written, source, differing(result)))
    assert wrong == []


def test_no_between_kanji_is_shown_by_itself() -> None:
    result = collate_texts("花秋夢", "花の秋の夢")
    assert result.is_faithful_in_wording
    told = [(g.kind, g.copy.text, g.source.text) for g in result.groups if g.kind != "same"]
    assert told == [("spelling", "", "の"), ("spelling", "", "の")]


# --- words cut short


STEMS = """
思:おも 動:うご 驚:おどろ 嘆:なげ 響:ひび 忘:わす 流:なが 頼:たの 尋:たづ 数:かぞ 教:をし 答:こた
求:もと 崩:くづ 逃:のが 恐:おそ 比:くら 重:かさ 助:たす 砕:くだ 傾:かたぶ
"""


@pytest.mark.parametrize("pair", STEMS.split())
def test_a_stem_is_no_verb(pair: str) -> None:
    """思けり is おもひけり, not おもけり: the kana that is missing is a part of the word."""
    written, stem = pair.split(":")
    kana = {row["class"][-1] for row in tables.rows("verse_verbs") if row["written"] == written}
    endings = [
        e for e, row in zip(("けり", "つつ", "ぬる"), "カタナ", strict=True) if row not in kana
    ]
    wrong = []
    for ending in endings:
        copy, source = f"人を{written}{ending}", f"ひとを{stem}{ending}"
        wrong += [(copy, source)] * is_faithful(copy, source)
        wrong += [(source, copy)] * is_faithful(source, copy)
    assert wrong == []


def unvoiced(kana: str) -> str:
    """Return kana without voicing marks."""
    return unicodedata.normalize("NFD", kana).replace("\u3099", "")


def shiku_adjectives() -> list[tuple[str, str]]:
    """Return the adjectives in し, しき of one sign and their stems, if no other word is near."""
    words: dict[str, set[str]] = {}
    for table in ("verse_nouns", "verse_verbs", "verse_adjectives"):
        for row in tables.rows(table):
            if row.get("class") != "シク":
                words.setdefault(row["written"], set()).add(row["historical"])
    found = []
    for row in tables.rows("verse_adjectives"):
        written, stem = row["written"], unvoiced(row["historical"])
        if row["class"] == "シク" and len(written) == 1 < len(stem):
            own = forms.readings(written)
            others = {*words.get(written, ()), *own.kun, *own.names}
            plain = {unvoiced(word.replace(".", "")) for word in others}
            near = {word for word in plain if word.startswith(stem[:-1])}
            if all(word.startswith(stem + "し") for word in near):
                found.append((written, row["historical"]))
    return found


def test_the_stem_of_an_adjective_in_shi_is_no_word() -> None:
    """悲けり is no かなけり: before anything but し the し is a part of what is unwritten."""
    known = shiku_adjectives()
    assert len(known) > 20
    for ending in ("けり", "つつ", "と"):
        short = [(f"人ぞ{a}{ending}", f"人ぞ{b}{ending}") for a, b in known]
        assert [pair for pair in short if is_faithful(*pair) or is_faithful(*pair[::-1])] == []
    for ending in ("しき人", "しく", "しけれど", "しかりけり", "し"):
        for left in (ending, ending[1:]):
            whole = [(f"いと{a}{left}", f"いと{b}{ending}") for a, b in known]
            assert [p for p in whole if not is_faithful(*p) or not is_faithful(*p[::-1])] == []


# --- kana written as their parent characters


def test_kana_may_be_written_as_their_parents() -> None:
    frames = ("み{}の", "花{}よ", "{}のこゑ", "はる{}")
    known = parents()
    assert len(known) > 200
    wrong = []
    for parent, kana in known:
        refused = [
            frame for frame in frames if not is_faithful(frame.format(parent), frame.format(kana))
        ]
        if len(refused) > 2:  # 連の, 報よ: a verb may go on so, and then it is one
            wrong.append((parent, kana, refused))
    assert wrong == []


@pytest.mark.parametrize(
    ("copy", "source"),
    [
        ("止里のこゑ", "とりのこゑ"),
        ("春す", "すす"),
        ("川つ", "つつ"),
        ("本ほ", "ほほ"),
        ("盤は", "はは"),
        ("者るの乃に", "はるののに"),
        ("志可の者満", "しかのはま"),
    ],
)
def test_running_text_in_parents(copy: str, source: str) -> None:
    assert is_faithful(copy, source)
    assert is_faithful(source, copy)


@pytest.mark.parametrize("frame", ["{}のこゑ", "春の{}", "見れば{}に"])
def test_a_word_in_parents_is_the_character_that_writes_it(frame: str) -> None:
    """止里 for 鳥: every kana as one of its parents, the first and the last of the tables."""
    written: dict[str, list[str]] = {}
    for parent, kana in parents():
        written.setdefault(kana, []).append(parent)
    tried, wrong = 0, []
    for word, spoken in nouns(1, 2) + nouns(1, 3):
        if all(kana in written for kana in spoken):
            for which in (0, -1):
                running = "".join(written[kana][which] for kana in spoken)
                copy, source = frame.format(running), frame.format(word)
                tried += 1
                if not is_faithful(copy, source) or not is_faithful(source, copy):
                    wrong.append((copy, source))
    assert tried > 50
    assert wrong == []


@pytest.mark.parametrize(("copy", "source"), [("止利のこゑ", "花のこゑ"), ("日のこゑ", "火のこゑ")])
def test_another_word_in_parents_is_a_difference(copy: str, source: str) -> None:
    assert not is_faithful(copy, source)
    assert not is_faithful(source, copy)


SOUND_ALIKE = "日火 木気 花鼻 橋箸 神紙 神髪 夜世 羽葉 香鹿 玉魂 身実 道血"
ONE_WORD = "涙泪 影陰 道路 里郷 峰嶺 谷渓 川河 空天 浪波 玉珠 垣墻 跡痕 薄芒 杯盃 昔古 頃比"


@pytest.mark.parametrize("frame", ["{}のいろ", "遠き{}を見る"])
@pytest.mark.parametrize("pair", SOUND_ALIKE.split())
def test_two_nouns_of_one_sound_are_two_words(pair: str, frame: str) -> None:
    copy, source = frame.format(pair[0]), frame.format(pair[1])
    assert not is_faithful(copy, source)
    assert not is_faithful(source, copy)


def test_two_graphs_of_one_word_may_begin_alike() -> None:
    """山振 and 山吹: nouns of the tables with one reading, one gloss and another second sign."""
    found: dict[tuple[str, str], list[str]] = {}
    for row in tables.rows("verse_nouns"):
        if len(row["written"]) == 2 and all(map(spelling.is_kanji, row["written"])):
            found.setdefault((row["historical"], row["gloss"]), []).append(row["written"])
    pairs = [
        (one, other)
        for written in found.values()
        for one, other in itertools.combinations(written, 2)
        if one[0] == other[0]
    ]
    assert len(pairs) > 60
    wrong = [pair for pair in pairs if not is_faithful(f"{pair[0]}の色", f"{pair[1]}の色")]
    assert len(wrong) <= len(pairs) // 50


@pytest.mark.parametrize(("one", "other"), [("山里", "山風"), ("花見", "花実"), ("秋風", "秋夜")])
def test_two_words_that_begin_alike_are_two_words(one: str, other: str) -> None:
    assert not is_faithful(f"{one}の色", f"{other}の色")
    assert not is_faithful(f"{other}の色", f"{one}の色")


@pytest.mark.parametrize("pair", ONE_WORD.split())
def test_two_characters_of_one_noun_are_one_word(pair: str) -> None:
    copy, source = f"{pair[0]}のいろ", f"{pair[1]}のいろ"
    assert is_faithful(copy, source)
    assert is_faithful(source, copy)


@pytest.mark.parametrize(
    ("written", "spoken"),
    [("長閑き", "のどけき"), ("遥けき", "はるけき"), ("遥き", "はるけき"), ("露き", "つゆけき")],
)
def test_an_adjective_may_leave_its_ke_unwritten(written: str, spoken: str) -> None:
    copy, source = f"光{written}春", f"ひかり{spoken}はる"
    assert is_faithful(copy, source)
    assert is_faithful(source, copy)


# --- Chinese order


@pytest.mark.parametrize(
    ("chinese", "japanese"),
    [
        ("応需", "需めに応じて"),
        ("應需", "もとめに応じて"),
        ("春眠不覚暁", "春眠暁を覚えず"),
        ("春眠不覺曉", "しゅんみんあかつきをおぼえず"),
        ("不可忘", "忘るべからず"),
        ("不可忘", "わするべからず"),
        ("不可言", "言ふべからず"),
        ("不知老", "老を知らず"),
        ("不如帰", "帰るに如かず"),
        ("和而不同", "和して同ぜず"),
        ("学而不厭", "学びて厭はず"),
        ("不言不語", "言はず語らず"),
        ("知足者富", "足るを知る者は富む"),
        ("為君作歌", "君のために歌を作る"),
        ("依好彫之", "好みに依りて之を彫る"),
        ("守口如瓶", "口を守ること瓶の如し"),
        ("有徳者栄", "徳有る者は栄ゆ"),
        ("無敵", "敵無し"),
        ("未聞其声", "未だ其の声を聞かず"),
    ],
)
def test_chinese_order_is_the_same_words(chinese: str, japanese: str) -> None:
    for copy, source in ((chinese, japanese), (japanese, chinese)):
        result = collate_texts(copy, source)
        assert differing(result) == []
        assert not result.beside


@pytest.mark.parametrize(
    ("chinese", "japanese"),
    [
        ("春眠不覚暁", "春眠夜を覚えず"),
        ("不可忘", "忘るべし"),
        ("不可忘", "思ふべからず"),
        ("未聞其声", "未だ其の名を聞かず"),
    ],
)
def test_another_word_in_chinese_order_is_a_difference(chinese: str, japanese: str) -> None:
    assert not is_faithful(chinese, japanese)
    assert not is_faithful(japanese, chinese)


@pytest.mark.parametrize(
    ("chinese", "japanese", "lost"),
    [
        ("知足者富", "足るを知る者は今富む", "今"),
        ("守口如瓶", "口を守ること固き瓶の如し", "固き"),
        ("盡忠報", "ちゅうをつくしてくににむくゆ", "くにに"),
    ],
)
def test_a_word_that_chinese_order_lacks_is_left_out_there_and_added_in_japanese(
    chinese: str, japanese: str, lost: str
) -> None:
    assert differing(collate_texts(chinese, japanese)) == [("omitted", "", lost)]
    assert differing(collate_texts(japanese, chinese)) == [("added", lost, "")]


# --- slips of the eye

POEM = "山里は冬そさひしさまさりける人めも草もかれぬとおもへは"


@pytest.mark.parametrize(
    ("source", "copy", "left_out"),
    [
        (
            "花の色は移ろひにけり春の雨の降りし庭の花の陰かな",
            "花の陰かな",
            "色は移ろひにけり春の雨の降りし庭の花の",
        ),
        ("君が代は千代に八千代にさざれ石の巌となりて苔のむすまで君が宿", "君が宿", None),
        (
            "山里は冬そさひしさまさりける人めも草もかれはてて又山里は雪そふりける",
            "山里は雪そふりける",
            None,
        ),
        (POEM, "山里はかれぬとおもへは", None),
    ],
)
def test_an_eye_skip_after_the_opening_is_no_excerpt(
    source: str, copy: str, left_out: str | None
) -> None:
    result = collate_texts(copy, source)
    assert not result.is_excerpt
    kinds = [kind for kind, _, _ in differing(result)]
    assert kinds == ["omitted"]
    if left_out is not None:
        assert len(differing(result)[0][2]) == len(left_out)


def test_lines_from_the_middle_are_still_an_excerpt() -> None:
    source = POEM + "春の夜の夢の浮橋とたえして峰にわかるる横雲の空"
    result = collate_texts("春の夜の夢の浮橋", source)
    assert result.is_excerpt
    assert result.is_faithful_in_wording


# --- signs that cannot be read


@pytest.mark.parametrize("at", range(5))
def test_a_superfluous_unread_sign_is_no_wording(at: int) -> None:
    source = "花の色は"
    for copy, other in (
        (source[:at] + "□" + source[at:], source),
        (source, source[:at] + "□" + source[at:]),
    ):
        result = collate_texts(copy, other)
        assert differing(result) == []
        told = [g for g in result.groups if g.kind != "same"]
        assert [g.kind for g in told] == ["unread"]
        assert {len(told[0].copy), len(told[0].source)} == {0, 1}


# --- long texts: halves exchanged, passages doubled


@cache
def poems(count: int) -> str:
    rows = list(tables.rows("verse_nouns"))
    words = [row["historical"] + p for row, p in zip(rows[::31], "のにはをもや" * 99, strict=False)]
    return "".join(words)[:count]


@pytest.mark.parametrize("signs", [24, 80, 200, 600])
def test_exchanged_halves_are_moved(signs: int) -> None:
    text = poems(signs)
    half = signs // 2
    result = collate_texts(text[half:] + text[:half], text)
    assert {g.kind for g in result.groups} <= {"same", "moved"}
    assert any(g.kind == "moved" for g in result.groups)


@pytest.mark.parametrize("signs", [40, 120, 400])
@pytest.mark.parametrize("doubled", [8, 20])
def test_a_doubled_passage_is_one_difference(signs: int, doubled: int) -> None:
    text = poems(signs)
    at = signs // 3
    twice = text[: at + doubled] + text[at:]
    for copy, source, kind in ((twice, text, "added"), (text, twice, "omitted")):
        result = collate_texts(copy, source)
        assert [k for k, _, _ in differing(result)] == [kind]
        group = next(g for g in result.groups if g.is_substantive)
        assert max(len(group.copy), len(group.source)) == doubled
        assert "twice" in group.why


def test_a_text_written_twice_is_no_excerpt() -> None:
    for text in (POEM, poems(100)):
        for copy, source in ((text * 2, text), (text, text * 2)):
            result = collate_texts(copy, source)
            assert not result.is_excerpt
            assert len(differing(result)) == 1


# --- rare graphs


@pytest.mark.parametrize(
    ("written", "kana"),
    [
        ("山振", "やまふき"),
        ("山振", "山吹"),
        ("促織", "きりきりす"),
        ("紫陽花", "あちさゐ"),
        ("女郎花", "をみなへし"),
        ("土筆", "つくし"),
        ("水鶏", "くひな"),
        ("翡翠", "かはせみ"),
        ("海松", "みる"),
        ("石竹", "なてしこ"),
        ("玉響", "たまゆら"),
        ("白水郎", "あま"),
        ("東雲", "しののめ"),
        ("七夕", "たなはた"),
        ("不如帰", "ほとときす"),
        ("子規", "ほとときす"),
        ("杜鵑", "ほとときす"),
        ("百舌鳥", "もす"),
        ("雲雀", "ひはり"),
        ("時雨", "しくれ"),
        ("撫子", "なてしこ"),
        ("朝顔", "あさかほ"),
        ("蝸牛", "かたつふり"),
        ("蜻蛉", "かけろふ"),
        ("蟋蟀", "きりきりす"),
        ("木槿", "むくけ"),
        ("躑躅", "つつし"),
        ("山茶花", "ささんくわ"),
        ("馬酔木", "あしひ"),
        ("忍冬", "すひかつら"),
        ("沢瀉", "おもたか"),
        ("木賊", "とくさ"),
        ("竜胆", "りんたう"),
        ("鶺鴒", "せきれい"),
        ("胡蝶", "こてふ"),
        ("海人", "あま"),
        ("流石", "さすか"),
    ],
)
def test_rare_graphs_are_words(written: str, kana: str) -> None:
    assert is_faithful(f"けさの{written}かな", f"けさの{kana}かな")


def test_the_halves_of_a_poem_exchanged_have_moved() -> None:
    upper, lower = "人の親の心は闇にあらねども", "子を思ふ道にまどひぬるかな"
    found = collate_texts(lower + upper, upper + lower)
    assert [(g.kind, g.copy.text) for g in found.groups if g.is_substantive] == [("moved", lower)]
    other = collate_texts("秋来ぬと目にはさやかに見えねども風の音にぞ", upper + lower)
    assert "moved" not in {group.kind for group in other.groups}


# --- particles and words that only sound alike


@pytest.mark.parametrize("particle", "はもをぞ")
def test_a_particle_left_out_behind_a_noun_is_no_okurigana(particle: str) -> None:
    written = [row["written"] for row in tables.rows("verse_nouns")]
    single = sorted({word for word in written if len(word) == 1 and spelling.is_kanji(word)})[::5]
    swallowed = [
        word
        for word in single
        if is_faithful(f"ときは{word}見ゆらむ", f"ときは{word}{particle}見ゆらむ")
    ]
    assert len(single) > 150
    assert len(swallowed) <= len(single) // 50, swallowed


@pytest.mark.parametrize(
    ("copy", "source"),
    [("願しものを", "願はしものを"), ("思ず", "思はず"), ("問ば", "問はば"), ("恋む", "恋はむ")],
)
def test_the_ending_of_a_verb_before_what_may_follow_it_is_okurigana(
    copy: str, source: str
) -> None:
    assert is_faithful(copy, source)


@pytest.mark.parametrize(
    ("copy", "source"),
    [
        ("世の中を見れは", "夜の中を見れは"),
        ("琴の音きけは", "言の音きけは"),
        ("瀬をはやみ", "背をはやみ"),
        ("峰のしら浪", "峰の白雲"),
    ],
)
def test_a_character_by_itself_that_only_sounds_alike_is_another_word(
    copy: str, source: str
) -> None:
    assert [kind for kind, *_ in differing(collate_texts(copy, source))] == ["replaced"]


@pytest.mark.parametrize(
    ("copy", "source"),
    [
        ("年の暮", "歳の暮"),
        ("御世の春", "御代の春"),
        ("山振の花", "山吹の花"),
        ("小夜千鳥", "佐夜千鳥"),
        ("凩の声", "木枯の声"),
        ("籬の菊", "間狭の菊"),
        ("独りねの床", "一人ねの床"),
        ("筐の袖", "形見の袖"),
    ],
)
def test_two_writings_of_one_word_stay_one(copy: str, source: str) -> None:
    assert is_faithful(copy, source)


@pytest.mark.parametrize(
    ("copy", "source"),
    [
        ("露の玉", "梅雨の玉"),
        ("長雨せしまに", "眺めせしまに"),
        ("菊の花", "聞くの花"),
        ("秋の色", "飽きの色"),
    ],
)
def test_two_known_words_that_only_sound_alike_differ(copy: str, source: str) -> None:
    assert differing(collate_texts(copy, source))
    assert differing(collate_texts(source, copy))


@pytest.mark.parametrize(
    ("copy", "source", "same"),
    [
        ("夢能は", "夢のは", True),
        ("契與し", "契よし", True),
        ("舞ふ袖", "むふ袖", False),
    ],
)
def test_a_kana_written_as_its_parent_before_kana(copy: str, source: str, same: bool) -> None:
    """Where the character is a verb of verse with that ending, it is the verb: 舞ふ."""
    assert is_faithful(copy, source) is same


@pytest.mark.parametrize("more", ["処", "折", "乗"])
def test_a_sign_too_many_is_no_particle_in_chinese_order(more: str) -> None:
    copy, source = "春眠不覚暁", "春眠暁を覚えず"
    assert is_faithful(copy, source)
    assert not is_faithful(copy + more, source)


@pytest.mark.parametrize("cut", ["", "之"])
@pytest.mark.parametrize("whose", ["", "人", "某氏", "露岳"])
@pytest.mark.parametrize(("verb", "said"), [("応", "応じて"), ("依", "依りて")])
def test_at_whose_wish_in_either_order(verb: str, said: str, whose: str, cut: str) -> None:
    """応需, 応某氏需, 依露岳之需: the commonest phrase of signatures in Chinese order."""
    copy = f"{verb}{whose}{cut if whose else ''}需"
    source = f"{whose}の需めに{said}" if whose else f"需めに{said}"
    assert is_faithful(copy, source)
    assert not is_faithful(copy, source.replace("需め", "志"))
