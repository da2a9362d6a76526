"""Figures and movement words of prose against the sheet: what must be found and what must stay silent.

The texts stand as the reasons of the base library: the right front spring went down a step from the default 750 to
725 (advice: 750, then 775), cross weight up from 50 to 52, the rear split is 75; the long run has 775.
"""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from producer.checks import direction_word_differs, number_differs
from producer.library.load import load

BASE = Path(__file__).parent / "base"
EPISODE = "marrow-creek-grand-sedan"
SPRING = "because: A little softer than usual, so the nose takes a set sooner."
SPRING_SAY = "say: Go back up and the entry calms down."
CROSS = "because: I want the car to wait for me, so there is more of it than the garage gives."
OPENING = "opening: You asked for this place, and here it is."


def said(tmp_path: Path, line: str, text: str) -> tuple[list[str], list[str]]:
    """What each check marks when `text` stands in place of a line of the base episode: figures, movement words."""
    root = tmp_path / "library"
    shutil.copytree(BASE, root)
    path = root / EPISODE / "episode.yaml"
    written = path.read_text(encoding="utf-8")
    assert line in written
    key = line.partition(":")[0]
    path.write_text(written.replace(line, f"{key}: {json.dumps(text, ensure_ascii=False)}"), encoding="utf-8")
    library, found = load(root)
    assert not found
    case = library.case(library.episodes[EPISODE])
    lines = path.read_text(encoding="utf-8").splitlines()
    marked: tuple[list[str], list[str]] = ([], [])
    for into, check in zip(marked, (number_differs, direction_word_differs), strict=True):
        for one in check.check_episode(case):
            into.append(lines[one.place.line - 1][one.place.column - 1 : one.place.column - 1 + one.place.width])
    return marked


@pytest.mark.parametrize(
    ("line", "text", "marked"),
    [
        (SPRING, "We run 750 pounds in the right front.", "750 pounds"),
        (SPRING, "The spring is at seven fifty here.", "seven fifty"),
        (SPRING, "The right-front spring: 700.", "700"),
        (SPRING, "Two steps softer than the default.", "Two steps"),
        (SPRING, "I took fifty pounds out of it.", "fifty pounds"),
        (SPRING, "The right front goes from 775 down to 725.", "775"),
        (SPRING, "The left front is at 725, and that is plenty.", "725"),
        (SPRING, "With the cross at fifty-one and a half it turns.", "fifty-one and a half"),
        (SPRING, "There is a fifty pound split in the rear springs.", "fifty pound"),
        (SPRING, "The right rear is 50 stiffer than the left rear spring.", "50"),
        (SPRING, "The three-eighty gear goes with it.", "three-eighty"),
        (SPRING, "RF 750, LF 700.", "750"),
        (SPRING, "There are fifty pounds between the rear springs.", "fifty pounds"),
        (CROSS, "Half a percent more than the default.", "Half a percent"),
        (CROSS, "Half a percent more than the default and the car waits for me.", "Half a percent"),
        (CROSS, "Fifty-two and a half percent is where it woke up.", "Fifty-two and a half percent"),
        (CROSS, "The wedge is up by three clicks.", "three clicks"),
        (SPRING_SAY, "Go up two and a half steps on the right front spring.", "two and a half steps"),
        (SPRING_SAY, "Put the right front back up to 800.", "800"),
        (SPRING_SAY, "Go up to 780 pounds.", "780 pounds"),
        (OPENING, "We put the tape at sixty and went home.", "sixty"),
    ],
)
def test_a_figure_that_differs_is_found(tmp_path: Path, line: str, text: str, marked: str) -> None:
    figures, _ = said(tmp_path, line, text)
    assert figures == [marked]


@pytest.mark.parametrize(
    ("line", "text", "marked"),
    [
        (SPRING, "Stiffer than the default.", "Stiffer"),
        (SPRING, "I stiffened the right front for this place.", "stiffened"),
        (SPRING, "A step up on the right front spring.", "up"),
        (SPRING, "It is one step stiffer here.", "stiffer"),
        (CROSS, "I took some of the cross out for this place.", "took"),
        (CROSS, "A little less wedge than the garage gives.", "less"),
        (SPRING_SAY, "Soften the right front and the entry calms down.", "Soften"),
        (SPRING_SAY, "Go down a step.", "down"),
        (SPRING_SAY, "Soften the right front spring a click or two.", "Soften"),
    ],
)
def test_a_word_that_goes_the_other_way_is_found(tmp_path: Path, line: str, text: str, marked: str) -> None:
    _, words = said(tmp_path, line, text)
    assert words == [marked]


@pytest.mark.parametrize(
    ("line", "text"),
    [
        (SPRING, "I ran 750 laps on it, and lap 750 was a 31.4."),
        (SPRING, "At 750 it was lazy."),
        (SPRING, "750 of you asked, in 12 minutes, for 250 dollars."),
        (SPRING, "I tried 775 pounds first."),
        (SPRING, "I had it at 775 in the right front before, and it was a bus."),
        (SPRING, "If you raise the right front to 800 it gets lazy."),
        (SPRING, "I would not go to 800 pounds."),
        (SPRING, "You could go up to 800 pounds on a cold night."),
        (SPRING, "Do not run it stiffer than 700 pounds."),
        (SPRING, "Some of you run 800 pounds here."),
        (SPRING, "The long run has 775 in the right front."),
        (SPRING, "{{ spring.rf }} pounds, down from {{ spring.lf }} and no more."),
        (SPRING, "25 pounds softer, 725 pounds instead of 750."),
        (SPRING, "Not 750 pounds, 725."),
        (SPRING, "The right front tire read 205 degrees, 98 in the middle."),
        (SPRING, "Tire wear after 40 laps: LF 14, RF 26."),
        (SPRING, "It found 2 tenths and 25 feet at the stripe."),
        (SPRING, "It puts 40 pounds more load on that corner."),
        (SPRING, "Put 40 pounds of fuel in it and go."),
        (SPRING, "I lowered my hopes by two clicks and raised my hand."),
        (SPRING, "Stiffer tires and a higher line are another matter, as are lower lap times."),
        (SPRING, "A softer ride, a bigger smile, and more patience on the way up the banking."),
        (SPRING, "It does not want a stiffer spring."),
        (SPRING, "Softer than I usually run, and the right front tire likes it."),
        (SPRING, "The nose settles, the load goes up the car, and I give up nothing."),
        (SPRING, "Drop a comment if you want more of this."),
        (SPRING, "The rear split stays at seventy-five."),
        (SPRING, "The right rear is 75 pounds stiffer than the left rear spring, which pays for it."),
        (SPRING, "700 left front, 725 right front, 225 and 300 in the rear."),
        (CROSS, "Two percent more than the default, four clicks."),
        (CROSS, "Up from 50 percent to 52 percent."),
        (CROSS, "At fifty-two percent I can hold the bottom lane for 50 laps."),
        (CROSS, "If it is tight in the middle take half a percent of wedge out."),
        (SPRING_SAY, "Go up a step, to 750 on the right front, and if that is not enough, to 775."),
        (SPRING_SAY, "Two steps up is as far as I would go."),
        (SPRING_SAY, "From 725 up to 750 pounds, 25 pounds, and no more."),
        (SPRING_SAY, "Raise it, drive five laps, and brake a little sooner."),
        (SPRING, "At 725 pounds the right front is stiffer than the left front."),
        (SPRING, "Lowering it lets the nose take a set, raising it takes the set away."),
        (SPRING, "Going from 750 to 700 is worth about half a percent of wedge."),
        (SPRING, "The higher the banking, the more spring you need."),
        (SPRING, "Turn the steering down a notch and turn the music up."),
        (SPRING, "You will want to lift earlier, and go in higher."),
        (SPRING, "Rear split 75, rear springs 225 and 300."),
        (SPRING, "Seventy-five pounds between the rear springs."),
        (SPRING, "I took a step out in practice and two in the race."),
        (SPRING, "A stiffer right front is what the fast guys run, and it does not suit me."),
        (SPRING, "Much stiffer and the tire complains."),
        (SPRING, "A step down, because the bumps in three are worse."),
        (SPRING, "On a green track, add two steps."),
        (SPRING, "Do I run it stiffer at night? Yes, two steps."),
        (SPRING, "It is 25 pounds from the default and 15 from the left front."),
        (SPRING, "A spring that is 100 pounds too stiff feels like a push."),
        (CROSS, "Half a percent less and the back moves; half a percent more and the front does."),
        (CROSS, "A percent down from my last visit."),
        (CROSS, "Lower than 51 and I can't sleep."),
        (CROSS, "The number went up and my pulse went down."),
        (OPENING, "Springs are 25 a step, wedge half a percent a click."),
        (OPENING, "By lap 12 the right rear pressure gets to 45 psi."),
        (OPENING, "Somewhere around 50 percent cross weight the car wakes up."),
        (CROSS, "Take wedge out if you race alone."),
        (CROSS, "Less wedge would free the middle."),
        (CROSS, "The car sat lower, the exit was tighter, the lap was shorter."),
        (SPRING_SAY, "Raise it. If that makes it push, go back down."),
        (SPRING_SAY, "One or two clicks stiffer, and turn in lower."),
        (OPENING, "We run 725 in the right front for the short run and 775 in the right front for the long run."),
        (OPENING, "Episode 12, 300 comments, and a 30.95 on lap 52."),
    ],
)
def test_what_is_right_or_not_meant_is_silent(tmp_path: Path, line: str, text: str) -> None:
    assert said(tmp_path, line, text) == ([], [])


def test_a_setup_that_inherits_its_reasons_says_each_thing_once(tmp_path: Path) -> None:
    """The long run inherits the reason about cross weight: its figure is wrong in one place only."""
    figures, _ = said(tmp_path, CROSS, "The wedge is at 53 percent.")
    assert figures == ["53 percent"]
