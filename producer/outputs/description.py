"""The description under the video, exactly as it is pasted: chapters, every number, conditions, links, caution."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from producer.basics.figures import figure, with_unit
from producer.basics.spelling import spell
from producer.captions.chapters import ChapterList, chapter_lines, clean_title
from producer.model.dossier import Dossier
from producer.model.garage import Setting
from producer.model.sheet import Sheet
from producer.model.words import ENDS
from producer.outputs.captions import chapters
from producer.outputs.laps_told import LapsTold, laps_told
from producer.outputs.outline import stamp_line
from producer.render.kit import Kit
from producer.script.speaker import capital, counted, listed, setup_name, small

_ANGLES = re.compile(r"[ \t]*[<>]+[ \t]*")


@dataclass(frozen=True, slots=True)
class NotesPage:
    """One page of the garage: its name and a line for each parameter, `Spring (lb/in): LF 725, RF 775 (was 700)`."""

    name: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class NotesSetup:
    """One setup: `lead` says what it is and what is listed, `missing` what has no value yet ("" where all have).

    `gearing` is one sentence, "" where nothing is known or it is the same as the first setup's.
    """

    lead: str
    pages: tuple[NotesPage, ...]
    missing: str
    gearing: str


@dataclass(frozen=True, slots=True)
class Description:
    """What `notes.txt.j2` shows. `chapters` is () where no list is legal; `about` are whole sentences: revision,
    version, conditions; `laps` None where test laps carry nothing."""

    hook: tuple[str, str]
    chapters: tuple[str, ...]
    setups: tuple[NotesSetup, ...]
    laps: LapsTold | None
    about: tuple[str, ...]
    links: tuple[str, ...]
    credits: str
    caution: str


def description(dossier: Dossier, kit: Kit, listed_chapters: ChapterList | None = None) -> str:
    """The text of notes.txt. It has no `<` and no `>`: the platform refuses them. Nothing is cut."""
    return without_angles(kit.text("notes.txt.j2", view(dossier, listed_chapters)))


def view(dossier: Dossier, listed_chapters: ChapterList | None = None) -> Description:
    """The description before it is set; `listed_chapters` where the caller has them already."""
    found = chapters(dossier) if listed_chapters is None else listed_chapters
    return Description(
        hook=_hook(dossier),
        chapters=chapter_lines(found.chapters),
        setups=tuple(_setup(dossier, one) for one in dossier.sheets),
        laps=laps_told(dossier),
        about=(f"{stamp_line(dossier)}.", *tested(dossier)),
        links=links(dossier),
        credits=f"Thanks for asking: {listed(dossier.credits)}." if dossier.credits else "",
        caution=dossier.channel.caution,
    )


def published_title(dossier: Dossier) -> str:
    """The title as it is pasted: one line without angle brackets; nothing is cut."""
    return clean_title(dossier.episode.title)


def without_angles(text: str) -> str:
    """The text without `<` and `>`; what stood on both sides stays apart."""
    return "\n".join(_ANGLES.sub(" ", line).strip(" ") if _ANGLES.search(line) else line for line in text.split("\n"))


def links(dossier: Dossier) -> tuple[str, ...]:
    """`Setup cards: https://...`, the channel's links as written; without any, its site."""
    channel = dossier.channel
    named = tuple(f"{one.name}: {one.url}" for one in channel.links)
    return named or ((f"{channel.name}: {channel.site}",) if channel.site else ())


def tested(dossier: Dossier) -> tuple[str, ...]:
    """On which version and under which conditions it was driven, or what is not written down."""
    version = dossier.episode.tested_with
    limits = dossier.garage.simulation.version
    untested = "" if any(one.setup.tested for one in dossier.sheets) else "Not driven yet; "
    read = f"limits of version {limits}" if limits else "limits of a version not written down"
    first = f"Tested with version {version}." if version else capital(f"{untested}{read}.")
    conditions = [f"{capital(line.name)}: {line.value}." for line in dossier.conditions]
    return tuple(spell(one, dossier.channel.spelling) for one in (first, *conditions))


def setup_names(dossier: Dossier) -> str:
    """`short run and long run`."""
    return listed([small(one.name) for one in dossier.sheets])


def _hook(dossier: Dossier) -> tuple[str, str]:
    """What the viewer gets, in the two lines that stand above the fold."""
    number = len(dossier.sheets)
    setups = f"{capital(counted(number))} {dossier.garage.name} {'setup' if number == 1 else 'setups'}"
    complete = all(address in one.values for one in dossier.sheets for address in one.garage.settings)
    first = f"{setups} for {dossier.track.name}: {setup_names(dossier)}{', every number below' if complete else ''}."
    if any(one.setup.tested for one in dossier.sheets):
        return first, "Why each setting has its value, and what to change when the car is tight or loose."
    return first, "A starting point that nobody has driven yet, and what to change when the car is tight or loose."


def _setup(dossier: Dossier, sheet: Sheet) -> NotesSetup:
    first = dossier.first
    against = None if sheet.id == first.id else first
    shown = sheet.garage.settings if against is None else sheet.differs(against)
    told = [one for one in shown if one in sheet.values or (against and one in against.values)]
    engine = _gearing(dossier, sheet)
    missing = sum(one not in sheet.values for one in sheet.garage.settings) if against is None else 0
    return NotesSetup(
        lead=_lead(sheet, against, bool(told)),
        pages=tuple(_pages(dossier, sheet, against, told)),
        missing=f"Not set yet: {missing} {'setting' if missing == 1 else 'settings'}." if missing else "",
        gearing=engine if against is None or engine != _gearing(dossier, first) else "",
    )


def _lead(sheet: Sheet, against: Sheet | None, differs: bool) -> str:
    untested = "" if sheet.setup.tested else ", untested"
    if against is None:
        return f"{sheet.name}{untested}: every setting, page by page"
    if not differs:
        return f"{sheet.name}{untested}: the same numbers as {setup_name(against)}"
    return f"{sheet.name}{untested}: only what differs from {setup_name(against)}"


def _pages(dossier: Dossier, sheet: Sheet, against: Sheet | None, told: Sequence[str]) -> Iterator[NotesPage]:
    spelling = dossier.channel.spelling
    settings = [sheet.garage.settings[one] for one in told]
    for page in dict.fromkeys(one.page for one in settings):
        here = [one for one in settings if one.page == page]
        names = dict.fromkeys(one.parameter_id for one in here)
        lines = (_line(sheet, against, [one for one in here if one.parameter_id == name]) for name in names)
        words = capital(page.replace("_", " ").replace("-", " "))
        yield NotesPage(spell(words, spelling), tuple(spell(one, spelling) for one in lines))


def _line(sheet: Sheet, against: Sheet | None, settings: Sequence[Setting]) -> str:
    """The values of one parameter: the unit once with its name, or with the figure of a whole-car setting."""
    only = settings[0]
    name = capital(only.parameter.name)
    if not only.part:
        return f"{name}: {_whole(sheet, only)}{_was(against, only)}"
    unit = f" ({only.unit})" if only.unit else ""
    return f"{name}{unit}: " + ", ".join(
        f"{_label(one)} {_figure(sheet.values, one)}{_was(against, one)}" for one in settings
    )


def _whole(sheet: Sheet, setting: Setting) -> str:
    written = _figure(sheet.values, setting)
    if setting.address not in sheet.values:
        return written
    return with_unit(written, "click" if setting.unit == "clicks" and written == "1" else setting.unit)


def _figure(values: Mapping[str, Decimal], setting: Setting) -> str:
    value = values.get(setting.address)
    return "not set" if value is None else setting.figure(value)


def _was(against: Sheet | None, setting: Setting) -> str:
    return "" if against is None else f" (was {_figure(against.values, setting)})"


def _label(setting: Setting) -> str:
    return setting.part if setting.part in ENDS else setting.part.upper()


def _gearing(dossier: Dossier, sheet: Sheet) -> str:
    """`Engine: 7190 rpm at 142 mph, 410 below the limiter.`"""
    gears = dossier.gearing.get(sheet.id)
    if gears is None:
        return ""
    if gears.rpm is None or gears.speed is None:
        return f"Engine: {with_unit(str(gears.per_ten), 'rpm')} for every {with_unit('10', gears.per_unit)}."
    speed = with_unit(figure(gears.speed.value), gears.speed.unit)
    return f"Engine: {with_unit(str(gears.rpm), 'rpm')} at {speed}{_margin(gears.margin)}."


def _margin(margin: int | None) -> str:
    if margin is None:
        return ""
    if margin == 0:
        return ", at the limiter"
    return f", {abs(margin)} {'below' if margin > 0 else 'past'} the limiter"
