"""Dates as they are said (common practice, no source; the convention is in dates/pronounce.py)."""

import pytest

from inscribe.dates import resolve, words

SAID = {
    "嘉永六年癸丑仲秋": "Kaei rokunen mizunoto-ushi chūshū",
    "文政四年": "Bunsei yonen",
    "文政七年": "Bunsei shichinen",
    "文政九年": "Bunsei kunen",
    "文政元年": "Bunsei gannen",
    "弘化四年弥生廿三日": "Kōka yonen yayoi nijūsannichi",
    "天保七年四月吉日": "Tenpō shichinen shigatsu kichijitsu",
    "天保三年閏十一月": "Tenpō sannen urū jūichigatsu",
    "文政八年八月上浣": "Bunsei hachinen hachigatsu jōkan",
    "安政二年十月二日": "Ansei ninen jūgatsu futsuka",
    "安政二年九月十四日": "Ansei ninen kugatsu jūyokka",
    "安政二年正月元日": "Ansei ninen shōgatsu ganjitsu",
    "安政二乙卯年二月日": "Ansei ni kinoto-u no toshi nigatsu hi",
    "癸丑之秋": "mizunoto-ushi no aki",
    "丑年": "ushidoshi",
    "春日": "shunjitsu",
    "于時嘉永五年": "toki ni Kaei gonen",
    "行年六十八歳": "gyōnen rokujūhassai",
    "行年七十歳": "gyōnen nanajussai",
    "行年六十一歳": "gyōnen rokujūissai",
    "行年七十四歳": "gyōnen nanajūyonsai",
    "七十三翁": "nanajūsan-ō",
    "八十二老人": "hachijūni rōjin",
    "明治三十三年": "Meiji sanjūsannen",
    "皇紀二千六百年": "kōki nisenroppyakunen",
}


@pytest.mark.parametrize("text", SAID)
def test_a_date_is_said(text: str) -> None:
    assert " ".join(word.romaji for word in words(resolve(text))) == SAID[text]


def test_kana_stand_beside_the_letters() -> None:
    said = words(resolve("嘉永六年癸丑仲秋"))
    assert [word.kana for word in said] == ["かえい", "ろくねん", "みずのとうし", "ちゅうしゅう"]


def test_the_words_cover_the_signs_in_order() -> None:
    text = "于時嘉永六癸丑歳仲秋吉日行年六十八歳"
    said = words(resolve(text))
    assert "".join(word.text for word in said) == text
    assert [text[word.first : word.last + 1] for word in said] == [word.text for word in said]


def test_other_readings_are_given_beside_the_usual_one() -> None:
    also = {word.text: word.also for word in words(resolve("天文五年丙申"))}
    assert also["天文"] == ("Tenmon",)
    assert also["丙申"] == ("heishin",)
