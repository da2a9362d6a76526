"""Advice as other programs read it, the program's own sentences in the channel's spelling."""

from __future__ import annotations

from typing import Any

from producer.basics.spelling import spell
from producer.handling.guide_json import change_json
from producer.model.advice import Plan, Step
from producer.model.words import PHASES


def advice_json(plan: Plan, episode: str, setup: str, spelling: str) -> dict[str, Any]:
    """The shape of `advise --json`; `half_percent` is the measure that sizes are told in (balance, + tighter)."""
    return {
        "format": 1,
        "episode": episode,
        "setup": setup,
        "feels": [str(one) for one in plan.complaints],
        "changes": [_step_json(one, spelling) for one in plan.steps],
        "expected": {phase: plan.expected.get(phase) for phase in PHASES},
        "half_percent": {phase: plan.half_percent.get(phase) for phase in PHASES},
        "unanswered": [str(one.complaint) for one in plan.unanswered],
        "notes": [spell(one, spelling) for one in plan.notes],
    }


def _step_json(step: Step, spelling: str) -> dict[str, Any]:
    """A change as in the guide, the complaints that it answers, and the tyre that pays per phase."""
    pays = {phase: step.pays(phase) for phase in PHASES}
    return {**change_json(step.change, spelling), "answers": [str(one) for one in step.answers], "pays": pays}
