"""Restoring: the truth comes first where something tells it, and nothing is claimed beyond that."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import HealthCheck, given, settings, strategies as st

from inscribe import notation, tables
from inscribe.cli import cli
from inscribe.errors import InputError, InscribeError
from inscribe.forms import normalise_text
from inscribe.restoring import Candidate, Seen, restore
from inscribe.restoring.formula import signs_at, steps_from
from inscribe.restoring.model import Lacuna
from inscribe.restoring.seen import other_forms
from inscribe.restoring.worn import MOST_PLACES
from inscribe.sources import adding
from inscribe.sources.library import Library
from inscribe.sources.texts import SourceText

# Kokinshu 53, quoted from memory; the kana column without voicing marks.
POEM = "世の中に絶えて桜のなかりせば春の心はのどけからまし"
KANA = "よのなかにたえてさくらのなかりせははるのこころはのとけからまし"


def candidates(text: str, **options: object) -> tuple[Candidate, ...]:
    return first(text, **options).candidates


def first(text: str, **options: object) -> Lacuna:
    found = restore(notation.parse(text), **options)  # type: ignore[arg-type]
    return found.lacunae[0]


def library(folder: Path, text: str) -> Library:
    made = Library(folder / "library.sqlite", create=True)
    others = ["山里は秋こそことに寂しけれ鹿の鳴く音に目をさましつつ", "谷風にとくる氷のひまごとに"]
    texts = [SourceText("truth", (text,), "the poem")]
    texts += [SourceText(f"other-{n}", (other,)) for n, other in enumerate(others)]
    adding.add_texts(made, texts, len(texts))
    return made


@pytest.mark.parametrize(
    ("text", "truth", "kind"),
    [
        ("武州住綾国□", "作", "verb"),
        ("江戸□霜蹊造之", "住", "residence"),
        ("応□霜蹊彫之", "需", "commission"),
        ("依□霜蹊彫之", "好", "commission"),
        ("応北沢□需霜蹊彫之", "氏", "honorific"),
        ("□州松江住霜蹊作", "雲", "city 雲州松江"),
        ("長州□住霜蹊作", "萩", "city 長州萩"),
        ("和泉□藤原霜蹊", "守", "office 和泉守"),
        ("嘉永五□仲秋霜蹊作", "年", "word for year"),
        ("嘉□五年八月吉日", "永", "year 嘉永五"),
        ("行年□□□歳霜蹊", "六", "age"),
        ("行□六十八歳霜蹊", "年", "word before an age"),
    ],
)
def test_the_formula_restores_its_own_words(text: str, truth: str, kind: str) -> None:
    best = candidates(text, register="signature")[0]
    assert best.text == truth
    assert best.evidence[0].text.startswith(kind)


def test_a_date_must_agree_with_its_sexagenary_year() -> None:
    best = candidates("嘉永□年壬子仲秋")[0]
    assert (best.text, best.evidence[1].kind) == ("五", "date")
    assert best.probability > 0.9


@pytest.mark.parametrize(
    ("text", "truths"),
    [
        ("天保三年□辰", "壬"),
        ("嘉永□年癸丑", "六"),
        ("□□三年壬辰", "天保"),
        ("□政四年丁巳", "安"),
        ("慶応□年寅八月", "二"),
    ],
)
def test_era_number_and_sexagenary_year_determine_each_other(text: str, truths: str) -> None:
    found = restore(notation.parse(text + "霜蹊作"), register="signature")
    assert "".join(each.candidates[0].text for each in found.lacunae) == truths
    assert all(each.candidates[0].probability > 0.8 for each in found.lacunae)


@pytest.mark.parametrize(
    ("season", "months"), [("春", "二三"), ("夏", "四五六"), ("秋", "七八九"), ("冬", "十")]
)
def test_the_season_before_a_month_is_the_one_the_month_lies_in(season: str, months: str) -> None:
    for month in months:
        signs = [each.text for each in candidates(f"嘉永五年□{month}月吉日")]
        assert season in signs[:2]
        assert not set("春夏秋冬") - {season} & set(signs[:3])
    assert candidates("嘉永六年□八月吉日")[0].text == "秋"


def test_a_character_is_proposed_once_and_noise_not_at_all() -> None:
    for text in ("武州住□作", "□火", POEM.replace("桜", "□")):
        found = candidates(text, seen_of_it=Seen(parts=("火",)), most=60)
        current = [normalise_text(each.text).text for each in found]
        assert len(set(current)) == len(current)
        assert all(len(set(each.forms)) == len(each.forms) for each in found)
        assert all(each.probability >= 0.001 for each in found)
    assert other_forms("鍛") == ("煅",)


def test_towns_lie_in_provinces_that_are_known() -> None:
    towns = {row["written"] for row in tables.rows("cities")}
    provinces = {row["province"] for row in tables.rows("provinces")}
    for row in tables.rows("city_provinces"):
        assert row["province"] in provinces
        assert set(tables.listed(row["cities"])) <= towns


def test_words_and_metre_restore_verse() -> None:
    best = candidates(POEM.replace("まし", "□し"))
    assert "ま" in [candidate.text for candidate in best[:3]]
    assert {"lexicon", "metre"} <= {each.kind for each in best[0].evidence}


@pytest.mark.parametrize("source", [POEM, KANA])
@pytest.mark.parametrize("at", [2, 6, 7, 9, 17, 22])
def test_a_source_tells_the_sign_in_either_spelling(tmp_path: Path, source: str, at: int) -> None:
    with library(tmp_path, source) as held:
        worn = POEM[:at] + "□" + POEM[at + 1 :]
        best = candidates(worn, library=held)[0]
    assert best.text == POEM[at]
    assert best.evidence[0].kind == "source"


@pytest.mark.parametrize(
    ("worn", "truth"),
    [
        ("思□つつ", "ひ"),  # the kanji does not say the kana after it
        ("飛□川", "鳥"),  # a word of two signs, neither of which is read as the source has it
        ("夜の□は", "夢"),
        ("跡もし□れず", "ら"),
    ],
)
def test_a_source_in_kana_tells_kanji_and_kana(tmp_path: Path, worn: str, truth: str) -> None:
    kana = "おもひつつねしよのゆめはあすかかはなかるるみつのあともしられす"  # invented
    whole = "思ひつつ寝し夜の夢は飛鳥川流るる水の跡もしられず"
    legible = worn.replace("□", truth)
    assert legible in whole
    with library(tmp_path, kana) as held:
        best = candidates(whole.replace(legible, worn), library=held, register="verse")[0]
    assert best.text == truth


def test_a_source_fills_a_gap(tmp_path: Path) -> None:
    with library(tmp_path, POEM) as held:
        found = first(POEM.replace("桜のなかりせば", "［　　］"), library=held)
    assert found.kind == "gap"
    assert found.candidates[0].text == "桜のなかりせば"


def test_a_text_without_a_source_in_the_library_gets_none(tmp_path: Path) -> None:
    with library(tmp_path, POEM) as held:
        found = restore(notation.parse("武州住□国作之応需"), held)
    assert not [hit for hit in found.sources if hit.score > 0.5]


def test_what_is_seen_decides_between_candidates() -> None:
    signs = [c.text for c in candidates("□国作", seen_of_it=Seen(parts=("氵",)))[:3]]
    assert "清" in signs
    alike = candidates("武州住□親作", seen_of_it=Seen(like="睛"))[0]
    assert alike.text == "晴"
    few = candidates("□国作", seen_of_it=Seen(strokes=(1, 4)))
    assert all(len(c.text) == 1 and "strokes" in c.evidence[-1].text for c in few)


def test_a_described_sign_is_seen_in_part() -> None:
    assert candidates("⿰氵□国作")[0].evidence[-1].text == "has 氵"


def test_a_sign_that_was_read_can_be_doubted() -> None:
    found = restore(notation.parse("武州任霜蹊作"), sign=2)
    assert [each.sign for each in found.lacunae] == [2]
    assert found.lacunae[0].candidates[0].text == "住"


def test_a_sign_that_is_not_there_is_an_error() -> None:
    with pytest.raises(InputError, match="no sign 9"):
        restore(notation.parse("武州住"), sign=8)
    with pytest.raises(InputError, match="kao"):
        restore(notation.parse("武州住（花押）"), sign=3)


def test_metre_counts_what_is_missing() -> None:
    assert first(POEM.replace("桜", "□"), register="verse").missing == 3


def test_steps_between_classes_are_chances() -> None:
    for kind in ("start", "name", "date>era", "date>month", "opener:patron", "verb"):
        assert sum(steps_from(kind).values()) == pytest.approx(1)


SIGNATURES = st.text("武州江戸住於東都応需作彫造之年月日吉六十歳□［", min_size=1, max_size=9)


@given(SIGNATURES.filter(lambda text: "□" in text))
@settings(max_examples=40, deadline=None)
def test_chances_of_signs_add_up(text: str) -> None:
    plain = text.replace("［", "［　　］")
    found = signs_at(plain, plain.index("□"))
    total = sum(possible.chance for possible in found.values())
    assert total == pytest.approx(1) or not found
    assert all(possible.chance >= 0 and len(sign) == 1 for sign, possible in found.items())


TEXTS = st.text("武州住清国作之花の色は移りにけ□■", min_size=1, max_size=16)


def test_one_run_looks_at_some_worn_places_and_says_so() -> None:
    text = "武州住□作" * 30
    found = restore(notation.parse(text), register="signature")
    assert (len(found.lacunae), found.worn) == (MOST_PLACES, 30)
    later = restore(notation.parse(text), register="signature", places=range(20, 30))
    assert [each.sign for each in later.lacunae] == [5 * place + 3 for place in range(20, 30)]
    out = run("--text", text, "--register", "signature").stdout
    assert "20 of 30 worn places; name others with --places FIRST-LAST" in out
    assert "column 1, sign 104" in run("--text", text, "--places", "21").stdout


def test_a_place_is_counted_in_its_column_as_check_counts_it() -> None:
    text = "天保三年辰春／武□住嶺暁作"
    out = run("--text", text).stdout
    assert "column 2, sign 2 (sign 8 of the inscription): …天保三年辰春武【□】" in out
    told = json.loads(run("--text", text, "--format", "json").stdout)["lacunae"][0]
    assert (told["sign"], told["column"], told["sign_in_column"]) == (7, 1, 1)
    for chosen in (("--sign", "8"), ("--column", "2", "--sign", "2")):
        assert run("--text", text, *chosen).stdout == out


@pytest.mark.parametrize(
    ("chosen", "said"),
    [
        (("--column", "3", "--sign", "1"), "there is no column 3"),
        (("--column", "1", "--sign", "7"), "column 1 has no sign 7"),
        (("--column", "1"), "--column says where --sign counts"),
    ],
)
def test_a_sign_that_a_column_has_not_is_refused(chosen: tuple[str, ...], said: str) -> None:
    refused = run("--text", "天保三年辰春／武□住嶺暁作", *chosen)
    assert isinstance(refused.exception, InputError)
    assert said in str(refused.exception)


@pytest.mark.parametrize("text", ["花の色は□" * 2000, "□" * 10_000, "武州住□作" * 2000])
def test_much_wear_is_no_reason_to_wait(text: str) -> None:
    found = restore(notation.parse(text))  # took minutes when it looked at every place
    assert found.worn >= 2000
    assert len(found.lacunae) == MOST_PLACES


@given(TEXTS)
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_every_worn_sign_is_answered_and_nothing_is_changed(text: str) -> None:
    parsed = notation.parse(text)
    found = restore(parsed, most=3)
    assert notation.render(parsed) == text
    worn = [sign.index for sign in parsed.signs if not sign.text]
    assert [each.sign for each in found.lacunae] == worn
    for each in found.lacunae:
        chances = [candidate.probability for candidate in each.candidates]
        assert chances == sorted(chances, reverse=True)
        assert sum(chances) <= 1 + 1e-9
        assert [candidate.rank for candidate in each.candidates] == [*range(1, len(chances) + 1)]


def run(*arguments: str, stdin: str | None = None) -> Result:
    return CliRunner().invoke(cli, ["restore", *arguments], input=stdin, catch_exceptions=True)


def test_the_command_shows_cautions_once() -> None:
    out = " ".join(run("--text", "武州住□国□").stdout.split())
    assert out.count("suggestion until a person confirms it") == 1
    assert out.count("Never clean") == 1


def test_the_command_changes_no_record(tmp_path: Path) -> None:
    file = tmp_path / "worn.toml"
    text = 'id = "X"\nkind = "tsuba"\n[[inscription]]\nplace = "front"\ntext = "武州住□国作"\n'
    file.write_text(text, encoding="utf-8")
    assert run(str(file)).exit_code == 0
    assert file.read_text(encoding="utf-8") == text


def test_lines_in_lines_out() -> None:
    out = run("--lines", "--format", "jsonl", "-", stdin="武州□国作\n［\n花の色は\n").stdout
    lines = [json.loads(line) for line in out.splitlines()]
    assert [bool(line.get("lacunae")) for line in lines] == [True, False, False]
    assert lines[1]["line"] == 2


@pytest.mark.parametrize(
    "arguments",
    [
        (),
        ("--text", "武□", "--strokes", "x"),
        ("--text", "武□", "--strokes", "9-3"),
        ("--text", "武□", "--parts", "+"),
        ("--text", "武□", "--like", "土士"),
        ("--text", "武□", "--sign", "7"),
        ("--text", "武□", "--places", "x"),
        ("--text", "武□", "--places", "2"),
        ("--text", "武□", "--places", "1-99"),
        ("--text", "武□", "--places", "1", "--sign", "1"),
        ("--text", "武□", "--inscription", "2"),
        ("--text", "武□", "--library", "nowhere.sqlite"),
    ],
)
def test_wrong_use_is_told_without_a_traceback(arguments: tuple[str, ...]) -> None:
    result = run(*arguments)
    assert isinstance(result.exception, (InputError, SystemExit))


def test_names_read_in_the_collection_are_expected(tmp_path: Path) -> None:
    for number, name in enumerate(("霜蹊", "霜蹊", "帆影")):
        text = f'id = "{number}"\nkind = "tsuba"\n[[inscription]]\nplace = "front"\n'
        (tmp_path / f"{number}.toml").write_text(f'{text}text = "武州住{name}作"\n', "utf-8")
    out = json.loads(
        run("--text", "江戸住霜□造之", "--records", str(tmp_path), "--format", "json").stdout
    )
    best = out["lacunae"][0]["candidates"][0]
    assert best["text"] == "蹊"
    assert {"kind": "collection", "text": "霜蹊 is read 2 times in the collection"} in best[
        "evidence"
    ]


def test_names_of_the_records_beside_a_record_are_expected(tmp_path: Path) -> None:
    for number, text in enumerate(("武州住霜蹊作", "武州住霜蹊作", "江戸住霜□造之")):
        record = f'id = "{number}"\nkind = "tsuba"\n[[inscription]]\nplace = "front"\n'
        (tmp_path / f"{number}.toml").write_text(f'{record}text = "{text}"\n', "utf-8")
    (tmp_path / "broken.toml").write_text("id = ", "utf-8")
    worn = str(tmp_path / "2.toml")
    assert "霜蹊 is read 2 times in the collection" in run(worn, "--quiet").stdout
    assert "in the collection" not in run(worn, "--quiet", "--alone").stdout


def test_a_broken_record_alone_in_its_folder_is_told_as_such(tmp_path: Path) -> None:
    broken = tmp_path / "broken.toml"
    broken.write_text("id = ", "utf-8")
    assert isinstance(error := run(str(broken)).exception, InscribeError)
    assert "--records" not in str(error)


def test_a_gap_in_a_signature_is_shown_without_raw_codes() -> None:
    shown = run("--text", "天保三年［　　］").stdout
    assert "one word is lost here" in shown
    assert "<U+" not in shown


@pytest.mark.parametrize("text", ["", " ", "\n"])
def test_no_text_is_an_error_and_no_legible_text(text: str) -> None:
    result = run("--text", text)
    assert isinstance(result.exception, InputError)
    assert "there is no text to restore" in str(result.exception)


def test_a_source_of_other_wording_is_weaker_evidence(tmp_path: Path) -> None:
    worn = "春過て夏来に□らし白妙の衣かはかす天の香具山"
    other = "春過ぎて夏来るらし白栲の衣干したり天の香具山"
    same = "春過て夏来にけらし白妙の衣かはかす天の香具山"
    with library(tmp_path / "other", other) as held:
        best = candidates(worn, library=held)[0]
    assert best.text == "け"
    assert any("in other wording" in each.text for each in best.evidence)
    with library(tmp_path / "same", same) as held:
        assert candidates(worn, library=held)[0].probability > 0.9


@pytest.mark.parametrize("text", ["法□嶺暁", "法□露岳"])
def test_a_worn_title_before_a_name_alone_makes_a_signature(text: str) -> None:
    assert {"橋", "眼"} <= {each.text for each in candidates(text)}


def test_a_name_alone_makes_no_signature_of_a_motto() -> None:
    assert restore(notation.parse("盡忠□國")).register == "prose"


def test_a_word_of_one_sign_is_named_once() -> None:
    said = [each.text for found in candidates("人□花") for each in found.evidence]
    assert any(each.startswith("the word の (") for each in said)
    assert not any("の の" in each for each in said)


@pytest.mark.parametrize(("text", "part"), [("盡忠□國", "幸"), ("武州□綾国作", "亻")])
def test_a_sign_without_the_part_seen_comes_after_all_that_have_it(text: str, part: str) -> None:
    found = candidates(text, seen_of_it=Seen(parts=(part,)), most=50)
    having = [f"has {part}" in {e.text for e in each.evidence} for each in found]
    assert having[0]
    assert having == sorted(having, reverse=True)
    shares = [each.probability for each in found]
    assert shares == sorted(shares, reverse=True)


def test_a_part_of_no_sign_is_told() -> None:
    result = run("--text", "武州□綾国作", "--parts", "X")
    assert "X is no part of any known character" in str(result.exception)


def test_gaps_side_by_side_are_one_lost_stretch() -> None:
    from inscribe import notation
    from inscribe.restoring import restore

    text = notation.parse("花の色は［　　］［　　］いたつらに我か身世にふる")
    lacunae = restore(text, register="verse").lacunae
    assert len(lacunae) == 2


def test_a_source_with_marks_of_its_own_is_no_harm() -> None:
    from inscribe import notation
    from inscribe.restoring import restore

    copied = "花の色\\／は移り"
    assert restore(notation.parse("花の□は移り"), copied=copied).lacunae


@pytest.mark.parametrize(
    ("text", "truth"),
    [
        ("題□らず", "し"),
        ("題し□ず", "ら"),
        ("題不□", "知"),
        ("よみ人□らず", "し"),
        ("読人しら□", "ず"),
        ("詠人不□", "知"),
        ("行□六十八歳", "年"),
    ],
)
def test_the_heading_of_a_poem_of_which_nothing_is_known_is_a_set_phrase(
    text: str, truth: str
) -> None:
    assert candidates(text)[0].text == truth


def test_the_months_in_which_blades_are_dated_by_custom_come_first() -> None:
    found = {each.text: each.probability for each in candidates("嘉永六年□月吉日")}
    assert found["八"] == pytest.approx(found["二"])
    assert found["八"] > 3 * max(found[each] for each in "三五六七")


def test_a_cycle_after_the_number_of_its_year_may_be_followed_by_either_word_for_year() -> None:
    found = {each.text: each.probability for each in candidates("天保三壬辰□仲秋")}
    assert found["年"] > found["歳"] > 0.1


def test_what_keeps_the_metre_comes_before_what_breaks_it() -> None:
    text = "春過ぎて夏来にけらし白妙の衣干すてふ天の香具□"  # Shinkokinshu 175, from memory
    for each in candidates(text)[:4]:
        assert any("the metre is kept" in said.text for said in each.evidence), each.text


def test_a_source_that_tells_by_its_kana_is_named(tmp_path: Path) -> None:
    made = Library(tmp_path / "library.sqlite", create=True)
    adding.add_texts(made, [SourceText("truth", (POEM,), extra=(("kana", KANA),))], 1)
    best = candidates(
        "よのなかにたえてさ□らのなかりせばはるのこころはのどけからまし", library=made
    )[0]
    assert best.text == "く"
    assert best.evidence[0].text.startswith("truth (probability")
