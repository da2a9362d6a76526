"""The author's reasons agree with one another about what a setting does.

If raising the track bar loosens the exit in one setup, lowering it cannot loosen the exit in another: one of the two
sentences is wrong, and a viewer who watches both will ask which. Each stated effect is turned to what *raising* does,
then compared for the same setting (or the same settings moved together) in the same phase; `none` contradicts nothing.
Within an episode it is a warning. Across episodes about the same garage it is a note, and what goes with the banking
of the track is compared on the same track only. Source: logic.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { track_bar: { right: 10 }, front_weight: 50.5 }
        reasons:
          - for: track_bar.right
            effect: { exit: looser }
            because: It frees the rear on the way off.
      - setup: long
        name: Long run
        based_on: short
        changes: { track_bar: { right: 9 } }
        reasons:
          - for: track_bar.right
            effect: { exit: looser }
                            ^^^^^^
            because: It frees the rear on the way off.

Found:

    # lantern-rise-grand-sedan/episode.yaml
    format: 1
    episode: lantern-rise-grand-sedan
    title: Another place
    track: marrow-creek
    garage: grand-sedan
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 51 }
        reasons:
          - for: cross_weight
            effect: { middle: tighter }
            because: I want the car to wait for me.
    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52 }
        reasons:
          - for: cross_weight
            effect: { middle: looser }
                              ^^^^^^
            because: I want the car to turn.

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { track_bar: { right: 10 }, spring: { rf: 700, rr: 300 }, cross_weight: 52 }
        reasons:
          - for: track_bar.right
            effect: { middle: looser, exit: looser }
            because: It frees the rear on the way off.
          - for: [spring.rf, spring.rr]
            effect: { middle: looser }
            because: The two together.
          - for: cross_weight
            effect: { entry: none, middle: tighter }
            because: I want the car to wait for me.
      - setup: long
        name: Long run
        based_on: short
        changes: { track_bar: { right: 9 }, spring: { rf: 725 }, cross_weight: 52.5 }
        reasons:
          - for: track_bar.right
            effect: { entry: looser, exit: tighter }
            because: It calms the rear on the way off.
          - for: spring.rf
            effect: { middle: tighter }
            because: It saves the tire.
          - for: cross_weight
            effect: { entry: tighter }
            because: A little more of the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from producer.basics.finding import Finding, Severity
from producer.handling.rules import goes_with_banking
from producer.handling.saying import doing
from producer.handling.wording import PLACES, the
from producer.model.episode import Reason
from producer.model.library import Case, Library
from producer.model.sheet import Sheet, SheetReason
from producer.model.words import PHASES, Direction, Effect, Phase, turned

CODES = {"effects-contradict": Severity.WARNING}
_NAMED = 2  # settings that a message names
# What is compared: each setting moved, with its direction once the first of them is turned to "raise"; and the phase.
_Key = tuple[tuple[tuple[str, Direction], ...], Phase]


@dataclass(frozen=True, slots=True)
class _Claim:
    """One stated effect of raising; `does` is `raising the front bar makes`."""

    key: _Key
    raising: Effect
    does: str
    setup: str
    reason: Reason


def check_episode(case: Case) -> Iterator[Finding]:
    """The claims of one episode against those before them."""
    first: dict[_Key, _Claim] = {}
    for claim in _claims(case):
        before = first.setdefault(claim.key, claim)
        if before.raising != claim.raising:
            yield _finding(claim, before, Severity.WARNING, f"the setup '{before.setup}'")


def check_library(library: Library) -> Iterator[Finding]:
    """The first claim of each episode against that of the episodes before it."""
    first: dict[tuple[str, str, _Key], tuple[_Claim, str]] = {}
    for name, episode in library.episodes.items():
        case = library.case(episode)
        own: set[_Key] = set()
        for claim in _claims(case):
            if claim.key in own:
                continue
            own.add(claim.key)
            before, where = first.setdefault((episode.garage, _track(case, claim.key), claim.key), (claim, name))
            if before.raising != claim.raising:
                yield _finding(claim, before, Severity.NOTE, f"the episode '{where}'")


def _track(case: Case, key: _Key) -> str:
    """The track where it matters, else ""."""
    banked = case.garage is not None and any(goes_with_banking(case.garage, address) for address, _ in key[0])
    return case.episode.track if banked else ""


def _claims(case: Case) -> Iterator[_Claim]:
    for sheet in case.sheets:
        for reason in sheet.reasons:
            if not reason.inherited:
                yield from _stated(sheet, reason)


def _stated(sheet: Sheet, reason: SheetReason) -> Iterator[_Claim]:
    moved = [(one.address, one.direction) for one in reason.movements if one.direction is not None]
    if not moved:
        return
    way = moved[0][1]
    together = tuple((address, _turn(direction, way)) for address, direction in moved)
    stated = reason.effect.stated()
    raised = _raising([(the(sheet.garage, address), direction) for address, direction in together])
    for phase in PHASES:
        effect = stated.get(phase)
        if effect is not None and effect != "none":
            yield _Claim((together, phase), turned(effect, way), raised, sheet.id, reason.reason)


def _turn(direction: Direction, way: Direction) -> Direction:
    return "raise" if direction == way else "lower"


def _raising(moves: Sequence[tuple[str, Direction]]) -> str:
    """What is told of moving these, the first of them up; of many only the first by name."""
    if len(moves) > _NAMED:
        return f"raising {moves[0][0]}, with the other {len(moves) - 1} settings moved as here, makes"
    return doing(moves, "make")


def _finding(claim: _Claim, before: _Claim, severity: Severity, where: str) -> Finding:
    phase = claim.key[1]
    message = (
        f"this says that {claim.does} the car {claim.raising} {PLACES[phase]}, "
        f"{where} that it makes it {before.raising}"
    )
    hint = "decide which holds, and right the other one's effect or direction"
    place, other = claim.reason.place("effect", phase), before.reason.place("effect", phase)
    return Finding("effects-contradict", severity, place, message, hint, claim.reason.where("effect", phase), (other,))
