"""A garage: what can be adjusted on one car class of the simulation, at one version of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from typing import Literal

from pydantic import Field, field_validator, model_validator

from producer.basics.figures import figure, with_unit
from producer.basics.units import unit
from producer.model.grid import Grid
from producer.model.record import Amount, Id, Number, Numbers, Record, Size, Text, Texts
from producer.model.words import CORNER_NAMES, CORNERS, ENDS, SPLITS, Effect


class Scale(Record):
    """The limits of one thing that can be set: `min`, `max` and `step`, or `choices`; all in the parameter's unit."""

    min: Number | None = None
    max: Number | None = None
    step: Number | None = None
    choices: Numbers = ()
    default: Number | None = None

    @model_validator(mode="after")
    def _complete(self) -> Scale:
        if self.choices:
            if any(a >= b for a, b in zip(self.choices, self.choices[1:], strict=False)):
                raise ValueError("choices are listed from the smallest to the largest, each once")
            if self.min is not None or self.max is not None or self.step is not None:
                raise ValueError("either choices or min, max and step, not both")
        elif self._ranged():
            if self.min is None or self.max is None or self.step is None:
                raise ValueError("min, max and step are wanted together (or choices)")
            if self.step <= 0 or self.max < self.min:
                raise ValueError("step is larger than 0 and max is not below min")
            if (self.max - self.min) / self.step > 100_000:
                raise ValueError("more than 100000 clicks between min and max")
        return self

    def _ranged(self) -> bool:
        return any(x is not None for x in (self.min, self.max, self.step, self.default))

    @property
    def grid(self) -> Grid | None:
        """The grid, or None where the scale says nothing (its corners or ends do)."""
        if self.choices:
            return Grid(self.choices[0], self.choices[-1], None, self.choices)
        if self.min is None or self.max is None or self.step is None:
            return None
        return Grid(self.min, self.max, self.step)


class Part(Scale):
    """The limits of one corner or end: here they cannot be left out."""

    @model_validator(mode="after")
    def _has_limits(self) -> Part:
        if self.grid is None:
            raise ValueError("min, max and step are wanted together (or choices)")
        return self


class Parameter(Scale):
    """One line of the garage: for the whole car, for each corner (`spring.rf`) or for each end (`track_bar.left`)."""

    page: Id
    name: Text
    say: Texts = ()
    role: Text | None = None
    unit: str = ""
    was: Id | None = None
    corners: dict[Literal["lf", "rf", "lr", "rr"], Part] = Field(default_factory=dict)
    ends: dict[Literal["left", "right"], Part] = Field(default_factory=dict)

    @model_validator(mode="after")
    def _one_shape(self) -> Parameter:
        shapes = [bool(self.corners), bool(self.ends), self.grid is not None]
        if sum(shapes) != 1:
            raise ValueError("one of: min, max and step; choices; corners; ends")
        return self

    @field_validator("unit")
    @classmethod
    def _known(cls, symbol: str) -> str:
        if symbol and unit(symbol) is None:
            raise ValueError(f"the unit '{symbol[:20]}' is not one we know (a shock's unit is clicks)")
        return symbol

    @property
    def parts(self) -> Mapping[str, Scale]:
        """The scales by corner or end, in the order of the car; empty for a whole-car parameter."""
        found: dict[str, Scale] = {str(part): scale for part, scale in [*self.corners.items(), *self.ends.items()]}
        return {part: found[part] for part in (*CORNERS, *ENDS) if part in found}


@dataclass(frozen=True)
class Setting:
    """One thing the viewer types into the garage: a parameter, or one corner or end of it.

    `address` is `front_weight`, `spring.rf`, `track_bar.left`; `part` is "" or the corner or end;
    `role` the row of the rule table (`spring.rf`), "" where the garage names none.
    """

    address: str
    parameter_id: str
    parameter: Parameter
    part: str
    grid: Grid
    default: Decimal | None

    @property
    def page(self) -> str:
        """The id of the garage page it stands on."""
        return self.parameter.page

    @property
    def unit(self) -> str:
        """The unit's symbol, "" if it has none."""
        return self.parameter.unit

    @property
    def role(self) -> str:
        """The role with its part: `spring.rf`; "" for a parameter without a role."""
        if not self.parameter.role:
            return ""
        return f"{self.parameter.role}.{self.part}" if self.part else self.parameter.role

    @property
    def name(self) -> str:
        """What a person calls it: `Front weight`, `Right front spring`, `Track bar, left end`."""
        if not self.part:
            return self.parameter.name
        if self.part in ENDS:
            return f"{self.parameter.name}, {CORNER_NAMES[self.part]}"
        named = f"{CORNER_NAMES[self.part]} {self.parameter.name}"
        return named[0].upper() + named[1:]

    @cached_property
    def decimals(self) -> int:
        """Decimals of every value of this setting."""
        return self.grid.decimals

    def figure(self, value: Decimal) -> str:
        """The value as it is written for people, without its unit: `750`, `51.5`, `−3.50`."""
        return figure(value, self.decimals)

    def shown(self, value: Decimal) -> str:
        """The value with its unit, never to be broken apart: `750 lb/in`; clicks are bare."""
        return with_unit(self.figure(value), "" if self.unit == "clicks" else self.unit)


class Simulation(Record):
    """The version of the simulation from which the limits were read, "" where it was not written down."""

    version: str = ""


class Option(Record):
    """What must be equal for two tests to be comparable; `for_` says who it is set for."""

    name: Text
    choices: Texts
    for_: Texts = Field(default=(), alias="for")


class Override(Record):
    """This simulation's own row of the rule table: the effect of raising. Left out: the built-in row stands."""

    entry: Effect | None = None
    middle: Effect | None = None
    exit: Effect | None = None
    also: str = ""


class Car(Record):
    """What is known of the car; the rest stays a range. Motion ratios are wheel travel shares (spring : wheel)."""

    mass: Amount | None = None
    rev_limit: Size | None = None
    tyre_circumference: Amount | None = None
    top_gear: Size | None = None
    wheelbase: Amount | None = None
    motion_ratio: dict[Literal["front", "rear"], Size] = Field(default_factory=dict)
    track_width: Amount | None = None
    cg_height: Amount | None = None


class Garage(Record):
    """One car class. `pages` is the order in which the screens are walked through."""

    format: Literal["1"]
    garage: Id
    name: Text
    simulation: Simulation = Field(default_factory=lambda: Simulation.model_validate({}))
    pages: Texts
    parameters: dict[Id, Parameter]
    options: dict[Id, Option] = Field(default_factory=dict)
    handling: dict[Text, Override] = Field(default_factory=dict)
    car: Car = Field(default_factory=lambda: Car.model_validate({}))

    @cached_property
    def settings(self) -> dict[str, Setting]:
        """Every setting by address, in the order of the pages, then of the file, then LF RF LR RR / left right."""
        ordered = sorted(self.parameters.items(), key=lambda item: self._page_index(item[1].page))
        return {one.address: one for name, parameter in ordered for one in _settings(name, parameter)}

    @cached_property
    def splits(self) -> dict[str, tuple[str, str]]:
        """Derived differences: `spring.rear_split` -> (`spring.rr`, `spring.lr`), value = first - second."""
        found: dict[str, tuple[str, str]] = {}
        for name, parameter in self.parameters.items():
            for split, (right, left) in SPLITS.items():
                if right in parameter.corners and left in parameter.corners:
                    found[f"{name}.{split}"] = (f"{name}.{right}", f"{name}.{left}")
        return found

    def on_page(self, page: str) -> tuple[Setting, ...]:
        """The settings of one page in order."""
        return tuple(one for one in self.settings.values() if one.page == page)

    def expand(self, target: str) -> tuple[str, ...]:
        """Addresses that a reason's `for` names: a setting, a split (itself), a whole parameter, a page.

        () where it names nothing.
        """
        if target in self.settings or target in self.splits:
            return (target,)
        if target in self.parameters:
            return tuple(one.address for one in self.settings.values() if one.parameter_id == target)
        return tuple(one.address for one in self.on_page(target)) if target in self.pages else ()

    def covers(self, target: str) -> tuple[str, ...]:
        """The settings a reason explains: as `expand`, a split standing for its two corners."""
        return tuple(x for address in self.expand(target) for x in self.splits.get(address, (address,)))

    def name_of(self, address: str) -> str:
        """What a person calls a setting or a split: `Rear spring split`."""
        if address in self.settings:
            return self.settings[address].name
        if address in self.splits:
            parameter, split = address.rsplit(".", 1)
            end = "Rear" if split == "rear_split" else "Front"
            return f"{end} {self.parameters[parameter].name} split"
        return address

    def unit_of(self, address: str) -> str:
        """The unit of a setting or a split."""
        return self.parameters[address.split(".", 1)[0]].unit if address.split(".", 1)[0] in self.parameters else ""

    def value_of(self, address: str, values: Mapping[str, Decimal]) -> Decimal | None:
        """The value of a setting or a split in these settings; None where something is missing."""
        if address in self.splits:
            right, left = (values.get(x) for x in self.splits[address])
            return None if right is None or left is None else right - left
        return values.get(address)

    def figure(self, address: str, value: Decimal) -> str:
        """A value of a setting or a split as it is written for people, without its unit."""
        return self.settings[self.splits.get(address, (address,))[0]].figure(value)

    def shown(self, address: str, value: Decimal) -> str:
        """A value of a setting or a split as it is written for people, with its unit."""
        return self.settings[self.splits.get(address, (address,))[0]].shown(value)

    def _page_index(self, page: str) -> int:
        return self.pages.index(page) if page in self.pages else len(self.pages)


def _settings(name: str, parameter: Parameter) -> list[Setting]:
    if not parameter.parts:
        return [Setting(name, name, parameter, "", _grid(parameter), parameter.default)]
    return [
        Setting(f"{name}.{part}", name, parameter, part, _grid(scale), scale.default)
        for part, scale in parameter.parts.items()
    ]


def _grid(scale: Scale) -> Grid:
    grid = scale.grid
    if grid is None:
        raise ValueError("a scale without limits")
    return grid
