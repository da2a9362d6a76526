"""The loads of the four tyres: on the scales, in the banked turn, through the roll centres and through the springs.

Heave, roll and pitch are solved together: with four different springs they are coupled, and that is why the left
springs turn round with banking. Sources: Milliken & Milliken, Race Car Vehicle Dynamics (1995); Gillespie,
Fundamentals of Vehicle Dynamics (1992); both from memory.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from producer.handling.car import GRAVITY, Array, Car, Forces, Turn, corners

AIR_DRAG = 0.6  # half the density of air, kg/m^3


def standing(car: Car, weight: Array) -> Array:
    """The four loads of the car on the scales, N: LF = W (front + left - cross) / 2, the others from the shares."""
    lf = weight * (car.front + car.left - car.cross) / 2
    rf, lr = weight * car.front - lf, weight * car.left - lf
    return corners(lf, rf, lr, weight - lf - rf - lr)


def forces(car: Car, turn: Turn, speed: Array) -> Forces:
    """The banked turn at a speed in m/s."""
    turning = speed**2 / turn.radius
    cos, sin = np.cos(turn.banking), np.sin(turn.banking)
    braking = turn.brake * car.mass * GRAVITY
    driving = turn.throttle * car.drive
    return Forces(
        sideways=turning * cos - GRAVITY * sin,
        pressing=car.mass * (GRAVITY * cos + turning * sin),
        forward=driving - braking - AIR_DRAG * car.drag_area * speed**2,
        braking=braking,
        driving=driving,
        front_downforce=car.front_downforce * speed**2,
        rear_downforce=car.rear_downforce * speed**2,
    )


def wheel_rates(car: Car) -> Array:
    """Each corner's rate at the ground, N/m: spring x motion ratio squared, in series with the tyre's rate."""
    motion = corners(car.front_motion, car.front_motion, car.rear_motion, car.rear_motion)
    at_wheel = car.spring * motion**2
    return at_wheel * car.tyre_rate / (at_wheel + car.tyre_rate)


def positions(car: Car) -> tuple[Array, Array]:
    """x from the centre of gravity and y from the centre line of the four wheels, m."""
    ahead, behind = car.wheelbase * (1 - car.front), -car.wheelbase * car.front
    front, rear = car.front_track / 2, car.rear_track / 2
    return corners(ahead, ahead, behind, behind), corners(-front, front, -rear, rear)


def loads(car: Car, turn: Turn, acting: Forces) -> Array:
    """The four loads in the turn, N; below 0 where the model asks a wheel to hold the road."""
    x, y = positions(car)
    damping = _damping(car, turn, x, y)
    heave, roll, pitch = attitude(car, acting, damping)
    elastic = wheel_rates(car) * (heave + roll * y + pitch * x)
    front_bar, rear_bar = car.front_bar * roll * car.front_track, car.rear_bar * roll * car.rear_track
    bars = corners(-front_bar, front_bar, -rear_bar, rear_bar)
    return standing(car, car.mass * GRAVITY) + rigid(car, acting) + elastic + bars + damping


def rigid(car: Car, acting: Forces) -> Array:
    """What goes past the springs, N: through the roll centres, the unsprung mass, anti-dive and anti-squat."""
    front_mass, rear_mass = _sprung(car)
    high = car.unsprung_height
    front = acting.sideways * (front_mass * car.front_roll_centre + car.unsprung_front * high) / car.front_track
    rear = acting.sideways * (rear_mass * car.track_bar + car.unsprung_rear * high) / car.rear_track
    along = _anti(car, acting) * acting.forward * car.cg_height / car.wheelbase / 2
    return corners(-front - along, front - along, -rear + along, rear + along)


def roll_arm(car: Car) -> Array:
    """From the roll axis up to the centre of gravity of what stands on the springs, m."""
    front, rear = _sprung(car)
    unsprung = car.unsprung_front + car.unsprung_rear
    height = (car.mass * car.cg_height - unsprung * car.unsprung_height) / (front + rear)
    return height - (front * car.front_roll_centre + rear * car.track_bar) / (front + rear)


def attitude(car: Car, acting: Forces, damping: Array) -> tuple[Array, Array, Array]:
    """Heave (m, down), roll and pitch (rad, to the right and nose down) away from the attitude on the scales."""
    x, y = positions(car)
    rates, arm = wheel_rates(car), roll_arm(car)
    sprung = car.mass - car.unsprung_front - car.unsprung_rear
    bars = car.front_bar * car.front_track**2 + car.rear_bar * car.rear_track**2
    extra = acting.pressing - car.mass * GRAVITY
    # What presses the car into a banked turn acts at its centre of gravity, left of the middle: it rolls the car.
    couple = -extra * (car.left - 0.5) * car.front_track
    down = extra + acting.front_downforce + acting.rear_downforce - damping.sum(axis=0)
    over = sprung * acting.sideways * arm + couple - (damping * y).sum(axis=0)
    dive = (1 - _anti(car, acting)) * acting.forward * car.cg_height
    nose = acting.front_downforce * x[0] + acting.rear_downforce * x[2] - dive - (damping * x).sum(axis=0)
    stiffness = _Symmetric(
        rates.sum(axis=0),
        (rates * y).sum(axis=0),
        (rates * x).sum(axis=0),
        (rates * y * y).sum(axis=0) + bars - sprung * GRAVITY * arm,
        (rates * x * y).sum(axis=0),
        (rates * x * x).sum(axis=0),
    )
    return stiffness.solve(down, over, nose)


def _sprung(car: Car) -> tuple[Array, Array]:
    """The mass on the springs of each axle, kg."""
    return car.mass * car.front - car.unsprung_front, car.mass * (1 - car.front) - car.unsprung_rear


def _damping(car: Car, turn: Turn, x: Array, y: Array) -> Array:
    """Damper forces at the wheels, N: more load where the wheel moves up."""
    velocity = turn.roll_rate * y + turn.pitch_rate * x
    return velocity * np.where(velocity > 0, car.compression, car.rebound)


def _anti(car: Car, acting: Forces) -> Array:
    """The share of the transfer along the car that the links carry."""
    return np.where(acting.forward < 0, car.anti_dive, car.anti_squat)


@dataclass(frozen=True, slots=True)
class _Symmetric:
    """A symmetric 3 x 3 matrix of arrays over heave (z), roll (r) and pitch (p)."""

    zz: Array
    zr: Array
    zp: Array
    rr: Array
    rp: Array
    pp: Array

    def solve(self, down: Array, over: Array, nose: Array) -> tuple[Array, Array, Array]:
        """By cofactors: at this size faster and as exact as elimination."""
        a = self.rr * self.pp - self.rp**2
        b = self.rp * self.zp - self.zr * self.pp
        c = self.zr * self.rp - self.rr * self.zp
        d = self.zz * self.pp - self.zp**2
        e = self.zr * self.zp - self.zz * self.rp
        f = self.zz * self.rr - self.zr**2
        whole = self.zz * a + self.zr * b + self.zp * c
        return (
            (a * down + b * over + c * nose) / whole,
            (b * down + d * over + e * nose) / whole,
            (c * down + e * over + f * nose) / whole,
        )
