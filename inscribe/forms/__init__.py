"""From what is carved to current characters, in traced steps that can be undone.

What a character is and how two are related load when they are first asked for: most texts are
only normalised.

``steps.py`` says which sign changes into what (tables and Unicode; characters outside JIS X 0213
load their rare steps only when one turns up); ``normalising.py`` and ``rewriting.py`` do it;
``repeats.py`` knows what a mark repeats; ``siddham.py`` how seed
syllables are said; ``relations.py`` answers how two signs are related, as
the words they are (``merged.tsv``). Laws: signs + changes = text, text - changes = what was
carved, idempotent. A change with ``before == after`` is a warning; ``doubtful`` asks for a second
look. A variant: a row in ``variants.tsv``, then ``python glossary/build related_forms characters
parts look_alikes``. Pairs that sources wrongly relate: ``glossary/build/not_variants.tsv``. Never
let an editor normalise ``old_forms.tsv``: it holds compatibility ideographs. Measure:
``tests/benchmarks/normalising.py``, ``tests/benchmarks/characters.py``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.forms.alike import likeness as likeness
    from inscribe.forms.characters import (
        Character as Character,
        Readings as Readings,
        character as character,
        code_point as code_point,
        kana_of as kana_of,
        parent_of as parent_of,
        readings as readings,
    )
    from inscribe.forms.components import (
        CharacterPart as CharacterPart,
        all_parts as all_parts,
        parts as parts,
    )
    from inscribe.forms.description import Description as Description, describe as describe
    from inscribe.forms.normal import (
        Change as Change,
        NormalText as NormalText,
        carved as carved,
        carved_between as carved_between,
    )
    from inscribe.forms.normalising import (
        GAP as GAP,
        KAO as KAO,
        UNREAD as UNREAD,
        normalise as normalise,
        normalise_signs as normalise_signs,
        normalise_text as normalise_text,
    )
    from inscribe.forms.relations import (
        SIMPLIFIED_TABLE as SIMPLIFIED_TABLE,
        Relation as Relation,
        look_alikes as look_alikes,
        merged_word as merged_word,
        related as related,
        relation as relation,
        same_character as same_character,
    )
    from inscribe.forms.repeats import marks as marks
    from inscribe.forms.search import found as found
    from inscribe.forms.sequences import signs_of as signs_of
    from inscribe.forms.siddham import (
        SIDDHAM as SIDDHAM,
        is_siddham as is_siddham,
        seed as seed,
        spelt as spelt,
    )
    from inscribe.forms.steps import SIMPLIFIED as SIMPLIFIED
else:
    __getattr__ = late.door(
        __name__,
        {
            "alike": "likeness",
            "characters": "Character Readings character code_point kana_of parent_of readings",
            "components": "CharacterPart all_parts parts",
            "description": "Description describe",
            "normal": "Change NormalText carved carved_between",
            "normalising": "GAP KAO UNREAD normalise normalise_signs normalise_text",
            "relations": (
                "Relation SIMPLIFIED_TABLE look_alikes merged_word related relation same_character"
            ),
            "repeats": "marks",
            "search": "found",
            "sequences": "signs_of",
            "siddham": "SIDDHAM is_siddham seed spelt",
            "steps": "SIMPLIFIED",
        },
    )
