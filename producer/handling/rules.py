"""Which rule holds for a setting of this garage on this track, and whether a movement helps a complaint or feeds it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from producer.handling.rules_table import RULES, Row
from producer.model.garage import Garage, Override, Setting
from producer.model.guide import Change
from producer.model.track import Track
from producer.model.words import PHASES, Complaint, Direction, Effect, Feel, Phase, turned

__all__ = ["RULES", "Row", "cure", "effect_of", "feeds", "goes_with_banking", "helps", "known_role", "rule"]


def rule(garage: Garage, track: Track | None, address: str) -> Row | None:
    """The row that holds for a setting or a split: the garage's own word first, then the built-in table.

    None for an address the garage lacks and for a role without a row. A row that goes with banking holds, phase by
    phase, where the rows of all the track's corners agree; without a track it has no opinion.
    """
    if address in garage.splits:
        return _split_rule(garage, track, address)
    setting = garage.settings.get(address)
    if setting is None:
        return None
    return _overridden(garage, _keys(setting), _built_in(setting.role, track), setting.role or address)


def effect_of(garage: Garage, track: Track | None, address: str, direction: Direction, phase: Phase) -> Effect | None:
    """What moving a setting or a split that way does in that phase of the corner.

    `none` where the garage asserts that nothing happens, None where nobody has an opinion.
    """
    row = rule(garage, track, address)
    return row.effect(phase, direction) if row else None


def known_role(role: str) -> bool:
    """Whether the table has a row for that role (`spring.rf`, `camber.lf`)."""
    return bool(_rows(role))


def goes_with_banking(garage: Garage, address: str) -> bool:
    """Whether the built-in rule of a setting (or of a corner of a split) changes with the banking of the track."""
    corners = garage.splits.get(address, (address,))
    roles = (garage.settings[one].role for one in corners if one in garage.settings)
    return any(row.banking for role in roles for row in _rows(role))


def cure(feel: Feel) -> Effect:
    """The effect that helps: a tight car wants looser, a loose one tighter."""
    return "looser" if feel == "tight" else "tighter"


def helps(change: Change, complaint: Complaint) -> bool:
    """Whether by rule the change makes the complaint smaller.

    A complaint without a phase is helped if some phase is helped and none is made worse.
    """
    found = _spoken(change.rule, complaint)
    return cure(complaint.feel) in found and _worse(complaint.feel) not in found


def feeds(change: Change, complaint: Complaint) -> bool:
    """Whether by rule the change makes the complaint worse.

    A complaint without a phase is fed if some phase is made worse and none is helped.
    """
    return feeds_by(change.rule, complaint)


def feeds_by(effects: Mapping[Phase, Effect | None], complaint: Complaint) -> bool:
    """As `feeds`, for the effects of a movement phase by phase."""
    found = _spoken(effects, complaint)
    return _worse(complaint.feel) in found and cure(complaint.feel) not in found


def _worse(feel: Feel) -> Effect:
    return turned(cure(feel), "lower")


def _spoken(effects: Mapping[Phase, Effect | None], complaint: Complaint) -> set[Effect | None]:
    phases = (complaint.where,) if complaint.where else PHASES
    return {effects.get(phase) for phase in phases}


def _rows(role: str) -> tuple[Row, ...]:
    return RULES.get(role) or RULES.get(role.rpartition(".")[0], ())


def _built_in(role: str, track: Track | None) -> Row | None:
    rows = _rows(role)
    if not rows:
        return None
    if rows[0].banking is None:
        return rows[0]
    corners = track.corners if track else ()
    return _agreed(rows[0], [_at(rows, one.banking) for one in corners])


def _at(rows: Iterable[Row], banking: Decimal | None) -> Row | None:
    if banking is None:
        return None
    return next((row for row in rows if row.banking and row.banking.holds(banking)), None)


def _agreed(like: Row, corners: list[Row | None]) -> Row:
    """What the rows of all corners say alike, phase by phase; a corner outside every band has no opinion."""

    def common(phase: Phase) -> Effect | None:
        said = {row.effect(phase) if row else None for row in corners}
        return said.pop() if len(said) == 1 else None

    source = next((row.source for row in corners if row), like.source)
    return Row(
        like.role, common("entry"), common("middle"), common("exit"), source, like.also, like.raising, like.lowering
    )


def _keys(setting: Setting) -> tuple[str, ...]:
    """The names under which a garage may override a setting, the most particular first."""
    named = (setting.address, setting.role, setting.parameter_id, setting.parameter.role or "")
    return tuple(dict.fromkeys(one for one in named if one))


def _overridden(garage: Garage, keys: Iterable[str], row: Row | None, role: str) -> Row | None:
    own = [garage.handling[key] for key in keys if key in garage.handling]
    if not own:
        return row
    entry, middle, leave = (_stated(own, row, phase) for phase in PHASES)
    also = next((one.also for one in own if one.also), "")
    source = f"the handling block of {garage.name}" + (f"; {row.source}" if row else "")
    if also or row is None:
        return Row(role, entry, middle, leave, source, also, own=True)
    return Row(role, entry, middle, leave, source, row.also, row.raising, row.lowering, own=True)


def _stated(own: Iterable[Override], row: Row | None, phase: Phase) -> Effect | None:
    said: Iterable[Effect | None] = (getattr(one, phase) for one in own)
    found = next((one for one in said if one is not None), None)
    return found if found is not None else row.effect(phase) if row else None


def _split_rule(garage: Garage, track: Track | None, address: str) -> Row | None:
    """The right corner's row, in the phases where the left corner's does not contradict it."""
    right_address, left_address = garage.splits[address]
    right, left = (rule(garage, track, one) for one in (right_address, left_address))
    split = address.rpartition(".")[2]
    role = f"{garage.settings[right_address].role.rpartition('.')[0]}.{split}"
    row: Row | None = None
    if right:
        entry, middle, leave = (_of_split(right, left, phase) for phase in PHASES)
        row = Row(role, entry, middle, leave, right.source, own=right.own)
    return _overridden(garage, dict.fromkeys((address, role)), row, role)


def _of_split(right: Row, left: Row | None, phase: Phase) -> Effect | None:
    """Raising a split raises the right corner or lowers the left one: both must do the same, or one be silent."""
    found = right.effect(phase)
    other = left.effect(phase, "lower") if left else None
    return found if other is None or other == found else None
