"""Two pictures of what the chassis model thinks: what a click of each setting does, and what parts two setups.

Balance itself is never shown, only differences, in what half a percent of cross weight does in the same part of the
corner. What depends on the car is said to.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from producer.basics.figures import NO_BREAK
from producer.basics.spelling import spell
from producer.handling.measure import SMALLEST, TIMES, in_words, times
from producer.handling.rules import effect_of
from producer.handling.wording import PLACES
from producer.model.dossier import Dossier
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.sheet import Sheet
from producer.model.words import PHASES, Phase
from producer.outputs.picture import NARROW, WIDE, Picture
from producer.render.charts.bars import Bar, BarChart, Group, panelled, stacked
from producer.script.speaker import Speaker, listed, small

Rank = Literal["first", "second"]
MOST = 12  # settings in one picture
LARGEST = 99.0  # halves of a percent; no setting of a car does more, and a longer bar would hide all others
DOUBT = f"depends on{NO_BREAK}the{NO_BREAK}car"
_LEFT, _RIGHT = "looser", "tighter"


@dataclass(frozen=True, slots=True)
class _Told:
    """One setting's click up. `spoken` is its name inside a sentence; `halves` by phase its size in halves of a percent
    of cross weight, + tighter, 0 where the garage settles that nothing happens."""

    address: str
    name: str
    spoken: str
    detail: str
    opinion: Opinion
    halves: Mapping[Phase, float]
    settled: tuple[Phase, ...]
    against: tuple[Phase, ...]

    @property
    def most(self) -> float:
        """Its largest size in any phase."""
        return max(abs(size) for size in self.halves.values())


def clicks_picture(dossier: Dossier, sheet: Sheet) -> Picture | None:
    """What one click up of each setting does at this track; None where the model has no opinion of any."""
    opinions = dossier.opinions.get(sheet.id)
    if opinions is None or not _measurable(opinions):
        return None
    told = sorted(_told(dossier, sheet, opinions), key=lambda one: -one.most)
    shown = [one for one in told if one.most >= SMALLEST][:MOST]
    if not shown:
        return None
    groups = tuple(Group(one.name, one.detail, _bars(one)) for one in shown)
    title = f"What one click up does at {dossier.track.name}: {_leaders(shown)}"
    alt = f"{title}. Bars for {len(shown)} settings, {_LEFT} to the left and {_RIGHT} to the right."
    rank = _rank(dossier, sheet)
    chart = BarChart(groups, _LEFT, _RIGHT, TIMES, rank, alt)
    return Picture(
        id=f"clicks-{sheet.id}",
        title=title,
        rank=rank,
        wide=panelled(chart, WIDE),
        narrow=stacked(chart, NARROW),
        notes=tuple(_notes(dossier, sheet, opinions, told, shown)),
        rows=tuple(f"{one.name} ({one.detail}): {_said(one.opinion, one.halves, one.settled)}." for one in shown),
    )


def between_picture(dossier: Dossier, sheet: Sheet, against: Sheet) -> Picture | None:
    """How the balance of one setup differs from that of another; None where the model has no opinion."""
    opinions, opinion = _between(dossier, sheet, against)
    if opinions is None or opinion is None or not _measurable(opinions):
        return None
    halves = _halves(opinion, opinions)
    title = _finding(sheet.name, against.name, opinion, halves)
    bars = tuple(_bar(phase, opinion.at(phase), halves[phase], settled=False) for phase in PHASES)
    rank = _rank(dossier, sheet)
    chart = BarChart((Group("", "", bars),), _LEFT, _RIGHT, TIMES, rank, f"{title}.")
    doubts = any(bar.doubt and bar.length for bar in bars)
    return Picture(
        id=f"between-{sheet.id}",
        title=title,
        rank=rank,
        wide=stacked(chart, WIDE),
        narrow=stacked(chart, NARROW),
        notes=(_whose(opinions), *(["Hatched: it depends on the car."] if doubts else [])),
        rows=(f"{sheet.name} against {against.name}: {_said(opinion, halves, ())}.",),
    )


def _between(dossier: Dossier, sheet: Sheet, against: Sheet) -> tuple[Opinions | None, Opinion | None]:
    """The way from `against` to `sheet`: always what was asked of the earlier of the two, so that both cards agree."""
    for one in dossier.sheets:
        opinions = dossier.opinions.get(one.id)
        if opinions is not None and one.id in {sheet.id, against.id}:
            found = opinions.others.get(sheet.id if one.id == against.id else against.id)
            return opinions, found.turned() if found and one.id == sheet.id else found
    return None, None


def _measurable(opinions: Opinions) -> bool:
    return all(opinions.half_percent.get(phase) for phase in PHASES)


def _rank(dossier: Dossier, sheet: Sheet) -> Rank:
    return "first" if sheet.id == dossier.first.id else "second"


def _halves(opinion: Opinion, opinions: Opinions) -> dict[Phase, float]:
    return {phase: opinion.at(phase).size / abs(opinions.half_percent[phase]) for phase in PHASES}


def _told(dossier: Dossier, sheet: Sheet, opinions: Opinions) -> Iterator[_Told]:
    """Every setting of which the model has an opinion, in the garage's order."""
    garage, speaker = dossier.garage, Speaker(dossier.channel.spelling)
    for address, setting in garage.settings.items():
        up, down = opinions.click(address, 1), opinions.click(address, -1)
        value = sheet.value(address)
        opinion = up or (down.turned() if down else None)
        if opinion is None or value is None:
            continue
        to = setting.grid.moved(value, 1)
        detail = "at its limit" if up is None or to is None else f"{setting.figure(value)} to {setting.shown(to)}"
        rules = {phase: effect_of(garage, dossier.track, address, "raise", phase) for phase in PHASES}
        halves = _halves(opinion, opinions)
        settled = tuple(phase for phase in PHASES if rules[phase] == "none")
        against = tuple(phase for phase in PHASES if {rules[phase], opinion.at(phase).sure} == {"tighter", "looser"})
        name = spell(garage.name_of(address), dossier.channel.spelling)
        counting = {phase: 0.0 if phase in settled else size for phase, size in halves.items()}
        spoken = speaker.name(garage, address)
        yield _Told(address, name, spoken, detail, opinion, counting, settled, against)


def _bars(one: _Told) -> tuple[Bar, ...]:
    return tuple(
        _bar(phase, one.opinion.at(phase), one.halves[phase], settled=phase in one.settled) for phase in PHASES
    )


def _bar(phase: Phase, opinion: PhaseOpinion, halves: float, *, settled: bool) -> Bar:
    if settled or opinion.sure == "none":
        return Bar(phase, 0.0, "nothing")
    if opinion.sure is None and abs(halves) < SMALLEST:
        return Bar(phase, 0.0, "", doubt=DOUBT)
    doubt = DOUBT if opinion.sure is None else ""
    if abs(halves) > LARGEST:
        return Bar(phase, LARGEST if halves > 0 else -LARGEST, f"over {times(LARGEST)}", doubt)
    return Bar(phase, halves, times(halves), doubt)


def _side(halves: float) -> str:
    return _RIGHT if halves > 0 else _LEFT


def _leaders(shown: list[_Told]) -> str:
    """The settings that do most, by name."""
    names = [one.spoken for one in shown[:3]]
    return f"{_named(names)} {'does' if len(names) == 1 else 'do'} most"


def _named(names: Sequence[str]) -> str:
    """The names as a list; an author's name with a comma in it must not read as two."""
    return "; ".join(names) if any("," in one for one in names) else listed(names)


def _notes(dossier: Dossier, sheet: Sheet, opinions: Opinions, told: list[_Told], shown: list[_Told]) -> Iterator[str]:
    """Whose opinion it is, how to read it, and what is not in it."""
    yield _whose(opinions)
    if any(bar.doubt and bar.length for one in shown for bar in _bars(one)):
        yield "Hatched: it depends on the car."
    if any(one.detail == "at its limit" for one in shown):
        yield "Where a setting is at its limit, a click down is shown turned round."
    settled = [f"{one.spoken} {_where(one.settled)}" for one in told if one.settled]
    if settled:
        yield f"The garage says that nothing happens: {'; '.join(settled)}."
    against = [f"{one.spoken} {_where(one.against)}" for one in shown if one.against]
    if against:
        yield f"The usual rule says the opposite: {'; '.join(against)}."
    # What the garage leaves nothing of is not small: nobody measured it.
    rest = [one.spoken for one in told if one not in shown and (one.most or not one.settled)]
    if rest:
        yield f"Smaller: {_named(rest)}."
    silent = _silent(dossier, sheet, {one.address for one in told})
    if silent:
        yield f"The model has no opinion on {_named(silent)}."


def _where(phases: Sequence[Phase]) -> str:
    return "in all three phases" if len(phases) == len(PHASES) else listed([PLACES[one] for one in phases])


def _whose(opinions: Opinions) -> str:
    cars = f"{opinions.cars:,}"
    return (
        f"The chassis model\u2019s second opinion, the middle one of {cars} plausible cars; "
        f"1{TIMES} is what half a percent more cross weight does."
    )


def _silent(dossier: Dossier, sheet: Sheet, told: set[str]) -> list[str]:
    """The parameters of which no part was told, by name, in the garage's order."""
    spoken = {dossier.garage.settings[address].parameter_id for address in told}
    names = {
        one.parameter_id: small(spell(one.parameter.name, dossier.channel.spelling))
        for address, one in dossier.garage.settings.items()
        if one.parameter_id not in spoken and sheet.value(address) is not None
    }
    return list(names.values())


def _said(opinion: Opinion, halves: Mapping[Phase, float], settled: tuple[Phase, ...]) -> str:
    """`looser on entry and in the middle, about as much as half a percent of cross weight; nothing on exit`."""
    found: dict[tuple[str, str], list[Phase]] = {}
    for phase in PHASES:
        found.setdefault(_words(opinion.at(phase), halves[phase], settled=phase in settled), []).append(phase)
    return "; ".join(f"{does} {_where(phases)}{size}" for (does, size), phases in found.items())


def _words(opinion: PhaseOpinion, halves: float, *, settled: bool) -> tuple[str, str]:
    """What stands before and after the parts of the corner."""
    if settled or opinion.sure == "none":
        return "nothing", ""
    if opinion.sure is not None:
        return _side(halves), f", {in_words(halves)}"
    if abs(halves) < SMALLEST:
        return f"it {DOUBT}", ""
    return _side(halves), f", {in_words(halves)}, but it {DOUBT}"


def _finding(name: str, other: str, opinion: Opinion, halves: Mapping[Phase, float]) -> str:
    """`Long run is tighter than Short run in all three phases, most on exit: about as much as two percent ...`."""
    sure = [phase for phase in PHASES if opinion.at(phase).sure in {"tighter", "looser"}]
    felt = [phase for phase in sure if abs(halves[phase]) >= SMALLEST]
    doubtful = [PLACES[phase] for phase in PHASES if opinion.at(phase).sure is None]
    if len(doubtful) == len(PHASES):
        return f"Whether {name} is tighter or looser than {other} depends on the car"
    doubt = f"; {listed(doubtful)} it depends on the car" if doubtful else ""
    if not felt:
        return f"{name} is balanced like {other}{doubt}"
    size = in_words(halves[_largest(felt, halves)])
    return f"{name} is {_sides(felt, halves, other)}{_most(felt, halves)}: {size}{doubt}"


def _sides(felt: list[Phase], halves: Mapping[Phase, float], other: str) -> str:
    """`tighter than Short run on entry, looser in the middle and on exit`."""
    said: list[str] = []
    for side in (_RIGHT, _LEFT):
        places = [one for one in felt if _side(halves[one]) == side]
        than = "" if said else f" than {other}"
        said += [f"{side}{than} {_where(places)}"] if places else []
    return " and ".join(said)


def _largest(felt: list[Phase], halves: Mapping[Phase, float]) -> Phase:
    return max(felt, key=lambda one: abs(halves[one]))


def _most(felt: list[Phase], halves: Mapping[Phase, float]) -> str:
    """`, most on exit`, `, much the same everywhere`; "" where one phase alone was named."""
    sizes = sorted(abs(halves[one]) for one in felt)
    if len(felt) == 1:
        return ""
    if sizes[-1] < 1.15 * sizes[0]:
        return ", about alike"
    return f", most {PLACES[_largest(felt, halves)]}"
