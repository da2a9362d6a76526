"""Pace, falloff, comparison and tyres of one episode for the terminal, within 80 columns, or as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from textwrap import wrap

from producer.basics.figures import MINUS, figure, with_unit
from producer.basics.finding import Finding, in_order
from producer.basics.spelling import spell
from producer.checks.registry import run
from producer.jobs.check import known
from producer.jobs.evidence import evidence_of
from producer.library.load import load
from producer.model.episode import Episode
from producer.model.library import Case, Library, laps_file
from producer.model.stints import Comparison, Evidence, PaceAt, Stint, Total
from producer.model.tyre_readings import Temperatures, TyreFinding, Wear
from producer.model.words import CORNERS
from producer.stints.stints_json import stints_json
from producer.stints.wording import click, laps, rounded

_WIDTH = 80
_NAMES = 21  # columns for a stint's name and its count of laps
_CODES = frozenset({"evidence-against", "conditions-differ"})  # besides all that stands at a stint or in its file
_NOTHING = "no test laps yet: put a file of laps into 'stints/' and name it under 'stints:' in episode.yaml"


@dataclass(frozen=True)
class Stints:
    """The evidence of one episode, None without test laps, and the findings about its laps and what they are for."""

    case: Case | None
    evidence: Evidence | None
    findings: tuple[Finding, ...]
    library: Library


def stints(root: Path, episode: str) -> Stints:
    """Read one episode's test laps, and check what they are for. Raises ProducerError for an episode not there."""
    library, findings = load(root)
    known(library, (episode,))
    every = in_order([*findings, *run(library, {}, (episode,))])
    record = library.episodes.get(episode)
    if record is None:
        own = tuple(one for one in every if one.place.file.startswith(f"{episode}/"))
        return Stints(None, None, own, library)
    case = library.case(record)
    told = tuple(one for one in every if _about(one, record))
    return Stints(case, evidence_of(case), told, library)


def _about(finding: Finding, episode: Episode) -> bool:
    """Whether a finding is about the laps of an episode, or what they are held against."""
    files = {laps_file(episode, one) for one in episode.stints}
    if finding.place.file in files:
        return True
    in_it = finding.place.file == episode.place().file
    return in_it and (finding.code in _CODES or finding.where.startswith("stints["))


def as_json(found: Stints) -> str:
    """The shape that other programs rely on, in the author's spelling."""
    spelling = found.case.channel.spelling if found.case is not None and found.case.channel is not None else "us"
    shape = stints_json(found.evidence, spelling)
    if found.case is not None:
        shape["episode"] = found.case.episode.episode
    return json.dumps(shape, ensure_ascii=False, indent=2)


def as_text(found: Stints) -> str:
    """A table of stints, the comparison, the tyres; figures first, then what may be claimed and what not."""
    if found.case is None or found.evidence is None:
        return _NOTHING
    blocks = [
        "\n".join(_table(found.evidence.stints)),
        *("\n".join(_stint(one, _name(one, found.evidence.stints))) for one in found.evidence.stints),
        *("\n".join(_comparison(one)) for one in found.evidence.comparisons),
        "\n".join(_tyres(found.evidence.stints, found.case)),
    ]
    spelling = found.case.channel.spelling if found.case.channel else "us"
    return "\n\n".join([found.case.episode.title, *(spell(one, spelling) for one in blocks if one)])


def _table(stints: Iterable[Stint]) -> Iterator[str]:
    """One line a stint: laps kept, pace at laps 1, 10, 20, 40, falloff with its interval; all in seconds."""
    every = tuple(stints)
    counts = [f"{len(one.kept)}/{len(one.laps)}" for one in every]
    wide = max(6, *(len(one) for one in counts)) if counts else 6
    room = _NAMES - wide
    yield f"{'seconds':<{room}}{'laps':>{wide}} {'lap 1':>7} {'10':>7} {'20':>7} {'40':>7}  falloff a lap"
    for one, kept in zip(every, counts, strict=True):
        name = _cut(_name(one, every), room)
        if one.pace is None:
            yield f"{name:<{room}}{kept:>{wide}}  {one.refusal}"
            continue
        at = {shown.lap: shown for shown in one.pace.at}
        paces = " ".join(f"{_pace(at.get(lap)):>7}" for lap in (1, 10, 20, 40))
        interval = one.pace.falloff_interval
        around = f" ({rounded(interval.low, 3)} to {rounded(interval.high, 3)})" if interval else ""
        yield f"{name:<{room}}{kept:>{wide}} {paces}  {rounded(one.pace.falloff, 3)}{around}"


def _pace(at: PaceAt | None) -> str:
    if at is None:
        return ""
    return f"{rounded(at.seconds, 2)}{'?' if at.beyond else ''}"


def _name(stint: Stint, every: Sequence[Stint]) -> str:
    """The setup's name, numbered where it was driven more than once."""
    several = sum(one.setup == stint.setup for one in every) > 1
    return f"{stint.setup_name} {stint.number}" if several else stint.setup_name


def _stint(stint: Stint, name: str) -> Iterator[str]:
    yield from _wrapped(f"{name}: {stint.file}", "")
    for why, numbers in _left_out(stint).items():
        times = f", {len(numbers)} times" if len(set(numbers)) < len(numbers) else ""
        yield from _wrapped(f"left out, {why}: {laps(tuple(set(numbers)))}{times}")
    for text in (*stint.may, *stint.may_not):
        yield from _wrapped(text)


def _left_out(stint: Stint) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for one in stint.left_out:
        found.setdefault(one.left_out, []).append(one.number)
    return found


def _comparison(found: Comparison) -> Iterator[str]:
    yield from _wrapped(f"{found.second_name} against {found.first_name}: {found.title}", "")
    yield from _wrapped(found.crossover_text)
    yield from _wrapped(found.ahead_text)
    told = ", ".join(f"{_signed(one)} after {one.laps}{_give(one)}" for one in found.totals)
    yield from _wrapped(f"Total time, {found.second_name} minus {found.first_name}: {told}.")
    for heading, texts in (("may be claimed:", found.may), ("may not:", found.may_not), ("note:", found.notes)):
        if texts:
            yield f"  {heading}"
            for text in texts:
                yield from _wrapped(text, "    ")


def _give(total: Total) -> str:
    give = total.figures[1]
    return f" (give or take {give})" if give else ""


def _signed(total: Total) -> str:
    """`+0.4 s`, `−3.1 s`; nothing has no sign."""
    amount = total.figures[0]
    sign = "" if not amount.strip("0.") else MINUS if total.seconds < 0 else "+"
    return with_unit(f"{sign}{amount}", "s")


def _tyres(stints: Sequence[Stint], case: Case) -> Iterator[str]:
    for one in stints:
        if not (one.tyres.temperatures or one.tyres.wear):
            continue
        yield f"{_name(one, stints)}, tyres"
        if one.tyres.temperatures:
            yield f"  {'':<4}{'outside':>9}{'middle':>9}{'inside':>9}{'spread':>9}{'used':>7}"
        for corner in CORNERS:
            row = _corner(one, corner)
            if row:
                yield row
        if one.tyres.wear:
            yield from _wrapped(one.tyres.wear.text)
        for finding in one.tyres.findings:
            yield from _wrapped(f"{finding.text}{_answer(finding, one, case)}")


def _corner(stint: Stint, corner: str) -> str:
    read: Temperatures | None = next((one for one in stint.tyres.temperatures if one.corner == corner), None)
    worn: Wear | None = stint.tyres.wear
    used = next((f"{figure(one)} %" for name, one in worn.used.items() if name == corner), "") if worn else ""
    if read is None:
        return f"  {corner.upper():<4}{used:>43}" if used and stint.tyres.temperatures else _only_wear(corner, used)
    three = (read.outside, read.middle, read.inside, read.spread)
    return f"  {corner.upper():<4}" + "".join(f"{figure(one):>9}" for one in three) + f"{used:>7}"


def _only_wear(corner: str, used: str) -> str:
    return f"  {corner.upper():<4}{used:>7} used" if used else ""


def _answer(finding: TyreFinding, stint: Stint, case: Case) -> str:
    """The click that answers a finding, with a blank before it; "" without one."""
    moved, sheet = finding.change, case.sheet(stint.setup)
    if moved is None or sheet is None:
        return ""
    return f" {click(sheet.setting(moved.parameter), moved)}"


def _wrapped(text: str, indent: str = "  ") -> list[str]:
    # A no-break space ties a figure to its unit; the wrapping of the library would part them.
    lines = wrap(
        text.replace("\u00a0", "\u0001"), _WIDTH, initial_indent=indent, subsequent_indent=f"{indent}  ",
        break_on_hyphens=False,
    )  # fmt: skip
    return [one.replace("\u0001", "\u00a0") for one in lines]


def _cut(name: str, width: int) -> str:
    return name if len(name) < width else f"{name[: width - 2]}\u2026"
