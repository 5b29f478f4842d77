"""The aligner: exact on short texts, whole on all, and every kind told from every other."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st

from inscribe import notation
from inscribe.collation import Collation, collate, collate_texts
from inscribe.collation.align.searching.costs import prices
from inscribe.collation.align.searching.pairs import match
from inscribe.collation.align.searching.search import cheapest
from inscribe.collation.align.sides.lattice import Side
from inscribe.collation.collating import prepared
from inscribe.collation.parts import SUBSTANTIVE
from inscribe.reading.spelling import sounds

DATA = Path(__file__).parent / "data"
SIGNS = ("い", "は", "わ", "ひ", "と", "む", "ん", "ゆ", "め", "ゝ", "夢", "人", "□")
texts = st.lists(st.sampled_from(SIGNS), max_size=10).map("".join)
# Without kana that scribes exchange: the slow aligner prices them inside a group as equal.
plain_texts = st.lists(st.sampled_from("はひとゆめむ夢人□"), max_size=10).map("".join)


def side(text: str) -> Side:
    return prepared(notation.parse(text))


def kinds(copy: str, source: str) -> list[tuple[str, str, str]]:
    groups = collate_texts(copy, source).groups
    return [(g.kind, g.copy.text, g.source.text) for g in groups if g.kind != "same"]


# --- a slow obvious aligner: every group of up to ``widest`` signs a side, tried in turn


def slow_cost(copy: Side, source: Side, widest: int) -> int:
    """Return the cost of the cheapest tiling by groups, tried one after another."""
    ends = (len(copy), len(source))
    far = 10**9
    best = {(0, 0): 0}
    heard = [
        {
            (i, a): spoken(t, i, a)
            for i in range(len(t))
            for a in range(i + 1, min(i + 3, len(t)) + 1)
        }
        for t in (copy, source)
    ]
    for i in range(ends[0] + 1):
        for j in range(ends[1] + 1):
            here = best.get((i, j), far)
            for a in range(i, min(ends[0], i + widest) + 1):
                for b in range(j, min(ends[1], j + widest) + 1):
                    if (a, b) != (i, j):
                        cost = here + slow_group(copy, i, a, source, j, b, heard)
                        best[a, b] = min(best.get((a, b), far), cost)
    return best[ends]


def slow_group(
    copy: Side,
    i: int,
    a: int,
    source: Side,
    j: int,
    b: int,
    heard: list[dict[tuple[int, int], Heard]],
) -> int:
    price = prices()
    costs = [price["open"] + max(a - i, b - j) * price["wrong"]]
    if a - i == b - j == 1 and (found := match(copy, i, source, j)):
        costs.append(price[found.step])
    if a - i == 1 and copy.sort[i] == "unread" and 1 <= b - j <= 3:
        costs.append(price["unread"] + (b - j - 1) * price["unread_more"])
    if b - j == 1 and source.sort[j] == "unread" and 1 <= a - i <= 3:
        costs.append(price["unread"] + (a - i - 1) * price["unread_more"])
    # The same character is the same word: its readings are not played off against each other.
    shared = set(copy.norm[i:a]) & set(source.norm[j:b])
    same_character = any(sounds.is_kanji(char) for char in shared if char)
    both_in_kanji = copy.sort[i:a][:1] == source.sort[j:b][:1] == ("kanji",)
    if (i, a) in heard[0] and (j, b) in heard[1] and not (same_character or both_in_kanji):
        costs += [
            one + other
            for pattern, one, reads in heard[0][i, a]
            for answer, other, reads_too in heard[1][j, b]
            if (reads or reads_too) and sounds.fits(pattern, answer)
        ]
    return min(costs)


Heard = list[tuple[str, int, bool]]  # a sound, its price, whether any sign was read


def spoken(text: Side, start: int, end: int) -> Heard:
    """Return every sound the signs may have, and what the readings cost."""
    if start == end:
        return [("", 0, False)]
    found = []
    price = prices()
    if text.letters[start]:
        found += [
            (text.letters[start] + rest, cost + price["kana"], reads)
            for rest, cost, reads in spoken(text, start + 1, end)
        ]
    for reading in text.readings_at(start, ""):
        if start + reading.length <= end:
            found += [
                (reading.pattern + rest, cost + price[reading.step], True)
                for rest, cost, _ in spoken(text, start + reading.length, end)
            ]
    return [heard for heard in found if len(heard[0]) <= 6]


@settings(max_examples=60, deadline=None)
@given(plain_texts, plain_texts)
def test_the_search_is_never_worse_than_trying_every_group(copy: str, source: str) -> None:
    one, other = side(copy), side(source)
    assert cheapest(one, other).cost <= slow_cost(one, other, widest=10)


def test_sixty_signs_are_aligned_as_well_as_by_trying_every_group() -> None:
    for copy, source in sixty_signs():
        one, other = side(copy), side(source)
        assert cheapest(one, other).cost <= slow_cost(one, other, widest=3)


@cache
def sixty_signs() -> tuple[tuple[str, str], ...]:
    poem = "はるすきてなつきにけらししろたへのころもほすてふあまのかくやま"
    other = "春すきて夏きにけらししろたへのころもほすとふあまのかく山"
    return ((poem + other, other + poem), (poem[::-1] + other, poem + other))


# --- laws


@settings(max_examples=80, deadline=None)
@given(texts, texts)
def test_groups_tile_both_texts(copy: str, source: str) -> None:
    assert_tiles(collate_texts(copy, source))


def assert_tiles(result: Collation) -> None:
    at = 0
    for group in result.groups:
        assert group.copy.start == at
        at = group.copy.end
    assert at == len(result.copy.signs)
    taken = sorted(i for g in result.groups for i in range(g.source.start, g.source.end))
    assert taken == list(range(*result.window))


@settings(max_examples=60, deadline=None)
@given(texts)
def test_a_text_is_the_same_as_itself(text: str) -> None:
    kinds_found = {group.kind for group in collate_texts(text, text).groups}
    assert kinds_found <= {"same", "unread"}


@settings(max_examples=40, deadline=None)
@given(texts, texts)
def test_figures_count_every_sign_of_the_source(copy: str, source: str) -> None:
    figures = collate_texts(copy, source).fidelity
    counted = sum(
        getattr(figures, kind)
        for kind in ("same", "form", "kana", "spelling", "replaced", "omitted", "moved", "unread")
    )
    assert counted == figures.signs_in_source


# --- kinds


@pytest.mark.parametrize(
    ("copy", "source", "expected"),
    [
        ("國の花", "国の花", [("form", "國", "国")]),
        ("𛂦なの", "はなの", [("form", "𛂦", "は")]),
        ("かせの", "かぜの", [("kana", "せ", "ぜ")]),
        ("ちるらん", "ちるらむ", [("kana", "ん", "む")]),
        ("をみな", "おみな", [("kana", "を", "お")]),
        ("てふの", "ちょうの", [("kana", "てふ", "ちょう")]),
        ("けふは", "きょうは", [("kana", "けふ", "きょう")]),
        ("人にあふ", "人におう", [("kana", "あふ", "おう")]),
        ("つゝ", "つつ", [("kana", "ゝ", "つ")]),
        ("夢か", "ゆめか", [("spelling", "夢", "ゆめ")]),
        ("今日は", "けふは", [("spelling", "今日", "けふ")]),
        ("逢ふ", "会ふ", [("spelling", "逢", "会")]),
        ("時鳥の", "郭公の", [("spelling", "時鳥", "郭公")]),
        ("出る月", "出づる月", [("spelling", "出", "出づ")]),
        ("山ゟ", "山より", [("spelling", "ゟ", "より")]),
        ("世中は", "よのなかは", [("spelling", "世中", "よのなか")]),
    ],
)
def test_a_spelling_is_no_difference_in_wording(
    copy: str, source: str, expected: list[tuple[str, str, str]]
) -> None:
    assert kinds(copy, source) == expected


@pytest.mark.parametrize(
    ("copy", "source", "expected"),
    [
        ("ちりけむ花の", "ちるらむ花の", [("replaced", "ちりけむ", "ちるらむ")]),
        ("花は散る", "花の散る", [("replaced", "は", "の")]),
        ("春の野に花は咲く", "春の野に咲く", [("added", "花は", "")]),
        ("久方の空に", "久方の天の空に", [("omitted", "", "天の")]),
        ("夢か現か", "現か夢か", [("moved", "夢か現", "現か夢")]),
        ("花□散る", "花の散る", [("unread", "", "の")]),
        ("花［　　］散る", "花の色はうつりて散る", [("unread", "", "の色はうつりて")]),
    ],
)
def test_another_word_is_a_difference(
    copy: str, source: str, expected: list[tuple[str, str, str]]
) -> None:
    found = [
        (kind, "" if kind == "unread" else one, other) for kind, one, other in kinds(copy, source)
    ]
    assert found == expected


@pytest.mark.parametrize(
    ("copy", "source", "expected"),
    [
        ("於東都造之", "東都において之を造る", ["於東都造之"]),
        ("東都において之を造る", "於東都造之", ["東都において之を造る"]),
        ("應需", "もとめにおうじて", ["應需"]),
        ("倣古圖", "古図に倣ひて", ["倣古圖"]),
        ("以南蛮鉄作之", "南蛮鉄をもつてこれをつくる", ["以南蛮鉄作之"]),
        ("為君", "君がため", ["為君"]),
        ("花の下に不知人", "花の下に人を知らす", ["不知人"]),
        ("読書", "書を読む", ["読書"]),
        ("難忘", "わすれかたき", ["難忘"]),
    ],
)
def test_chinese_order_is_the_same_words(copy: str, source: str, expected: list[str]) -> None:
    result = collate_texts(copy, source)
    assert_tiles(result)
    assert result.is_faithful_in_wording
    turned = [group for group in result.groups if group.order == "Chinese"]
    assert [group.copy.text for group in turned] == expected
    assert {group.kind for group in turned} == {"spelling"}


@pytest.mark.parametrize(
    ("copy", "source", "differing"),
    [
        ("於東都造之", "西都において之を造る", "於東都"),
        ("於東都造之", "東都において之を彫る", "造之"),
        ("夢春", "春の夢", "夢春"),
        ("花見", "見る花", "花見"),
    ],
)
def test_another_word_in_chinese_order_is_a_difference(
    copy: str, source: str, differing: str
) -> None:
    found = [g.copy.text for g in collate_texts(copy, source).groups if g.is_substantive]
    assert found == [differing]


def test_two_characters_of_one_sound_are_two_words() -> None:
    for copy, source in (("ひとをかふ", "ひとをこふ"), ("春の夢", "春の暮"), ("松の", "待の")):
        assert not collate_texts(copy, source).is_faithful_in_wording


def test_a_reading_must_go_on_as_its_okurigana_do() -> None:
    """知り cannot be ちり, though 知 is チ elsewhere; 行く cannot be おく."""
    for copy, source in (("花そ知りける", "はなそちりける"), ("露そ行く", "つゆそおく")):
        assert not collate_texts(copy, source).is_faithful_in_wording


def test_spellings_of_manuscripts_are_no_differences() -> None:
    lines = (DATA / "manuscript_spellings.tsv").read_text(encoding="utf-8").splitlines()
    pairs = [line.split("\t") for line in lines if line and line[0] != "#"][1:]
    wrong = [
        written
        for written, kana in pairs
        if not collate_texts(f"春の{written}よ", f"はるの{kana}よ").is_faithful_in_wording
    ]
    assert len(pairs) > 900
    assert wrong == []


@pytest.mark.parametrize("group", ["1", "2", "3", "4"])
def test_poems_in_manuscript_spelling_differ_only_where_they_were_changed(group: str) -> None:
    lines = (DATA / "manuscript_poems.tsv").read_text(encoding="utf-8").splitlines()
    poems = [line.split("\t") for line in lines if line[0] == group]
    assert len(poems) > 60
    for _, poem, written, kana, changed in poems:
        assert collate_texts(written, kana).is_faithful_in_wording, poem
        assert not collate_texts(changed, kana).is_faithful_in_wording, poem


@pytest.mark.parametrize(
    ("copy", "source"),
    [
        ("花も無りけり", "はなもなかりけり"),  # an adjective's か
        ("雪に誤たれ", "ゆきにあやまたれ"),  # the stem of a verb, whatever ending follows
        ("散らう花", "ちらむはな"),  # む as it was said
    ],
)
def test_rules_of_spelling(copy: str, source: str) -> None:
    assert collate_texts(copy, source).is_faithful_in_wording


def test_every_spelling_is_cheaper_than_any_difference_in_wording() -> None:
    price = prices()
    dearest = max(price[s] for s in ("word", "kun", "inflected", "on", "cut", "name", "okurigana"))
    assert dearest < price["open"] + price["wrong"]
    assert price["same"] < price["form"] < price["kun"]
    assert price["unread"] < price["wrong"]


# --- long texts and excerpts


def test_a_long_text_is_cut_where_both_sides_agree() -> None:
    poem = "はるすぎてなつきにけらししろたへのころもほすてふあまのかぐやま"
    other = "このたびはぬさもとりあへずたむけやまもみぢのにしきかみのまにまに"
    source = (poem + other) * 12
    copy = source[:100] + source[106:400] + "あきのよの" + source[400:]
    result = collate_texts(copy, source)
    assert_tiles(result)
    assert {group.kind for group in result.groups} & SUBSTANTIVE
    assert sum(group.is_substantive for group in result.groups) <= 4


def test_an_excerpt_is_found_in_a_longer_text() -> None:
    source = notation.parse("はるすぎてなつきにけらししろたへのころもほすてふあまのかぐやま")
    result = collate(notation.parse("白妙の衣ほす"), source, extent="excerpt")
    assert result.window == (12, 22)
    assert result.is_faithful_in_wording
    assert_tiles(result)


def test_columns_are_placed_in_the_source() -> None:
    result = collate_texts("夢か／現か", "ゆめか／うつつか")
    assert [(b.copy, b.source, b.at_line_end) for b in result.breaks] == [(2, 3, True)]


@pytest.mark.parametrize(
    ("copy", "source"),
    [("思ひ□ゝ", "思ひつつ"), ("□々の花", "山々の花"), ("［　　］々の花", "山々の花")],
)
def test_a_repeat_mark_after_an_unread_sign_is_as_unread(copy: str, source: str) -> None:
    kinds = {group.kind for group in collate_texts(copy, source).groups}
    assert kinds == {"same", "unread"}


def test_a_repeat_mark_after_a_legible_sign_is_still_judged() -> None:
    groups = collate_texts("□思ひつゝ", "□思ひつる").groups
    assert any(group.is_substantive for group in groups)
