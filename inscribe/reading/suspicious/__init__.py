"""Signs that are probably not what is carved: worth a second look before they are believed.

One function serves ``read`` (doubts), ``check`` (findings) and ``new`` ("look again"). A sign with
(ママ) after it has been looked at and is left alone.

In reading order: ``second_look`` (the way in), ``model``, ``marks`` (outside the conventions),
``glosses``, ``kana``, ``slips`` (look-alikes), ``pricing`` (what a change would gain).

Second looks: ``reading/suspicious/`` names what is hardly carved, for ``read``, ``check`` and
``new`` alike: ``marks`` (a row in ``outside_marks.tsv``), ``kana`` typed for kanji and back,
``glosses``, ``slips`` (kanji that look like a sign of the formulas). What depends on the text is
judged by what it costs with the other sign (``pricing``), so a formula, a date or a word that
explains a sign keeps it silent. Measure: ``tests/test_suspicious.py`` (``columns_right.tsv``,
``columns_slips.tsv``; look at odd rows).

>>> from inscribe.notation import parse
>>> from inscribe.reading.suspicious import suspicions
>>> [(each.text, each.instead) for each in suspicions(parse("露△岳作").signs)]
[('△', ('□',))]
>>> [(each.text, each.instead) for each in suspicions(parse("嶺ハ郎作").signs)]
[('ハ', ('八',))]
>>> suspicions(parse("武州住嶺暁作").signs), suspicions(parse("露△(ママ)岳作").signs)
((), ())
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.suspicious.model import Suspicion as Suspicion
    from inscribe.reading.suspicious.second_look import (
        is_plain as is_plain,
        suspicions as suspicions,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "model": "Suspicion",
            "second_look": "is_plain suspicions",
        },
    )
