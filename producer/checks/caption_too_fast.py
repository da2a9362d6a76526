"""An on-screen caption stays long enough to be read.

Characters per second and words per minute come from the reading profile in channel.yaml (`captions`); each figure
gets extra time. Where several settings are spoken in one breath their captions push one another. The finding stands
at the first value that the caption shows. A warning from the script on; before it a note.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          front_weight: 50.5
          spring: { lf: 700, rf: 725, lr: 225, rr: 300 }
                                 ^^^
    # summary
    fast_captions: [[83000, "Right front spring 725 lb/in", "24 characters a second"]]

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
    ^^^^^^
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
    # summary
    fast_captions: [[3000, "Numbers for a simulation. Not advice for a real car.", "24 characters a second"]]

Silent:

    # summary
    fast_captions: []
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place
from producer.checks.written import in_setup
from producer.model.library import Case
from producer.model.summary import Summary

CODES = {"caption-too-fast": Severity.WARNING}


def check_summary(case: Case, summary: Summary) -> Iterator[Finding]:
    """Each caption that cannot be read in its time."""
    severity = Severity.WARNING if case.episode.at_least("scripted") else Severity.NOTE
    for start_ms, text, why in summary.fast_captions:
        minutes, seconds = divmod(start_ms // 1000, 60)
        shown = " ".join(text.split())
        message = f"the caption at {minutes}:{seconds:02d} is too fast to read ({why}): {shown[:80]}"
        hint = "say a little more in the reason for it, so that it stays longer"
        place, where = _about(case, shown)
        yield Finding("caption-too-fast", severity, place, message, hint, where)


def _about(case: Case, shown: str) -> tuple[Place, str]:
    """The first figure whose setting and value the caption shows, else the setups as a whole."""
    garage = case.garage
    for setup in case.episode.setups if garage else ():
        for one in in_setup(setup, garage, ("values", "changes")) if garage else ():
            if one.setting.name in shown and one.setting.figure(one.value) in shown:
                return one.place, one.where
    return case.episode.key_place("setups"), case.episode.where("setups")
