"""What the test laps of an episode say, and what one click of the garage would answer to it."""

from __future__ import annotations

from dataclasses import replace

from producer.handling.changes import change
from producer.model.guide import Change
from producer.model.library import Case
from producer.model.stints import Evidence, Stint
from producer.model.tyre_readings import TyreFinding
from producer.stints.gather import evidence


def evidence_of(case: Case) -> Evidence | None:
    """The evidence of an episode, each finding about a tyre with its change; None where there are no test laps."""
    found = evidence(case)
    if found is None:
        return None
    return replace(found, stints=tuple(_with_changes(case, one) for one in found.stints))


def _with_changes(case: Case, stint: Stint) -> Stint:
    findings = tuple(replace(one, change=_click(case, stint.setup, one)) for one in stint.tyres.findings)
    return replace(stint, tyres=replace(stint.tyres, findings=findings))


def _click(case: Case, setup: str, finding: TyreFinding) -> Change | None:
    """One click the way the finding asks; None where the garage cannot move it, or nothing is left that way."""
    sheet, way = case.sheet(setup), finding.way
    if sheet is None or way is None or finding.corner is None:
        return None
    role = f"{finding.role}.{finding.corner}"
    setting = next((one for one in sheet.garage.settings.values() if one.role == role), None)
    value = sheet.values.get(setting.address) if setting else None
    if setting is None or value is None:
        return None
    to = setting.grid.moved(value, 1 if way == "raise" else -1)
    return change(case, sheet, setting.address, to, "rule") if to is not None else None
