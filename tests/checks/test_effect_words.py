"""Effect words of prose against the effect stated beside them: what must be found and what must stay silent.

The texts stand in the base library: cross weight went up and is stated tighter all through the corner (advice for a
tight middle: lower); the right front spring went down, stated looser on entry (advice for a loose entry: raise); the
rear split went up, stated looser in the middle and on exit.
"""

from __future__ import annotations

import json
import shutil
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from producer.checks import effect_word_differs
from producer.checks.felt import Felt, felt
from producer.checks.said import Spoken
from producer.library.load import load
from producer.library.records import build
from producer.model.episode import Reason, Setup
from producer.model.garage import Garage
from producer.model.prose import Prose
from producer.model.sheet import Movement, Sheet, SheetReason

BASE = Path(__file__).parent / "base"
DATA = Path(__file__).parent.parent / "data"
EPISODE = "marrow-creek-grand-sedan"
CROSS = "because: I want the car to wait for me, so there is more of it than the garage gives."
CROSS_SAY = "say: Take some of it out again and the middle frees up."
SPRING = "because: A little softer than usual, so the nose takes a set sooner."
SPRING_SAY = "say: Go back up and the entry calms down."
SPLIT = "because: It helps the car turn once it has settled."
GEAR = "because: A longer gear is kinder to the rear tires on the way out."
OPENING = "opening: You asked for this place, and here it is."


def marked(tmp_path: Path, line: str, text: str) -> list[str]:
    """What the check marks when `text` stands in place of a line of the base episode."""
    root = tmp_path / "library"
    shutil.copytree(BASE, root)
    path = root / EPISODE / "episode.yaml"
    written = path.read_text(encoding="utf-8")
    assert line in written
    key = line.partition(":")[0]
    path.write_text(written.replace(line, f"{key}: {json.dumps(text, ensure_ascii=False)}"), encoding="utf-8")
    library, found = load(root)
    assert not found
    lines = path.read_text(encoding="utf-8").splitlines()
    places = [one.place for one in effect_word_differs.check_episode(library.case(library.episodes[EPISODE]))]
    return [lines[one.line - 1][one.column - 1 : one.column - 1 + one.width] for one in places]


@pytest.mark.parametrize(
    ("line", "text", "words"),
    [
        (CROSS, "It loosens it off.", "loosens it off"),
        (CROSS, "It frees up the middle.", "frees up the middle"),
        (CROSS, "The car rotates on entry because of it.", "rotates on entry"),
        (CROSS, "There is more of it here, and that makes the car looser on exit.", "looser on exit"),
        (CROSS, "Two clicks up, and it helps the car turn in the middle.", "helps the car turn in the middle"),
        (CROSS, "It keeps it from pushing off the corner.", "keeps it from pushing off the corner"),
        (CROSS, "It takes the push out of it in the center.", "takes the push out of it in the center"),
        (CROSS, "It frees the car.", "frees the car"),
        (CROSS, "It loosens the car up.", "loosens the car up"),
        (CROSS, "The wedge is up, which frees it up getting in.", "frees it up getting in"),
        (CROSS, "I want it to wait.\n\nIt turns better through the middle.", "turns better through the middle"),
        (CROSS, "It cures the push in the middle.", "cures the push in the middle"),
        (SPRING, "It keeps it from getting loose going in.", "keeps it from getting loose going in"),
        (SPRING, "A step softer, which tightens the entry.", "tightens the entry"),
        (SPRING, "The right front went down, and it steadies the car on the way in.", "steadies the car on the way in"),
        (SPRING, "It makes the car tighter going in.", "tighter going in"),
        (SPRING, "It makes it push on entry.", "push on entry"),
        (SPRING, "It settles the rear under braking.", "settles the rear under braking"),
        (SPLIT, "It plants the rear when you go to the throttle.", "plants the rear when you go to the throttle"),
        (SPLIT, "More of it makes the exit tighter.", "tighter"),
        (SPLIT, "It won't rotate in the middle.", "won't rotate in the middle"),
        (CROSS_SAY, "Take half a percent out and the middle tightens up.", "tightens up"),
        (CROSS_SAY, "Take some out, it makes the car tighter in the middle.", "tighter in the middle"),
        (SPRING_SAY, "Go back up a step and it loosens the entry.", "loosens the entry"),
        (SPRING_SAY, "Put a step back in, and it helps the car turn in.", "helps the car turn in"),
        (SPRING_SAY, "Raise it. It frees the car.", "frees the car"),
    ],
)
def test_an_effect_that_is_stated_the_other_way_is_found(tmp_path: Path, line: str, text: str, words: str) -> None:
    found = marked(tmp_path, line, text)
    assert len(found) == 1, found
    assert words in found[0] or found[0] in words


@pytest.mark.parametrize(
    ("line", "text"),
    [
        # What agrees.
        (CROSS, "It tightens the car off the corner."),
        (CROSS, "It keeps it from getting loose going in."),
        (CROSS, "It plants the rear and takes the wiggle out of it on the gas."),
        (SPRING, "It frees up the entry."),
        (SPRING, "It cures the push going in."),
        (SPLIT, "It rotates in the middle and it is freer off."),
        (CROSS_SAY, "Take some out and it cures the push in the middle."),
        (SPRING_SAY, "Go back up, and it keeps it from getting loose on entry."),
        # A part of the corner of which nothing is stated.
        (SPRING, "It tightens it off the corner a shade."),
        (SPRING, "It makes the middle tighter, and I like that."),
        (SPLIT, "It keeps it from getting loose going in."),
        (CROSS_SAY, "Take some out. It tightens the entry a little."),
        (GEAR, "It loosens the entry a shade."),
        # Conditions, wishes, tries, other people.
        (CROSS, "If you take it out it loosens the car off."),
        (CROSS, "If it is loose off, this is why."),
        (CROSS, "Less of it would loosen it off."),
        (CROSS, "When it is down there the car gets loose off."),
        (CROSS, "I tried less, and it was freer in the middle."),
        (CROSS, "Some of you say that it frees the car off."),
        (CROSS, "You might find that it loosens the exit."),
        (CROSS, "Does it loosen the exit? No."),
        (CROSS, "It never loosens the exit."),
        (CROSS, "It does not free the car up."),
        (CROSS, "It loosens nothing."),
        (CROSS, "As soon as it gets loose off, add some."),
        # The other direction, other settings, other setups.
        (CROSS, "Taking wedge out loosens the car off."),
        (CROSS, "Lowering it frees the middle, raising it takes that away."),
        (CROSS, "Less wedge loosens the exit."),
        (CROSS, "A softer spring on the right front frees the entry, and this pays it back."),
        (CROSS, "The rear split loosens the middle."),
        (CROSS, "The rear springs have a split. It frees the car in the middle."),
        (CROSS, "The long run is looser in the middle."),
        (CROSS, "The track bar loosens it off, and this ties it down."),
        (SPRING, "Stiffening it tightens the entry."),
        (SPRING, "A stiffer right front makes it tighter going in."),
        (SPRING, "The cross weight tightens the entry, so the spring may be soft."),
        # Other times of the run, and what it costs.
        (CROSS, "Late in the run it gets looser off."),
        (CROSS, "On old tires the car frees up off the corner."),
        (CROSS, "It frees up in the middle as the fuel burns off."),
        (CROSS, "After twenty laps it rotates in the middle."),
        (CROSS, "On fresh tires it turns better in the middle."),
        (SPRING, "The price is a nose that settles the rear less."),
        (SPRING, "It costs nothing, though the tail stays planted and the car is calmer."),
        (SPLIT, "Still the rear stays put, and it is more stable than it looks."),
        (CROSS, "Any more and the car frees up off the corner."),
        (SPRING, "Too much of that and it tightens the entry."),
        # What is no effect of a setting.
        (CROSS, "The nose keeps coming around."),
        (CROSS, "It was a tight race, and the car was loose in the rain."),
        (CROSS, "It got loose off of two and I saved it."),
        (CROSS, "Feel free to turn it up."),
        (CROSS, "I run it because the car was loose off."),
        (CROSS, "The exit is where you pass, so turn early and be patient."),
        (SPRING, "The wall is tight on the left going in."),
        (OPENING, "The car loosens up off turn four and tightens going in."),
        # Advice that turns back.
        (SPRING_SAY, "Go up a step. If it then pushes going in, go back."),
        (CROSS_SAY, "Take some out. If the exit gets loose, put it back and the middle tightens again."),
        (CROSS_SAY, "Take some out before the middle gets any tighter."),
        (SPRING_SAY, "Go back up, or live with an entry that frees up too much."),
    ],
)
def test_what_agrees_or_is_not_meant_is_silent(tmp_path: Path, line: str, text: str) -> None:
    assert marked(tmp_path, line, text) == []


def test_an_effect_of_none_and_a_reason_without_one_say_nothing(tmp_path: Path) -> None:
    root = tmp_path / "library"
    shutil.copytree(BASE, root)
    path = root / EPISODE / "episode.yaml"
    text = path.read_text(encoding="utf-8").replace(CROSS, "because: It loosens it off.")
    path.write_text(
        text.replace("effect: { entry: tighter, middle: tighter, exit: tighter }", "effect: { exit: none }"),
        encoding="utf-8",
    )
    library, _ = load(root)
    assert list(effect_word_differs.check_episode(library.case(library.episodes[EPISODE]))) == []


def test_the_demo_is_silent(demo: Path) -> None:
    library, _ = load(demo)
    found = [one for x in library.episodes.values() for one in effect_word_differs.check_episode(library.case(x))]
    assert found == []


def labelled() -> list[dict[str, Any]]:
    """Every labelled line about settings, the given and our own."""
    files = (DATA / "claims" / "claims.jsonl", DATA / "claims-own.jsonl")
    return [json.loads(line) for file in files for line in file.read_text(encoding="utf-8").splitlines()]


def effects_of(text: str, garage: Garage, address: str, difference: int) -> list[Felt]:
    """What is heard in a text that stands as the reason for a setting that moved that way."""
    setup = Setup.model_validate({"setup": "short", "name": "Short run", "values": {"tape": 40}})
    values = {name: one.default for name, one in garage.settings.items() if one.default is not None}
    reason = Reason.model_validate({"for": address, "because": text})
    moved = Movement(address, Decimal(0), Decimal(difference), "default")
    whole = SheetReason(reason, "short", False, (address,), (address,), (moved,))
    sheet = Sheet(setup, garage, values, values, None)
    return list(felt(Spoken(Prose(reason, ("because",), text, setup, reason), sheet, garage, whole), {}))


def test_labelled_lines_are_never_heard_the_wrong_way_and_mostly_heard() -> None:
    garage, _, _ = build(Garage, "garages/given.yaml", (DATA / "claims" / "garage.yaml").read_text(encoding="utf-8"))
    assert garage is not None
    heard = lines = 0
    wrong: list[str] = []
    for row in labelled():
        told = [one for one in row["claims"] if one.get("feel")]
        about = {one["parameter"] for one in row["claims"]}
        if not told:
            wrong += [row["text"] for _ in effects_of(row["text"], garage, "cross_weight", 1)]
        elif len(about) == 1:
            lines += 1
            found = effects_of(row["text"], garage, about.pop(), -1 if told[0].get("direction") == "lower" else 1)
            right = {one["feel"] for one in told}
            wrong += [row["text"] for one in found if one.feel not in right]
            heard += bool(found)
    assert wrong == []
    assert lines > 80
    assert heard / lines > 0.6
