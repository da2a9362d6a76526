"""What temperatures and wear say about pressure, camber, and which end of the car works harder.

Temperatures are outside, middle, inside, `inside` towards the car's centre line. Middle against the mean of the edges
is pressure (hot: too much air); edge against edge is camber, whose sign is the garage's (positive: the top leans
outward and loads the outside edge, negative the inside). Limits are differences of temperature: 5 °F for the middle,
20 °F between the edges, 10 °F between the ends of the car; five points of wear from front to rear are even. Common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from producer.basics.figures import figure, with_unit
from producer.basics.units import convert_interval
from producer.model.episode import StintEntry
from producer.model.tyre_readings import Temperatures, TyreFinding, Tyres, Wear
from producer.model.words import CORNER_NAMES, CORNERS, Corner, Direction
from producer.stints.pace import ENOUGH
from producer.stints.wording import sentence

MIDDLE = Decimal(5)  # °F
EDGES = Decimal(20)
ENDS = Decimal(10)
EVEN = Decimal(5)  # points of wear
_ALL = Decimal(100)


def tyres(stint: StintEntry, laps: int, unit: str) -> Tyres:
    """What was noted after a stint of `laps` laps; temperatures in `unit` (°F or °C)."""
    read = tuple(
        Temperatures(corner, three[0], three[1], three[2], unit)
        for corner in CORNERS
        if len(three := stint.temperatures.get(corner, ())) == 3
    )
    findings = [finding for one in read for finding in _of_corner(one)]
    shown = tuple(_with_finding(one, findings) for one in read)
    worn = wear({one: stint.wear[one] for one in CORNERS if one in stint.wear}, laps)
    return Tyres(shown, worn, (*findings, *_between(shown, unit), *_wear_finding(worn)))


def wear(used: Mapping[Corner, Decimal], laps: int) -> Wear | None:
    """Wear of the corners that were read, in percent used after `laps`; None where none was.

    How long the tyres last is not guessed from fewer than ten laps.
    """
    if not used:
        return None
    most = max(used.values())
    first = next(corner for corner, one in used.items() if one == most) if most > 0 else None
    lasts = int(laps * _ALL / most) if most > 0 and laps >= ENOUGH else None
    return Wear(
        used,
        laps,
        _apart(used, ("lf", "rf"), ("lr", "rr")),
        _apart(used, ("rf", "rr"), ("lf", "lr")),
        first,
        lasts,
        _wear_text(used, most, laps, lasts),
    )


def _with_finding(one: Temperatures, findings: list[TyreFinding]) -> Temperatures:
    said = " ".join(finding.text for finding in findings if finding.corner == one.corner)
    return Temperatures(one.corner, one.outside, one.middle, one.inside, one.unit, said)


def _of_corner(one: Temperatures) -> list[TyreFinding]:
    name, found = CORNER_NAMES[one.corner], []
    over = one.middle - (one.outside + one.inside) / 2
    if abs(over) > _limit(MIDDLE, one.unit):
        hot = over > 0
        text = (
            f"The middle of the {name} tyre is {_degrees(over, one.unit)} {'hotter' if hot else 'cooler'} than its "
            f"edges: {'less' if hot else 'more'} pressure there."
        )
        found.append(TyreFinding("pressure", one.corner, text, "tyre_pressure", "lower" if hot else "raise"))
    tilt = one.inside - one.outside
    if abs(tilt) > _limit(EDGES, one.unit):
        found.append(_camber(one, tilt, name))
    return found


def _camber(one: Temperatures, tilt: Decimal, name: str) -> TyreFinding:
    """A hot inside asks for a larger number (towards positive), a hot outside for a smaller one."""
    edge, other = ("inside", "outside") if tilt > 0 else ("outside", "inside")
    way: Direction = "raise" if tilt > 0 else "lower"
    text = f"The {edge} of the {name} tyre is {_degrees(tilt, one.unit)} hotter than its {other}: {_advice(one, edge)}."
    return TyreFinding("camber", one.corner, text, "camber", way)


def _advice(one: Temperatures, edge: str) -> str:
    # LF leans outward and RF inward on a car that turns left: there the hot edge means too much of it.
    much = (one.corner, edge) in (("lf", "outside"), ("rf", "inside"))
    if one.corner in ("lf", "rf"):
        return f"{'less' if much else 'more'} camber there"
    return "camber, where it can be set there"


def _between(read: tuple[Temperatures, ...], unit: str) -> list[TyreFinding]:
    """Right against left as it is, front against rear where it says something."""
    mean = {one.corner: one.mean for one in read}
    found = []
    sides = _apart(mean, ("rf", "rr"), ("lf", "lr"))
    if sides is not None:
        way = "hotter" if sides >= 0 else "cooler"
        text = f"The right side runs {_degrees(sides, unit)} {way} than the left."
        found.append(TyreFinding("sides", None, text))
    ends = _apart(mean, ("lf", "rf"), ("lr", "rr"))
    if ends is not None and abs(ends) > _limit(ENDS, unit):
        front = ends > 0
        text = (
            f"The {'front' if front else 'rear'} tyres run {_degrees(ends, unit)} hotter than the "
            f"{'rear' if front else 'front'} ones: the {'front' if front else 'rear'} of the car works harder, as on a "
            f"car that is {'tight' if front else 'loose'}."
        )
        found.append(TyreFinding("ends", None, text))
    return found


def _apart(of: Mapping[Corner, Decimal], one: tuple[Corner, Corner], other: tuple[Corner, Corner]) -> Decimal | None:
    if any(corner not in of for corner in (*one, *other)):
        return None
    return (of[one[0]] + of[one[1]] - of[other[0]] - of[other[1]]) / 2


def _limit(fahrenheit: Decimal, unit: str) -> Decimal:
    """A difference of temperature in the unit of the readings; 20 °F apart are 11.1 °C apart."""
    return convert_interval(fahrenheit, "°F", unit)


def _degrees(value: Decimal, unit: str) -> str:
    return with_unit(figure(abs(value), 0), unit)


def _wear_text(used: Mapping[Corner, Decimal], highest: Decimal, laps: int, lasts: int | None) -> str:
    """Of tyres that read the same nobody knows which is the first."""
    if highest <= 0:
        return "No tyre shows wear."
    names = [CORNER_NAMES[corner] for corner in CORNERS if used.get(corner) == highest]
    listed = " and ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)
    most = with_unit(figure(highest), "%")
    if len(names) > 1:
        if lasts is None:
            return f"The {listed} tyres are used most: {most}."
        how = f"The {listed} tyres give up first: {most} used after {laps} laps"
        return f"{how}, all of them by about lap {lasts} if they go on like that."
    if lasts is None:
        return f"The {listed} tyre is used most: {most}."
    how = f"The {listed} tyre gives up first: {most} used after {laps} laps"
    return f"{how}, all of it by about lap {lasts} if it goes on like that."


def _wear_finding(worn: Wear | None) -> list[TyreFinding]:
    if worn is None or worn.front_to_rear is None:
        return []
    apart = worn.front_to_rear
    if abs(apart) <= EVEN:
        return [TyreFinding("wear", None, "Front and rear wear evenly.")]
    front = apart > 0
    end = "front" if front else "rear"
    text = (
        f"the {end} tyres wear {figure(abs(apart), 1)} points more than the {'rear' if front else 'front'} ones: "
        f"over a long run the car gets {'tighter' if front else 'looser'}."
    )
    return [TyreFinding("wear", None, sentence(text))]
