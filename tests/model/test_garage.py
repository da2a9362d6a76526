"""A garage as the viewer walks through it: order, names, addresses, splits, figures."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from producer.library.load import load
from producer.model.garage import Garage

BASE = Path(__file__).parent.parent / "checks" / "base"


@pytest.fixture(scope="module")
def garage() -> Garage:
    return load(BASE)[0].garages["grand-sedan"]


def test_settings_stand_in_the_order_of_the_pages(garage: Garage) -> None:
    pages = [one.page for one in garage.settings.values()]
    assert pages == sorted(pages, key=garage.pages.index)
    assert list(garage.settings)[:5] == ["tyre_pressure.lf", "tyre_pressure.rf", "tyre_pressure.lr", "tyre_pressure.rr",
                                         "camber.lf"]  # fmt: skip
    assert [one.address for one in garage.on_page("suspension")] == [
        "spring.lf", "spring.rf", "spring.lr", "spring.rr", "front_bar", "track_bar.left", "track_bar.right",
    ]  # fmt: skip
    assert garage.on_page("nowhere") == ()


@pytest.mark.parametrize(
    ("address", "name", "role", "unit"),
    [
        ("spring.rf", "Right front spring", "spring.rf", "lb/in"),
        ("track_bar.left", "Track bar, left end", "track_bar.left", "in"),
        ("front_weight", "Front weight", "weight.front", "%"),
        ("shock_rebound.lr", "Left rear rebound", "shock_rebound.lr", "clicks"),
    ],
)
def test_names(garage: Garage, address: str, name: str, role: str, unit: str) -> None:
    one = garage.settings[address]
    assert (one.name, one.role, one.unit) == (name, role, unit)
    assert garage.name_of(address) == name
    assert garage.unit_of(address) == unit


def test_splits(garage: Garage) -> None:
    assert garage.splits["spring.rear_split"] == ("spring.rr", "spring.lr")
    assert garage.splits["spring.front_split"] == ("spring.rf", "spring.lf")
    assert "camber.rear_split" not in garage.splits  # it has no rear corners
    assert "track_bar.rear_split" not in garage.splits
    assert garage.name_of("spring.rear_split") == "Rear spring split"
    assert garage.unit_of("spring.rear_split") == "lb/in"
    values = {"spring.lr": Decimal(225), "spring.rr": Decimal(300)}
    assert garage.value_of("spring.rear_split", values) == 75
    assert garage.value_of("spring.front_split", values) is None
    assert garage.value_of("spring.rr", values) == 300


@pytest.mark.parametrize(
    ("target", "named", "covered"),
    [
        ("spring.rf", 1, 1),
        ("spring.rear_split", 1, 2),
        ("spring", 4, 4),
        ("suspension", 7, 7),
        ("dampers", 8, 8),
        ("front_weight", 1, 1),
        ("spring.xx", 0, 0),
        ("nothing", 0, 0),
        ("", 0, 0),
    ],
)
def test_what_a_reason_can_be_for(garage: Garage, target: str, named: int, covered: int) -> None:
    assert len(garage.expand(target)) == named
    assert len(garage.covers(target)) == covered
    assert set(garage.covers(target)) <= set(garage.settings)


@pytest.mark.parametrize(
    ("address", "value", "shown"),
    [
        ("spring.rf", "750.0", "750\u00a0lb/in"),
        ("camber.rf", "-3.5", "−3.50\u00a0deg"),
        ("final_drive", "3.9", "3.90:1"),
        ("shock_rebound.lr", "5", "5"),
        ("front_toe", "0.125", "0.1250\u00a0in"),
        ("spring.rear_split", "-25", "−25\u00a0lb/in"),
    ],
)
def test_figures(garage: Garage, address: str, value: str, shown: str) -> None:
    assert garage.shown(address, Decimal(value)) == shown
    assert shown.startswith(garage.figure(address, Decimal(value)))
