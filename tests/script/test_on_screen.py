"""What stands on the screen, and when."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pytest

from producer.captions.profile import reading_profile
from producer.captions.settling import settle
from producer.captions.speed import needed_ms, too_fast
from producer.model.cue import Cue
from producer.model.dossier import ConditionLine
from producer.script.on_screen import on_screen, short_name
from tests.script.conftest import CHANNEL, VALUES, Told

Tell = Callable[..., Told]
LONG = "- setup: long\n  name: Long run\n  based_on: short\n  changes: { cross_weight: 52.5, spring: { rf: 725 } }\n"
CONDITIONS = (ConditionLine("Tyre use", "hard (me, field)"), ConditionLine("Speed", "double"))


def texts(told: Told) -> list[str]:
    return [" / ".join(one.lines) for one in on_screen(told.dossier())]


def find(told: Told, text: str) -> Cue:
    return next(one for one in on_screen(told.dossier()) if " / ".join(one.lines) == text)


def test_everything_in_order(tell: Tell) -> None:
    told = tell(more=LONG, top="tested_with: '1.0'", conditions=CONDITIONS)
    assert texts(told) == [
        "Test Oval / Test Car",
        "Tire use: hard (me, field) / Speed: double",
        "Version 1.0",
        "Short run",
        "Cross weight 52.0\u00a0%",
        "Front weight 50.5\u00a0%",
        "Camber LF 4.00, RF \u22123.50\u00a0deg",
        "Spring LF 725, RF 700\u00a0lb/in",
        "Spring LR 225, RR 300\u00a0lb/in",
        "Rear spring split 75\u00a0lb/in",
        "Track bar left 9.50, right 10.00\u00a0in",
        "Compression LF 4, RF 5",
        "Rebound LF 6, RF 7",
        "Final drive 3.90:1",
        "Long run",
        "Cross weight 52.5\u00a0%, was 52.0",
        "RF spring 725\u00a0lb/in, was 700",
        "Numbers for a simulation. Not advice for a real car.",
    ]


def test_a_value_comes_up_when_it_is_said_and_stays_over_its_reason(tell: Tell) -> None:
    told = tell("- { for: spring.rf, because: It turns and it turns and it turns and it turns and it turns. }")
    laid = told.dossier().timeline
    spoken = {
        told.narration.sections[span.section].passages[span.passage].text: span for span in laid.spans
    }  # fmt: skip
    lead, why = spoken["The right front, 700."], spoken[
        "It turns and it turns and it turns and it turns and it turns."
    ]  # fmt: skip
    cue = find(told, "RF spring 700\u00a0lb/in")
    assert lead.start_ms <= cue.start_ms <= lead.start_ms + 2000
    assert cue.end_ms == why.end_ms


def test_the_rear_pair_waits_for_its_words(tell: Tell) -> None:
    told = tell()
    front, rear = find(told, "Spring LF 725, RF 700\u00a0lb/in"), find(told, "Spring LR 225, RR 300\u00a0lb/in")
    assert rear.start_ms - front.start_ms > 4000
    assert front.end_ms <= rear.start_ms


def test_four_short_figures_share_a_board_the_front_above(tell: Tell) -> None:
    from tests.script.conftest import GARAGE

    four = GARAGE.replace(
        "corners: { lf: { min: 1, max: 9, step: 1 }, rf: { min: 1, max: 9, step: 1 } }\n  rebound",
        "corners: { lf: { min: 1, max: 9, step: 1 }, rf: { min: 1, max: 9, step: 1 },"
        " lr: { min: 1, max: 9, step: 1 }, rr: { min: 1, max: 9, step: 1 } }\n  rebound",
    )
    told = tell(garage=four, values=VALUES.replace("bump: { lf: 4, rf: 5 }", "bump: { lf: 4, rf: 5, lr: 3, rr: 2 }"))
    assert "Compression LF 4, RF 5 / LR 3, RR 2" in texts(told)


@pytest.mark.parametrize(
    ("address", "name"),
    [
        ("spring.rf", "RF spring"),
        ("track_bar.left", "Track bar, left end"),
        ("cross_weight", "Cross weight"),
        ("spring.rear_split", "Rear spring split"),
    ],
)
def test_a_short_name(tell: Tell, address: str, name: str) -> None:
    assert short_name(tell().case.sheets[0], address) == name


def test_an_untested_setup_says_so(tell: Tell) -> None:
    assert "Short run, untested" in texts(tell(first="name: Short run\ntested: false"))


@pytest.mark.parametrize("profile", ["web", "broadcast"])
@pytest.mark.parametrize("rate", ["130", "180"])
def test_settled_they_never_overlap_and_can_be_read(tell: Tell, profile: str, rate: str) -> None:
    channel = CHANNEL.replace("150", rate) + f"captions: {{ profile: {profile} }}\n"
    told = tell(more=LONG, conditions=CONDITIONS, channel=channel)
    limits = reading_profile(told.channel.captions)
    cues = settle(on_screen(told.dossier()), limits)
    assert all(one.end_ms <= other.start_ms for one, other in pairwise(cues))
    assert [(one.text, why) for one in cues if (why := too_fast(one, limits))] == []
    assert all(len(line) <= limits.characters_per_line for one in cues for line in one.lines)
    alone = [one for one in cues if one.duration_ms < min(needed_ms(one.text, limits), limits.longest_ms)]
    assert len(alone) <= len(cues) // 4, alone


def test_a_narrow_screen_puts_the_figure_under_the_name(tell: Tell) -> None:
    told = tell(channel=CHANNEL + "captions: { characters: 16 }\n")
    assert "Cross weight / 52.0\u00a0%" in texts(told)
    assert "Final drive / 3.90:1" in texts(told)
