"""What days there were: eras, sexagenary years and pairs, lunisolar months and days."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.dates.calendar.cycle import (
        BRANCHES as BRANCHES,
        STEMS as STEMS,
        CycleSign as CycleSign,
        day_index as day_index,
        index_of as index_of,
        pair as pair,
        pair_of_year as pair_of_year,
        signs as signs,
        year_index as year_index,
        years_of as years_of,
    )
    from inscribe.dates.calendar.eras import (
        Era as Era,
        after as after,
        by_name as by_name,
        of_year as of_year,
    )
    from inscribe.dates.calendar.lunisolar import (
        FIRST_YEAR as FIRST_YEAR,
        LAST_YEAR as LAST_YEAR,
        LunarDay as LunarDay,
        Month as Month,
        days_of as days_of,
        is_tabulated as is_tabulated,
        leap_month as leap_month,
        may_be_longer as may_be_longer,
        month_of as month_of,
        months_of as months_of,
        of_day as of_day,
        to_gregorian as to_gregorian,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "cycle": (
                "BRANCHES CycleSign STEMS day_index index_of pair "
                "pair_of_year signs year_index years_of"
            ),
            "eras": "Era after by_name of_year",
            "lunisolar": (
                "FIRST_YEAR LAST_YEAR LunarDay Month days_of is_tabulated leap_month "
                "may_be_longer month_of months_of of_day to_gregorian"
            ),
        },
    )
