"""The narration of an episode: every section in the order it is told, in the author's words and a few of ours.

The first setup is told whole, page by page as the garage has them: every value is said, each reason once, after the
values it is about. The other setups are told where they differ from the first. The program's own sentences are in
`wording`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from producer.model.channel import Channel
from producer.model.dossier import ConditionLine
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.gearing import Gearing
from producer.model.guide import Guide
from producer.model.script import Narration, Passage, Section
from producer.model.sheet import Sheet
from producer.model.stints import Evidence
from producer.model.track import Track
from producer.script.around import closing, conditions_and_approach, opening
from producer.script.blocks import blocks
from producer.script.gearing import gearing_line
from producer.script.laps import laps_section
from producer.script.shots import page_shots
from producer.script.speaker import Speaker, counted, setup_name
from producer.script.telling import Teller


def narrate(
    channel: Channel,
    track: Track,
    garage: Garage,
    episode: Episode,
    sheets: Sequence[Sheet],
    guides: Mapping[str, Guide],
    gearing: Mapping[str, Gearing],
    conditions: Sequence[ConditionLine],
    handles: Sequence[str] = (),
    evidence: Evidence | None = None,
) -> Narration:
    """What is said, section by section; the author's prose is rendered already and is flattened from Markdown.

    `sheets`: at least one, the first is told whole. `guides` and `gearing` by setup id, both may lack one.
    `handles`: of those who asked and may be named. `evidence`: what the test laps say. Sections: `opening`,
    `conditions`, `<setup>.<page>` ..., `<setup>` alone where it is the same as the first, `laps`, `closing`. Raises
    ValueError without a sheet.
    """
    if not sheets:
        raise ValueError("there is no setup to tell")
    speaker = Speaker(channel.spelling)
    story = _Story(speaker, Teller(speaker, tuple(sheets)), tuple(sheets), guides, gearing)
    sections = (
        opening(speaker, channel, track, garage, episode, sheets, handles),
        conditions_and_approach(speaker, garage, episode, conditions),
        *story.first(),
        *(section for sheet in sheets[1:] for section in story.other(sheet)),
        laps_section(speaker, sheets, evidence),
        closing(speaker, channel, episode, sheets),
    )
    return Narration(tuple(one for one in sections if one.passages))


@dataclass(slots=True)
class _Story:
    """The setups of one episode on their way into sections."""

    speaker: Speaker
    teller: Teller
    sheets: tuple[Sheet, ...]
    guides: Mapping[str, Guide]
    gearing: Mapping[str, Gearing]

    def first(self) -> Iterator[Section]:
        """The first setup, one section a page."""
        sheet = self.sheets[0]
        pages = _pages(sheet, tuple(sheet.values))
        for index, (page, addresses) in enumerate(pages.items()):
            intro = self._first_intro(sheet) if index == 0 else ()
            turn = "page-first" if index == 0 else "page-last" if index == len(pages) - 1 else "page"
            turned = Passage("talk", self.speaker.say(turn, page=self.speaker.page(page)))
            told = tuple(self._page(sheet, page, addresses, None))
            yield self._section(sheet, page, addresses, (*intro, turned, *told))

    def other(self, sheet: Sheet) -> Iterator[Section]:
        """A later setup, one section for each page on which it differs from the first."""
        first = self.sheets[0]
        changed = tuple(one for one in sheet.differs(first) if one in sheet.values)
        intro = self._other_intro(sheet, len(changed))
        if not changed:
            yield Section(sheet.id, sheet.name, sheet.id, None, intro, page_shots(sheet, None, ()))
        for page, addresses in _pages(sheet, changed).items():
            turned = Passage("talk", self.speaker.say("page-other", page=self.speaker.page(page)))
            told = tuple(self._page(sheet, page, addresses, first))
            yield self._section(sheet, page, addresses, (*intro, turned, *told))
            intro = ()

    def _page(self, sheet: Sheet, page: str, addresses: tuple[str, ...], first: Sheet | None) -> Iterator[Passage]:
        spoken = sheet.values if first is None else sheet.differs(first)
        # A reason over several pages waits for the last of them.
        mine = [one for one in sheet.reasons if _last_page(sheet, [x for x in one.covers if x in spoken]) == page]
        gears = self.gearing.get(sheet.id)
        guide = self.guides.get(sheet.id)
        for block in blocks(sheet.garage, addresses, mine):
            if first is None:
                yield from self.teller.whole(sheet, block, guide)
            else:
                yield from self.teller.changes(sheet, first, block, guide)
            if gears is not None and gears.address in block.addresses:
                yield from gearing_line(self.speaker, sheet, gears)

    def _section(self, sheet: Sheet, page: str, addresses: tuple[str, ...], passages: tuple[Passage, ...]) -> Section:
        title = f"{sheet.name}: {self.speaker.page(page)}"
        return Section(f"{sheet.id}.{page}", title, sheet.id, page, passages, page_shots(sheet, page, addresses))

    def _first_intro(self, sheet: Sheet) -> tuple[Passage, ...]:
        text = (
            self.speaker.say("first", name=setup_name(sheet))
            if len(self.sheets) > 1
            else self.speaker.say("first-alone")
        )
        return (Passage("talk", text), *self._untested(sheet))

    def _other_intro(self, sheet: Sheet, count: int) -> tuple[Passage, ...]:
        kind = "other-none" if count == 0 else "other-one" if count == 1 else "other"
        names = {"name": setup_name(sheet), "first": setup_name(self.sheets[0])}
        text = self.speaker.say(kind, **names, count=counted(count))
        return (Passage("talk", text), *self._untested(sheet))

    def _untested(self, sheet: Sheet) -> tuple[Passage, ...]:
        return () if sheet.setup.tested else (Passage("talk", self.speaker.say("untested")),)


def _pages(sheet: Sheet, addresses: Sequence[str]) -> dict[str, tuple[str, ...]]:
    """The settings by page, both in the garage's order."""
    found: dict[str, list[str]] = {}
    for address in addresses:
        found.setdefault(sheet.garage.settings[address].page, []).append(address)
    return {page: tuple(some) for page, some in found.items()}


def _last_page(sheet: Sheet, addresses: Sequence[str]) -> str:
    pages = list(_pages(sheet, [one for one in sheet.garage.settings if one in addresses]))
    return pages[-1] if pages else ""
