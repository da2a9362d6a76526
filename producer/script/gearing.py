"""What the final drive means in engine speed, said after its value."""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.figures import figure
from producer.model.gearing import Gearing
from producer.model.script import Passage
from producer.model.sheet import Sheet
from producer.script.speaker import Speaker


def gearing_line(speaker: Speaker, sheet: Sheet, gears: Gearing) -> Iterator[Passage]:
    """One passage: engine speed at the stint's top speed, else per ten of road speed, and what the next gears give."""
    if gears.rpm is None or gears.speed is None:
        ten = speaker.amount("10", gears.per_unit)
        yield Passage("talk", speaker.say("rpm-per-ten", ten=ten, rpm=str(gears.per_ten)))
        return
    speed = speaker.amount(figure(gears.speed.value), gears.speed.unit)
    yield Passage(
        "talk", " ".join(part for part in (_at(speaker, gears, speed), _steps(speaker, sheet, gears)) if part)
    )


def _at(speaker: Speaker, gears: Gearing, speed: str) -> str:
    if gears.margin is None:
        return speaker.say("rpm", speed=speed, rpm=str(gears.rpm))
    kind = "rpm-margin" if gears.margin > 0 else "rpm-over" if gears.margin < 0 else "rpm-limit"
    return speaker.say(kind, speed=speed, rpm=str(gears.rpm), margin=str(abs(gears.margin)))


def _steps(speaker: Speaker, sheet: Sheet, gears: Gearing) -> str:
    lower, higher = (
        (sheet.garage.figure(gears.address, one.final_drive), str(one.rpm)) if one else None
        for one in (gears.lower, gears.higher)
    )
    if lower and higher:
        return speaker.say("gear-steps", lower=lower[0], lower_rpm=lower[1], higher=higher[0], higher_rpm=higher[1])
    one = lower or higher
    return speaker.say("gear-step", gear=one[0], rpm=one[1]) if one else ""
