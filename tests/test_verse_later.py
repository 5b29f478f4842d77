"""Haiku and later verse: nouns read as Chinese, endings not written, borrowed signs."""

import pytest

from inscribe import reading
from inscribe.reading.prose.current import modern_text


def romaji(text: str) -> str:
    return reading.read_text(text, register="verse").proposals[0].romaji


@pytest.mark.parametrize(
    ("verse", "word"),
    [
        ("夕風に孔雀の羽のひかりけり", "kujaku"),
        ("屏風にも月のひかりのさしにけり", "byōbu"),
        ("元日や松の影ある窓のうち", "ganjitsu"),
        ("名月や松の木の間の水の音", "meigetsu"),
        ("月影や煙草の煙たちのぼる", "tabako"),
    ],
)
def test_everyday_nouns_of_later_verse_are_read_as_chinese(verse: str, word: str) -> None:
    assert word in romaji(verse)


@pytest.mark.parametrize(
    ("verse", "words"),
    [
        ("白雲に羽うちかはし飛雁の数さへ見ゆる秋の夜の月", "tobu kari"),
        ("散花の鳴にしとまるものならば我鶯に劣らましやは", "chiru hana"),
    ],
)
def test_court_verse_keeps_native_words_where_the_same_kanji_are_a_chinese_noun(
    verse: str, words: str
) -> None:
    assert words in romaji(verse)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("鶯の鳴野辺ごとに来て見ればうつろふ花に風ぞ吹きける", "naku nobe"),
        ("我が宿の花見がてらに来人は散りなむ後ぞ恋しかるべき", "kuru hito"),
        ("散覧", "chiruran"),
        ("見鶴かな", "mitsuru kana"),
    ],
)
def test_what_follows_decides_what_is_not_written(text: str, words: str) -> None:
    assert words in romaji(text)


def test_the_kana_line_is_divided_as_the_latin_line() -> None:
    best = reading.read_text("花の色はうつりにけりないたづらに").proposals[0]
    assert "うつりにけり な" in best.kana
    assert len(best.kana.split()) == len(best.romaji.split())


@pytest.mark.parametrize(
    ("old", "now"),
    [
        ("酒を飲むだ", "酒を飲んだ"),
        ("鳥が飛むで行く", "鳥が飛んで行く"),
        ("飲むだけの", "飲むだけの"),
    ],
)
def test_classical_mu_before_da_and_de(old: str, now: str) -> None:
    assert modern_text(old) == now


@pytest.mark.parametrize(
    ("carved", "said"),
    [
        ("山深く谷へ飛こむ水の音", "tobikomu"),  # the verses are invented
        ("夕暮の堀に飛こむ蛙かな", "tobikomu"),
        ("軒ちかく風の吹こむ夜寒かな", "fukikomu"),
        ("磯波の舟に打こむ寒さかな", "uchikomu"),
        ("夏草のしけみに飛ちかふ蛍", "tobichigau"),
    ],
)
def test_a_compound_verb_may_lack_its_first_okurigana(carved: str, said: str) -> None:
    assert said in romaji(carved)


def test_a_compound_verb_is_not_read_as_another_that_is_spelled_so() -> None:
    assert "tachi" not in romaji("起あがる達磨に春の日ざしかな")  # invented; 起ち上がる is another


VERSES = (
    "年の内に春は来にけり一年を去年とや言はむ今年とや言はむ",  # Kokinshu 1
    "春過ぎて夏来にけらし白妙の衣ほすてふ天の香具山",
    "名月や池にうつれる松のかげ",  # invented
    "思ひつつぬればや人の見えつらむ夢としりせばさめざらましを",  # Kokinshu 552
)


@pytest.mark.parametrize("carved", VERSES)
def test_kana_are_divided_as_the_latin_letters(carved: str) -> None:
    best = reading.read_text(carved).proposals[0]
    assert len(best.kana.split()) == len(best.romaji.split())


def test_the_metre_decides_for_a_sino_japanese_word() -> None:
    assert (
        reading.read_text("名月や池にうつれる松のかげ").proposals[0].kana.startswith("めいげつ や")
    )


@pytest.mark.parametrize(
    ("fragment", "said"),
    [
        ("香に匂ひける", "ka ni nioikeru"),  # of Kokinshu 42
        ("香に匂ひつつ", "ka ni nioitsutsu"),
        ("花は散りにけり", "hana wa chirinikeri"),
    ],
)
def test_a_fragment_with_a_classical_ending_is_read_in_the_language_of_verse(
    fragment: str, said: str
) -> None:
    assert reading.read_text(fragment).proposals[0].romaji == said


@pytest.mark.parametrize(
    ("verse", "word"),
    [
        ("藤浪や太鼓橋より人の声", "taikobashi"),  # EDICT; UniDic has taiko and hashi
        ("雪折の松きく夜半や茶の煙", "yukiore"),  # 雪折れ without its okurigana
        ("炉開や客三人の下駄の音", "robiraki"),
        ("弘願寺の鐘も氷るか冬の月", "Kōganji"),  # a temple of ENAMDICT
    ],
)
def test_nouns_of_later_verse_that_unidic_has_not_are_known(verse: str, word: str) -> None:
    assert word in romaji(verse)


def test_court_verse_takes_such_nouns_for_the_words_it_has() -> None:
    text = "君ならて誰にか見せん梅花色をも香をも知人そ知"
    assert "shiru hito zo shiru" in romaji(text)  # no shiribito


@pytest.mark.parametrize(
    ("verse", "words"),
    [
        ("夕暮に嗁虫の声聞こえけり", "naku mushi no koe"),  # 啼
        ("昬の鐘つく寺や秋の風", "kure"),  # 昏
        ("夏虫の身より余れる思ひ也鳬", "omoi narikeri"),  # 鳧
    ],
)
def test_a_form_of_a_character_that_no_word_is_written_with_is_read_as_another_form_of_it(
    verse: str, words: str
) -> None:
    assert words in romaji(verse)


@pytest.mark.parametrize(
    ("verse", "word"),
    [("若草の庭に二三本", "nisanbon"), ("垣に菊の一二輪", "ichinirin")],
)
def test_about_so_many_are_counted(verse: str, word: str) -> None:
    assert word in romaji(verse)


@pytest.mark.parametrize(
    ("verse", "words"),
    [
        ("夢かとそ思思きや雪踏分て君を見んとは", "omoiki ya"),  # no oboshiki
        ("悲さは秋の習と人も言ひけり", "kanashisa wa"),
        ("長閑き御代の春も知らるれ", "nodokeki miyo"),
    ],
)
def test_adjectives_cut_short(verse: str, words: str) -> None:
    assert words in romaji(verse)


@pytest.mark.parametrize(
    ("verse", "old"),
    [
        ("神風の伊勢の浜荻折り伏せて旅寝やすらむ荒き浜辺に", "kamukaze no Ise"),
        ("紅葉散る音にさわげる秋の風", "momichi chiru"),
        ("紅葉散る音にさわげる秋の風", "oto ni sawakeru"),
        ("夢にだに見えばこそあらめかくばかり見えずしあるは恋ひて死ねとか", "ime ni dani"),
    ],
)
def test_the_archaic_reading_is_offered_with_that_reason(verse: str, old: str) -> None:
    proposals = reading.read_text(verse, alternatives=True).proposals
    assert old not in proposals[0].romaji
    (offered,) = [each for each in proposals if old in each.romaji]
    assert "the archaic reading" in offered.reasons[0]


@pytest.mark.parametrize(
    ("verse", "words"),
    [
        ("人不住不破の関屋の秋の風", "hito sumanu Fuwa"),
        ("行方も不知恋の道かな", "shiranu koi"),
        ("人に不逢夜そ更けにける", "awanu yo"),
        ("可忘人そ恋しき", "wasurubeki hito"),
        ("悲敷物は秋の夕暮", "kanashiki mono"),
        ("久敷なりぬ住の江の松", "hisashiku narinu"),
        ("風尓散花のなこりを恋ひ而見る", "koite miru"),
    ],
)
def test_what_manuscripts_write_in_chinese_order_or_with_borrowed_signs(
    verse: str, words: str
) -> None:
    assert words in romaji(verse)
