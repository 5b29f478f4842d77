"""Words of signatures that are put together of parts, and formulas put together of words."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from inscribe import tables
from inscribe.forms import normalise_text
from inscribe.reading import read_text
from inscribe.reading.signatures import read_signature
from inscribe.reading.words import joined, words_of

NAME, READ = "綾郷", "Ayasato"
SOUNDS = st.text("かきさしたちなはひまやらわんいうくつ", min_size=1, max_size=4).filter(
    lambda kana: kana[0] != "ん"
)


def parts(sort: str) -> list[dict[str, str]]:
    return [row for row in tables.rows("signature_parts") if row["sort"] == sort]


def of_class(kind: str) -> list[dict[str, str]]:
    return [row for row in tables.rows("signature_words") if row["class"] == kind]


def read(text: str) -> str:
    return read_signature(normalise_text(text)).proposals[0].romaji


@given(SOUNDS, SOUNDS)
def test_joined_sounds_keep_their_ends(first: str, then: str) -> None:
    found = joined(first, then)
    assert found[: len(first) - 1] == first[:-1]
    assert found.endswith(then[1:])
    assert len(found) == len(first) + len(then)


@given(st.data())
@settings(max_examples=60)
def test_every_compound_of_the_table_has_the_reading_of_its_parts(data: st.DataObject) -> None:
    rows = [r for r in tables.rows("signature_compounds") if "number" not in r["parts"].split()]
    row = data.draw(st.sampled_from(rows))
    chosen = [data.draw(st.sampled_from(parts(sort))) for sort in row["parts"].split()]
    text = "".join(part["written"] for part in chosen)
    native = all(part["native"] for part in chosen)
    by_sound = [p for p in tables.listed(row["pattern"]) if not set("*~!^") & set(p)]
    if len(text) > 1 and (native or by_sound):  # a sign alone is no compound
        current = normalise_text(text).text  # 々 is written out in it
        assert row["class"] in {word.kind for word in words_of(current)}


@given(st.data())
@settings(max_examples=40)
def test_every_office_of_a_bureau_is_a_title_before_a_name(data: st.DataObject) -> None:
    sort, ranks = data.draw(
        st.sampled_from(
            [("ryo", "ryo_rank"), ("ministry", "ministry_rank"), ("shiki", "shiki_rank")]
        )
    )
    bureau, rank = data.draw(st.sampled_from(parts(sort))), data.draw(st.sampled_from(parts(ranks)))
    found = read_signature(normalise_text(f"{bureau['written']}{rank['written']}藤原{NAME}"))
    assert found.parts["title"].text == normalise_text(bureau["written"] + rank["written"]).text
    assert found.proposals[0].romaji.endswith(f"Fujiwara no {READ}")


@given(st.sampled_from(of_class("transitive")))
@settings(max_examples=40)
def test_every_verb_takes_its_object_and_every_closing(row: dict[str, str]) -> None:
    plain = read(f"三輪{NAME}{row['written']}之")
    assert plain.startswith(f"Miwa {READ} kore o ")
    assert read(f"三輪{NAME}{row['written']}之者也") == f"{plain} mono nari"


@given(st.sampled_from(parts("respect")), st.sampled_from(parts("request")))
@settings(max_examples=40)
def test_every_request_of_one_esteemed_is_answered(
    respect: dict[str, str], request_: dict[str, str]
) -> None:
    found = read(f"応{respect['written']}{request_['written']}{NAME}作")
    assert found.endswith(f" ni ōjite {READ} saku"), found


@given(st.integers(2, 60))
@settings(max_examples=30)
def test_any_number_of_a_set_is_counted(number: int) -> None:
    from inscribe.dates.written import as_kanji

    found = read(f"{as_kanji(number)}枚之内{NAME}作")
    assert found.endswith(f"mai no uchi {READ} saku")


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("為亡父追善綾郷造之", "bōfu tsuizen no tame ni Ayasato kore o tsukuru"),
        ("祝三輪氏還暦綾郷作", "Miwa-shi no kanreki o shukushite Ayasato saku"),
        ("寄贈綾郷作", "kizō Ayasato saku"),
        ("又号鶴梢斎綾郷作", "mata Kakushōsai to gōsu Ayasato saku"),
        ("綾郷彰之", "Ayasato kore o shōsu"),
        ("上野権介綾郷", "Kōzuke no gon no suke Ayasato"),
        ("松鶴図綾郷作", "Shōkaku no zu Ayasato saku"),
        ("三輪綾郷図綾国刻", "Miwa Ayasato zu Ayakuni kizamu"),
        ("行年七十有三綾郷作", "gyōnen nanajū yū san Ayasato saku"),
        ("三十六枚之内十五綾郷", "sanjūrokumai no uchi jūgo Ayasato"),
    ],
)
def test_formulas_are_put_together(text: str, romaji: str) -> None:
    assert read(text) == romaji


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("柿本人麻呂", "Kakinomoto no Hitomaro"),
        ("在原業平朝臣", "Ariwara no Narihira ason"),
        ("源氏物語須磨巻", "Genji monogatari Suma no maki"),
        ("見平家物語", "Heike monogatari ni miyu"),
        ("古今集春", "Kokinshū haru"),
        ("古今和歌集巻第一春歌上", "Kokin wakashū maki daiichi haru no uta jō"),
        ("万葉集巻二", "Man'yōshū maki ni"),
        ("見古今集巻一", "Kokinshū maki ichi ni miyu"),
        ("枕草子第一段", "Makura no sōshi daiichidan"),
        ("奉納鹿島大神宮", "Kashima Daijingū ni hōnō su"),
        ("南無薬師如来", "Namu Yakushi nyorai"),
    ],
)
def test_what_plates_quote_is_read_by_its_table(text: str, romaji: str) -> None:
    assert read_text(text).proposals[0].romaji == romaji
