"""A record file to a ``Record``, or all its problems at once.

``locate`` (the line of a key, asked only when there is a problem to place), ``problems``,
``inside`` (files that a record names), ``checks`` (what values must say together), ``loader``,
``surveying`` (which files of a folder are records), ``settled`` (names settled in a folder).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.record.reading.inside import (
        PictureFile as PictureFile,
        picture_file as picture_file,
    )
    from inscribe.record.reading.loader import (
        ENDLESS_KEY as ENDLESS_KEY,
        load as load,
        loads as loads,
        paths_in as paths_in,
    )
    from inscribe.record.reading.locate import Locator as Locator
    from inscribe.record.reading.settled import (
        SettledName as SettledName,
        as_settled as as_settled,
        settled_beside as settled_beside,
        settled_in as settled_in,
        settled_names as settled_names,
    )
    from inscribe.record.reading.surveying import Survey as Survey, survey as survey
else:
    __getattr__ = late.door(
        __name__,
        {
            "inside": "PictureFile picture_file",
            "loader": "ENDLESS_KEY load loads paths_in",
            "locate": "Locator",
            "settled": "SettledName as_settled settled_beside settled_in settled_names",
            "surveying": "Survey survey",
        },
    )
