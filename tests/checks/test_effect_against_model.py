"""What an author states against opinions of the model that are written by hand."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from producer.basics.finding import Finding
from producer.checks.effect_against_model import check_opinions
from producer.checks.registry import run
from producer.jobs.opinions import SecondOpinion
from producer.library.load import load
from producer.model.library import Case
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.words import Phase

BASE = Path(__file__).parent / "base"
NAME = "marrow-creek-grand-sedan"
HALF: dict[Phase, float] = {"entry": 0.25, "middle": 0.25, "exit": 0.25}
TIGHTER = PhaseOpinion(0.97, 0.03, 0.5)
LOOSER = TIGHTER.turned()
DOUBT = PhaseOpinion(0.84, 0.16, 0.5)
NOTHING = PhaseOpinion(0.0, 0.0, 0.0)
SETUP = """setups:
  - setup: short
    name: Short run
    values:
      spring: {{ lf: 725, rf: 700, lr: 225, rr: 325 }}
      track_bar: {{ left: 10, right: 10 }}
      left_weight: 55
      front_weight: 50.5
      tape: 50
    reasons:
      - {reason}
"""


def case_of(root: Path, reason: str, more: str = "") -> Case:
    shutil.copytree(BASE, root)
    path = root / NAME / "episode.yaml"
    head, _, _ = path.read_text(encoding="utf-8").partition("setups:")
    path.write_text(f"{head}{SETUP.format(reason=reason)}{more}", encoding="utf-8", newline="\n")
    library, findings = load(root)
    assert findings == []
    return library.case(library.episodes[NAME])


def found(root: Path, reason: str, *phases: PhaseOpinion, more: str = "") -> list[Finding]:
    """What is found where the model thinks that of the first reason, entry to exit."""
    case = case_of(root / "library", reason, more)
    known = Opinions(1000, {}, {0: Opinion(*phases)}, {}, HALF)
    return list(check_opinions(case, {"short": known}))


@pytest.mark.parametrize(
    ("reason", "model", "severity", "whose"),
    [
        # The rule agrees with the author: it is the model alone.
        ("{ for: spring.rr, effect: { exit: looser } }", TIGHTER, "note", "; the rule is on your side"),
        # No rule speaks.
        ("{ for: left_weight, effect: { exit: looser } }", TIGHTER, "note", ""),
        ("{ for: front_weight, effect: { exit: looser } }", TIGHTER, "note", ""),
        # Rule and model are both against the author.
        ("{ for: spring.rr, effect: { exit: tighter } }", LOOSER, "warning", "; the rule says the same"),
        ("{ for: spring.rf, effect: { exit: tighter } }", LOOSER, "warning", "; the rule says the same"),
        ("{ for: [spring.rr, track_bar.right], effect: { exit: tighter } }", LOOSER, "warning", "the same"),
        # One of the rules is on the author's side.
        ("{ for: [spring.rf, spring.rr], effect: { exit: looser } }", TIGHTER, "note", "; the rule is on your side"),
        # A split moves as its right corner does.
        ("{ for: spring.rear_split, effect: { exit: tighter } }", LOOSER, "warning", "; the rule says the same"),
    ],
)
def test_a_sure_model_says_so(tmp_path: Path, reason: str, model: PhaseOpinion, severity: str, whose: str) -> None:
    (one,) = found(tmp_path, reason, NOTHING, NOTHING, model)
    assert (one.code, one.severity.value, one.where) == (
        "effect-against-model",
        severity,
        "setups.short.reasons[0].effect.exit",
    )
    assert "in 97 of 100 plausible cars, about as much as one percent of cross weight" in one.message
    assert one.message.endswith(whose)
    assert "name effect-against-model under 'allow'" in one.hint


@pytest.mark.parametrize(
    ("reason", "phases"),
    [
        ("{ for: spring.rr, effect: { exit: looser } }", (TIGHTER, TIGHTER, LOOSER)),
        # It depends on the car, or nothing happens: no opposite.
        ("{ for: spring.rr, effect: { exit: looser } }", (TIGHTER, TIGHTER, DOUBT)),
        ("{ for: spring.rr, effect: { exit: looser } }", (TIGHTER, TIGHTER, NOTHING)),
        # The author claims nothing, or that nothing happens.
        ("{ for: spring.rr, because: It is what I had. }", (TIGHTER, TIGHTER, TIGHTER)),
        ("{ for: spring.rr, effect: { exit: none } }", (TIGHTER, TIGHTER, TIGHTER)),
        # The garage settles the phase, alone or in company.
        ("{ for: track_bar.left, effect: { exit: looser } }", (TIGHTER, TIGHTER, TIGHTER)),
        ("{ for: track_bar, effect: { exit: looser } }", (TIGHTER, TIGHTER, TIGHTER)),
    ],
)
def test_it_is_silent(tmp_path: Path, reason: str, phases: tuple[PhaseOpinion, ...]) -> None:
    assert found(tmp_path, reason, *phases) == []


@pytest.mark.parametrize(
    ("reason", "movement"),
    [
        ("{ for: spring.rr, effect: { middle: looser } }", "raising the right rear spring (275 to 325) makes"),
        ("{ for: spring.rf, effect: { middle: looser } }", "lowering the right front spring (750 to 700) makes"),
        (
            "{ for: [spring.rr, spring.rf], effect: { middle: looser } }",
            "raising the right rear spring (275 to 325) and lowering the right front spring (750 to 700) make",
        ),
        (
            "{ for: track_bar, effect: { middle: looser } }",
            "raising the track bar, left end (9.50 to 10.00) and the track bar, right end (9.50 to 10.00) makes",
        ),
        ("{ for: [spring.rf, track_bar], effect: { middle: looser } }", "what these 3 settings do together makes"),
        ("{ for: spring.rear_split, effect: { middle: looser } }", "raising the rear spring split (50 to 100) makes"),
    ],
)
def test_it_names_what_moved(tmp_path: Path, reason: str, movement: str) -> None:
    (one,) = found(tmp_path, reason, NOTHING, TIGHTER, NOTHING)
    assert f"by the chassis model, {movement} the car tighter in the middle, not looser" in one.message


def test_every_phase_is_a_finding_of_its_own(tmp_path: Path) -> None:
    reason = "{ for: spring.rr, effect: { entry: looser, middle: looser, exit: looser } }"
    assert [one.where.rpartition(".")[2] for one in found(tmp_path, reason, TIGHTER, DOUBT, TIGHTER)] == [
        "entry",
        "exit",
    ]


def test_a_size_that_nobody_feels_is_called_so(tmp_path: Path) -> None:
    (one,) = found(tmp_path, "{ for: spring.rr, effect: { entry: looser } }", PhaseOpinion(1, 0, 0.01), DOUBT, DOUBT)
    assert "in 100 of 100 plausible cars, hardly enough to feel" in one.message


def test_a_reason_that_is_inherited_is_heard_where_it_was_written(tmp_path: Path) -> None:
    later = "  - setup: long\n    name: Long run\n    based_on: short\n    changes: { tape: 45 }\n"
    case = case_of(tmp_path / "library", "{ for: spring.rr, effect: { exit: looser } }", later)
    known = Opinions(1000, {}, {0: Opinion(TIGHTER, TIGHTER, TIGHTER)}, {}, HALF)
    assert [one.where.split(".")[1] for one in check_opinions(case, {"short": known, "long": known})] == ["short"]


@pytest.mark.parametrize(
    "told", [{}, {"short": Opinions(0)}, {"short": Opinions(1000, {}, {5: Opinion(*[TIGHTER] * 3)})}]
)
def test_without_an_opinion_nothing_is_said(tmp_path: Path, told: dict[str, Opinions]) -> None:
    case = case_of(tmp_path / "library", "{ for: spring.rr, effect: { exit: looser } }")
    assert list(check_opinions(case, told)) == []


@pytest.mark.parametrize(
    ("allow", "codes"),
    [
        ("", ["effect-against-model", "effect-against-rule"]),
        ("code: effect-against-model", ["effect-against-rule"]),
        ("code: effect-against-model, for: spring.rr", ["effect-against-rule"]),
        (
            "code: effect-against-model, for: spring.rf",
            ["effect-against-model", "effect-against-rule", "waiver-unused"],
        ),
    ],
)
def test_a_run_with_the_model_and_a_waiver(tmp_path: Path, allow: str, codes: list[str]) -> None:
    more = f"allow:\n  - {{ {allow}, why: I felt it. }}\n" if allow else ""
    case = case_of(tmp_path / "library", "{ for: spring.rr, effect: { exit: tighter } }", more)
    ignored = {"missing-value", "unexplained-change", "unknown-reference"}
    told = run(case.library, {}, None, None, SecondOpinion().of)
    assert sorted(one.code for one in told if one.code not in ignored) == codes
    # Without the model nothing is held against it, and its waiver is not called unused.
    rules = [one.code for one in run(case.library, {}) if one.code not in ignored]
    assert rules == ["effect-against-rule"]
