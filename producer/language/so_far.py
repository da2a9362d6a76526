"""What has been said so far in one sentence: its topic, its corner, and which of its words can have figures."""

from __future__ import annotations

from dataclasses import dataclass, field

from producer.language.feels import Condition, Effect
from producer.language.items import Item, mention_of
from producer.language.settling import Draft
from producer.language.stretches import side_only
from producer.language.terms import Mention, Vocabulary


@dataclass(slots=True)
class SoFar:
    """The state of reading one sentence."""

    vocabulary: Vocabulary
    subject: tuple[str, ...]
    topic: str = ""
    axle: str = ""
    number_first: bool | None = None
    drafts: list[Draft] = field(default_factory=list)
    pending: Condition | None = None
    effect: tuple[Effect, int] | None = None
    others: bool = False
    readings: bool = False
    cured: Effect | None = None
    because: bool = False
    corner: tuple[str, ...] = ()
    implied: str = ""
    later: str = ""
    figure: list[Item] = field(default_factory=list)


def names_other(row: list[Item], state: SoFar) -> bool:
    """Whether a sentence names a setting that the subject does not cover."""
    covered = set(state.subject)
    parameters = {one.split(".")[0] for one in covered}
    places = {one.split(".")[1] for one in covered if "." in one}
    for one in row:
        if one.kind != "set":
            continue
        mention = mention_of(one)
        if mention.parameter and mention.parameter not in parameters:
            return True
        if not set(mention.addresses) <= covered or not set(mention.parts) <= places:
            return True
    return False


def later_topic(row: list[Item], vocabulary: Vocabulary) -> str:
    """The only parameter of a sentence, where it is one of corners, for corners that are said before it; else ""."""
    named = {mention_of(one).parameter for one in row if one.kind == "set"} - {""}
    return next(iter(named)) if len(named) == 1 and vocabulary.cornered(*named) else ""


def note_topic(stretch: list[Item], state: SoFar) -> None:
    for at, one in enumerate(stretch):
        if one.kind == "foreign" and (one.data or any(other.kind == "number" for other in stretch[at:])):
            state.readings = True  # "the right rear tyre lost 24 percent, the left rear 15"
        if one.kind == "set":
            mention = mention_of(one)
            if mention.parameter:
                state.readings = False
                goes_on = (mention.side and not mention.parts) or state.topic in {"", mention.parameter}
                beside = state.axle if goes_on else ""
                state.topic, state.axle = mention.parameter, mention.axle or beside
            elif mention.parts:
                state.axle = "front" if mention.parts[0].endswith("f") else "rear"
            elif mention.axle and not mention.split:
                state.axle = mention.axle


def with_figure_before(stretch: list[Item], state: SoFar) -> list[Item]:
    """As in "At 66 percent, the brake bias ...": the figure said before goes with the setting."""
    before, state.figure = state.figure, []
    kinds = [one.kind for one in stretch]
    if "set" not in kinds:
        leads = len(stretch) < 4 and stretch[0].word in {"at", "with"} and kinds[-1] == "number"
        state.figure = stretch if leads and not state.drafts else []
        return [] if state.figure else stretch
    return stretch if "number" in kinds else [*before, *stretch]


def targets_of(stretch: list[Item], state: SoFar) -> list[int]:
    """The places of the mentions that can have figures; a parameter for the corner said before only where none is."""
    found = [at for at, one in enumerate(stretch) if one.kind == "set" and _is_target(mention_of(one), state)]
    placed = [at for at in found if mention_of(stretch[at]).addresses or not mention_of(stretch[at]).parameter]
    corners = [mention_of(one).parts for one in stretch if one.kind == "set" and mention_of(one).parts]
    state.corner = corners[-1] if corners else state.corner
    return placed or found


def _is_target(one: Mention, state: SoFar) -> bool:
    """Whether a mention can have figures of its own; "springs" alone is a topic, or the subject's own name."""
    if one.parts and not one.parameter and state.readings:
        return False
    if one.addresses or one.parts or one.split:
        return True
    if side_only(one):
        shape = state.vocabulary.garage.parameters.get(state.topic)
        axle = state.axle or state.vocabulary.only_axle(state.topic)
        return bool(axle) if shape is None else bool(shape.ends) or bool(shape.corners and axle)
    if one.parameter and state.corner and state.vocabulary.cornered(one.parameter) and not one.axle and not one.side:
        return True
    if one.parameter and one.side and state.axle and state.vocabulary.cornered(one.parameter):
        return True
    own = [address for address in state.subject if address.split(".")[0] == one.parameter]
    return bool(one.parameter) and len(own) == 1 and not one.axle and not one.side
