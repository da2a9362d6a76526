"""What stands on the screen while the values are said: a short name and its figure, in time with the narration."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from producer.basics.spelling import spell
from producer.captions.profile import reading_profile
from producer.captions.speed import needed_ms
from producer.captions.spoken import spoken_words
from producer.model.cue import Cue, ReadingProfile
from producer.model.dossier import Dossier
from producer.model.script import Board, Passage, Section, Span
from producer.model.sheet import Sheet
from producer.model.words import CORNERS, ENDS
from producer.script.speaker import capital

# A caption may come so much later than its figure is said, where the one before is still to be read.
_LAG_MS = 2000
_ROWS = (("lf", "rf", "left", "right"), ("lr", "rr"))


def on_screen(dossier: Dossier) -> tuple[Cue, ...]:
    """The cues that are wanted, in order of start, milliseconds: a title, the conditions, each setup's name, every
    value as it is said (a later setup's with what it was), what the test laps say, the caution.

    A cue's end is a wish: until the next value, the end of its reason or of the section. `captions.settling.settle`
    makes them legal; each starts late enough for the one before to be read, by two seconds at most.
    """
    profile = reading_profile(dossier.channel.captions)
    wanted = sorted(_wanted(dossier, profile), key=lambda one: one.start_ms)
    return _in_turn(wanted, profile)


def _wanted(dossier: Dossier, profile: ReadingProfile) -> Iterator[Cue]:
    seen: set[str] = set()
    for span in dossier.timeline.spans:
        section = dossier.narration.sections[span.section]
        passage = section.passages[span.passage]
        boards = _boards(dossier, section, passage, profile)
        if span.passage == 0:
            boards = (*_titles(dossier, section, seen), *boards)
        yield from _timed(passage, span, boards, _until(dossier, span))


def _titles(dossier: Dossier, section: Section, seen: set[str]) -> tuple[Board, ...]:
    """The episode's title card, and a setup's name where its part begins."""
    if section.id == "opening":
        return (Board((dossier.track.name, dossier.garage.name)),)
    sheet = _sheet(dossier, section)
    if sheet is None or sheet.id in seen:
        return ()
    seen.add(sheet.id)
    return (Board((sheet.name if sheet.setup.tested else f"{sheet.name}, untested",)),)


def _boards(dossier: Dossier, section: Section, passage: Passage, profile: ReadingProfile) -> tuple[Board, ...]:
    sheet = _sheet(dossier, section)
    if passage.kind == "caution":
        return (Board((dossier.channel.caution,)),)
    if passage.kind == "conditions":
        return tuple(_conditions(dossier, profile))
    if passage.boards:
        return passage.boards
    if sheet is None or not passage.settings:
        return ()
    first = dossier.first
    if sheet.id != first.id:
        return tuple(_changed(dossier, sheet, passage.settings, profile))
    return tuple(
        board for group in _by_parameter(passage.settings) for board in _values(dossier, sheet, group, profile)
    )


def _conditions(dossier: Dossier, profile: ReadingProfile) -> Iterator[Board]:
    lines = [_own(dossier, f"{one.name}: {one.value}") for one in dossier.conditions]
    if dossier.episode.tested_with:
        lines.append(f"Version {dossier.episode.tested_with}")
    for start in range(0, len(lines), profile.lines):
        yield Board(tuple(lines[start : start + profile.lines]))


def _values(dossier: Dossier, sheet: Sheet, group: Sequence[str], profile: ReadingProfile) -> Iterator[Board]:
    """Corners of one parameter side by side, front above rear as on the car; on one board where it can be read."""
    if len(group) == 1:
        name = short_name(sheet, group[0])
        yield Board(_fitted(_own(dossier, name), sheet.shown(group[0]), profile), sheet.figure(group[0]))
        return
    rows = [row for parts in _ROWS if (row := [one for one in group if _part(one) in parts])]
    boards = [_row(dossier, sheet, row, profile) for row in rows]
    together = (*boards[0].lines, *(_figures(sheet, row) for row in rows[1:]))
    if len(together) <= profile.lines and needed_ms("\n".join(together), profile) <= profile.longest_ms:
        yield Board(together)
    else:
        yield from boards


def _row(dossier: Dossier, sheet: Sheet, row: Sequence[str], profile: ReadingProfile) -> Board:
    """`Spring LF 725, RF 775 lb/in`."""
    parameter = sheet.setting(row[0]).parameter.name
    lines = _fitted(_own(dossier, capital(parameter)), _figures(sheet, row), profile)
    return Board(lines, sheet.figure(row[0]))


def _figures(sheet: Sheet, row: Sequence[str]) -> str:
    """`LF 725, RF 775 lb/in`: the unit once, with the last figure."""
    figures = [*(sheet.figure(one) for one in row[:-1]), sheet.shown(row[-1])]
    return ", ".join(f"{_label(one)} {figure}" for one, figure in zip(row, figures, strict=True))


def _changed(dossier: Dossier, sheet: Sheet, settings: Sequence[str], profile: ReadingProfile) -> Iterator[Board]:
    """`RF spring 750 lb/in, was 775`, one setting at a time."""
    for one in settings:
        before = dossier.first.value(one)
        was = "" if before is None or before == sheet.value(one) else f", was {sheet.garage.figure(one, before)}"
        lines = _fitted(_own(dossier, short_name(sheet, one)), sheet.shown(one) + was, profile)
        yield Board(lines, sheet.figure(one))


def short_name(sheet: Sheet, address: str) -> str:
    """A setting as it fits on a screen: `RF spring`, `Front weight`, `Track bar, left end`; a split's whole name."""
    setting = sheet.garage.settings.get(address)
    if setting is None or setting.part not in CORNERS:
        return sheet.garage.name_of(address)
    return f"{setting.part.upper()} {setting.parameter.name[:1].lower()}{setting.parameter.name[1:]}"


def _fitted(name: str, figures: str, profile: ReadingProfile) -> tuple[str, ...]:
    """Name and figures on one line, or one above the other where they are too long for it."""
    line = f"{name} {figures}"
    return (line,) if len(line) <= profile.characters_per_line or profile.lines < 2 else (name, figures)


def _by_parameter(settings: Sequence[str]) -> list[list[str]]:
    groups: dict[str, list[str]] = {}
    for one in settings:
        whole = one if _part(one) not in (*CORNERS, *ENDS) else one.rpartition(".")[0]
        groups.setdefault(whole, []).append(one)
    return list(groups.values())


def _part(address: str) -> str:
    return address.rpartition(".")[2]


def _label(address: str) -> str:
    part = _part(address)
    return part if part in ENDS else part.upper()


def _own(dossier: Dossier, text: str) -> str:
    return spell(text, dossier.channel.spelling)


def _sheet(dossier: Dossier, section: Section) -> Sheet | None:
    return next((one for one in dossier.sheets if one.id == section.setup), None)


def _timed(passage: Passage, span: Span, boards: Sequence[Board], until: int) -> Iterator[Cue]:
    """Each board when its figure is said; boards without one share the passage evenly."""
    starts = [_said_at(passage, span, board, index / len(boards)) for index, board in enumerate(boards)]
    for index, board in enumerate(boards):
        start = max(starts[: index + 1])
        end = starts[index + 1] if index + 1 < len(boards) else until
        yield Cue(start, max(start, end), board.lines)


def _said_at(passage: Passage, span: Span, board: Board, share: float) -> int:
    """When the name before the board's figure begins, by its share of the passage's words."""
    length = span.end_ms - span.start_ms
    place = passage.text.find(board.cue_word) if board.cue_word and share else -1
    words = spoken_words(passage.text)
    if place < 0 or not words:
        return span.start_ms + round(length * share)
    # The name is said before the figure: two words of it, "left rear".
    before = max(0, spoken_words(passage.text[:place]) - 2)
    return span.start_ms + length * before // words


def _until(dossier: Dossier, span: Span) -> int:
    """How long a passage's boards may stay: over the reason that follows, never into other words."""
    section = dossier.narration.sections[span.section]
    end = span.end_ms
    for other in dossier.timeline.spans:
        if other.section == span.section and other.passage > span.passage:
            if section.passages[other.passage].kind != "reason":
                break
            end = other.end_ms
    return end


def _in_turn(cues: Sequence[Cue], profile: ReadingProfile) -> tuple[Cue, ...]:
    """Later starts where the cue before needs its time, `_LAG_MS` at most."""
    turned: list[Cue] = []
    for cue in cues:
        free = turned[-1].start_ms + _needed(turned[-1], profile) if turned else 0
        start = min(max(cue.start_ms, free), cue.start_ms + _LAG_MS)
        turned.append(Cue(start, max(start, cue.end_ms), cue.lines))
    return tuple(turned)


def _needed(cue: Cue, profile: ReadingProfile) -> int:
    return min(needed_ms(cue.text, profile), profile.longest_ms)
