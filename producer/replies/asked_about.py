"""The settings that a message speaks of: what the sheet has for them, and why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from producer.model.garage import Setting
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.render.markdown import to_plain
from producer.replies import wording

MOST = 3


def addresses(sheet: Sheet, named: Iterable[str]) -> tuple[str, ...]:
    """The settings of this setup that are named, each once: `spring` means its four corners."""
    found = (one for name in named for one in sheet.garage.settings if name in (one, one.partition(".")[0]))
    return tuple(one for one in dict.fromkeys(found) if one in sheet.values)


def every_value(sheet: Sheet) -> Iterator[str]:
    """One line for each page of the garage with all of its figures."""
    settings = [one for one in sheet.garage.settings.values() if one.address in sheet.values]
    for page, on_page in groupby(settings, key=lambda one: one.page):
        by_parameter = groupby(on_page, key=lambda one: one.parameter_id)
        named = "; ".join(_parameter(sheet, list(settings)) for _, settings in by_parameter)
        yield wording.flat(f"{wording.readable(page).capitalize()}: {named}")


def values_of(case: Case, sheet: Sheet, named: Iterable[str]) -> Iterator[str]:
    """One line for each setting named, with what the episode's other setups have where that is another figure."""
    for address in addresses(sheet, named)[: 2 * MOST]:
        yield wording.flat(f"{sheet.setting(address).name}: {_beside_others(case, sheet, address)}")


def _beside_others(case: Case, sheet: Sheet, address: str) -> str:
    """`60 % (40 % in the long run setup)`."""
    others = [
        f"{one.shown(address)} in the {wording.setup_name(one)}"
        for one in case.sheets
        if one.id != sheet.id and one.value(address) not in (None, sheet.value(address))
    ]
    return sheet.shown(address) + (f" ({wording.listed(others)})" if others else "")


def answers(case: Case, sheet: Sheet, named: Iterable[str]) -> Iterator[tuple[str, str, str]]:
    """(setting, figure, the author's words on it) for the first settings named; all corners of a parameter in one."""
    found = [sheet.setting(one) for one in addresses(sheet, named)]
    groups = [list(group) for _, group in groupby(found, key=lambda one: one.parameter_id)]
    for group in groups[:MOST]:
        name, words = group[0].name, _because(sheet, [one.address for one in group])
        if len(group) == 1:
            yield wording.flat(name), wording.flat(_beside_others(case, sheet, group[0].address)), words
        else:
            yield wording.flat(group[0].parameter.name.capitalize()), wording.flat(_parts(sheet, group)), words


def _because(sheet: Sheet, settings: Sequence[str]) -> str:
    """The author's reason for just these settings, "" where only a whole page has one."""
    most, wanted = len(settings) + 1, set(settings)
    said = [one for one in sheet.reasons if one.because and wanted <= set(one.covers) and len(one.covers) <= most]
    nearest = min(said, key=lambda one: len(one.covers), default=None)
    return wording.flat(to_plain(nearest.because)) if nearest is not None else ""


def _parameter(sheet: Sheet, settings: list[Setting]) -> str:
    name = wording.small(settings[0].parameter.name)
    return f"{name} {_parts(sheet, settings)}"


def _parts(sheet: Sheet, settings: list[Setting]) -> str:
    """`LF 825, RF 950, LR 200, RR 350 lb/in`, or the one figure of a setting without corners."""
    last = settings[-1]
    if not last.part:
        return sheet.shown(last.address)
    parts = [f"{_part(one)} {sheet.figure(one.address)}" for one in settings[:-1]]
    return ", ".join([*parts, f"{_part(last)} {sheet.shown(last.address)}"])


def _part(setting: Setting) -> str:
    return setting.part if setting.part in ("left", "right") else setting.part.upper()
