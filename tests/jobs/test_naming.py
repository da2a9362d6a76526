"""Which setting is meant by whatever the author calls it."""

from __future__ import annotations

from pathlib import Path

import pytest

from producer.basics.errors import ProducerError
from producer.jobs.naming import which
from producer.library.records import build
from producer.model.garage import Garage

GARAGE = """
format: 1
garage: sample-car
name: Sample Car
pages: [tyres, ballast, suspension, drive]
parameters:
  pressure:
    page: tyres
    name: pressure
    say: [air]
    role: tyre_pressure
    unit: psi
    corners:
      lf: { min: 15, max: 40, step: 0.5 }
      rf: { min: 15, max: 40, step: 0.5 }
      lr: { min: 15, max: 40, step: 0.5 }
      rr: { min: 15, max: 40, step: 0.5 }
  front_weight: { page: ballast, name: Front weight, role: weight.front, unit: "%", min: 46, max: 56, step: 0.5 }
  cross_weight:
    { page: ballast, name: Cross weight, say: [wedge], role: weight.cross, unit: "%", min: 46, max: 56, step: 0.5 }
  spring:
    page: suspension
    name: spring
    say: [springs, coil]
    role: spring
    unit: lb/in
    corners:
      lf: { min: 300, max: 1300, step: 25 }
      rf: { min: 300, max: 1300, step: 25 }
      lr: { min: 100, max: 500, step: 25 }
      rr: { min: 100, max: 500, step: 25 }
  front_bar: { page: suspension, name: Front bar, role: bar.front, unit: in, min: 0.75, max: 1.5, step: 0.125 }
  track_bar:
    page: suspension
    name: Track bar
    say: [panhard bar]
    role: track_bar
    unit: in
    ends:
      left: { min: 6, max: 13, step: 0.25 }
      right: { min: 6, max: 13, step: 0.25 }
  tape: { page: drive, name: Grille tape, role: aero.tape, unit: "%", min: 0, max: 100, step: 5 }
  final_drive:
    { page: drive, name: Final drive, say: [rear gear], role: gear.final, unit: ":1", choices: [3.70, 3.80, 3.90] }
"""


@pytest.fixture(scope="module")
def garage() -> Garage:
    record, _, findings = build(Garage, str(Path("garages", "sample-car.yaml")), GARAGE)
    assert record is not None, findings
    return record


@pytest.mark.parametrize(
    ("wanted", "address"),
    [
        ("spring.rf", "spring.rf"),
        ("Spring.RF ", "spring.rf"),
        ("rf spring", "spring.rf"),
        ("spring rf", "spring.rf"),
        ("RF springs", "spring.rf"),
        ("Right front spring", "spring.rf"),
        ("right-front coil", "spring.rf"),
        ("rr air", "pressure.rr"),
        ("left rear tire pressure", "pressure.lr"),
        ("left rear tyre pressure", "pressure.lr"),
        ("Track bar, left end", "track_bar.left"),
        ("track bar left", "track_bar.left"),
        ("left track bar", "track_bar.left"),
        ("panhard right", "track_bar.right"),
        ("track_bar right", "track_bar.right"),
        ("rear split", "spring.rear_split"),
        ("rear_split", "spring.rear_split"),
        ("Rear spring split", "spring.rear_split"),
        ("rear pressure split", "pressure.rear_split"),
        ("wedge", "cross_weight"),
        ("cross", "cross_weight"),
        ("nose weight", "front_weight"),
        ("front weight", "front_weight"),
        ("front_weight", "front_weight"),
        ("rear gear", "final_drive"),
        ("gear", "final_drive"),
        ("sway bar", "front_bar"),
        ("TAPE", "tape"),
    ],
)
def test_one_setting(garage: Garage, wanted: str, address: str) -> None:
    assert which(garage, wanted) == address


def test_every_address_and_every_name_is_itself(garage: Garage) -> None:
    for one in (*garage.settings, *garage.splits):
        assert which(garage, one) == which(garage, garage.name_of(one)) == which(garage, one.replace("_", " ")) == one


@pytest.mark.parametrize(
    ("wanted", "listed"),
    [
        ("spring", "spring.lf, spring.rf, spring.lr, spring.rr, spring.front_split, spring.rear_split"),
        ("rf", "pressure.rf, spring.rf"),
        ("rear springs", "spring.lr, spring.rr"),
        ("spring split", "spring.front_split, spring.rear_split"),
        ("track bar", "track_bar.left, track_bar.right"),
        ("bar", "front_bar, track_bar.left, track_bar.right"),
        ("front", "pressure.lf, pressure.rf, front_weight, spring.lf, spring.rf, front_bar, pressure.front_split, "
                  "spring.front_split"),
    ],
)  # fmt: skip
def test_several_are_listed(garage: Garage, wanted: str, listed: str) -> None:
    with pytest.raises(ProducerError) as raised:
        which(garage, wanted)
    assert str(raised.value) == f"'{wanted}' has several: {listed}"


@pytest.mark.parametrize(
    ("wanted", "hint"),
    [
        ("right frnt spring", "did you mean 'spring.rf'?"),
        ("spring.fr", "did you mean 'spring.rf'?"),
        ("sprng lr", "did you mean 'spring.lr'?"),
        ("track bar lft", "did you mean 'track_bar.left'?"),
        ("wege", "did you mean 'cross_weight'?"),
        ("crossweight", "did you mean 'cross_weight'?"),
        ("tracks bar", "did you mean 'track_bar.left' or 'track_bar.right'?"),
        ("sprng", "did you mean 'spring.lf', 'spring.rf' or 'spring.lr'?"),
        # What is like nothing is not guessed at.
        ("nope", "its settings stand in garages/sample-car.yaml"),
        ("lr bump", "its settings stand in garages/sample-car.yaml"),
        ("wing", "its settings stand in garages/sample-car.yaml"),
        ("", "its settings stand in garages/sample-car.yaml"),
        (" . ", "its settings stand in garages/sample-car.yaml"),
    ],
)
def test_the_nearest_are_named_three_at_most(garage: Garage, wanted: str, hint: str) -> None:
    with pytest.raises(ProducerError) as raised:
        which(garage, wanted)
    assert str(raised.value) == f"the garage 'sample-car' has no setting '{wanted.strip()}'; {hint}"
