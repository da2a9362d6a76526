"""Complaints: in the order of the file, and not a thousand times the same."""

from __future__ import annotations

import pytest

from producer.basics.finding import Severity
from producer.captions.complaints import MOST, Complaints


@pytest.mark.parametrize(("number", "told"), [(0, 0), (1, 1), (MOST, MOST), (MOST + 1, MOST + 1), (500, MOST + 1)])
def test_many_of_one_kind(number: int, told: int) -> None:
    complaints = Complaints("x.srt")
    for line in range(number, 0, -1):
        complaints.add("cues-overlap", line, "again")
    findings = complaints.findings()
    assert [one.place.line for one in findings] == list(range(1, told + 1))
    if number == 500:
        assert findings[-1].message == "480 more like this from here on"


def test_each_kind_is_counted_for_itself() -> None:
    complaints = Complaints("x.srt")
    for line in range(1, 31):
        complaints.add("a", line, "a")
    complaints.note("b", 25, "b")
    assert [one.code for one in complaints.findings()][-1] == "b"
    assert complaints.findings()[-1].severity is Severity.NOTE
    assert len(complaints.findings()) == MOST + 2
