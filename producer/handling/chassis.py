"""The chassis model: how a car is balanced in a left turn while it brakes, turns, or drives out.

Quasi-steady, four wheels, a spring of its own at each. Six steps: the car on the scales, the banked turn, the load that
the roll centres carry, the load that the springs carry (`loads`), the grip of each tyre, and what each axle needs.
Balance is 100 x (reserve of the rear axle - reserve of the front axle): more is tighter. Only differences of it mean
anything, and only they are ever shown. Units and conventions as in `car`. Sources: Milliken & Milliken, Race Car
Vehicle Dynamics (1995); Gillespie, Fundamentals of Vehicle Dynamics (1992); both from memory.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from producer.handling.car import Array, Car, Forces, Turn, corners
from producer.handling.loads import forces, loads

USED = 0.9  # share of the grip that a driver uses
SLOWEST, FASTEST = 15.0, 110.0  # m/s, between which the speed of a phase is looked for
_HALVINGS = 20  # of 95 m/s: closer than 0.1 mm/s


@dataclass(frozen=True, slots=True)
class State:
    """The four loads (N), what brakes and drive ask of each tyre along the car and the turn across it (N), and the
    reserves of the two axles: capacity / need, 1 is just enough."""

    loads: Array
    along: Array
    across: Array
    front_reserve: Array
    rear_reserve: Array

    @property
    def balance(self) -> Array:
        """100 x (rear reserve - front reserve): more is tighter."""
        return 100.0 * (self.rear_reserve - self.front_reserve)

    @property
    def work(self) -> Array:
        """What each tyre is asked to hold, N."""
        return np.sqrt(self.along**2 + self.across**2)


def grip(car: Car, wheel_loads: Array) -> Array:
    """What each tyre can hold, N: mu F (1 - s (F - F0) / F0); nothing without load."""
    load = np.maximum(wheel_loads, 0.0)
    share = 1 - car.sensitivity * (load - car.reference_load) / car.reference_load
    return car.grip * load * np.maximum(share, 0.0)


def speeds(car: Car, turn: Turn) -> Array:
    """The speed of each phase, m/s: 0.9 of the four grips before brakes and drive is what the turn asks for.

    By halving between 15 and 110 m/s; on a banking that holds any speed it is the upper end.
    """
    slow = np.full(np.broadcast_shapes(car.mass.shape, turn.radius.shape, turn.banking.shape), SLOWEST)
    fast = np.full_like(slow, FASTEST)
    for _ in range(_HALVINGS):
        middle = (slow + fast) / 2
        acting = forces(car, turn, middle)
        spare = USED * grip(car, loads(car, turn, acting)).sum(axis=0) > car.mass * acting.sideways
        slow, fast = np.where(spare, middle, slow), np.where(spare, fast, middle)
    return (slow + fast) / 2


def state(car: Car, turn: Turn, speed: Array) -> State:
    """Loads, work of the tyres and reserves of the axles at a speed in m/s.

    An axle without any grip left works 0/0: whoever asks leaves such cars out (`across` above 0 in all four).
    """
    acting = forces(car, turn, speed)
    wheel_loads = loads(car, turn, acting)
    grips, along = grip(car, wheel_loads), _along(car, acting)
    left = np.sqrt(np.maximum(grips**2 - along**2, 0.0))
    # Brakes and drive pull on the centre line, beside a centre of gravity left of it: drive turns the car in.
    turning = acting.forward * (car.left - 0.5) * (car.front_track + car.rear_track) / 2 / car.wheelbase
    front_need = car.front * car.mass * acting.sideways - turning
    rear_need = (1 - car.front) * car.mass * acting.sideways + turning
    front_reserve = (left[0] + left[1]) / front_need
    rear_reserve = (left[2] + left[3]) / rear_need
    across = left / corners(front_reserve, front_reserve, rear_reserve, rear_reserve)
    return State(wheel_loads, along, across, front_reserve, rear_reserve)


def _along(car: Car, acting: Forces) -> Array:
    """Brakes by their bias, drive at the rear, half at each wheel of an axle."""
    front = -acting.braking * car.bias / 2
    rear = (acting.driving - acting.braking * (1 - car.bias)) / 2
    return corners(front, front, rear, rear)
