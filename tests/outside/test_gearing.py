"""Engine speed and road speed against worked examples (tests/data/checks.csv names the source of each)."""

from __future__ import annotations

import csv
from decimal import Decimal
from pathlib import Path

import pytest

from producer.basics.units import Quantity
from producer.handling.gearing import rpm

DATA = Path(__file__).parents[1] / "data" / "checks.csv"
PI = Decimal("3.14159265358979323846264338")
D = Decimal


def row(name: str) -> tuple[Decimal, Decimal]:
    """Expected value and tolerance."""
    with DATA.open(encoding="utf-8", newline="") as file:
        found = next(one for one in csv.DictReader(file) if one["name"] == name)
    return D(found["expected"]), D(found["tolerance"])


def turning(mph: str, around: Decimal, gear: str, final: str) -> Decimal:
    return rpm(Quantity(D(mph), "mph"), Quantity(around, "in"), D(gear), D(final))


def speed(revs: str, around: Decimal, gear: str, final: str) -> Decimal:
    """mph at that rpm: rpm is proportional to speed."""
    return D(revs) / turning("1", around, gear, final)


CASES = {
    "mph_from_rpm_od": speed("2200", 28 * PI, "0.70", "3.73"),
    "mph_from_rpm_direct": speed("2200", 28 * PI, "1", "3.73"),
    "rpm_from_mph_od": turning("70", 28 * PI, "0.70", "3.73"),
    "rpm_at_60mph_28in_350": turning("60", 28 * PI, "1", "3.50"),
    # rpm = mph x gear x 336 / diameter in inches: a tyre of one inch, 1:1, at one mile an hour.
    "mph_constant_336": turning("1", PI, "1", "1"),
    # mph = rpm x radius in inches x this, over gear x final drive.
    "mph_per_rpm_radius_const": speed("1", 2 * PI, "1", "1"),
    # The wheel's own rpm at that speed; what is around it follows.
    "tyre_rpm_200mph": turning("200", D(1), "1", "1") / 2400,
    # Wheel speed of a truck: 32 m/s on a radius of 0.420 m.
    "tyre_rpm_truck": rpm(Quantity(D(32), "m/s"), Quantity(2 * PI * D("0.420"), "m"), D(1), D(1)),
    # 15 m/s on 0.300 m, in radians a second.
    "tyre_angular_speed": rpm(Quantity(D(15), "m/s"), Quantity(2 * PI * D("0.300"), "m"), D(1), D(1)) * 2 * PI / 60,
}


@pytest.mark.parametrize("name", CASES)
def test_worked_example(name: str) -> None:
    expected, tolerance = row(name)
    assert abs(CASES[name] - expected) <= tolerance
