"""Inheritance: `based_on` and `changes` made into complete sheets, and what each reason compares.

A setup whose chain of `based_on` is broken or runs in a circle has no sheet.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from producer.model.episode import Episode, Reason, Setup, flattened
from producer.model.garage import Garage
from producer.model.sheet import Movement, Sheet, SheetReason


def sheets(episode: Episode, garage: Garage) -> tuple[Sheet, ...]:
    """One sheet for each setup that can be resolved, in the author's order."""
    done: dict[str, Sheet] = {}
    for setup in episode.setups:
        _resolve(setup, episode, garage, done, ())
    return tuple(done[one.setup] for one in episode.setups if one.setup in done)


def circle(setup: Setup, episode: Episode) -> tuple[str, ...]:
    """The ids along `based_on` from `setup` if they come back to one of themselves, else ()."""
    seen: list[str] = [setup.setup]
    while setup.based_on:
        seen.append(setup.based_on)
        if setup.based_on in seen[:-1]:
            return tuple(seen)
        following = episode.setup(setup.based_on)
        if following is None:
            return ()
        setup = following
    return ()


def _resolve(
    setup: Setup, episode: Episode, garage: Garage, done: dict[str, Sheet], above: tuple[str, ...]
) -> Sheet | None:
    if setup.setup in done:
        return done[setup.setup]
    if setup.setup in above:
        return None
    parent: Sheet | None = None
    if setup.based_on:
        other = episode.setup(setup.based_on)
        parent = _resolve(other, episode, garage, done, (*above, setup.setup)) if other else None
        if parent is None:
            return None
    values = _values(setup, garage, parent)
    base = parent.values if parent else defaults(garage)
    bare = Sheet(setup, garage, values, base, parent.id if parent else None)
    known = {**{one.id: one.values for one in done.values()}, setup.setup: values}
    own = tuple(_own(reason, bare, _others(episode, garage, known, reason)) for reason in setup.reasons)
    inherited = _inherited(parent, bare, own) if parent else ()
    done[setup.setup] = Sheet(setup, garage, values, base, bare.base_setup, (*own, *inherited))
    return done[setup.setup]


def defaults(garage: Garage) -> dict[str, Decimal]:
    """The garage's defaults by address, for the settings that have one."""
    return {address: one.default for address, one in garage.settings.items() if one.default is not None}


def _values(setup: Setup, garage: Garage, parent: Sheet | None) -> dict[str, Decimal]:
    given = {**(parent.values if parent else {}), **flattened(setup.values), **flattened(setup.changes)}
    return {address: given[address] for address in garage.settings if address in given}


def _others(
    episode: Episode, garage: Garage, known: Mapping[str, Mapping[str, Decimal]], reason: Reason
) -> Mapping[str, Mapping[str, Decimal]]:
    """The values of the setup that a reason names, also where it stands later in the file."""
    name = reason.compared_with
    if not isinstance(name, str) or name in known or name == "default":
        return known
    other = episode.setup(name)
    if other is None:
        return known
    return {**known, name: plain_values(other, episode, garage)}


def plain_values(setup: Setup, episode: Episode, garage: Garage) -> dict[str, Decimal]:
    """The values along `based_on`, without reasons; {} where the chain is broken or runs in a circle."""
    chain: list[Setup] = [setup]
    while chain[-1].based_on:
        following = episode.setup(chain[-1].based_on)
        if following is None or following in chain:
            return {}
        chain.append(following)
    given: dict[str, Decimal] = {}
    for one in reversed(chain):
        given.update(flattened(one.values))
        given.update(flattened(one.changes))
    return {address: given[address] for address in garage.settings if address in given}


def _own(reason: Reason, sheet: Sheet, known: Mapping[str, Mapping[str, Decimal]]) -> SheetReason:
    garage = sheet.garage
    targets = tuple(dict.fromkeys(address for target in reason.for_ for address in garage.expand(target)))
    covers = tuple(dict.fromkeys(address for target in reason.for_ for address in garage.covers(target)))
    moved = (_movement(reason, address, sheet, known) for address in targets)
    return SheetReason(reason, sheet.id, False, targets, covers, tuple(one for one in moved if one is not None))


def _movement(
    reason: Reason, address: str, sheet: Sheet, known: Mapping[str, Mapping[str, Decimal]]
) -> Movement | None:
    end = sheet.value(address)
    start, against = _start(reason, address, sheet, known)
    return None if start is None or end is None else Movement(address, start, end, against)


def _start(
    reason: Reason, address: str, sheet: Sheet, known: Mapping[str, Mapping[str, Decimal]]
) -> tuple[Decimal | None, str]:
    compared = reason.compared_with
    if isinstance(compared, Decimal):
        return compared, "number"
    if compared == "default":
        return sheet.garage.value_of(address, defaults(sheet.garage)), "default"
    if isinstance(compared, str):
        return sheet.garage.value_of(address, known.get(compared, {})), compared
    return sheet.garage.value_of(address, sheet.base), sheet.base_setup or "default"


def _inherited(parent: Sheet, sheet: Sheet, own: tuple[SheetReason, ...]) -> tuple[SheetReason, ...]:
    """The parent's reasons for the settings whose value is unchanged and that have no reason of their own here."""
    explained = {address for one in own for address in one.covers}
    same = {a for a in sheet.values if sheet.values[a] == parent.values.get(a)} - explained
    kept = (_kept(one, same, sheet.garage) for one in parent.reasons)
    return tuple(one for one in kept if one is not None)


def _kept(reason: SheetReason, same: set[str], garage: Garage) -> SheetReason | None:
    covers = tuple(address for address in reason.covers if address in same)
    # A split is unchanged only while both its corners are.
    targets = tuple(t for t in reason.targets if all(a in same for a in garage.splits.get(t, (t,))))
    if not covers or not targets:
        return None
    moved = tuple(one for one in reason.movements if one.address in targets)
    return SheetReason(reason.reason, reason.setup, True, targets, covers, moved)
