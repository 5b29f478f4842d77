"""What a command is given, and what its options make of it.

``options`` (those that several commands share), ``piped`` (standard input), ``arguments`` (a
record, a file, a text or standard input, told apart once), ``endings`` (a format by how its file
ends), ``guarding`` (empty ones refused), ``library`` (where the source texts
are), ``overriding`` (readings settled on the command line); then what single commands take of
these: ``reading``, ``collating``, ``measuring``, ``querying``, ``worn_places``, ``expecting``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.cli.giving.arguments import (
        Given as Given,
        expect_no_files as expect_no_files,
        given as given,
        is_piped as is_piped,
        words_given as words_given,
    )
    from inscribe.cli.giving.collating import (
        CollationTask as CollationTask,
        collation_tasks as collation_tasks,
        pair_lines as pair_lines,
        paired_tasks as paired_tasks,
        with_measured_copy as with_measured_copy,
    )
    from inscribe.cli.giving.endings import format_for as format_for
    from inscribe.cli.giving.expecting import expected_names as expected_names
    from inscribe.cli.giving.guarding import guard as guard
    from inscribe.cli.giving.library import (
        library_if_any as library_if_any,
        library_path as library_path,
        opened_library as opened_library,
    )
    from inscribe.cli.giving.measuring import (
        MeasuringTask as MeasuringTask,
        measuring_task as measuring_task,
        write_measured as write_measured,
    )
    from inscribe.cli.giving.options import (
        COUNTING as COUNTING,
        by_option as by_option,
        conventions_option as conventions_option,
        example as example,
        expect_settled_names as expect_settled_names,
        format_option as format_option,
        library_option as library_option,
        output_options as output_options,
        quiet_option as quiet_option,
        register_option as register_option,
        settled_option as settled_option,
    )
    from inscribe.cli.giving.overriding import (
        override_option as override_option,
        overrides_of as overrides_of,
        passage_option as passage_option,
        passages_of as passages_of,
        refuse_beyond as refuse_beyond,
    )
    from inscribe.cli.giving.piped import (
        STANDARD_INPUT as STANDARD_INPUT,
        read_standard_input as read_standard_input,
        read_transcription as read_transcription,
    )
    from inscribe.cli.giving.querying import (
        Asked as Asked,
        line_queries as line_queries,
        queries as queries,
    )
    from inscribe.cli.giving.reading import (
        Wished as Wished,
        interpretations as interpretations,
        read_literal as read_literal,
    )
    from inscribe.cli.giving.worn_places import places_in as places_in, seen_in as seen_in
else:
    __getattr__ = late.door(
        __name__,
        {
            "arguments": "Given expect_no_files given is_piped words_given",
            "collating": (
                "CollationTask collation_tasks pair_lines paired_tasks with_measured_copy"
            ),
            "endings": "format_for",
            "expecting": "expected_names",
            "guarding": "guard",
            "library": "library_if_any library_path opened_library",
            "measuring": "MeasuringTask measuring_task write_measured",
            "options": (
                "COUNTING by_option conventions_option example expect_settled_names "
                "format_option library_option output_options quiet_option "
                "register_option settled_option"
            ),
            "overriding": "override_option overrides_of passage_option passages_of refuse_beyond",
            "piped": "STANDARD_INPUT read_standard_input read_transcription",
            "querying": "Asked line_queries queries",
            "reading": "Wished interpretations read_literal",
            "worn_places": "places_in seen_in",
        },
    )
