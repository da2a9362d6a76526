"""Places count from 1; findings are shown in one order, each once."""

from __future__ import annotations

import random

import pytest

from producer.basics.finding import Finding, Severity, in_order
from producer.basics.place import Place


@pytest.mark.parametrize(("line", "column", "width"), [(0, 1, 1), (1, 0, 1), (1, 1, 0), (-1, 1, 1)])
def test_a_place_refuses_what_does_not_count_from_one(line: int, column: int, width: int) -> None:
    with pytest.raises(ValueError, match="counts from 1"):
        Place("a.yaml", line, column, width)


def test_a_place_as_editors_read_it() -> None:
    assert str(Place("a/b.yaml", 3, 7, 4)) == "a/b.yaml:3:7"


def test_findings_in_order() -> None:
    ordered = [
        Finding("z-code", Severity.NOTE, Place("a.yaml", 1, 1), "one"),
        Finding("a-code", Severity.ERROR, Place("a.yaml", 2, 1), "one"),
        Finding("a-code", Severity.ERROR, Place("a.yaml", 2, 9), "one"),
        Finding("b-code", Severity.ERROR, Place("a.yaml", 2, 9), "a"),
        Finding("b-code", Severity.ERROR, Place("a.yaml", 2, 9), "b"),
        Finding("a-code", Severity.ERROR, Place("a.yaml", 10, 1), "one"),  # by number, not by its digits
        Finding("a-code", Severity.ERROR, Place("b.yaml", 1, 1), "one"),
    ]
    shuffled = [*ordered, *ordered]
    random.Random(7).shuffle(shuffled)
    assert in_order(shuffled) == ordered
