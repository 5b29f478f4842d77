"""Where what a command has to say goes, and how it is said.

``results`` (standard output, or a whole file), ``lines`` (runs over many lines, and what is said
of them at the end), ``bar`` (progress on standard error), ``voice`` (messages when it cannot go
on), ``watching`` (again whenever a file is saved).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.cli.showing.bar import progress_shown as progress_shown
    from inscribe.cli.showing.lines import (
        Show as Show,
        Tally as Tally,
        lines_of as lines_of,
        progress as progress,
        refusal as refusal,
    )
    from inscribe.cli.showing.results import (
        status_of as status_of,
        terminal_bytes as terminal_bytes,
        write_pieces as write_pieces,
        write_result as write_result,
    )
    from inscribe.cli.showing.voice import told as told, told_of_usage as told_of_usage
    from inscribe.cli.showing.watching import watch as watch
else:
    __getattr__ = late.door(
        __name__,
        {
            "bar": "progress_shown",
            "lines": "Show Tally lines_of progress refusal",
            "results": "status_of terminal_bytes write_pieces write_result",
            "voice": "told told_of_usage",
            "watching": "watch",
        },
    )
