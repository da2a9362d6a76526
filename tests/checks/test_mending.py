"""What `check --fix` would put where: figures that stand alone become references, and the rest is left to the author.

The texts stand in the base library: the right front spring is at 725 (the default 750), cross weight at 52 (50), the
rear split at 75, right front camber at -3.5; advice on the spring goes from 725 to 750 and 775.
"""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.basics.finding import Finding
from producer.checks import direction_against_sign, number_differs, stated_figure_differs
from producer.jobs.mend import put
from producer.library.edit import Draft
from producer.library.load import load
from producer.model.library import Case

BASE = Path(__file__).parent / "base"
FILE = "marrow-creek-grand-sedan/episode.yaml"
SPRING = "because: A little softer than usual, so the nose takes a set sooner."
SPRING_SAY = "say: Go back up and the entry calms down."
CROSS = "because: I want the car to wait for me, so there is more of it than the garage gives."
SPLIT = "because: It helps the car turn once it has settled."
OPENING = "opening: You asked for this place, and here it is."


def case_of(root: Path) -> Case:
    library, found = load(root)
    assert not found
    return library.case(next(iter(library.episodes.values())))


def changed(tmp_path: Path, *changes: tuple[str, str], newline: str = "\n") -> tuple[Path, Case]:
    """The base library with lines of its episode changed."""
    root = tmp_path / "library"
    shutil.copytree(BASE, root, dirs_exist_ok=True)
    text = (BASE / FILE).read_text(encoding="utf-8")
    for line, new in changes:
        assert line in text
        text = text.replace(line, new, 1)
    (root / FILE).write_bytes(text.replace("\n", newline).encode("utf-8"))
    return root, case_of(root)


def mended(root: Path, found: list[Finding]) -> str | None:
    """The line of the first finding after its fix; None where there is no fix."""
    draft = Draft(FILE, (root / FILE).read_bytes())
    if found[0].fix is None:
        return None
    put(draft, found[0])
    return draft.text.splitlines()[found[0].place.line - 1].strip()


@pytest.mark.parametrize(
    ("line", "text", "after"),
    [
        (SPRING, "We run 750 pounds in the right front.", "We run {{ spring.rf }} pounds in the right front."),
        (SPRING, "The spring is at seven fifty here.", "The spring is at {{ spring.rf }} here."),
        (SPRING, "The right front is at 750 lb/in.", "The right front is at {{ spring.rf | with_unit }}."),
        (SPRING, "I went down to 700 pounds after 25 laps.", "I went down to {{ spring.rf }} pounds after 25 laps."),
        (SPRING, "A 750 pound spring.", "A {{ spring.rf }} pound spring."),
        (SPRING, "RF spring at 750, and it bites.", "RF spring at {{ spring.rf }}, and it bites."),
        (SPLIT, "There is a fifty pound split in the rear springs.",
         "There is a {{ spring.rear_split }} pound split in the rear springs."),
        (CROSS, "Fifty-two and a half percent is where it woke up.", "{{ cross_weight }} percent is where it woke up."),
        (CROSS, "The wedge is at 51.5% here.", "The wedge is at {{ cross_weight | with_unit }} here."),
        (CROSS, "The wedge is at 51½ here.", "The wedge is at {{ cross_weight }} here."),
        (CROSS, "The three-eighty gear goes with it.", "The {{ final_drive }} gear goes with it."),
        (CROSS, "A 3.80:1 final drive goes with it.", "A {{ final_drive | with_unit }} final drive goes with it."),
        (CROSS, "The right front camber is at three degrees.", "The right front camber is at 3.50 degrees."),
        (CROSS, "The right front camber is at -3 degrees.", "The right front camber is at {{ camber.rf }} degrees."),
        (CROSS, "Right front rebound is at 7 clicks.", "Right front rebound is at {{ shock_rebound.rf }} clicks."),
        (OPENING, "We put the tape at sixty and went home.", "We put the tape at {{ tape }} and went home."),
    ],
)  # fmt: skip
def test_a_figure_that_stands_alone_becomes_a_reference(tmp_path: Path, line: str, text: str, after: str) -> None:
    key = line.partition(":")[0]
    root, case = changed(tmp_path, (line, f"{key}: {json.dumps(text, ensure_ascii=False)}"))
    found = list(number_differs.check_episode(case))
    assert len(found) == 1
    assert mended(root, found) == f"{key}: {json.dumps(after, ensure_ascii=False)}"


@pytest.mark.parametrize(
    ("line", "text"),
    [
        # Two figures: which is wrong, and what the other was meant for, the author knows.
        (SPRING, "The right front goes from 775 down to 725."),
        (SPRING, "RF 750, LF 700."),
        (SPRING, "It is at 750, two steps softer."),
        (SPRING, "750 pounds in the right front instead of 800."),
        (SPRING, "Both front springs are at 750."),
        (SPRING, "The right front is at 750, {{ spring.lf }} on the left."),
        # Amounts, and where a movement comes from.
        (SPRING, "I took fifty pounds out of it."),
        (SPRING, "Two steps softer than the default."),
        (CROSS, "The wedge is up by three clicks."),
        # A word that goes the other way.
        (SPRING, "I went up to 775 pounds."),
        (CROSS, "I lowered the wedge to 51."),
        # An article that would no longer fit.
        (SPRING, "An 800 pound spring is in the right front."),
        # The episode's texts speak of any setup, and here the setups differ.
        (OPENING, "We run 750 in the right front."),
        (OPENING, "We run the three-seventy gear all night."),
        # An advice with two stops.
        (SPRING_SAY, "Put the right front back up to 800."),
        (SPRING_SAY, "Go up to 780 pounds."),
    ],
)
def test_what_needs_judgement_has_no_fix(tmp_path: Path, line: str, text: str) -> None:
    _, case = changed(tmp_path, (line, f"{line.partition(':')[0]}: {json.dumps(text, ensure_ascii=False)}"))
    found = list(number_differs.check_episode(case))
    assert found
    assert [one for one in found if one.fix is not None] == []


@pytest.mark.parametrize(
    ("written", "after"),
    [
        ("because: We run 750 pounds here.", "because: We run {{ spring.rf }} pounds here."),
        ("because: We run 750 pounds here. # mine", "because: We run {{ spring.rf }} pounds here. # mine"),
        ("because: 750 pounds, that is it.", "because: 725 pounds, that is it."),
        ("because: 'It''s 750 pounds here.'", "because: 'It''s {{ spring.rf }} pounds here.'"),
        ('because: "It\'s \\"750 pounds\\" here."', 'because: "It\'s \\"{{ spring.rf }} pounds\\" here."'),
        ("because: |\n          It bites.\n          We run 750 pounds here.", "We run {{ spring.rf }} pounds here."),
        ("because: >\n          It bites. We run\n          750 pounds here.", "{{ spring.rf }} pounds here."),
        ("because: We run 750 lb/in here.", "because: We run {{ spring.rf | with_unit }} here."),
        ("because: 750 lb/in, that is it.", "because: 725 lb/in, that is it."),
    ],
)
@pytest.mark.parametrize("newline", ["\n", "\r\n"])
def test_a_reference_goes_where_the_file_allows_it(tmp_path: Path, written: str, after: str, newline: str) -> None:
    """In a text without quotes a reference cannot stand first: there the figure is put right."""
    root, case = changed(tmp_path, (SPRING, written), newline=newline)
    assert mended(root, list(number_differs.check_episode(case))) == after


def test_in_a_map_on_one_line_the_figure_is_put_right(tmp_path: Path) -> None:
    row = "- { for: spring.lf, because: We run 750 pounds there. }"
    root, case = changed(tmp_path, ("      - for: spring.rear_split", f"      {row}\n      - for: spring.rear_split"))
    assert mended(root, list(number_differs.check_episode(case))) == row.replace("750", "700")


def test_an_advice_with_one_stop_is_told_its_stop(tmp_path: Path) -> None:
    stops = ("to: [750, 775]", "to: [750]")
    root, case = changed(tmp_path, stops, (SPRING_SAY, "say: Put the right front back up to 800 pounds."))
    after = "say: Put the right front back up to 750 pounds."
    assert mended(root, list(number_differs.check_episode(case))) == after


@pytest.mark.parametrize(
    ("changes", "after"),
    [
        ([("is: 75", "is:  85  # so")], "is:  75  # so"),
        ([("is: 75", "is: '85'")], "is: '75'"),
        ([("is: 75", "is: 85 lb/in")], "is: 75 lb/in"),
        ([("is: 75", "is: -75")], "is: 75"),
        ([("is: 75", "is: 85"), (SPLIT, "because: A split of 85 pounds helps the car turn.")], None),
        ([("is: 75", "is: 85"), (SPLIT, "because: If it were 85 pounds it would be too much.")], "is: 75"),
        ([("- for: spring.rear_split\n        is: 75", "- for: [spring.rf, spring.lf]\n        is: 75")], None),
    ],
)
def test_a_stated_figure(tmp_path: Path, changes: list[tuple[str, str]], after: str | None) -> None:
    root, case = changed(tmp_path, *changes)
    assert mended(root, list(stated_figure_differs.check_episode(case))) == after


GEAR = "direction: lower\n        effect: { exit: tighter }"
GEAR_WORDS = "because: A longer gear is kinder to the rear tires on the way out."
UP = (GEAR, GEAR.replace("lower", "raise"))


@pytest.mark.parametrize(
    ("changes", "after"),
    [
        ([UP], "direction: lower"),
        ([(GEAR, GEAR.replace("lower", '"raise"  # why'))], 'direction: "lower"  # why'),
        ([UP, (GEAR_WORDS, "because: I raised the final drive a click.")], None),
        ([UP, (GEAR_WORDS, "because: If you raise the final drive it sings.")], "direction: lower"),
        (
            [("- for: spring.rf\n        direction: raise", "- for: [spring.rf, spring.lf]\n        direction: lower")],
            None,
        ),
        ([("- for: spring.rf\n        compared_with: default", "- for: spring.rf\n        compared_with: 725")], None),
    ],
)
def test_a_direction(tmp_path: Path, changes: list[tuple[str, str]], after: str | None) -> None:
    root, case = changed(tmp_path, *changes)
    assert mended(root, list(direction_against_sign.check_episode(case))) == after


SAID = [
    "750 pounds",
    "750",
    "seven fifty",
    "seven hundred and fifty pounds",
    "750 lb/in",
    "1,050",
    "700.5",
    "six hundred",
]
BEFORE = ["We run ", "The right front spring is at ", "It sits at ", "", "A coil of ", "It\u2019s "]
BEHIND = [
    " in the right front.",
    " here.",
    ", and that is that.",
    "",
    " for this place: it bites \u2013 so \U0001f3c1.",
]
STYLES = ["plain", "'", '"', "|", ">"]


def styled(text: str, style: str) -> str:
    """A reason's line with its text written in one of YAML's ways."""
    if style in "'\"":
        return "because: " + (json.dumps(text, ensure_ascii=False) if style == '"' else f"'{text}'")
    if style in "|>":
        return f"because: {style}\n          It bites.\n          {text}\n          So it does."
    return f"because: {text}  # my own"


@settings(max_examples=60)
@given(st.sampled_from(BEFORE), st.sampled_from(SAID), st.sampled_from(BEHIND), st.sampled_from(STYLES), st.booleans())
def test_a_fix_changes_its_own_characters_and_settles_its_finding(
    tmp_path_factory: pytest.TempPathFactory, before: str, said: str, behind: str, style: str, windows: bool
) -> None:
    text = f"{before}{said}{behind}"
    if style == "plain" and ": " in text:
        style = '"'
    newline = "\r\n" if windows else "\n"
    root, case = changed(tmp_path_factory.mktemp("law"), (SPRING, styled(text, style)), newline=newline)
    for one in number_differs.check_episode(case):
        if one.fix is None:
            continue
        draft = Draft(FILE, (root / FILE).read_bytes())
        source, at = draft.text, one.fix.place
        begin = sum(len(row) for row in source.splitlines(keepends=True)[: at.line - 1]) + at.column - 1
        put(draft, one)
        end = begin + one.fix.end - one.fix.start
        ways = [source[:begin] + new + source[end:] for new in (one.fix.new, one.fix.plain)]
        assert draft.text in ways
        (root / FILE).write_bytes(draft.data)
        assert list(number_differs.check_episode(case_of(root))) == []
