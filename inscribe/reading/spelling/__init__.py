"""Which letters say a word: kana, Latin letters, old and current spelling, morae.

Asked with words or stretches of kana; answers with other spellings of the same sounds. In reading
order: ``shape`` (how much of a text is kana), ``mora_count``, ``sounds`` (kana folded to what they
may stand for), ``historical`` (old spelling to current, rule by rule), ``backwards`` (current to
old), ``letters`` (kana to Latin letters), ``division`` (words to a line of Latin letters).

Latin letters: ``spelling/letters.py`` (kana to Hepburn and ISO 3602), ``spelling/division.py``;
tables ``romanisation.tsv``, ``word_division.tsv``. ALA-LC with n before b, m, p; classical endings
are joined to the verb. Historical spelling: ``historical.py``, a function a rule, each change a
step with its reason; exceptions in ``historical_words.tsv``: add a row there before adding a rule.
Current spelling of prose: ``spelling/backwards.py`` runs the rules backwards, ``old_forms.py``
makes an entry's forms, ``prose/rows.py`` the rows for MeCab, ``prose/current.py`` decodes.
Kaeriten: ``chinese/marks.py``, ``chinese/order.py``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.spelling.backwards import Option as Option, old_spellings as old_spellings
    from inscribe.reading.spelling.division import (
        KanaWord as KanaWord,
        romanise as romanise,
        romanise_word as romanise_word,
        separator as separator,
        stands_apart as stands_apart,
    )
    from inscribe.reading.spelling.historical import modern_kana as modern_kana
    from inscribe.reading.spelling.letters import (
        hepburn as hepburn,
        hiragana as hiragana,
        iso3602 as iso3602,
        spoken as spoken,
        units as units,
    )
    from inscribe.reading.spelling.mora_count import (
        begins_with_vowel as begins_with_vowel,
        morae as morae,
    )
    from inscribe.reading.spelling.shape import (
        KANA as KANA,
        is_kanji_only as is_kanji_only,
        kana_share as kana_share,
    )
    from inscribe.reading.spelling.sounds import (
        OPEN as OPEN,
        ROWS as ROWS,
        SMALL as SMALL,
        as_within as as_within,
        exchanged as exchanged,
        first_letters as first_letters,
        fits as fits,
        fold as fold,
        is_kana as is_kana,
        is_kanji as is_kanji,
        letter as letter,
        long_spellings as long_spellings,
        patterns as patterns,
        starts_alike as starts_alike,
        voiceless as voiceless,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "backwards": "Option old_spellings",
            "division": "KanaWord romanise romanise_word separator stands_apart",
            "historical": "modern_kana",
            "letters": "hepburn hiragana iso3602 spoken units",
            "mora_count": "begins_with_vowel morae",
            "shape": "KANA is_kanji_only kana_share",
            "sounds": (
                "OPEN ROWS SMALL as_within exchanged first_letters fits fold is_kana is_kanji "
                "letter long_spellings patterns starts_alike voiceless"
            ),
        },
    )
