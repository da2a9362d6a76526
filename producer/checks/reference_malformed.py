"""A reference in prose is a name between double braces, and nothing more.

`{{ spring.rf }}` puts the figure in, `{{ spring.rf | with_unit }}` the figure and its unit; a figure of another setup
has the setup's id before it. Nothing is computed, called or repeated in prose: what is not a name would be read out
as it stands.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    approach: |
      I wait, and with {{ spring.rf * 2 }} it would be worse.
                       ^^^^^^^^^^^^^^^^^^^
      {% for x in y %}
      ^^^^^^^^^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    approach: |
      I wait. The right front is {{ spring.rf | with_unit }}, the split {{spring.rear_split}}, {braces} are only braces.
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.prose import prose

CODES = {"reference-malformed": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every text that may hold references."""
    for text in prose(case.episode):
        if "{" not in text.text:
            continue
        from producer.render.prose import Scope, troubles

        for trouble in troubles(text.text, Scope.of(None, ())):
            if not trouble.unknown:
                place = text.place(trouble.start, trouble.end)
                hint = "only '{{ name }}' and '{{ name | with_unit }}' are filled in"
                yield Finding("reference-malformed", Severity.ERROR, place, trouble.message, hint, text.where)
