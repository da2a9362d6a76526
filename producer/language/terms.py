"""The words of one garage: its settings, corners and ends as people name them, and where a text mentions them.

A mention is a cluster of such words ("the spring on the right front", "rear split", "left end of the track bar",
"both front springs"). Which setting a bare corner means is settled by what is said of it: see `claims`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from producer.basics.spelling import spell
from producer.language.lexicon import phrases
from producer.language.number_words import UNITS
from producer.language.tokens import words
from producer.model.garage import Garage
from producer.model.grid import Grid
from producer.model.words import CORNERS

# One candidate at a first word: (number of words, the words after the first, kind, data).
Candidate = tuple[int, list[str], str, object]
_SPLITS = {"front": "front_split", "rear": "rear_split"}
_AXLES = {"front": ("lf", "rf"), "rear": ("lr", "rr")}
_SIDES = {"left": ("lf", "lr"), "right": ("rf", "rr")}


@dataclass(frozen=True, slots=True)
class Mention:
    """Words that name settings: characters `start` to `end` (exclusive) of the text.

    `addresses` are the settings or splits meant, () where the words name a parameter without its corner, or a corner
    without its parameter. `parameter` is "" for a bare corner; `parts` are the corners or ends said; `axle` and `side`
    what was said of them.
    """

    start: int
    end: int
    parameter: str
    parts: tuple[str, ...]
    addresses: tuple[str, ...]
    axle: str = ""
    side: str = ""
    split: bool = False


@dataclass(frozen=True, eq=False)
class Vocabulary:
    """What a garage's settings are called, ready for reading. Build it once for a garage and keep it.

    A sentence without one of the `anchors` names no setting; one without a `signals` word says nothing of a subject.
    """

    garage: Garage
    phrases: Mapping[str, tuple[Candidate, ...]] = field(init=False, repr=False)
    anchors: frozenset[str] = field(init=False, repr=False)
    grids: Mapping[str, Grid] = field(init=False, repr=False)
    by_part: Mapping[str, tuple[str, ...]] = field(init=False, repr=False)
    heads: Mapping[str, frozenset[str]] = field(init=False, repr=False)
    signals: frozenset[str] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        table: dict[str, list[Candidate]] = {}
        forms = _forms(self.garage)
        for form, parameter in forms.items():
            table.setdefault(form[0], []).append((len(form), list(form[1:]), "param", parameter))
        for form, parameter in _short_forms(self.garage, forms):
            table.setdefault(form[0], []).append((len(form), list(form[1:]), "short", parameter))
        for form, kind, data in phrases():
            if form not in forms:
                table.setdefault(form[0], []).append((len(form), list(form[1:]), kind, data))
        ready = {first: tuple(sorted(found, key=lambda one: -one[0])) for first, found in table.items()}
        moving = {first for first, found in ready.items() if any(one[2] in _SIGNALS for one in found)}
        anchors = {first for first, found in ready.items() if any(one[2] in _ANCHORS for one in found)}
        heads: dict[str, set[str]] = {}
        for form, parameter in forms.items():
            heads.setdefault(parameter, set()).add(form[-1])
        object.__setattr__(self, "phrases", ready)
        object.__setattr__(self, "anchors", frozenset(anchors))
        object.__setattr__(self, "signals", frozenset(anchors | moving | set(UNITS)))
        object.__setattr__(self, "grids", _grids(self.garage))
        object.__setattr__(self, "by_part", _by_part(self.garage))
        object.__setattr__(self, "heads", {name: frozenset(found) for name, found in heads.items()})

    def role(self, parameter: str) -> str:
        """The role of a parameter, "" without one."""
        return self.garage.parameters[parameter].role or ""

    def of_role(self, role: str) -> str:
        """The first parameter of a role, "" where the garage has none."""
        return next((name for name, one in self.garage.parameters.items() if one.role == role), "")

    def cornered(self, parameter: str) -> bool:
        """Whether a parameter has a value for each corner."""
        return bool(parameter and self.garage.parameters[parameter].corners)

    def axle_of(self, corner: str) -> str:
        """The axle of a corner."""
        return "front" if corner.endswith("f") else "rear"

    def only_axle(self, parameter: str) -> str:
        """The axle of a parameter whose corners are all at one end of the car, else ""."""
        ends = {corner[1] for corner in self.garage.parameters[parameter].corners} if parameter else set()
        return {"f": "front", "r": "rear"}.get(ends.pop(), "") if len(ends) == 1 else ""

    def resolve(
        self, parameter: str, parts: tuple[str, ...] = (), axle: str = "", side: str = "", split: bool = False
    ) -> tuple[str, ...]:
        """The addresses that a parameter and what was said of its place come to; () where something is missing."""
        if not parameter:
            return ()
        known = self.garage.parameters[parameter]
        if split:
            axle = axle or self.only_axle(parameter)
            address = f"{parameter}.{_SPLITS.get(axle, '')}"
            return (address,) if address in self.garage.splits else ()
        if known.ends and side == "both":
            return tuple(f"{parameter}.{one}" for one in known.ends)
        if known.ends:
            return (f"{parameter}.{side}",) if side in known.ends else ()
        if not known.corners:
            return (parameter,)
        axle = axle or self.only_axle(parameter)
        if not parts and axle and side in _SIDES:
            parts = tuple(one for one in _AXLES[axle] if one in _SIDES[side])
        return tuple(f"{parameter}.{one}" for one in parts if one in known.corners)

    def pair(self, axle: str) -> tuple[str, ...]:
        """Both corners of an axle."""
        return _AXLES[axle]

    def flank(self, side: str) -> tuple[str, ...]:
        """Both corners of a side."""
        return _SIDES[side]


# What the trade calls it, whatever the garage's page says (common practice, no source).
_OF_ROLE = {
    "shock_compression": ("comp", "compression"), "shock_rebound": ("reb", "rebound"), "spring": ("spring",),
    "track_bar": ("track bar", "panhard bar"), "tyre_pressure": ("tyre pressure",), "camber": ("camber",),
    "weight.cross": ("cross weight", "cross percentage", "cross wt"),
    "brake.front_bias": ("brake bias", "front brake bias", "bias"),
    "weight.front": ("nose weight", "nose percentage", "nose wt", "front wt", "front percent",
                     "front weight percentage"),
    "weight.left": ("left side weight", "left side percentage", "left side percent",
    "left weight percentage", "left wt",
                    "left side wt"),
    "gear.final": ("final drive", "rear end gear", "final drive ratio", "gear ratio", "fd"),
    "steering.toe_out": ("toe out",),
    "bar.front": ("sway bar",),
}  # fmt: skip
# Short for a setting only where a figure stands beside it: "nose 50.5", "bias is at 62", "an inch and a quarter bar".
_SHORT = {
    "weight.front": ("nose",), "weight.left": ("left side", "left"), "bar.front": ("bar",),
}  # fmt: skip
_ANCHORS = frozenset({"param", "short", "corner", "split"})
_SIGNALS = frozenset({"move", "take", "put", "shift"})


def _forms(garage: Garage) -> dict[tuple[str, ...], str]:
    """Every way a parameter is called, as words; the first parameter keeps a form that two share."""
    found: dict[tuple[str, ...], str] = {}
    for name, parameter in garage.parameters.items():
        for said in (parameter.name, *parameter.say, *_OF_ROLE.get(parameter.role or "", ())):
            for spelling in ("us", "uk"):
                form = tuple(words(spell(said, spelling)).text)
                for one in (form, (*form[:-1], f"{form[-1]}s") if form and not form[-1].endswith("s") else form):
                    if one:
                        found.setdefault(one, name)
    return found


def _short_forms(garage: Garage, forms: Mapping[tuple[str, ...], str]) -> Iterator[tuple[tuple[str, ...], str]]:
    """What is short for the first parameter of a role, where the garage has no such name for anything."""
    for role, said in _SHORT.items():
        parameter = next((name for name, one in garage.parameters.items() if one.role == role), "")
        for one in said if parameter and not garage.parameters[parameter].parts else ():
            if tuple(one.split()) not in forms:
                yield tuple(one.split()), parameter


def _grids(garage: Garage) -> dict[str, Grid]:
    found = {address: setting.grid for address, setting in garage.settings.items()}
    for address, (right, left) in garage.splits.items():
        one, other = found[right], found[left]
        step = one.step if one.step and one.step == other.step else None
        low, high = one.low - other.high, one.high - other.low
        if step:
            # Differences of two grids of one step lie on a grid through the difference of their lowest places.
            places = Grid(low, high, step)
        else:
            places = Grid(low, high, Decimal(1).scaleb(-max(one.decimals, other.decimals)))
        found[address] = places
    return found


def _by_part(garage: Garage) -> dict[str, tuple[str, ...]]:
    return {
        part: tuple(name for name, parameter in garage.parameters.items() if part in parameter.corners)
        for part in CORNERS
    }
