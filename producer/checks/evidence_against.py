"""What is claimed of a setup is not what its laps say.

Three claims are held against the test laps. A setup for the long run (by its purpose, else by its name) falls off no
faster than the one for the short run: found where the whole 95 % interval of the difference says the opposite, and both
were driven alike with ten laps that count. A tyre that a reason says is saved wears no faster than with the setup it is
compared with: found where the wear a lap is larger by more than the readings, whole percents, can be off. Where two
setups were driven, the lap from which the second is said to be ahead, or the two to meet, lies within two laps of the
95 % interval. A stint that was driven otherwise, a setup without readings, a sentence that denies, doubts or sets a
condition says nothing.
Source: definition; 95 % intervals by t, pooled or Welch's.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        purpose: short run
        values: { cross_weight: 52 }
      - setup: long
        name: Long run
        purpose: long run
                 ^^^^^^^^
        based_on: short
        changes: { cross_weight: 52.5 }
    stints:
      - { setup: short, file: stints/short-1.csv }
      - { setup: long, file: stints/long-1.csv }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.30
    2,31.36
    3,31.41
    4,31.49
    5,31.52
    6,31.60
    7,31.66
    8,31.72
    9,31.77
    10,31.84
    11,31.89

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52 }
      - setup: long
        name: The long-run car
              ^^^^^^^^^^^^^^^^
        based_on: short
        changes: { cross_weight: 52.5 }
    stints:
      - { setup: short, file: stints/short-1.csv }
      - { setup: long, file: stints/long-1.csv }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.30
    2,31.36
    3,31.41
    4,31.49
    5,31.52
    6,31.60
    7,31.66
    8,31.72
    9,31.77
    10,31.84
    11,31.89

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Tuesday
        values: { cross_weight: 52 }
      - setup: long
        name: Sunday
        based_on: short
        changes: { cross_weight: 52.5 }
        reasons:
          - for: cross_weight
            because: A little more wedge saves the right rear over a run.
                                         ^^^^^^^^^^^^^^^^^^^^
    stints:
      - { setup: short, file: stints/short-1.csv, wear: { rr: 10 } }
      - { setup: long, file: stints/long-1.csv, wear: { rr: 14 } }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.30
    2,31.36
    3,31.41
    4,31.49
    5,31.52
    6,31.60
    7,31.66
    8,31.72
    9,31.77
    10,31.84
    11,31.89
    12,31.95
    13,32.01

Found:

    # marrow-creek-grand-sedan/episode.yaml
    talking_points:
      closing: The long run starts behind and is ahead in total by about lap twelve.
                                                 ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    stints:
      - { setup: short, file: stints/short-1.csv }
      - { setup: long, file: stints/long-1.csv }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.38
    2,31.39
    3,31.41
    4,31.42
    5,31.43
    6,31.45
    7,31.46
    8,31.47
    9,31.48
    10,31.49
    11,31.51
    12,31.52
    13,31.53

Found:

    # marrow-creek-grand-sedan/episode.yaml
    talking_points:
      closing: The short run starts behind and is ahead in total by about lap twenty.
                                                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    stints:
      - { setup: short, file: stints/short-1.csv }
      - { setup: long, file: stints/long-1.csv }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.309
    2,31.356
    3,31.419
    4,31.466
    5,31.529
    6,31.576
    7,31.639
    8,31.686
    9,31.749
    10,31.796
    11,31.859
    12,31.906
    13,31.969

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    talking_points:
      closing: The long run is behind at first, and ahead in total from lap five or so. It is not ahead by lap two.
    stints:
      - { setup: short, file: stints/short-1.csv }
      - { setup: long, file: stints/long-1.csv }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.38
    2,31.39
    3,31.41
    4,31.42
    5,31.43
    6,31.45
    7,31.46
    8,31.47
    9,31.48
    10,31.49
    11,31.51
    12,31.52
    13,31.53

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        purpose: short run
        values: { cross_weight: 52 }
      - setup: long
        name: Long run
        purpose: long run
        based_on: short
        changes: { cross_weight: 52.5 }
        reasons:
          - for: cross_weight
            because: >
              A little more wedge saves the right front over a run. It does not save the right rear, and on
              a cold night it might be easier on the left rear.
    stints:
      - { setup: short, file: stints/short-1.csv, wear: { rr: 10, lr: 5, rf: 10 } }
      - { setup: long, file: stints/long-1.csv, wear: { rr: 14, lr: 8, rf: 11 } }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.40
    2,31.41
    3,31.44
    4,31.45
    5,31.50
    6,31.51
    7,31.54
    8,31.56
    9,31.58
    10,31.61
    11,31.62
    12,31.66
    13,31.68

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        purpose: short run
        values: { cross_weight: 52 }
      - setup: long
        name: Long run
        purpose: long run
        based_on: short
        changes: { cross_weight: 52.5 }
    stints:
      - { setup: short, file: stints/short-1.csv, driving: smooth }
      - { setup: long, file: stints/long-1.csv, driving: flat out }
    # marrow-creek-grand-sedan/stints/long-1.csv (whole)
    1,31.30
    2,31.36
    3,31.41
    4,31.49
    5,31.52
    6,31.60
    7,31.66
    8,31.72
    9,31.77
    10,31.84
    11,31.89
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.prose import prose
from producer.model.stints import Comparison, Evidence
from producer.model.words import CORNER_NAMES
from producer.stints.gather import evidence
from producer.stints.lap_claims import LapClaim, lap_claims
from producer.stints.meant import purpose_of
from producer.stints.pace import ENOUGH
from producer.stints.saved import saved
from producer.stints.wearing import wears_more
from producer.stints.wording import rounded, the, thousandths

_NEAR = 2  # laps: nobody counts them closer in a sentence
CODES = {"evidence-against": Severity.WARNING}
COSTLY = True


def check_episode(case: Case) -> Iterator[Finding]:
    """Falloff against what a setup is for, then wear against what reasons say."""
    found = evidence(case)
    if found is None:
        return
    for one in found.comparisons:
        yield from _falloff(case, found, one)
    yield from _wear(case, found)
    if len(found.lines) == 2 and found.comparison is not None and found.comparison.comparable:
        yield from _laps(case, found, found.comparison)


def _laps(case: Case, found: Evidence, one: Comparison) -> Iterator[Finding]:
    """Laps named in prose; with more than two setups nobody knows which two are meant."""
    if any(line.laps < ENOUGH for line in found.lines):
        return
    for text in prose(case.episode):
        for claim in lap_claims(text.text):
            said = _against_lap(claim, one)
            if said:
                place = text.place(claim.start, claim.end)
                hint = "say what the laps say, or drive both again"
                yield Finding("evidence-against", Severity.WARNING, place, said, hint, text.where)


def _against_lap(claim: LapClaim, one: Comparison) -> str:
    """What the laps say instead, "" where they do not contradict, or where the setup that is passed is spoken of."""
    other = one.first_name if one.falloff_difference < 0 else one.second_name
    if claim.leads and other.lower() in claim.sentence.lower():
        return ""
    ahead = one.ahead_from_lap if one.first_ahead_from is None else one.first_ahead_from
    told = [
        f"{what} at lap {lap:.0f} (95 %: lap {interval[0]:.0f} to {interval[1]:.0f})"
        for of, what, lap, interval in (
            ("total", "the totals are level", ahead, one.ahead_interval or one.first_ahead_interval),
            ("pace", "pace is equal", one.crossover_lap, one.interval),
        )
        if claim.of in (of, "either")
        if lap is not None and interval is not None and not _near(claim.lap, interval)
    ]
    wanted = 2 if claim.of == "either" else 1
    return f"by the laps driven {', '.join(told)}" if len(told) == wanted else ""


def _near(lap: int, interval: tuple[float, float]) -> bool:
    return interval[0] - _NEAR <= lap <= interval[1] + _NEAR


def _falloff(case: Case, found: Evidence, one: Comparison) -> Iterator[Finding]:
    first, second = case.episode.setup(one.first), case.episode.setup(one.second)
    lines = (found.line(one.first), found.line(one.second))
    interval = one.falloff_interval
    if first is None or second is None or interval is None or not one.comparable:
        return
    if any(line is None or line.laps < ENOUGH for line in lines):
        return
    meant = (purpose_of(first), purpose_of(second))
    if meant == ("short run", "long run"):
        long, short, more = second, first, interval.low > 0
    elif meant == ("long run", "short run"):
        long, short, more = first, second, interval.high < 0
    else:
        return
    if more:
        message = (
            f"{the(long.name)} falls off {thousandths(abs(one.falloff_difference))} a lap more than {the(short.name)}, "
            f"give or take {rounded(interval.half, 3)}"
        )
        hint = "look which of its changes costs the tyres, or drive both again"
        key = "purpose" if long.purpose is not None else "name"
        place, where = long.place(key), long.where(key)
        yield Finding("evidence-against", Severity.WARNING, place, message, hint, where)


def _wear(case: Case, found: Evidence) -> Iterator[Finding]:
    for sheet in case.sheets:
        for reason in sheet.reasons:
            against = next((one.against for one in reason.movements), sheet.base_setup or "")
            if reason.inherited or case.episode.setup(against) is None:
                continue
            for claim in saved(reason.because):
                for corner in claim.corners:
                    apart = wears_more(found, against, sheet.id, corner)
                    if apart is None:
                        continue
                    text = f"the {CORNER_NAMES[corner]} tyre wears {apart} than with {the(_name(case, against))}"
                    record, where = reason.reason, reason.reason.where("because")
                    place = record.inside(("because",), claim.start, claim.end)
                    hint = "say what the wear says, or drive both again"
                    yield Finding("evidence-against", Severity.WARNING, place, text, hint, where)


def _name(case: Case, setup: str) -> str:
    record = case.episode.setup(setup)
    return record.name if record is not None else setup
