from __future__ import annotations

from collections.abc import Callable

import pytest

from producer.handling.advised import author_changes, walks
from producer.handling.guide import guide
from producer.model.guide import Change
from producer.model.library import Case
from producer.model.words import complaint

Cases = Callable[..., Case]


def reasons(text: str) -> str:
    return "    reasons:\n" + "\n".join(f"      {line}" for line in text.strip("\n").splitlines()) + "\n"


def told(changes: tuple[Change, ...]) -> list[str]:
    return [f"{one.parameter} {one.start} -> {one.to} ({one.clicks:+d})" for one in changes]


def found(case: Case, feels: str, **named: str) -> list[str]:
    return told(author_changes(case, case.sheets[0], complaint(feels), **named))


def one(target: str, advice: str) -> str:
    return reasons(f"- for: {target}\n  because: So.\n  if:\n    - {advice}")


@pytest.mark.parametrize(
    ("target", "advice", "feels", "expected"),
    [
        # The first stop for a little and plain, the last for very.
        ("spring.rf", "{ feels: loose entry, to: [725, 750, 800] }", "loose entry", ["spring.rf 700 -> 725 (+1)"]),
        ("spring.rf", "{ feels: loose entry, to: [750, 800] }", "a little loose entry", ["spring.rf 700 -> 750 (+2)"]),
        ("spring.rf", "{ feels: loose entry, to: [725, 800] }", "very loose entry", ["spring.rf 700 -> 800 (+4)"]),
        ("spring.rf", "{ feels: loose entry, to: 725 }", "very loose entry", ["spring.rf 700 -> 725 (+1)"]),
        # Only a direction: one click.
        ("spring.rf", "{ feels: loose entry, direction: raise }", "loose entry", ["spring.rf 700 -> 725 (+1)"]),
        ("spring.rr", "{ feels: loose exit, direction: lower }", "very loose exit", ["spring.rr 300 -> 275 (-1)"]),
        # What the rule has no opinion on may still be advised.
        ("tape", "{ feels: tight middle, to: [50] }", "tight middle", ["tape 40 -> 50 (+2)"]),
        ("gadget", "{ feels: tight middle, to: [6] }", "tight middle", []),  # no value in this setup
        # A feel without its part of the corner answers for each part, and one with it for a complaint without.
        ("spring.rf", "{ feels: loose, to: [725] }", "loose exit", ["spring.rf 700 -> 725 (+1)"]),
        ("spring.rf", "{ feels: loose exit, to: [725] }", "loose", ["spring.rf 700 -> 725 (+1)"]),
        ("final_drive", "{ feels: tight exit, to: [4.00] }", "tight exit", ["final_drive 3.90 -> 4.00 (+1)"]),
        # A split moves its right corner, or the corner named.
        ("spring.rear_split", "{ feels: loose exit, to: [50] }", "loose exit", ["spring.rr 300 -> 275 (-1)"]),
        ("spring.rear_split", "{ feels: loose exit, to: [50], corner: lr }", "loose exit",
         ["spring.lr 225 -> 250 (+1)"]),
        ("spring.rear_split", "{ feels: loose exit, direction: lower, corner: lr }", "loose exit",
         ["spring.lr 225 -> 250 (+1)"]),
        ("spring.rear_split", "{ feels: loose exit, direction: lower }", "loose exit", ["spring.rr 300 -> 275 (-1)"]),
        # Several settings: each from its own value; with splits beside them, the settings.
        ("[pressure.lf, pressure.lr]", "{ feels: loose exit, direction: lower }", "loose exit",
         ["pressure.lf 24 -> 23.5 (-1)", "pressure.lr 25 -> 24.5 (-1)"]),
        ("[spring.rr, spring.rear_split]", "{ feels: loose exit, to: [250] }", "loose exit",
         ["spring.rr 300 -> 250 (-2)"]),
        ("track_bar", "{ feels: tight exit, direction: raise }", "tight exit",
         ["track_bar.left 9.5 -> 9.75 (+1)", "track_bar.right 9.5 -> 9.75 (+1)"]),
    ],
)  # fmt: skip
def test_offered(case_of: Cases, target: str, advice: str, feels: str, expected: list[str]) -> None:
    assert found(case_of(one(target, advice)), feels) == expected


@pytest.mark.parametrize(
    ("target", "advice", "feels"),
    [
        ("spring.rf", "{ feels: loose entry, to: [700] }", "loose entry"),  # goes nowhere
        ("spring.rf", "{ feels: loose entry, to: [712] }", "loose entry"),  # off the grid
        ("spring.rf", "{ feels: loose entry, to: [1325] }", "loose entry"),  # past the limit
        ("spring.rf", "{ feels: loose entry, to: [725, 1325] }", "very loose entry"),  # the stop that is taken
        ("spring.rf", "{ feels: loose entry, to: [675] }", "loose entry"),  # by rule makes it worse
        ("spring.rf", "{ feels: loose entry, direction: lower, to: [725] }", "loose entry"),  # against its own words
        ("spring.rf", "{ feels: loose entry, to: [725] }", "loose exit"),
        ("spring.rf", "{ feels: loose entry, to: [725] }", "tight entry"),
        ("spring.rf", "{ feels: loose entry, say: Wait for it. }", "loose entry"),  # words only
        ("final_drive", "{ feels: tight exit, to: [3.95] }", "tight exit"),  # not one of the choices
        ("spring.rear_split", "{ feels: loose exit, to: [60] }", "loose exit"),
        ("spring.rear_split", "{ feels: loose exit, to: [50], corner: lf }", "loose exit"),  # no corner of it
        ("spring.rear_split", "{ feels: loose exit, to: [-250] }", "loose exit"),
    ],
)
def test_left_out(case_of: Cases, target: str, advice: str, feels: str) -> None:
    assert found(case_of(one(target, advice)), feels) == []


def test_the_limit_leaves_no_click(case_of: Cases) -> None:
    case = case_of(one("spring.rr", "{ feels: tight exit, direction: raise }"), edit=("rr: 300 }", "rr: 500 }"))
    assert found(case, "tight exit") == []


def test_the_best_fitting_of_several_for_one_setting(case_of: Cases) -> None:
    case = case_of(
        reasons(
            """
- for: spring.rf
  if:
    - { feels: very loose entry, to: [775] }
    - { feels: loose entry, to: [725], tyres: new }
    - { feels: loose entry, to: [750] }
    - { feels: loose, to: [800] }
"""
        )
    )
    assert found(case, "loose entry") == ["spring.rf 700 -> 750 (+2)"]
    assert found(case, "very loose entry") == ["spring.rf 700 -> 775 (+3)"]
    assert found(case, "loose exit") == ["spring.rf 700 -> 800 (+4)"]


def test_conditions_that_are_named(case_of: Cases) -> None:
    case = case_of(
        reasons(
            """
- for: spring.rr
  if:
    - { feels: loose exit, to: [275], tyres: worn, say: " Softer. " }
    - { feels: loose exit, to: [250], tyres: new }
- for: track_bar.right
  if:
    - { feels: loose exit, to: [9.25], device: pad }
"""
        )
    )
    assert found(case, "loose exit", tyres="worn") == ["spring.rr 300 -> 275 (-1)", "track_bar.right 9.5 -> 9.25 (-1)"]
    assert found(case, "loose exit", tyres="new", device="wheel") == ["spring.rr 300 -> 250 (-2)"]
    spring, bar = author_changes(case, case.sheets[0], complaint("loose exit"))
    assert (spring.tyres, spring.say, bar.device, spring.voice) == ("worn", "Softer.", "pad", "author")


MUCH = """
- for: front_weight
  if: [ { feels: tight, to: [50, 49.5] } ]
- for: brake_bias
  if: [ { feels: very tight middle, to: [59] } ]
- for: cross_weight
  if:
    - { feels: very tight middle, to: [51] }
    - { feels: a little tight middle, to: [51.5] }
"""


@pytest.mark.parametrize(
    ("feels", "expected"),
    [
        ("tight middle", ["front_weight 50.5 -> 50 (-1)", "cross_weight 52 -> 51.5 (-1)", "brake_bias 62 -> 59 (-3)"]),
        ("very tight middle",
         ["brake_bias 62 -> 59 (-3)", "cross_weight 52 -> 51 (-2)", "front_weight 50.5 -> 49.5 (-2)"]),
        ("a little tight middle",
         ["cross_weight 52 -> 51.5 (-1)", "front_weight 50.5 -> 50 (-1)", "brake_bias 62 -> 59 (-3)"]),
        ("tight entry", ["front_weight 50.5 -> 50 (-1)"]),
    ],
)  # fmt: skip
def test_how_much_holds_across_settings(case_of: Cases, feels: str, expected: list[str]) -> None:
    assert found(case_of(reasons(MUCH)), feels) == expected


ORDER = """
- for: spring.rr
  if: [ { feels: tight exit, to: [325], tyres: worn } ]
- for: track_bar.right
  if: [ { feels: tight exit, to: [9.75] } ]
- for: final_drive
  if: [ { feels: tight, to: [4.00] } ]
- for: cross_weight
  if: [ { feels: tight exit, to: [51], device: pad } ]
- for: spring.rf
  if: [ { feels: tight exit, to: [675] } ]
"""


@pytest.mark.parametrize(
    ("feels", "named", "expected"),
    [
        # For everybody, in the author's order, the part of the corner before any; then what nobody has said.
        ("tight exit", {}, ["track_bar.right", "spring.rf", "final_drive", "spring.rr", "cross_weight"]),
        ("tight exit", {"tyres": "worn"}, ["spring.rr", "track_bar.right", "spring.rf", "final_drive", "cross_weight"]),
        ("tight exit", {"device": "pad"}, ["cross_weight", "track_bar.right", "spring.rf", "final_drive", "spring.rr"]),
        ("tight exit", {"tyres": "new", "device": "wheel"}, ["track_bar.right", "spring.rf", "final_drive"]),
        # Nobody said where: what is written so, then what helps in most parts of the corner, then the author's order.
        ("tight", {"tyres": "new", "device": "wheel"}, ["final_drive", "track_bar.right", "spring.rf"]),
    ],
)  # fmt: skip
def test_what_fits_best_comes_first(case_of: Cases, feels: str, named: dict[str, str], expected: list[str]) -> None:
    assert [one.split()[0] for one in found(case_of(reasons(ORDER)), feels, **named)] == expected


def test_of_one_setting_the_advice_for_just_these_tyres_comes_first(case_of: Cases) -> None:
    case = case_of(
        reasons(
            """
- for: spring.rf
  if:
    - { feels: loose entry, to: [725] }
    - { feels: loose entry, to: [775], tyres: worn }
"""
        )
    )
    assert found(case, "loose entry") == found(case, "loose entry", tyres="new") == ["spring.rf 700 -> 725 (+1)"]
    assert found(case, "loose entry", tyres="worn") == ["spring.rf 700 -> 775 (+3)"]


NO_ENTRY = "handling: { spring.rf: { entry: none } }\n"
NOWHERE = "handling: { spring.rf: { entry: none, middle: none, exit: none } }\n"


@pytest.mark.parametrize(
    ("garage", "written", "asked", "offered"),
    [
        (NO_ENTRY, "loose", "loose entry", False),
        (NO_ENTRY, "loose entry", "loose entry", False),  # even where it is written for just that
        (NO_ENTRY, "loose entry", "loose", False),
        (NO_ENTRY, "loose", "loose exit", True),
        (NO_ENTRY, "loose", "loose", True),
        (NO_ENTRY, "loose exit", "loose", True),
        (NOWHERE, "loose", "loose", False),
        (NOWHERE, "loose", "loose middle", False),
    ],
)
def test_what_the_garage_settles_as_none_is_not_advised(
    case_of: Cases, garage: str, written: str, asked: str, offered: bool
) -> None:
    case = case_of(one("spring.rf", f"{{ feels: {written}, to: [725] }}"), garage=garage)
    assert found(case, asked) == (["spring.rf 700 -> 725 (+1)"] if offered else [])


def test_a_split_names_its_new_figure_and_the_rule_of_what_moves(case_of: Cases) -> None:
    case = case_of(one("spring.rear_split", "{ feels: loose exit, to: [50], corner: lr }"), banking=(3, 3))
    (change,) = author_changes(case, case.sheets[0], complaint("loose exit"))
    assert change.also == "the rear spring split becomes 50\u00a0lb/in; smaller rear split"
    assert change.headroom == 10
    # Flat: the left rear has no row of its own, the split has that of the right rear.
    assert dict(change.rule) == {"entry": "tighter", "middle": "tighter", "exit": "tighter"}


LONG = """
  - setup: long
    name: Long run
    based_on: short
    changes:
      spring: { rf: 750, lr: 250 }
    reasons:
      - for: cross_weight
        if:
          - { feels: loose exit, to: [53] }
"""


def test_inherited_advice_holds_where_the_value_is_unchanged(case_of: Cases) -> None:
    case = case_of(
        reasons(
            """
- for: spring.rf
  if: [ { feels: loose exit, to: [725] } ]
- for: spring.rr
  if: [ { feels: loose exit, to: [275] } ]
- for: spring.rear_split
  if: [ { feels: loose exit, to: [25] } ]
- for: cross_weight
  if: [ { feels: loose exit, to: [52.5] } ]
"""
        )
        + LONG
    )
    long = case.sheets[1]
    assert told(author_changes(case, long, complaint("loose exit"))) == [
        "cross_weight 52 -> 53 (+2)",
        "spring.rr 300 -> 275 (-1)",
    ]


def test_a_walk_keeps_what_the_checks_must_see(case_of: Cases) -> None:
    case = case_of(one("spring.rear_split", "{ feels: loose exit, to: [60, 1000] }"))
    sheet = case.sheets[0]
    (walk,) = walks(sheet, sheet.reasons[0], sheet.reasons[0].advice[0])
    assert (walk.target, walk.moves, walk.split) == ("spring.rear_split", "spring.rr", "spring.rear_split")
    assert [str(x) for x in (walk.start, walk.present, *walk.figures, *walk.stops)] == [
        "75", "300", "60", "1000", "285", "1225",
    ]  # fmt: skip


HOW_MUCH = reasons("""
- for: front_weight
  because: So.
  if: [{ feels: tight, direction: lower }]
- for: cross_weight
  because: So.
  if:
    - { feels: very tight middle, to: [49] }
    - { feels: a little tight middle, to: [51] }
""")


@pytest.mark.parametrize(
    ("feels", "first"),
    [
        ("tight middle", "front_weight 50.5 -> 50.0 (-1)"),
        ("very tight middle", "cross_weight 52 -> 49 (-6)"),
        ("a little tight middle", "cross_weight 52 -> 51 (-2)"),
    ],
)
def test_advice_for_just_so_strong_a_complaint_comes_first(feels: str, first: str, case_of: Cases) -> None:
    assert found(case_of(HOW_MUCH), feels)[0] == first


CONDITIONS = reasons("""
- for: [spring.rr, cross_weight, track_bar.right]
  because: So.
  if: [{ feels: loose exit, direction: lower, tyres: worn }]
- for: cross_weight
  because: So.
  if: [{ feels: loose exit, direction: raise, device: pad }]
- for: spring.rf
  because: So.
  if: [{ feels: loose exit, direction: raise, tyres: new }]
- for: spring.lr
  because: So.
  if: [{ feels: loose exit, direction: raise }]
""")


def test_a_row_of_the_guide_keeps_something_for_everybody(case_of: Cases) -> None:
    case = case_of(CONDITIONS)
    row = next(one for one in guide(case, case.sheets[0]).rows if (one.feels, one.where) == ("loose", "exit"))
    assert len(row.changes) == 4
    assert [one.parameter for one in row.changes if not one.conditional][:1] == ["spring.lr"]
