"""Several dated inscriptions of one object."""

from inscribe.dates import compared, resolve


def test_the_earliest_inscription_bounds_the_object() -> None:
    found = compared([resolve("安政二年八月"), resolve("嘉永六年八月")])
    assert str(found.not_after) == "1853-10-02"
    assert any("inscription 2 is earlier" in each for each in found.statements)


def test_two_ages_narrow_a_bare_sexagenary_year() -> None:
    found = compared([resolve("嘉永六年行年七十"), resolve("乙卯行年七十二")])
    assert [reading.year for reading in found.readings] == [1853, 1855]
    assert (found.agreement, found.birth_years) == ("agrees", (1784,))
    assert found.readings[1].suggestions == ()


def test_ages_that_cannot_be_one_carvers_are_a_conflict() -> None:
    found = compared([resolve("嘉永六年行年七十"), resolve("安政二年行年七十")])
    assert found.agreement == "conflict"
    assert any("cannot be one carver's" in each for each in found.statements)


def test_dates_that_overlap_may_be_of_one_time() -> None:
    found = compared([resolve("嘉永六年"), resolve("嘉永六年八月")])
    assert found.statements == ("inscription 1 and inscription 2 may be of the same time",)


def test_a_bare_sexagenary_year_is_set_against_a_certain_one() -> None:
    (statement,) = compared([resolve("癸丑"), resolve("文政八年")]).statements
    assert "1793" in statement
    assert "1853" in statement


def test_an_age_without_a_date_is_set_against_each_date() -> None:
    found = compared([resolve("行年七十三翁"), resolve("安政二年")])
    assert "born in 1783" in found.statements[0]


def test_nothing_follows_from_one_age_alone() -> None:
    found = compared([resolve("行年七十三翁")])
    assert (found.statements, found.not_after, found.agreement) == ((), None, "unchecked")


def test_inscriptions_are_called_by_the_names_given() -> None:
    found = compared([resolve("嘉永六年"), resolve("嘉永六年八月")], ["the front", "the back"])
    assert found.statements == ("the front and the back may be of the same time",)


def test_a_known_year_of_birth_dates_an_age_and_narrows_a_bare_year() -> None:
    found = compared([resolve("癸丑行年七十")], born=1784)
    assert [reading.year for reading in found.readings] == [1853]
    (statement,) = compared([resolve("行年七十")], born=1784).statements
    assert "was 70 in 1853" in statement


def test_a_known_year_of_birth_may_contradict_an_age() -> None:
    found = compared([resolve("嘉永六年行年七十")], born=1799)
    assert found.agreement == "conflict"
    assert "known otherwise: 1799" in found.statements[0]


def test_ages_that_leave_two_years_name_both() -> None:
    between = (1700, 1860)
    found = compared([resolve("乙卯行年七十二", between), resolve("癸丑行年七十")])
    assert found.agreement == "agrees"
    one, other = found.readings
    assert (one.year, other.year) == (None, None)
    assert [each.year for each in other.candidates] == [each.year - 2 for each in one.candidates]
    assert len(other.suggestions) == len(other.candidates) == 3
    narrow = compared([resolve("乙卯行年七十二", (1740, 1860)), resolve("癸丑行年七十")])
    assert len(narrow.readings[1].suggestions) == len(narrow.readings[1].candidates) == 2
    assert narrow.readings[1].year is None


def test_of_a_year_with_two_eras_the_one_in_force_in_the_month_is_told() -> None:
    spring, autumn = (resolve(f"戊辰{month}月", (1860, 1870)) for month in "三十")
    assert (spring.era, spring.year_of_era) == ("慶応", 4)
    assert (autumn.era, autumn.year_of_era) == ("明治", 1)


def test_a_notebook_shows_what_to_consider() -> None:
    table = resolve("嘉永六年癸巳")._repr_html_()
    assert "<th>consider</th><td>read 癸丑 (1853) for 癸巳" in table
