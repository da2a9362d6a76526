"""An explanation in sentences: what each voice says of raising a setting, where they part, what banking does.

British forms; whoever prints them spells them the channel's way. No sentence ends with a full stop in a list of
phrases; whole sentences do.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from producer.basics.figures import figure
from producer.handling.explaining import Explanation, Said, Told
from producer.handling.measure import SMALLEST, fold, in_words, measure, of_cars, of_hundred
from producer.handling.saying import feel, for_whom, listed
from producer.handling.wording import PLACES, the
from producer.model.opinion import PhaseOpinion
from producer.model.sheet import Sheet
from producer.model.track import Track
from producer.model.words import CORNER_NAMES, PHASES, Effect, Phase

_NEARLY = "in nearly all plausible cars"
_ALIKE = (
    "The model weighs the car at one moment of each phase, so it moves all three the same way. What the trade calls an "
    "adjustment for one phase alone comes from how the car moves in between, which the model does not follow."
)
_LEFT = (
    "A left spring holds its corner up only while it is squeezed: on steep banking it is, on a flat track it is let "
    "go. That is why what it does turns round with banking."
)
_BAR = (
    "The trade feels the left end of the track bar going in and the right end coming off (common practice, no source). "
    "The model cannot: what counts in it is the mean height of the two ends, so each counts half, in every phase."
)
_SHOCK = (
    "The model lets a shock work only while the car rolls and pitches, on entry and on exit, by whether its wheel goes "
    "up or down. How quickly the car does so is an assumption, and so is what a click of a shock is worth."
)
_BRAKE = "It works while you brake and only then: the model brakes on entry alone."
_GEAR = (
    "The model knows a gear only by how hard the rear tyres are driven on exit; revs and the limiter it leaves alone."
)
_SIDE = (
    "Braking and driving act on a weight left of the middle: they turn the car out on the brake and in on the gas, the "
    "more the further left it is. So entry and exit part, and the middle is between them."
)
_KNOWN: Mapping[str, str] = {
    "spring.lf": _LEFT, "spring.lr": _LEFT, "track_bar": _BAR, "track_bar.left": _BAR, "track_bar.right": _BAR,
    "brake.front_bias": _BRAKE, "gear.final": _GEAR,
    "weight.left": _SIDE,
}  # fmt: skip


def effects(found: Mapping[Phase, Effect | None]) -> str:
    """`tighter on entry and in the middle, looser on exit`; "" where nothing is said of any phase."""
    said: list[str] = []
    words: tuple[tuple[Effect, str], ...] = (("tighter", "tighter"), ("looser", "looser"), ("none", "nothing"))
    for effect, word in words:
        places = [PLACES[phase] for phase in PHASES if found.get(phase) == effect]
        said += [f"{word} {listed(places)}"] if places else []
    return ", ".join(said)


def by_author(sheet: Sheet, told: Explanation) -> tuple[str, ...]:
    """What the author states and advises, a line each; a line that says so where there is nothing."""
    lines = [*(_stated(sheet, told, one) for one in told.said), *(_advised(sheet, told, one) for one in told.advice)]
    return tuple(lines) or ("states no effect of moving it and gives no advice about it",)


def by_rule(told: Explanation) -> tuple[str, ...]:
    """What the rule says of raising, what else happens, and who says so."""
    row = told.row
    if row is None:
        return ("the tuning rules do not know it",)
    if not any(row.effect(phase) for phase in PHASES):
        return ("no opinion", *_also(told))
    return (effects(row.effects("raise")), *_also(told), f"source: {row.source}")


def by_model(told: Explanation) -> tuple[str, ...]:
    """A line for each phase, else why the model has no opinion."""
    if told.opinion is None:
        return (_silence(told),)
    opinion = told.opinion
    found = _alike((phase, _in_phase(told, opinion.at(phase), phase)) for phase in PHASES)
    return tuple(f"{places}: {said}" for said, places in found)


def by_left(told: Explanation) -> str:
    """What lowering the left corner does instead, for a split; "" for anything else."""
    opinion = told.left.opinion if told.left else None
    if opinion is None:
        return ""
    sizes = {phase: measure(opinion.at(phase).size, told.half_percent.get(phase)) for phase in PHASES}
    found = _alike((phase, _short(opinion.at(phase), sizes[phase])) for phase in PHASES)
    return f"by lowering the left corner instead: {'; '.join(f'{places} {said}' for said, places in found)}"


def parting(told: Explanation) -> tuple[str, ...]:
    """Where two voices differ, or one is alone, a sentence each."""
    found = _alike((phase, sentence) for phase in PHASES for sentence in _differences(told, phase))
    return tuple(f"{_capital(places)} {sentence}." for sentence, places in found)


def statics(told: Explanation) -> str:
    """What the trade feels and the model cannot, or how the model knows such a setting; "" without an opinion."""
    if told.opinion is None:
        return ""
    role = told.setting.role
    if role.startswith("shock_"):
        return _SHOCK
    # A split moves by its right corner, which does not turn round.
    alike = len({told.opinion.at(phase).sure for phase in PHASES}) == 1
    return _KNOWN.get(role, _ALIKE if alike else "")


def banking(track: Track | None, told: Explanation) -> tuple[str, ...]:
    """What a click is worth here against a flat track; () where nobody knows."""
    degrees = sorted({one.banking for one in track.corners if one.banking is not None}) if track else []
    if track is None or not degrees or told.opinion is None or told.flat is None:
        return ()
    if max(abs(one) for one in degrees) < 1:
        return (f"{track.name} is flat: there is no banking to speak of.",)
    span = " to ".join(figure(one) for one in (degrees[0], *degrees[1:][-1:]))
    parts = list(_against_flat(told))
    return (f"With {span} degrees of banking at {track.name}, {'; '.join(parts)}.",) if parts else ()


def _stated(sheet: Sheet, told: Explanation, said: Said) -> str:
    """`tighter on entry, as you raised it from 850 to 950 lb/in`."""
    movement, garage = said.movement, sheet.garage
    way = "raised" if movement.direction == "raise" else "lowered"
    figures = f"{garage.figure(told.address, movement.start)} to {garage.shown(told.address, movement.end)}"
    others = f", together with {_several(sheet, said.others)}" if said.others else ""
    turned = ", turned round" if way == "lowered" else ""
    return f"{effects(said.raising)} (stated where it was {way} from {figures}{others}{turned})"


def _several(sheet: Sheet, addresses: Sequence[str]) -> str:
    names = [the(sheet.garage, one) for one in addresses]
    return listed(names) if len(names) < 3 else f"{len(names)} other settings"


def _advised(sheet: Sheet, told: Explanation, one: Told) -> str:
    """`if tight in the middle, on worn tyres: 925, then 900 lb/in`."""
    setting = sheet.setting(one.moves)
    stops = [setting.figure(stop) for stop in one.stops[:-1]] + [setting.shown(stop) for stop in one.stops[-1:]]
    what = ", then ".join(stops) or "nothing is left that way"
    moves = f"{the(sheet.garage, one.moves)} " if one.moves != told.address else ""
    only = for_whom(one.advice.tyres, one.advice.device)
    return f"if {feel(one.advice.feels)}{f', {only}' if only else ''}: {moves}{what}"


def _also(told: Explanation) -> Iterator[str]:
    also = told.row.what_else("raise") if told.row else ""
    if also:
        yield also


def _silence(told: Explanation) -> str:
    if told.value is None:
        return "no opinion: the setup has no value for it"
    if told.click is None:
        return "no opinion: it has no click to move"
    if not told.asked:
        return "no opinion: it was not asked"
    if not told.cars:
        return "no opinion: too few plausible cars have such a setup at this track"
    return "no opinion: it does not read this setting"


def _in_phase(told: Explanation, opinion: PhaseOpinion, phase: Phase) -> str:
    """`tighter in 99 of 100 plausible cars, about as much as half a percent of cross weight; the ... tyre pays`."""
    if told.rule(phase) == "none":
        return "the garage settles that nothing happens; the model does not count"
    if opinion.sure == "none":
        return "nothing happens"
    if opinion.sure is None:
        return f"depends on the car: {_shares(opinion)}"
    halves = measure(opinion.size, told.half_percent.get(phase))
    size = f", {in_words(halves)}" if halves is not None else ""
    felt = halves is not None and abs(halves) >= SMALLEST
    pays = f"; the {CORNER_NAMES[opinion.pays]} tyre pays" if opinion.pays and felt else ""
    return f"{opinion.sure} in {of_cars(opinion.agreement(opinion.sure))}{size}{pays}"


def _shares(opinion: PhaseOpinion) -> str:
    words: tuple[tuple[Effect, str], ...] = (("tighter", "tighter"), ("looser", "looser"), ("none", "nothing"))
    shares = [(word, opinion.agreement(effect)) for effect, word in words]
    return ", ".join(f"{word} in {of_hundred(share)}" for word, share in shares if share >= 0.005)


def _short(opinion: PhaseOpinion, halves: float | None) -> str:
    if opinion.sure == "none":
        return "nothing"
    if opinion.sure is None or halves is None:
        return "it depends on the car"
    return f"{opinion.sure}, {in_words(halves)}"


def _differences(told: Explanation, phase: Phase) -> Iterator[str]:
    """What stands after `On entry`."""
    rule, stated = told.rule(phase), told.stated.get(phase)
    if stated and rule and stated != rule:
        yield f"the author says {_word(stated)}, the rule {_word(rule)}"
    if rule == "none" or told.opinion is None:
        return
    model = told.opinion.at(phase)
    if stated in ("tighter", "looser") and model.sure not in (None, "none", stated):
        yield f"the author says {stated}, the model {model.sure} {_NEARLY}"
    if rule is None:
        halves = measure(model.size, told.half_percent.get(phase))
        if model.sure not in (None, "none") and halves is not None and abs(halves) >= SMALLEST:
            yield f"no rule speaks; the model has it {model.sure} {_NEARLY}, which is told but never offered"
    elif model.sure is None:
        yield f"the rule says {rule}, by the model it depends on the car"
    elif model.sure != rule:
        yield f"the rule says {rule}, the model {_word(model.sure)}{'' if model.sure == 'none' else f' {_NEARLY}'}"


def _word(effect: Effect) -> str:
    return "nothing" if effect == "none" else effect


def _against_flat(told: Explanation) -> Iterator[str]:
    """How a click compares, phases that do alike together."""
    folds = {phase: ratio for phase in PHASES if (ratio := _ratio(told, phase)) is not None}
    if folds:
        times = _alike((phase, fold(ratio)) for phase, ratio in folds.items())
        yield f"a click is worth, against a flat track, {listed([f'{said} {places}' for said, places in times])}"
    others = _alike((phase, said) for phase in PHASES if phase not in folds and (said := _turns(told, phase)))
    yield from (f"{places} {said}" for said, places in others)


def _ratio(told: Explanation, phase: Phase) -> float | None:
    """Size here by size on a flat track, where both are sure of the same; None where they do not compare."""
    if told.opinion is None or told.flat is None or told.rule(phase) == "none":
        return None
    here, flat = told.opinion.at(phase), told.flat.at(phase)
    alike = here.sure == flat.sure and here.sure in ("tighter", "looser")
    return here.size / flat.size if alike and flat.size else None


def _turns(told: Explanation, phase: Phase) -> str:
    """`a click makes the car looser, on a flat track tighter`; "" where it is the same or settled."""
    if told.opinion is None or told.flat is None or told.rule(phase) == "none":
        return ""
    here, flat = told.opinion.at(phase).sure, told.flat.at(phase).sure
    if here == flat:
        return ""
    there = {None: "depends on the car", "none": "does nothing"}.get(flat, f"makes the car {flat}")
    if here is None:
        return f"what a click does depends on the car, where on a flat track it {there}"
    does = "does nothing" if here == "none" else f"makes the car {here}"
    return f"a click {does}, where on a flat track {'what it does' if flat is None else 'it'} {there}"


def _alike(said: Iterable[tuple[Phase, str]]) -> list[tuple[str, str]]:
    """Each text once with the places it holds for, `("looser", "on entry and on exit")`, in the order they come."""
    found: dict[str, list[str]] = {}
    for phase, text in said:
        found.setdefault(text, []).append(PLACES[phase])
    return [(text, listed(places)) for text, places in found.items()]


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
