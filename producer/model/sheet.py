"""A setup resolved: every setting with its value, where it came from, and the reasons that hold for it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from producer.model.episode import Advice, Effects, Reason, Setup
from producer.model.garage import Garage, Setting
from producer.model.words import Direction, direction_of


@dataclass(frozen=True, slots=True)
class Movement:
    """What a reason explains: one setting or split from `start` to `end`; `against` says what `start` is.

    `against` is `default`, `number`, or the id of the setup compared with. A movement of nothing
    (`start == end`) has direction None.
    """

    address: str
    start: Decimal
    end: Decimal
    against: str

    @property
    def difference(self) -> Decimal:
        """end - start, in the setting's unit."""
        return self.end - self.start

    @property
    def direction(self) -> Direction | None:
        """`raise` for a larger number in the garage."""
        return direction_of(self.difference)


@dataclass(frozen=True, slots=True)
class SheetReason:
    """A reason that holds in this setup: `setup` wrote it, `inherited` if that was another setup.

    `targets` are the addresses its `for` names (splits as themselves), in the garage's order;
    `covers` the settings it explains here (those still at the value it was written for); `movements`
    one for each target whose start is known.
    """

    reason: Reason
    setup: str
    inherited: bool
    targets: tuple[str, ...]
    covers: tuple[str, ...]
    movements: tuple[Movement, ...]

    @property
    def because(self) -> str:
        """The author's words."""
        return self.reason.because

    @property
    def effect(self) -> Effects:
        """The effect that the author states for the movement."""
        return self.reason.effect

    @property
    def advice(self) -> tuple[Advice, ...]:
        """The author's advice, in the order written."""
        return self.reason.if_

    def movement(self, address: str) -> Movement | None:
        """The movement of one address."""
        return next((one for one in self.movements if one.address == address), None)


@dataclass(frozen=True, slots=True)
class Sheet:
    """One setup of an episode, complete as far as the author wrote it.

    `values` by address in the garage's order (settings that nothing gives a value are not in it);
    `base` the values it is compared with: those of the setup it is based on, else the garage's defaults.
    """

    setup: Setup
    garage: Garage
    values: Mapping[str, Decimal]
    base: Mapping[str, Decimal]
    base_setup: str | None
    reasons: tuple[SheetReason, ...] = field(default=())

    @property
    def id(self) -> str:
        """The setup's id."""
        return self.setup.setup

    @property
    def name(self) -> str:
        """The setup's name for people."""
        return self.setup.name

    def value(self, address: str) -> Decimal | None:
        """The value of a setting or a split."""
        return self.garage.value_of(address, self.values)

    def setting(self, address: str) -> Setting:
        """The garage's setting of that address."""
        return self.garage.settings[address]

    def shown(self, address: str) -> str:
        """The figure with its unit for people, of a setting or a split; `not set` where it has no value."""
        value = self.value(address)
        return "not set" if value is None else self.garage.shown(address, value)

    def figure(self, address: str) -> str:
        """The figure without its unit."""
        value = self.value(address)
        return "not set" if value is None else self.garage.figure(address, value)

    def differs(self, other: Sheet) -> tuple[str, ...]:
        """The settings whose value is another one here, in the garage's order."""
        return tuple(a for a in self.garage.settings if self.values.get(a) != other.values.get(a))
