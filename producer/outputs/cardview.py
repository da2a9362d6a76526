"""What a card says, arranged but not set: the pages of the garage with their figures, and what stands around them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from producer.basics.figures import NO_BREAK, figure, signed, with_unit
from producer.basics.spelling import spell
from producer.basics.units import Quantity, convert, counterpart, counterpart_decimals
from producer.model.dossier import Dossier
from producer.model.garage import Parameter, Setting
from producer.model.gearing import Gearing, GearStep
from producer.model.sheet import Sheet
from producer.model.words import CORNER_NAMES, ENDS
from producer.outputs.laps_told import laps_told

Kind = Literal["corners", "ends", "single"]
# Where the parts of a parameter stand, seen from above: left column left, front above.
_SEATS: dict[Kind, tuple[tuple[str, ...], ...]] = {
    "corners": (("lf", "rf"), ("lr", "rr")),
    "ends": (("left", "right"),),
    "single": (("",),),
}


@dataclass(frozen=True, slots=True)
class Cell:
    """One figure to type into the garage.

    `label` is `LF`, `left` or "" for the whole car, `full` the same in words. `attached` is the unit with the no-break
    space that ties it to the figure (`:1` has none); "" for clicks, and for corners and ends: the name of their
    parameter carries it. `other` is the figure in the other system of units with its unit, "" where both share it;
    `change` how far it is from the setup compared with, "" where it is the same.
    """

    address: str
    label: str
    full: str
    figure: str
    attached: str
    other: str
    change: str

    @property
    def shown(self) -> str:
        """The figure with its unit, never to be broken apart."""
        return self.figure + self.attached


@dataclass(frozen=True, slots=True)
class Block:
    """One parameter: its figures in rows as on the car seen from above, None where the car has none on that side.

    `splits` are finished words like `Rear split −25 lb/in`.
    """

    kind: Kind
    name: str
    unit: str
    rows: tuple[tuple[Cell | None, ...], ...]
    splits: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Page:
    """One page of the garage."""

    name: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """One setup's card.

    `rank` is `first` or `second` (every later setup): the accent. `facts` are short statements: revision, version,
    purpose; `legend` says what a marked figure differs from, `marks` whether any is marked; `gearing` are whole
    sentences, () where nothing is known; `laps` what the test laps say, () unless the author wants it on the card.
    """

    language: str
    title: str
    place: str
    setup: str
    setup_id: str
    rank: Literal["first", "second"]
    origin: str
    facts: tuple[str, ...]
    conditions: tuple[str, ...]
    untested: str
    legend: str
    marks: bool
    pages: tuple[Page, ...]
    gearing: tuple[str, ...]
    laps: tuple[str, ...]
    caution: str


def card(dossier: Dossier, sheet: Sheet) -> Card:
    """The card of one setup of an episode."""
    against = compared_with(dossier, sheet)
    place, spelling = f"{dossier.track.name}, {dossier.garage.name}", dossier.channel.spelling
    return Card(
        language="en-US" if spelling == "us" else "en-GB",
        title=f"{place}: {sheet.name}",
        place=place,
        setup=sheet.name,
        setup_id=sheet.id,
        rank="first" if sheet.id == dossier.first.id else "second",
        origin=_origin(dossier),
        facts=_facts(dossier, sheet),
        conditions=tuple(spell(f"{line.name}: {line.value}", spelling) for line in dossier.conditions)
        or ("Conditions: not written down",),
        untested="" if sheet.setup.tested else "Untested: nobody has driven these numbers yet.",
        legend=_legend(sheet, against),
        marks=against is not None and bool(sheet.differs(against)),
        pages=tuple(_pages(dossier, sheet, against)),
        gearing=tuple(_gearing(dossier, sheet)),
        laps=laps_on_card(dossier, sheet),
        caution=dossier.channel.caution,
    )


def laps_on_card(dossier: Dossier, sheet: Sheet) -> tuple[str, ...]:
    """What the test laps say of this setup, where the episode asks for it, or the channel and the episode is silent."""
    own = dossier.episode.card.test_laps
    wanted = dossier.channel.card.test_laps if own is None else own
    told = laps_told(dossier, sheet.id) if wanted else None
    return (f"Test laps: {told.driven}.", *told.sentences) if told is not None else ()


def compared_with(dossier: Dossier, sheet: Sheet) -> Sheet | None:
    """The setup that a card marks its differences from: the first, and for the first the second; None if alone."""
    if sheet.id != dossier.first.id:
        return dossier.first
    return dossier.others[0] if dossier.others else None


def other_unit(setting: Setting, value: Decimal) -> str:
    """The value in the other system of units with its unit, rounded to no more than a tenth of a click; "" if none."""
    unit = counterpart(setting.unit)
    if not unit:
        return ""
    converted = convert(value, setting.unit, unit)
    return with_unit(figure(converted, counterpart_decimals(_click(setting), setting.unit)), unit)


def _click(setting: Setting) -> Decimal:
    """The step, or the smallest distance between two choices."""
    grid = setting.grid
    if grid.step:
        return grid.step
    pairs = zip(grid.choices, grid.choices[1:], strict=False)
    return min((high - low for low, high in pairs), default=Decimal(1))


def _origin(dossier: Dossier) -> str:
    number = dossier.episode.number
    episode = "" if number is None else f", episode{NO_BREAK}{number}"
    return f"{dossier.channel.name}{episode}"


def _facts(dossier: Dossier, sheet: Sheet) -> tuple[str, ...]:
    stamp = dossier.stamps[sheet.id]
    driven = dossier.episode.tested_with
    if driven and sheet.setup.tested:
        version = f"tested with version {driven}"
    else:
        limits = dossier.garage.simulation.version
        version = f"limits of version {limits}" if limits else ""
    return tuple(one.replace(" ", NO_BREAK) for one in (stamp.label, version) if one)


def _legend(sheet: Sheet, against: Sheet | None) -> str:
    if against is None:
        return ""
    if not sheet.differs(against):
        return f"Every figure is the same as in {against.name}."
    return f"differs from {against.name}; +{NO_BREAK}means a larger number here"


def _pages(dossier: Dossier, sheet: Sheet, against: Sheet | None) -> Iterator[Page]:
    garage, spelling = dossier.garage, dossier.channel.spelling
    for page in dict.fromkeys(one.page for one in garage.settings.values()):
        parameters = {one.parameter_id: one.parameter for one in garage.on_page(page)}
        blocks = tuple(_block(sheet, against, name, one, spelling) for name, one in parameters.items())
        words = spell(page.replace("_", " ").replace("-", " "), spelling)
        yield Page(_capital(words), blocks)


def _block(sheet: Sheet, against: Sheet | None, name: str, parameter: Parameter, spelling: str) -> Block:
    settings = [one for one in sheet.garage.settings.values() if one.parameter_id == name]
    cells = {one.part: _cell(sheet, against, one) for one in settings}
    kind: Kind = "corners" if parameter.corners else "ends" if parameter.ends else "single"
    rows = (tuple(cells.get(part) for part in row) for row in _SEATS[kind])
    shown = tuple(row for row in rows if any(row))
    words = _capital(spell(parameter.name, spelling))
    return Block(kind, words, parameter.unit, shown, tuple(_splits(sheet, name, parameter)))


def _cell(sheet: Sheet, against: Sheet | None, setting: Setting) -> Cell:
    value = sheet.values.get(setting.address)
    before = against.values.get(setting.address) if against else None
    label = setting.part if setting.part in ENDS else setting.part.upper()
    full = CORNER_NAMES.get(setting.part, "")
    if value is None:
        return Cell(setting.address, label, full, "not set", "", "", "")
    change = "" if before is None or before == value else signed(value - before, setting.decimals)
    text = setting.figure(value)
    attached = "" if setting.part else setting.shown(value).removeprefix(text)
    return Cell(setting.address, label, full, text, attached, other_unit(setting, value), change)


def _splits(sheet: Sheet, name: str, parameter: Parameter) -> Iterator[str]:
    """The splits a driver works with: those of the springs, and those the author gives a reason for."""
    spoken = {target for reason in sheet.reasons for target in reason.targets}
    for address in sheet.garage.splits:
        parent, split = address.rsplit(".", 1)
        if parent == name and (parameter.role == "spring" or address in spoken) and sheet.value(address) is not None:
            words = f"{'Rear' if split == 'rear_split' else 'Front'} split"
            yield f"{words}{NO_BREAK}{sheet.shown(address)}".replace(" ", NO_BREAK)


def _gearing(dossier: Dossier, sheet: Sheet) -> Iterator[str]:
    gears = dossier.gearing.get(sheet.id)
    if gears is None:
        return
    if gears.rpm is None or gears.speed is None or gears.top_speed is None:
        yield f"Engine: {_rpm(gears.per_ten)} for every {with_unit('10', gears.per_unit)}."
        return
    speed = with_unit(figure(gears.speed.value), gears.speed.unit)
    beside = f" ({_beside(gears.top_speed, gears.speed)})"
    yield f"Engine: {_rpm(gears.rpm)} at {speed}{beside}{_margin(gears)}."
    ways = (("down", gears.lower), ("up", gears.higher))
    steps = [_step(sheet, gears, way, step) for way, step in ways if step is not None]
    if steps:
        yield f"Final drive {'; '.join(steps)}."


def _beside(top: Quantity, shown: Quantity) -> str:
    """The speed in the other system: as the author wrote it, if that is how it was written."""
    if top.unit != shown.unit:
        return with_unit(figure(top.value), top.unit)
    other = counterpart(top.unit)
    return with_unit(figure(top.into(other), 0), other)


def _margin(gears: Gearing) -> str:
    if gears.margin is None:
        return ""
    if gears.margin == 0:
        return ", at the limiter"
    way = "below" if gears.margin > 0 else "past"
    return f", {abs(gears.margin)} {way} the limiter"


def _step(sheet: Sheet, gears: Gearing, way: str, step: GearStep) -> str:
    return f"a step {way} ({sheet.garage.shown(gears.address, step.final_drive)}) gives {_rpm(step.rpm)}"


def _rpm(number: int) -> str:
    return with_unit(str(number), "rpm")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
