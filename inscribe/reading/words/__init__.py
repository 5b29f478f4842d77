"""What a reading is made of: words, tokens that know their signs, and what a person has settled.

In reading order: ``tokens`` (words and ranked readings) and ``results`` (what the reading stage
hands on), ``pieces`` (a word as MeCab hands it back), ``features`` (words made of what MeCab
prints), ``assembling`` (from words to an interpretation), ``marks`` (gaps, monograms and seals
between words), ``overrides`` (readings a person has settled), ``signature_words`` (the words of
formulas).

``assembling.py`` makes tokens (when they are asked for) and doubts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.words.assembling import (
        InscribedText as InscribedText,
        WordsOf as WordsOf,
        carved_text as carved_text,
        doubts_of_forms as doubts_of_forms,
        has_note as has_note,
        interpretation as interpretation,
        shown as shown,
        tokens_of as tokens_of,
    )
    from inscribe.reading.words.chances import (
        chance as chance,
        chances_of as chances_of,
        together as together,
    )
    from inscribe.reading.words.compounds import (
        compounds_of as compounds_of,
        joined as joined,
    )
    from inscribe.reading.words.conjugating import causative as causative
    from inscribe.reading.words.counting import counted as counted
    from inscribe.reading.words.features import (
        AS_SPELLED as AS_SPELLED,
        OKURIGANA_LEFT_OUT as OKURIGANA_LEFT_OUT,
        UNREAD_SIGNS as UNREAD_SIGNS,
        VOICING_NOT_MARKED as VOICING_NOT_MARKED,
        beat_of_entry as beat_of_entry,
        unidic_piece as unidic_piece,
        unknown_piece as unknown_piece,
        unread_piece as unread_piece,
        verse_piece as verse_piece,
    )
    from inscribe.reading.words.grammar import (
        gloss_of_auxiliary as gloss_of_auxiliary,
        grammar_of as grammar_of,
    )
    from inscribe.reading.words.lexical import SignatureWord as SignatureWord
    from inscribe.reading.words.marks import (
        MARK as MARK,
        has_legible as has_legible,
        marks_as_words as marks_as_words,
        signs_alone as signs_alone,
        words_around_marks as words_around_marks,
        words_with_repeats as words_with_repeats,
    )
    from inscribe.reading.words.naming import MayName as MayName
    from inscribe.reading.words.overrides import (
        OverrideLike as OverrideLike,
        applying as applying,
        part_of_speech as part_of_speech,
        settled_part as settled_part,
        settled_proposal as settled_proposal,
        settled_signature as settled_signature,
        span_of as span_of,
        still_open as still_open,
        why_settled as why_settled,
        without_reasons as without_reasons,
    )
    from inscribe.reading.words.pieces import (
        LATER as LATER,
        VOICED_AS_SECOND as VOICED_AS_SECOND,
        Beat as Beat,
        ReadWord as ReadWord,
        beat_of as beat_of,
        rewritten as rewritten,
        romaji_of as romaji_of,
        said_otherwise as said_otherwise,
        voiced_first as voiced_first,
    )
    from inscribe.reading.words.results import (
        CANNOT_BE_READ as CANNOT_BE_READ,
        PERSON_PARTS as PERSON_PARTS,
        Doubt as Doubt,
        Interpretation as Interpretation,
        Kind as Kind,
        Passage as Passage,
        Register as Register,
        Role as Role,
        SignaturePart as SignaturePart,
        in_order as in_order,
    )
    from inscribe.reading.words.signature_words import (
        POET as POET,
        kana_in_formulas as kana_in_formulas,
        lexicon as lexicon,
        order as order,
        order_cost as order_cost,
        words_from as words_from,
        words_of as words_of,
    )
    from inscribe.reading.words.tokens import (
        UNWEIGHED as UNWEIGHED,
        Chances as Chances,
        Proposal as Proposal,
        Token as Token,
        Weighing as Weighing,
    )
    from inscribe.reading.words.written_out import kanji_before_ending as kanji_before_ending
else:
    __getattr__ = late.door(
        __name__,
        {
            "assembling": (
                "InscribedText WordsOf carved_text doubts_of_forms has_note interpretation shown "
                "tokens_of"
            ),
            "chances": "chance chances_of together",
            "compounds": "compounds_of joined",
            "conjugating": "causative",
            "counting": "counted",
            "features": (
                "AS_SPELLED OKURIGANA_LEFT_OUT UNREAD_SIGNS VOICING_NOT_MARKED beat_of_entry "
                "unidic_piece unknown_piece unread_piece verse_piece"
            ),
            "grammar": "gloss_of_auxiliary grammar_of",
            "lexical": "SignatureWord",
            "marks": (
                "MARK has_legible marks_as_words signs_alone words_around_marks words_with_repeats"
            ),
            "naming": "MayName",
            "overrides": (
                "OverrideLike applying part_of_speech settled_part settled_proposal "
                "settled_signature span_of still_open why_settled without_reasons"
            ),
            "pieces": (
                "VOICED_AS_SECOND Beat LATER ReadWord beat_of rewritten romaji_of said_otherwise "
                "voiced_first"
            ),
            "results": (
                "CANNOT_BE_READ Doubt Interpretation Kind PERSON_PARTS Passage Register Role "
                "SignaturePart in_order"
            ),
            "signature_words": "POET kana_in_formulas lexicon order order_cost words_from words_of",
            "tokens": "Chances Proposal Token UNWEIGHED Weighing",
            "written_out": "kanji_before_ending",
        },
    )
