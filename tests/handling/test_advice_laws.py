"""Laws of advice on garages, tracks, setups, advice of the author and opinions of any kind.

Where the author says nothing, what is advised is compared with every combination there is, written straight from the
rules: clicks by clicks, without anything of the engine but the rule table and the grid.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.handling.advice import advise
from producer.handling.rules import cure, effect_of, feeds
from producer.model.advice import Plan
from producer.model.library import Case
from producer.model.opinion import SURE, Opinion, Opinions, PhaseOpinion
from producer.model.words import FEELS, PHASES, Complaint, Direction, Phase, turned
from tests.handling.conftest import EPISODE, GARAGE
from tests.handling.test_guide import case_from, texts

TRACK = "format: 1\ntrack: oval\nname: Oval\nlength: 1 mi\ncorners: []\n"
TARGETS = {"little": 0.5, "plain": 1.0, "very": 2.0}
ADDRESSES = (
    *(f"spring.{one}" for one in ("lf", "rf", "lr", "rr")), "front_weight", "cross_weight", "left_weight", "brake_bias",
    "tape", "final_drive", "track_bar.left", "compression.rf", "compression.lr", "gadget",
)  # fmt: skip
# Sixteenths add up without a rest, so that equals are equal.
sixteenths = st.integers(-40, 40).map(lambda one: one / 16)
share = st.sampled_from([0.0, 0.1, 0.5, 0.84, 0.85, 1.0])


@st.composite
def phase_opinions(draw: st.DrawFn) -> PhaseOpinion:
    size, agreed = draw(sixteenths), draw(share)
    rest = draw(st.sampled_from([0.0, 1.0])) * (1 - agreed)
    return PhaseOpinion(agreed, rest, size) if size > 0 else PhaseOpinion(rest, agreed, size)


def opinions_on(addresses: Sequence[str], most: int) -> st.SearchStrategy[Opinions]:
    counts = [one for one in range(-most, most + 1) if one]
    opinion = st.builds(Opinion, phase_opinions(), phase_opinions(), phase_opinions())
    clicks = st.dictionaries(st.sampled_from(addresses), st.fixed_dictionaries(dict.fromkeys(counts, opinion)))
    half = st.fixed_dictionaries(dict.fromkeys(PHASES, st.sampled_from([0.0, 0.25, 1.0])))
    return st.builds(lambda moved, measure: Opinions(1000, moved, half_percent=measure), clicks, half)


phased = st.builds(Complaint, st.sampled_from(FEELS), st.sampled_from(PHASES), st.sampled_from(list(TARGETS)))
anywhere = st.builds(Complaint, st.sampled_from(FEELS), st.none(), st.sampled_from(list(TARGETS)))


@settings(deadline=None, max_examples=120)
@given(texts(), opinions_on(ADDRESSES, 6), st.lists(phased | anywhere, min_size=1, max_size=4), st.data())
def test_laws(given_texts: tuple[str, str, str], second: Opinions, asked: list[Complaint], data: st.DataObject) -> None:
    case = case_from(*given_texts)
    tyres = data.draw(st.sampled_from([None, "new", "worn"]))
    plan = advise(case, case.sheets[0], asked, second, tyres=tyres)
    lawful_moves(case, plan)
    feeds_nothing(plan)
    helps_what_it_answers(plan)
    assert [one.voice for one in plan.changes] == sorted(one.voice for one in plan.changes)
    assert {(one.feel, one.where) for one in plan.complaints} == {(one.feel, one.where) for one in asked}
    again = advise(case, case.sheets[0], asked, second, tyres=tyres)
    assert plan == again


def lawful_moves(case: Case, plan: Plan) -> None:
    sheet = case.sheets[0]
    assert len(plan.changes) <= 3
    assert len({one.parameter for one in plan.changes}) == len(plan.changes)
    for one in plan.changes:
        grid = sheet.garage.settings[one.parameter].grid
        index = grid.index(one.to)
        assert one.start == sheet.values[one.parameter]
        assert one.clicks == grid.clicks(one.start, one.to) != 0
        assert index is not None
        assert 0 <= index <= grid.last
        if one.voice == "rule":
            assert abs(one.clicks) <= (3 if any(x.how_much == "very" for x in plan.complaints) else 2)
    for phase in PHASES:
        sizes = [one.effects[phase] for one in plan.changes if one.effects[phase] is not None]
        assert plan.expected[phase] == (sum(sizes) if sizes else None)


def feeds_nothing(plan: Plan) -> None:
    named = [one for one in plan.complaints if one.where is not None]
    for change in plan.changes:
        for one in named:
            assert not feeds(change, one)
            assert change.rule[one.where] == "none" or not surely_worse(change.opinion, one)


def surely_worse(opinion: Opinion | None, one: Complaint) -> bool:
    assert one.where is not None
    return opinion is not None and opinion.at(one.where).agreement(turned(cure(one.feel), "lower")) >= SURE


def helps_what_it_answers(plan: Plan) -> None:
    open_ = {one.complaint for one in plan.unanswered}
    for one in plan.complaints:
        steps = [step for step in plan.steps if one in step.answers]
        assert (one in open_) != bool(steps)
        expected = plan.expected[one.where] if one.where else None
        if steps and expected:
            assert expected * way(one) > 0
        elif steps and one.where:
            # Nobody gives a size, or it is nothing: the author's word.
            assert "author" in {step.change.voice for step in steps}
    for step in plan.steps:
        if step.change.voice == "rule":
            assert step.answers
            for one in step.answers:
                told = {step.change.rule[phase] for phase in ([one.where] if one.where else PHASES)}
                assert cure(one.feel) in told


def way(one: Complaint) -> int:
    return 1 if cure(one.feel) == "tighter" else -1


# Every combination there is.


class Move(NamedTuple):
    """One setting by some clicks, as the rules see it."""

    place: int
    address: str
    clicks: int
    sizes: dict[Phase, float]
    helps: frozenset[Complaint]


def moves(case: Case, second: Opinions, asked: Sequence[Complaint]) -> Iterator[Move]:
    sheet = case.sheets[0]
    for place, (address, setting) in enumerate(sheet.garage.settings.items()):
        for clicks in (3, 2, 1, -1, -2, -3):
            value, opinion = sheet.values.get(address), second.click(address, clicks)
            if value is None or opinion is None or setting.grid.moved(value, clicks) is None:
                continue
            found = move(case, place, address, clicks, opinion, asked)
            if found is not None:
                yield found


def move(
    case: Case, place: int, address: str, clicks: int, opinion: Opinion, asked: Sequence[Complaint]
) -> Move | None:
    direction: Direction = "raise" if clicks > 0 else "lower"
    rules = {phase: effect_of(case.sheets[0].garage, case.track, address, direction, phase) for phase in PHASES}
    sizes = {phase: 0.0 if rules[phase] == "none" else opinion.at(phase).size for phase in PHASES}
    for one in asked:
        assert one.where is not None
        worse = turned(cure(one.feel), "lower")
        if rules[one.where] == worse or (rules[one.where] != "none" and surely_worse(opinion, one)):
            return None
    helps = [
        one for one in asked if one.where and rules[one.where] == cure(one.feel) and sizes[one.where] * way(one) > 0
    ]
    most = max((3 if one.how_much == "very" else 2 for one in helps), default=0)
    return Move(place, address, clicks, sizes, frozenset(helps)) if abs(clicks) <= most else None


def weigh(chosen: Sequence[Move], asked: Sequence[Complaint], half: dict[Phase, float]) -> tuple[object, ...]:
    expected = {phase: sum(one.sizes[phase] for one in chosen) for phase in PHASES}
    answered = [one for one in asked if any(one in x.helps for x in chosen) and expected[one.where] * way(one) > 0]
    deviation = sum(abs(expected[one.where] - way(one) * TARGETS[one.how_much] * half[one.where]) for one in asked)
    clicks = sum(abs(one.clicks) for one in chosen)
    return (-len(answered), len(chosen), deviation, clicks, [(one.place, -one.clicks) for one in chosen])


def every(options: Sequence[Move]) -> Iterator[tuple[Move, ...]]:
    for count in range(4):
        for chosen in combinations(options, count):
            if len({one.place for one in chosen}) == count:
                alone = [one.helps for one in chosen if len(one.helps) == 1]
                if all(alone.count(one) <= 2 for one in alone):
                    yield chosen


RULED = ("spring.lf", "spring.rf", "spring.lr", "spring.rr", "cross_weight", "final_drive", "brake_bias")
distinct = st.lists(phased, min_size=1, max_size=3, unique_by=lambda one: one.where)
letters = st.sampled_from(["tighter", "looser", "none", None])
SIGNS = {"tighter": 1, "looser": -1, "none": 0, None: 0}


@st.composite
def ruled(draw: st.DrawFn) -> tuple[Case, Opinions]:
    """A setup in which every setting has rules of its own, and a model that mostly agrees with them."""
    rows = {name: {phase: draw(letters) for phase in PHASES} for name in RULED}
    block = {name: {phase: one for phase, one in row.items() if one} for name, row in rows.items()}
    values = {
        "spring": {corner: draw(st.sampled_from([300, 325, 400, 475, 500])) for corner in ("lf", "rf", "lr", "rr")},
        "cross_weight": draw(st.sampled_from([46, 46.5, 50, 55.5, 56])),
        "final_drive": draw(st.sampled_from(["3.70", "3.90", "4.11"])),
        "brake_bias": draw(st.sampled_from([50, 62, 80])),
    }
    setup = {"setup": "short", "name": "Short", "values": values}
    head = "format: 1\nepisode: e\ntitle: T\ntrack: oval\ngarage: test-car\n"
    case = case_from(f"{GARAGE}handling: {json.dumps(block)}\n", TRACK, f"{head}setups: {json.dumps([setup])}\n")
    clicks = {name: draw(one_way(rows[name])) for name in RULED}
    return case, Opinions(1000, clicks, half_percent={phase: draw(st.sampled_from([0.25, 1.0])) for phase in PHASES})


@st.composite
def one_way(draw: st.DrawFn, row: dict[Phase, str | None]) -> dict[int, Opinion]:
    """Sizes that grow with the clicks; where the rule is silent or the model is of another mind, of any sign."""
    sizes, shares = [], []
    for phase in PHASES:
        size, agrees = draw(st.integers(0, 24)) / 16, draw(st.integers(0, 4)) > 0
        sign = SIGNS[row[phase]] if agrees else 0
        sizes.append(size * (sign or draw(st.sampled_from([1, -1]))))
        shares.append(draw(st.sampled_from([0.5, 0.84, 0.85, 1.0] if not agrees or not sign else [0.6, 1.0])))
    return {count: _moved(count, sizes, shares) for count in (-3, -2, -1, 1, 2, 3)}


def _moved(count: int, sizes: list[float], shares: list[float]) -> Opinion:
    def phase(size: float, agreed: float) -> PhaseOpinion:
        return PhaseOpinion(agreed, 1 - agreed, size) if size > 0 else PhaseOpinion(1 - agreed, agreed, size)

    return Opinion(*(phase(count * size, agreed) for size, agreed in zip(sizes, shares, strict=True)))


@settings(deadline=None, max_examples=120)
@given(ruled(), distinct)
def test_no_combination_is_better(given_case: tuple[Case, Opinions], asked: list[Complaint]) -> None:
    case, second = given_case
    half = dict(second.half_percent)
    best = min(every(list(moves(case, second, asked))), key=lambda one: weigh(one, asked, half))
    plan = advise(case, case.sheets[0], asked, second)
    assert {(one.parameter, one.clicks) for one in plan.changes} == {(one.address, one.clicks) for one in best}
    feeds_nothing(plan)
    helps_what_it_answers(plan)


@pytest.mark.parametrize("count", [1, 2, 3])
def test_three_settings_only_for_three_feels(count: int) -> None:
    """One setting a feel, none for two: as many settings as feels."""
    one = ("tighter", "none", "none"), ("none", "tighter", "none"), ("none", "none", "tighter")
    rows = dict(zip(("spring.rf", "spring.lr", "cross_weight"), one, strict=True))
    block = ", ".join(f"{name}: {{ entry: {a}, middle: {b}, exit: {c} }}" for name, (a, b, c) in rows.items())
    case = case_from(f"{GARAGE}handling: {{ {block} }}\n", TRACK, EPISODE.replace("short-oval", "e"))
    size = PhaseOpinion(1.0, 0.0, 1.0)
    opinion = Opinion(size, size, size)
    second = Opinions(1000, {name: {1: opinion} for name in rows}, half_percent=dict.fromkeys(PHASES, 1.0))
    asked = [Complaint("loose", phase) for phase in PHASES[:count]]
    assert len(advise(case, case.sheets[0], asked, second).changes) == count
