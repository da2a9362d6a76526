"""Which settings are said in one breath, and which reasons belong to them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from producer.model.garage import Garage
from producer.model.sheet import SheetReason


@dataclass(frozen=True, slots=True)
class Block:
    """Settings whose values are all said before their reasons.

    `groups`: the settings of one parameter each, in the garage's order. `reasons` in the order they are told: what
    holds for several parameters first, then setting by setting, a split after its corners.
    """

    groups: tuple[tuple[str, ...], ...]
    reasons: tuple[SheetReason, ...]

    @property
    def addresses(self) -> tuple[str, ...]:
        """Every setting of the block."""
        return tuple(one for group in self.groups for one in group)


def blocks(garage: Garage, told: Sequence[str], reasons: Sequence[SheetReason]) -> tuple[Block, ...]:
    """The settings `told` of one page in order, one block a parameter; parameters that share a reason are one block.

    A reason that covers none of them is in no block.
    """
    groups = _groups(garage, told)
    spans = _merged([_span(groups, one) for one in reasons], len(groups))
    return tuple(_block(garage, groups[start:end], reasons) for start, end in spans)


def _groups(garage: Garage, told: Sequence[str]) -> list[tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for address in told:
        found.setdefault(garage.settings[address].parameter_id, []).append(address)
    return [tuple(group) for group in found.values()]


def _span(groups: Sequence[tuple[str, ...]], reason: SheetReason) -> tuple[int, int]:
    """First and last group that a reason touches, end exclusive; (0, 0) for none."""
    touched = [index for index, group in enumerate(groups) if set(group) & set(reason.covers)]
    return (touched[0], touched[-1] + 1) if touched else (0, 0)


def _merged(spans: Sequence[tuple[int, int]], count: int) -> list[tuple[int, int]]:
    joined = {index for start, end in spans for index in range(start + 1, end)}  # joined to the group before
    starts = [index for index in range(count) if index not in joined]
    return list(zip(starts, [*starts[1:], count], strict=True))


def _block(garage: Garage, groups: Sequence[tuple[str, ...]], reasons: Sequence[SheetReason]) -> Block:
    addresses = [one for group in groups for one in group]
    mine = [one for one in reasons if set(one.covers) & set(addresses)]
    ordered = sorted(mine, key=lambda one: _rank(garage, groups, addresses, one))
    return Block(tuple(groups), tuple(ordered))


def _rank(
    garage: Garage, groups: Sequence[tuple[str, ...]], addresses: Sequence[str], reason: SheetReason
) -> tuple[bool, int, bool]:
    start, end = _span(groups, reason)
    places = [index for index, address in enumerate(addresses) if address in reason.covers]
    split = all(one in garage.splits for one in reason.targets)
    return (end - start < 2, places[-1] if split else places[0], split)
