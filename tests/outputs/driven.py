"""Test laps written by hand, so that page and chart can be tested without statistics."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

from producer.model.dossier import Dossier
from producer.model.stints import Comparison, Evidence, Interval, Lap, Line, Pace, PaceAt, SetupLine, Stint, Total
from producer.model.tyre_readings import Temperatures, TyreFinding, Tyres, Wear

OUT = {1: ("35.200", "out lap"), 7: ("31.900", "traffic")}


def laps(start: float, slope: float, last: int) -> tuple[Lap, ...]:
    """Laps a few hundredths around a line, an out lap, and one in traffic."""
    found = []
    for number in range(1, last + 1):
        seconds, why = OUT.get(number, (f"{start + slope * number + (number % 3 - 1) * 0.03:.3f}", ""))
        found.append(Lap(number, Decimal(seconds), number + 1, note=why, left_out=why))
    return tuple(found)


def stint(setup: str, name: str, number: int = 1, last: int = 20, **parts: Any) -> Stint:
    """A stint with what was read off its tyres."""
    hot = Temperatures("rf", Decimal(201), Decimal(206), Decimal(211), "\u00b0F")
    wear = Wear({"lf": Decimal(12), "rf": Decimal(24)}, last, None, None, "rf", 83)
    finding = TyreFinding("pressure", "rf", "Right front: the tyre is hotter in the middle, so it wants less air.")
    start, slope = (31.25, 0.03) if setup == "short" else (31.35, 0.02)
    line = Line("least squares", slope, start, Interval(slope - 0.002, slope + 0.002))
    usual: dict[str, Any] = {
        "setup": setup, "setup_name": name, "index": 0, "number": number, "file": f"{setup}-{number}.csv",
        "laps": laps(start, slope, last), "driving": "smooth", "conditions": (), "fuel_unit": "gal",
        "pace": Pace(line, line, (PaceAt(1, start + slope),)), "refusal": "",
        "tyres": Tyres((hot,), wear, (finding,)), "may": (f"The {name.lower()} saves its tyres.",), "may_not": (),
    }  # fmt: skip
    return Stint(**{**usual, **parts})


def line(one: Stint) -> SetupLine:
    """Its line with a band of two hundredths."""
    assert one.pace is not None
    fitted = one.pace.line
    band = tuple(
        PaceAt(lap, fitted.at(lap), Interval(fitted.at(lap) - 0.02, fitted.at(lap) + 0.02))
        for lap in range(1, one.last + 1)
    )
    points = tuple((lap.number, float(lap.seconds or 0), lap.kept) for lap in one.laps)
    return SetupLine(one.setup, one.setup_name, fitted, fitted, len(one.kept), one.last, (one.index,), band, points)


def comparison(**parts: Any) -> Comparison:
    """The long run against the short run."""
    usual: dict[str, Any] = {
        "first": "short", "second": "long", "first_name": "Short run", "second_name": "Long run", "laps": 20,
        "comparable": True, "why_not": (), "falloff_difference": -0.01, "falloff_interval": Interval(-0.012, -0.008),
        "crossover_lap": 10.1, "interval": Interval(6.3, 12.9), "method": "Fieller", "ahead_from_lap": 19,
        "totals": (Total(20, -0.1, Interval(-0.2, -0.05)),), "title": "Long run is ahead from lap 19",
        "paragraph": "In total time the long run is ahead from about lap 19.",
        "crossover_text": "Equal pace at lap 10 (95 %: lap 6 to 13, Fieller).",
        "ahead_text": "Total time: the long run is ahead from lap 19.", "may": ("The long run saves its tyres.",),
        "may_not": ("Nothing about more than 20 laps.",), "notes": ("The colour of the flag was green.",),
        "ahead_interval": (12, 20),
    }  # fmt: skip
    return Comparison(**{**usual, **parts})


def evidence(*stints: Stint, compared: Comparison | None = None) -> Evidence:
    """Of these stints; a line for each setup's first stint with a pace."""
    firsts = [one for one in stints if one.pace is not None and one.number == 1]
    return Evidence(
        "marrow-creek-grand-sedan", stints, tuple(line(one) for one in firsts), (compared,) if compared else ()
    )


def driven(dossier: Dossier, found: Evidence | None = None) -> Dossier:
    """The dossier with two stints and what parts them, or with that evidence."""
    usual = evidence(stint("short", "Short run"), stint("long", "Long run", index=1), compared=comparison())
    return replace(dossier, evidence=found or usual)
