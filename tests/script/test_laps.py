"""What the test laps say, aloud: only what they carry, with the figures of the records."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from producer.basics.units import Quantity
from producer.captions.profile import reading_profile
from producer.captions.settling import settle
from producer.captions.speed import too_fast
from producer.model.script import Section
from producer.model.stints import Comparison, Evidence, Interval, Total
from producer.script.on_screen import on_screen
from tests.outputs.driven import comparison, evidence, stint
from tests.script.conftest import CHANNEL, Told

Tell = Callable[..., Told]
LONG = "- { setup: long, name: Long run, purpose: long run, based_on: short, changes: { cross_weight: 52.5 } }\n"
QUALIFYING = "- { setup: one, name: Qualifying, purpose: qualifying, based_on: short, changes: { cross_weight: 53 } }\n"
SLOWER, FASTER = Total(10, 0.4, Interval(0.1, 0.7)), Total(20, -3.09, Interval(-3.8, -2.4))
LEVEL = Total(20, 0.2, Interval(-0.3, 0.7))
SHORT, LONG_RUN = stint("short", "Short run"), stint("long", "Long run", index=1)


def compared(**parts: Any) -> Comparison:
    """One that begins behind, meets at lap 10, and is ahead from lap 15."""
    usual = {"totals": (SLOWER, FASTER), "ahead_from_lap": 15}
    return comparison(**{**usual, **parts})


def both(**parts: Any) -> Evidence:
    return evidence(SHORT, LONG_RUN, compared=compared(**parts))


def said(told: Told, kind: str = "") -> list[str]:
    return told.texts("laps", kind) if any(one.id == "laps" for one in told.narration.sections) else []


def test_the_whole_section(tell: Tell) -> None:
    told = tell(more=LONG, evidence=both())
    assert [one.id for one in told.narration.sections][-3:] == ["long.scales", "laps", "closing"]
    assert said(told) == [
        "Now the clock. I ran 20\u00a0laps with the short run and 20 with the long run.",
        "Over ten laps the long run is 0.4\u00a0seconds slower, give or take 0.3. "
        "From about lap 10 it is the quicker of the two. "
        "In total time it is ahead from about lap 15. "
        "Over twenty laps it is 3.1\u00a0seconds faster, give or take 0.7.",
        "I drove each of them once, so that is one evening on my clock, and no further than lap 20.",
    ]


@pytest.mark.parametrize(
    ("parts", "sentences"),
    [
        # Ahead from the first lap on: there is nothing to cross.
        ({"totals": (FASTER,), "crossover_lap": None, "interval": None, "ahead_from_lap": 1}, ["Over twenty"]),
        # Behind to the end.
        (
            {"totals": (replace(FASTER, seconds=3.09, interval=Interval(2.4, 3.8)),), "crossover_lap": None,
             "ahead_from_lap": None},
            ["Over twenty laps the long run is 3.1\u00a0seconds slower, give or take 0.7."],
        ),
        # Quicker at the end, and the totals too close.
        (
            {"totals": (LEVEL,), "ahead_from_lap": 19},
            ["From about lap 10 the long run is the quicker of the two.",
             "Over twenty laps their total times cannot be told apart."],
        ),
        # Behind at first, and no telling how it goes on.
        (
            {"totals": (SLOWER, LEVEL), "crossover_lap": None, "interval": None, "ahead_from_lap": None},
            ["Over ten laps the long run is 0.4\u00a0seconds slower, give or take 0.3.",
             "Over twenty laps their total times cannot be told apart."],
        ),
        # The first is the one that lasts.
        (
            {"falloff_difference": 0.01, "totals": (replace(FASTER, seconds=3.09, interval=Interval(2.4, 3.8)),),
             "ahead_from_lap": None},
            ["From about lap 10 the short run is the quicker of the two.",
             "Over twenty laps the long run is 3.1\u00a0seconds slower, give or take 0.7."],
        ),
        # Nothing parts them.
        (
            {"totals": (LEVEL,), "crossover_lap": None, "interval": None, "ahead_from_lap": None},
            ["Over twenty laps the clock cannot tell the short run and the long run apart."],
        ),
        # By the lines it is ahead, but not by more than chance: that is not told.
        (
            {"totals": (LEVEL,), "crossover_lap": None, "interval": None, "ahead_from_lap": 3},
            ["Over twenty laps the clock cannot tell"],
        ),
    ],
)  # fmt: skip
def test_what_is_claimed(tell: Tell, parts: dict[str, Any], sentences: list[str]) -> None:
    (claims,) = said(tell(more=LONG, evidence=both(**parts)), "laps")
    assert claims.count(". ") == len(sentences) - 1
    for sentence in sentences:
        assert sentence in claims


@pytest.mark.parametrize(
    "nothing",
    [
        None,
        Evidence("test", ()),
        evidence(replace(SHORT, may=()), replace(LONG_RUN, may=()), compared=compared(enough=False, may=())),
        evidence(replace(SHORT, may=(), pace=None)),
    ],
)
def test_nothing_is_said_without_laps_enough(tell: Tell, nothing: Evidence | None) -> None:
    silent = tell(more=LONG)
    told = tell(more=LONG, evidence=nothing)
    assert told.narration == silent.narration


def test_a_setup_that_is_not_in_the_episode_is_not_told(tell: Tell) -> None:
    (claims,) = said(tell(evidence=both()), "laps")
    assert "long run" not in claims


def test_what_was_driven_differently_is_said_to_be_so(tell: Tell) -> None:
    refused = both(comparable=False, may=(), why_not=("Tyre use differs.",))
    first, *alone = said(tell(more=LONG, evidence=refused), "laps")
    assert first == (
        "I drove the short run and the long run differently, so their laps do not say which of the two is better."
    )
    assert [one.partition(" starts ")[0] for one in alone] == ["The short run", "The long run"]
    assert "quicker" not in " ".join(alone)


@pytest.mark.parametrize(
    ("slope", "interval", "says"),
    [
        (0.03, Interval(0.028, 0.032), "The short run starts at 31.28\u00a0seconds and loses 0.030\u00a0seconds a lap, "
         "give or take 0.002."),
        (-0.03, Interval(-0.032, -0.028), "and gains 0.030\u00a0seconds a lap, give or take 0.002."),
        (0.03, Interval(-0.01, 0.07), "starts at 31.28\u00a0seconds, and whether it falls off these laps do not tell."),
        (0.03, None, "whether it falls off these laps do not tell."),
    ],
)  # fmt: skip
def test_one_setup_by_itself(tell: Tell, slope: float, interval: Interval | None, says: str) -> None:
    pace = SHORT.pace
    assert pace is not None
    robust = replace(pace.robust, slope=slope, slope_interval=interval)
    alone = evidence(replace(SHORT, pace=replace(pace, robust=robust)))
    told = tell(evidence=alone)
    assert said(told)[0] == "Now the clock. I ran 20\u00a0laps with the short run."
    assert says in said(told)[1]
    assert len(said(told)) == 2


def test_several_stints_of_a_setup(tell: Tell) -> None:
    again = stint("short", "Short run", number=2, index=2, last=12)
    found = evidence(SHORT, LONG_RUN, again, compared=compared())
    lines = tuple(replace(one, stints=(0, 2)) if one.setup == "short" else one for one in found.lines)
    told = said(tell(more=LONG, evidence=replace(found, lines=lines)))
    assert told[0] == "Now the clock. I ran 32\u00a0laps in two stints with the short run and 20 with the long run."
    assert told[-1] == (
        "The long run I drove only once, so that is one evening on my clock, and no further than lap 20."
    )


def test_both_driven_more_than_once(tell: Tell) -> None:
    again = [stint(setup, name, number=2, index=index) for setup, name, index in
             (("short", "Short run", 2), ("long", "Long run", 3))]  # fmt: skip
    found = evidence(SHORT, LONG_RUN, *again, compared=compared())
    lines = tuple(replace(one, stints=(0, 2) if one.setup == "short" else (1, 3)) for one in found.lines)
    told = said(tell(more=LONG, evidence=replace(found, lines=lines)))
    assert told[-1] == "That is my clock, and no further than lap 20."


def test_the_first_setup_may_be_the_one_that_passes(tell: Tell) -> None:
    turned = both(
        falloff_difference=0.01, ahead_from_lap=None, ahead_interval=None, first_ahead_from=15,
        totals=(replace(SLOWER, seconds=-0.4, interval=Interval(-0.7, -0.1)),
                replace(FASTER, seconds=3.09, interval=Interval(2.4, 3.8))),
    )  # fmt: skip
    (claims,) = said(tell(more=LONG, evidence=turned), "laps")
    assert claims == (
        "Over ten laps the long run is 0.4\u00a0seconds faster, give or take 0.3. "
        "From about lap 10 the short run is the quicker of the two. "
        "In total time the short run is ahead from about lap 15. "
        "Over twenty laps the long run is 3.1\u00a0seconds slower, give or take 0.7."
    )


def test_paces_that_meet_nobody_knows_where_are_not_told(tell: Tell) -> None:
    for interval in (Interval(-4, 12), Interval(6, 24)):
        (claims,) = said(tell(more=LONG, evidence=both(interval=interval)), "laps")
        assert "quicker" not in claims
        assert "In total time it is ahead from about lap 15." in claims


@pytest.mark.parametrize(
    ("first", "second", "says"),
    [
        ("18 gal", "20 gal", "The long run began with 20\u00a0gallons of fuel, the short run with 18\u00a0gallons."),
        ("18 gal", "18 gal", ""),
        ("18 gal", "", ""),
        ("", "", ""),
    ],
)
def test_another_load_of_fuel(tell: Tell, first: str, second: str, says: str) -> None:
    def fuel(text: str) -> Quantity | None:
        return Quantity(Decimal(text.split(maxsplit=1)[0]), "gal") if text else None

    found = evidence(replace(SHORT, fuel=fuel(first)), replace(LONG_RUN, fuel=fuel(second)), compared=compared())
    told = said(tell(more=LONG, evidence=found), "talk")[-1]
    assert told.startswith(says or "I drove each of them once")
    assert ("gallons" in told) is bool(says)


def test_more_than_two_setups_are_named_pair_by_pair(tell: Tell) -> None:
    one = stint("one", "Qualifying", index=2)
    second = compared(second="one", second_name="Qualifying")
    found = replace(evidence(SHORT, LONG_RUN, one), comparisons=(compared(), second))
    claims = said(tell(more=LONG + QUALIFYING, evidence=found), "laps")
    assert claims[0].startswith("The long run against the short run. Over ten laps the long run is ")
    assert claims[1].startswith("Then the qualifying setup against the short run. Over ten laps the qualifying setup ")


def test_the_chart_is_on_the_list_of_shots(tell: Tell) -> None:
    section: Section = tell(more=LONG, evidence=both()).section("laps")
    assert section.shots == ("Screen: the chart of the test laps, long enough to follow both lines",)
    assert section.title == "What the test laps say"


@pytest.mark.parametrize("profile", ["web", "broadcast"])
def test_each_claim_comes_to_the_screen_as_it_is_said(tell: Tell, profile: str) -> None:
    told = tell(more=LONG, evidence=both(), channel=CHANNEL + f"captions: {{ profile: {profile} }}\n")
    whole = told.dossier()
    at = [one.id for one in told.narration.sections].index("laps")
    begin, end = whole.timeline.section_starts[at : at + 2]
    limits = reading_profile(told.channel.captions)
    cues = [one for one in settle(on_screen(whole), limits) if begin <= one.start_ms < end]
    assert [" / ".join(one.lines) for one in cues] == [
        "Long run, over 10\u00a0laps / 0.4\u00a0s slower, give or take 0.3",
        "Long run quicker from about lap 10",
        "Long run ahead from about lap 15",
        "Long run, over 20\u00a0laps / 3.1\u00a0s faster, give or take 0.7",
    ]
    assert not [one for one in cues if too_fast(one, limits)]


def test_spelling_and_units_follow_the_channel(tell: Tell) -> None:
    litres = evidence(
        replace(SHORT, fuel=Quantity(Decimal(60), "L")), replace(LONG_RUN, fuel=Quantity(Decimal(70), "L")),
        compared=compared(),
    )  # fmt: skip
    assert "70\u00a0liters of fuel" in tell(more=LONG, evidence=litres).whole
    assert "70\u00a0litres of fuel" in tell(more=LONG, evidence=litres, channel=CHANNEL + "spelling: uk\n").whole
