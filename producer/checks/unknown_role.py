"""A role that is almost one we know is probably that one.

A parameter without a known role is legal: it is shown and checked for its range, and nothing is claimed of its effect.
So a slip of the pen in a role says nothing and costs everything: its rules, its place in the guide, its checks. Only a
note, and only where a role of the rule table is close.

Found:

    # garages/grand-sedan.yaml
    parameters:
      cross_weight: { page: ballast, name: Cross weight, role: weight.corss, unit: "%", min: 46, max: 56, step: 0.5 }
                                                               ^^^^^^^^^^^^

Found:

    # garages/grand-sedan.yaml
    parameters:
      spring:
        page: suspension
        name: spring
        role: springs
              ^^^^^^^
        unit: lb/in
        corners: { lf: { min: 300, max: 1300, step: 25 }, rf: { min: 300, max: 1300, step: 25 } }

Silent:

    # garages/grand-sedan.yaml
    parameters:
      cross_weight: { page: ballast, name: Cross weight, role: weight.cross, unit: "%", min: 46, max: 56, step: 0.5 }
      radio: { page: driveline, name: Radio channel, role: radio, min: 1, max: 9, step: 1 }
      mirror: { page: driveline, name: Mirror, min: 1, max: 9, step: 1 }
"""

from __future__ import annotations

from collections.abc import Iterator
from difflib import get_close_matches

from producer.basics.finding import Finding, Severity
from producer.handling.rules_table import RULES
from producer.model.garage import Garage
from producer.model.library import Library
from producer.model.words import CORNERS, ENDS

CODES = {"unknown-role": Severity.NOTE}
_CLOSE = 0.8


def check_garage(library: Library, garage: Garage) -> Iterator[Finding]:  # noqa: ARG001 - every check is called alike
    """Every parameter's role."""
    known = _roles()
    for name, parameter in garage.parameters.items():
        role = parameter.role
        if role is None or role in known:
            continue
        near = get_close_matches(role, known, 1, _CLOSE)
        if near:
            place = garage.place("parameters", name, "role")
            message = f"no rule is known for the role '{role}' of {parameter.name}"
            hint = f"did you mean '{near[0]}'? As it stands nothing is claimed of what it does"
            yield Finding("unknown-role", Severity.NOTE, place, message, hint, garage.where("parameters", name, "role"))


def _roles() -> list[str]:
    """The roles as a garage writes them: without the corner or end."""
    written = (role.rsplit(".", 1)[0] if role.rsplit(".", 1)[-1] in {*CORNERS, *ENDS} else role for role in RULES)
    return sorted(set(written))
