"""The questions of ``inscribe new`` and ``merge`` on the terminal.

``prompting`` (a line asked for), ``saying`` (what is shown between two questions), ``offering``
(what the library offers), ``questions`` (all of them in order, the answers kept in the draft).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.cli.asking.prompting import (
        LineReader as LineReader,
        PlainLines as PlainLines,
        TypingStopped as TypingStopped,
        is_live as is_live,
        line_reader as line_reader,
    )
    from inscribe.cli.asking.questions import (
        BACK as BACK,
        NOTHING as NOTHING,
        Prompter as Prompter,
        answered as answered,
    )
    from inscribe.cli.asking.saying import HELP as HELP, say as say
else:
    __getattr__ = late.door(
        __name__,
        {
            "prompting": "LineReader PlainLines TypingStopped is_live line_reader",
            "questions": "BACK NOTHING Prompter answered",
            "saying": "HELP say",
        },
    )
