"""The built-in rule table: what *raising* a setting does at entry, in the middle and on exit of a left turn.

Raising is the larger number in the garage. `T` tighter, `L` looser, `.` no opinion: never offered, never a finding.
Each row names the published sources of its letters, `common practice, no source` where the trade knows it and nobody
wrote it down. Some rows hold only in a band of banking (degrees; the lower edge included, the upper one not).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from producer.model.words import PHASES, Direction, Effect, Phase, turned

COMMON = "common practice, no source"
_LETTERS: dict[str, Effect | None] = {"T": "tighter", "L": "looser", ".": None}


@dataclass(frozen=True, slots=True)
class Band:
    """Degrees of banking: `low` included, `high` excluded (None: no upper edge)."""

    low: Decimal
    high: Decimal | None = None

    def holds(self, banking: Decimal) -> bool:
        """Whether a corner of that banking lies in the band."""
        return self.low <= banking and (self.high is None or banking < self.high)


@dataclass(frozen=True, slots=True)
class Row:
    """One role: the effect of raising, by phase (None: no opinion; `none`: settled, nothing happens).

    `also` holds either way, `raising` and `lowering` for one way; `source` says who states it.
    `banking` None: at any banking. `own`: the garage's own word is in it.
    """

    role: str
    entry: Effect | None
    middle: Effect | None
    exit: Effect | None
    source: str
    also: str = ""
    raising: str = ""
    lowering: str = ""
    banking: Band | None = None
    own: bool = False

    def effect(self, phase: Phase, direction: Direction = "raise") -> Effect | None:
        """What that movement does in that phase; None without an opinion."""
        found: Effect | None = {"entry": self.entry, "middle": self.middle, "exit": self.exit}[phase]
        return None if found is None else turned(found, direction)

    def effects(self, direction: Direction) -> dict[Phase, Effect | None]:
        """What that movement does, phase by phase."""
        return {phase: self.effect(phase, direction) for phase in PHASES}

    def what_else(self, direction: Direction) -> str:
        """What else to know about that movement; "" for nothing."""
        one_way = self.raising if direction == "raise" else self.lowering
        return "; ".join(text for text in (one_way, self.also) if text)

    @property
    def speaks_of(self) -> tuple[Phase, ...]:
        """The phases in which raising does something."""
        return tuple(phase for phase in PHASES if self.effect(phase) in ("tighter", "looser"))


def _row(
    role: str,
    letters: str,
    source: str = COMMON,
    *,
    also: str = "",
    raising: str = "",
    lowering: str = "",
    banking: tuple[int, int | None] | None = None,
) -> Row:
    entry, middle, leave = (_LETTERS[one] for one in letters)
    band = Band(Decimal(banking[0]), None if banking[1] is None else Decimal(banking[1])) if banking else None
    return Row(role, entry, middle, leave, source, also, raising, lowering, band)


_GLOSSARY = "Super 7th Heaven suspension glossary (general handling table)"
_GRAPHIC = "Washington Post stock-car setup graphic"
_TIPS = "Circle Track magazine, late-season tips (Dec 2007)"
_DIRT = "Circle Track magazine, Track Tech Q&A Dirt Setup Contradictions (Sep 2011)"
_SETUP = "Hot Rod/CT Setup Tips (Dec 2002)"
_EXIT = "Circle Track magazine, Solving Exit Handling Problems p.2 (Sep 2007)"
_LOOSE = "Circle Track magazine, Basic Handling Solutions, loose setup page (Aug 2007)"
_SHOCKS = "Circle Track magazine, Shock Selection Guide (Feb 2004)"
_PRESSURE = "Longacre, More Than Tire Pressure (tech paper)"
_WEIGHT = "Circle Track magazine, Weight Transfer and Distribution (Apr 2004) for the principle"
_BANKED = f"{COMMON} (a left spring adds load only while it is compressed, so its sign goes with banking)"
_QUICKER = "quicker to act, less forgiving"
_SLOWER = "slower to act, more forgiving"
_LESS_AIR = "more grip until there is too little air, less straight-line speed"


def _rows() -> tuple[Row, ...]:
    return (*_weights(), *_springs(), *_bars(), *_drive(), *_dampers(), *_tyres())


def _weights() -> tuple[Row, ...]:
    wander = "under braking the car turns out more, on the throttle in"
    calm = "under braking the car turns out less, on the throttle in less"
    return (
        _row("weight.front", "TT.", f"{_GRAPHIC} (nose weight); {_GLOSSARY}", also="mainly an entry adjustment"),
        _row(
            "weight.cross",
            "TTT",
            f"{_GRAPHIC}; Hot Rod/CT About Load Distribution; Grassroots Motorsports Understanding Corner Weights",
            raising="slower rotation, more stable",
            lowering="quicker rotation, less stable",
        ),
        _row("weight.left", "...", _WEIGHT, also="re-set cross weight after it", raising=wander, lowering=calm),
    )


def _springs() -> tuple[Row, ...]:
    split = {"raising": "smaller rear split", "lowering": "larger rear split"}
    return (
        _row(
            "spring.rf",
            "TTT",
            f"{_TIPS}; {_SETUP}; exit: {COMMON}",
            raising="the right front tyre works harder",
            lowering="too soft, and the car rolls onto that tyre",
        ),
        _row("spring.lf", "LL.", _BANKED, banking=(12, None)),
        _row("spring.lr", "TTT", f"{_DIRT}; entry: {_BANKED}", banking=(12, None), **split),
        _row("spring.lr", ".T.", _DIRT, banking=(6, 12), **split),
        _row(
            "spring.rr",
            "LLL",
            f"{_DIRT}; {_TIPS}; entry: {COMMON}",
            raising="larger rear split, the right rear tyre works harder",
            lowering="smaller rear split",
        ),
    )


def _bars() -> tuple[Row, ...]:
    ends = f"{_LOOSE}; {_GLOSSARY}"
    return (
        _row("bar.front", "TTT", _GLOSSARY),
        _row("bar.front_preload", "TTT", f"{_EXIT}; entry and middle: {COMMON}"),
        _row("bar.rear", "LLL"),
        _row("track_bar", "LLL", ends),
        _row("track_bar.left", "LLL", also="felt most going in"),
        _row("track_bar.right", "LLL", f"{_GRAPHIC}; felt most coming off: {COMMON}", also="felt most coming off"),
    )


def _drive() -> tuple[Row, ...]:
    brakes = (
        "Stock Car Racing, Routine Brake Maintenance (Oct 2008); Circle Track magazine, Proper Brake System (Sep 2004)"
    )
    return (
        _row("brake.front_bias", "T..", brakes, also="while braking only"),
        _row(
            "gear.final",
            "..L",
            f"Circle Track magazine, Gear Ratio Guide (Apr 2009); {_TIPS}",
            raising="more rpm, nearer the limiter, more work for the rear tyres",
            lowering="fewer rpm, further from the limiter, less work for the rear tyres",
        ),
        _row("steering.toe_out", "..."),
        _row(
            "aero.tape",
            "...",
            raising="hotter engine, more front downforce",
            lowering="cooler engine, less front downforce",
        ),
    )


def _dampers() -> tuple[Row, ...]:
    def shock(role: str, letters: str, source: str = COMMON, also: str = "") -> Row:
        return _row(role, letters, source, also=also, raising=_QUICKER, lowering=_SLOWER)

    return (
        shock("shock_compression", "..."),
        shock("shock_rebound", "..."),
        shock("shock_compression.rf", "T..", f"{_TIPS}; {_SETUP}", "while the car takes its set"),
        shock("shock_rebound.lr", "L..", COMMON),
        shock("shock_compression.lr", "..T", _SHOCKS),
        shock("shock_rebound.rf", "..L", _EXIT),
    )


def _tyres() -> tuple[Row, ...]:
    air = f"{_PRESSURE}; sign: {COMMON}"
    rear = f"stock-car terms glossary, web page (2001); {_PRESSURE}"
    return (
        _row("tyre_pressure", "...", air, lowering=_LESS_AIR),
        _row("tyre_pressure.rf", "TTT", air, raising="a stiffer tyre", lowering=_LESS_AIR),
        _row("tyre_pressure.rr", "LLL", rear, raising="a stiffer tyre", lowering=_LESS_AIR),
        _row("stagger.rear", "LLL", f"{_EXIT}; {_GLOSSARY}", also="with a locked axle"),
        _row("camber", "...", also="set it from tyre temperatures"),
        _row("caster", "..."),
        _row("ride_height", "..."),
    )


def _table() -> dict[str, tuple[Row, ...]]:
    found: dict[str, tuple[Row, ...]] = {}
    for row in _rows():
        found[row.role] = (*found.get(row.role, ()), row)
    return found


# Role -> its rows: one, or one for each band of banking. A role without its corner (`camber`) stands for every corner
# that has no row of its own. Never written to after import.
RULES: Mapping[str, tuple[Row, ...]] = _table()
