"""Units, names and feels as they are heard."""

from __future__ import annotations

import pytest

from producer.model.words import complaint
from producer.script import wording
from producer.script.speaker import Speaker, counted, listed, small

US, UK = Speaker("us"), Speaker("uk")


@pytest.mark.parametrize(
    ("figure", "unit", "us", "uk"),
    [
        ("750", "lb/in", "750\u00a0pounds per inch", "750\u00a0pounds per inch"),
        ("1", "in", "1\u00a0inch", "1\u00a0inch"),
        ("\u22121", "deg", "\u22121\u00a0degree", "\u22121\u00a0degree"),
        ("1.00", "in", "1.00\u00a0inches", "1.00\u00a0inches"),
        ("5", "mm", "5\u00a0millimeters", "5\u00a0millimetres"),
        ("120", "N/mm", "120\u00a0newtons per millimeter", "120\u00a0newtons per millimetre"),
        ("2", "L", "2\u00a0liters", "2\u00a0litres"),
        ("28", "psi", "28\u00a0psi", "28\u00a0psi"),
        ("4.15", ":1", "4.15", "4.15"),
        ("4", "", "4", "4"),
    ],
)
def test_an_amount(figure: str, unit: str, us: str, uk: str) -> None:
    assert US.amount(figure, unit) == us
    assert UK.amount(figure, unit) == uk


@pytest.mark.parametrize(
    ("written", "heard"),
    [
        ("loose entry", "loose going in"),
        ("very tight exit", "very tight coming off"),
        ("a little loose middle", "a little loose in the middle"),
        ("tight", "tight"),
    ],
)
def test_a_feel(written: str, heard: str) -> None:
    assert US.feel(complaint(written)) == heard


@pytest.mark.parametrize(
    ("items", "said"), [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")]
)
def test_a_list(items: list[str], said: str) -> None:
    assert listed(items) == said


@pytest.mark.parametrize(("number", "said"), [(0, "no"), (1, "one"), (12, "twelve"), (13, "13")])
def test_a_count(number: int, said: str) -> None:
    assert counted(number) == said


@pytest.mark.parametrize(
    ("name", "inside"),
    [("Front weight", "front weight"), ("spring", "spring"), ("Zed Bar", "Zed Bar"), ("RPM limit", "RPM limit")],
)
def test_a_name_inside_a_sentence(name: str, inside: str) -> None:
    assert small(name) == inside


def test_every_pattern_ends_like_a_sentence_or_is_a_part_of_one() -> None:
    whole = [
        one
        for kind, patterns in wording.PATTERNS.items()
        for one in patterns
        if kind not in {"part-move", "advice", "advice-if"}
    ]
    assert all(one.rstrip("}").endswith((".", ":", "{caution")) for one in whole)
    assert not any("!" in one for one in whole)


def test_a_kind_or_a_part_that_is_missing_is_a_bug() -> None:
    with pytest.raises(KeyError):
        US.say("no-such-kind")
    with pytest.raises(KeyError):
        US.say("value", name="x")
