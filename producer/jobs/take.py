"""A take for the terminal, within 80 columns: what to record again by time, what was left out, where sections are."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from textwrap import wrap

from producer.basics.errors import ProducerError
from producer.basics.finding import Finding
from producer.basics.located import Places
from producer.captions.chapters import stamp
from producer.jobs.check import known
from producer.jobs.dossier import dossier
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.model.library import TakeCaptions
from producer.model.take import TO_RECORD, Take, TakeFinding
from producer.outputs.pick_ups import mended_together, section_of

_WIDTH = 80
_OF = {"raw": "the take as recorded", "cut": "the finished cut"}


@dataclass(frozen=True)
class Taken:
    """A take heard, the script it was held against, and its captions for complaints about the files."""

    dossier: Dossier
    take: Take
    captions: tuple[TakeCaptions, ...]


def take(root: Path, episode: str) -> Taken:
    """Hear an episode's take.

    Raises ProducerError for an episode that is not there, cannot be put together yet, or has no captions of a take
    with a word in them.
    """
    library, _ = load(root)
    known(library, (episode,))
    record = library.episodes.get(episode)
    whole = dossier(library.case(record)) if record is not None else None
    if record is None or whole is None:
        raise ProducerError(f"'{episode}' has errors: mend what 'producer check {episode}' shows first")
    captions = library.takes.get(record.episode, ())
    if whole.take is None and captions:
        file = captions[0].file
        raise ProducerError(f"{file} holds no words that can be read: 'producer cues {root / file}' says why")
    if whole.take is None:
        folder = record.place().file.rsplit("/", 1)[0]
        raise ProducerError(f"there are no captions of a take yet: save them as {folder}/take.srt (or .vtt)")
    return Taken(whole, whole.take, captions)


def as_json(found: Taken) -> str:
    """The shape that other programs rely on."""
    from producer.take.take_json import take_json

    return json.dumps(take_json(found.take), ensure_ascii=False, indent=2)


def complaints(found: Taken) -> tuple[tuple[Finding, ...], dict[str, Places]]:
    """What is wrong with the files themselves, and their lines for excerpts."""
    from producer.jobs.cues import cues

    used = {found.take.file, *found.take.pick_ups}
    read = [cues(one.data, one.file) for one in found.captions if one.file in used]
    files = {name: places for one in read for name, places in one.files.items()}
    return tuple(finding for one in read for finding in one.read.findings), files


def as_text(found: Taken) -> str:
    """Blocks with a heading each; what is empty is left out."""
    told = found.take
    blocks = [[*_about(found)]]
    if told.stranger:
        blocks += [[*_wrapped(one.message, "")] for one in told.findings]
        return "\n\n".join("\n".join(block) for block in blocks)
    blocks += [
        [*_pick_ups("Record again", told)],
        [*_unsaid(found)],
        [*_mended(found)],
        [*_notes(told)],
        [*_sections(told)],
    ]
    if not any(one.code in TO_RECORD for one in told.findings):
        blocks.insert(1, ["Nothing to record again: everything is said as it is written."])
    return "\n\n".join("\n".join(block) for block in blocks if block)


def _about(found: Taken) -> Iterator[str]:
    told = found.take
    rate = f", {told.words_per_minute} words a minute" if told.words_per_minute else ""
    yield from _wrapped(f"{told.file}: {_OF[told.of]}, {stamp(told.length_ms)}, {told.words.take} words{rate}", "")
    pace = found.dossier.pace
    if rate and pace is not None and pace.words_per_minute != told.words_per_minute:
        yield from _wrapped(f"estimates are made with {pace.words_per_minute} words a minute, {pace.told}", "")
    for file in told.pick_ups:
        yield f"{file}: a pick-up"


def _pick_ups(heading: str, told: Take) -> Iterator[str]:
    """The list of what to record again, by time; what is wrong in a pick-up after what is wrong in the take."""
    findings = [one for one in told.findings if one.at_ms is not None and one.code in TO_RECORD]
    if not findings:
        return
    yield heading
    for one in sorted(findings, key=lambda one: one.place.file != told.file):
        file = "" if one.place.file == told.file else f", in {_name(one.place.file)}"
        yield from _wrapped(f"{stamp(one.at_ms or 0):>7}  {one.message}{file}", "", " " * 9)
        if one.again:
            yield from _wrapped(f'say "{one.again}"', " " * 9)


def _unsaid(found: Taken) -> Iterator[str]:
    """What was not said; the settings of a section that was left out in one piece."""
    every = [one for one in found.take.findings if one.at_ms is None and one.code in TO_RECORD]
    if not every:
        return
    yield "Not said"
    inside = _inside(found, every)
    for one in every:
        if one.about == "section":
            settings = [x for x in every if id(x) in inside and inside[id(x)] == one.expected]
            yield from _wrapped(one.message, "  ", "    ")
            if settings:
                yield from _wrapped("; ".join(_short(x) for x in settings), "    ", "    ")
        elif id(one) not in inside:
            yield from _wrapped(one.message, "  ", "    ")
            if one.again:
                yield from _wrapped(f'say "{one.again}"', "    ")


def _mended(found: Taken) -> Iterator[str]:
    """What pick-ups mend, and where they say it; the settings of a section in one line."""
    script = found.dossier.narration.sections
    if found.take.mended:
        yield "Mended"
    for some in mended_together(script, found.take.mended):
        first = some[0]
        put_in = f"put in {_name(first.file)} from {stamp(first.start_ms)}"
        if first.finding.at_ms is not None:
            yield from _wrapped(f"{stamp(first.finding.at_ms):>7}  {first.finding.message}", "", " " * 9)
            yield from _wrapped(put_in, " " * 9)
            continue
        section = section_of(script, first.finding)
        settings = "; ".join(_short(one.finding) for one in some)
        yield from _wrapped(f"{section.title}: {settings}" if section else settings, "  ", "    ")
        yield from _wrapped(put_in, "    ")


def _name(file: str) -> str:
    return file.rsplit("/", 1)[-1]


def _inside(found: Taken, every: Sequence[TakeFinding]) -> dict[int, object]:
    """The unsaid settings (by identity) that stand in a section that was left out, with its title."""
    gone = {one.expected for one in every if one.about == "section"}
    places: dict[int, object] = {}
    for section in found.dossier.narration.sections:
        told = {x for passage in section.passages for x in passage.settings}
        for one in every:
            if section.title in gone and one.parameter in told and one.setup == section.setup:
                places[id(one)] = section.title
    return places


def _short(one: TakeFinding) -> str:
    """`Left front compression (Short run) 4` of a message `...: not said, it is 4`."""
    name, _, value = one.message.partition(": not said, it is ")
    return f"{name.partition(' (')[0]} {value}"


def _notes(told: Take) -> Iterator[str]:
    """Said twice, moved, doubtful, and what stands nowhere in the script."""
    notes = [one for one in told.findings if one.code not in TO_RECORD]
    if not notes and not told.asides:
        return
    yield "To know"
    for one in notes:
        yield from _wrapped(one.message, "  ", "    ")
    for aside in told.asides:
        text = aside.text if len(aside.text) <= 50 else f"{aside.text[:49]}\u2026"
        yield from _wrapped(
            f"not in the script, {stamp(aside.start_ms)} to {stamp(aside.end_ms)}: {text}", "  ", "    "
        )


def _sections(told: Take) -> Iterator[str]:
    there = [one for one in told.sections if one.start_ms is not None]
    if not there:
        return
    yield "Sections"
    for one in sorted(there, key=lambda one: one.start_ms or 0):
        how = (
            ""
            if one.placed_by == "words"
            else "  (by the names of its settings)"
            if "." in one.section
            else "  (about)"
        )
        yield from _wrapped(f"{stamp(one.start_ms or 0):>7}  {one.title}{how}", "", " " * 9)


def _wrapped(text: str, indent: str = "  ", further: str | None = None) -> list[str]:
    # A no-break space ties a figure to its unit; the wrapping of the library would part them.
    lines = wrap(
        text.replace("\u00a0", "\u0001"), _WIDTH, initial_indent=indent,
        subsequent_indent=indent if further is None else further, break_on_hyphens=False, drop_whitespace=True,
    )  # fmt: skip
    return [one.replace("\u0001", "\u00a0") for one in lines]
