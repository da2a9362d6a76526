from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.units import Quantity, quantity
from producer.handling.gearing import gearing, reaches_limiter, rpm, rpm_at, top_speed
from producer.model.gearing import GearStep
from producer.model.library import Case

Cases = Callable[..., Case]
D = Decimal
FINAL = "      final_drive: 3.90"


def mph(text: str) -> Quantity:
    return Quantity(D(text), "mph")


def test_with_a_top_speed(case_of: Cases) -> None:
    case = case_of()
    found = gearing(case.sheets[0].garage, case.sheets[0], mph("142"), "us")
    # 142 mph x 1056 in/min per mph / 86.5 in x 3.90 = 6760.8 rpm
    assert found is not None
    assert (found.address, found.final_drive, found.rpm, found.limit, found.margin) == (
        "final_drive", D("3.90"), 6761, 8200, 1439,
    )  # fmt: skip
    assert found.lower == GearStep(D("3.80"), 6587)
    assert found.higher == GearStep(D("4.00"), 6934)
    assert (found.per_ten, found.per_unit) == (476, "mph")


def test_without_a_top_speed_there_is_rpm_per_ten_and_no_margin(case_of: Cases) -> None:
    case = case_of()
    found = gearing(case.sheets[0].garage, case.sheets[0], None, "metric")
    assert found is not None
    assert (found.per_ten, found.per_unit, found.limit) == (296, "km/h", 8200)
    assert (found.rpm, found.margin, found.lower, found.higher) == (None, None, None, None)


@pytest.mark.parametrize(("final", "lower", "higher"), [("3.70", None, "3.80"), ("4.11", "4.00", None)])
def test_at_the_end_of_the_choices(case_of: Cases, final: str, lower: str | None, higher: str | None) -> None:
    sheet = case_of(edit=(FINAL, f"      final_drive: {final}")).sheets[0]
    found = gearing(sheet.garage, sheet, mph("150"), "us")
    assert found is not None
    assert (found.lower and str(found.lower.final_drive)) == lower
    assert (found.higher and str(found.higher.final_drive)) == higher


@pytest.mark.parametrize(
    "text",
    [
        "86.5",  # no unit
        "86.5 kg",
        "0 in",
    ],
)
def test_a_circumference_that_is_none_gives_nothing(case_of: Cases, text: str) -> None:
    case = case_of()
    sheet = case.sheets[0]
    car = sheet.garage.car.model_copy(update={"tyre_circumference": quantity(text)})
    garage = sheet.garage.model_copy(update={"car": car})
    assert gearing(garage, sheet, mph("142"), "us") is None
    assert not reaches_limiter(garage, mph("900"), D(4))
    assert rpm_at(garage, mph("142"), D(4)) is None


@pytest.mark.parametrize("known", ["tyre_circumference", "top_gear"])
def test_an_unknown_car_gives_nothing(case_of: Cases, known: str) -> None:
    sheet = case_of().sheets[0]
    garage = sheet.garage.model_copy(update={"car": sheet.garage.car.model_copy(update={known: None})})
    assert gearing(garage, sheet, mph("142"), "us") is None


def test_without_a_limiter_there_is_no_margin(case_of: Cases) -> None:
    sheet = case_of().sheets[0]
    garage = sheet.garage.model_copy(update={"car": sheet.garage.car.model_copy(update={"rev_limit": None})})
    found = gearing(garage, sheet, mph("142"), "us")
    assert found is not None
    assert (found.rpm, found.limit, found.margin) == (6761, None, None)
    assert not reaches_limiter(garage, mph("900"), D(4))


def test_a_setup_without_a_final_drive_has_no_gearing(case_of: Cases) -> None:
    sheet = case_of(edit=(FINAL, "      gadget: 5")).sheets[0]
    assert gearing(sheet.garage, sheet, mph("142"), "us") is None


@pytest.mark.parametrize(
    ("speed", "units", "turning"),
    [
        (Quantity(D(142), ""), "us", 6761),  # a bare figure is in the channel's unit
        (Quantity(D(142), ""), "metric", 4201),
        (Quantity(D("228.526848"), "km/h"), "us", 6761),
        (Quantity(D(142), "ft"), "us", None),
    ],
)
def test_units_of_the_top_speed(case_of: Cases, speed: Quantity, units: str, turning: int | None) -> None:
    sheet = case_of().sheets[0]
    found = gearing(sheet.garage, sheet, speed, units)  # type: ignore[arg-type]
    assert found is not None
    assert found.rpm == turning


def test_top_speed_is_the_highest_of_the_setups_own_stints(case_of: Cases) -> None:
    case = case_of(
        """
stints:
  - { setup: short, file: a.csv, top_speed: 141 mph }
  - { setup: short, file: b.csv, top_speed: 230 km/h }
  - { setup: long, file: c.csv, top_speed: 190 mph }
  - { setup: short, file: d.csv }
"""
    )
    assert top_speed(case, "short") == Quantity(D(230), "km/h")
    assert top_speed(case, "qualifying") is None


def test_halves_are_rounded_to_the_even_rpm() -> None:
    # 1 m around, 1:1: one revolution a metre; 0.475 m/s is 28.5 rpm.
    half = rpm(Quantity(D("0.475"), "m/s"), Quantity(D(1), "m"), D(1), D(1))
    assert half == D("28.5")
    assert round(half) == 28


@pytest.mark.parametrize(
    ("speed", "around"),
    [(("142", "in"), ("86.5", "in")), (("142", "mph"), ("86.5", "mph")), (("142", "mph"), ("0", "in"))],
)
def test_rpm_refuses_what_is_no_speed_or_no_length(speed: tuple[str, str], around: tuple[str, str]) -> None:
    with pytest.raises(ValueError, match="wanted"):
        rpm(Quantity(D(speed[0]), speed[1]), Quantity(D(around[0]), around[1]), D(1), D(4))


@given(st.decimals(1, 250, places=1), st.decimals(60, 110, places=1), st.decimals(3, 7, places=2))
def test_rpm_gives_the_speed_back(speed: Decimal, around: Decimal, final: Decimal) -> None:
    turning = rpm(Quantity(speed, "mph"), Quantity(around, "in"), D("1.25"), final)
    back = turning * around / (D("1.25") * final) * 60 / 63360
    assert abs(back - speed) < D("1e-20")


def test_the_limiter_is_reached_at_its_very_rpm(case_of: Cases) -> None:
    garage = case_of().sheets[0].garage
    exact = D(8200) * D("86.5") / D(1056) / D("4.00")  # mph at 8200 rpm in 4.00
    assert reaches_limiter(garage, Quantity(exact + D("1e-9"), "mph"), D("4.00"))
    assert not reaches_limiter(garage, Quantity(exact - D("1e-9"), "mph"), D("4.00"))
    assert not reaches_limiter(garage, None, D("4.00"))
