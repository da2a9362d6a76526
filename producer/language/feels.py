"""What a stretch says the car does: tighter or looser, and where; and conditions ("if it is tight going in")."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, cast

from producer.language.effect_words import CAUSES, GONE
from producer.language.items import Item, mention_of
from producer.language.tokens import listed
from producer.model.words import PHASES, Phase

_ARROWS = frozenset({"->", "=>", "→", ":", "="})
_STARTERS = frozenset({"set", "move", "take", "put", "number", "shift"})
# Once the complaint and its place are said, these begin what to do about it.
# What was so before, or is so whatever was done.
_WEARS = listed("away goes wears gets heats gives starts burns fades wore falls")
_NOT_ITS_DOING = listed("still already always than like where unless before whenever how")
# "cross 49, a bit loose off": a note says no more of the car.
_IN_A_NOTE = listed("in off out too a bit little very mid the way so on")
_CARS = listed("it she car that which rear nose back tail front end")
_ACTS = listed("go try run set bring just then i we you i'd give come back throw what")


@dataclass(frozen=True, slots=True)
class Effect:
    """`polarity` +1 tighter, -1 looser; `where` in the order of the corner; characters `start` to `end`."""

    polarity: int
    where: tuple[Phase, ...]
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Condition:
    """Items `first` to `last` (exclusive) are a condition on how the car feels: `tight entry`."""

    first: int
    last: int
    feels: str | None
    start: int
    end: int


def effect(row: list[Item], after: bool = False) -> Effect | None:
    """The effect that a stretch states; None where it states none, or two that disagree.

    `after`: the stretch follows what was done, so that "it pushes in the middle" says what came of it.
    """
    feels = [at for at, one in enumerate(row) if one.kind == "feel"]
    said = [(at, sign) for at in feels for sign in [_sign(row, at, after)] if sign]
    if len(said) > 1:  # "frees it up without making it loose off" only frees it
        said = [(at, sign) for at, sign in said if all(one.word != "without" for one in row[max(0, at - 4) : at])]
    if not said or len({sign for _, sign in said}) > 1:
        return None
    where = {phase for at, _ in said for phase in _where(row, at)}
    first, last = said[0][0], said[-1][0]
    ends = [row[at].end for at in range(last, min(last + 7, len(row))) if row[at].kind in {"phase", "cure", "feel"}]
    start = next((one.start for one in row[:first] if one.kind in {"cure", "neg"}), row[first].start)
    phases = tuple(one for one in PHASES if one in where)
    return Effect(said[0][1], phases, start, max([row[last].end, *ends]))


def conditions(row: list[Item]) -> list[Condition]:
    """Every condition about a feel, in order. "If you stiffen it" is none."""
    found: list[Condition] = []
    at = 0
    while at < len(row):
        one = _condition(row, at) if row[at].kind == "if" else _heading(row, at)
        if one is not None:
            found.append(one)
            at = one.last
        else:
            at += 1
    return found


def question(row: list[Item]) -> Condition | None:
    """A sentence that only asks how the car feels: "Tight off?", "Is it loose in the middle?"."""
    feel = next((at for at, one in enumerate(row) if one.kind == "feel"), None)
    quiet = {"feel", "phase", "pronoun", "word", "at", "move", "in", "out", "back", "past"}
    if feel is None or not row or any(one.kind not in quiet for one in row):
        return None
    feels = _complaint(row, 0, feel, len(row))
    return Condition(0, len(row), feels, row[0].start, row[-1].end) if feels else None


def _heading(row: list[Item], first: int) -> Condition | None:
    """As in "loose off -> LR spring up 25", "tight in: ...", "free off, take a click out ..." at the head of a note."""
    if first and not (row[first - 1].kind == "sep" and row[first - 1].word in {";", ":", "~"}):
        return None
    feel = next((at for at in range(first, min(first + 5, len(row))) if row[at].kind == "feel"), None)
    if feel is None or _feel(row[feel])[1] != "state" or any(x.kind not in {"word", "move"} for x in row[first:feel]):
        return None
    last = feel + 1
    while last < len(row) and (row[last].kind == "phase" or row[last].word in {"in", "off", "out", "the", "of"}):
        last += 1
    joint = row[last] if last < len(row) else None
    acts = row[last + 1].kind if last + 1 < len(row) else ""
    leads = joint is not None and (
        joint.word in _ARROWS or (joint.word == "," and acts in _STARTERS - {"number", "set"})
    )
    feels = _complaint(row, first, feel, last) if leads else None
    return Condition(first, last, feels, row[first].start, row[last - 1].end) if feels else None


def _condition(row: list[Item], first: int) -> Condition | None:
    feel = phase = last = 0
    for at in range(first + 1, min(first + 25, len(row))):
        one = row[at]
        if one.kind in _STARTERS and not _passing(row, at):
            break
        if feel and phase and (one.word in _ACTS or one.kind in _STARTERS) and not _foreign(one):
            break
        if one.kind == "sep" and feel and (phase or one.word in {",", ":", "then"}):
            break
        if one.kind == "feel":
            if feel:
                break
            feel = at
        if one.kind == "phase" or (feel and at == feel + 1 and one.word in {"in", "off", "out"}):
            phase = at
        last = at + 1
    if not feel:
        return None
    return Condition(first, last, _complaint(row, first, feel, last), row[first].start, row[last - 1].end)


def _foreign(one: Item) -> bool:
    return bool(getattr(one.data, "foreign", False))


def _passing(row: list[Item], at: int) -> bool:
    """A lap count, a corner or a word of movement inside a condition: "after 20 laps", "takes a set"."""
    one = row[at]
    if one.kind == "number":
        return _foreign(one)
    if one.kind == "move":
        return isinstance(one.data, tuple) and one.data[1] == "way"
    if one.kind != "set" or mention_of(one).addresses:
        return False
    if at + 1 < len(row) and row[at + 1].word in _WEARS:
        return True  # "when that right front goes away"
    return not mention_of(one).parts


def _complaint(row: list[Item], first: int, feel: int, last: int) -> str | None:
    polarity, kind = _feel(row[feel])[:2]
    denied = any(one.kind == "neg" for one in row[first:feel])
    if kind == "change" and not denied:
        return None
    if kind != "change" and denied:
        return None
    where = _where(row[first:last], feel - first)
    if len(where) != 1:
        return None
    tight = polarity < 0 if kind == "change" else polarity > 0
    return f"{'tight' if tight else 'loose'} {next(iter(where))}"


def _feel(item: Item) -> tuple[Any, ...]:
    """Polarity, kind and, where the words say it, the part of the corner."""
    return cast("tuple[Any, ...]", item.data)


def _sign(row: list[Item], at: int, after: bool = False) -> int:
    """+1 tighter, -1 looser, 0 nothing said, after what stands around the word turned it."""
    polarity, kind = _feel(row[at])[:2]
    turns = _turns(row, at, kind)
    if kind in {"change", "refusal"}:
        return int(polarity * (-1) ** turns) if turns < 2 else 0
    if turns:
        return -int(polarity) if turns == 1 else 0
    before = [one.word for one in row[max(0, at - 4) : at]]
    if row[at].word != "too" and _was_too(row, at):
        return -int(polarity)  # "I let half a pound out, it was a tick too tight"
    if not CAUSES.isdisjoint(before) or _much(row, at) > 0 or (after and _asserted(row, at)):
        return int(polarity)
    return 0


def _was_too(row: list[Item], at: int) -> bool:
    """Whether a stretch that moves a setting says after it what was too much before."""
    first = next((x for x in range(at - 1, 0, -1) if _begins_anew(row, x, at) and row[x + 1].word == "was"), None)
    if first is None or not any(one.kind in {"move", "take", "put"} for one in row[:first]):
        return False
    longer = row[at].end - row[at].start > len(row[at].word) + 3  # "too tight" is one item
    return longer or any(one.word == "too" for one in row[first:at])


def _asserted(row: list[Item], at: int) -> bool:
    """Whether a stretch says of the car, as it now is, that it is so: "it's stable", "the car pushes"."""
    before = row[max(0, at - 7) : at]
    said = row[:at]
    for first in range(at - 1, -1, -1):
        if _begins_anew(row, first, at):
            said = row[first:at]
            break
    past = [one.word for one in said if one.kind == "past" and one.word not in {"was", "were"}]
    if past or any(one.kind in {"someone", "if", "would"} or one.word in _NOT_ITS_DOING for one in said):
        return False
    noted = all(one.kind in {"feel", "phase"} or one.word in _IN_A_NOTE for one in row)
    return noted or any(one.word in _CARS for one in before)


def complaint(row: list[Item]) -> Effect | None:
    """A complaint that a stretch states as it is ("it was loose off"): what a setting that followed has cured."""
    said = [at for at, one in enumerate(row) if one.kind == "feel" and _feel(one)[1] == "state"]
    if len(said) != 1 or sum(one.kind == "feel" for one in row) != 1 or _turns(row, said[0]):
        return None
    at = said[0]
    phases = tuple(one for one in PHASES if one in _where(row, at))
    if not any(one.kind == "pronoun" or one.word == "car" for one in row[:at]):
        return None
    return Effect(-int(_feel(row[at])[0]), phases, row[0].start, row[-1].end)


def _much(row: list[Item], at: int) -> int:
    """As in "more push" +1, "less push" -1."""
    before = row[at - 1].data if at and row[at - 1].kind == "move" else None
    return int(before[0]) if isinstance(before, tuple) and before[1] == "much" else 0


def _turns(row: list[Item], at: int, kind: str = "state") -> int:
    """How often the feel at `at` is turned round: negations, remedies, "less", "goes away"."""
    quality = kind == "quality"
    return _turned_before(row, at, quality) + _turned_after(row, at, quality)


def _turned_before(row: list[Item], at: int, quality: bool) -> int:
    count = 0
    moved = False
    for back in range(at - 1, max(-1, at - 12), -1):
        one = row[back]
        if one.kind == "feel" and any(x.word in {"and", "or"} for x in row[back + 1 : at]):
            continue  # "keeps it from darting in and getting loose"
        if one.kind in {"feel", "sep"} or _begins_anew(row, back, at):
            break
        if one.kind in {"set", "number"} and row[at - 1].kind != "neg":
            # A movement before the setting is the setting's own: "less air in the right front".
            moved = True
        lowered = _lowers(one) and not moved and at - back <= 4
        if (one.kind == "cure" and not (quality and one.data)) or lowered:
            # "prevents ... from", "keeps it from": one remedy, however many words. "Did not cure it" says nothing.
            denied = one.word != "quit" and any(x.kind == "neg" for x in row[max(0, back - 2) : back])
            return count + (3 if denied else 1)
        count += one.kind == "neg"
    return count


def _lowers(one: Item) -> bool:
    """As in "less push", "reduces the push"."""
    return one.kind == "move" and isinstance(one.data, tuple) and one.data[0] < 0 and one.data[1] != "way"


def _turned_after(row: list[Item], at: int, quality: bool) -> int:
    count = 0
    for one in row[at + 1 : at + 7]:
        if one.kind in {"feel", "sep"}:
            break
        if one.kind == "out" and any(other.kind == "take" for other in row[max(0, at - 3) : at]):
            count += 1  # "takes the wiggle out"
        if one.kind == "cure" and one.word in GONE and not quality:
            count += 1
    return count


def _begins_anew(row: list[Item], back: int, at: int) -> bool:
    """As in "it still wouldn't take a set | it was loose getting in": a new thought without a joint."""
    if row[back].kind != "pronoun" or row[back].word not in {"it", "she"} or back + 1 >= at or back == 0:
        return False
    begins = row[back + 1].word in {"was", "is", "'s"} or row[back + 1].kind == "neg"
    return begins and row[back - 1].kind not in {"cure", "neg"}


def _where(row: list[Item], at: int) -> set[Phase]:
    """The parts of the corner named after a feel, else before it."""
    found: set[Phase] = set(_feel(row[at])[2:])
    after = row[at + 1 : at + 10]
    for distance, one in enumerate(after):
        if one.kind == "feel" or (one.kind == "set" and found):
            break
        if one.kind == "phase":
            found.add(cast("Phase", one.data))
        elif distance == 0 and one.word in {"in", "off"} and not _object(after):
            found.add("entry" if one.word == "in" else "exit")
    if found:
        return found
    for one in reversed(row[max(0, at - 6) : at]):
        if one.kind == "feel":
            break
        if one.kind == "phase":
            found.add(cast("Phase", one.data))
    return found


def _object(after: list[Item]) -> bool:
    """Whether "in" or "off" has an object of its own: "loose in the middle" is not loose going in."""
    objects = {"the", "my", "a", "this", "that", "traffic", "there", "it"}
    return len(after) > 1 and (after[1].word in objects or after[1].kind == "phase")
