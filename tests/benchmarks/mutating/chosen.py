"""Which modules get faults, by subject, and which files of tests may notice them."""

READING = ("inscription", "passages", "signatures", "suspicious", "verse")
SUBJECTS = {
    "collation": ("inscribe/collation",),
    "space": ("inscribe/collation/space",),
    "dates": ("inscribe/dates",),
    "reading": tuple(f"inscribe/reading/{room}" for room in READING),
    "restoring": ("inscribe/restoring",),
    "forms": ("inscribe/forms",),
    "checks": ("inscribe/checking", "inscribe/record/reading/checks.py"),
}
TESTS = (
    "boxes", "broken_records", "check*", "chinese*", "collate_*", "dates_*",
    "division", "entry", "entry_passages", "*_answers", "sentences",
    "record_messages", "json_values", "edges", "beginnings", "weights_flip",
    "cycle_in_kana", "forms_*", "given", "historical", "index",
    "iso3602", "kanbun", "line_ends", "lines_end", "manuscript_spelling", "merged_words", "metre",
    "modern", "names", "notation*", "old_spellings", "other_documents", "output_schemas",
    "overriding",
    "passages*", "persons", "printed", "prose", "reading*", "record*", "restore*", "romanise",
    "sayings", "second_opinion", "settle*", "sign*", "space*", "sources_probability", "suspicious*",
    "surroundings", "tei", "verse_*", "witnesses", "word_groups",
)  # fmt: skip
NOT_REACHING = ("entry_tei", "entry_lido", "entry_web", "entry_formats", "glossary_build")
