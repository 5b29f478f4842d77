"""Results laid out for people and programs. No logic of the trade.

Rooms: ``terminal``, ``entries``, ``collations``; here only what several share: ``phrases`` (a line
of Latin letters by phrases) and ``space_words`` (the space account in words).

Signs are printed with ``notation.printed`` (a kana's parent as the transcriber wrote it), never
cut, and measured for a terminal with ``report/width.py``. LIDO and TEI hand on what an inscription
names as named there (``report/named.py``): an element that would attribute says that it does not.
``tests/outside`` holds both against their schemas, which lie in ``../shared/schemas`` or where
``INSCRIBE_SCHEMAS`` says (lxml, and jing for EpiDoc; without them the tests say why they pass
over). A further mark of the notation in TEI: ``tei/edition.py``, ``tei/legend.py`` and, the
inverse, ``record/tei/edition.py``; the law in ``tests/test_tei.py`` finds what is forgotten.

A document is ``docx_*``: styles by name (``docx_sheet``), the drawing as a metafile
(``drawing/metafile.py``). Manifests and linked data: ``report/linked``. A sentence in Japanese: a
row in ``explanations.tsv``, ``{a}`` for what is quoted. Pictures: ``record/reading/inside.py``
reads them, ``report/picturing.py`` cuts them out (with pillow; else the page does). Checked by
hand, not in the tests: axe-core and vnu-jar (npm) over a site.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.concept_ids import concepts as concepts
    from inscribe.report.joined import joined_entries as joined_entries
    from inscribe.report.named import (
        AS_INSCRIBED as AS_INSCRIBED,
        NO_ATTRIBUTION as NO_ATTRIBUTION,
        SIGNER as SIGNER,
        Person as Person,
        dates_of as dates_of,
        places_named as places_named,
        signatures as signatures,
        signers as signers,
    )
    from inscribe.report.parents import with_parents as with_parents
    from inscribe.report.phrases import phrased as phrased
    from inscribe.report.picturing import (
        ShownPicture as ShownPicture,
        service_address as service_address,
        shown_picture as shown_picture,
    )
    from inscribe.report.space_words import (
        Common as Common,
        chance_said as chance_said,
        common as common,
        plate_said as plate_said,
        reasons_said as reasons_said,
        verdict_said as verdict_said,
    )
    from inscribe.report.style import Style as Style, load as load
    from inscribe.report.widths import width as width
    from inscribe.report.witnesses_said import (
        WITNESS_COLUMNS as WITNESS_COLUMNS,
        apparatus_lines as apparatus_lines,
        followed as followed,
        place_row as place_row,
        printed_lines as printed_lines,
        where_in as where_in,
        witness_row as witness_row,
    )
    from inscribe.report.xml import (
        XML_ID as XML_ID,
        XML_LANG as XML_LANG,
        add as add,
        append_text as append_text,
        document as document,
        identifier as identifier,
        safe as safe,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "concept_ids": "concepts",
            "joined": "joined_entries",
            "named": "AS_INSCRIBED NO_ATTRIBUTION SIGNER Person dates_of places_named "
            "signatures signers",
            "parents": "with_parents",
            "phrases": "phrased",
            "picturing": "ShownPicture service_address shown_picture",
            "space_words": "Common chance_said common plate_said reasons_said verdict_said",
            "style": "Style load",
            "widths": "width",
            "witnesses_said": (
                "WITNESS_COLUMNS apparatus_lines followed place_row printed_lines where_in "
                "witness_row"
            ),
            "xml": "XML_ID XML_LANG add append_text document identifier safe",
        },
    )
