"""Measuring from a photograph: where each sign of a known inscription stands, as a proposal.

The transcription says how many columns there are and how many signs each has. The plate is found in
the picture and seen from straight above (``outline``, ``view``); strokes are told from metal
(``strokes``); columns are parted (``columns``) and each is cut into its signs (``cutting``, and
``shapes`` for the form of each), whose boxes are drawn tight (``boxes``). Pictures that cannot be
measured are refused (``findings``).

Everything here needs the libraries of the extra ``photo``; nothing else of the program does.

In the order of the work: ``outline`` (four clear straight edges of the plate's proportions;
``edges`` makes them exact and tells a bent plate; ``lens`` weighs each barrel of the lens),
``view`` (mm to pixels and back), ``strokes`` (what changes fast is ink; what repeats all over the
plate is weakened in its spectrum first), ``columns``, ``rhythm`` (what is expected of each sign:
``sign_shapes.tsv``, rebuilt by ``glossary/build/sign_shapes.py`` from KanjiVG), ``cutting``
(dynamic programming over every top and bottom; forwards and backwards for the certainties),
``boxes``, ``certainty``, ``findings`` (pictures that are refused; ``glare`` tells glare from bright
metal), ``proposal`` (all of it). ``model``, ``accepting`` need no library for pictures. Constants
were set on ``look_a``, ``look_b``, ``look_c`` and ``look_e`` of the benchmark, never on ``look_d``
or ``look_f``. Accepted measurements go into the record by ``record/writing/amending.py``, which
reads what it wrote before it hands it back. Measure: ``tests/benchmarks/measuring.py [--plates N]
[--look look_b] [--flaws | --space]``; its head names the fonts it needs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.measuring.accepting import (
        accepted as accepted,
        photograph as photograph,
        repeated as repeated,
    )
    from inscribe.measuring.model import (
        Asked as Asked,
        Corners as Corners,
        Cut as Cut,
        Measured as Measured,
        MeasuredColumn as MeasuredColumn,
        MeasuredSign as MeasuredSign,
    )
    from inscribe.measuring.picture import Picture as Picture, read_picture as read_picture
    from inscribe.measuring.proposal import measure as measure
    from inscribe.measuring.shown import outlines as outlines, plate_as_jpeg as plate_as_jpeg
else:
    __getattr__ = late.door(
        __name__,
        {
            "accepting": "accepted photograph repeated",
            "model": "Asked Corners Cut Measured MeasuredColumn MeasuredSign",
            "picture": "Picture read_picture",
            "proposal": "measure",
            "shown": "outlines plate_as_jpeg",
        },
    )
