"""Indexes as one HTML page: no scripts, nothing fetched, every word of the data escaped."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from inscribe.cautions import caution
from inscribe.report import safe
from inscribe.report.indexes.prose import TITLES, places_of

if TYPE_CHECKING:
    from inscribe.indexing import IndexHeading, IndexKind

_PAGE = """<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Indexes of {{ records }} records</title>
<style>
body { font-family: serif; max-width: 60rem; margin: 2rem auto; padding: 0 1rem; }
dt { font-weight: bold; margin-top: .5rem; }
dd { margin-left: 1.5rem; }
nav a { margin-right: 1rem; }
</style>
</head>
<body>
<h1>Indexes of {{ records }} records</h1>
<nav>{% for kind in indexes %}<a href="#{{ kind }}">{{ titles[kind] }}</a>{% endfor %}</nav>
{% for kind, headings in indexes.items() %}
<section id="{{ kind }}">
<h2>{{ titles[kind] }}</h2>
<dl>
{% for heading in headings %}
<dt>{% if heading.romaji %}<i>{{ heading.romaji }}</i> {% endif %}
<span lang="ja">{{ heading.text }}</span>{% if heading.note %} ({{ heading.note }}){% endif %}</dt>
{% for form in heading.forms %}
<dd>{% if form.text != heading.text %}<span lang="ja">{{ form.text }}</span>: {% endif %}
{{ places_of(form.where) }}</dd>
{% endfor %}
{% endfor %}
</dl>
</section>
{% endfor %}
{% if "persons" in indexes %}<p>{{ caution }}</p>{% endif %}
</body>
</html>
"""


def indexes_as_html(found: Mapping[IndexKind, Sequence[IndexHeading]], records: int) -> str:
    """Return a page with a section for each index."""
    from jinja2 import Environment, StrictUndefined

    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True)
    page = environment.from_string(_PAGE).render(
        indexes=found,
        records=records,
        titles=TITLES,
        places_of=places_of,
        caution=caution("attribution"),
    )
    return safe(page)
