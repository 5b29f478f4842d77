"""The dictionary of classical verse: what is in it, and how it is made from the tables.

In reading order: ``dictionary`` (where it is), ``building`` (how it is put together), ``paradigms``
and ``verbs`` (conjugation), ``stems`` (weighed against the tables), ``nouns``, ``particles``,
``vocabulary`` (words drawn from UniDic),
``shortened`` (forms cut short), ``borrowed`` (in Chinese order, with borrowed endings),
``compounds`` (nouns that are no native words, and later ones), ``counted`` (numbers),
``groups`` (entries of several words), ``mixed_spellings``, ``connections`` (what may follow what).

The dictionary of verse is built once into the cache by ``lexicon/building.py`` from unidic-lite's
sys.dic (``unidic.py``), conjugated by classical paradigm, with the tables laid over; it is rebuilt
when a table or the code changes. ``mecab/compiling.py`` keeps the cache (``INSCRIBE_CACHE`` or the
system's cache folder; atomic, locked, a temporary folder where it cannot be written).

- A word: a row in ``verse_nouns.tsv``, ``verse_places.tsv``, ``verse_verbs.tsv`` (stem before the
  inflected kana, and class) or ``verse_adjectives.tsv``. Put the commonest reading of a spelling
  first; spell 々 out as well. Write new poems down first, measure, then add what is missing, so
  that the first figure stays honest.
- Which reading is likelier: ``verse_readings.tsv``; how common: ``verse_frequencies.tsv``,
  ``verse_common_words.tsv``.
- Grammar: ``verse_connections.tsv`` (what may follow what; a cost is held between two bounds where
  a rule is kept), ``paradigms.tsv`` (endings), ``verse_particles.tsv``. 難 as a suffix is of class
  ク接尾 (``verse_adjectives.tsv``).
- An entry of several words (夏来, には) keeps one cost and shows its words: ``verse_groups.tsv``,
  ``lexicon/groups.py``.
- Manuscripts: ``verse.marks_voicing`` compares the best path with and without unmarked voicing;
  ``mixed_spellings.py`` puts one part of a compound into kana or cuts it short; 梅花 for 梅の花 is
  a row in ``verse_short_forms.tsv``; a sign borrowed for a particle (社, 覧) a row in
  ``verse_particles.tsv`` with a frequency.
- Nouns in kanji that are no native words (孔雀, 元禄, 煙草): ``compounds.py`` takes UniDic's own;
  beside a native reading they cost more unless ``verse_readings.tsv`` ranks them, and in tanka
  ``metre.FOREIGN`` more (the search then runs anew).
- Forms cut short (鳴 for 鳴く): ``shortened.py``; which of 鳴く, 鳴る is the commoner:
  ``verse_common_words.tsv``, column ``written``.
- Of ``verse_phrases.tsv`` only pillow words are loaded: lines of verse must be read, not known by
  heart.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.lexicon.dictionary import (
        FEATURES as FEATURES,
        gathering as gathering,
        prepare_for as prepare_for,
        verse_dictionary as verse_dictionary,
    )
    from inscribe.reading.lexicon.paradigms import (
        conjugation_named as conjugation_named,
        inflections as inflections,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "dictionary": "FEATURES gathering prepare_for verse_dictionary",
            "paradigms": "conjugation_named inflections",
        },
    )
