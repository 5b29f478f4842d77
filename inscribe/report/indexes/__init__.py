"""Indexes, and translations found again, laid out: text, Markdown, HTML, JSON, CSV."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.indexes.data import (
        indexes_as_csv as indexes_as_csv,
        indexes_as_json as indexes_as_json,
        translations_as_csv as translations_as_csv,
        translations_as_json as translations_as_json,
    )
    from inscribe.report.indexes.page import indexes_as_html as indexes_as_html
    from inscribe.report.indexes.prose import (
        indexes_as_markdown as indexes_as_markdown,
        indexes_as_text as indexes_as_text,
        translations_as_text as translations_as_text,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "data": ("indexes_as_csv indexes_as_json translations_as_csv translations_as_json"),
            "page": "indexes_as_html",
            "prose": "indexes_as_markdown indexes_as_text translations_as_text",
        },
    )
