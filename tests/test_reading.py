"""Reading: registers, verse, marks, settled words, alternatives; poems are from before 1600."""

from __future__ import annotations

import json
from dataclasses import dataclass

import pytest
from click.testing import CliRunner
from hypothesis import given, settings, strategies as st

from inscribe import reading
from inscribe.cli import cli
from inscribe.errors import InscribeError
from inscribe.reading import read_text
from inscribe.report.terminal.reading import printable, reading_as_text

SPRING = "春霞立てるやいづこみ吉野の吉野の山に雪は降りつつ"  # Kokinshu 3
YEAR = "年の内に春は来にけり一年を去年とや言はむ今年とや言はむ"  # Kokinshu 1
SLEEVES = "袖ひちてむすびし水のこほれるを春立つ今日の風やとくらむ"  # Kokinshu 2


@dataclass(frozen=True)
class Settled:
    """An override as a record holds it."""

    first: int
    last: int
    kana: str
    of: str = ""
    kind: str = "word"
    reason: str = ""


def best(text: str, register: reading.Choice = "auto") -> str:
    return reading.read_text(text, register).proposals[0].romaji


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        (SPRING, "harugasumi tateru ya izuko Miyoshino no Yoshino no yama ni yuki wa furitsutsu"),
        (SLEEVES, "sode hichite musubishi mizu no kōreru o haru tatsu kyō no kaze ya tokuran"),
        (
            "人はいさ心も知らずふるさとは花ぞ昔の香に匂ひける",  # Kokinshu 42
            "hito wa isa kokoro mo shirazu furusato wa hana zo mukashi no ka ni nioikeru",
        ),
    ],
)
def test_verse_is_read_in_its_own_words(text: str, romaji: str) -> None:
    found = reading.read_text(text)
    assert found.register == "verse"
    assert found.proposals[0].romaji == romaji


def test_phrases_are_shown_and_hypermetre_is_allowed() -> None:
    proposal = reading.read_text(YEAR).proposals[0]
    assert [morae for morae, _ in proposal.phrases] == [6, 7, 5, 7, 8]
    assert proposal.reasons[0] == "tanka of 6-7-5-7-8 morae"
    assert proposal.tokens[proposal.phrases[1][1]].surface == "春"


def test_the_metre_decides_between_readings() -> None:
    plums = "春の夜の闇はあやなし梅の花色こそ見えね香やは隠るる"  # Kokinshu 41
    assert best(plums).startswith("haru no yo no yami wa")
    evening = "夜は長し"
    assert best(evening, "verse") in ("yo wa nagashi", "yoru wa nagashi")


def test_missing_voicing_marks_are_supplied() -> None:
    bare = "そてひちてむすひしみつのこほれるをはるたつけふのかせやとくらむ"
    found = reading.read_text(bare)
    assert "sode hichite musubishi mizu no" in found.proposals[0].romaji
    assert any("voicing" in token.reason for token in found.proposals[0].tokens)


def test_historical_spelling_is_kept_beside_its_sound() -> None:
    token = next(t for t in reading.read_text(SLEEVES).proposals[0].tokens if t.surface == "今日")
    assert (token.kana, token.romaji) == ("きょう", "kyō")
    assert "こおれる" in reading.read_text(SLEEVES).modern


def test_columns_that_are_phrases_are_followed() -> None:
    with_columns = "春霞／立てるやいづこ／み吉野の／吉野の山に／雪は降りつつ"
    assert best(with_columns) == best(SPRING)


def test_columns_anywhere_do_no_harm() -> None:
    assert best("春霞立て／るやいづこみ吉野／の吉野の山に雪は／降りつつ") == best(SPRING)


def test_a_sign_that_cannot_be_read_is_read_around() -> None:
    found = reading.read_text("春霞立てるや□づこみ吉野の吉野の山に雪は降りつつ")
    assert found.register == "verse"
    assert [morae for morae, _ in found.proposals[0].phrases] == [5, 7, 5, 7, 7]
    assert found.proposals[0].romaji.endswith("yama ni yuki wa furitsutsu")
    assert [(d.first, d.last) for d in found.doubts if d.why == "cannot be read"] == [(6, 6)]


def test_a_gap_leaves_the_metre_open() -> None:
    found = reading.read_text("春霞立てるや［　　］吉野の山に雪は降りつつ", "verse")
    assert "gap" in found.proposals[0].reasons[0]
    assert any("gap" in doubt.why for doubt in found.doubts)


def test_a_monogram_after_a_poem_is_written_as_catalogues_do() -> None:
    found = reading.read_text(SPRING + "（花押）")
    assert found.register == "verse"
    assert found.proposals[0].romaji == f"{best(SPRING)} (kaō)"
    assert found.text.endswith("（花押）")


@pytest.mark.parametrize(
    ("text", "register"),
    [
        (SPRING, "verse"),
        ("古沼や鴫飛びこゆる水の音", "verse"),
        ("於東都応需造之", "signature"),
        ("嘉永六年癸丑仲秋", "signature"),
        ("これは蔵に伝はりし品を写したるものにて、古き姿を今に残せり。", "prose"),
        ("欲窮千里目更上一層楼", "prose"),
    ],
)
def test_the_register_is_found(text: str, register: str) -> None:
    assert reading.read_text(text).register == register


def test_the_register_can_be_chosen() -> None:
    assert reading.read_text(SPRING, "prose").register == "prose"


def test_chinese_without_marks_is_doubted_and_with_marks_reordered() -> None:
    lines = reading.read_text("鶴巣松影冷魚躍水声寒")
    assert any("return marks" in doubt.why for doubt in lines.doubts)
    known = reading.read_text("欲窮千里目更上一層楼")
    assert not any("return marks" in doubt.why for doubt in known.doubts)
    assert known.proposals[0].romaji.startswith("senri no me o kiwamen to hosshite")
    marked = reading.read_text("登㆑山", "prose").proposals[0]
    assert "".join(token.normalised for token in marked.tokens) == "山登"


def test_a_settled_word_stands_and_the_rest_is_read_around_it() -> None:
    found = reading.read_text(SPRING, overrides=[Settled(16, 16, "やま", of="山", reason="sure")])
    token = next(t for t in found.proposals[0].tokens if t.first == 16)
    assert (token.kana, token.surface) == ("やま", "山")
    mountain = reading.read_text(SPRING, overrides=[Settled(16, 16, "みね", of="山")])
    assert "mine ni" in mountain.proposals[0].romaji
    assert "settled" in next(t for t in mountain.proposals[0].tokens if t.first == 16).reason


def test_a_settled_word_that_no_longer_fits_is_a_doubt() -> None:
    found = reading.read_text(SPRING, overrides=[Settled(0, 0, "あき", of="秋")])
    assert any("no longer fits" in doubt.why for doubt in found.doubts)
    assert found.proposals[0].romaji == best(SPRING)


def test_alternatives_are_ranked_with_reasons() -> None:
    found = reading.read_text(SPRING, alternatives=True)
    first, *others = found.proposals
    assert others
    assert all(other.reasons and other.romaji != first.romaji for other in others)
    assert [o.score for o in others] == sorted((o.score for o in others), reverse=True)


def test_the_contract_of_the_json() -> None:
    made = reading.read_text("於東都応需造之").to_dict()
    assert {
        "text",
        "normalised",
        "modern",
        "kana",
        "romaji",
        "register",
        "tokens",
        "alternatives",
        "signature",
        "dates",
        "changes",
        "doubts",
    } <= set(made)
    assert {"surface", "normalised", "kana", "romaji", "signs", "gloss"} <= set(made["tokens"][0])
    assert made["signature"]["place"]["signs"] == [1, 2]
    json.dumps(made)


def test_control_characters_never_reach_the_terminal() -> None:
    assert "\x1b" not in printable("\x1b[31m花")
    assert "\x1b" not in reading_as_text(reading.read_text("花", "prose"))


SIGNS = st.text(
    alphabet="花春の色はうつり□ゝ々つるぎ月作之年吉日國天保がぢをゐくゎｶa1 、（）［］", max_size=40
)


@settings(max_examples=60, deadline=None)
@given(SIGNS, st.sampled_from(["auto", "verse", "signature", "prose"]))
def test_any_text_is_read_or_refused_with_a_sentence(text: str, register: reading.Choice) -> None:
    try:
        found = reading.read_text(text, register)
    except InscribeError:
        return
    for proposal in found.proposals:
        for token in proposal.tokens:
            assert 0 <= token.first <= token.last < max(1, len(found.text))


@settings(max_examples=40, deadline=None)
@given(
    st.text(
        alphabet="はるのよゆめかりたまくらにひなくむこそをしけれ春夜夢", min_size=1, max_size=36
    )
)
def test_the_words_of_verse_tile_the_text(text: str) -> None:
    found = reading.read_text(text, "verse")
    assert "".join(token.surface for token in found.proposals[0].tokens) == text


def run(*arguments: str, text: str = "") -> tuple[int, str]:
    result = CliRunner().invoke(cli, ["read", *arguments], input=text)
    return result.exit_code, result.output


def test_lines_are_answered_one_by_one_in_order() -> None:
    arguments = ["read", "--lines", "--format", "jsonl"]
    result = CliRunner().invoke(cli, arguments, input=f"{SPRING}\n［花\n國澤作\n")
    first, second, third = map(json.loads, result.stdout.splitlines())
    assert result.exit_code == 1
    assert first["register"] == "verse"
    assert second["line"] == 2
    assert "never closed" in second["error"]
    assert third["normalised"] == "国沢作"


def test_a_line_that_is_not_utf8_is_an_error_of_its_own() -> None:
    result = CliRunner().invoke(
        cli, ["read", "--lines", "--format", "jsonl"], input=b"\xff\n" + "花\n".encode()
    )
    first, second = map(json.loads, result.stdout.splitlines())
    assert "UTF-8" in first["error"]
    assert second["text"] == "花"


def test_the_reasons_are_shown_on_request() -> None:
    code, output = run("--why", "--text", SLEEVES)
    assert code == 0
    assert "hichite" in output.replace(" ", "").replace("/", "")
    assert "particle" in output


def test_nothing_to_read_is_wrong_use() -> None:
    with pytest.raises(InscribeError):
        CliRunner().invoke(cli, ["read"], catch_exceptions=False, standalone_mode=False)


def test_a_poem_with_a_signature_beside_it() -> None:
    found = reading.read_text(
        "春霞／立てるやいづこ／み吉野の／吉野の山に／雪は降りつつ／苗広作（花押）"
    )
    proposal = found.proposals[0]
    assert found.register == "verse"
    assert found.signature is not None
    assert found.signature["name"].romaji == "Naehiro"
    assert (found.signature["name"].first, found.signature["name"].last) == (24, 25)
    assert proposal.romaji.startswith(best(SPRING))
    assert "stands after the poem" in proposal.reasons[1]
    assert [morae for morae, _ in proposal.phrases] == [5, 7, 5, 7, 7]


def test_a_poem_between_a_heading_and_a_date() -> None:
    found = reading.read_text(f"春の歌／{SPRING}／嘉永六年癸丑仲秋")
    assert found.register == "verse"
    assert found.dates[0].year == 1853
    assert found.proposals[0].tokens[found.proposals[0].phrases[0][1]].surface == "春霞"


def test_prose_of_the_classical_language_is_read_with_its_words() -> None:
    preface = (
        "やまと歌は人の心を種としてよろつの言の葉とそなれりける"
        "世の中にある人ことわさしけきものなれは心に思ふことを"
    )
    found = reading.read_text(preface)  # Kokinshu, the preface in kana, 905
    assert found.register == "prose"
    assert "yorozu no koto no ha" in found.proposals[0].romaji
    assert "narerikeru" in found.proposals[0].romaji
    assert "ものなれば" in found.modern


def test_a_character_no_dictionary_knows_is_read_around_in_worn_verse() -> None:
    worn = reading.read_text("秋□野に置く白□は□なれや貫□かくる蜘□の糸□")
    assert worn.register == "verse"
    assert "蜘" in [token.normalised for token in worn.proposals[0].tokens]


def test_a_description_of_a_worn_sign_before_a_last_space_is_read() -> None:
    found = reading.read_text("を翁乙ゑ⿰木□も使天保癸丑。之ケ ", "verse")
    assert "okina" in found.proposals[0].romaji


def test_a_repeat_mark_of_an_unread_sign_is_unread_and_as_long() -> None:
    found = reading.read_text("思ひ□ゝぬれはや人の見えつらむ夢と知りせばさめざらましを")
    assert found.proposals[0].romaji.startswith("omoi…… nure")
    assert [count for count, _ in found.proposals[0].phrases] == [5, 7, 5, 7, 7]
    assert [doubt.why for doubt in found.doubts][:2] == [
        "cannot be read",
        "what it repeats cannot be known: □ stands before it",
    ]


def test_a_poem_that_lacks_words_is_not_forced_into_a_metre() -> None:
    # two phrases too short keep no metre: Kokin wakashu 53 without its second phrase's word
    found = read_text("世の中に桜のなかりせは春の心はのとけからまし").proposals[0]
    assert found.romaji.endswith("haru no kokoro wa nodokekaramashi")


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        # Invented lines in the words of old verse; no particle の follows the particle へ.
        ("春日野の野への若草摘みにけり", "Kasugano no nobe no wakakusa tsuminikeri"),
        (
            "薄く濃き野への緑の若草に跡まて見ゆる雪のむらきえ",  # Shin Kokinshū 76
            "usuku koki nobe no midori no wakakusa ni ato made miyuru yuki no muragie",
        ),
    ],
)
def test_the_side_of_a_field_is_no_field_with_a_particle(text: str, romaji: str) -> None:
    assert read_text(text, "verse").proposals[0].romaji == romaji
