"""What a poem says: the reading that keeps the metre at the least cost.

In reading order: ``reader`` (the way to the best reading), ``voicing`` (is it marked), ``metre``
(what a metre costs), ``tagger`` (MeCab with the dictionary of verse), ``scansion`` (words laid on
a metre), ``lattice`` (the search), ``settled`` (what a person has settled), ``alongside`` and
``by_source`` (a copy and its source), ``usual_signs`` (other forms of a character),
``alternatives`` (of one word; ``archaic`` those of older verse), ``rivals`` (of the whole),
``weighing`` (how sure), ``interpreting``; ``open_place`` (every sign tried in one place).

Verse: MeCab's best path if it keeps the metre, else one word changed, else a stretch of the
lattice searched, else all of it (``lattice.py``: state = word before, phrase, morae; cost =
MeCab's and the metre's, 700 being a factor e of likelihood).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.verse.alternatives import swaps as swaps
    from inscribe.reading.verse.by_source import (
        READ_BY_SOURCE as READ_BY_SOURCE,
        is_poem as is_poem,
        read_by_source as read_by_source,
        stretch_copied as stretch_copied,
    )
    from inscribe.reading.verse.interpreting import verse_interpretation as verse_interpretation
    from inscribe.reading.verse.lattice import Node as Node
    from inscribe.reading.verse.metre import (
        PARTS as PARTS,
        Metre as Metre,
        pattern_of as pattern_of,
    )
    from inscribe.reading.verse.open_place import OpenPlace as OpenPlace
    from inscribe.reading.verse.reader import (
        read_verse as read_verse,
        words_without_metre as words_without_metre,
    )
    from inscribe.reading.verse.readings import VerseReading as VerseReading, path_cost as path_cost
    from inscribe.reading.verse.scansion import fitted_phrases as fitted_phrases
    from inscribe.reading.verse.tagger import (
        readings_of as readings_of,
        verse_connections as verse_connections,
        verse_lattice as verse_lattice,
        verse_spans as verse_spans,
        verse_words as verse_words,
    )
    from inscribe.reading.verse.voicing import (
        has_voiced_kana as has_voiced_kana,
        marks_voicing as marks_voicing,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "alternatives": "swaps",
            "by_source": "READ_BY_SOURCE is_poem read_by_source stretch_copied",
            "interpreting": "verse_interpretation",
            "lattice": "Node",
            "metre": "Metre PARTS pattern_of",
            "open_place": "OpenPlace",
            "reader": "read_verse words_without_metre",
            "readings": "VerseReading path_cost",
            "scansion": "fitted_phrases",
            "tagger": "readings_of verse_connections verse_lattice verse_spans verse_words",
            "voicing": "has_voiced_kana marks_voicing",
        },
    )
