"""What a signature says: its parts, and its readings in Japanese order, ranked.

``signed.py`` tells whether a short text is a signature. ``pieces`` (names: ``names``) prices
everything a stretch could be; ``split`` finds the cheapest divisions, ``whole`` prices what their
parts are to one another; ``formulas``, ``scope`` and
``spans`` turn Chinese order into Japanese (``objects``: kore o, kore ni); ``options`` reads each
piece; ``reader`` ranks; ``surname_cuts``: words that cut a surname apart. Spaces of a transcriber
are ``InscribedText.cuts``: pieces hardly run over one, and the signature of a
poem may begin there. To add a word: a row in ``signature_words.tsv`` (its class must occur in
``signature_order.tsv``); a formula: ``signature_formulas.tsv``; a title, town or subject: its
table; what is made of parts (謹刻, 大炊助, 貴需, 五枚): the part in ``signature_parts.tsv``, the
rule in
``signature_compounds.tsv``. A verb or subject that no table has: ``signatures/unlisted.py``. A
poet quoted: ``passages/poets.tsv``; a work: ``works.tsv``. Measure:
``tests/benchmarks/usual.py``. How a character is read in art names is changed in
``name_preferences.tsv``, never in the counted ``name_elements.tsv`` and ``name_signs.tsv``
(built: men's names of ENAMDICT, with KANJIDIC2's readings for what is in none; what stands beside
a name says whether it is read as a given or as a pen name: ``units.with_sorts_of_names``) (place
``stem``: a first sign usual in everyday names, 甚七); a surname's usual reading in
``surname_preferences.tsv``. A maker's own reading belongs in the user's ``names.tsv``, which
always wins; what ENAMDICT has (``name_dictionary.tsv``, built) widens dividing and adds readings,
and ranks none; so do readings settled in records, where ``--records FOLDER`` names them
(``record/reading/settled.py``). A formula before a name or a verb goes on (naraite), else it ends
(narau). Legends of seals: ``seals.py``, ``seal_endings.tsv``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.signatures.dates import dated_pieces as dated_pieces
    from inscribe.reading.signatures.full_names import (
        NameLookUp as NameLookUp,
        full_readings as full_readings,
        look_up as look_up,
    )
    from inscribe.reading.signatures.likelihood import (
        is_all_formula as is_all_formula,
        is_quoted as is_quoted,
        signature_likelihood as signature_likelihood,
    )
    from inscribe.reading.signatures.names import is_kanji as is_kanji
    from inscribe.reading.signatures.pieces import (
        UNEXPLAINED as UNEXPLAINED,
        SignaturePiece as SignaturePiece,
        words_over as words_over,
    )
    from inscribe.reading.signatures.reader import read_signature as read_signature
    from inscribe.reading.signatures.signed import (
        is_half_in_kana as is_half_in_kana,
        is_signature as is_signature,
        may_be_signature as may_be_signature,
    )
    from inscribe.reading.signatures.split import (
        USUAL_SIGN as USUAL_SIGN,
        CheapestDivisions as CheapestDivisions,
        SignatureDivision as SignatureDivision,
        divisions as divisions,
        least_cost as least_cost,
    )
    from inscribe.reading.signatures.whole import is_joint as is_joint
else:
    __getattr__ = late.door(
        __name__,
        {
            "dates": "dated_pieces",
            "full_names": "NameLookUp full_readings look_up",
            "likelihood": "is_all_formula is_quoted signature_likelihood",
            "names": "is_kanji",
            "pieces": "SignaturePiece UNEXPLAINED words_over",
            "reader": "read_signature",
            "signed": "is_half_in_kana is_signature may_be_signature",
            "split": "USUAL_SIGN SignatureDivision CheapestDivisions divisions least_cost",
            "whole": "is_joint",
        },
    )
