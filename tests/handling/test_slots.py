"""What the chassis model reads of a garage, and in which figures."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest

from producer.handling.slots import figures, slots
from producer.library.records import build
from producer.model.garage import Garage

GarageWith = Callable[[str], Garage]
LBF_IN = 175.12683524647636  # N/m in one lb/in


def garage(parameter: str) -> Garage:
    """A garage of one parameter."""
    text = f"format: 1\ngarage: g\nname: G\npages: [p]\nparameters:\n  it: {{ page: p, name: It, {parameter} }}\n"
    found, _, trouble = build(Garage, "garage.yaml", text)
    assert found is not None, trouble
    return found


RANGE = "min: 1, max: 90, step: 1"


@pytest.mark.parametrize(
    ("parameter", "value", "read"),
    [
        (f'role: weight.front, unit: "%", {RANGE}', 51, {"front": 0.51}),
        (f'role: weight.left, unit: "%", {RANGE}', 54, {"left": 0.54}),
        (f"role: weight.cross, {RANGE}", 52, {"cross": 0.52}),
        (f'role: brake.front_bias, unit: "%", {RANGE}', 66, {"bias": 0.66}),
        (f'role: gear.final, unit: ":1", {RANGE}', 4, {"final": 4.0}),
        (f"role: track_bar, unit: in, {RANGE}", 10, {"track_bar.left": 0.254, "track_bar.right": 0.254}),
        (f"role: bar.front, unit: in, default: 2, {RANGE}", 1, {"front_bar_size": 1 / 16}),
        (f"role: bar.rear, unit: mm, default: 20, {RANGE}", 40, {"rear_bar_size": 16.0}),
        (f"role: bar.front, unit: N/mm, {RANGE}", 30, {"front_bar": 30_000.0}),
        (f"role: bar.rear, unit: lb/in, {RANGE}", 10, {"rear_bar": 10 * LBF_IN}),
    ],
)
def test_a_whole_car_parameter(parameter: str, value: int, read: dict[str, float]) -> None:
    one = garage(parameter)
    assert figures(slots(one), {"it": Decimal(value)}) == pytest.approx(read)


def parted(role: str, unit: str, part: str, default: str = "") -> Garage:
    kind = "ends" if part in ("left", "right") else "corners"
    return garage(f"role: {role}, unit: {unit}, {kind}: {{ {part}: {{ {RANGE}{default} }} }}")


@pytest.mark.parametrize(
    ("one", "value", "read"),
    [
        (parted("spring", "lb/in", "rf"), 40, {"spring.rf": 40 * LBF_IN}),
        (parted("spring", "N/mm", "lr"), 50, {"spring.lr": 50_000.0}),
        (parted("track_bar", "in", "left"), 10, {"track_bar.left": 0.254}),
        (parted("track_bar", "cm", "right"), 25, {"track_bar.right": 0.25}),
        (parted("shock_compression", "clicks", "lf", ", default: 4"), 6, {"compression.lf": 9000.0}),
        (parted("shock_rebound", "clicks", "rr", ", default: 5"), 4, {"rebound.rr": 4000.0}),
        # Without a default it is the middle of the grid.
        (parted("shock_rebound", "clicks", "rf"), 45, {"rebound.rf": 6000.0}),
    ],
)
def test_a_corner_or_an_end(one: Garage, value: int, read: dict[str, float]) -> None:
    (address,) = one.settings
    assert figures(slots(one), {address: Decimal(value)}) == pytest.approx(read)


@pytest.mark.parametrize(
    "parameter",
    [
        f"role: aero.tape, {RANGE}",
        f"role: stagger.rear, unit: in, {RANGE}",
        f"role: steering.toe_out, unit: in, {RANGE}",
        f"role: bar.front_preload, unit: clicks, {RANGE}",
        f"role: bar.front, unit: clicks, {RANGE}",
        f"role: bar.front, unit: psi, {RANGE}",
        f"role: weight.front, unit: lb, {RANGE}",
        f"role: spring, unit: lb/in, {RANGE}",
        f"role: shock_rebound, unit: clicks, {RANGE}",
        f"role: track_bar, unit: clicks, {RANGE}",
        f"role: track_bar.middle, unit: in, {RANGE}",
        f"role: something.else, {RANGE}",
        RANGE,
        f"role: tyre_pressure, unit: psi, corners: {{ rf: {{ {RANGE} }} }}",
        f"role: camber, unit: deg, corners: {{ rf: {{ {RANGE} }} }}",
        f"role: spring, unit: clicks, corners: {{ rf: {{ {RANGE} }} }}",
        f"role: shock_rebound, unit: psi, corners: {{ rf: {{ {RANGE} }} }}",
        "role: shock_rebound, unit: clicks, corners: { rf: { min: 0, max: 9, step: 1, default: 0 } }",
        "role: bar.front, unit: in, min: -1, max: 1, step: 1, default: 0",
    ],
)
def test_what_it_does_not_read(parameter: str) -> None:
    assert slots(garage(parameter)) == {}


@pytest.mark.parametrize(
    ("one", "value"),
    [
        (garage('role: weight.front, unit: "%", min: -10, max: 110, step: 5'), -5),
        (garage('role: weight.front, unit: "%", min: -10, max: 110, step: 5'), 105),
        (garage("role: gear.final, min: 0, max: 5, step: 1"), 0),
        (garage("role: bar.front, unit: in, default: 1, min: 0, max: 2, step: 1"), 0),
        (garage("role: spring, unit: lb/in, corners: { rf: { min: -100, max: 900, step: 25 } }"), -25),
        (garage("role: shock_rebound, corners: { rf: { min: -9, max: 9, step: 1, default: 4 } }"), -2),
    ],
)
def test_a_figure_that_no_car_has_is_not_read(one: Garage, value: int) -> None:
    (address,) = one.settings
    assert figures(slots(one), {address: Decimal(value)}) == {}


def test_of_two_settings_for_one_part_the_first_is_read() -> None:
    text = f"""
format: 1
garage: g
name: G
pages: [p]
parameters:
  one: {{ page: p, name: One, role: weight.front, {RANGE} }}
  two: {{ page: p, name: Two, role: weight.front, {RANGE} }}
"""
    found, _, _ = build(Garage, "garage.yaml", text)
    assert found is not None
    assert list(slots(found)) == ["one"]


def test_a_setting_without_a_value_states_nothing(garage_with: GarageWith) -> None:
    assert figures(slots(garage_with("")), {"gadget": Decimal(5)}) == {}
